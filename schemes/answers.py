"""Is a stated value the right one, in an accepted form? Conventions 4.3 to 4.5, with settings."""

from __future__ import annotations

from collections.abc import Hashable, Sequence
from functools import lru_cache
from typing import NamedTuple

from itembank.algebra.exact import Fraction
from itembank.algebra.inside import signed, walk
from itembank.algebra.number_forms import in_lowest_terms, number_form
from itembank.algebra.surd_forms import not_simplified, surd_in_lowest_terms
from itembank.algebra.surds import Exact, Surd, compare, cut, holds_root, magnitude, rounded
from itembank.algebra.values import number
from itembank.algebra.written import CutShort, Decimal, Negative, Node, Quotient
from itembank.topics.judging import Answer, Shaped
from schemes.scheme import Settings

ACCEPTED, UNFINISHED, ROUNDED, CUT, WRONG = "accepted", "unfinished", "rounded", "cut", "wrong"
ON_THE_WAY, NEARLY = 6, Fraction(1, 100)  # places; how far a root rounded on the way leads off
SHAPE = "shape"
"""The right numbers, with something else between them: ``x < 3`` for ``x > 3``."""


class Quality(NamedTuple):
    """What an answer is worth: ``kind`` as above, ``reason`` in words where it is not accepted."""

    kind: str
    reason: str = ""

    @property
    def right(self) -> bool:
        """Whether the exact value is the right one, in whatever form."""
        return self.kind in (ACCEPTED, UNFINISHED)


@lru_cache(maxsize=4096)
def quality(answer: Answer, right: Hashable, settings: Settings) -> Quality:
    """The quality of a stated value against the right one; numbers are judged by their form."""
    if isinstance(right, Shaped):
        return _shaped(answer, right, settings)
    if isinstance(right, tuple) and answer.parts and len(answer.parts) == len(right):
        return _one_by_one(answer.parts, right, settings)
    if isinstance(right, frozenset) and answer.parts:
        return _several(answer.parts, right, settings)
    if not isinstance(right, Exact):
        return _other(answer, right)
    rounding = _to_places(answer, right, settings)
    if rounding is not None:
        return rounding
    if right in answer.values and not answer.approximate:
        return _form(answer, settings)
    decimal = _decimal(answer.node)
    if decimal is not None:
        value, places = decimal
        if right in answer.values:
            return _form(answer, settings)
        if rounded(right, places) == value:
            return Quality(ROUNDED, "rounded: a rounded decimal is not the value")
        if cut(right, places) == value:
            return Quality(CUT, "cut short: a decimal cut short is not the value")
    if right in answer.values:
        return _form(answer, settings)
    return Quality(WRONG, _off(answer.node, right, settings) or "not the value")


def decimals_asked(right: Hashable, settings: Settings) -> bool:
    """Whether the scheme asks for decimals of values that none can give exactly."""
    asked = settings.decimal_places is not None or settings.significant_figures is not None
    values = right if isinstance(right, frozenset) else (right,)
    return asked and any(isinstance(value, Surd) for value in values)


def _off(node: Node, right: Exact, settings: Settings) -> str:
    """How a decimal misses the rounding that the scheme asks for, by one unit of its last place."""
    decimal, places = _decimal(node), _places(right, settings)
    if decimal is None or places is None:
        return ""
    value, given = decimal
    unit = Fraction(1) / Fraction(10) ** given
    if compare(abs(value - rounded(right, given)), unit) > 0:
        return ""
    return f"rounded wrongly: it is {_as_decimal(rounded(right, given), given)}"


def _as_decimal(value: Fraction, places: int) -> str:
    if places <= 0:
        return str(int(value))
    digits = str(int(abs(value) * 10**places)).zfill(places + 1)
    return f"{'-' if value < 0 else ''}{digits[:-places]}.{digits[-places:]}"


_ORDER = (ACCEPTED, UNFINISHED, ROUNDED, CUT, SHAPE, WRONG)


def _shaped(answer: Answer, right: Shaped, settings: Settings) -> Quality:
    """Numbers in their order, the worst of them counts; then what stands between them."""
    if len(answer.parts) != len(right.numbers):
        return Quality(WRONG, "not the answer")
    worst = _one_by_one(answer.parts, right.numbers, settings)
    if worst.kind != WRONG and answer.shape == right.shape:
        return Quality(UNFINISHED, answer.unfinished) if answer.unfinished else worst
    if worst.kind == WRONG == _one_by_one(answer.parts[::-1], right.numbers, settings).kind:
        return Quality(WRONG, "not the answer")
    return Quality(SHAPE, "the numbers are right, what stands between them is not")


