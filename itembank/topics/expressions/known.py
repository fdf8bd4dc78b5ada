"""Which stages and which common errors does the topic know? For its page and the register."""

from __future__ import annotations

from itembank.topics.catalogue import (
    EXPANDING_SIGN,
    FACTOR_ADDED,
    FACTOR_DROPPED,
    FACTOR_JOINED,
    FIRST_ONLY,
    JOINED_IN_BRACKET,
    JOINING_SIGN,
    LAST_ONLY,
    LIKE_MULTIPLIED,
    MINUS_DROPPED,
    MINUS_FIRST_ONLY,
    NUMBER_FIRST_ONLY,
    UNKNOWN_CANCELLED,
    UNLIKE_JOINED,
    CommonError,
)
from itembank.topics.expressions import catalogue, fraction_catalogue, putting_catalogue
from itembank.topics.expressions.stages import (
    BRACKETS,
    COLLECTED,
    COMMON_BAR,
    DENOMINATOR,
    FACTORISED,
    LOWEST,
    NUMERATOR,
    NUMERATORS,
    ONE_KIND,
    PUT_IN,
    SINGLE,
    TURNED,
    TWO_BRACKETS,
    VALUE,
)
from itembank.topics.kinds import StageRule

_SHARED = (
    FIRST_ONLY,
    LAST_ONLY,
    NUMBER_FIRST_ONLY,
    EXPANDING_SIGN,
    MINUS_FIRST_ONLY,
    FACTOR_ADDED,
    FACTOR_DROPPED,
    MINUS_DROPPED,
    JOINED_IN_BRACKET,
    FACTOR_JOINED,
    UNLIKE_JOINED,
    JOINING_SIGN,
    LIKE_MULTIPLIED,
    UNKNOWN_CANCELLED,
)

ERRORS: tuple[CommonError, ...] = (
    *_SHARED,
    *(
        one
        for room in (catalogue, putting_catalogue, fraction_catalogue)
        for one in vars(room).values()
        if isinstance(one, CommonError)
    ),
)

RULES = (
    StageRule(
        TWO_BRACKETS,
        "M",
        "three factors or more, brackets and letters, are to be multiplied out",
        "no term has as many factors left; a method error in the first product spoils it, one "
        "product wrong out of four or more does not",
    ),
    StageRule(
        BRACKETS,
        "M",
        "a bracket is to be multiplied out; where one bracket with a term before it is all there "
        "is, the expanded expression alone carries the mark",
        "no bracket is left; of the products of two brackets all but one right (common practice)",
    ),
    StageRule(
        ONE_KIND,
        "M",
        "no bracket, and terms of more than one kind stand apart",
        "the terms of one kind stand joined",
    ),
    StageRule(
        COLLECTED,
        "A",
        "expanding and collecting",
        "no bracket, no like terms apart, every term worked out, in any order",
    ),
    StageRule(PUT_IN, "M", "values are given for the letters", "no letter is left in the line"),
    StageRule(VALUE, "A", "values are given for the letters", "the value in an accepted form"),
    StageRule(
        TURNED, "M", "a fraction is divided by something", "no division of fractions is left"
    ),
    StageRule(
        NUMERATOR,
        "M",
        "one fraction whose numerator has to be factorised before it can be cancelled",
        "the numerator stands as factors, or is cancelled rightly",
    ),
    StageRule(
        DENOMINATOR,
        "M",
        "one fraction whose denominator has to be factorised before it can be cancelled",
        "the denominator stands as factors, or is cancelled rightly",
    ),
    StageRule(
        FACTORISED,
        "M",
        "fractions multiplied or divided, one of whose parts has to be factorised",
        "every such part stands as factors, or is cancelled rightly",
    ),
    StageRule(
        LOWEST,
        "A",
        "one fraction, or fractions multiplied or divided",
        "one fraction that cannot be cancelled, its parts as factors or multiplied out",
    ),
    StageRule(
        COMMON_BAR,
        "M",
        "fractions with different denominators are added or taken away",
        "every term stands over one denominator",
    ),
    StageRule(
        NUMERATORS,
        "M",
        "a sum stands above or below a bar, or the denominators are the same",
        "every numerator is multiplied as its denominator, over one denominator",
    ),
    StageRule(
        SINGLE,
        "A",
        "fractions are added or taken away",
        "one fraction in lowest terms, its numerator collected",
    ),
)
