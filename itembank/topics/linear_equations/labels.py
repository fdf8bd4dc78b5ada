"""What tells one route from another? The words for each choice, and what a choice rules out."""

from __future__ import annotations

EXPAND_BRACKETS = "expand the brackets"
DIVIDE_OUT = "divide out the bracket"
COMMON_FACTOR = "divide by the common factor first"
CONSTANT_BESIDE = "take away the constant first"
CLEAR = "clear the fractions"
CLEAR_DECIMALS = "clear the decimals"
COMBINE_FRACTIONS = "combine the fractions"
OWN_DENOMINATOR = "multiply by the denominator of the unknown's fraction"
ABOVE_THE_BAR = "simplify above the bar first"
LIKE_TERMS = "collect like terms"
LEFT = "collect on the left"
RIGHT = "collect on the right"
CONSTANTS_FIRST = "constants first"
LEFT_LATER = f"{LEFT}, {CONSTANTS_FIRST}"
RIGHT_LATER = f"{RIGHT}, {CONSTANTS_FIRST}"
MADE_POSITIVE = "make the unknown's term positive first"
RECIPROCAL = "multiply by the reciprocal"

_AFTER_COLLECTING = frozenset({MADE_POSITIVE, CLEAR, CLEAR_DECIMALS})

# What a person who has chosen the one does not choose later: the route would wander.
ENDS = {
    EXPAND_BRACKETS: frozenset({DIVIDE_OUT, COMMON_FACTOR, CONSTANT_BESIDE}),
    CONSTANT_BESIDE: frozenset({EXPAND_BRACKETS}),
    CONSTANTS_FIRST: frozenset({CLEAR_DECIMALS}),
    LEFT: _AFTER_COLLECTING,
    RIGHT: _AFTER_COLLECTING,
    LEFT_LATER: _AFTER_COLLECTING | {RIGHT, LEFT_LATER, RIGHT_LATER},
    RIGHT_LATER: _AFTER_COLLECTING | {LEFT, LEFT_LATER, RIGHT_LATER},
}


# Labels that tell routes apart only where there was something else to choose.
QUIET = frozenset({CONSTANTS_FIRST, CONSTANT_BESIDE, MADE_POSITIVE, RECIPROCAL})
