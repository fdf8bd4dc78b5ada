"""Which errors do pupils make in putting values in? Each with its source."""

from __future__ import annotations

from itembank.topics.catalogue import COMMON, CommonError
from itembank.topics.expressions.catalogue import CANGELOSI, KUCHEMANN

MACGREGOR = (
    "M. MacGregor and K. Stacey 1997, Students' understanding of algebraic notation: 11-15, "
    "Educational Studies in Mathematics 33, 1-19 (from memory)"
)

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
BRACKETS_FORGOTTEN = CommonError(
    "brackets of a sum forgotten",
    "a sum is put in without the bracket that it needs, and only the part next to it is worked",
    "the line is worked as it stands written",
    COMMON,
    "(2x + y)/4, x = 5, y = 6",
    "2 × 5 + 6 ÷ 4",
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
