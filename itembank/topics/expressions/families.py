"""Which patterns does the topic have, and for whom? One family of items for each.

Year levels and minutes are common practice, no source; a school changes them.
"""

from __future__ import annotations

from itembank.topics.expressions import fraction_patterns, patterns
from itembank.topics.kinds import Family

FAMILIES = (
    Family("like terms of one kind", 7, 1, patterns.one_kind),
    Family("like terms in two letters", 7, 1, patterns.two_letters),
    Family("like terms and numbers", 7, 1, patterns.letters_and_numbers),
    Family("like terms in powers", 8, 2, patterns.powers),
    Family("like terms in products of letters", 8, 2, patterns.products_of_letters),
    Family("letters and powers multiplied", 8, 1, patterns.letters_multiplied),
    Family("raise a term to a power", 8, 1, patterns.term_raised),
    Family("expand one bracket", 8, 1, patterns.one_bracket),
    Family("expand a bracket with a letter before it", 8, 1, patterns.letter_before_bracket),
    Family("expand a bracket of three terms", 8, 1, patterns.bracket_of_three),
    Family("expand a bracket and collect", 8, 2, patterns.bracket_and_terms),
    Family("expand after a minus", 8, 2, patterns.minus_before_bracket),
    Family("expand two brackets added or taken away", 8, 3, patterns.two_brackets_added),
    Family("expand brackets within brackets", 9, 3, patterns.brackets_within),
    Family("expand two brackets", 9, 2, patterns.double_bracket),
    Family("expand two brackets with coefficients", 9, 3, patterns.double_bracket_coefficients),
    Family("expand two brackets and collect", 9, 3, patterns.double_bracket_and_terms),
    Family("expand a square", 9, 2, patterns.square),
    Family("expand to a difference of squares", 9, 2, patterns.difference_of_squares),
    Family("expand two brackets after a minus", 10, 4, patterns.minus_before_product),
    Family("expand two squares", 10, 4, patterns.squares_added),
    Family("expand three brackets", 10, 5, patterns.three_brackets),
    Family("put a value in", 7, 1, patterns.value_in_linear),
    Family("put a value in a square", 8, 2, patterns.value_in_square),
    Family("put two values in", 7, 2, patterns.values_of_two),
    Family("put two values in, with powers", 8, 2, patterns.values_of_two_powers),
    Family("put a value in a bracket", 8, 2, patterns.value_in_bracket),
    Family("put two values in a fraction", 8, 2, patterns.value_in_fraction),
    Family("cancel numbers and letters", 9, 1, fraction_patterns.monomials_over),
    Family("divide powers of a letter", 9, 1, fraction_patterns.powers_over),
    Family("cancel a number", 9, 2, fraction_patterns.sum_over_number),
    Family("cancel a common factor", 10, 3, fraction_patterns.common_factor_cancelled),
    Family("cancel with a difference of squares", 10, 2, fraction_patterns.squares_over_bracket),
    Family("cancel with a quadratic", 10, 3, fraction_patterns.quadratic_over_bracket),
    Family("cancel two quadratics", 11, 4, fraction_patterns.quadratic_over_quadratic),
    Family("multiply fractions with letters", 10, 3, fraction_patterns.fractions_multiplied),
    Family("divide fractions with letters", 10, 3, fraction_patterns.fractions_divided),
    Family("add fractions, numbers below", 9, 2, fraction_patterns.fractions_with_numbers_below),
    Family("add fractions, sums above", 10, 3, fraction_patterns.sums_over_numbers),
    Family("add a fraction and a term", 10, 3, fraction_patterns.fraction_and_term),
    Family("add fractions, letters below", 10, 3, fraction_patterns.letters_below),
    Family("add fractions, brackets below", 11, 4, fraction_patterns.brackets_below),
    Family("add fractions, a quadratic below", 11, 5, fraction_patterns.quadratic_below),
    Family("expand a bracket of fractions", 9, 2, fraction_patterns.fractions_in_bracket),
)
