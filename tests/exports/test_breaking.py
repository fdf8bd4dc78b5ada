"""Does maths too wide for its column break where a reader expects it?"""

from __future__ import annotations

import re

import pytest

from exports.breaking import fitted_svg
from exports.typeset import inline_svg
from tests.exports.invented import LONG


def test_maths_that_fits_stays_whole() -> None:
    assert fitted_svg("6x - 7 = 23", 36) == inline_svg("6x - 7 = 23")


def test_a_wide_relation_breaks_before_its_sign() -> None:
    pieces = fitted_svg("6x - 7 = 2x + 23", 6).split("</span> ")

    assert len(pieces) == 2
    assert pieces[1].startswith('<span class="piece">=&nbsp;<img')


@pytest.mark.parametrize("widest", [10, 16, 31])
def test_no_piece_is_wider_than_the_column(widest: float) -> None:
    widths = [float(n) for n in re.findall(r"width:([\d.]+)em", fitted_svg(LONG, widest))]

    assert len(widths) > 1
    assert max(widths) <= widest


def test_alternatives_break_before_the_word_that_joins_them() -> None:
    pieces = fitted_svg("2x + 1 < -5 or 3x - 2 >= 7", 6).split("</span> ")

    assert [piece.count("or&nbsp;") for piece in pieces] == [0, 0, 1, 0]


def test_the_pieces_say_all_that_the_whole_says() -> None:
    spoken = " ".join(re.findall(r'alt="([^"]*)"', fitted_svg(LONG, 16)))

    for digits in re.findall(r"\d+", LONG):
        assert re.search(rf"\b{digits}\b|half|quarter|third", spoken)


def test_signs_between_pieces_are_escaped() -> None:
    assert "≤&nbsp;" in fitted_svg("6x - 7 + 2x <= 23 + 4x", 8)
    assert "&lt;&nbsp;" in fitted_svg("6x - 7 + 2x < 23 + 4x", 8)
