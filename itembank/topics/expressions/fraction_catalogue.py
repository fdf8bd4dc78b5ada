"""Which errors do pupils make with fractions of expressions? Each with its source."""

from __future__ import annotations

from itembank.topics.catalogue import COMMON, MATZ, CommonError

RUHL = (
    "K. Ruhl, J. Balatti and S. Belward 2011, Value of written reflections in understanding "
    "student thinking: the case of incorrect simplification of a rational expression (from memory)"
)
OTTEN = (
    "S. Otten, L. Males and H. Figueras 2008, Algebra students' simplification of rational "
    "expressions (from memory)"
)

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
MULTIPLIED_NOT_ADDED = CommonError(
    "fractions multiplied rather than added",
    "numerators are multiplied, and denominators too",
    "multiplying fractions has just been practised",
    COMMON,
    "x/2 + x/5",
    "x^2/10",
)
WRONG_PRODUCT = CommonError(
    "factors that do not multiply out to it",
    "a product is written for one part of the fraction that is another expression",
    "the brackets are guessed, or only one term is looked at",
    COMMON,
    "(x^2 + 7x + 12)/(x + 3)",
    "(x + 2)(x + 6)/(x + 3)",
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
