"""Which common errors apply to a line, what do they make of it, and which stage do they spoil?"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from contextlib import suppress
from dataclasses import replace
from functools import lru_cache, partial
from typing import NamedTuple

from itembank.algebra.exact import Fraction
from itembank.algebra.inside import symbols
from itembank.algebra.polynomials import quotient
from itembank.algebra.rationals import least_common
from itembank.algebra.values import NoValue, Polynomial, polynomial
from itembank.algebra.worths import Worth, at_point, polynomial_at_point
from itembank.algebra.written import Integer, Node, Quotient
from itembank.topics.catalogue import CommonError
from itembank.topics.expressions import fraction_changes as bars
from itembank.topics.expressions.catalogue import FACTOR_TWICE, TERM_LEFT
from itembank.topics.expressions.collecting_errors import JOIN, wrong_joins, wrong_powers
from itembank.topics.expressions.fraction_changes import tree_of
from itembank.topics.expressions.fraction_errors import wrong_fractions
from itembank.topics.expressions.fractions import as_terms, factored_node
from itembank.topics.expressions.multiplying import advanced, tidied
from itembank.topics.expressions.multiplying_errors import (
    EVERY,
    ONE_PRODUCT,
    Change,
    wrong_brackets,
)
from itembank.topics.expressions.pieces import (
    Group,
    Pieces,
    flat,
    has_bracket,
    has_like,
    pieces,
    pieces_at_point,
    written,
)
from itembank.topics.expressions.problems import COLLECT, FRACTIONS, PUT, Task
from itembank.topics.expressions.putting_errors import PUTTING, UNWRITTEN, wrong_values
from itembank.topics.expressions.stages import (
    BRACKETS,
    COMMON_BAR,
    DENOMINATOR,
    FACTORISED,
    LAST,
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
from itembank.topics.expressions.trees import product, summed
from itembank.topics.judging import Wrong

JOINED, OPENED = "joined", "opened"
"""What a line must look like for an error: its terms joined, fewer brackets in it."""

FURTHER = 3
"""What it costs that brackets are multiplied out rightly first: an error in them is nearer."""
FAR = 2
"""From this cost on an error gives way to one that explains the same more nearly."""
FACTORS = (NUMERATOR, DENOMINATOR, FACTORISED)


class Candidate(NamedTuple):
    """A common error where it applies, its line not built yet: ``point`` is the line's worth there.

    ``build`` gives the plain tree of the line.
    """

    error: CommonError
    stages: tuple[str, ...]
    point: Fraction
    build: Callable[[], Node]
    removes: tuple[str, ...] = ()
    cost: int = 0
    where: str = ""

    def wrong(self, after: Node) -> Wrong:
        """The error as the marker takes it."""
        error = self.error
        return Wrong(
            error.name,
            error.words,
            self.stages,
            self.removes,
            after,
            cost=self.cost,
            where=self.where,
            written=self.error in UNWRITTEN,
        )


def wrongs(task: Task, stages: tuple[str, ...], form: Node) -> Iterator[Wrong]:
    """Every common error applied wherever it applies.

    One that lies further off is left out where a nearer one gives the same.
    """
    for found in _indexed(task, stages, form).values():
        for candidate in _near(found):
            after = candidate.build()
            with suppress(NoValue):
                at_point(after)
                yield candidate.wrong(after)


def wrongs_to(task: Task, stages: tuple[str, ...], source: Node, form: Node) -> Sequence[Wrong]:
    """The common errors that, made in a source, lead to the worth of a form."""
    worth = Worth(form)
    found = _indexed(task, stages, source).get(worth.point, ())
    left = any(one.where == OPENED for one in found) and not _is_opened(source, form)
    believed = [one for one in found if not (left and one.where == OPENED)]
    built = [(candidate, candidate.build()) for candidate in _near(believed)]
    return [candidate.wrong(after) for candidate, after in built if Worth(after) == worth]


def _is_opened(source: Node, form: Node) -> bool:
    """Whether a line has fewer brackets than the one before it."""
    try:
        return _bracket_count(pieces(form)) < _bracket_count(pieces(source))
    except NoValue:
        return True


def _bracket_count(parts: Pieces) -> int:
    return sum(len(part.brackets) for part in parts)


def _near(found: Sequence[Candidate]) -> Iterator[Candidate]:
    """Of errors that give the same, those that are near, or the nearest."""
    nearest = min((candidate.cost for candidate in found), default=0)
    return (one for one in found if one.cost < FAR or one.cost == nearest)


@lru_cache(maxsize=4096)
def _indexed(task: Task, stages: tuple[str, ...], form: Node) -> dict[Fraction, list[Candidate]]:
    out: dict[Fraction, list[Candidate]] = {}
    for candidate in _candidates(task, stages, form):
        out.setdefault(candidate.point, []).append(candidate)
    return out


def _candidates(task: Task, stages: Sequence[str], form: Node) -> Iterator[Candidate]:
    if task.kind in FRACTIONS:
        with suppress(NoValue):
            yield from _in_fractions(stages, form)
        return
    if symbols(form):
        with suppress(NoValue):
            yield from _in_polynomial(task.kind, stages, form)
    if task.kind == PUT:
        for change in wrong_values(form, task.put):
            stage = PUT_IN if change.touches == PUTTING else VALUE
            with suppress(NoValue):
                point = at_point(change.after)
                yield Candidate(change.error, (stage,), point, partial(_as_is, change.after))


def _as_is(node: Node) -> Node:
    return node


def _of_pieces(
    change: Change,
    stages: tuple[str, ...],
    removes: tuple[str, ...] = (),
    further: int = 0,
    where: str = "",
) -> Candidate:
    build = partial(written, change.after)
    cost = change.cost + further
    point = pieces_at_point(change.after)
    return Candidate(change.error, stages, point, build, removes, cost, where)


def _in_polynomial(kind: str, stages: Sequence[str], form: Node) -> Iterator[Candidate]:
    """Errors in multiplying out, in powers and in collecting."""
    last = LAST[kind]
    parts = pieces(form)
    brackets = _bracket_count(parts)
    for change in wrong_brackets(parts):
        removes = (BRACKETS,) if change.touches == EVERY else ()
        opens = _bracket_count(change.after) < brackets
        where = OPENED if opens and change.error is not FACTOR_TWICE else ""
        served = _bracket_stages(stages, change, last)
        yield _of_pieces(change, served, removes, where=where)
    if TWO_BRACKETS in stages:
        yield from _second_product(parts, last)
    for change in wrong_powers(form):
        yield _of_pieces(change, (last,))
    for change in _wrong_joins_inside(parts):
        yield _of_pieces(change, (last,))
    spread = flat(parts)
    further = FURTHER if spread != parts else 0
    for change in wrong_joins(spread):
        if further and change.error is TERM_LEFT:
            continue  # a product left out, told of already
        stage = ONE_KIND if change.touches == JOIN and kind == COLLECT else last
        yield _of_pieces(change, (stage,), (), further, JOINED)


def _wrong_joins_inside(parts: Pieces) -> Iterator[Change]:
    """``(y^2 - 2y + y - 2)(y + 3)`` as ``(y^2 + y - 2)(y + 3)``: joined wrongly in a bracket."""
    for place, part in enumerate(parts):
        for at, group in enumerate(part.groups):
            for change in wrong_joins(group.inner) if has_like(group.inner) else ():
                groups = list(part.groups)
                groups[at] = Group(change.after, group.power)
                joined = part._replace(groups=tuple(groups))
                yield replace(change, after=(*parts[:place], joined, *parts[place + 1 :]))


def _second_product(parts: Pieces, last: str) -> Iterator[Candidate]:
    """Two of three brackets multiplied rightly, the rest wrongly."""
    halfway = tidied(tuple(new for part in parts for new in advanced(part, True)))
    if any(len(part.brackets) > 2 for part in parts) and has_bracket(halfway):
        for change in wrong_brackets(halfway):
            stage = last if change.touches == ONE_PRODUCT else BRACKETS
            yield _of_pieces(change, (stage,), (), 2)


def _bracket_stages(stages: Sequence[str], change: Change, last: str) -> tuple[str, ...]:
    if change.touches == ONE_PRODUCT or BRACKETS not in stages:
        return (last,)
    return (TWO_BRACKETS, BRACKETS) if TWO_BRACKETS in stages else (BRACKETS,)


def _in_fractions(stages: Sequence[str], form: Node) -> Iterator[Candidate]:
    single = as_terms(form)
    for change in wrong_fractions(form):
        below = polynomial_at_point(change.bottom)
        if below:
            served, removes = _fraction_stages(stages, change.touches)
            point = polynomial_at_point(change.top) / below
            yield Candidate(change.error, served, point, partial(tree_of, change), removes)
    yield from _above_the_bar(stages, form, len(single) > 1 or SINGLE not in stages)


def _fraction_stages(
    stages: Sequence[str], touches: str
) -> tuple[tuple[str, ...], tuple[str, ...]]:
    """The stage that an error in fractions spoils, and those that it takes away."""
    shown = tuple(stage for stage in FACTORS if stage in stages)
    match touches:
        case bars.TOP | bars.BOTTOM:
            own = NUMERATOR if touches == bars.TOP else DENOMINATOR
            return ((FACTORISED,) if FACTORISED in stages else (own,)), ()
        case bars.TURNING:
            return (TURNED,), ()
        case bars.COMMON | bars.DROPPED:
            return (COMMON_BAR,), (NUMERATORS,)
        case bars.TOPS:
            return ((NUMERATORS,) if NUMERATORS in stages else (COMMON_BAR,)), ()
        case _:
            return (shown or (LOWEST,)), shown


def _above_the_bar(stages: Sequence[str], form: Node, several: bool) -> Iterator[Candidate]:
    """Errors in multiplying out and collecting what stands above one bar."""
    above, below = _over_one_bar(form)
    stage = NUMERATORS if SINGLE in stages else LOWEST
    last = SINGLE if SINGLE in stages else LOWEST
    try:
        parts = pieces(above)
    except NoValue:
        return
    under = at_point(below)
    for change in wrong_brackets(parts):
        yield _over(change, (stage,), below, under, int(several))
    shown = tuple(stage for stage in FACTORS if stage in stages)
    for change in wrong_joins(flat(parts)):
        removes = shown if change.touches == JOIN else ()  # one term has no factors to find (3.5)
        yield _over(change, (last,), below, under, FURTHER * several, removes)


def _over(
    change: Change,
    stages: tuple[str, ...],
    below: Node,
    under: Fraction,
    further: int,
    removes: tuple[str, ...] = (),
) -> Candidate:
    point = pieces_at_point(change.after) / under
    build = partial(_built_over, change.after, below)
    return Candidate(change.error, stages, point, build, removes, change.cost + further)


def _built_over(above: Pieces, below: Node) -> Node:
    return _under(written(above), below)


def _under(top: Node, bottom: Node) -> Node:
    return top if bottom == Integer("1") else Quotient(top, bottom, "/")


def _over_one_bar(form: Node) -> tuple[Node, Node]:
    """A sum of fractions over the least common denominator, its brackets left standing."""
    parts = as_terms(form)
    if len(parts) == 1:
        sign, top, bottom = parts[0]
        return summed([(sign, top)]), bottom
    least = least_common([polynomial(bottom) for _, _, bottom in parts])
    above = []
    for sign, top, bottom in parts:
        factor = quotient(least, polynomial(bottom))
        assert factor is not None
        above.append((sign, _multiplied(top, factor)))
    return summed(above), factored_node(least)


def _multiplied(top: Node, factor: Polynomial) -> Node:
    node = factored_node(factor)
    return top if node == Integer("1") else product([node, top])
