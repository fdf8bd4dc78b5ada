"""Which milestones does the topic have? Clearing, then those of a linear equation."""

from __future__ import annotations

from itembank.topics.kinds import Stage, StageRule
from itembank.topics.linear_equations import stages as linear
from itembank.topics.linear_equations.stages import BRACKETS, CONSTANTS, FRACTIONS, UNKNOWN, VALUE

ORDER = (FRACTIONS, BRACKETS, UNKNOWN, CONSTANTS, VALUE)

_SHARED = {rule.name: rule for rule in linear.RULES}

RULES = (
    StageRule(
        FRACTIONS,
        "M",
        "always",
        "no unknown stands below a fraction bar, every term multiplied; brackets may be left",
    ),
    *(_SHARED[name] for name in (UNKNOWN, CONSTANTS, VALUE)),
)

WORDS = {**linear.WORDS, FRACTIONS: "clears the fractions, every term multiplied"}


def present(names: tuple[str, ...]) -> tuple[Stage, ...]:
    """The stages of a problem by their names, with the kinds of mark that they carry."""
    return tuple(Stage(name, "A" if name == VALUE else "M", WORDS[name]) for name in names)
