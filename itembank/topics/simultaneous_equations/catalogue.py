"""Which errors do pupils make with simultaneous equations? Each in plain words, with its source.

Those of one equation, once one unknown is left, are the catalogue's of linear equations.
"""

from __future__ import annotations

from itembank.topics.catalogue import COMMON, CommonError

JOHARI = (
    "P. M. A. R. Pg. Johari and M. Shahrill 2020, The common errors in the learning of the "
    "simultaneous equations, Infinity 9(2), 263-274"
)
BOOTH_L = "L. R. Booth 1984, Algebra: Children's Strategies and Errors, NFER-Nelson (from memory)"

# Making ready

RIGHT_NOT_MULTIPLIED = CommonError(
    "right side not multiplied",
    "the terms in the unknowns are multiplied and the number on the right is left as it was",
    "the aim is a coefficient on the left",
    COMMON,
    "2x + y = 7, times 3",
    "6x + 3y = 7",
)
TERM_NOT_MULTIPLIED = CommonError(
    "one term not multiplied when matching",
    "one term in an unknown is multiplied and the other left as it was",
    "only the coefficient that is to match is looked at",
    COMMON,
    "2x + y = 7, times 3",
    "6x + y = 21",
)
ONE_TERM_MULTIPLIED = CommonError(
    "only the matching term multiplied",
    "the one term that is to match is multiplied and all else left as it was",
    "only the coefficient that is to match is looked at",
    COMMON,
    "2x + y = 7, times 3",
    "2x + 3y = 7",
)
MULTIPLYING_SIGN = CommonError(
    "sign lost in multiplying an equation",
    "a term is multiplied by the right number but has the wrong sign",
    "a minus stands before the term",
    COMMON,
    "3x - 2y = 8, times 2",
    "6x + 4y = 16",
)
SUBJECT_SIGN = CommonError(
    "subject made with a wrong sign",
    "a term is taken to the other side to leave one unknown alone and keeps its sign",
    "the term is moved as a thing, not undone by an operation",
    f"wrong subject: {JOHARI}; the form: {COMMON}",
    "2x + y = 7",
    "y = 7 + 2x",
)
SUBJECT_NOT_DIVIDED = CommonError(
    "one term not divided in making the subject",
    "the number or the other unknown's term is left as it was when the coefficient is divided out",
    "the division is written under one term only",
    f"wrong subject: {JOHARI}; the form: {COMMON}",
    "2y = 10 - 3x",
    "y = 5 - 3x",
)

# Eliminating

ADDED = CommonError(
    "equations added where they should be subtracted",
    "the terms that are the same are struck out, and all else is added",
    "adding is easier; the rule for the signs is turned round",
    COMMON,
    "2x + 3y = 12, 2x + y = 8",
    "4y = 20",
)
SUBTRACTED = CommonError(
    "equations subtracted where they should be added",
    "the terms of opposite sign are struck out, and all else is subtracted",
    "eliminating is remembered as subtracting",
    COMMON,
    "x + 2y = 8, 3x - 2y = 8",
    "2x = 0",
)
NEGATIVE_SUBTRACTED = CommonError(
    "sign lost in subtracting a negative",
    "a negative term is subtracted as if it were positive",
    "two signs meet and one is dropped",
    COMMON,
    "2x + 3y = 12, 2x - y = 4",
    "2y = 8",
)
ONE_TERM_COMBINED = CommonError(
    "one term combined with the other sign",
    "one term is added and the others subtracted, or the other way round",
    "the operation is begun afresh at each term",
    COMMON,
    "2x + 3y = 12, 2x + y = 8",
    "4y = 4",
)
RIGHT_NOT_COMBINED = CommonError(
    "right sides not combined",
    "the left sides are combined and one of the right sides is kept",
    "attention is on the unknown that goes",
    COMMON,
    "x + 2y = 8, 3x - 2y = 12",
    "4x = 8",
)
WRONG_WAY = CommonError(
    "one side subtracted the wrong way round",
    "the left sides are subtracted in one order, the right sides in the other",
    "the smaller number is taken from the larger",
    COMMON,
    "2x + y = 8, 2x + 3y = 12",
    "2y = -4",
)

# Substituting an expression

