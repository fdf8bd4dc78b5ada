"""Which errors do pupils make in quadratic equations, and where are they described?

Those of moving terms, of expanding and of dividing are the shared ones
(:mod:`itembank.topics.catalogue`).
"""

from __future__ import annotations

from itembank.topics.catalogue import COMMON, CommonError

DIDIS = (
    "M. G. Didiş, S. Baş, A. K. Erbaş 2011, Students' reasoning in quadratic equations with one "
    "unknown, Proceedings of CERME 7"
)
DIDIS_ERBAS = (
    "M. G. Didiş, A. K. Erbaş 2015, Performance and difficulties of students in formulating and "
    "solving quadratic equations with one unknown, Educational Sciences: Theory & Practice 15(4), "
    "1137-1150"
)
VAIYAVUTJAMAI = (
    "P. Vaiyavutjamai, M. A. Clements 2006, Effects of classroom instruction on students' "
    "understanding of quadratic equations, Mathematics Education Research Journal 18(1), 47-77"
)
OCONNOR = (
    "B. R. O'Connor, S. Norton 2022, Exploring the challenges of learning quadratic equations, "
    "Mathematics Education Research Journal (null factor law; abstract)"
)
MAKGAKGA = (
    "T. P. Makgakga 2023, Solving quadratic equations by completing the square, Pythagoras 44(1), "
    "a742 (process errors)"
)

# Zero form and factors

LOST_ROOT = CommonError(
    "divided by the unknown",
    "both sides are divided by the unknown, and the solution 0 is lost",
    "every term holds the unknown",
    f"{DIDIS} (from memory)",
    "x^2 = 5x",
    "x = 5",
)
FACTORS_TO_NUMBER = CommonError(
    "factors set to a number other than 0",
    "each factor is set to the number on the other side, as if it were 0",
    "a product stands on one side, a number on the other",
    f"{DIDIS}; {OCONNOR}",
    "(x - 2)(x + 3) = 6",
    "x - 2 = 6 or x + 3 = 6",
)
NUMBER_SHARED = CommonError(
    "number shared between the factors",
    "the number on the other side is split into two factors, one for each bracket",
    "the product of two brackets is to equal a product of two numbers",
    DIDIS,
    "(x - 12)(x - 2) = 3",
    "x - 12 = 3 or x - 2 = 1",
)
WRONG_PAIR = CommonError(
    "wrong pair of factors",
    "the factors do not multiply out to the equation",
    "only the sum, or only the product, of the two numbers is looked at",
    f"{DIDIS_ERBAS} (from memory)",
    "x^2 + 3x - 10 = 0",
    "(x + 10)(x - 1) = 0",
)
PAIR_SIGNS = CommonError(
    "signs of the factors exchanged",
    "the numbers in the factors are the right ones with the wrong signs",
    "the constant is negative, and only its size is split into factors",
    COMMON,
    "x^2 + 3x - 10 = 0",
    "(x - 5)(x + 2) = 0",
)
SIGNS_TURNED = CommonError(
    "signs of the solutions turned",
    "the numbers are read off the factors with their signs",
    "the step from a factor to its solution is left out",
    COMMON,
    "(x - 2)(x + 5) = 0",
    "x = -2 or x = 5",
)
ONE_SIGN_TURNED = CommonError(
    "sign of one solution turned",
    "the number of one factor is read off with its sign",
    "one factor is solved in the head",
    COMMON,
    "(x - 2)(x + 5) = 0",
    "x = -2 or x = -5",
)
COEFFICIENT_IGNORED = CommonError(
    "coefficient in a factor ignored",
    "a factor is solved as if its unknown had no coefficient",
    "the other factor has none",
    COMMON,
    "(2x - 3)(x + 5) = 0",
    "x = 3 or x = -5",
)
FACTOR_UPSIDE_DOWN = CommonError(
    "solution of a factor upside down",
    "in solving a factor the coefficient is divided by the number",
    "the coefficient is the larger number, or stands first",
    COMMON,
    "(2x - 3)(x + 5) = 0",
    "x = 2/3 or x = -5",
)
ONE_FACTOR = CommonError(
    "one solution only",
    "one of the two solutions is given, the other left out",
    "an equation is felt to have one solution",
    VAIYAVUTJAMAI,
    "(x - 2)(x + 5) = 0",
    "x = 2",
)

# Roots

