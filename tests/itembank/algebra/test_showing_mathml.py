"""MathML against MathML Core: names, attributes, numbers of children; and what a person sees.

The tables below hold what W3C's MathML Core (https://www.w3.org/TR/mathml-core/) and its RELAX NG
schema (w3c/mathml-schema, mathml4-core.rnc) allow for the elements that a school's algebra needs.
"""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from lxml import etree

from itembank.algebra.exact import Fraction
from itembank.algebra.reading import read_line
from itembank.algebra.showing_mathml import mathml
from itembank.algebra.written import Mixed, Node, Power, Product, Quotient, Sum, Symbol
from tests.itembank.algebra.growing import every_tree, trees, whole, worth

MATHML = "{http://www.w3.org/1998/Math/MathML}"
ANY = None
CHILDREN = {
    "math": ANY, "mrow": ANY, "mi": 0, "mn": 0, "mo": 0, "mtext": 0, "mspace": 0,
    "mfrac": 2, "msup": 2, "mover": 2,
}  # fmt: skip
GLOBAL = {"class", "dir", "displaystyle", "id", "mathbackground", "mathcolor", "mathsize"}
GLOBAL |= {"mathvariant", "nonce", "scriptlevel", "style", "tabindex"}
OWN = {
    "math": {"display", "alttext"},
    "mo": {"form", "stretchy", "symmetric", "maxsize", "minsize", "largeop", "movablelimits"}
    | {"lspace", "rspace"},
    "mspace": {"width", "height", "depth"},
    "mfrac": {"linethickness"},
    "mover": {"accent"},
}
TEXTS = [
    "4x + 3 = 17",
    "(x + 2)/3 = (x - 1)/5",
    "x = -3 1/2",
    "x = 0.2\u03077\u0307 + 0.3\u0305",
    "x = 0.3 recurring",
    "2.50 <= x < 3",
    "x = 2 or x = -3",
    "6x = 30   (-4x)   (÷6)",
    "2[3(x + 1) - 4] = {5 - x}^2",
    "a ≠ b, x ≈ 5.83",
    "no solution",
    "5(x + 1/2) = 30 ÷ 6 × 2",
]


def checked(markup: str) -> etree._Element:
    root = etree.fromstring(markup)
    assert root.tag == f"{MATHML}math"
    for element in root.iter():
        name = element.tag.removeprefix(MATHML)
        assert name in CHILDREN, name
        wanted = CHILDREN[name]
        assert wanted is ANY or len(element) == wanted, etree.tostring(element)
        assert set(element.attrib) <= GLOBAL | OWN.get(name, set())
        # Text stands in tokens alone; a token is never empty.
        is_token = name in ("mi", "mn", "mo", "mtext")
        assert bool(element.text) == is_token
        assert not element.tail
    return root


@pytest.mark.parametrize("text", TEXTS)
def test_a_line_keeps_to_mathml_core(text: str) -> None:
    checked(mathml(read_line(text), alttext='words with <, & and "quotes"'))


@settings(max_examples=200, deadline=None)
@given(trees)
def test_every_tree_keeps_to_mathml_core(tree: Node) -> None:
    checked(mathml(tree))


def test_a_hyphen_never_stands_for_minus() -> None:
    assert "-" not in "".join(checked(mathml(read_line("-3 - -x = -(2 - x)"))).itertext())


def test_the_bar_groups_so_that_its_brackets_are_not_drawn() -> None:
    shown = checked(mathml(read_line("(x + 2)/(4x)")))
    assert "".join(shown.itertext()) == "x+24\u2062x"


def test_a_bracket_beside_a_factor_is_drawn() -> None:
    shown = checked(mathml(read_line("3(x + 2)/4")))
    assert "".join(shown.itertext()) == "3\u2062(x+2)4"


def test_division_signs_stay_as_written() -> None:
    shown = checked(mathml(read_line("30 ÷ 6")))
    assert shown.find(f".//{MATHML}mfrac") is None
    assert "".join(shown.itertext()) == "30÷6"


def test_a_mixed_number_holds_an_invisible_plus() -> None:
    row = checked(mathml(Mixed("2", "3", "4")))[0]
    assert [child.tag.removeprefix(MATHML) for child in row] == ["mn", "mo", "mfrac"]
    assert row[1].text == "\u2064"


def test_the_dots_stand_over_the_ends_of_the_block() -> None:
    shown = checked(mathml(read_line("0.1\u03072345\u0307")))
    assert [over[0].text for over in shown.iter(f"{MATHML}mover")] == ["1", "5"]


def test_the_bar_stands_over_the_whole_block() -> None:
    shown = checked(mathml(read_line("0.12\u03057\u0305")))
    assert [over[0].text for over in shown.iter(f"{MATHML}mover")] == ["27"]


@pytest.mark.parametrize(
    "tree",
    [
        Power(Mixed("2", "3", "4"), whole(2)),
        Power(Quotient(Symbol("x"), whole(3), "/"), whole(2)),
        Product((whole(3), Quotient(whole(1), whole(4), "/")), ("",)),
        Product((whole(3), whole(4)), ("",)),
        Product((whole(3), Sum((("+", Symbol("x")), ("+", whole(1))))), ("×",)),
    ],
    ids=["mixed squared", "fraction squared", "3 by a quarter", "3 by 4", "3 × sum"],
)
def test_a_bracket_is_drawn_where_the_eye_would_read_something_else(tree: Node) -> None:
    assert "(" in "".join(checked(mathml(tree)).itertext())


def test_what_looks_the_same_has_the_same_value() -> None:
    seen: dict[str, Fraction | None] = {}
    for tree in every_tree(2):
        found = worth(tree)
        assert seen.setdefault(mathml(tree), found) == found, tree
    assert len(seen) > 5_000
