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
MACGREGOR = (
    "M. MacGregor and K. Stacey 1997, Students' understanding of algebraic notation: 11-15, "
    "Educational Studies in Mathematics 33, 1-19 (from memory)"
)
KUCHEMANN = (
    "D. Küchemann 1981, Algebra, in K. Hart (ed.), Children's Understanding of Mathematics: 11-16 "
    "(from memory)"
)
RUHL = (
    "K. Ruhl, J. Balatti and S. Belward 2011, Value of written reflections in understanding "
    "student thinking: the case of incorrect simplification of a rational expression (from memory)"
)
OTTEN = (
    "S. Otten, L. Males and H. Figueras 2008, Algebra students' simplification of rational "
    "expressions (from memory)"
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

# Values put in

DIGIT = CommonError(
    "value written as a digit",
    "the value is written behind the number as its next digit, not multiplied",
    "a number beside a letter is read as a place",
    f"{KUCHEMANN}; {MACGREGOR}",
    "2x, x = 3",
    "23",
)
VALUE_ADDED = CommonError(
    "value added to the coefficient",
    "the value is added to the number before the letter",
    "nothing is written between the number and the letter",
    MACGREGOR,
    "2x + 1, x = 3",
    "2 + 3 + 1",
)
SIGN_NOT_PUT = CommonError(
    "minus of a value left out",
    "a negative value is put in without its minus",
    "the value is written without a bracket",
    COMMON,
    "5 + 3x, x = -2",
    "5 + 3 × 2",
)
VALUES_EXCHANGED = CommonError(
    "values exchanged",
    "the values of two letters are put in the wrong way round",
    "the letters stand in another order than their values",
    COMMON,
    "3x - 2y, x = 4, y = 5",
    "3 × 5 - 2 × 4",
)
MINUS_BEFORE_SQUARE = CommonError(
    "minus before a square",
    "a negative value is squared without its minus, which stays before the square",
    "no bracket is written round the negative value",
    CANGELOSI,
    "x^2, x = -3",
    "-3^2",
)
SQUARED_DOUBLED = CommonError(
    "value doubled rather than squared",
    "the value is multiplied by the power",
    "the power is read as a factor",
    CANGELOSI,
    "x^2, x = 5",
    "10",
)
PRODUCT_SQUARED = CommonError(
    "product squared",
    "the number before the letter is squared too",
    "multiplying is done from left to right, before the power",
    COMMON,
    "3x^2, x = 4",
    "144",
)
LEFT_TO_RIGHT = CommonError(
    "worked from left to right",
    "a sum is worked out before the product that stands behind it",
    "operations are done in the order in which they are written",
    COMMON,
    "5 + 3x, x = 2",
    "8 × 2",
)
MINUS_MINUS = CommonError(
    "minus of a negative lost",
    "taking away a negative number is worked as taking away the number",
    "two signs stand side by side",
    COMMON,
    "7 - y, y = -3",
    "7 - 3",
)
PRODUCT_OF_NEGATIVES = CommonError(
    "sign of a product lost",
    "a product of negative numbers gets the wrong sign",
    "several signs have to be kept in mind",
    COMMON,
    "xy, x = -2, y = -5",
    "-10",
)

# Fractions

TERMS_CANCELLED = CommonError(
    "term of a sum cancelled",
    "a term of a sum above the bar is cancelled against a term of a sum below it",
    "the same term is seen above and below",
    f"{MATZ}; {RUHL}",
    "(x + 6)/(x + 2)",
    "6/2",
)
ONE_TERM_CANCELLED = CommonError(
    "cancelled against one term only",
    "a factor below the bar is cancelled against one term of the sum above it, or the reverse",
    "one term has the factor",
    f"{MATZ}; {OTTEN}",
    "(6x + 5)/3",
    "2x + 5",
)
WRONG_FACTORS = CommonError(
    "factors with wrong signs",
    "the numbers in the factors are right and a sign is wrong",
    "the product of the numbers is looked at, not their sum",
    COMMON,
    "x^2 - 9",
    "(x - 3)(x - 3)",
)
CANCELLED_TO_ZERO = CommonError(
    "nothing left above taken as no fraction",
    "where everything above the bar cancels, what is left below is written as the answer",
    "what cancels is felt to be gone",
    OTTEN,
    "(x + 3)/((x + 3)(x - 2))",
    "x - 2",
)
POWERS_DIVIDED = CommonError(
    "powers divided rather than subtracted",
    "the powers of a letter are divided where the letters are divided",
    "dividing is done to every number in sight",
    COMMON,
    "x^6/x^2",
    "x^3",
)
NUMBERS_SUBTRACTED = CommonError(
    "numbers subtracted rather than divided",
    "the number below is taken away from the number above",
    "the powers have just been subtracted",
    COMMON,
    "12x/4",
    "8x",
)
ADDED_ACROSS = CommonError(
    "fractions added straight across",
    "numerators are added, and denominators too",
    "each row is seen as a sum of its own",
    f"{OTTEN}; {COMMON}",
    "2/x + 3/y",
    "5/(x + y)",
)
ONE_BAR_KEPT = CommonError(
    "fractions added over one of their denominators",
    "numerators are added, and one of the two denominators is kept",
    "the denominators are taken to be alike",
    COMMON,
    "3/x + 1/(2x)",
    "4/x",
)
TOPS_KEPT = CommonError(
    "numerators not multiplied",
    "the common denominator is written and the numerators are left as they were",
    "attention is on the denominator",
    COMMON,
    "2/x + 3/y",
    "5/(xy)",
)
ONE_TOP_KEPT = CommonError(
    "one numerator not multiplied",
    "one numerator is left as it was when its denominator is changed",
    "only one fraction seems to need a change",
    COMMON,
    "2/x + 3/y",
    "(2y + 3)/(xy)",
)
FIRST_TERMS_ONLY = CommonError(
    "only the first term of each numerator multiplied",
    "the numerators are multiplied for the common denominator, each in its first term only",
    "the bar is not read as a bracket",
    COMMON,
    "(x + 1)/2 + (x - 3)/5",
    "(5x + 1 + 2x - 3)/10",
)
OWN_DENOMINATOR = CommonError(
    "numerators multiplied by their own denominators",
    "each numerator is multiplied by its own denominator rather than by the other's",
    "multiplying across is remembered as a pattern",
    COMMON,
    "2/x + 3/y",
    "(2x + 3y)/(xy)",
)
BARS_GONE = CommonError(
    "denominators dropped",
    "the fractions are multiplied by the common denominator, as in an equation",
    "clearing fractions is remembered from equations",
    COMMON,
    "x/2 + x/3",
    "3x + 2x",
)
MINUS_FIRST_TERM = CommonError(
    "minus before a fraction reaches the first term only",
    "the minus before a fraction turns the sign of its first term and not of the others",
    "the bar is not read as a bracket",
    COMMON,
    "(x + 1)/2 - (x - 3)/4",
    "(2x + 2 - x - 3)/4",
)
NOT_TURNED = CommonError(
    "multiplied rather than divided",
    "the second fraction is not turned over when the division is made a multiplication",
    "the sign is changed and the fraction copied",
    COMMON,
    "x/3 ÷ 2/y",
    "2x/(3y)",
)
FIRST_TURNED = CommonError(
    "first fraction turned over",
    "the first fraction is turned over, not the second",
    "that one of them is turned over is all that is remembered",
    COMMON,
    "x/3 ÷ 2/y",
    "6/(xy)",
)
CROSS_MULTIPLIED = CommonError(
    "multiplied across",
    "two fractions are multiplied as if one were divided by the other",
    "multiplying across is remembered from equations",
    COMMON,
    "x/3 × 2/y",
    "xy/6",
)
