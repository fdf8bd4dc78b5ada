"""What goes wrong when brackets are multiplied out? Common errors on the pieces of a polynomial."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from itembank.algebra.exact import Fraction
from itembank.topics.catalogue import (
    FACTOR_DROPPED,
    FACTOR_JOINED,
    FIRST_ONLY,
    MINUS_DROPPED,
    CommonError,
)
from itembank.topics.expressions.catalogue import (
    BRACKETS_ADDED,
    DOUBLED,
    FACTOR_FORGOTTEN,
    FACTOR_TWICE,
    FIRST_AND_LAST,
    FIRST_TERM_ONLY,
    LETTER_KEPT,
    LETTERS_DOUBLED,
    MIDDLE_ONCE,
    MINUS_ONE_PRODUCT,
    NOT_SQUARED,
    NUMBERS_ADDED,
    PRODUCT_MISSING,
    PRODUCT_SIGN,
    SQUARE_SIGN,
    SQUARE_WITHOUT_MIDDLE,
)
from itembank.topics.expressions.pieces import (
    Group,
    Piece,
    Pieces,
    collected,
    flat,
    multiplied,
    scaled,
    times,
    turned,
)
from itembank.topics.expressions.single_bracket_errors import (
    IN_ONE_BRACKET,
    met_wrongly,
    wrong_single,
)

BRACKET, ONE_PRODUCT, EVERY = "bracket", "one product", "every bracket"
"""What an error costs: the method of the bracket, the rightness of one of its products, or the
method of all the brackets of a product of three."""


IN_MULTIPLYING = (
    *IN_ONE_BRACKET,
    FIRST_AND_LAST,
    FIRST_TERM_ONLY,
    BRACKETS_ADDED,
    PRODUCT_MISSING,
    PRODUCT_SIGN,
    NUMBERS_ADDED,
    SQUARE_WITHOUT_MIDDLE,
    MIDDLE_ONCE,
    DOUBLED,
    SQUARE_SIGN,
    NOT_SQUARED,
    MINUS_ONE_PRODUCT,
    MINUS_DROPPED,
    FACTOR_TWICE,
    FACTOR_FORGOTTEN,
    FACTOR_JOINED,
)
"""The errors of multiplying out, for the topics in whose working it has a part."""

FAR = 2
"""The cost of an error that is told less of its place than others."""


@dataclass(frozen=True, slots=True)
class Change:
    """A common error made on pieces: what it is, what it touches, what stands there after it."""

    error: CommonError
    touches: str
    after: Pieces
    cost: int = 0


def wrong_brackets(parts: Pieces) -> Iterator[Change]:
    """Every way to multiply out one bracket, or one pair of brackets, wrongly."""
    for place, part in enumerate(parts):
        if not part.groups:
            continue
        for error, touches, wrong in _of_piece(part):
            cost = FAR if error is PRODUCT_MISSING else 0
            yield Change(error, touches, parts[:place] + wrong + parts[place + 1 :], cost)
        yield from _within(parts, place, part)
    yield from _everywhere(parts)
    yield from _factor_joined(parts)


def _everywhere(parts: Pieces) -> Iterator[Change]:
    """The same error in every bracket: ``5(x + 3) + 2(x + 4)`` as ``5x + 3 + 2x + 4``."""
    found = [list(_of_piece(part)) if part.groups else [] for part in parts]
    held = [ways for ways in found if ways]
    if len(held) < 2:
        return
    for error, touches in dict.fromkeys((error, touches) for error, touches, _ in held[0]):
        ways = [[w for e, _, w in mine if e is error] for mine in found]
        if error is PRODUCT_MISSING or not all(
            w for w, mine in zip(ways, found, strict=True) if mine
        ):
            continue
        for way in range(min(len(w) for w in ways if w)):
            chosen = (w[way] if w else (part,) for w, part in zip(ways, parts, strict=True))
            yield Change(error, touches, tuple(p for some in chosen for p in some), FAR)


def _within(parts: Pieces, place: int, part: Piece) -> Iterator[Change]:
    """Errors in a bracket that stands inside another, and in two brackets of three or more."""
    for at, group in enumerate(part.groups):
        for change in wrong_brackets(group.inner):
            groups = (*part.groups[:at], Group(change.after, group.power), *part.groups[at + 1 :])
            after = (*parts[:place], part._replace(groups=groups), *parts[place + 1 :])
            yield Change(change.error, change.touches, after, change.cost)


def _of_piece(part: Piece) -> Iterator[tuple[CommonError, str, Pieces]]:
    brackets = part.brackets
    front = Piece(part.size, part.letters)
    if len(brackets) == 1:
        for error, wrong in wrong_single(front, flat(brackets[0])):
            yield error, BRACKET, wrong
        return
    first, second, *others = (flat(inner) for inner in brackets)
    rest = tuple(Group(inner) for inner in others)
    square = part.groups[0].power > 1 or first == second
    for error, touches, wrong in _of_two(first, second, square):
        yield error, touches, scaled(wrong, front._replace(groups=rest))
    if not rest:
        yield from _of_front(front, first, second)
    else:
        ends = (_all_of(brackets, 0), _all_of(brackets, -1))
        yield FIRST_AND_LAST, EVERY, scaled(ends, front)


def _all_of(brackets: tuple[Pieces, ...], place: int) -> Piece:
    """The product of the first, or of the last, terms of all brackets."""
    out = Piece(Fraction(1))
    for inner in brackets:
        out = times(out, flat(inner)[place])
    return out


def _of_two(
    first: Pieces, second: Pieces, square: bool
) -> Iterator[tuple[CommonError, str, Pieces]]:
    """Two brackets multiplied: the products of each term by each term, some of them wrong."""
    right = multiplied(first, second)
    if square:
        yield from _of_square(first, right)
    elif len(first) > 1 and len(second) > 1:
        yield FIRST_AND_LAST, BRACKET, (right[0], right[-1])
    if len(first) > 1 and not square:
        yield FIRST_TERM_ONLY, BRACKET, (*right[: len(second)], *first[1:])
    if not square:
        yield BRACKETS_ADDED, BRACKET, collected((*first, *second))
    for place, product in enumerate(right):
        yield PRODUCT_MISSING, ONE_PRODUCT, (*right[:place], *right[place + 1 :])
        sign = (*right[:place], turned(product), *right[place + 1 :])
        if square and product in (*right[:place], *right[place + 1 :]):
            continue  # it would cancel the other: the middle term left out
        if any(term.size < 0 for term in (*first, *second)):
            yield PRODUCT_SIGN, ONE_PRODUCT, sign
    yield from _numbers_added(first, second, right)
    for error in (LETTERS_DOUBLED, LETTER_KEPT):
        met = [met_wrongly(error, a, b) for a in first for b in second]
        wrong = tuple(m or p for m, p in zip(met, right, strict=True))
        if wrong != right:
            yield error, ONE_PRODUCT if sum(map(bool, met)) == 1 else BRACKET, wrong
        for place, one in enumerate(met):
            if one is not None and sum(map(bool, met)) > 1:
                yield error, ONE_PRODUCT, (*right[:place], one, *right[place + 1 :])


def _of_square(first: Pieces, right: Pieces) -> Iterator[tuple[CommonError, str, Pieces]]:
    if len(first) != 2:
        yield SQUARE_WITHOUT_MIDDLE, BRACKET, tuple(times(term, term) for term in first)
        return
    a, b = right[0], right[3]
    yield SQUARE_WITHOUT_MIDDLE, BRACKET, (a, b)
    yield SQUARE_WITHOUT_MIDDLE, BRACKET, (a, turned(b))
    if a.letters and abs(first[0].size) != 1:  # ``(2x - 5)^2`` as ``2x^2 - 5^2``
        kept = a._replace(size=abs(first[0].size))
        yield from ((SQUARE_WITHOUT_MIDDLE, BRACKET, (kept, end)) for end in (b, turned(b)))
    yield MIDDLE_ONCE, ONE_PRODUCT, (a, right[1], b)
    yield DOUBLED, BRACKET, scaled(first, Piece(Fraction(2)))
    if first[1].size < 0:
        yield SQUARE_SIGN, ONE_PRODUCT, (*right[:3], turned(b))
    for place, term in ((0, a), (3, b)):
        root = first[0] if place == 0 else first[1]
        if term.letters and abs(root.size) != 1:
            wrong = term._replace(size=abs(root.size))
            yield NOT_SQUARED, ONE_PRODUCT, (*right[:place], wrong, *right[place + 1 :])


def _numbers_added(
    first: Pieces, second: Pieces, right: Pieces
) -> Iterator[tuple[CommonError, str, Pieces]]:
    for i, a in enumerate(first):
        for j, b in enumerate(second):
            if not a.letters and not b.letters:
                place = i * len(second) + j
                wrong = Piece(a.size + b.size)
                yield NUMBERS_ADDED, ONE_PRODUCT, (*right[:place], wrong, *right[place + 1 :])


def _of_front(
    front: Piece, first: Pieces, second: Pieces
) -> Iterator[tuple[CommonError, str, Pieces]]:
    """A number, a letter or a minus before two brackets."""
    right = scaled(multiplied(first, second), front)
    if front.size < 0:
        yield MINUS_ONE_PRODUCT, BRACKET, (right[0], *map(turned, right[1:]))
        yield MINUS_DROPPED, BRACKET, tuple(map(turned, right))
    if front.letters or abs(front.size) != 1:
        yield FACTOR_TWICE, BRACKET, multiplied(scaled(first, front), scaled(second, front))
        yield FACTOR_FORGOTTEN, BRACKET, multiplied(first, second)
        yield FIRST_ONLY, BRACKET, (right[0], *collected(multiplied(first, second))[1:])
        for one, other in ((first, second), (second, first)):
            for error, wrong in wrong_single(front, one):
                if error is not FACTOR_DROPPED and len(wrong) > 1:
                    yield error, BRACKET, (Piece(Fraction(1), (), (Group(wrong), Group(other))),)


def _factor_joined(parts: Pieces) -> Iterator[Change]:
    """``9 - 2(x + 3)`` as ``7(x + 3)``, ``4x - 2(3 - x)`` as ``2x(3 - x)``."""
    for i, number in enumerate(parts):
        for j, part in enumerate(parts):
            if number.groups or not part.groups or part.letters:
                continue
            for letters in dict.fromkeys((number.letters, ())):
                joined = part._replace(size=part.size + number.size, letters=letters)
                after = tuple(joined if k == j else p for k, p in enumerate(parts) if k != i)
                yield Change(FACTOR_JOINED, BRACKET, after)