def _one_by_one(
    parts: Sequence[Answer], numbers: Sequence[Hashable], settings: Settings
) -> Quality:
    """Values in their order: the worst of them counts."""
    worths = [quality(part, n, settings) for part, n in zip(parts, numbers, strict=True)]
    return max(worths, key=lambda worth: _ORDER.index(worth.kind))


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


def _form(answer: Answer, settings: Settings) -> Quality:
    node = answer.node
    if answer.unfinished:
        return Quality(UNFINISHED, answer.unfinished)
    if holds_root(node):
        return _surd_form(node, settings)
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


def _surd_form(node: Node, settings: Settings) -> Quality:
    left = not_simplified(node)
    if left:
        return Quality(UNFINISHED, f"unfinished: {left}")
    if settings.lowest_terms and not surd_in_lowest_terms(node):
        return Quality(UNFINISHED, "not in lowest terms, which this scheme asks for")
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
    sign, bare = signed(node)
    if isinstance(bare, Decimal | CutShort):
        return sign * Fraction(bare.text), len(bare.text.partition(".")[2])
    return None


def _to_places(answer: Answer, right: Exact, settings: Settings) -> Quality | None:
    """awrt: where the scheme asks for places or figures, an answer that rounds to them is right."""
    decimal, places = _decimal(answer.node), _places(right, settings)
    if places is None or decimal is None:
        return None
    value, given = decimal
    if given >= places and rounded(value, places) == rounded(right, places):
        return Quality(ACCEPTED)
    return None


def _places(right: Exact, settings: Settings) -> int | None:
    """The decimal places that the scheme asks for, also where it asks for figures."""
    if settings.decimal_places is not None:
        return settings.decimal_places
    if settings.significant_figures is None or right == 0:
        return None
    return settings.significant_figures - magnitude(right) - 1


def clash(first: Answer, later: Answer) -> bool:
    """Whether two values stated one after the other contradict each other (4.7)."""
    if first.of != later.of or first.partial or later.partial:
        return False
    return not conversion(first, later)


def adds_a_part(stated: Sequence[Answer], later: Sequence[Answer]) -> bool:
    """Whether a later answer is a part of the whole that was not stated yet, nor a conversion.

    What stood before it was not the whole answer then: it is no accepted value gone on from (4.4).
    """
    return any(one.partial and not any(conversion(first, one) for first in stated) for one in later)


def conversion(first: Answer, later: Answer, same_line: bool = False) -> bool:
    """Whether a later value is the first one converted, rightly or wrongly (isw, 4.4).

    In one chain whatever follows is a conversion; on a later line it is one where its form is
    another, where it is a rounding, or where a fraction that can be cancelled is written again.
    Of several values each is the conversion of one; another order sign is another answer.
    """
    if first.shape != later.shape:
        return False
    if first.parts and later.parts:
        return all(any(conversion(a, b, same_line) for a in first.parts) for b in later.parts)
    if first.parts and later.partial:
        return any(conversion(one, later, same_line) for one in first.parts)
    if set(first.values) & set(later.values):
        return True
    if not first.values or not later.values:
        return not later.values
    if first.shape is not None and first.shape == later.shape:
        pairs = zip(first.parts, later.parts, strict=False)
        return all(conversion(a, b, same_line) for a, b in pairs)
    one, other = first.values[0], later.values[0]
    if not isinstance(one, Exact) or not isinstance(other, Exact):
        return False
    if same_line:
        return True
    decimal = _decimal(later.node)
    if decimal is not None and decimal[0] in (rounded(one, decimal[1]), cut(one, decimal[1])):
        return True
    if isinstance(one, Surd) and isinstance(other, Fraction) and later.working:
        return compare(abs(rounded(one, ON_THE_WAY) - other), NEARLY) < 0  # a root rounded
    if isinstance(one, Surd) or isinstance(other, Surd):
        return decimal is not None and abs(decimal[0] - rounded(one, decimal[1])) < 1
    new_form = number_form(first.node) != number_form(later.node)
    return abs(one - other) < 1 and (new_form or not in_lowest_terms(first.node))