PLUS_MINUS = CommonError(
    "plus or minus forgotten",
    "the root is taken with the plus sign only",
    "the root of a number is its positive root",
    f"{VAIYAVUTJAMAI} (the form: from memory)",
    "(x - 3)^2 = 7",
    "x = 3 + √7",
)
HALVED = CommonError(
    "halved rather than rooted",
    "the square is undone by halving",
    "squaring is taken for doubling",
    COMMON,
    "x^2 = 16",
    "x = ±8",
)
NO_ROOT = CommonError(
    "root not taken",
    "the square goes and the number on the other side stays as it was",
    "undoing the square is done on one side only",
    COMMON,
    "(x - 3)^2 = 7",
    "x - 3 = ±7",
)
NEGATIVE_ROOT = CommonError(
    "root of a negative number taken",
    "the root of a negative number is taken as if the number were positive",
    "every quadratic equation is felt to have solutions",
    COMMON,
    "x^2 = -9",
    "x = ±3",
)
ROOT_BY_TERM = CommonError(
    "root taken term by term",
    "the root of a sum is taken as the sum of the roots",
    "both terms are squares",
    COMMON,
    "x^2 + 9 = 25",
    "x + 3 = ±5",
)
FACTOR_SQUARED = CommonError(
    "factor taken into the square",
    "the factor before a square is multiplied into the bracket that is squared",
    "a factor before a bracket is multiplied in",
    COMMON,
    "4(x - 1)^2 = 36",
    "(4x - 4)^2 = 36",
)
ROOT_OF_LETTER = CommonError(
    "coefficient left outside the root",
    "the root of the number is taken, and the coefficient of the square stays",
    "the square belongs to the letter alone",
    COMMON,
    "3x^2 = 48",
    "3x = ±√48",
)

# The formula

FORMULA_B = CommonError(
    "sign of b in the formula",
    "the formula starts with b rather than -b",
    "b is negative, or the minus is taken for a sign of b's own",
    f"{DIDIS_ERBAS} (from memory)",
    "2x^2 - 3x - 1 = 0",
    "x = (-3 ± √17)/4",
)
FORMULA_4AC = CommonError(
    "sign of 4ac in the formula",
    "4ac has the wrong sign below the root",
    "a or c is negative",
    COMMON,
    "2x^2 - 3x - 1 = 0",
    "x = (3 ± √1)/4",
)
FORMULA_SQUARE = CommonError(
    "square of a negative number taken as negative",
    "below the root the square of a negative b is subtracted",
    "the minus is not squared with the number",
    COMMON,
    "x^2 - 5x + 3 = 0",
    "x = (5 ± √-37)/2",
)
FORMULA_ENDS = CommonError(
    "a and c exchanged in the formula",
    "the formula takes the number for a and the coefficient of the square for c",
    "the number stands first",
    COMMON,
    "12 - 4x - x^2 = 0",
    "x = (4 ± √64)/24",
)
FORMULA_BAR = CommonError(
    "division bar too short",
    "only the root is divided by 2a",
    "the bar is drawn under the root alone",
    COMMON,
    "2x^2 - 3x - 1 = 0",
    "x = 3 ± √17/4",
)
FORMULA_2A = CommonError(
    "2a in the formula wrong",
    "the formula is divided by a, or by 2, rather than by 2a",
    "the denominator is remembered in part",
    COMMON,
    "2x^2 - 3x - 1 = 0",
    "x = (3 ± √17)/2",
)
FORMULA_ROOT = CommonError(
    "root sign of the formula left out",
    "b² - 4ac is added and subtracted without its root",
    "the number below the root is worked out by itself and put back",
    COMMON,
    "x^2 + 3x - 10 = 0",
    "x = (-3 ± 49)/2",
)

# Completing the square

NOT_SUBTRACTED = CommonError(
    "square not subtracted",
    "half the coefficient is put into the bracket and its square is not taken away again",
    "the square is written and felt to be the whole",
    f"{MAKGAKGA}; the form: {COMMON}",
    "x^2 + 6x + 2 = 0",
    "(x + 3)^2 + 2 = 0",
)
NOT_SQUARED = CommonError(
    "half the coefficient not squared",
    "half the coefficient is taken away rather than its square",
    "squaring it is forgotten",
    f"{MAKGAKGA}; the form: {COMMON}",
    "x^2 + 6x + 2 = 0",
    "(x + 3)^2 - 3 + 2 = 0",
)
NOT_HALVED = CommonError(
    "coefficient not halved",
    "the whole coefficient is put into the bracket",
    "the two equal middle terms of a square are not thought of",
    f"{MAKGAKGA}; the form: {COMMON}",
    "x^2 + 6x + 2 = 0",
    "(x + 6)^2 - 36 + 2 = 0",
)
SQUARE_ADDED = CommonError(
    "square added rather than subtracted",
    "the square of half the coefficient is added on the side of the bracket",
    "the number is added on the other side, or so it is remembered",
    f"{MAKGAKGA}; the form: {COMMON}",
    "x^2 + 6x + 2 = 0",
    "(x + 3)^2 + 9 + 2 = 0",
)

# Multiplying out

DOUBLED = CommonError(
    "doubled rather than squared",
    "the number of a squared bracket is doubled",
    "squaring is taken for doubling",
    COMMON,
    "(x + 3)^2",
    "x^2 + 6x + 6",
)
