"""Is a stated value the right one, in an accepted form? Conventions 4.3 to 4.5, with settings."""

from __future__ import annotations

from collections.abc import Hashable
from dataclasses import dataclass
from math import floor

from itembank.algebra.exact import Fraction
from itembank.algebra.values import in_lowest_terms, number, number_form, walk
from itembank.algebra.written import CutShort, Decimal, Negative, Node, Positive, Quotient
from itembank.topics.judging import Answer
from schemes.scheme import Settings

ACCEPTED, UNFINISHED, ROUNDED, CUT, WRONG = "accepted", "unfinished", "rounded", "cut", "wrong"


@dataclass(frozen=True, slots=True)
class Quality:
    """What an answer is worth: ``kind`` as above, ``reason`` in words where it is not accepted."""

    kind: str
    reason: str = ""

    @property
    def right(self) -> bool:
        """Whether the exact value is the right one, in whatever form."""
        return self.kind in (ACCEPTED, UNFINISHED)


def quality(answer: Answer, right: Hashable, settings: Settings) -> Quality:
    """The quality of a stated value against the right one; numbers are judged by their form."""
    if isinstance(right, frozenset) and answer.parts:
        return _several(answer.parts, right, settings)
    if not isinstance(right, Fraction):
        return _other(answer, right)
    rounding = _to_places(answer, right, settings)
    if rounding is not None:
        return rounding
    if right in answer.values and not answer.approximate:
        return _form(answer.node, settings)
    decimal = _decimal(answer.node)
    if decimal is not None:
        value, places = decimal
        if right in answer.values:
            return _form(answer.node, settings)
        if _rounded(right, places) == value:
            return Quality(ROUNDED, "rounded: a rounded decimal is not the value")
        if _cut(right, places) == value:
            return Quality(CUT, "cut short: a decimal cut short is not the value")
    if right in answer.values:
        return _form(answer.node, settings)
    return Quality(WRONG, "not the value")


_ORDER = (ACCEPTED, UNFINISHED, ROUNDED, CUT, WRONG)


def _several(parts: tuple[Answer, ...], right: frozenset[Hashable], settings: Settings) -> Quality:
    """Several values, each answering one of the right ones: the worst of them counts."""
    left = set(right)
    found = []
    for part in parts:
        worths = [(quality(part, value, settings), value) for value in left]
        if not worths:
            return Quality(WRONG, "more values than the answer has")
        best, value = min(worths, key=lambda worth: _ORDER.index(worth[0].kind))
        if best.kind != WRONG:
            left.discard(value)
        found.append(best)
    if left:
        found.append(Quality(WRONG, "not every value is stated"))
    return max(found, key=lambda worth: _ORDER.index(worth.kind))


def _other(answer: Answer, right: Hashable) -> Quality:
    """A value that is no number: the topic has judged its form."""
    if right not in answer.values:
        return Quality(WRONG, "not the answer")
    return Quality(UNFINISHED, answer.unfinished) if answer.unfinished else Quality(ACCEPTED)


def _form(node: Node, settings: Settings) -> Quality:
    form = number_form(node)
    if form is None:
        return Quality(UNFINISHED, "unfinished: the value is not worked out")
    if settings.lowest_terms and not in_lowest_terms(node):
        return Quality(UNFINISHED, "not in lowest terms, which this scheme asks for")
    if settings.mixed_number and form == "fraction" and _improper(node):
        return Quality(UNFINISHED, "not a mixed number, which this scheme asks for")
    if settings.refuse_sign_below and _sign_below(node):
        return Quality(UNFINISHED, "a sign in the denominator, which this scheme refuses")
    return Quality(ACCEPTED)


def _improper(node: Node) -> bool:
    return abs(number(node)) > 1


def _sign_below(node: Node) -> bool:
    return any(
        isinstance(part, Quotient) and any(isinstance(p, Negative) for p in walk(part.bottom))
        for part in walk(node)
    )


def _decimal(node: Node) -> tuple[Fraction, int] | None:
    """A decimal's value and its number of places, signed; None for other forms."""
    sign = 1
    while isinstance(node, Negative | Positive):
        sign = -sign if isinstance(node, Negative) else sign
        node = node.body
    if isinstance(node, Decimal | CutShort):
        return sign * Fraction(node.text), len(node.text.partition(".")[2])
    return None


def _to_places(answer: Answer, right: Fraction, settings: Settings) -> Quality | None:
    """awrt: where the scheme asks for places or figures, an answer that rounds to them is right."""
    decimal = _decimal(answer.node)
    places = settings.decimal_places
    if places is None and settings.significant_figures is not None and right:
        places = settings.significant_figures - _magnitude(right) - 1
    if places is None or decimal is None:
        return None
    value, given = decimal
    if given >= places and _rounded(value, places) == _rounded(right, places):
        return Quality(ACCEPTED)
    return None


def _magnitude(value: Fraction) -> int:
    size, power = abs(value), 0
    while size >= 10:
        size, power = size / 10, power + 1
    while size < 1:
        size, power = size * 10, power - 1
    return power


def _rounded(value: Fraction, places: int) -> Fraction:
    scale = Fraction(10) ** places
    size = Fraction(floor(abs(value) * scale + Fraction(1, 2))) / scale
    return size if value >= 0 else -size


def _cut(value: Fraction, places: int) -> Fraction:
    scale = Fraction(10) ** places
    size = Fraction(floor(abs(value) * scale)) / scale
    return size if value >= 0 else -size


def clash(first: Answer, later: Answer) -> bool:
    """Whether two values stated one after the other contradict each other (4.7)."""
    if first.of != later.of or first.partial or later.partial:
        return False
    return not conversion(first, later)


def conversion(first: Answer, later: Answer, same_line: bool = False) -> bool:
    """Whether a later value is the first one converted, rightly or wrongly (isw, 4.4).

    In one chain whatever follows is a conversion; on a later line it is one where its form is
    another, where it is a rounding, or where a fraction that can be cancelled is written again.
    """
    if set(first.values) & set(later.values):
        return True
    if not first.values or not later.values:
        return not later.values
    one, other = first.values[0], later.values[0]
    if not isinstance(one, Fraction) or not isinstance(other, Fraction):
        return False
    if same_line:
        return True
    decimal = _decimal(later.node)
    if decimal is not None and decimal[0] in (_rounded(one, decimal[1]), _cut(one, decimal[1])):
        return True
    new_form = number_form(first.node) != number_form(later.node)
    return abs(one - other) < 1 and (new_form or not in_lowest_terms(first.node))
