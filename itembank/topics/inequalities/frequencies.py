"""How often do pupils make each common error? Shares of a thousand errors.

The errors of the sign take about as much as all errors of equations together: our own estimate, no
source. How often those of equations are made against each other stands with equations.
"""

from __future__ import annotations

from itembank.topics.linear_equations.frequencies import frequency as of_equations

OWN = {
    "sign of inequality not turned": 400,
    "sign of inequality turned for nothing": 60,
    "sides exchanged, sign left": 120,
    "open and closed end confused": 90,
    "boundary given as an equation": 120,
    "one part only operated on": 100,
    "and for or": 200,
    "two inequalities written as one double inequality": 150,
    "an end listed that does not belong": 150,
    "an end left out that belongs": 150,
    "zero left out": 50,
    "negative integers left out": 40,
}


def frequency(error: str) -> int:
    """The share of a common error, by its name, against the others."""
    return OWN.get(error) or of_equations(error)
