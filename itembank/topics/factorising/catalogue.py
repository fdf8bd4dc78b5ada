"""Which errors do pupils make in factorising? Each in plain words, with its source."""

from __future__ import annotations

from itembank.topics.catalogue import COMMON, CommonError
from itembank.topics.factorising import cubes_catalogue

HANDOUT = (
    'the hand-out "Factoring Common Mistakes", a college mathematics support, author not named '
    "(studylib.net 14116526)"
)
NCUBE = (
    "M. Ncube 2016, Analysis of errors made by learners in simplifying algebraic expressions at "
    "grade 9 level, University of South Africa (abstract)"
)
KOTSOPOULOS = (
    "D. Kotsopoulos 2007, Unravelling student challenges with quadratics, The Australian "
    "Mathematics Teacher 63(2) (from memory)"
)
ZAKARIA = (
    "E. Zakaria, Ibrahim and S. M. Maat 2010, Analysis of students' error in learning of quadratic "
    "equations, International Education Studies 3(3) (from memory)"
)
MATZ = "M. Matz 1980, Journal of Mathematical Behavior 3 (from memory)"

# Common factors

ONE_TERM_ONLY = CommonError(
    "common factor taken out of one term only",
    "the common factor is written in front, but not every term in the bracket is divided by it",
    "the term that stands next to the factor takes all the attention",
    f"{HANDOUT}; {COMMON}",
    "6x + 9",
    "3(2x + 9)",
)
NOT_DIVIDED = CommonError(
    "common factor written, nothing divided",
    "the common factor is written in front and every term stays as it was",
    "the bracket is taken for a way to write the factor down",
    COMMON,
    "6x + 9",
    "3(6x + 9)",
)
ONE_LEFT_OUT = CommonError(
    "the 1 left out of the bracket",
    "a term that is the common factor itself leaves nothing in the bracket instead of 1",
    "a term that has been taken out is thought to be gone",
    HANDOUT,
    "3x + 3",
    "3(x)",
)
SUBTRACTED = CommonError(
    "common factor subtracted instead of divided",
    "the common factor is taken away from each number instead of dividing it",
    "to take out is read as to take away",
    COMMON,
    "6x + 9",
    "3(3x + 6)",
)
BRACKET_SIGN = CommonError(
    "sign lost in the bracket",
    "a term in the bracket has the wrong sign, mostly where a minus is taken out",
    "a minus stands in front, or between the terms",
    f"{COMMON}; {NCUBE}",
    "-3x + 6",
    "-3(x + 2)",
)
NOT_COMMON = CommonError(
    "a factor that is not common",
    "what is written before the bracket does not divide every term",
    "the number of the first term is taken out of all",
    COMMON,
    "6x + 9",
    "6(x + 9)",
)
UNLIKE_JOINED = CommonError(
    "unlike terms joined",
    "terms that are not alike are added to one term",
    "an answer is expected to be one term",
    NCUBE,
    "6x + 9",
    "15x",
)
COMMON_DROPPED = CommonError(
    "common factor dropped",
    "the common factor is taken out and then left out of the answer",
    "the brackets take all the attention, as when an equation is divided by it",
    f"{HANDOUT}; {ZAKARIA}",
    "2x^2 + 10x + 12",
    "(x + 2)(x + 3)",
)
SIGNS_TURNED = CommonError(
    "every sign turned",
    "the sign of every term is turned, and no minus stands before the bracket",
    "a minus before the square is unwelcome, and an equation may be turned like that",
    COMMON,
    "12 - 4x - x^2",
    "x^2 + 4x - 12",
)

# Squares

SQUARE_FOR_DIFFERENCE = CommonError(
    "a square for a difference of squares",
    "the difference of two squares is taken for the square of a difference",
    "both hold two squares and a minus",
    f"{MATZ}; {COMMON}",
    "x^2 - 9",
    "(x - 3)^2",
)
SUM_OF_SQUARES = CommonError(
    "sum of squares factorised",
    "a sum of two squares is factorised as if it were a difference",
    "the two squares are seen, the sign between them is not",
    COMMON,
    "2x^2 + 18",
    "2(x + 3)(x - 3)",
)
ROOT_NOT_TAKEN = CommonError(
    "square root not taken",
    "a number of the difference of squares stands in the brackets without its square root",
    "the pattern of the two brackets is known, what goes into them is not",
    HANDOUT,
    "9x^2 - 4",
    "(9x - 4)(9x + 4)",
)
HALVED = CommonError(
    "number halved instead of its root taken",
    "half the number stands in the brackets instead of its square root",
    "a square is read as a double",
    COMMON,
    "x^2 - 16",
    "(x - 8)(x + 8)",
)

# Quadratics

