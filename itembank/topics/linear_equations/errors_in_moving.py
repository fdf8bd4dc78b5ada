"""What goes wrong in taking a term to the other side? Also what is done to one side only."""

from __future__ import annotations

from collections.abc import Iterator

from itembank.algebra.exact import Fraction
from itembank.topics.catalogue import (
    DROPPED,
    EXCHANGED,
    KEPT_SIGN,
    ONE_SIDE,
    SIGN_LOST,
)
from itembank.topics.linear_equations.changing import Change
from itembank.topics.linear_equations.equations import Equation
from itembank.topics.linear_equations.following import Where
from itembank.topics.linear_equations.scaling import (
    EARLIEST,
    divisors,
    multipliers,
    sides,
)
from itembank.topics.linear_equations.stages import (
    BRACKETS,
    CONSTANTS,
    UNKNOWN,
    constants_apart,
)
from itembank.topics.parts import (
    GROUP,
    LETTER,
    NUMBER,
    Part,
    Parts,
    is_fraction,
    multiplied_out,
    scaled,
    turned,
)

SEEN_IN_JOINING = 3  # a sign lost in joining is that, where the line has joined the terms


def in_moving(equation: Equation, further: int, written: Equation) -> Iterator[Change]:
    for i in (0, 1):
        for term, rest in _movable(equation[i]):
            stage = UNKNOWN if term.kind == LETTER else CONSTANTS
            other = equation[1 - i]
            after = sides(i, rest, (*other, term))
            there = Where(stays=(1 - i, term.kind, term.worth))
            yield Change(KEPT_SIGN, stage, (), after, cost=1 + further, where=there)
            yield _dropped(stage, sides(i, rest, other), further, _opened(written[i], term))
            if term.factor < 0:
                after = sides(i, (turned(term), *rest), other)
                here = Where(stays=(i, term.kind, -term.worth))
                cost = further + (SEEN_IN_JOINING if _has_like(rest, term.kind) else 0)
                yield Change(SIGN_LOST, stage, (), after, cost=cost, where=here)
    yield from _exchanged(equation, further)


def _has_like(side: Parts, kind: str) -> bool:
    return any(part.kind == kind and part.factor for part in side)


def _dropped(stage: str, after: Equation, further: int, bracket: Part | None) -> Change:
    """A term left out: one that came out of a bracket is left out in removing it (3.7).

    Then no trace of the bracket is left to show that it was removed rightly; and where no number
    is left to collect, that stage is removed as well (3.5).
    """
    if bracket is None:
        return Change(DROPPED, stage, (), after, cost=further)
    removes = () if constants_apart(after) else (CONSTANTS,)
    return Change(DROPPED, BRACKETS, removes, after, cost=further, bracket=bracket)


def _opened(side: Parts, term: Part) -> Part | None:
    """The bracket of a side that gives a term once it is multiplied out, or joins in it."""
    groups = [part for part in side if part.kind == GROUP and not is_fraction(part)]
    if not groups or any(part.kind == term.kind and part.worth == term.worth for part in side):
        return None
    return next((part for part in groups if term in multiplied_out((part,))), groups[0])


def _movable(side: Parts) -> Iterator[tuple[Part, Parts]]:
    """Each term with the rest of its side; also the like terms of the side joined."""
    for k, term in enumerate(side):
        if term.factor:
            yield term, side[:k] + side[k + 1 :]
    for kind in (LETTER, NUMBER):
        like = [p for p in side if p.kind == kind]
        total = sum((p.worth for p in like), Fraction(0))
        if len(like) > 1 and total:
            yield Part(total, kind), tuple(p for p in side if p.kind != kind)


def _exchanged(equation: Equation, further: int) -> Iterator[Change]:
    """``9 + 4x = 37`` as ``4x = 9 - 37``: collected on one side, subtracted the wrong way round."""
    a, b, c, d = equation.balance
    for kind, here, there, stage in (
        (NUMBER, b, d, CONSTANTS),
        (LETTER, a, c, UNKNOWN),
    ):
        if here and there:
            left, right = (tuple(part for part in side if part.kind != kind) for side in equation)
            wrong = (Part(here, kind), Part(-there, kind))
            other = tuple(turned(part) for part in wrong)
            where = Where(collected=kind)
            # Either side may be the one collected on: which stands left makes no difference.
            for after in (Equation((left, (*wrong, *right))), Equation(((*other, *left), right))):
                yield Change(EXCHANGED, stage, (), after, cost=further, where=where)


def one_sided(equation: Equation) -> Iterator[Change]:
    """An operation written on one side only (conventions 3.13)."""
    yield from terms_one_sided(equation)
    for factor in (*[1 / d for d in divisors(equation)], *multipliers(equation)):
        both = Equation((scaled(equation.left, factor), scaled(equation.right, factor)))
        for i in (0, 1):
            one = sides(i, equation[i], both[1 - i])
            yield Change(ONE_SIDE, EARLIEST, (), one, both, shown=True)


def terms_one_sided(equation: Equation, further: int = 0) -> Iterator[Change]:
    """The operation that takes a term away; nobody who does it undoes it in the same line."""
    for i in (0, 1):
        terms = [(p, equation[i][:k] + equation[i][k + 1 :]) for k, p in enumerate(equation[i])]
        for term, rest in terms:
            if term.kind == GROUP:
                continue
            stage = UNKNOWN if term.kind == LETTER else CONSTANTS
            undone = turned(term)
            both = sides(i, rest, (*equation[1 - i], undone))
            for side, shown in ((1 - i, False), (i, True)):
                after = sides(side, (*equation[side], undone), equation[1 - side])
                shows = (side, undone.kind, undone.worth)
                where = Where(unmoved=term.kind, shows=shows, or_joined=not shown)
                yield Change(
                    ONE_SIDE, stage, (), after, both, shown=shown, cost=further, where=where
                )
