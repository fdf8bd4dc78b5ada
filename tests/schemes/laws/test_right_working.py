"""Does right working earn full marks, however much of it is shown? (Common practice, no source.)"""

from __future__ import annotations

from hypothesis import assume, given
from hypothesis import strategies as st

from itembank.algebra.inside import relation_symbols
from itembank.algebra.reading import read_lines
from itembank.topics import find_topic
from schemes.building import default_scheme, validate
from tests.schemes.laws.trying import (
    WRONG,
    every_topic,
    full,
    judge_of,
    marked,
    routes,
    solutions,
    topics_of_expressions,
    tries,
)

# Another topic takes some of its problems where none is named.
TO_BE_NAMED = {"factorising"}
# The line that loses the unknown implies less than others do (conventions 3.15).
LOSES_THE_UNKNOWN = {"linear equations", "linear inequalities"}
# Where a value is put in between, a second line left out can be one too many.
ONE_AT_A_TIME = {"simultaneous equations"}


@every_topic
@given(data=st.data())
def test_a_family_gives_problems_that_its_topic_takes_and_a_scheme_that_can_stand(
    topic: str, data: st.DataObject
) -> None:
    found = data.draw(solutions(topic))
    assert find_topic(found.problem, None if topic not in TO_BE_NAMED else topic).name == topic
    assert validate(default_scheme(found.problem, topic)) == ()


@every_topic
@tries(1.5)
@given(data=st.data())
def test_every_route_earns_full_marks_and_no_line_of_it_is_taken_for_an_error(
    topic: str, data: st.DataObject
) -> None:
    found, route = data.draw(routes(topic))
    lines = [line.text for line in route.lines]
    assert full(found, lines)
    for show_working in (True, False):
        result = marked(found, lines, show_working)
        assert not WRONG & {line.verdict for line in result.lines}


@every_topic
@tries(1.5)
@given(data=st.data())
def test_optional_lines_never_change_marks(topic: str, data: st.DataObject) -> None:
    found, route = data.draw(routes(topic))
    shown = data.draw(st.lists(st.booleans(), min_size=len(route.lines), max_size=len(route.lines)))
    lines = [
        line.text for line, drawn in zip(route.lines, shown, strict=True) if line.required or drawn
    ]
    assert full(found, lines), lines


@every_topic
@tries(1.5)
@given(data=st.data())
def test_required_lines_left_out_are_implied(topic: str, data: st.DataObject) -> None:
    found, route = data.draw(routes(topic))
    assume(topic not in LOSES_THE_UNKNOWN or found.stages[-1].name != "conclusion")
    *lines, last = [line.text for line in route.lines if line.required]
    if topic in ONE_AT_A_TIME:
        place = data.draw(st.integers(1, max(1, len(lines) - 1)))
        kept = [*lines[:place], *lines[place + 1 :]]
    else:
        shown = data.draw(st.lists(st.booleans(), min_size=len(lines), max_size=len(lines)))
        kept = [line for line, drawn in zip(lines, shown, strict=True) if drawn]
    assert full(found, [*kept, last]), [*kept, last]


@every_topic
@tries(1)
@given(data=st.data())
def test_every_accepted_form_of_the_answer_earns_its_mark(topic: str, data: st.DataObject) -> None:
    found = data.draw(solutions(topic))
    required = [line.text for line in found.routes[0].lines if line.required]
    for form in found.forms:
        assert full(found, [*required[:-1], form]), form
        assert full(found, [form]), form


@every_topic
@tries(0.6)
@given(data=st.data())
def test_an_empty_script_and_the_problem_alone_earn_nothing(
    topic: str, data: st.DataObject
) -> None:
    found = data.draw(solutions(topic))
    assert marked(found, []).total == 0
    assert marked(found, [found.problem]).total == 0


@topics_of_expressions
@given(data=st.data())
def test_every_line_of_a_route_is_worth_what_the_problem_is_and_brings_no_letter_in(
    topic: str, data: st.DataObject
) -> None:
    found, route = data.draw(routes(topic))
    judge = judge_of(found)
    for line in route.lines[1:]:
        (read,) = read_lines(line.text)
        relation = read.alternatives[0][0]
        assert judge.keeps(judge.start, judge.form(relation))
        assert relation_symbols(relation) <= judge.unknowns


@topics_of_expressions
@given(data=st.data())
def test_expressions_in_one_chain_or_behind_a_sign_of_equality_earn_what_their_lines_earn(
    topic: str, data: st.DataObject
) -> None:
    found, route = data.draw(routes(topic))
    lines = [line.text for line in route.lines[1:]]
    assert marked(found, [f"= {line}" for line in lines]).total == marked(found, lines).total
    chain = " = ".join(lines)
    if len(chain) <= 400:
        result = marked(found, [chain])
        assert (result.total, result.referred) == (result.maximum, False)