WRONG_PAIR = CommonError(
    "numbers with the right product, the wrong sum",
    "the numbers multiply to the last term but do not make the middle term",
    "the first pair that multiplies rightly is taken",
    f"{KOTSOPOULOS}; {COMMON}",
    "x^2 + 5x + 6",
    "(x + 1)(x + 6)",
)
WRONG_PRODUCT = CommonError(
    "numbers with the right sum, the wrong product",
    "the numbers add to the middle term but do not multiply to the last",
    "only the sum is checked",
    COMMON,
    "x^2 + 5x + 6",
    "(x + 1)(x + 4)",
)
FACTOR_SIGN = CommonError(
    "sign of a factor wrong",
    "the numbers are right and a sign in front of one or both is not",
    "the last or the middle term is negative",
    f"{ZAKARIA}; {COMMON}",
    "x^2 - 5x + 6",
    "(x + 2)(x + 3)",
)
EXCHANGED = CommonError(
    "numbers in the wrong brackets",
    "the right numbers stand in each other's bracket, so that the middle term is wrong",
    "the leading coefficient is not 1 and the middle term is not checked",
    KOTSOPOULOS,
    "6x^2 + 17x + 12",
    "(2x + 4)(3x + 3)",
)
LEADING_LOST = CommonError(
    "leading coefficient lost",
    "the two numbers of the split middle term are written into brackets that begin with 1",
    "the method for a leading coefficient of 1 is used for every quadratic",
    f"{KOTSOPOULOS}; {COMMON}",
    "6x^2 + 17x + 12",
    "(x + 8)(x + 9)",
)
LETTER_LOST = CommonError(
    "second letter lost",
    "the second letter is left out of the brackets",
    "the numbers take all the attention",
    COMMON,
    "x^2 + 5xy + 6y^2",
    "(x + 2)(x + 3)",
)
TERMS_DO_NOT_MATCH = CommonError(
    "brackets that do not multiply out to the expression",
    "multiplied out, the brackets give fewer than two terms of the expression",
    "the numbers of the expression are written into the brackets, or the brackets are guessed",
    COMMON,
    "x^2 + 5x + 6",
    "(x + 5)(x + 6)",
)

# Grouping

GROUP_SIGN = CommonError(
    "sign in the second bracket not turned",
    "a minus is taken out of the second pair and the sign in its bracket stays",
    "the second pair begins with a minus",
    f"{HANDOUT}; {COMMON}",
    "x^2 - 2x - 3x + 6",
    "x(x - 2) - 3(x + 2)",
)
BRACKET_TWICE = CommonError(
    "common bracket kept twice",
    "the common bracket is written once for each term that it comes from",
    "both brackets are copied into the product",
    COMMON,
    "a(x + y) + b(x + y)",
    "(a + b)(x + y)^2",
)
OUTSIDE_MULTIPLIED = CommonError(
    "outside factors multiplied",
    "the factors outside the common bracket are multiplied instead of added",
    "a product is wanted, and so everything is multiplied",
    COMMON,
    "a(x + y) + b(x + y)",
    "ab(x + y)",
)
OUTSIDE_LOST = CommonError(
    "the 1 before a common bracket left out",
    "a common bracket that stands by itself leaves nothing instead of 1",
    "no number is seen before the bracket",
    HANDOUT,
    "x(x + 2) + (x + 2)",
    "x(x + 2)",
)

ERRORS = (
    ONE_TERM_ONLY, NOT_DIVIDED, ONE_LEFT_OUT, SUBTRACTED, BRACKET_SIGN, NOT_COMMON, UNLIKE_JOINED,
    COMMON_DROPPED, SIGNS_TURNED, SQUARE_FOR_DIFFERENCE, SUM_OF_SQUARES, ROOT_NOT_TAKEN, HALVED,
    WRONG_PAIR, WRONG_PRODUCT, FACTOR_SIGN, EXCHANGED, LEADING_LOST, LETTER_LOST,
    TERMS_DO_NOT_MATCH, GROUP_SIGN, BRACKET_TWICE, OUTSIDE_MULTIPLIED, OUTSIDE_LOST,
    *cubes_catalogue.ERRORS,
)  # fmt: skip

_OFTEN = {
    error.name: often
    for error, often in (
        (WRONG_PAIR, 5), (FACTOR_SIGN, 6), (ONE_TERM_ONLY, 5), (ONE_LEFT_OUT, 4),
        (COMMON_DROPPED, 3), (SQUARE_FOR_DIFFERENCE, 4), (LEADING_LOST, 3), (GROUP_SIGN, 5),
        (EXCHANGED, 3), (ROOT_NOT_TAKEN, 3), (BRACKET_SIGN, 4), (WRONG_PRODUCT, 2),
        (cubes_catalogue.CUBES_SIGN, 5), (cubes_catalogue.MIDDLE_DOUBLED, 4),
        (cubes_catalogue.CUBE_OF_SUM, 4), (cubes_catalogue.ROOTS_SIGN, 2),
    )
}  # fmt: skip


def frequency(error: str) -> int:
    """How often pupils make an error against the others (common practice, no source)."""
    return _OFTEN.get(error, 1)
