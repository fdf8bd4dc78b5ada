"""How does a drawing become light? All its glyphs as one outline.

ziamath writes each glyph as a symbol that is used once; WeasyPrint takes about four times as long
over these as over one path with the same points.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from xml.etree import ElementTree
from xml.etree.ElementTree import Element

_SVG = "{http://www.w3.org/2000/svg}"
_KNOWN = {"symbol", "use", "rect"}
_LETTERS = frozenset("MLQCZ")
_COMMAND = re.compile("([A-Z])([^A-Z]*)")


def one_path(svg: str) -> str:
    """The same drawing, its glyphs one black path; unchanged where it holds anything unknown."""
    root = ElementTree.fromstring(svg)
    names = {child.tag.removeprefix(_SVG) for child in root}
    symbols = {f"#{s.get('id')}": s for s in root.iter(f"{_SVG}symbol")}
    if names - _KNOWN or not all(_is_plain(symbol) for symbol in symbols.values()):
        return svg
    glyphs = (_glyph(use, symbols[use.get("href", "")]) for use in root.iter(f"{_SVG}use"))
    path = "".join(part for glyph in glyphs for part in glyph)
    bars = "".join(_bar(rect) for rect in root.iter(f"{_SVG}rect"))
    size = " ".join(f'{name}="{root.get(name)}"' for name in ("width", "height", "viewBox"))
    return f'<svg xmlns="{_SVG[1:-1]}" {size}><path d="{path}"/>{bars}</svg>'


def _is_plain(symbol: Element) -> bool:
    """Whether a symbol is a space, or one path of absolute moves, lines and curves."""
    paths = [child.get("d", "") for child in symbol if child.tag == f"{_SVG}path"]
    letters = {token for token in " ".join(paths).split() if token.isalpha()}
    return len(paths) == len(symbol) <= 1 and letters <= _LETTERS


def _glyph(use: Element, symbol: Element) -> Iterator[str]:
    """The symbol's path where ``use`` puts it: its view box fitted into the box of the use."""
    if not len(symbol):
        return
    left, top, wide, high = (float(n) for n in symbol.get("viewBox", "").split())
    x, y, width, height = _box(use)
    scale = min(width / wide, height / high)
    shifts = (
        x + (width - scale * wide) / 2 - scale * left,
        y + (height - scale * high) / 2 - scale * top,
    )
    for letter, digits in _COMMAND.findall(symbol[0].get("d", "")):
        numbers = [float(digit) for digit in digits.split()]
        yield letter + " ".join(
            _short(number * scale + shifts[place % 2]) for place, number in enumerate(numbers)
        )


def _bar(rect: Element) -> str:
    """A bar stays a rectangle, which screens draw crisply."""
    x, y, width, height = map(_short, _box(rect))
    return f'<rect x="{x}" y="{y}" width="{width}" height="{height}"/>'


def _box(element: Element) -> tuple[float, float, float, float]:
    x, y, width, height = (float(element.get(n, "0")) for n in ("x", "y", "width", "height"))
    return x, y, width, height


def _short(number: float) -> str:
    """Two decimals: a 4000th of an em."""
    text = f"{number:.2f}".rstrip("0").rstrip(".")
    return "0" if text == "-0" else text
