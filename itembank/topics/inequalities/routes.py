"""How is a linear inequality solved? Every sensible route, line by line, each line checked.

The steps are those of equations; a negative factor and exchanged sides turn the sign. Where there
are two parts, they are solved together or one after the other.
"""

from __future__ import annotations

from dataclasses import replace

from itembank.algebra.reading.parts import with_points
from itembank.algebra.showing import typed
from itembank.algebra.values import NoValue
from itembank.topics.inequalities.checking import check
from itembank.topics.inequalities.double_routes import double_routes
from itembank.topics.inequalities.either import EitherJudge
from itembank.topics.inequalities.either_routes import either_routes, solution_in_order
from itembank.topics.inequalities.forms import (
    answer,
    answer_forms,
    finished,
    integers_shown,
    number_line,
)
from itembank.topics.inequalities.judges import InequalitiesJudge, judge_of
from itembank.topics.inequalities.problems import Problem, read_problem
from itembank.topics.inequalities.solutions import solution
from itembank.topics.inequalities.stages import INTEGERS, SOLUTION, stages_of
from itembank.topics.judging import Shaped
from itembank.topics.kinds import Route, RouteLine, Solution, TopicError
from itembank.topics.linear_equations.routes import MOST_ROUTES, routes_by_steps
from itembank.topics.linear_equations.stages import VALUE

TOPIC = "linear inequalities"
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
    judge = judge_of(read)
    try:
        stages = stages_of(judge.stages)
        found = _routes(read, judge)
    except NoValue as fault:
        raise TopicError(f"this inequality is too long or too large to solve: {fault}") from fault
    if not found:
        raise TopicError("this inequality is too large to solve: its lines would be too long")
    text, forms = _answer(read, judge)
    line = number_line(_solution(judge), read.integers)
    shown = with_points(problem)
    return Solution(shown, TOPIC, text, forms, found, stages, number_line=line)


def _solution(judge: InequalitiesJudge) -> Shaped | None:
    return solution_in_order(judge) if isinstance(judge, EitherJudge) else solution(judge.start)


def _answer(problem: Problem, judge: InequalitiesJudge) -> tuple[str, tuple[str, ...]]:
    """The answer and its accepted forms; none of a conclusion."""
    if judge.conclusion:
        return judge.conclusion, ()
    found = _solution(judge)
    assert found is not None
    if problem.integers:
        text = integers_shown(found)
        return text, (text, f"{{{text}}}")
    return answer(found, problem.unknown), answer_forms(found, problem.unknown)


def _routes(problem: Problem, judge: InequalitiesJudge) -> tuple[Route, ...]:
    if isinstance(judge, EitherJudge):
        found = either_routes(judge)
    elif len(judge.start) == 1:
        found = routes_by_steps(problem.relation, problem.unknown, MOST_ROUTES, finished)
    else:
        found = double_routes(judge)
    return tuple(_completed(route, problem, judge) for route in found)


def _completed(route: Route, problem: Problem, judge: InequalitiesJudge) -> Route:
    """The route with the topic's names of stages, and the list of integers where it is asked."""
    lines = [
        replace(line, stage=judge.last if line.stage in (VALUE, SOLUTION) else line.stage)
        for line in route.lines
    ]
    lines[0] = replace(lines[0], text=problem_text(problem))
    if problem.integers:
        text = integers_shown(solution(judge.start))
        lines.append(RouteLine(text, LIST, INTEGERS, True))
    return Route(route.name, tuple(lines))


def problem_text(problem: Problem) -> str:
    """The problem as typed text."""
    text = typed(problem.relation)
    return f"{text}, integers" if problem.integers else text
