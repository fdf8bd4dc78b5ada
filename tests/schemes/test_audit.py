"""Does the audit find what is wrong with a scheme, and leave a fair one alone?

The marks and the rules behind them are read off the marking conventions by hand; no source but
them.
"""

from __future__ import annotations

from functools import cache
from random import Random

import pytest

from itembank.topics import find_topic
from itembank.topics.linear_equations.families import FAMILIES
from schemes.audit import audit
from schemes.audited import ALARMS, BELOW, COSTS_MORE, NEVER, UNEARNED, UNEQUAL, Alarm, Audit
from schemes.building import (
    default_scheme,
    merged,
    with_allocation,
    with_check,
    with_line_seen,
    with_settings,
    without_point,
)
from schemes.marking import mark_script
from schemes.scheme import Scheme, Settings
from schemes.trying import KINDS, VALID, trials
from schemes.verdicts import ScriptLine

BRACKET = "4(x - 3) = 2x + 9"
TWO_STEPS = "6x - 7 = 23"


@cache
def of(problem: str, scripts: int = 0) -> Audit:
    return audit(default_scheme(problem), scripts=scripts)


def alarms(report: Audit, kind: str) -> list[Alarm]:
    return [alarm for alarm in report.alarms if alarm.kind == kind]


@pytest.mark.parametrize("family", FAMILIES, ids=lambda family: str(family.name))
def test_every_default_scheme_pays_each_route_alike_and_every_point_can_be_earned(
    family: object,
) -> None:
    problem = family.make(Random(4))  # type: ignore[attr-defined]
    report = of(problem)

    total = default_scheme(problem).total
    assert {(r.all_lines, r.required_lines) for r in report.routes} == {(total, total)}
    assert not alarms(report, NEVER)
    assert not alarms(report, UNEQUAL)
    # a sign lost in a line that serves no stage takes the accuracy mark alone (section 2)
    assert {one.words.partition(": ")[2] for one in alarms(report, UNEARNED)} <= {"sign lost"}


def test_a_simple_default_scheme_gives_no_alarm() -> None:
    assert of(TWO_STEPS, 300).alarms == ()


def test_the_same_number_gives_the_same_report() -> None:
    assert audit(default_scheme(TWO_STEPS), scripts=200, seed=3) == audit(
        default_scheme(TWO_STEPS), scripts=200, seed=3
    )


def test_duplicates_are_marked_once_and_chance_fills_up() -> None:
    report = of(TWO_STEPS, 300)
    systematic = of(TWO_STEPS)

    assert report.tried == 300
    assert systematic.distinct < report.distinct < 300
    assert sum(kind.scripts for kind in report.kinds) == report.distinct
    assert [kind.kind for kind in report.kinds] == list(KINDS)


def test_the_watch_is_told_of_every_script() -> None:
    seen: list[int] = []
    report = audit(default_scheme(TWO_STEPS), scripts=60, watch=seen.append)

    assert seen == list(range(1, report.tried + 1))


def test_an_error_that_costs_its_method_and_accuracy_is_described_not_alarmed() -> None:
    """3.5 and 4.1: the sign kept in moving 7 loses M1, and A1 with it."""
    report = of(TWO_STEPS)
    moved = next(e for e in report.errors if e.name == "moved without changing its sign")

    assert (moved.lowest, moved.commonest, moved.highest, moved.referred) == (0, 0, 0, 0)
    assert [(lost.point, lost.rule[:3]) for lost in moved.lost] == [("M1", "3.5"), ("A1", "4.1")]
    assert moved.example.lines[1] in ("6x = 23 - 7", "6x = 16")
    assert moved.example.awards == "M0 A0"


def test_a_stage_that_an_error_removes_is_an_alarm_that_names_the_rule() -> None:
    """3.5: unlike terms joined inside the bracket take `constants collected` as well."""
    found = alarms(of(BRACKET), COSTS_MORE)
    joined = [one for one in found if one.about == "unlike terms joined inside a bracket"]

    assert [one.words for one in joined] == ["loses M1, M3, A1"]
    assert [rule[:3] for rule in joined[0].rules] == ["3.5", "3.5", "4.1"]
    assert "removes" in joined[0].rules[1]


def test_a_contradiction_reached_by_error_is_an_alarm_that_names_the_rule() -> None:
    """3.15: `2x - 6 = 2x + 9` ends the route, and what is not written by then earns nothing."""
    found = [one for one in alarms(of(BRACKET), COSTS_MORE) if one.about == "one side not divided"]

    assert found
    assert all(any(rule.startswith("3.15") for rule in one.rules) for one in found)


def test_a_wrong_value_that_implies_nothing_is_an_alarm_that_names_the_rule() -> None:
    """3.9: from the expanded line straight to a wrong value, two stages are lost."""
    rules = {rule[:3] for one in alarms(of(BRACKET, 1500), COSTS_MORE) for rule in one.rules}

    assert "3.9" in rules


