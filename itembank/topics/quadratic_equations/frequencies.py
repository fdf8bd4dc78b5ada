"""How often do pupils make each common error? Shares against each other, our own estimate.

Which errors are frequent is common practice, no source; Didiş and Erbaş 2015 found arithmetic and
algebraic manipulation behind most wrong solutions of equations given in symbols.
"""

from __future__ import annotations

OFTEN = {
    "plus or minus forgotten": 90,
    "wrong pair of factors": 70,
    "signs of the factors exchanged": 60,
    "divided by the unknown": 60,
    "signs of the solutions turned": 55,
    "one solution only": 45,
    "factors set to a number other than 0": 40,
    "sign of b in the formula": 40,
    "sign of 4ac in the formula": 40,
    "moved without changing its sign": 40,
    "square of a sum without its middle term": 35,
    "division bar too short": 30,
    "square of a negative number taken as negative": 30,
    "2a in the formula wrong": 25,
    "square not subtracted": 25,
    "coefficient not halved": 20,
}

RARE = 6


def frequency(error: str) -> int:
    """The share of a common error, by its name; a small one for those rarely told of."""
    return OFTEN.get(error, RARE)
