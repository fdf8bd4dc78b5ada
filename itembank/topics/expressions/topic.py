"""What does this topic take, and how is it worked out? The doors of the topic."""

from __future__ import annotations

from functools import lru_cache

from itembank.algebra.exact import Fraction
from itembank.algebra.showing import typed
from itembank.algebra.values import NoValue
from itembank.algebra.written import Quotient
from itembank.topics import Topic
from itembank.topics.expressions.checking import check
from itembank.topics.expressions.families import FAMILIES
from itembank.topics.expressions.finished import unfinished
from itembank.topics.expressions.frequencies import frequency
from itembank.topics.expressions.judging import ExpressionJudge
from itembank.topics.expressions.known import ERRORS, RULES
from itembank.topics.expressions.problems import (
    ADD,
    CANCEL,
    COLLECT,
    EXPAND,
    FRACTIONS,
    MULTIPLY,
    PUT,
    Task,
    read_task,
)
from itembank.topics.expressions.routes import routes_of
from itembank.topics.expressions.stages import LAST, WORDS, stage_names
from itembank.topics.expressions.trees import plain, polynomial_node
from itembank.topics.kinds import OtherKind, Solution, Stage, TopicError

TOPIC = "expressions"

INSTRUCTIONS = {
    COLLECT: "Simplify.",
    EXPAND: "Expand and simplify.",
    PUT: "Find the value.",
    CANCEL: "Simplify fully.",
    MULTIPLY: "Write as a single fraction in its lowest terms.",
    ADD: "Write as a single fraction in its lowest terms.",
}


@lru_cache(maxsize=4096)
def judge(problem: str) -> ExpressionJudge:
    """The judge of a problem.

    Raises:
        ReadingFault: where the text cannot be read.
        TopicError: where it is no expression of this topic, or there is nothing to do.
    """
    task = read_task(problem)
    try:
        if not unfinished(task.node, task.kind):
            what = "cancel" if task.kind in FRACTIONS else "expand, to collect or to put in"
            raise OtherKind(f"there is nothing to {what} in this expression")
        stage_names(task.kind, task.node)
    except NoValue as fault:
        raise TopicError(f"the expression cannot be worked with: {fault}") from fault
    return ExpressionJudge(task)


def stages(problem: str) -> tuple[Stage, ...]:
    """The stages present in a problem, in order; raises as :func:`judge` does."""
    task = judge(problem).task
    names = stage_names(task.kind, task.node)
    last = "A" if len(names) > 1 else "B"
    return tuple(
        Stage(name, last if name == LAST[task.kind] else "M", WORDS[name]) for name in names
    )


@lru_cache(maxsize=4096)
def solve(problem: str) -> Solution:
    """The reference solution by every route, each line confirmed by SymPy.

    Raises:
        ReadingFault: where the text cannot be read.
        TopicError: where it is no expression of this topic, or there is nothing to do.
        CheckFailed: where SymPy does not confirm a line.
    """
    found = work_out(problem)
    check(judge(problem).task, found)
    return found


def work_out(problem: str) -> Solution:
    """The solution as :func:`solve` gives it, not yet confirmed."""
    task = judge(problem).task
    try:
        routes = routes_of(task)
    except NoValue as fault:
        raise TopicError(f"the expression cannot be worked with: {fault}") from fault
    answer = routes[0].lines[-1].text
    return Solution(
        task.text, TOPIC, answer, _forms(task, answer), routes, stages(problem), checked=True
    )


def asks(problem: str) -> str:
    """What a problem asks; raises as :func:`judge` does."""
    return INSTRUCTIONS[judge(problem).task.kind]


def posed(problem: str, line: str) -> str:
    """A line of a problem's work as a problem of its own: with the values given, if any."""
    values = ", ".join(typed(one) for one in judge(problem).task.values)
    return f"{line}, {values}" if values else line


def _forms(task: Task, answer: str) -> tuple[str, ...]:
    """The accepted forms of the answer, the preferred one first."""
    from itembank.algebra.reading import read_expression

    node = plain(read_expression(answer))
    forms = [answer]
    if task.kind == PUT:
        decimal = _decimal(answer)
        forms += [decimal] if decimal else []
    elif isinstance(node, Quotient):
        from itembank.algebra.values import polynomial

        top, bottom = polynomial(node.top), polynomial(node.bottom)
        multiplied = Quotient(polynomial_node(top), polynomial_node(bottom), "/")
        forms.append(typed(multiplied))
    return tuple(dict.fromkeys(forms))


def _decimal(answer: str) -> str:
    """A fraction as a decimal of at most four places; empty where it has none."""
    value = Fraction(answer)
    scaled = value * 10**4
    if value.denominator == 1 or scaled.denominator != 1:
        return ""
    sign = "-" if value < 0 else ""
    digits = str(abs(int(scaled))).rjust(5, "0")
    return f"{sign}{digits[:-4]}.{digits[-4:].rstrip('0')}"


EXPRESSIONS = Topic(
    name=TOPIC,
    room="expressions",
    judge=judge,
    stages=stages,
    solve=solve,
    instruction="Simplify the expression, or find its value where values are given.",
    families=FAMILIES,
    frequency=frequency,
    posed=posed,
    rules=RULES,
    asks=asks,
    errors=ERRORS,
)

__all__ = ["EXPRESSIONS", "judge", "solve", "stages", "work_out"]
