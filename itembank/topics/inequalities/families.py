"""Which patterns does the topic have, and for whom? One family of items for each.

Year levels and minutes are common practice, no source; a school changes them.
"""

from __future__ import annotations

from itembank.topics.inequalities import joined_patterns, patterns
from itembank.topics.inequalities.patterns import asked_for_integers, ordered
from itembank.topics.kinds import Family
from itembank.topics.linear_equations import patterns as equations

FAMILIES = (
    Family("inequality: one step: a number added or taken away", 7, 1, ordered(equations.one_sum)),
    Family(
        "inequality: one step: a number times the unknown", 8, 1, ordered(equations.one_product)
    ),
    Family(
        "inequality: one step: the unknown with a minus", 9, 1, ordered(equations.minus_unknown)
    ),
    Family(
        "inequality: one step: the unknown over a number", 8, 1, ordered(equations.one_quotient)
    ),
    Family("inequality: two steps, a whole number as boundary", 8, 2, ordered(equations.two_steps)),
    Family(
        "inequality: two steps, unfriendly numbers", 9, 2, ordered(equations.two_steps_unfriendly)
    ),
    Family(
        "inequality: two steps: a number less the unknown's multiple",
        9,
        2,
        ordered(equations.number_less_unknown),
    ),
    Family("inequality: the unknown on the right alone", 9, 2, ordered(equations.unknown_on_right)),
    Family(
        "inequality: the unknown over a number, and a constant",
        9,
        2,
        ordered(equations.quotient_and_constant),
    ),
    Family("inequality: decimals", 9, 3, ordered(equations.decimals)),
    Family("inequality: one bracket", 9, 3, ordered(equations.one_bracket)),
    Family("inequality: a minus before a bracket", 9, 3, ordered(equations.minus_before_bracket)),
    Family("inequality: the unknown on both sides", 9, 3, ordered(equations.both_sides)),
    Family(
        "inequality: the unknown on both sides, one with a minus",
        9,
        3,
        ordered(equations.both_sides_negative),
    ),
    Family(
        "inequality: a bracket, the unknown on both sides",
        9,
        4,
        ordered(equations.bracket_both_sides),
    ),
    Family("inequality: brackets on both sides", 10, 4, ordered(equations.brackets_both_sides)),
    Family("inequality: brackets within brackets", 10, 5, ordered(equations.nested_brackets)),
    Family(
        "inequality: a fraction against a fraction",
        10,
        4,
        ordered(equations.fraction_equals_fraction),
    ),
    Family(
        "inequality: several terms over a number, and a constant",
        10,
        3,
        ordered(equations.numerator_and_constant),
    ),
    Family("inequality: two fractions with the unknown", 10, 4, ordered(equations.two_fractions)),
    Family("inequality: no value or every value", 10, 3, ordered(equations.no_solution)),
    Family("double inequality: one step", 9, 2, patterns.one_step),
    Family("double inequality: two steps, whole numbers as ends", 9, 3, patterns.two_steps),
    Family(
        "double inequality: two steps, unfriendly numbers", 10, 3, patterns.two_steps_unfriendly
    ),
    Family("double inequality: a minus before the unknown", 10, 4, patterns.minus_in_the_middle),
    Family("double inequality: a bracket", 10, 4, patterns.bracket_in_the_middle),
    Family("double inequality: a fraction", 10, 4, patterns.fraction_in_the_middle),
    Family("double inequality: the unknown at the ends too", 10, 6, patterns.unknown_at_the_ends),
    Family("inequalities with and: two steps in each part", 10, 4, joined_patterns.both_hold),
    Family("inequalities with or: one step in each part", 10, 3, joined_patterns.one_step),
    Family("inequalities with or: two steps in each part", 10, 4, joined_patterns.two_steps),
    Family("inequalities with or: unfriendly numbers", 10, 4, joined_patterns.two_steps_unfriendly),
    Family("inequalities with or: a minus before the unknown", 10, 5, joined_patterns.minus_in_one),
    Family("inequalities with or: a bracket", 10, 5, joined_patterns.bracket_in_one),
    Family("inequalities with or: the unknown on both sides", 10, 6, joined_patterns.both_sides),
    Family("inequalities with or: a fraction", 10, 5, joined_patterns.fraction_in_one),
    Family("inequalities with or: parts that overlap", 11, 5, joined_patterns.overlapping),
    Family("inequalities with or: parts that leave no number out", 11, 5, joined_patterns.covering),
    Family(
        "integers of an inequality: between two numbers",
        8,
        1,
        asked_for_integers(patterns.between_numbers),
    ),
    Family(
        "integers of an inequality: a multiple between two numbers",
        9,
        2,
        asked_for_integers(patterns.multiple_between_numbers),
    ),
    Family("integers of an inequality: two steps", 9, 4, asked_for_integers(patterns.two_steps)),
    Family(
        "integers of an inequality: two steps, unfriendly numbers",
        10,
        4,
        asked_for_integers(patterns.two_steps_unfriendly),
    ),
    Family(
        "integers of an inequality: a minus before the unknown",
        10,
        4,
        asked_for_integers(patterns.minus_in_the_middle),
    ),
)
