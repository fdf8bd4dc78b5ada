"""A number with its unit behind it is the number."""

import pytest

from itembank.algebra.grammar import read_relation
from itembank.algebra.showing import typed
from itembank.algebra.units import without_units


@pytest.mark.parametrize(
    ("text", "plain"),
    [
        ("17.5 cm", "17.5"),
        ("17.5 cm^2", "17.5"),
        ("12cm3", "12"),
        ("x = -4 km", "x = -4"),
        ("1/2 × 7 × 5 = 17.5 kg", "1/2 × 7 × 5 = 17.5"),
    ],
)
def test_a_unit_behind_a_number_is_left_out(text: str, plain: str) -> None:
    found = without_units(read_relation(text), frozenset("xbh"))
    assert typed(found) == typed(read_relation(plain))


@pytest.mark.parametrize(
    ("text", "own"),
    [("3cm", "cm"), ("3cm", "mx"), ("3xy", "b"), ("5m", "x"), ("3cm + 2", "x"), ("cm", "x")],
    ids=["letters of the problem", "one of them", "no unit", "one letter", "a term", "no number"],
)
def test_what_is_no_unit_stays(text: str, own: str) -> None:
    relation = read_relation(text)
    assert without_units(relation, frozenset(own)) == relation