def test_every_loss_has_a_rule() -> None:
    for problem in (BRACKET, "x/2 + x/3 = 10", "3(x + 4) = 3x + 5"):
        report = of(problem, 600)
        for one in [lost for error in report.errors for lost in error.lost]:
            assert one.rule.split()[0].replace(".", "").isdigit(), one
        for alarm in report.alarms:
            assert all(rule.split()[0].replace(".", "").isdigit() for rule in alarm.rules)


def test_a_line_that_must_be_seen_is_an_alarm_on_scripts_that_leave_it_out() -> None:
    """3.4: implication does not earn the point."""
    found = alarms(audit(with_line_seen(default_scheme(BRACKET), "M2"), scripts=0), BELOW)

    assert [(one.words, one.rules) for one in found] == [
        ("loses M2", ("3.4 the line must be seen",))
    ]


def test_a_skipped_line_before_a_contradiction_is_an_alarm_of_the_conventions() -> None:
    """3.15: unwritten, the line that loses the unknown earns `unknown collected` alone."""
    found = alarms(of("3(x + 4) = 3x + 5"), BELOW)

    assert [(one.words, one.rules) for one in found] == [
        ("loses M1", ("3.15 the unknown is lost",))
    ]


def test_a_mark_for_a_check_can_be_earned() -> None:
    report = audit(with_check(default_scheme(TWO_STEPS)), scripts=0)
    check = next(point for point in report.points if point.stage == "check")

    assert check.awarded > 0
    assert not alarms(report, NEVER)
    assert {(r.all_lines, r.required_lines) for r in report.routes} == {(3, 3)}


def test_a_mark_that_nothing_earns_is_an_alarm() -> None:
    """A check of a value, in a problem that has none."""
    report = audit(with_check(default_scheme("3(x + 4) = 3x + 5")), scripts=0)

    assert [one.about for one in alarms(report, NEVER)] == ["B1"]
    assert alarms(report, BELOW)


def test_a_decimal_asked_for_shows_in_the_forms_that_lose() -> None:
    """4.5: `22/8` is unfinished where lowest terms are asked for; a route's own form is not."""
    scheme = with_settings(default_scheme("4x + 3 = 14"), Settings(mixed_number=True))
    lost = alarms(audit(scheme, scripts=0), BELOW)

    assert lost
    assert all("loses A1" in one.words for one in lost)
    assert all(rule.startswith("4.5") for one in lost for rule in one.rules)


EDITS = {
    "two marks": lambda scheme: with_allocation(scheme, "M1", 2),
    "merged": lambda scheme: merged(scheme, "M1", "M2"),
    "without": lambda scheme: without_point(scheme, "M2"),
}


@pytest.mark.parametrize("edit", EDITS)
def test_an_edited_scheme_is_audited_by_its_own_points(edit: str) -> None:
    scheme = EDITS[edit](default_scheme(BRACKET))
    report = audit(scheme, scripts=0)

    assert [point.point for point in report.points] == [point.point for point in scheme.points]
    assert {(r.all_lines, r.required_lines) for r in report.routes} == {
        (scheme.total, scheme.total)
    }
    assert {alarm.kind for alarm in report.alarms} <= set(ALARMS)


def test_valid_scripts_hold_every_route_whole_bare_and_with_each_required_line_skipped() -> None:
    solution = find_topic(BRACKET).solve(BRACKET)
    valid = [t for t in trials(default_scheme(BRACKET), 0, 1) if t.kind == VALID]

    for route in solution.routes:
        required = [line.text for line in route.lines if line.required]
        mine = [trial.texts for trial in valid if trial.route == route.name]
        assert tuple(line.text for line in route.lines) in mine
        assert tuple(required) in mine
        for place in range(1, len(required) - 1):
            assert (*required[:place], *required[place + 1 :]) in mine


def test_what_an_error_earns_is_what_the_marker_gives_its_example() -> None:
    scheme: Scheme = default_scheme(BRACKET)
    for error in of(BRACKET).errors:
        marked = mark_script(scheme, [ScriptLine(line) for line in error.example.lines])
        assert marked.total == error.commonest == error.example.total
        assert error.lowest <= error.commonest <= error.highest
        assert 0 <= error.share_referred <= 1


@pytest.mark.parametrize(
    ("kind", "rules", "by_conventions"),
    [
        (BELOW, ("3.15 the unknown is lost",), True),
        (COSTS_MORE, ("3.5 a method error", "3.9 a wrong value implies nothing"), True),
        (COSTS_MORE, ("3.5 a method error", "3.10 the error made afresh"), False),
        (UNEARNED, ("3.9 a wrong value implies nothing",), False),
        (BELOW, (), False),
    ],
)
def test_what_the_conventions_cause_in_any_scheme_is_told_apart(
    kind: str, rules: tuple[str, ...], by_conventions: bool
) -> None:
    assert Alarm(kind, "an error", "words", rules).by_conventions is by_conventions
