"""Do marks keep their bounds whatever is written? (Common practice, no source.)"""

from __future__ import annotations

from hypothesis import given
from hypothesis import strategies as st

from tests.schemes.laws.trying import every_topic, judge_of, marked, routes, solutions, tries

SIGNS = "0123456789+-−*/÷×=()[]{}.,;:|^²½√± <>≤≥≈∞∴→'…①②"
WORDS = ("no solution", " or ", " and ", "integers", "answer", "so ", "eq")


@every_topic
@tries(3)
@given(data=st.data())
def test_marks_stay_within_their_bounds_whatever_is_written(
    topic: str, data: st.DataObject
) -> None:
    found = data.draw(solutions(topic))
    letters = "".join(sorted(judge_of(found).unknowns))
    alphabet = SIGNS + 3 * letters + "abcorandinteg"
    line = st.one_of(
        st.text(alphabet=alphabet, max_size=40),
        st.builds(str.__add__, st.text(alphabet=alphabet, max_size=20), st.sampled_from(WORDS)),
    )
    lines = data.draw(st.lists(line, max_size=5))
    if data.draw(st.booleans()):
        lines.append(found.answer)
    assert len(marked(found, lines).lines) == len(lines)


@every_topic
@given(data=st.data())
def test_a_line_mangled_by_one_character_is_still_judged(topic: str, data: st.DataObject) -> None:
    found, route = data.draw(routes(topic))
    lines = [line.text for line in route.lines]
    at = data.draw(st.integers(0, len(lines) - 1))
    place = data.draw(st.integers(0, len(lines[at])))
    taken = data.draw(st.integers(0, 1))
    sign = data.draw(st.sampled_from(SIGNS))
    lines[at] = lines[at][:place] + sign + lines[at][place + taken :]
    assert len(marked(found, lines).lines) == len(lines)
