"""How often do pupils make each common error? Shares of a thousand errors.

Hall 2002 (Philosophy of Mathematics Education Journal 15) found that terms moved without their
change of sign, terms exchanged and the last division make about three quarters of the errors in
simple linear equations. How the shares fall within the three quarters, and within the last one, is
our own estimate, no source.
"""

from __future__ import annotations

MOST_FREQUENT = {
    "moved without changing its sign": 330,
    "terms exchanged in subtracting": 110,
    "divided the wrong way round": 110,
    "sign lost in the last division": 90,
    "coefficient taken away last": 60,
    "multiplied rather than divided": 50,
}

OTHERS = {
    "first term of the bracket only": 35,
    "unlike terms joined": 30,
    "sign lost in expanding": 25,
    "one term not divided": 20,
    "sign lost": 20,
    "one term not multiplied": 20,
    "operation on one side only": 15,
    "sign lost in joining": 15,
    "minus before the bracket dropped": 10,
    "fractions added wrongly": 10,
}

RARE = 3


def frequency(error: str) -> int:
    """The share of a common error, by its name; a small one for those that are rarely told of."""
    return MOST_FREQUENT.get(error) or OTHERS.get(error, RARE)
