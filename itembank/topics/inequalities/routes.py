"""How is a linear inequality solved? Every sensible route, line by line, each line checked.

The steps are those of equations; a negative factor and exchanged sides turn the sign. A double
inequality is solved as one chain, the same done to every part, or as two inequalities.
"""

from __future__ import annotations

from dataclasses import dataclass, replace

from itembank.algebra.inside import symbols
from itembank.algebra.joining import apart, joined
from itembank.algebra.order import holds, is_closed, points_up
from itembank.algebra.showing import typed
from itembank.algebra.values import NoValue, number
from itembank.algebra.written import Node, Relation, Symbol
from itembank.topics.inequalities.checking import check
from itembank.topics.inequalities.judging import InequalityJudge
from itembank.topics.inequalities.problems import Problem, read_problem
from itembank.topics.inequalities.solutions import integers_of, solution
from itembank.topics.inequalities.stages import INTEGERS, SOLUTION, stages_of
from itembank.topics.judging import Shaped
from itembank.topics.kinds import NumberLine, Route, RouteLine, Solution, TopicError
from itembank.topics.linear_equations import rewriting
from itembank.topics.linear_equations.choosing import Choice, choices
from itembank.topics.linear_equations.forms import answer_form, value_forms
from itembank.topics.linear_equations.routes import MOST_ROUTES, routes_by_steps
from itembank.topics.linear_equations.stages import VALUE
from itembank.topics.linear_equations.steps import (
    CONCLUDE_ALL,
    CONCLUDE_NONE,
    EXCHANGE,
    NAME_VALUE,
    Move,
    made,
    written_out,
)
from itembank.topics.linear_equations.tidying import in_preferred_form
from itembank.topics.linear_equations.working import Working

TOPIC = "linear inequalities"
SPLIT = "as two inequalities"
WHOLE = "the same operation on every part"
MOST_WHOLE = 4
WRITE_APART = "write the two inequalities apart"
JOIN = "join the two solutions"
SMALLER_FIRST = "write the smaller number first"
LIST = "list the integers"


def solve(problem: str) -> Solution:
    """The reference solution of a typed problem, every line confirmed by SymPy.

    Raises:
        ReadingFault: where the problem cannot be read.
        TopicError: where it is no linear inequality in one unknown.
        CheckFailed: where SymPy does not confirm a line.
    """
    found = work_out(problem)
    check(found)
    return found


def work_out(problem: str) -> Solution:
    """The reference solution before it is checked; :func:`solve` is for everyone else."""
    read = read_problem(problem)
    judge = InequalityJudge(*read)
    try:
        stages = stages_of(judge.stages)
        found = _routes(read, judge)
    except NoValue as fault:
        raise TopicError(f"this inequality is too long or too large to solve: {fault}") from fault
    if not found:
        raise TopicError("this inequality is too large to solve: its lines would be too long")
    answer, forms = _answer(read, judge)
    line = number_line(solution(judge.start), read.integers)
    return Solution(problem, TOPIC, answer, forms, found, stages, number_line=line)


def _routes(problem: Problem, judge: InequalityJudge) -> tuple[Route, ...]:
    relation, unknown = problem.relation, problem.unknown
    if len(judge.start) == 1:
        found = routes_by_steps(relation, unknown, MOST_ROUTES, _finished)
    else:
        found = (*_whole_routes(relation, unknown), *_split_route(judge))
    return tuple(_completed(route, problem, judge) for route in found)


def _completed(route: Route, problem: Problem, judge: InequalityJudge) -> Route:
    """The route with the topic's names of stages, and the list of integers where it is asked."""
    lines = [
        replace(line, stage=judge.last if line.stage in (VALUE, SOLUTION) else line.stage)
        for line in route.lines
    ]
    lines[0] = replace(lines[0], text=problem_text(problem))
    if problem.integers:
        numbers = integers_of(solution(judge.start)) or frozenset()
        text = ", ".join(map(str, sorted(numbers)))
        lines.append(RouteLine(text, LIST, INTEGERS, True))
    return Route(route.name, tuple(lines))


def problem_text(problem: Problem) -> str:
    """The problem as typed text."""
    text = typed(problem.relation)
    return f"{text}, integers" if problem.integers else text


