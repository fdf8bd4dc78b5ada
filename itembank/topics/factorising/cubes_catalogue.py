"""Which errors do pupils make with two cubes? Each in plain words, with its source."""

from __future__ import annotations

from itembank.topics.catalogue import COMMON, CommonError

WARNED_OF = (
    "L. Marecek, M. Anthony-Smith and A. Honeycutt Mathis 2020, Elementary Algebra 2e, OpenStax, "
    "section 7.4, where the book warns of it"
)

CUBE_OF_SUM = CommonError(
    "a cube for a sum of cubes",
    "the sum of two cubes is taken for the cube of a sum",
    "both hold two cubes",
    COMMON,
    "x^3 + 8",
    "(x + 2)^3",
)
ROOTS_SIGN = CommonError(
    "sign between the cube roots turned",
    "the bracket of the cube roots has the other sign than the cubes",
    "the signs of the two patterns are exchanged",
    f"{WARNED_OF}; {COMMON}",
    "x^3 + 8",
    "(x - 2)(x^2 + 2x + 4)",
)
CUBES_SIGN = CommonError(
    "sign in the bracket of three terms wrong",
    "the middle term has the same sign as the cubes, or the last term a minus",
    "one of the three signs is not remembered",
    f"{WARNED_OF}; {COMMON}",
    "x^3 + 8",
    "(x + 2)(x^2 + 2x + 4)",
)
MIDDLE_DOUBLED = CommonError(
    "middle term doubled, as in a square",
    "the bracket of three terms is the square of a bracket: 2ab for ab",
    "three terms with two squares are known from a bracket squared",
    f"{WARNED_OF}; {COMMON}",
    "x^3 + 8",
    "(x + 2)(x^2 - 4x + 4)",
)
MIDDLE_LEFT_OUT = CommonError(
    "middle term left out",
    "the second bracket has the two squares alone",
    "the pattern of two squares is carried over to cubes",
    COMMON,
    "x^3 + 8",
    "(x + 2)(x^2 + 4)",
)
ROOT_NOT_SQUARED = CommonError(
    "number of a cube root not squared",
    "a number stands in the bracket of three terms as it does in the bracket of the roots",
    "the letter is squared, the number before it is not",
    COMMON,
    "27a^3 - 1",
    "(3a - 1)(3a^2 + 3a + 1)",
)
CUBE_ROOT_NOT_TAKEN = CommonError(
    "cube root not taken",
    "a number of the two cubes stands in the brackets without its cube root",
    "the pattern of the two brackets is known, what goes into them is not",
    COMMON,
    "x^3 + 8",
    "(x + 8)(x^2 - 8x + 64)",
)
DIVIDED_BY_THREE = CommonError(
    "divided by 3 for the cube root",
    "a third of a number stands for its cube root",
    "a cube is read as a threefold",
    COMMON,
    "27a^3 - 1",
    "(9a - 1)(81a^2 + 9a + 1)",
)
SQUARE_ROOT_TAKEN = CommonError(
    "square root for the cube root",
    "the square root of a number stands for its cube root",
    "the number is a square as well, and two squares are more usual",
    COMMON,
    "x^3 + 64",
    "(x + 8)(x^2 - 8x + 64)",
)

ERRORS = (
    CUBE_OF_SUM, ROOTS_SIGN, CUBES_SIGN, MIDDLE_DOUBLED, MIDDLE_LEFT_OUT, ROOT_NOT_SQUARED,
    CUBE_ROOT_NOT_TAKEN, DIVIDED_BY_THREE, SQUARE_ROOT_TAKEN,
)  # fmt: skip
