"""Which patterns does the topic have, and for whom? One family of items for each.

Year levels and minutes are common practice, no source; a school changes them.
"""

from __future__ import annotations

from itembank.topics.kinds import Family
from itembank.topics.quadratic_equations import patterns

FAMILIES = (
    Family("quadratic equation in factors, both numbers positive", 9, 3, patterns.factors_positive),
    Family("quadratic equation in factors, both numbers negative", 9, 3, patterns.factors_negative),
    Family("quadratic equation in factors, numbers of two signs", 9, 3, patterns.factors_mixed),
    Family("quadratic equation in factors, a leading coefficient", 10, 4, patterns.factors_leading),
    Family("quadratic equation, the unknown as a common factor", 9, 2, patterns.common_factor),
    Family("quadratic equation, the unknown in each term", 9, 3, patterns.unknown_in_each_term),
    Family("quadratic equation, a repeated solution", 10, 3, patterns.repeated),
    Family("quadratic equation, a common number to divide out", 10, 4, patterns.common_number),
    Family("quadratic equation, a minus before the square", 10, 4, patterns.minus_first),
    Family("the square of the unknown is a number", 9, 1, patterns.square_alone),
    Family("the square of the unknown, to be isolated", 9, 2, patterns.square_and_number),
    Family("a multiple of the square of the unknown", 9, 2, patterns.multiple_of_square),
    Family("the square of the unknown and a square number", 9, 2, patterns.square_and_square),
    Family("the square of a bracket is a number", 10, 2, patterns.bracket_squared),
    Family("the square of a bracket, to be isolated", 10, 3, patterns.bracket_squared_beside),
    Family("quadratic equation, surds by completing the square", 11, 4, patterns.surds),
    Family("quadratic equation, surds by the formula", 11, 4, patterns.formula),
    Family("quadratic equation to be brought to zero form", 10, 4, patterns.to_zero_form),
    Family("quadratic equation, the square on both sides", 10, 4, patterns.both_sides),
    Family("a bracket times the unknown is a number", 10, 4, patterns.bracket_to_number),
    Family("a product of brackets is a number other than 0", 10, 4, patterns.product_to_number),
    Family("the square of a bracket and a term in the unknown", 11, 5, patterns.square_to_line),
    Family("a term times a bracket, terms on the other side", 10, 4, patterns.term_times_bracket),
    Family("the square of a bracket with a coefficient", 11, 5, patterns.coefficient_squared),
    Family("the squares of two brackets", 10, 5, patterns.squares_of_brackets),
    Family("a square and a product of brackets", 10, 5, patterns.square_and_product),
    Family("a minus before a product of brackets", 11, 5, patterns.minus_before_brackets),
    Family("a minus before a bracket of three terms", 11, 5, patterns.minus_before_three_terms),
    Family("quadratic equation without real solutions", 11, 3, patterns.no_real),
    Family("the unknown below a bar, a quadratic when cleared", 11, 4, patterns.unknown_below),
    Family("a fraction equal to one with the unknown below", 11, 4, patterns.fraction_to_fraction),
    Family("two fractions with the unknown below", 11, 6, patterns.two_unknowns_below),
)
