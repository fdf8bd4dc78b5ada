"""What does this topic take, and how is it worked out? The doors of the topic."""

from __future__ import annotations

from functools import lru_cache

from itembank.algebra.reading import read_line
from itembank.algebra.showing import typed
from itembank.algebra.values import NoValue, relation_symbols
from itembank.algebra.written import Relation
from itembank.topics import Topic
from itembank.topics.confirming import same_expressions
from itembank.topics.errors import BRACKET_ERRORS, GROUP_ERRORS, JOIN_ERRORS
from itembank.topics.expressions.judging import (
    BRACKETS,
    COLLECT_WORDS,
    COLLECTED,
    EXPAND_WORDS,
    ExpressionJudge,
)
from itembank.topics.kinds import (
    CheckFailed,
    OtherKind,
    Route,
    RouteLine,
    Solution,
    Stage,
    StageRule,
    TopicError,
)
from itembank.topics.parts import LETTER, NUMBER, Part, Parts, flat, multiplied_out
from itembank.topics.writing import written_side

TOPIC = "expressions"

WORDS = {BRACKETS: "multiplies out the brackets", COLLECTED: "the expression in its simplest form"}


def _read(problem: str) -> tuple[Relation, str]:
    line = read_line(problem, comma=True)
    relations = [relation for group in line.alternatives for relation in group]
    if len(relations) != 1 or line.statement or line.notes or line.heads:
        raise TopicError("a problem must be one expression with nothing written beside it")
    (relation,) = relations
    if relation.signs:
        raise OtherKind("this is no expression: it has a sign of equality or order")
    letters = sorted(relation_symbols(relation))
    if len(letters) != 1:
        found = ", ".join(letters) or "none"
        raise TopicError(f"this topic takes expressions in one letter; here there is: {found}")
    return relation, letters[0]


@lru_cache(maxsize=4096)
def judge(problem: str) -> ExpressionJudge:
    """The judge of a problem.

    Raises:
        ReadingFault: where the text cannot be read.
        TopicError: where it is no linear expression in one letter, or there is nothing to do.
    """
    found = ExpressionJudge(*_read(problem))
    try:
        found.form(found.problem)
    except NoValue as fault:
        raise TopicError(f"this is no linear expression: {fault}") from fault
    if found.answer(found.problem) is not None:
        raise TopicError("there is nothing to expand or to collect in this expression")
    return found


def stages(problem: str) -> tuple[Stage, ...]:
    """The stages present in a problem, in order; raises as :func:`judge` does."""
    names = judge(problem).stages
    kinds = {BRACKETS: "M", COLLECTED: "A" if len(names) > 1 else "B"}
    return tuple(Stage(name, kinds[name], WORDS[name]) for name in names)


def solve(problem: str) -> Solution:
    """The reference solution: expand, then collect; every line confirmed by SymPy.

    Raises:
        ReadingFault: where the text cannot be read.
        TopicError: where it is no linear expression in one letter, or there is nothing to do.
        CheckFailed: where SymPy does not confirm a line.
    """
    found = judge(problem)
    texts = _texts(found)
    for text in texts:
        if not same_expressions(problem, text):
            raise CheckFailed(f"{problem}: SymPy does not confirm the line {text}")
    lines = [RouteLine(typed(found.problem), "", "", True)]
    if len(texts) > 1:
        lines.append(RouteLine(texts[0], EXPAND_WORDS, BRACKETS, True))
    words = COLLECT_WORDS if len(texts) > 1 or BRACKETS not in found.stages else EXPAND_WORDS
    lines.append(RouteLine(texts[-1], words, COLLECTED, True))
    route = Route("expand, then collect" if len(texts) > 1 else words, tuple(lines))
    return Solution(typed(found.problem), TOPIC, texts[-1], (texts[-1],), (route,), stages(problem))


def _texts(found: ExpressionJudge) -> list[str]:
    """The lines after the problem: brackets multiplied out (where it has any), then collected."""
    spread = multiplied_out(found.start)
    collected = _collected(spread)
    out = [typed(written_side(collected, found.unknown))]
    if BRACKETS in found.stages and len(spread) > len(collected):
        out.insert(0, typed(written_side(spread, found.unknown)))
    return out


def _collected(parts: Parts) -> Parts:

    terms = flat(parts)
    out = []
    if terms.slope:
        out.append(Part(terms.slope, LETTER))
    if terms.constant or not out:
        out.append(Part(terms.constant, NUMBER))
    return tuple(out)


EXPRESSIONS = Topic(
    name=TOPIC,
    room="expressions",
    judge=judge,
    stages=stages,
    solve=solve,
    instruction="Expand the brackets and collect like terms.",
    rules=(
        StageRule(
            BRACKETS,
            "M",
            "the letter stands in a bracket",
            "no bracket holds the letter",
        ),
        StageRule(
            COLLECTED,
            "A",
            "always",
            "one term in the letter and one number, nothing left to do",
        ),
    ),
    errors=(*BRACKET_ERRORS, *GROUP_ERRORS, *JOIN_ERRORS),
)
