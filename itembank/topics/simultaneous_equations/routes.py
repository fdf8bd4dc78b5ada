"""How are two simultaneous equations solved? Every sensible route, each line checked."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from itembank.algebra.exact import Fraction
from itembank.algebra.inside import symbols
from itembank.algebra.reading import ReadingFault, read_lines
from itembank.algebra.showing import typed
from itembank.algebra.values import NoValue, polynomial
from itembank.algebra.written import Relation, Sum
from itembank.topics import kinds
from itembank.topics.kinds import RouteLine, Solution, TopicError
from itembank.topics.linear_equations.forms import answer_form, solved, value_forms
from itembank.topics.simultaneous_equations.checking import check
from itembank.topics.simultaneous_equations.following import conclusion, multiples
from itembank.topics.simultaneous_equations.judging import SimultaneousJudge
from itembank.topics.simultaneous_equations.lines import Letters, Line, Row, System, key
from itembank.topics.simultaneous_equations.problems import read_problem
from itembank.topics.simultaneous_equations.stages import (
    FIRST,
    SIMPLIFIED,
    present_stages,
    tidy,
)
from itembank.topics.simultaneous_equations.working import CONCLUSIONS, Route
from itembank.topics.simultaneous_equations.writing import standard, typed_line

TOPIC = "simultaneous equations"
MOST_ROUTES = 5


def solve(problem: str) -> Solution:
    """The reference solution of two typed equations, every line confirmed by SymPy.

    Raises:
        ReadingFault: where the problem cannot be read.
        TopicError: where it is no pair of linear equations in two unknowns.
        CheckFailed: where SymPy does not confirm a line.
    """
    solution = work_out(problem)
    check(solution)
    return solution


def work_out(problem: str) -> Solution:
    """The reference solution before it is checked; :func:`solve` is for everyone else."""
    judge = SimultaneousJudge(*read_problem(problem))
    routes = tuple(_routes(judge))
    stages = present_stages(judge.start, bool(judge.told))
    answer, forms = _answer(judge)
    text = ", ".join(map(typed, judge.pair))
    return Solution(text, TOPIC, answer, forms, routes, stages)


def _answer(judge: SimultaneousJudge) -> tuple[str, tuple[str, ...]]:
    found = conclusion(judge.start)
    if found:
        return CONCLUSIONS[found], ()
    values = _values(judge)
    answer = _stated(judge.letters, [typed(answer_form(value)) for value in values])
    choices = [[typed(form) for form in value_forms(value)] for value in values]
    longest = max(map(len, choices))
    forms = [
        _stated(judge.letters, [ways[min(n, len(ways) - 1)] for ways in choices])
        for n in range(longest)
    ]
    point = f"({', '.join(typed(answer_form(value)) for value in values)})"
    return answer, tuple(dict.fromkeys((answer, *forms, point)))


def _values(judge: SimultaneousJudge) -> tuple[Fraction, Fraction]:
    (a, b, c), (d, e, f) = (line.row for line in judge.start)
    whole = a * e - b * d
    return (c * e - b * f) / whole, (a * f - c * d) / whole


def _stated(letters: Letters, values: Sequence[str]) -> str:
    return ", ".join(f"{letter} = {value}" for letter, value in zip(letters, values, strict=True))


def _routes(judge: SimultaneousJudge) -> Iterator[kinds.Route]:
    seen: set[tuple[str, ...]] = set()
    for name, route in _ways(judge):
        texts = tuple(line.text for line in route.lines)
        if texts not in seen:
            seen.add(texts)
            yield kinds.Route(name, tuple(route.lines))


def _ways(judge: SimultaneousJudge) -> Iterator[tuple[str, Route]]:
    """The routes, the preferred one first."""
    one, other = judge.start
    if not (one.both and other.both):
        yield "solve the one, put the value into the other", _one_known(judge)
        return
    equating = one.subject == other.subject and one.subject >= 0
    given = [line for line in (one, other) if line.subject >= 0]
    letters = judge.letters
    ways: list[tuple[str, Route]] = []
    if equating:
        name = f"equate the expressions for {letters[one.subject]}"
        ways.append((name, _equating(judge, one, other)))
    for line in [] if equating else given:
        name = f"put in the expression for {letters[line.subject]}"
        ways.append((name, _substituting(judge, line, other if line is one else one)))
    eliminations = [(_effort(*_ready_rows(judge), gone), gone) for gone in (0, 1)]
    for _, gone in sorted(eliminations):
        ways.append((f"eliminate {letters[gone]}", _eliminating(judge, gone)))
    if not given:
        for line, rest, which in ((one, other, "first"), (other, one, "second")):
            for place in (1, 0):
                if abs(tidy(line)[place]) == 1:
                    subject = Line(tidy(line), subject=place)
                    name = f"make {letters[place]} the subject of the {which} equation"
                    ways.append((name, _substituting(judge, subject, rest)))
    yield from ways[:MOST_ROUTES]


def _effort(one: Row, other: Row, gone: int) -> tuple[int, Fraction, int]:
    """How much multiplying an elimination needs; adding before subtracting."""
    p, q = multiples(one[gone], other[gone])
    return ((p != 1) + (abs(q) != 1), p + abs(q), int(q > 0))


def _begun(judge: SimultaneousJudge) -> Route:
    """The problem, and its equations without brackets and fractions."""
    route = Route(judge.letters, judge.stages)
    route.write(", ".join(map(typed, judge.pair)), "", "")
    for relation, line in zip(judge.pair, judge.start, strict=True):
        if line.plain:
            continue
        barred = tidy(line) != line.row
        row = _positive(tidy(line))
        stays = line._replace(plain=True) if _stays_subject(line) else Line(row)
        text = typed_line(stays, judge.letters)
        words = "clear the fractions of" if barred else "remove the brackets of"
        route.write(text, f"{words} {typed(relation)}", SIMPLIFIED)
    return route


def _stays_subject(line: Line) -> bool:
    """``y = 2(x - 1)``: without its bracket it still says what y is."""
    return line.subject >= 0 and line.both and tidy(line) == line.row


def _positive(row: Row) -> Row:
    lead = row[0] or row[1]
    return row if lead > 0 else (-row[0], -row[1], -row[2])


def _ready_rows(judge: SimultaneousJudge) -> tuple[Row, Row]:
    """The equations as they are combined: in standard form, with whole coefficients."""
    one, other = (
        _whole(line) if _is_standard(relation) else _positive(_whole(line))
        for relation, line in zip(judge.pair, judge.start, strict=True)
    )
    return one, other


def _whole(line: Line) -> Row:
    return tidy(line._replace(plain=False))


def _is_standard(relation: Relation) -> bool:
    """``2x - y = 4``: two terms in the letters on the left, a number on the right."""
    left, right = relation.sides
    if symbols(right):
        return False
    if len(symbols(left)) == 1:
        return not isinstance(left, Sum)
    if not isinstance(left, Sum):
        return False
    return len(left.terms) == len(polynomial(left)) and () not in dict(polynomial(left))


def _rearranged(judge: SimultaneousJudge, route: Route) -> tuple[Row, Row]:
    """The equations in standard form, each written anew where it does not stand so."""
    rows = _ready_rows(judge)
    for relation, line, row in zip(judge.pair, judge.start, rows, strict=True):
        text = typed(standard(row, judge.letters))
        if any(written.text == text for written in route.lines) or not (
            line.plain or _stays_subject(line)
        ):
            continue
        if not _is_standard(relation):
            route.write(text, f"rearrange {typed(relation)}", route.ready, required=False)
        elif row != line.row:
            times = row[0] / line.row[0]
            route.write(text, f"multiply {typed(relation)} by {times}", route.ready, required=False)
    return rows


def _eliminating(judge: SimultaneousJudge, gone: int) -> Route:
    route = _begun(judge)
    route.eliminate(*_rearranged(judge, route), gone)
    return _finished(judge, route)


def _substituting(judge: SimultaneousJudge, subject: Line, other: Line) -> Route:
    route = _begun(judge)
    if subject not in judge.start:
        text = typed_line(subject, judge.letters)
        shown = typed(standard(subject.row, judge.letters))
        letter = judge.letters[subject.subject]
        route.write(text, f"make {letter} the subject of {shown}", route.ready)
    if other.subject == 1 - subject.subject:
        route.substitute_in_turn(subject, other)
        return _finished(judge, route, subject)
    other_row = tidy(other)
    route.substitute(subject, other_row if other.subject < 0 else _positive(other_row))
    return _finished(judge, route, subject)


def _equating(judge: SimultaneousJudge, one: Line, other: Line) -> Route:
    route = _begun(judge)
    route.equate(one, other)
    return _finished(judge, route, one)


def _one_known(judge: SimultaneousJudge) -> Route:
    route = _begun(judge)
    line, into = sorted(judge.start, key=lambda one: one.both)
    if judge.told:
        route.found[line.place] = line.row[2] / line.row[line.place]
    else:
        relation = judge.pair[judge.start.index(line)]
        if not _is_standard(relation) and line.row[line.place] != 1:
            route.write(typed_line(Line(line.row), judge.letters), f"collect the terms of "
                        f"{typed(relation)}", FIRST, required=False)  # fmt: skip
        route.solve(line.place, (line.row[line.place], Fraction(0)), (Fraction(0), line.row[2]))
    return _finished(judge, route, Line(tidy(into), subject=into.subject))


def _finished(judge: SimultaneousJudge, route: Route, into: Line | None = None) -> Route:
    """The route from the first value on."""
    if len(route.found) == 1:
        (known,) = route.found
        route.find_other(into or _easiest(judge.start, 1 - known))
    route.state()
    return route


def _easiest(lines: Sequence[Line], place: int) -> Line:
    """The equation to put a value into: the one with the smallest coefficient left."""
    plain = [Line(_whole(line), subject=line.subject) for line in lines if line.both]
    return min(plain, key=lambda line: _hardness(line, place))


def _hardness(line: Line, place: int) -> tuple[bool, bool, Fraction]:
    own = line.row[place]
    return (abs(own) != 1, own < 0 and line.subject < 0, sum(map(abs, line.row), Fraction(0)))


def goes_on(problem: str, lines: Sequence[str]) -> tuple[RouteLine, ...]:
    """The lines that go on rightly from the last of those written to a problem.

    Raises:
        ReadingFault: where a line cannot be read.
        TopicError: where nothing goes on from it.
    """
    judge = SimultaneousJudge(*read_problem(problem))
    known = _known(judge, lines)
    route = Route(judge.letters, judge.stages)
    route.write(lines[-1], "", "")
    last = known[-1]
    _known_values(route, known)
    if last.lost:
        route.conclude("no solution" if last.row[2] else "all values")
    elif last.both:
        _on_from_both(judge, route, known)
    else:
        before = {p: v for p, v in route.found.items() if p != last.place}
        route.found = before
        _solve_last(route, last)
    if len(route.found) == 1:
        (place,) = route.found
        route.find_other(_easiest(_originals(judge, known), 1 - place))
    route.state()
    return tuple(route.lines[1:])


def _known(judge: SimultaneousJudge, lines: Sequence[str]) -> System:
    known = judge.start
    for text in lines:
        for line in read_lines(text):
            for relation in judge.relations(line):
                try:
                    known = known.with_line(judge.form(relation))
                except NoValue as fault:
                    raise TopicError(str(fault)) from fault
    return known


def _known_values(route: Route, known: System) -> None:
    """The values that stand stated before the last line."""
    for line in known[:-1]:
        if line.place >= 0 and line.equation is not None and line.row[line.place] == 1:
            route.found[line.place] = line.row[2]


def _solve_last(route: Route, line: Line) -> None:
    from itembank.topics.parts import flat
    from itembank.topics.simultaneous_equations.lines import equation_in

    left, right = (flat(side) for side in equation_in(line))
    if left.slope == 1 and not (left.constant or right.slope):
        route.found[line.place] = line.row[2]
        text = solved(route.letters[line.place], answer_form(line.row[2]))
        route.write(text, "work out the value", route.value_stage)
        return
    several = any(len(side.letters) > 1 or len(side.numbers) > 1 for side in (left, right))
    sides = (left.slope, left.constant), (right.slope, right.constant)
    route.solve(line.place, *sides, joins=several)


def _on_from_both(judge: SimultaneousJudge, route: Route, known: System) -> None:
    last = known[-1]
    other = _not_the_source(judge, known)
    if last.subject >= 0:
        if abs(tidy(other)[last.subject]):
            route.substitute(last, tidy(other))
        return
    rows = tidy(last), tidy(other)
    _, gone = min((_effort(*rows, gone), gone) for gone in (0, 1))
    route.eliminate(*rows, gone)


def _originals(judge: SimultaneousJudge, known: System) -> list[Line]:
    """The equations to put a value into: after a wrong subject, that one."""
    subjects = [line for line in known[2:] if line.subject >= 0 and line.both]
    return [*subjects[-1:], *judge.start] if not subjects else subjects[-1:]


def _not_the_source(judge: SimultaneousJudge, known: System) -> Line:
    """The equation that the last line was not made from, in its last form."""
    last = known[-1]
    one, other = judge.start
    source = max((one, other), key=lambda line: _alike(line.row, last.row))
    rest = other if source is one else one
    forms = [line for line in known[:-1] if line.both and key(line.row) == key(rest.row)]
    return forms[-1]


def _alike(one: Row, other: Row) -> int:
    """How many pairs of numbers stand in the same ratio in both rows."""
    pairs = ((0, 1), (0, 2), (1, 2))
    same = sum(one[i] * other[j] == one[j] * other[i] for i, j in pairs)
    return 4 * same + sum(abs(a) == abs(b) for a, b in zip(one, other, strict=True))


__all__ = ["TOPIC", "ReadingFault", "goes_on", "solve", "work_out"]
