"""Which errors do pupils make with expressions? The topic's own catalogue, each with its source.

Errors on one bracket with a number before it and on like terms in one letter are those of
:mod:`itembank.topics.catalogue`. *From memory* stands where a detail was not checked against the
text.
"""

from __future__ import annotations

from itembank.topics.catalogue import COMMON, LIM, MATZ, CommonError

CANGELOSI = (
    "R. Cangelosi, S. Madrid, S. Cooper, J. Olson and B. Hartter 2013, The negative sign and "
    "exponential expressions, Journal of Mathematical Behavior 32(1), 69-82 (from memory)"
)
KUCHEMANN = (
    "D. Küchemann 1981, Algebra, in K. Hart (ed.), Children's Understanding of Mathematics: 11-16 "
    "(from memory)"
)
BOOTH84 = "L. R. Booth 1984, Algebra: Children's Strategies and Errors (from memory)"

# Products of brackets

FIRST_AND_LAST = CommonError(
    "first terms and last terms only",
    "the first terms are multiplied and the last terms, the two products between are left out",
    "the brackets are worked through side by side",
    MATZ,
    "(x + 3)(x + 5)",
    "x^2 + 15",
)
SQUARE_WITHOUT_MIDDLE = CommonError(
    "square of a sum without its middle term",
    "each term of the bracket is squared and the middle term left out",
    "the square is felt to reach each term by itself",
    f"{MATZ}; {LIM}",
    "(x + 3)^2",
    "x^2 + 9",
)
MIDDLE_ONCE = CommonError(
    "middle term of the square not doubled",
    "the product of the two terms is taken once, not twice",
    "the pattern of the square is half remembered",
    COMMON,
    "(x + 3)^2",
    "x^2 + 3x + 9",
)
SQUARE_SIGN = CommonError(
    "last term of the square with a minus",
    "the square of the second term keeps its minus",
    "the bracket holds a minus",
    COMMON,
    "(x - 3)^2",
    "x^2 - 6x - 9",
)
DOUBLED = CommonError(
    "bracket doubled rather than squared",
    "the bracket is multiplied by two",
    "the power is read as a factor",
    COMMON,
    "(x + 3)^2",
    "2x + 6",
)
PRODUCT_MISSING = CommonError(
    "one product left out",
    "one of the products of the brackets is missing",
    "the products are not written in a fixed order",
    LIM,
    "(x + 3)(x + 5)",
    "x^2 + 5x + 15",
)
PRODUCT_SIGN = CommonError(
    "sign of one product lost",
    "one of the products of the brackets has the wrong sign",
    "a bracket holds a minus",
    LIM,
    "(x - 3)(x + 5)",
    "x^2 + 5x + 3x - 15",
)
NUMBERS_ADDED = CommonError(
    "numbers of the brackets added",
    "the last terms are added where they should be multiplied",
    "the middle term has just been added",
    COMMON,
    "(x + 3)(x + 5)",
    "x^2 + 8x + 8",
)
LETTER_FIRST_ONLY = CommonError(
    "letter of the factor reaches some terms only",
    "the number of the factor multiplies every term of the bracket, its letter not",
    "the numbers are worked out first and the letter is forgotten",
    COMMON,
    "2a(a - 3)",
    "2a^2 - 6",
)
COEFFICIENT_FIRST_ONLY = CommonError(
    "number of the factor reaches some terms only",
    "the letter of the factor multiplies every term of the bracket, its number not",
    "the letters are worked out first and the number is forgotten",
    COMMON,
    "2a(a - 3)",
    "2a^2 - 3a",
)
SOME_TERMS_ONLY = CommonError(
    "some terms of the bracket only",
    "the factor multiplies several terms of the bracket, and not all of them",
    "the bracket has three terms or more, and the last is forgotten",
    COMMON,
    "2(x^2 - 3x - 18)",
    "2x^2 - 6x - 18",
)
BRACKETS_ADDED = CommonError(
    "brackets added rather than multiplied",
    "the two brackets are added",
    "nothing is written between the brackets",
    COMMON,
    "(x + 3)(x + 5)",
    "2x + 8",
)
FIRST_TERM_ONLY = CommonError(
    "only the first term of a bracket multiplies",
    "the second bracket is multiplied by the first term of the first one only",
    "two brackets are worked as if there were one with a term before it",
    COMMON,
    "(x + 3)(x + 5)",
    "x^2 + 5x + 3",
)
FACTOR_TWICE = CommonError(
    "factor multiplied into both brackets",
    "the number before two brackets is multiplied into each of them",
    "every bracket seems to need the factor",
    COMMON,
    "2(x + 1)(x + 3)",
    "(2x + 2)(2x + 6)",
)
FACTOR_FORGOTTEN = CommonError(
    "factor before the brackets forgotten",
    "the two brackets are multiplied and the factor before them is left out",
    "attention is on the two brackets",
    COMMON,
    "2(x + 1)(x + 3)",
    "x^2 + 4x + 3",
)
MINUS_ONE_PRODUCT = CommonError(
    "minus reaches the first product only",
    "a minus before a product of brackets turns the first term's sign and not the others'",
    "the product is written without a bracket round it",
    COMMON,
    "9 - (x + 1)(x + 2)",
    "9 - x^2 + 2x + x + 2",
)
LETTERS_DOUBLED = CommonError(
    "letter times letter taken as a double",
    "x times x is written as 2x",
    "multiplying a letter by itself is read as having two of it",
    LIM,
    "x(x + 3)",
    "2x + 3x",
)
LETTER_KEPT = CommonError(
    "letter times letter taken as the letter",
    "x times x is written as x",
    "the number is multiplied and the letter only copied",
    COMMON,
    "x(x + 3)",
    "x + 3x",
)
NOT_SQUARED = CommonError(
    "coefficient not raised to the power",
    "the power reaches the letter and not the number before it",
    "the power stands next to the letter",
    CANGELOSI,
    "(2x)^2",
    "2x^2",
)
POWER_OF_NUMBER_DOUBLED = CommonError(
    "number multiplied by the power",
    "the number is multiplied by the power where it should be raised to it",
    "the power is read as a factor",
    CANGELOSI,
    "(5x)^2",
    "10x^2",
)

