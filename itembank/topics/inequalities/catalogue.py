"""Which errors do pupils make with the sign of an inequality? Each in plain words, with its source.

The errors that inequalities share with equations stand in :mod:`itembank.topics.catalogue`.
"""

from __future__ import annotations

from itembank.topics.catalogue import COMMON, CommonError

MUTODI = (
    "P. Mutodi, M. Mosimege and K. Maphutha 2023, Learners' misconceptions and errors when solving "
    "inequalities, Mathematics Education Journal 7(2), 136-158 (abstract)"
)
KHATEEB = (
    "M. M. A. El-khateeb, Errors analysis of solving linear inequalities among the preparatory "
    "year students at King Saud University (abstract)"
)
BINEY = (
    "S. K. Biney, C. A. Ali and N. S. Adzifome 2023, Errors and misconceptions in solving linear "
    "inequalities in one variable, Journal of Advanced Sciences and Mathematics Education 3(1) "
    "(abstract)"
)

NOT_TURNED = CommonError(
    "sign of inequality not turned",
    "both sides are multiplied or divided by a negative number and the sign stays as it is",
    "the inequality is solved as an equation would be",
    f"the sign treated as a sign of equality: {MUTODI}; rules not known: {BINEY}",
    "-2x > 6",
    "x > -3",
)
TURNED = CommonError(
    "sign of inequality turned for nothing",
    "the sign is turned though nothing was multiplied or divided by a negative number",
    "a minus stands somewhere in the line, or a term is moved",
    COMMON,
    "2x > -6",
    "x < -3",
)
SIDES_EXCHANGED = CommonError(
    "sides exchanged, sign left",
    "the sides are exchanged and the sign stays as it is",
    "the unknown is wanted on the left",
    COMMON,
    "5 < x",
    "x < 5",
)
OPEN_CLOSED = CommonError(
    "open and closed end confused",
    "less than is written for less than or equal to, or the other way",
    "the line under the sign is overlooked or added",
    COMMON,
    "2x >= 6",
    "x > 3",
)
BOUNDARY = CommonError(
    "boundary given as an equation",
    "the solution is given as the one number where both sides are equal",
    "the inequality is solved as an equation and its sign not restored",
    f"inequalities solved as equations: {MUTODI}; the meaning of inequality absent: {KHATEEB}",
    "2x > 6",
    "x = 3",
)
ONE_PART = CommonError(
    "one part only operated on",
    "the operation is done to the middle and one end of a double inequality, not to the other end",
    "only one sign is looked at",
    COMMON,
    "-3 < 2x + 1 <= 7",
    "-3 < 2x <= 6",
)
AND_FOR_OR = CommonError(
    "and for or",
    "two inequalities of which one is enough are joined with 'and'",
    "both parts have been solved, and are felt to hold together",
    COMMON,
    "x < -3 or x >= 3",
    "x < -3 and x >= 3",
)
ONE_DOUBLE = CommonError(
    "two inequalities written as one double inequality",
    "two parts that lie apart are written as one chain with the unknown between its ends",
    "a solution with two ends is known as a chain",
    COMMON,
    "x < -3 or x >= 3",
    "3 <= x < -3",
)
END_LISTED = CommonError(
    "an end listed that does not belong",
    "an open end, or the integer beyond an end, is listed",
    "the ends are read as included",
    COMMON,
    "-2 < x <= 3",
    "-2, -1, 0, 1, 2, 3",
)
END_MISSED = CommonError(
    "an end left out that belongs",
    "an integer at an end is left out of the list",
    "the ends are read as not included",
    COMMON,
    "-2 < x <= 3",
    "-1, 0, 1, 2",
)
ZERO_MISSED = CommonError(
    "zero left out",
    "zero is left out of a list of integers",
    "zero is not felt to be a number that counts",
    COMMON,
    "-2 < x <= 3",
    "-1, 1, 2, 3",
)
NEGATIVES_MISSED = CommonError(
    "negative integers left out",
    "only zero and the positive integers are listed, or only the positive ones",
    "integers are taken to be the counting numbers",
    COMMON,
    "-2 < x <= 3",
    "0, 1, 2, 3",
)

SIGN_ERRORS = (NOT_TURNED, TURNED, SIDES_EXCHANGED, OPEN_CLOSED, BOUNDARY)
JOINT_ERRORS = (AND_FOR_OR, ONE_DOUBLE)
LIST_ERRORS = (END_LISTED, END_MISSED, ZERO_MISSED, NEGATIVES_MISSED)