def _finished(working: Working) -> Working:
    """The working closed by the solution, or by what follows where the unknown is lost."""
    left, right = working.line.sides
    if not symbols(left) and not symbols(right):
        true = holds(number(left), working.line.signs[0], number(right))
        if true:
            return working.stated("all values", CONCLUDE_ALL)
        return working.stated("no solution", CONCLUDE_NONE)
    return working.after(Move(EXCHANGE if isinstance(right, Symbol) else NAME_VALUE))


# A double inequality as one chain


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


def _whole_routes(relation: Relation, unknown: str) -> tuple[Route, ...]:
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


# A double inequality as two


def _split_route(judge: InequalityJudge) -> tuple[Route, ...]:
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
        routes = routes_by_steps(relation, judge.unknown, 1, _finished)
        if not routes:
            return ()
        first, *others = routes[0].lines
        words = "then take the second part" if relation is relations[-1] else "take the first part"
        said = RouteLine(first.text, words, judge.stages[0], False)
        lines.extend((said, *others))
    found = solution(judge.start)
    assert found is not None  # the problem is refused where no number meets both
    lines.append(RouteLine(_shown(found, judge.unknown, 0), JOIN, VALUE, True))
    return (Route(SPLIT, tuple(lines)),)


def number_line(found: Shaped | None, integers: bool) -> NumberLine | None:
    """A solution, or the integers in it, as a picture shows it; None where there is no boundary."""
    if found is None:
        return None
    if integers:
        return NumberLine(listed=tuple(map(str, sorted(integers_of(found) or ()))))
    low = high = ("", False)
    for sign, end in zip(_signs(found), found.numbers, strict=True):
        if points_up(sign):
            low = (str(end), is_closed(sign))
        else:
            high = (str(end), is_closed(sign))
    return NumberLine(*low, *high)


# The answer and its forms


def _answer(problem: Problem, judge: InequalityJudge) -> tuple[str, tuple[str, ...]]:
    if judge.conclusion:
        return judge.conclusion, ()
    found = solution(judge.start)
    assert found is not None
    if problem.integers:
        text = ", ".join(map(str, sorted(integers_of(found) or ())))
        return text, (text, f"{{{text}}}")
    unknown = problem.unknown
    ways = max(len(value_forms(n)) for n in found.numbers)
    forms = [_shown(found, unknown, way) for way in range(ways)]
    preferred = forms[0]
    forms.append(f"{{{unknown} : {preferred}}}")
    forms.append(_interval(found))
    forms.append(_other_way(found, unknown))
    return _plain(found, unknown), tuple(dict.fromkeys(forms))


def _shown(found: Shaped, unknown: str, way: int) -> str:
    """``x > 3``, ``-2 < x <= 3`` with its numbers in one of their forms, 0 the preferred one."""
    numbers = [value_forms(n)[min(way, len(value_forms(n)) - 1)] for n in found.numbers]
    return _in_order(found, unknown, numbers)


def _plain(found: Shaped, unknown: str) -> str:
    return _in_order(found, unknown, [answer_form(n) for n in found.numbers])


def _in_order(found: Shaped, unknown: str, numbers: list[Node]) -> str:
    signs = _signs(found)
    if len(numbers) == 1:
        return typed(Relation((Symbol(unknown), numbers[0]), signs))
    turned = rewriting.exchanged(Relation((Symbol(unknown), numbers[0]), signs[:1]))
    return typed(Relation((*turned.sides, numbers[1]), (*turned.signs, signs[1])))


def _signs(found: Shaped) -> tuple[str, ...]:
    assert isinstance(found.shape, tuple)
    return found.shape


def _interval(found: Shaped) -> str:
    """``(3, ∞)``, ``(-2, 3]``."""
    numbers = [typed(value_forms(n)[0]) for n in found.numbers]
    signs = _signs(found)
    opening = {">": "(", ">=": "["}.get(signs[0], "(")
    closing = {"<": ")", "<=": "]"}.get(signs[-1], ")")
    if len(numbers) == 2:
        return f"{opening}{numbers[0]}, {numbers[1]}{closing}"
    return f"{opening}{numbers[0]}, ∞)" if points_up(signs[0]) else f"(-∞, {numbers[0]}{closing}"


def _other_way(found: Shaped, unknown: str) -> str:
    """``3 < x``; ``x > -2 and x <= 3``."""
    ends = [
        Relation((Symbol(unknown), value_forms(n)[0]), (sign,))
        for n, sign in zip(found.numbers, _signs(found), strict=True)
    ]
    return typed(rewriting.exchanged(ends[0]) if len(ends) == 1 else joined((tuple(ends),)))
