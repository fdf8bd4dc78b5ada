"""What holds for every equation with the unknown below a bar that the families give?"""

from __future__ import annotations

from random import Random

from hypothesis import given
from hypothesis import strategies as st

from itembank.topics.fractional_equations.families import FAMILIES
from itembank.topics.fractional_equations.topic import solve
from schemes.building import default_scheme, validate
from schemes.marking import mark_script
from schemes.verdicts import ScriptLine

problems = st.builds(
    lambda family, seed: FAMILIES[family].make(Random(seed)),
    st.integers(0, len(FAMILIES) - 1),
    st.integers(0, 500),
)


@given(problems)
def test_every_route_earns_full_marks_and_an_empty_script_none(problem: str) -> None:
    scheme = default_scheme(problem)
    assert validate(scheme) == ()
    for route in solve(problem).routes:
        lines = [ScriptLine(line.text) for line in route.lines[1:]]
        marked = mark_script(scheme, lines)
        assert marked.total == scheme.total, route.name
        assert not marked.referred
    assert mark_script(scheme, []).total == 0


@given(problems)
def test_the_required_lines_alone_earn_full_marks(problem: str) -> None:
    scheme = default_scheme(problem)
    for route in solve(problem).routes:
        lines = [ScriptLine(line.text) for line in route.lines[1:] if line.required]
        assert mark_script(scheme, lines).total == scheme.total, route.name
