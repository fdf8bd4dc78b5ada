"""Which forms does the guide call accepted, and which refused? Those that the marker says."""

from __future__ import annotations

import pytest

from exports.forms import doubtful_forms, exact, tried_forms
from itembank.algebra.exact import Fraction
from itembank.topics import find_topic
from schemes.building import default_scheme
from schemes.scheme import Settings


def tried(problem: str, settings: Settings | None = None) -> tuple[list[str], list[str]]:
    solution = find_topic(problem).solve(problem)
    scheme = default_scheme(problem, settings=settings or Settings())
    accepted, refused = tried_forms(solution, scheme)
    return [form.text for form in accepted], [form.text for form in refused]


def test_accepted_and_refused_forms_of_a_fraction() -> None:
    # The marking conventions, accepted forms and unfinished values: 11/4.
    accepted, refused = tried("4x + 3 = 14")

    assert {"x = 2 3/4", "x = 11/4", "x = 2.75", "x = 22/8"} <= set(accepted)
    assert {"x = -11/-4", "x = 1 7/4", "x = 2.8"} <= set(refused)


def test_a_division_left_is_refused() -> None:
    accepted, refused = tried("6x - 7 = 23")

    assert accepted[0] == "x = 5"
    assert refused == ["x = 10/2"]


def test_a_rounded_decimal_is_refused() -> None:
    assert "x = 5.83" in tried("6x = 35")[1]


def test_a_setting_moves_a_form_to_the_refused() -> None:
    accepted, refused = tried("4x + 3 = 14", Settings(lowest_terms=True))

    assert "x = 22/8" in refused
    assert "x = 11/4" in accepted


def test_no_value_has_no_forms() -> None:
    assert tried("3(x + 4) = 3x + 5") == ([], [])


@pytest.mark.parametrize(
    ("value", "rounded"),
    [
        (Fraction(35, 6), "5.83"),
        (Fraction(-2, 3), "-0.67"),
        (Fraction(11, 4), "2.8"),
        (Fraction(-1, 400), None),
        (Fraction(7, 2), None),
    ],
)
def test_a_form_is_rounded_with_halves_away_from_nought(
    value: Fraction, rounded: str | None
) -> None:
    found = {reason: text for text, reason in doubtful_forms(value)}

    assert found.get("rounded") == rounded


@pytest.mark.parametrize(
    ("forms", "value"),
    [(("2 3/4", "11/4"), Fraction(11, 4)), (("-3",), Fraction(-3)), (("2.5",), None)],
)
def test_the_value_is_read_from_its_forms(forms: tuple[str, ...], value: Fraction | None) -> None:
    assert exact(forms) == value
