"""Does only the work count, not how it is written? Laws over scripts with errors in them.

The lines of a simulated script are changed, never the problem: what says the same earns the same
(common practice, no source).
"""

from __future__ import annotations

from collections.abc import Callable

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from itembank.topics.kinds import Solution
from schemes.mistakes import continuation
from schemes.verdicts import MarkedScript
from tests.schemes.laws.trying import earned, every_topic, judge_of, marked, marks, scripts
from tests.schemes.rewriting import exchanged, renamed, reordered

# With one line right, what it says tells which letter is which; with none, their order does (5.9).
TWO_UNKNOWNS = {"simultaneous equations"}
GOES_ON = ("follows", "follows own error")

some_lines = st.lists(st.booleans(), min_size=20, max_size=20)


@every_topic
@given(data=st.data())
def test_other_letters_throughout_never_change_marks(topic: str, data: st.DataObject) -> None:
    found, lines = data.draw(scripts(topic))
    letters = sorted(judge_of(found).unknowns)
    assume(len(letters) == 1 or topic in TWO_UNKNOWNS)
    drawn = data.draw(
        st.sets(st.sampled_from("qwnkuv"), min_size=len(letters), max_size=len(letters))
    )
    new = dict(zip(letters, sorted(drawn), strict=True))
    assume(not set(letters) & drawn)
    other = [renamed(line, new) for line in lines]
    assert earned(found, other) == earned(found, lines), other


@pytest.mark.parametrize(
    "change",
    [exchanged, reordered, lambda line: exchanged(reordered(line))],
    ids=["sides", "terms", "both"],
)
@every_topic
@given(data=st.data(), chosen=some_lines)
def test_exchanging_sides_or_terms_of_any_lines_never_changes_marks(
    change: Callable[[str], str], topic: str, data: st.DataObject, chosen: list[bool]
) -> None:
    found, lines = data.draw(scripts(topic))
    changed = [
        change(line) if chosen[at % len(chosen)] and line != found.problem else line
        for at, line in enumerate(lines)
    ]
    assert earned(found, changed) == earned(found, lines), changed


@every_topic
@given(data=st.data(), place=st.integers(0, 20))
def test_a_line_that_follows_written_twice_never_changes_marks(
    topic: str, data: st.DataObject, place: int
) -> None:
    question, lines = data.draw(scripts(topic))
    found = marked(question, lines)
    right = [at for at, line in enumerate(found.lines) if line.verdict in (*GOES_ON, "copied")]
    if right:
        at = right[place % len(right)]
        assert earned(question, [*lines[: at + 1], *lines[at:]]) == marks(found)


@every_topic
@given(data=st.data())
def test_optional_lines_put_into_a_script_with_errors_never_change_its_marks(
    topic: str, data: st.DataObject
) -> None:
    question, lines = data.draw(scripts(topic))
    found = marked(question, lines)
    assume(found.special is None)  # an answer alone: any line before it is working (5.1)
    more = _with_optional_lines(question, found)
    assert earned(question, more) == marks(found), more


def _with_optional_lines(question: Solution, found: MarkedScript) -> list[str]:
    """Before each line that goes on by the solver's own route, what that route may leave out."""
    out: list[str] = []
    before = question.problem
    for line in found.lines:
        optional = []
        for step in continuation(before, question.topic, question.problem):
            if step.required:
                if line.verdict in GOES_ON and step.text == line.text:
                    out += optional
                break
            optional.append(step.text)
        out.append(line.text)
        before = line.text
    return out


@every_topic
@given(data=st.data())
def test_the_problem_copied_first_never_changes_marks_but_of_a_misread(
    topic: str, data: st.DataObject
) -> None:
    # Whoever copies the problem rightly has not misread it (5.2): a doubt of that is settled.
    question, lines = data.draw(scripts(topic))
    found = marked(question, lines)
    assume(all(line.verdict not in ("misread", "copied") for line in found.lines))
    copied = marked(question, [question.problem, *lines])
    if found.referred:
        assert found.lowest <= copied.lowest <= copied.highest <= found.highest
    else:
        assert marks(copied) == marks(found)
