"""Which milestones does a factorisation have, which has a line reached, and is it finished?

The table of section 2 of the marking conventions. Presence is read off the expression itself: its
highest common factor, and the method that factorises what is left. A stage that the problem as
written has reached already is none of its stages.
"""

from __future__ import annotations

from functools import lru_cache
from itertools import islice

from itembank.algebra.factoring import factored
from itembank.algebra.showing import typed
from itembank.algebra.values import NoValue
from itembank.topics.factorising.bracketed import common_bracket_out, shared_bracket, squares_in
from itembank.topics.factorising.first_brackets import quadratic_of
from itembank.topics.factorising.plans import (
    BRACKET_TAKEN,
    CUBES,
    GROUPING,
    PAIR_AND_PRODUCT,
    QUADRATIC,
    Plan,
)
from itembank.topics.factorising.plans import COMMON as COMMON_ONLY
from itembank.topics.factorising.shapes import (
    Form,
    Shape,
    Term,
    everything,
    spread,
    value_of,
    written,
)
from itembank.topics.kinds import Stage, StageRule

COMMON = "common factor taken out"
PAIR = "two numbers found"
GROUPED = "grouped in pairs"
BRACKET = "common bracket taken out"
SQUARE = "square of a bracket made"
CUBE = "bracket of the cube roots"
PRODUCT = "product of brackets"
FULL = "factorised fully"

SPLIT_TERMS = 4

ORDER = (COMMON, PAIR, GROUPED, BRACKET, SQUARE, CUBE, PRODUCT, FULL)

WORDS = {
    COMMON: "takes out a common factor, or factorises in part",
    PAIR: "splits the middle term, or writes two brackets that give two of the three terms",
    GROUPED: "groups in pairs that share a bracket",
    BRACKET: "takes out the common bracket",
    SQUARE: "writes three of the terms as the square of a bracket",
    CUBE: "writes the bracket of the two cube roots as a factor",
    PRODUCT: "writes a product of brackets",
    FULL: "factorised fully",
}

RULES = (
    StageRule(
        COMMON,
        "M",
        "the terms have a common factor, and it is made of several primes or letters or more is "
        "to be done after it",
        "a factor common to every term stands before the bracket, or the line is a product",
    ),
    StageRule(
        PAIR,
        "M",
        "what is left is a quadratic of three terms",
        "the middle term is split by two numbers with the right product, the two numbers stand "
        "with their product and sum, or two brackets give two of the three terms",
    ),
    StageRule(
        GROUPED,
        "M",
        "what is left has four terms, or five of which three make two brackets",
        "every part has the same bracket, or the line is a product of brackets",
    ),
    StageRule(
        BRACKET,
        "M",
        "a bracket still factorises after the common one is taken out",
        "the line is a product of brackets",
    ),
    StageRule(
        SQUARE,
        "M",
        "three of four terms make the square of a bracket, from which the fourth is taken away, or "
        "it from the fourth",
        "a square of a bracket and another square stand with a minus between them, or the line is "
        "a product of brackets",
    ),
    StageRule(
        CUBE,
        "M",
        "what is left is a sum or a difference of two cubes",
        "the bracket of the cube roots, `x + 2` for `x^3 + 8`, is a factor of the line, whatever "
        "stands in the other bracket",
    ),
    StageRule(
        PRODUCT,
        "M",
        "a bracket still factorises, or its terms have still to be collected, when the expression "
        "first is a product of brackets",
        "the line is a product of brackets",
    ),
    StageRule(
        FULL,
        "A",
        "always",
        "a product of factors that cannot be factorised further over the integers (with fractions "
        "where the expression has them)",
    ),
)


def stage_names(plan: Plan, start: Form) -> tuple[str, ...]:
    """The names of the stages present in a problem, in order."""
    names = []
    more = plan.method != COMMON_ONLY
    if plan.parts > 1 or (plan.parts and more):
        names.append(COMMON)
    if plan.method == QUADRATIC:
        names.append(PAIR)
    if plan.method == GROUPING:
        names.append(GROUPED)
        if sum(exponent for _, exponent in plan.factors.brackets) > 2:
            names.append(BRACKET)
    if plan.method == PAIR_AND_PRODUCT:
        names.append(GROUPED)
    if plan.method == CUBES:
        names.append(CUBE)
    if plan.squares is not None and not any(term.brackets for term in start.shape):
        names.append(SQUARE)
    if plan.deep or _to_collect(plan, start):
        names.append(PRODUCT)
    done = reached_in(start.shape)
    return (*(name for name in names if name not in done), FULL)


