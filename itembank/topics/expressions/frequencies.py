"""How often do pupils make each common error? Shares of a thousand errors; our own estimate.

No source: studies of errors in expressions name the errors and order them roughly (Lim 2010,
Matz 1980, both from memory), they do not give shares that could be taken over.
"""

from __future__ import annotations

OFTEN = {
    "first term of the bracket only": 60,
    "sign lost in expanding": 60,
    "square of a sum without its middle term": 80,
    "first terms and last terms only": 40,
    "sign of one product lost": 60,
    "sign lost in joining": 60,
    "unlike terms joined": 50,
    "terms in different letters joined": 40,
    "different powers joined": 40,
    "minus before a square": 60,
    "worked from left to right": 30,
    "product squared": 30,
    "minus of a negative lost": 30,
    "term of a sum cancelled": 60,
    "cancelled against one term only": 50,
    "fractions added straight across": 60,
    "numerators not multiplied": 40,
    "minus before a fraction reaches the first term only": 60,
}

RARE = 8


def frequency(error: str) -> int:
    """The share of a common error, by its name; a small one for those that are rarely told of."""
    return OFTEN.get(error, RARE)
