"""Which patterns does the topic have, and for whom? One family of items for each.

Year levels and minutes are common practice, no source; a school changes them.
"""

from __future__ import annotations

from itembank.topics.kinds import Family
from itembank.topics.linear_equations import patterns

FAMILIES = (
    Family("one step: a number added or taken away", 7, 1, patterns.one_sum),
    Family("one step: a number times the unknown", 7, 1, patterns.one_product),
    Family("one step: the unknown with a minus", 7, 1, patterns.minus_unknown),
    Family("one step: the unknown over a number", 7, 1, patterns.one_quotient),
    Family("two steps, a whole number as value", 7, 2, patterns.two_steps),
    Family("two steps, unfriendly numbers", 8, 2, patterns.two_steps_unfriendly),
    Family("two steps: a number less the unknown's multiple", 8, 2, patterns.number_less_unknown),
    Family("the unknown on the right alone", 8, 2, patterns.unknown_on_right),
    Family("the unknown over a number, and a constant", 8, 2, patterns.quotient_and_constant),
    Family("a fraction times the unknown", 8, 3, patterns.fraction_times_unknown),
    Family("mixed numbers", 9, 3, patterns.mixed_numbers),
    Family("constants that are fractions", 8, 3, patterns.fraction_constants),
    Family("decimals", 8, 3, patterns.decimals),
    Family("decimals, the unknown on both sides", 9, 4, patterns.decimals_both_sides),
    Family("one bracket", 8, 3, patterns.one_bracket),
    Family("one bracket, its constant first", 8, 3, patterns.bracket_with_constant_first),
    Family("a bracket and a constant", 8, 3, patterns.bracket_and_constant),
    Family("a minus before a bracket", 9, 3, patterns.minus_before_bracket),
    Family("a decimal before a bracket", 9, 3, patterns.decimal_bracket),
    Family("a fraction before a bracket", 9, 3, patterns.fraction_before_bracket),
    Family("two brackets on one side", 9, 4, patterns.two_brackets),
    Family("brackets within brackets", 10, 5, patterns.nested_brackets),
    Family("like terms on one side", 8, 2, patterns.like_terms),
    Family("the unknown on both sides", 8, 3, patterns.both_sides),
    Family("the unknown on both sides, a negative coefficient", 9, 3, patterns.both_sides_negative),
    Family("the unknown on both sides, one constant", 8, 3, patterns.both_sides_one_constant),
    Family("a bracket, the unknown on both sides", 9, 4, patterns.bracket_both_sides),
    Family("brackets on both sides", 9, 4, patterns.brackets_both_sides),
    Family("several terms over a number", 9, 3, patterns.one_numerator),
    Family("several terms over a number, and a constant", 9, 3, patterns.numerator_and_constant),
    Family("a multiple of a bracket over a number", 9, 3, patterns.bracket_over_number),
    Family("two fractions with the unknown", 9, 4, patterns.two_fractions),
    Family("two fractions with several terms above", 10, 5, patterns.two_numerators),
    Family("a fraction equal to a fraction", 10, 4, patterns.fraction_equals_fraction),
    Family("a fraction, the unknown on both sides", 10, 4, patterns.fractions_both_sides),
    Family("no solution", 10, 3, patterns.no_solution),
    Family("all values", 10, 3, patterns.all_values),
)
