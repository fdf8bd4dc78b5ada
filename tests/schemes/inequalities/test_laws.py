"""Laws of marking inequalities, each stated once as a property (common practice, no source)."""

from __future__ import annotations

from hypothesis import given, settings

from itembank.algebra.reading import read_line
from itembank.algebra.showing import typed
from itembank.algebra.written import Relation
from itembank.topics.kinds import Route, Solution
from schemes.mistakes import continuation, mistakes
from tests.schemes.laws.trying import judge_of, marked, routes, solutions

TOPIC = "linear inequalities"
SIGN_ERRORS = {
    "sign of inequality not turned",
    "sign of inequality turned for nothing",
    "sides exchanged, sign left",
    "open and closed end confused",
    "boundary given as an equation",
    "and for or",
    "two inequalities written as one double inequality",
}


@settings(max_examples=30, deadline=None)
@given(solutions(TOPIC))
def test_a_common_error_and_right_work_after_it_cost_what_the_conventions_say(
    found: Solution,
) -> None:
    """An error of the sign, or of how two parts are joined, costs the solution's mark.

    Another one costs its method mark as well.
    """
    for mistake in mistakes(found.problem, TOPIC, 0):
        lines = found.routes[0].lines[: mistake.place + 1]
        before = [line.text for line in lines if line.required]
        onward = continuation(mistake.text, TOPIC, found.problem)
        after = [line.text for line in onward if line.required]
        result = marked(found, [*before, mistake.text, *after])
        assert result.total < result.maximum, (found.problem, mistake)
        if mistake.name in SIGN_ERRORS and found.stages[-1].name == "solution":
            assert result.total == result.maximum - 1, (found.problem, mistake)
        assert 0 <= result.lowest <= result.total <= result.highest <= result.maximum


@settings(max_examples=30, deadline=None)
@given(routes(TOPIC))
def test_a_sign_of_equality_through_the_working_is_condoned_where_the_solution_has_its_own(
    case: tuple[Solution, Route],
) -> None:
    found, route = case
    judge = judge_of(found)
    if len(judge.start) > 1 or judge.conclusion:
        return
    lines = [line.text for line in route.lines[1:]]
    equal = [typed(Relation(_one(line).sides, ("=",))) for line in lines[:-1]]
    result = marked(found, [*equal, lines[-1]])
    assert (result.total, result.referred) == (marked(found, lines).total, False)


def _one(text: str) -> Relation:
    return read_line(text).alternatives[0][0]
