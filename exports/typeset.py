"""How is maths set on paper and on a page? A tree or typed text to a picture or to MathML.

Paper: the library ziamath draws the MathML as outlines of the STIX Two Math font (SIL Open Font
License 1.1, shipped with ziamath), and the picture stands on the baseline of the text around it at
the text's own size. Its alternative text is what a teacher would read aloud, as PDF/UA-1 asks of
every figure (ISO 14289-1, 7.3). Page: MathML, which a browser sets and a screen reader explores.
"""

from __future__ import annotations

from base64 import b64encode
from collections.abc import Iterator
from functools import lru_cache
from html import escape
from xml.etree import ElementTree
from xml.etree.ElementTree import Element

from exports.outlines import one_path
from itembank.algebra.grammar import CLOSING
from itembank.algebra.reading import read_line
from itembank.algebra.showing_mathml import (
    BAR,
    INVISIBLE_PLUS,
    INVISIBLE_TIMES,
    mathml,
)
from itembank.algebra.showing_words import spoken
from itembank.algebra.written import Line, Node, Relation

_EM = 40.0
"""Units of a drawing to one em of the text around it."""
_MARGIN = 1.0
"""Units around a drawing, so that no outline is cut at its edge."""
_GAP = 0.12
"""Ems kept free above and below, so that fractions on neighbouring lines stand apart."""
_ZIAMATH_EM = 0.75
"""ziamath reckons lengths in points, so that its em is 4/3 of ours."""
_BESIDE_FRACTION = -0.08
_IN_MIXED_NUMBER = -0.04
"""Ems taken off beside a fraction, where ziamath leaves 0.22."""
_SPACES = {
    **dict.fromkeys("+\u2212×÷", 4 / 18),
    **dict.fromkeys("=<≤>≥≠≈", 5 / 18),
}
"""Ems beside an operator, from the operator dictionary of MathML Core (W3C, appendix B)."""
_ROWS = ("math", "mrow")
_LONG_BAR = "\u2015"
"""ziamath draws this one over the whole of its base; the usual bar over one digit only."""


def inline_svg(written: str | Node | Relation | Line) -> str:
    """Return an ``img`` element for a PDF: outlines on the baseline, words as alternative text.

    Typed text is read first.

    Raises:
        ReadingFault: typed text that cannot be read.
    """
    return _picture(_tree(written))


def inline_mathml(written: str | Node | Relation | Line) -> str:
    """Return a ``math`` element for a web page, its words as ``alttext``.

    Raises:
        ReadingFault: typed text that cannot be read.
    """
    return _markup(_tree(written))


@lru_cache(maxsize=4096)
def _tree(written: str | Node | Relation | Line) -> Node | Relation | Line:
    return read_line(written) if isinstance(written, str) else written


@lru_cache(maxsize=4096)
def _markup(tree: Node | Relation | Line) -> str:
    return mathml(tree, alttext=spoken(tree))


@lru_cache(maxsize=4096)
def _picture(tree: Node | Relation | Line) -> str:
    # Imported here: ziamath loads its font on import, and pages do without it.
    from ziamath.zmath import Math

    drawing = Math(_for_drawing(mathml(tree)), size=_EM, margin=_MARGIN)
    width, height = drawing.getsize()
    below = (drawing.getyofst() - _MARGIN) / _EM - _GAP
    style = (
        f"width:{(width + 2 * _MARGIN) / _EM:.4f}em;height:{(height + 2 * _MARGIN) / _EM:.4f}em;"
        f"margin:{_GAP}em 0;vertical-align:{below:.4f}em"
    )
    source = b64encode(one_path(drawing.svg()).encode()).decode()
    return (
        f'<img class="maths" alt="{escape(spoken(tree))}" style="{style}"'
        f' src="data:image/svg+xml;base64,{source}">'
    )


def _for_drawing(markup: str) -> Element:
    """The same maths with the spaces that ziamath would set otherwise than MathML Core."""
    root = ElementTree.fromstring(markup)
    for row in list(root.iter()):
        if _name(row) in _ROWS:
            children = list(_drawn(row))
            names = ["", *map(_name, children)]
            row[:] = [
                part for pair in zip(children, names, strict=False) for part in _spaced(*pair)
            ]
        elif _name(row) == "mo" and row.text == BAR:
            row.text = _LONG_BAR
    return root


def _drawn(row: Element) -> Iterator[Element]:
    """What a row draws, rows within it dissolved: ziamath lays every nested row out twice."""
    for child in row:
        if _name(child) == "mrow" and not _holds_growing_bracket(child):
            yield from _drawn(child)
        elif child.text not in (INVISIBLE_TIMES, INVISIBLE_PLUS):
            yield child


def _holds_growing_bracket(row: Element) -> bool:
    return any(child.text in CLOSING and not child.get("stretchy") for child in row)


def _spaced(child: Element, before: str) -> list[Element]:
    """An element of a row with spaces set; ``before`` names the element before it, if any."""
    match _name(child):
        case "mfrac" if before:
            nearer = _IN_MIXED_NUMBER if before == "mn" else _BESIDE_FRACTION
            return [_space(nearer), child, _space(_BESIDE_FRACTION)]
        case "mfrac":
            return [child, _space(_BESIDE_FRACTION)]
        case "mspace":
            return [_space(float(child.get("width", "0em").removesuffix("em")))]
        case "mo" if child.get("form") != "prefix" and child.text in _SPACES:
            width = _ems(_SPACES[child.text])
            child.attrib.update(lspace=width, rspace=width)
    return [child]


def _space(width: float) -> Element:
    return Element("mspace", width=_ems(width))


def _ems(width: float) -> str:
    return f"{width * _ZIAMATH_EM:.4f}em"


def _name(element: Element) -> str:
    return element.tag.rpartition("}")[2]
