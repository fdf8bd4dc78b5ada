"""How is a set of numbers drawn on a number line? Plain data to a figure of our own drawing.

An open circle stands at an end that does not belong to the set, a filled one at an end that does;
dots stand at numbers that are listed. That is the trade's notation (common practice, no source).
"""

from __future__ import annotations

from base64 import b64encode
from collections.abc import Callable
from html import escape
from math import ceil, floor

from itembank.algebra.exact import Fraction
from itembank.topics.kinds import Figure, NumberLine

WIDTH, HEIGHT, EDGE = 480, 64, 24
AXIS, ABOVE, LABELS = 34, 14, 54
MOST_TICKS = 16
BEYOND = 2
"""Whole numbers shown on each side of the set."""


def drawn(line: NumberLine) -> Figure:
    """The number line as a picture in SVG, with words for those who cannot see it."""
    place, parts, labelled = _axis(line)
    parts += [_label(place(n), HEIGHT, str(n)) for n in _numbers(line) if n not in labelled]
    for piece in _pieces(line):
        parts += _set(piece, place)
    return _figure(parts, words(line))


def empty(line: NumberLine) -> Figure:
    """The number line on which the set could be drawn, nothing drawn on it yet."""
    _, parts, labelled = _axis(line)
    return _figure(parts, f"an empty number line from {min(labelled)} to {max(labelled)}")


def _numbers(line: NumberLine) -> list[Fraction]:
    return [
        Fraction(text)
        for piece in _pieces(line)
        for text in (piece.low, piece.high, *piece.listed)
        if text
    ]


def _pieces(line: NumberLine) -> tuple[NumberLine, ...]:
    """The pieces of a set, from left to right."""
    return tuple(sorted((line, *line.others), key=_left_end))


def _left_end(piece: NumberLine) -> tuple[bool, Fraction]:
    return (bool(piece.low), Fraction(piece.low or piece.high or 0))


def _axis(line: NumberLine) -> tuple[Callable[[Fraction | int], float], list[str], list[int]]:
    """Where each number stands, the line with its ticks and labels, the numbers labelled."""
    numbers = _numbers(line)
    first, last = floor(min(numbers)) - BEYOND, ceil(max(numbers)) + BEYOND
    scale = Fraction(WIDTH - 4 * EDGE) / (last - first)

    def place(number: Fraction | int) -> float:
        return float(2 * EDGE + (number - first) * scale)

    parts = [_stroke(EDGE, AXIS, WIDTH - EDGE, 1.2), *_arrowheads(AXIS)]
    labelled = list(range(first, last + 1, -(-(last - first) // MOST_TICKS)))
    for number in labelled:
        x = place(number)
        parts.append(f'<path d="M{x:.1f} {AXIS - 4}V{AXIS + 4}" stroke="#000"/>')
        parts.append(_label(x, LABELS, str(number)))
    return place, parts, labelled


def _figure(parts: list[str], said: str) -> Figure:
    size = f'width="{WIDTH}" height="{HEIGHT + 6}" viewBox="0 0 {WIDTH} {HEIGHT + 6}"'
    svg = f'<svg xmlns="http://www.w3.org/2000/svg" {size}>{"".join(parts)}</svg>'
    return Figure("image/svg+xml", b64encode(svg.encode()).decode(), said)


def words(line: NumberLine) -> str:
    """What the picture shows."""
    return f"a number line with {', and '.join(map(_words, _pieces(line)))}"


def _words(line: NumberLine) -> str:
    if line.listed:
        return f"dots at {', '.join(line.listed)}"
    ends = []
    for end, included in ((line.low, line.low_included), (line.high, line.high_included)):
        if end:
            ends.append(f"{'a filled' if included else 'an open'} circle at {end}")
    if line.low and line.high:
        return f"{' and '.join(ends)}, joined by a line"
    way = "right" if line.low else "left"
    return f"{ends[0]} and an arrow from it to the {way}"


def _set(line: NumberLine, place: Callable[[Fraction | int], float]) -> list[str]:
    if line.listed:
        return [_circle(place(Fraction(text)), AXIS, True) for text in line.listed]
    low = place(Fraction(line.low)) if line.low else float(EDGE)
    high = place(Fraction(line.high)) if line.high else float(WIDTH - EDGE)
    parts = [_stroke(low, ABOVE, high, 2.4)]
    left, right = _arrowheads(ABOVE)
    parts.append(_circle(low, ABOVE, line.low_included) if line.low else left)
    parts.append(_circle(high, ABOVE, line.high_included) if line.high else right)
    return parts


def _stroke(left: float, height: int, right: float, width: float) -> str:
    return f'<path d="M{left:.1f} {height}H{right:.1f}" stroke="#000" stroke-width="{width}"/>'


def _arrowheads(height: int) -> tuple[str, str]:
    """One that points left at the left edge, one that points right at the right."""
    right = WIDTH - EDGE
    return (
        f'<path d="M{EDGE - 4} {height}l9 -5v10z"/>',
        f'<path d="M{right + 4} {height}l-9 -5v10z"/>',
    )


def _circle(x: float, height: int, filled: bool) -> str:
    fill = "#000" if filled else "#fff"
    circle = f'<circle cx="{x:.1f}" cy="{height}" r="5" fill="{fill}"'
    return f'{circle} stroke="#000" stroke-width="1.6"/>'


def _label(x: float, height: int, text: str) -> str:
    shown = escape(text.replace("-", "\u2212"))
    style = 'text-anchor="middle" font-size="12" font-family="Text, STIXGeneral, serif"'
    return f'<text x="{x:.1f}" y="{height}" {style}>{shown}</text>'
