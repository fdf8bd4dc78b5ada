"""Pictures of maths for paper, MathML for pages: words, baseline, sizes, and a real PDF."""

from __future__ import annotations

import re
from base64 import b64decode
from importlib.resources import files
from io import BytesIO

import pikepdf
import pytest
from fontTools.ttLib import TTFont
from lxml import etree, html
from weasyprint import HTML

from exports.typeset import inline_mathml, inline_svg
from itembank.algebra.reading import ReadingFault, read_expression

SVG = "{http://www.w3.org/2000/svg}"
mathfont = TTFont(files("ziamath.fonts") / "STIXTwoMath-Regular.ttf")
TEXTS = ["4x + 3 = 17", "(x + 2)/3 = (x - 1)/5", "x = -3 1/2", "x = 0.2\u03077\u0307", "x < y"]


def lengths(picture: str) -> dict[str, float]:
    """The lengths of the picture's style, in em."""
    style = html.fromstring(picture).get("style")
    found = re.findall(r"([a-z-]+):(-?[\d.]+)em", style)
    return {name: float(number) for name, number in found}


def drawing(picture: str) -> etree._Element:
    return etree.fromstring(b64decode(html.fromstring(picture).get("src").partition(",")[2]))


@pytest.mark.parametrize("text", TEXTS)
def test_a_picture_is_outlines_with_words(text: str) -> None:
    picture = inline_svg(text)
    names = {etree.QName(element).localname for element in drawing(picture).iter()}
    assert names <= {"svg", "g", "symbol", "use", "path", "rect"}
    assert html.fromstring(picture).get("alt")


def test_the_words_are_those_of_a_teacher() -> None:
    assert html.fromstring(inline_svg("x = 2 3/4")).get("alt") == "x equals 2 and 3 quarters"
    math = etree.fromstring(inline_mathml("x = 2 3/4"))
    assert math.get("alttext") == "x equals 2 and 3 quarters"


def test_digits_stand_on_the_baseline() -> None:
    """No digit of STIX Two reaches far below the line: the picture hangs down by its gap alone."""
    style = lengths(inline_svg("17"))
    assert style["vertical-align"] + style["margin"] == pytest.approx(0, abs=0.05)


def test_the_bar_of_a_fraction_stands_on_the_axis_of_the_font() -> None:
    """OpenType MATH table, axisHeight: the height of a minus sign, which the bar shares."""
    units = mathfont["MATH"].table.MathConstants.AxisHeight.Value / mathfont["head"].unitsPerEm
    bar = drawing(inline_svg("3/4")).find(f"{SVG}rect")
    middle = float(bar.get("y")) + float(bar.get("height")) / 2
    assert -middle / 40 == pytest.approx(units, abs=0.01)


@pytest.mark.parametrize("text", TEXTS)
def test_the_picture_hangs_by_what_is_drawn_below_its_baseline(text: str) -> None:
    picture = inline_svg(text)
    _, top, _, height = map(float, drawing(picture).get("viewBox").split())
    style = lengths(picture)
    assert (top + height) / 40 == pytest.approx(
        -style["vertical-align"] - style["margin"], abs=1e-3
    )
    assert height / 40 == pytest.approx(style["height"], abs=1e-3)


def test_the_digits_of_a_fraction_are_as_large_as_the_text() -> None:
    """Full size for schoolchildren: the same outlines, at the same scale, as a digit alone."""
    alone, over = drawing(inline_svg("3")), drawing(inline_svg("3/4"))
    assert height_of_first_outline(over) == pytest.approx(height_of_first_outline(alone), abs=0.02)


def height_of_first_outline(root: etree._Element) -> float:
    outline = root.find(f"{SVG}path").get("d").partition("Z")[0]
    ordinates = [float(number) for number in re.findall(r"-?[\d.]+", outline)[1::2]]
    return max(ordinates) - min(ordinates)


def test_a_tree_and_its_text_are_set_alike() -> None:
    assert inline_svg(read_expression("3(x + 2)")) == inline_svg("3(x + 2)")


def test_signs_of_markup_are_escaped() -> None:
    assert etree.fromstring(inline_mathml("x < y")).get("alttext") == "x is less than y"


def test_unreadable_text_is_refused() -> None:
    with pytest.raises(ReadingFault):
        inline_svg("4x + = 3")


def test_a_pdf_tells_the_words_of_every_picture() -> None:
    """ISO 14289-1 (PDF/UA-1), 7.3: a figure has an alternative text."""
    body = "".join(f"<p>Solve {inline_svg(text)}</p>" for text in TEXTS)
    page = f"<html lang='en'><head><title>Maths</title></head><body>{body}</body></html>"
    written = HTML(string=page).write_pdf(pdf_variant="pdf/ua-1")
    with pikepdf.open(BytesIO(written)) as document:
        figures = [
            thing
            for thing in document.objects
            if isinstance(thing, pikepdf.Dictionary) and thing.get("/S") == "/Figure"
        ]
        words = {str(figure["/Alt"]) for figure in figures}
    assert "4 x plus 3 equals 17" in words
    assert len(words) == len(TEXTS)
