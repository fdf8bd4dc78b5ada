"""How is a double inequality solved? As one chain, the same done to every part, or as two."""

from __future__ import annotations

from dataclasses import dataclass, replace

from itembank.algebra.inside import symbols
from itembank.algebra.joining import apart, joined
from itembank.algebra.order import points_up
from itembank.algebra.showing import typed
from itembank.algebra.written import Relation, Symbol
from itembank.topics.inequalities.forms import finished, shown
from itembank.topics.inequalities.judging import InequalityJudge
from itembank.topics.inequalities.solutions import solution
from itembank.topics.kinds import Route, RouteLine
from itembank.topics.linear_equations import rewriting
from itembank.topics.linear_equations.choosing import Choice, choices
from itembank.topics.linear_equations.routes import routes_by_steps
from itembank.topics.linear_equations.stages import VALUE
from itembank.topics.linear_equations.steps import NAME_VALUE, Move, made, written_out
from itembank.topics.linear_equations.tidying import in_preferred_form
from itembank.topics.linear_equations.working import Working

SPLIT = "as two inequalities"
WHOLE = "the same operation on every part"
MOST_WHOLE = 4
WRITE_APART = "write the two inequalities apart"
JOIN = "join the two solutions"
SMALLER_FIRST = "write the smaller number first"


def double_routes(judge: InequalityJudge) -> tuple[Route, ...]:
    """The routes that keep the chain, then the one that takes it apart."""
    return (*whole_routes(judge.problem, judge.unknown), *split_route(judge))


@dataclass(frozen=True, slots=True)
class Chain:
    """A chain as far as it is solved.

    ``shadow`` is the working of its middle and its last side, which tells stages and words;
    ``texts`` are the lines of the chain itself, one for each of the shadow's.
    """

    line: Relation
    shadow: Working
    texts: tuple[str, ...]

    def after(self, move: Move) -> Chain:
        """The chain after a move on every part."""
        shadow = self.shadow.after(move)
        added = len(shadow.lines) - len(self.shadow.lines)
        if not added:
            return self
        new = made(move, self.line)
        if move.step.write is not None and isinstance(new.sides[1], Symbol):
            new = _preferred(new)
        texts = [typed(new)]
        if added > 1:
            written = written_out(move, self.line)
            assert written is not None  # the shadow wrote it
            texts.insert(0, typed(written))
        return Chain(new, shadow, (*self.texts, *texts))


def whole_routes(relation: Relation, unknown: str) -> tuple[Route, ...]:
    """The routes that keep the chain; none where the unknown stands at an end of it."""
    if len(relation.sides) != 3 or symbols(relation.sides[0]) or symbols(relation.sides[2]):
        return ()
    shadow = Working.begun(Relation(relation.sides[1:], relation.signs[1:]), unknown)
    found: dict[tuple[RouteLine, ...], str] = {}
    waiting: list[tuple[Chain, str]] = [(Chain(relation, shadow, (typed(relation),)), "")]
    while waiting and len(found) < MOST_WHOLE:
        chain, name = waiting.pop(0)
        options = [one for one in choices(chain.shadow.line) if _keeps_ends(one)]
        if not options:
            found.setdefault(_closed(chain), name or WHOLE)
            continue
        first, *others = options
        waiting.insert(0, (_taken(chain, first), name))
        if not name:
            waiting.extend((_taken(chain, one), one.label or WHOLE) for one in others)
    names: dict[str, tuple[RouteLine, ...]] = {}
    for lines, name in found.items():
        names.setdefault(name, lines)
    return tuple(Route(name, lines) for name, lines in names.items())


def _keeps_ends(choice: Choice) -> bool:
    """Whether the unknown stays in the middle."""
    return not any(move.operand is not None and symbols(move.operand) for move in choice.moves)


def _taken(chain: Chain, choice: Choice) -> Chain:
    for move in choice.moves:
        chain = chain.after(move)
    return chain


def _closed(chain: Chain) -> tuple[RouteLine, ...]:
    """The lines of a chain, its ends in preferred form and the smaller number first."""
    lines = [
        replace(line, text=text, step=line.step.replace("both sides", "every part"))
        for line, text in zip(chain.shadow.lines, chain.texts, strict=True)
    ]
    named = _preferred(chain.line)
    if named != chain.line:
        lines.append(RouteLine(typed(named), NAME_VALUE.words, VALUE, True))
    if points_up(named.signs[0]):
        lines[-1] = replace(lines[-1], required=len(lines) == 1)
        lines.append(RouteLine(typed(rewriting.exchanged(named)), SMALLER_FIRST, VALUE, True))
    return tuple(lines)


def _preferred(chain: Relation) -> Relation:
    """The chain with each of its numbers in its preferred form."""
    middle, out = chain.sides[1], []
    for end in (chain.sides[0], chain.sides[2]):
        out.append(in_preferred_form(Relation((middle, end), ("=",))).sides[1])
    return Relation((out[0], middle, out[1]), chain.signs)


def split_route(judge: InequalityJudge) -> tuple[Route, ...]:
    """Each part solved by itself, then both solutions joined."""
    relations = [
        Relation(one.sides[i : i + 2], one.signs[i : i + 1])
        for one in apart(judge.problem)[0]
        for i in range(len(one.signs))
    ]
    lines = [RouteLine(typed(judge.problem), "", "", True)]
    split = typed(joined((tuple(relations),)))
    if split != lines[0].text:
        lines.append(RouteLine(split, WRITE_APART, judge.stages[0], False))
    for relation in relations:
        routes = routes_by_steps(relation, judge.unknown, 1, finished)
        if not routes:
            return ()
        first, *others = routes[0].lines
        words = "then take the second part" if relation is relations[-1] else "take the first part"
        said = RouteLine(first.text, words, judge.stages[0], False)
        lines.extend((said, *others))
    found = solution(judge.start)
    assert found is not None  # the problem is refused where no number meets both
    lines.append(RouteLine(shown(found, judge.unknown), JOIN, VALUE, True))
    return (Route(SPLIT, tuple(lines)),)
