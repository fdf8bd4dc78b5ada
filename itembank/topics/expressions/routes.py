"""How is an expression worked? Every sensible route as lines, in a teacher's words."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from functools import lru_cache
from typing import NamedTuple

from itembank.algebra.inside import symbols
from itembank.algebra.showing import typed
from itembank.algebra.values import number, polynomial
from itembank.algebra.written import Node
from itembank.topics.expressions import fraction_routes, multiplying
from itembank.topics.expressions.decimals import in_decimals, speaks_decimals
from itembank.topics.expressions.finished import is_collected
from itembank.topics.expressions.pieces import (
    Pieces,
    collected,
    flat,
    has_like,
    in_simplest_form,
    pieces,
    written,
)
from itembank.topics.expressions.problems import (
    ADD,
    CANCEL,
    COLLECT,
    EXPAND,
    MULTIPLY,
    PUT,
    Task,
)
from itembank.topics.expressions.putting import (
    powers_worked_out,
    products_worked_out,
    put_in,
)
from itembank.topics.expressions.stages import LAST, reached_by, stage_names
from itembank.topics.expressions.trees import number_node, plain, terms
from itembank.topics.kinds import Route, RouteLine


class Draft(NamedTuple):
    """A line of a route before its stage is known."""

    node: Node
    step: str
    required: bool = True


Drafts = list[Draft]

MULTIPLY_LETTERS = "multiply the numbers, and the letters"


@lru_cache(maxsize=4096)
def routes_of(task: Task) -> tuple[Route, ...]:
    """The routes of a problem, the preferred one first, no two with the same lines."""
    found: dict[tuple[str, ...], Route] = {}
    for name, drafts in _ROUTES[task.kind](task):
        route = _route(task, name, drafts)
        found.setdefault(tuple(line.text for line in route.lines if line.required), route)
    return tuple(found.values())


def _route(task: Task, name: str, drafts: Drafts) -> Route:
    lines = [RouteLine(task.text, "", "", True)]
    if speaks_decimals((task.relation, *task.values)):
        drafts = [draft._replace(node=in_decimals(draft.node)) for draft in drafts]
    kept = _without_repeats(task, drafts)
    before: frozenset[str] = frozenset()
    stages = stage_names(task.kind, task.node)
    for place, draft in enumerate(kept):
        reached = reached_by(task.kind, task.node, plain(draft.node)) | before
        newly = [stage for stage in stages if stage in reached - before]
        still = [stage for stage in stages if stage not in reached]
        stage = newly[-1] if newly else still[0] if still else LAST[task.kind]
        last = place == len(kept) - 1
        stage = LAST[task.kind] if last else stage
        lines.append(RouteLine(typed(draft.node), draft.step, stage, draft.required or last))
        before = reached if draft.required else before
    return Route(name, tuple(lines))


def _without_repeats(task: Task, drafts: Drafts) -> Drafts:
    """The lines that say something new; the last of two alike gives way to the first."""
    out: Drafts = []
    seen = typed(task.relation.sides[-1])
    for draft in drafts:
        text = typed(draft.node)
        if text != seen:
            out.append(draft)
        elif out and draft.required:
            out[-1] = out[-1]._replace(required=True)
        seen = text
    return out


# Collecting


def _collecting(task: Task) -> Iterator[tuple[str, Drafts]]:
    start, node = _multiplied_letters(task.node)
    parts = pieces(node)
    final = Draft(in_simplest_form(task.node), "collect like terms")
    if not has_like(parts):
        yield MULTIPLY_LETTERS, start
        return
    grouped = written(_grouped(parts))
    yield (
        "group the like terms",
        [*start, Draft(grouped, "write like terms side by side", False), final],
    )
    yield "one kind of term at a time", [*start, *_one_at_a_time(parts), final]


def _multiplied_letters(node: Node) -> tuple[Drafts, Node]:
    """``2x × 3x + x^2`` with every product of letters worked out first."""
    if all(is_collected(body) for _, body in terms(node)):
        return [], node
    parts = pieces(node)
    worked = written(parts) if has_like(parts) else in_simplest_form(node)
    return [Draft(worked, MULTIPLY_LETTERS)], worked


def _grouped(parts: Pieces) -> Pieces:
    kinds = list(dict.fromkeys(part.letters for part in parts))
    return tuple(sorted(parts, key=lambda part: kinds.index(part.letters)))


def _one_at_a_time(parts: Pieces) -> Iterator[Draft]:
    for kind in dict.fromkeys(part.letters for part in parts):
        alike = [part for part in parts if part.letters == kind]
        if len(alike) < 2:
            continue
        joined = collected(tuple(alike))
        place = parts.index(alike[0])
        rest = [part for part in parts if part.letters != kind]
        before = sum(part.letters != kind for part in parts[:place])
        parts = (*rest[:before], *joined, *rest[before:])
        if has_like(parts):
            yield Draft(written(parts), "collect the terms of one kind")


# Expanding


def _expanding(task: Task) -> Iterator[tuple[str, Drafts]]:
    for name, lines in multiplying.ways(pieces(task.node)):
        drafts = [Draft(node, step, required) for node, step, required in lines]
        final = in_simplest_form(task.node)
        yield name, [*drafts, Draft(final, _last_step(drafts) or name)]


def _last_step(drafts: Drafts) -> str:
    """What is left to do after the brackets are out; empty where no line has taken them out."""
    if not drafts:
        return ""
    ordered = is_collected(plain(drafts[-1].node))
    return "put the terms in order" if ordered else "collect like terms"


# Putting values in


def _putting(task: Task) -> Iterator[tuple[str, Drafts]]:
    yield "put the values in", _numbers(task, task.relation.sides[-1])
    simpler = _simpler(task.node)
    if simpler is not None:
        first = Draft(simpler, "simplify the expression first")
        yield "simplify first, then put the values in", [first, *_numbers(task, simpler)]


def _simpler(node: Node) -> Node | None:
    """The expression collected, where letters stand in it more often than they need to."""
    if _has_letter_below(node):
        return None
    simplest = in_simplest_form(node)
    if not symbols(simplest) or len(flat(pieces(node))) <= len(polynomial(simplest)):
        return None
    return simplest


def _has_letter_below(node: Node) -> bool:
    from itembank.algebra.rationals import has_letter_below

    return has_letter_below(node)


def _numbers(task: Task, node: Node) -> Drafts:
    put = put_in(node, task.put)
    powers = powers_worked_out(put)
    products = products_worked_out(plain(powers))
    value = number_node(number(put))
    return [
        Draft(put, "put the values in"),
        Draft(powers, "work out the powers", False),
        Draft(products, "work out the products"),
        Draft(value, "work out the value"),
    ]


# Fractions


def _fractions(
    ways: Callable[[Node], Iterator[tuple[str, list[tuple[Node, str, bool]]]]],
) -> Callable[[Task], Iterator[tuple[str, Drafts]]]:
    def routes(task: Task) -> Iterator[tuple[str, Drafts]]:
        for name, lines in ways(task.node):
            yield name, [Draft(node, step, required) for node, step, required in lines]

    return routes


_ROUTES: dict[str, Callable[[Task], Iterator[tuple[str, Drafts]]]] = {
    COLLECT: _collecting,
    EXPAND: _expanding,
    PUT: _putting,
    CANCEL: _fractions(fraction_routes.cancelling),
    MULTIPLY: _fractions(fraction_routes.multiplying),
    ADD: _fractions(fraction_routes.adding),
}