# Powers and like terms

POWERS_MULTIPLIED = CommonError(
    "powers multiplied rather than added",
    "the powers of a letter are multiplied where the letters are multiplied",
    "multiplying is done to every number in sight",
    COMMON,
    "x^2 × x^3",
    "x^6",
)
POWER_ADDED = CommonError(
    "powers added rather than multiplied",
    "a power is raised to a power by adding the two",
    "the rule for a product has just been used",
    COMMON,
    "(x^2)^3",
    "x^5",
)
COEFFICIENTS_ADDED = CommonError(
    "coefficients added rather than multiplied",
    "the letters are multiplied and the numbers before them added",
    "collecting like terms has just been practised",
    COMMON,
    "2x × 3x",
    "5x^2",
)
UNLIKE_LETTERS = CommonError(
    "terms in different letters joined",
    "terms in different letters are joined as if they were like terms",
    "a sum is felt to be unfinished",
    f"{BOOTH84}; {KUCHEMANN}",
    "2a + 7b",
    "9ab",
)
POWERS_JOINED = CommonError(
    "different powers joined",
    "terms in different powers of a letter are joined as if they were like terms",
    "a sum is felt to be unfinished",
    LIM,
    "x^2 + x",
    "x^3",
)
LIKE_SQUARED = CommonError(
    "powers added in collecting",
    "like terms are added, and their powers too",
    "adding is done to every number in sight",
    LIM,
    "3x + 2x",
    "5x^2",
)
BARE_LETTER = CommonError(
    "letter without a number not counted",
    "a letter without a number before it is taken to be none of it",
    "no number is written before the letter",
    f"{KUCHEMANN}; the form: {COMMON}",
    "x + 3x",
    "3x",
)
TERM_LEFT = CommonError(
    "term left out",
    "a term is left out",
    "the line is long, or the term was dealt with in the head",
    COMMON,
    "5a + 2b - 3a",
    "2a",
)
