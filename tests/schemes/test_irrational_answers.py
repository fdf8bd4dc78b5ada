"""An irrational value is judged exactly: as a surd, as a decimal, to the accuracy asked for."""

import pytest

from itembank.algebra.reading import read_expression
from itembank.algebra.surds import exact_value
from itembank.topics.judging import Answer
from schemes.answers import ACCEPTED, CUT, ROUNDED, UNFINISHED, WRONG, conversion, quality
from schemes.scheme import Settings

RIGHT = exact_value(read_expression("(3 + √17)/4"))  # 1.7807764...


def answer(text):
    node = read_expression(text)
    return Answer(node, (exact_value(node),))


@pytest.mark.parametrize(
    ("text", "kind"),
    [
        ("(3 + √17)/4", ACCEPTED),
        ("3/4 + √17/4", ACCEPTED),
        ("(6 + √68)/8", UNFINISHED),
        ("1.781", ROUNDED),
        ("1.780", CUT),
        ("1.79", WRONG),
        ("(3 - √17)/4", WRONG),
    ],
)
def test_a_surd_is_judged_by_its_value_and_its_form(text, kind):
    assert quality(answer(text), RIGHT, Settings()).kind == kind


@pytest.mark.parametrize(
    ("text", "kind", "reason"),
    [
        ("1.78", ACCEPTED, ""),
        ("1.781", ACCEPTED, ""),
        ("1.8", ROUNDED, "rounded"),
        ("1.79", WRONG, "rounded wrongly: it is 1.78"),
        ("1.9", WRONG, "rounded wrongly: it is 1.8"),
        ("2.78", WRONG, "not the value"),
        ("(3 + √17)/4", ACCEPTED, ""),
    ],
)
def test_a_wrong_rounding_is_told_where_decimals_are_asked_for(text, kind, reason):
    for settings in (Settings(decimal_places=2), Settings(significant_figures=3)):
        found = quality(answer(text), RIGHT, settings)
        assert found.kind == kind
        assert reason in found.reason


def test_a_decimal_after_the_surd_is_a_conversion_of_it():
    assert conversion(answer("(3 + √17)/4"), answer("1.78"))
    assert conversion(answer("(3 + √17)/4"), answer("1.79"))
    assert not conversion(answer("(3 + √17)/4"), answer("7.78"))
