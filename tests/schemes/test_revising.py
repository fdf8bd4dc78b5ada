"""Does a change of scheme say what it changes, in the scheme and at each mark point?"""

from __future__ import annotations

from dataclasses import replace

from schemes import scripts
from schemes.building import (
    default_scheme,
    merged,
    with_allocation,
    with_check,
    with_follow_through,
    with_line_seen,
    with_notes,
    with_settings,
    with_words,
)
from schemes.marking import mark_script
from schemes.revising import SPECIAL, Said, point_changes, said_by, scheme_changes, script_total
from schemes.scheme import Settings
from schemes.verdicts import ScriptLine

OLD = default_scheme("4(x - 3) = 2x + 9")


def test_the_version_of_a_scheme_is_no_change() -> None:
    assert scheme_changes(OLD, replace(OLD, version=7)) == ()


def test_every_change_of_a_scheme_is_told() -> None:
    new = with_follow_through(with_line_seen(with_allocation(OLD, "M2", 2), "M1"), "A1")
    new = with_settings(with_notes(new, ["be strict"]), Settings(lowest_terms=True))
    assert scheme_changes(OLD, with_words(new, "A1", "the value, as a decimal")) == (
        "the line of M1 must be seen",
        "M2 is worth 2, not 1",
        "A1 follows through",
        "A1 has other words: the value, as a decimal",
        "the setting lowest_terms is yes, not no",
        "the notes for markers are changed",
    )


def test_points_left_out_and_new_are_told() -> None:
    told = scheme_changes(OLD, with_check(merged(OLD, "M2", "M3")))
    assert "M3 (constants collected) is left out" in told
    assert "M2 is for unknown collected + constants collected, not unknown collected" in told
    assert "A1 depends on M1 and M2, not on M1 and M2 and M3" in told
    assert "B1 is new: 1 for check" in told


def test_a_mark_that_becomes_referred_changes_though_it_is_the_same() -> None:
    standing = {"M1": Said(0, "withheld"), "A1": Said(0, "not the value")}
    new = {"M1": Said(0, "withheld", decided=False), "A1": Said(0, "not the value")}
    (change,) = point_changes(standing, standing, new, ["M1", "A1"])
    assert (change.point, change.by_scheme) == ("M1", True)


def test_what_the_old_scheme_would_change_today_is_not_put_down_to_the_new() -> None:
    new = {"M1": Said(1, "implied")}
    (change,) = point_changes({"M1": Said(0, "not seen")}, new, new, ["M1"])
    assert not change.by_scheme


def test_a_special_mark_that_is_not_there_counts_as_nought() -> None:
    nought, one = {SPECIAL: Said(0, "no special case any more")}, {SPECIAL: Said(1, "SC B1")}
    assert point_changes(nought, {}, {}, [SPECIAL]) == ()
    assert len(point_changes({}, {}, one, [SPECIAL])) == 1
    assert SPECIAL == scripts.SPECIAL


def test_a_special_mark_counts_where_no_other_does() -> None:
    marked = mark_script(OLD, [ScriptLine("x = 10.5")], show_working=True)
    awards = {point: said.awarded for point, said in said_by(marked).items()}
    assert awards == {"M1": 0, "M2": 0, "M3": 0, "A1": 0, SPECIAL: 1}
    assert script_total(awards) == marked.total == 1
    assert script_total(awards | {"M1": 1, "M2": 1}) == 2
