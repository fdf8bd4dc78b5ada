"""Which patterns does the topic have, and for whom? One family of items for each.

Year levels and minutes are common practice, no source; a school changes them.
"""

from __future__ import annotations

from itembank.topics.fractional_equations import patterns
from itembank.topics.kinds import Family

FAMILIES = (
    Family("a number over the unknown", 8, 1, patterns.number_over_unknown),
    Family("a number over a sum", 9, 3, patterns.number_over_sum),
    Family("a fraction and a number beside it", 9, 3, patterns.fraction_and_number),
    Family("two fractions added", 10, 4, patterns.two_fractions_added),
    Family("one fraction equal to another", 10, 4, patterns.two_fractions),
    Family("a sum over a sum", 10, 4, patterns.sum_over_sum),
)