def _to_collect(plan: Plan, start: Form) -> bool:
    """Whether the terms of the first brackets have to be collected."""
    if plan.squares is not None:
        return plan.squares.overlap
    taken = plan.method in (BRACKET_TAKEN, GROUPING, PAIR_AND_PRODUCT)
    product = common_bracket_out(start.shape) if taken else None
    return product is not None and any(has_to_collect(inner) for inner, _ in product[0].brackets)


def has_to_collect(inner: Shape) -> bool:
    """Whether like terms stand apart in a bracket once those within it are removed."""
    return len(list(spread(inner))) > len(value_of(inner))


def present_stages(plan: Plan, start: Form) -> tuple[Stage, ...]:
    """The stages present in a problem, each with the kind of mark that it carries."""
    names = stage_names(plan, start)
    last = "A" if len(names) > 1 else "B"
    return tuple(Stage(name, last if name == FULL else "M", WORDS[name]) for name in names)


@lru_cache(maxsize=4096)
def reached_in(shape: Shape) -> frozenset[str]:
    """The stages, of those that a problem can have, that stand reached in a line."""
    out = set()
    parts = list(everything(shape))
    product = len(shape) == 1 and shape[0].multiplicity > 1
    if len(shape) == 1 and _proper(shape[0]):
        out.add(COMMON)
    if product:
        out |= {BRACKET, SQUARE, CUBE, PRODUCT}
    if any(squares_in(part) for part in parts):
        out.add(SQUARE)
    if product or any(is_split(part) or _two_brackets(part) for part in parts):
        out.add(PAIR)
    if product or any(shared_bracket(part) is not None for part in parts):
        out.add(GROUPED)
    return frozenset(out)


def _proper(term: Term) -> bool:
    """Whether a product has two factors that are no plain sign."""
    size = abs(term.number)
    return (
        term.multiplicity > 0
        and (size != 1) + sum(e for _, e in term.letters) + term.multiplicity > 1
    )


def _two_brackets(shape: Shape) -> bool:
    """``x(x + 2) + 3(x + 2)``, whatever the signs in the brackets."""
    return len(shape) == 2 and all(term.multiplicity == 1 for term in shape)


def splits_wrongly(shape: Shape) -> bool:
    """Whether two brackets stand apart that are not the same: ``3x(x - 2) - 4(x + 2)``.

    In a line that is right otherwise no sign is lost: its numbers lead to no common bracket.
    """
    return any(
        _two_brackets(part) and shared_bracket(part) is None and not is_split(part)
        for part in everything(shape)
    )


@lru_cache(maxsize=4096)
def is_split(shape: Shape) -> bool:
    """Whether a quadratic stands with its middle term split so that grouping leads on."""
    loose = list(islice(spread(shape), SPLIT_TERMS + 1))
    if len(loose) != SPLIT_TERMS:
        return False
    whole = quadratic_of(value_of(shape))
    if whole is None:
        return False
    ends = {tuple(sorted(_doubled(whole.u))), tuple(sorted(_doubled(whole.v)))}
    middle = [size for monomial, size in loose if monomial not in ends]
    return len(middle) == 2 and middle[0] * middle[1] == whole.a * whole.c


def _doubled(letters: tuple[tuple[str, int], ...]) -> tuple[tuple[str, int], ...]:
    return tuple((name, 2 * exponent) for name, exponent in letters)


@lru_cache(maxsize=4096)
def objection(shape: Shape, fractions: bool) -> str | None:
    """What is left to do in a product; empty where it is factorised fully.

    None for a line that is no product of factors. ``fractions`` tells that the problem itself has
    fractions, so that its factors may have them.
    """
    if len(shape) != 1 or not _proper(shape[0]):
        return None
    (term,) = shape
    for inner, _ in term.brackets:
        left = _left_in(inner, fractions)
        if left:
            return left
    if term.number.denominator != 1 and not fractions:
        return "a fraction stands before the brackets, and the expression has none"
    return "the numbers are not multiplied together" if term.numbers > 1 else ""


def _left_in(inner: Shape, fractions: bool) -> str:
    value = value_of(inner)
    if any(term.brackets for term in inner):
        return f"brackets stand within the bracket {_shown(inner)}"
    if len(value) < len(inner):
        return f"the terms of {_shown(inner)} are not collected"
    try:
        found = factored(value)
    except NoValue:
        return f"the factors of {_shown(inner)} are beyond the topic"
    number, letters = found.content, found.letters
    if letters or abs(number.numerator) != 1:
        common = _shown((Term(abs(number), letters),))
        return f"{_shown(inner)} still has the common factor {common}"
    if number.denominator != 1 and not fractions:
        return f"{_shown(inner)} has a fraction, and the expression has none"
    if len(found.brackets) != 1 or found.brackets[0][1] != 1:
        return f"{_shown(inner)} can still be factorised"
    return ""


def _shown(shape: Shape) -> str:
    return typed(written(shape))
