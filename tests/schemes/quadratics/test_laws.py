"""Laws of marking quadratic equations, each stated once as a property (common practice)."""

from __future__ import annotations

from hypothesis import given, settings

from itembank.algebra.reading import ReadingFault, read_line
from itembank.algebra.values import NoValue
from itembank.topics import find_topic
from itembank.topics.kinds import Solution
from tests.schemes.laws.trying import marked, solutions

TOPIC = "quadratic equations"


def full(found: Solution, lines: list[str]) -> bool:
    """Full marks, also where the solutions alone are all that stands there."""
    result = marked(found, lines, show_working=False)
    return (result.total, result.referred) == (result.maximum, False)


@settings(max_examples=60, deadline=None)
@given(solutions(TOPIC))
def test_every_accepted_form_of_the_solutions_earns_its_mark(found: Solution) -> None:
    required = [line.text for line in found.routes[0].lines if line.required]
    for form in found.forms:
        assert full(found, [*required[:-1], form]), (found.problem, form)
        apart = form.replace(" or ", "; ").replace(", ", "; ").split("; ")
        assert full(found, [*required[:-1], *apart]), (found.problem, apart)


def test_reading_and_explaining_refuse_what_has_no_value() -> None:
    judge = find_topic("x^2 = 9").judge("x^2 = 9")
    for text in ("x = 1/0", "x = √2 + √3", "x^3 = 8", "x + y = 3"):
        try:
            judge.form(judge.relations(read_line(text))[0])
        except (NoValue, ReadingFault):
            continue
        raise AssertionError(text)
