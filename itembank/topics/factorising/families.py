"""Which patterns does the topic have, and for whom? One family of items for each.

Year levels and minutes are common practice, no source; a school changes them.
"""

from __future__ import annotations

from itembank.topics.factorising import higher_patterns, patterns
from itembank.topics.kinds import Family

FAMILIES = (
    Family("common factor: a prime number", 7, 1, patterns.prime_factor),
    Family("common factor: a number taken out in one step or two", 8, 2, patterns.number_factor),
    Family("common factor: a letter", 8, 1, patterns.letter_factor),
    Family("common factor: a number and a letter", 8, 2, patterns.number_and_letter),
    Family("common factor: the whole term is the factor", 8, 2, patterns.one_left),
    Family("common factor: two letters", 9, 2, patterns.two_letters),
    Family("common factor: three terms", 9, 2, patterns.three_terms),
    Family("common factor: a minus before the letter", 9, 2, patterns.minus_first),
    Family("common factor: fractions", 10, 2, patterns.fractions),
    Family("a bracket as the common factor", 9, 2, patterns.bracket_factor),
    Family("difference of two squares", 9, 1, patterns.squares),
    Family("difference of two squares, a number before the letter", 9, 2, patterns.squares_number),
    Family("difference of two squares, two letters", 10, 2, patterns.squares_letters),
    Family("common factor, then a difference of two squares", 10, 3, patterns.common_squares),
    Family("common factor, then a sum of squares that stays", 10, 2, patterns.sum_of_squares),
    Family("quadratic, both numbers positive", 9, 2, patterns.quadratic_positive),
    Family("quadratic, both numbers negative", 9, 2, patterns.quadratic_negative),
    Family("quadratic, numbers of two signs", 9, 2, patterns.quadratic_mixed),
    Family("quadratic, a square", 9, 2, patterns.quadratic_square),
    Family("quadratic, the constant first", 10, 3, patterns.constant_first),
    Family("quadratic, a leading coefficient", 10, 4, patterns.leading),
    Family("quadratic, a composite leading coefficient", 10, 4, patterns.composite_leading),
    Family("quadratic, two letters", 10, 3, patterns.quadratic_letters),
    Family("common factor, then a quadratic", 10, 4, patterns.common_quadratic),
    Family("common factor, then a quadratic with a leading coefficient", 11, 5,
           patterns.common_leading),
    Family("a letter, then a quadratic", 10, 4, patterns.letter_quadratic),
    Family("four terms in pairs", 10, 3, patterns.pairs),
    Family("four terms in pairs, a minus before the second", 10, 3, patterns.pairs_minus),
    Family("a cubic of four terms", 11, 4, higher_patterns.cubic),
    Family("sum or difference of two cubes", 12, 3, higher_patterns.cubes),
    Family("common factor, then two cubes", 12, 4, higher_patterns.common_cubes),
    Family("two squares and a pair", 11, 4, higher_patterns.squares_and_pair),
    Family("difference of two squares twice", 11, 3, higher_patterns.fourth_powers),
    Family("a quadratic in the square of a letter", 11, 4, higher_patterns.quadratic_in_squares),
    Family("three terms a square, then a difference of two squares", 11, 4,
           higher_patterns.square_and_square),
)  # fmt: skip
