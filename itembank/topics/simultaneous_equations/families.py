"""Which patterns does the topic have, and for whom? One family of items for each.

Year levels and minutes are common practice, no source; a school changes them.
"""

from __future__ import annotations

from itembank.topics.kinds import Family
from itembank.topics.simultaneous_equations import patterns

FAMILIES = (
    Family("two unknowns: one goes by adding", 9, 4, patterns.by_adding),
    Family("two unknowns: one goes by subtracting", 9, 4, patterns.by_subtracting),
    Family("two unknowns: a negative term to subtract", 9, 4, patterns.subtracting_negatives),
    Family("two unknowns: one equation to multiply", 9, 5, patterns.one_multiplied),
    Family("two unknowns: both equations to multiply", 10, 6, patterns.both_multiplied),
    Family("two unknowns: one given as the subject", 9, 4, patterns.subject_given),
    Family("two unknowns: the same one the subject of both", 9, 4, patterns.two_subjects),
    Family("two unknowns: equations to rearrange", 10, 6, patterns.to_rearrange),
    Family("two unknowns: a bracket to remove", 10, 6, patterns.with_brackets),
    Family("two unknowns: fractions to clear", 10, 7, patterns.with_fractions),
    Family("two unknowns: decimals", 10, 6, patterns.with_decimals),
    Family("two unknowns: values that are fractions", 10, 6, patterns.fractional_values),
    Family("two unknowns: no solution", 10, 4, patterns.contradicting),
    Family("two unknowns: infinitely many solutions", 10, 4, patterns.the_same),
)