NO_BRACKET = CommonError(
    "expression put in without a bracket",
    "the coefficient multiplies only the first term of the expression put in",
    "the expression is copied in place of the letter",
    f"wrong substitution: {JOHARI}; the form: {COMMON}",
    "y = 7 - 2x, 3x + 2y = 12",
    "3x + 14 - 2x = 12",
)
MINUS_NOT_THROUGH = CommonError(
    "minus not carried through the expression",
    "the minus before the letter turns the sign of the first term put in and no other",
    "the expression is copied in place of the letter",
    f"wrong substitution: {JOHARI}; the form: {COMMON}",
    "y = 7 - 2x, 3x - y = 3",
    "3x - 7 - 2x = 3",
)
COEFFICIENT_LOST = CommonError(
    "coefficient lost in putting in an expression",
    "the expression takes the place of the letter together with its coefficient",
    "the whole term is taken for the unknown",
    f"wrong substitution: {JOHARI}; the form: {COMMON}",
    "y = 7 - 2x, 3x + 2y = 12",
    "3x + 7 - 2x = 12",
)

# Substituting a value

WRONG_PLACE = CommonError(
    "value put in for the wrong unknown",
    "the value of one unknown is put in for the other",
    "the letters are not watched",
    f"wrong substitution: {JOHARI}; the form: {COMMON}",
    "x = 3 in 2x + y = 7",
    "2x + 3 = 7",
)
VALUE_FOR_TERM = CommonError(
    "value put in for the whole term",
    "the value takes the place of the letter together with its coefficient",
    "the whole term is taken for the unknown",
    f"wrong substitution: {JOHARI}; the form: {COMMON}",
    "x = 3 in 2x + y = 7",
    "3 + y = 7",
)
VALUE_SIGN = CommonError(
    "sign lost in putting in a value",
    "the term has the right size and the wrong sign once the value is put in",
    "the value, or the term's coefficient, is negative",
    COMMON,
    "y = -2 in 3x + 4y = 1",
    "3x + 8 = 1",
)
VALUE_BESIDE = CommonError(
    "value written beside the coefficient",
    "the digits of the value are written after those of the coefficient",
    "a product with nothing between its factors is read as a number's digits",
    BOOTH_L,
    "x = 3 in 2x + y = 7",
    "23 + y = 7",
)
VALUE_ADDED = CommonError(
    "value added to the coefficient",
    "the coefficient and the value are added rather than multiplied",
    "nothing is written between the coefficient and the letter",
    COMMON,
    "x = 3 in 2x + y = 7",
    "5 + y = 7",
)
SWAPPED = CommonError(
    "values exchanged",
    "each unknown is given the other one's value",
    "the values are found and then written down in the wrong order",
    COMMON,
    "x = 3, y = 1",
    "x = 1, y = 3",
)

OWN = (
    RIGHT_NOT_MULTIPLIED,
    TERM_NOT_MULTIPLIED,
    ONE_TERM_MULTIPLIED,
    MULTIPLYING_SIGN,
    SUBJECT_SIGN,
    SUBJECT_NOT_DIVIDED,
    ADDED,
    SUBTRACTED,
    NEGATIVE_SUBTRACTED,
    ONE_TERM_COMBINED,
    RIGHT_NOT_COMBINED,
    WRONG_WAY,
    NO_BRACKET,
    MINUS_NOT_THROUGH,
    COEFFICIENT_LOST,
    WRONG_PLACE,
    VALUE_FOR_TERM,
    VALUE_SIGN,
    VALUE_BESIDE,
    VALUE_ADDED,
    SWAPPED,
)

_OFTEN = {
    NEGATIVE_SUBTRACTED: 120,
    ADDED: 100,
    SUBTRACTED: 60,
    RIGHT_NOT_MULTIPLIED: 80,
    TERM_NOT_MULTIPLIED: 40,
    ONE_TERM_COMBINED: 40,
    NO_BRACKET: 60,
    MINUS_NOT_THROUGH: 60,
    SUBJECT_SIGN: 60,
    VALUE_SIGN: 50,
    WRONG_PLACE: 25,
    MULTIPLYING_SIGN: 30,
}
RARE = 8


def frequency(error: str) -> int:
    """How often pupils make an error against the others: an estimate of our own, no source."""
    return {known.name: often for known, often in _OFTEN.items()}.get(error, RARE)
