"""How does maths too wide for its column break? At relation signs, then before terms."""

from __future__ import annotations

import re
from collections.abc import Iterator

from exports.typeset import inline_svg
from itembank.algebra.joining import joined
from itembank.algebra.reading import read_line
from itembank.algebra.written import Relation, Sum

_WIDTH = re.compile(r"width:([\d.]+)em")
_SHOWN = {"<=": "≤", ">=": "≥", "-": "−"}


def fitted_svg(text: str, widest: float) -> str:
    """Typed text as pictures in a line that may wrap, each at most ``widest`` em where it can be.

    Raises:
        ReadingFault: typed text that cannot be read.
    """
    whole = inline_svg(text)
    if _em(whole) <= widest:
        return whole
    line = read_line(text)
    if not line.alternatives or line.notes or line.heads or line.statement:
        return whole
    return " ".join(_pieces(joined(line.alternatives), widest))


def _pieces(relation: Relation, widest: float) -> Iterator[str]:
    """Each side, and each term of a side that is too wide, with the sign that stands before it.

    ``or`` and ``and`` stand before a side as a sign does.
    """
    for place, side in enumerate(relation.sides):
        sign = relation.signs[place - 1] if place else ""
        picture = inline_svg(side)
        if _em(picture) <= widest - 2 or not isinstance(side, Sum):
            yield _kept_together(sign, picture)
            continue
        for order, (term_sign, term) in enumerate(side.terms):
            yield _kept_together(term_sign if order else sign, inline_svg(term))


def _kept_together(sign: str, picture: str) -> str:
    """A sign and what follows it, in one piece that does not wrap."""
    shown = f"{_SHOWN.get(sign, sign)}&nbsp;".replace("<", "&lt;").replace(">", "&gt;")
    return f'<span class="piece">{shown if sign else ""}{picture}</span>'


def _em(picture: str) -> float:
    """The width that the typesetter gave a picture, in em of the text around it."""
    found = _WIDTH.search(picture)
    return float(found[1]) if found else 0.0
