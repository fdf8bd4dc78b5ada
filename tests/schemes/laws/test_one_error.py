"""Is every common error known again, and what does one cost? (Common practice, no source.)"""

from __future__ import annotations

from hypothesis import assume, given
from hypothesis import strategies as st

from itembank.algebra.reading import ReadingFault, read_line
from itembank.algebra.values import NoValue
from itembank.topics.judging import Form, Judge
from itembank.topics.knowing import known_after
from schemes.explaining import ERROR, RIGHT, explain
from schemes.mistakes import continuation, mistakes
from tests.schemes.laws.trying import every_topic, judge_of, marked, routes


@every_topic
@given(data=st.data())
def test_a_common_error_is_among_the_explanations_of_what_it_makes(
    topic: str, data: st.DataObject
) -> None:
    """Made at any line of a route; a likelier error may explain the same line alone."""
    found, route = data.draw(routes(topic))
    judge = judge_of(found)
    known = known_after(judge, [line.text for line in route.lines])
    source = data.draw(st.sampled_from([one for one in known if one is not None]))
    for wrong in judge.wrongs(source):
        after = None if wrong.shown else read_form(judge, judge.show(wrong.after))
        if after is None:
            continue
        readings = explain(judge, source, after)
        what = (wrong.name, judge.show(wrong.after))
        kinds = {reading.kind for reading in readings}
        assert kinds <= {RIGHT, ERROR}, what
        assert kinds, what
        made = [one for reading in readings for one in reading.wrongs]
        if RIGHT not in kinds and wrong.name not in {one.name for one in made}:
            assert min(one.cost for one in made) <= wrong.cost, what


def read_form(judge: Judge, text: str) -> Form | None:
    """The form of a line that leaves something to do; None where an error led out of the topic."""
    try:
        relations = judge.relations(read_line(text))
        form = judge.form(relations[0])
    except (NoValue, ReadingFault):
        return None
    return form if len(relations) == 1 and not judge.ended(form) else None


@every_topic
@given(data=st.data())
def test_an_error_and_right_work_after_it_cost_the_answer_and_the_method_that_it_spoils(
    topic: str, data: st.DataObject
) -> None:
    """Besides its own stage an error takes away those that it removes (section 2, 3.5).

    What the wrong line leaves no way to reach is not reached, not spoiled.
    """
    found, route = data.draw(routes(topic))
    made = mistakes(found.problem, topic, found.routes.index(route))
    assume(made)
    mistake = data.draw(st.sampled_from(made))
    before = [line.text for line in route.lines[: mistake.place + 1] if line.required]
    onward = continuation(mistake.text, topic, found.problem, tuple(before))
    result = marked(found, [*before, mistake.text, *(x.text for x in onward if x.required)])
    assert result.lowest < result.maximum
    if not result.referred:
        judge = judge_of(found)
        source = known_after(judge, [line.text for line in route.lines])[mistake.place]
        alike = [wrong for wrong in judge.wrongs(source) if wrong.name == mistake.name]
        removed = {stage for wrong in alike for stage in wrong.removes}
        methods = (point for point in result.points if point.point[0] == "M" and point.line)
        assert sum(not point.awarded for point in methods) <= 1 + len(removed)
