"""What goes wrong when one bracket with something before it is multiplied out?"""

from __future__ import annotations

from collections.abc import Iterator
from itertools import product as cartesian

from itembank.algebra.exact import Fraction
from itembank.topics.catalogue import (
    EXPANDING_SIGN,
    FACTOR_ADDED,
    FACTOR_DROPPED,
    FIRST_ONLY,
    JOINED_IN_BRACKET,
    LAST_ONLY,
    MINUS_DROPPED,
    MINUS_FIRST_ONLY,
    NUMBER_FIRST_ONLY,
    CommonError,
)
from itembank.topics.expressions.catalogue import (
    COEFFICIENT_FIRST_ONLY,
    LETTER_FIRST_ONLY,
    LETTER_KEPT,
    LETTERS_DOUBLED,
    SOME_TERMS_ONLY,
)
from itembank.topics.expressions.pieces import Piece, Pieces, collected, scaled, times, turned

IN_ONE_BRACKET = (
    FIRST_ONLY,
    LAST_ONLY,
    SOME_TERMS_ONLY,
    NUMBER_FIRST_ONLY,
    MINUS_FIRST_ONLY,
    LETTER_FIRST_ONLY,
    COEFFICIENT_FIRST_ONLY,
    LETTER_KEPT,
    LETTERS_DOUBLED,
    FACTOR_ADDED,
    FACTOR_DROPPED,
    EXPANDING_SIGN,
    JOINED_IN_BRACKET,
)
"""Those of one bracket with something before it."""

LONGEST_BRACKET = 4
"""In a longer bracket no error is looked for in some of its terms."""


def wrong_single(front: Piece, inner: Pieces) -> Iterator[tuple[CommonError, Pieces]]:
    """Every wrong way to multiply out one bracket: ``3x(2x - 5)``, ``-(x + 3)``."""
    right = scaled(inner, front)
    if front != Piece(Fraction(1)):
        yield FIRST_ONLY, (right[0], *inner[1:])
        if len(inner) > 1:
            yield LAST_ONLY, (*inner[:-1], right[-1])
        yield from ((SOME_TERMS_ONLY, wrong) for wrong in _some_multiplied(inner, right))
        yield from ((LETTER_FIRST_ONLY, wrong) for wrong in _letter_left_out(front, inner, right))
        for wrong in _size_left_out(front, inner, right):
            yield COEFFICIENT_FIRST_ONLY, wrong
        yield FACTOR_DROPPED, inner
    if front.size < 0 and front.size != -1:
        yield NUMBER_FIRST_ONLY, (right[0], *map(turned, inner[1:]))
    if front.size < 0 and (front.size != -1 or front.letters):
        yield MINUS_DROPPED, tuple(map(turned, right))
    if front.size < 0 and len(inner) > 2:
        yield MINUS_FIRST_ONLY, (right[0], *map(turned, right[1:]))
    for place, term in enumerate(right):
        if term.size < 0 or front.size < 0 or (not term.letters and place):
            yield EXPANDING_SIGN, (*right[:place], turned(term), *right[place + 1 :])
    if front.size > 0 and front.size != 1 and not front.letters:
        yield from ((FACTOR_ADDED, wrong) for wrong in _added(front, inner, right))
    yield from _joined_inside(front, inner)
    yield from _letters(right, front, inner)


def _some_multiplied(inner: Pieces, right: Pieces) -> Iterator[Pieces]:
    """Of three terms or more some multiplied: several, or one between the first and the last."""
    if not 2 < len(inner) <= LONGEST_BRACKET:
        return
    for chosen in cartesian((False, True), repeat=len(inner)):
        if all(chosen) or not any(chosen) or (sum(chosen) == 1 and (chosen[0] or chosen[-1])):
            continue
        yield tuple(r if one else i for one, r, i in zip(chosen, right, inner, strict=True))


def _letter_left_out(front: Piece, inner: Pieces, right: Pieces) -> Iterator[Pieces]:
    """``2a(a - 3)`` as 2a^2 - 6: the number of the factor reaches every term, its letter not."""
    if front.letters and abs(front.size) != 1:
        yield from _other_behind(right, scaled(inner, Piece(front.size)))


def _size_left_out(front: Piece, inner: Pieces, right: Pieces) -> Iterator[Pieces]:
    """``2a(a - 3)`` as 2a^2 - 3a: the letter of the factor reaches every term, its number not."""
    if front.letters and abs(front.size) != 1:
        side = Fraction(1 if front.size > 0 else -1)
        yield from _other_behind(right, scaled(inner, front._replace(size=side)))


def _other_behind(right: Pieces, wrong: Pieces) -> Iterator[Pieces]:
    """Every term behind the first wrong, or the last alone."""
    yield (right[0], *wrong[1:])
    if len(right) > 2:
        yield (*right[:-1], wrong[-1])


def _added(front: Piece, inner: Pieces, right: Pieces) -> Iterator[Pieces]:
    yield (*inner, front)
    yield tuple(term._replace(size=term.size + front.size) for term in inner)
    for place, term in enumerate(inner):
        if not term.letters:
            wrong = term._replace(size=term.size + front.size)
            yield (*right[:place], wrong, *right[place + 1 :])


def _joined_inside(front: Piece, inner: Pieces) -> Iterator[tuple[CommonError, Pieces]]:
    """``4(x + 3)`` as ``4 × 4x`` or ``4 × 3x``."""
    parts = collected(inner)
    if len(parts) == 2 and parts[0].letters and not parts[1].letters:
        letter, number = parts
        for size in {letter.size + number.size, *([number.size] if letter.size == 1 else [])}:
            yield JOINED_IN_BRACKET, (times(front, letter._replace(size=size)),)


def _letters(right: Pieces, front: Piece, inner: Pieces) -> Iterator[tuple[CommonError, Pieces]]:
    """x times x as 2x or as x, wherever the same letter meets itself."""
    for error in (LETTERS_DOUBLED, LETTER_KEPT):
        out = [
            met_wrongly(error, front, term) or product
            for term, product in zip(inner, right, strict=True)
        ]
        if tuple(out) != right:
            yield error, tuple(out)


def met_wrongly(error: CommonError, one: Piece, other: Piece) -> Piece | None:
    """The product of two terms in one and the same letter, worked wrongly."""
    if len(one.letters) != 1 or one.letters != other.letters or one.letters[0][1] != 1:
        return None
    size = one.size * other.size * (2 if error is LETTERS_DOUBLED else 1)
    return Piece(size, one.letters)
