"""Is little referred, and is what is decided right? The measure of referrals at a small size."""

from __future__ import annotations

import pytest

from itembank.topics.linear_equations.errors import catalogue
from itembank.topics.linear_equations.judging import LinearJudge
from schemes.building import default_scheme
from schemes.marking import mark_script
from schemes.verdicts import ScriptLine
from tests.benchmarks.referral import (
    MOST_SKIPPED,
    SHARES,
    cases,
    knowing,
    main,
    measure,
    part_of_catalogue,
    truths,
)

WHOLE = part_of_catalogue(3, 3)
MOST_BEYOND = 0.05
MOST_DIFFERING = 0.02  # of decided totals; at 2,000 scripts the figure lies well below


@pytest.mark.parametrize("even", [False, True], ids=["as pupils make them", "every error alike"])
def test_with_the_whole_catalogue_little_is_referred_and_the_decided_totals_are_true(
    even: bool,
) -> None:
    scripts = cases(200, even)
    found = measure(scripts, WHOLE, truths(scripts))

    assert found.scripts == 200
    assert found.known == len(catalogue())
    assert found.share_beyond <= MOST_BEYOND
    assert found.share_differing <= MOST_DIFFERING


def test_a_script_leaves_out_at_most_two_lines_and_keeps_its_ends() -> None:
    for case in cases(100):
        assert case.lines[0] == case.whole[0] == case.problem
        assert case.lines[-1] == case.whole[-1]
        assert set(case.lines) <= set(case.whole)
    assert MOST_SKIPPED == 2


def test_a_larger_part_of_the_catalogue_holds_the_smaller_ones() -> None:
    third, two, whole = (part_of_catalogue(*share) for share in SHARES)

    assert third < two < whole == {error.name for error in catalogue()}


def test_an_error_that_is_not_known_is_no_error_to_the_explainer_and_is_one_again_after() -> None:
    """`6x = 16` from `6x - 7 = 23` is a sign kept in moving (conventions 3.6)."""
    scheme = default_scheme("6x - 7 = 23")
    script = [ScriptLine("6x = 16"), ScriptLine("x = 8/3")]
    wrongs = LinearJudge.wrongs

    def verdict() -> str:
        return mark_script(scheme, script).lines[0].verdict

    assert verdict() == "method error"
    with knowing(frozenset()):
        assert verdict() in ("slip", "unexplained")
    assert verdict() == "method error"
    assert LinearJudge.wrongs is wrongs


def test_the_command_prints_a_row_for_each_part_of_the_catalogue(
    capsys: pytest.CaptureFixture[str],
) -> None:
    main(["--scripts", "12"])

    shown = capsys.readouterr().out
    for part in SHARES:
        assert shown.count(f"{len(part_of_catalogue(*part))} errors") == 2
