"""What goes wrong when like terms are collected and powers multiplied? Errors on terms."""

from __future__ import annotations

from collections.abc import Iterator

from itembank.algebra.exact import Fraction
from itembank.algebra.inside import symbols
from itembank.algebra.values import Monomial, NoValue, joined_monomial, number, polynomial
from itembank.algebra.written import Node, Power, Product
from itembank.topics.catalogue import (
    JOINING_SIGN,
    LIKE_MULTIPLIED,
    UNKNOWN_CANCELLED,
    UNLIKE_JOINED,
    CommonError,
)
from itembank.topics.expressions.catalogue import (
    BARE_LETTER,
    COEFFICIENTS_ADDED,
    LETTER_KEPT,
    LETTERS_DOUBLED,
    LIKE_SQUARED,
    NOT_SQUARED,
    POWER_ADDED,
    POWER_OF_NUMBER_DOUBLED,
    POWERS_JOINED,
    POWERS_MULTIPLIED,
    TERM_LEFT,
    UNLIKE_LETTERS,
)
from itembank.topics.expressions.multiplying_errors import Change
from itembank.topics.expressions.pieces import Piece, Pieces, collected, pieces, turned
from itembank.topics.expressions.trees import factors, terms

KIND, JOIN, POWER = "one kind", "join", "power"
"""What an error costs: one kind of term alone, the collecting itself, a product of powers."""

MOST_TERMS = 12


def wrong_joins(parts: Pieces) -> Iterator[Change]:
    """Every way to join the terms of a multiplied-out expression wrongly."""
    if len(parts) > MOST_TERMS:
        return
    yield from _kinds_joined(parts)
    yield from _within_a_kind(parts)
    yield from _every_kind(parts)
    if len(parts) > 2:
        for place in range(len(parts)):
            left = collected((*parts[:place], *parts[place + 1 :]))
            yield Change(TERM_LEFT, KIND, left, 2)


def _kinds_joined(parts: Pieces) -> Iterator[Change]:
    """Two terms that are not alike made one; of like terms those of the simplest form, too."""
    whole = collected(parts)
    for found, cost in ((whole, 0), (parts, 1)):
        if cost and found == whole:
            return
        for i, one in enumerate(found):
            for j in range(i + 1, len(found)):
                other = found[j]
                if one.letters == other.letters or one.groups or other.groups:
                    continue
                rest = tuple(p for k, p in enumerate(found) if k not in (i, j))
                for error, joined in _unlike(one, other):
                    yield Change(error, JOIN, (*rest[:i], joined, *rest[i:]), cost)
    if len(whole) > 2 and all(part.letters for part in whole):
        letters: Monomial = ()
        for part in whole:
            letters = joined_monomial(letters, part.letters)
        total = sum((part.size for part in whole), Fraction(0))
        yield Change(UNLIKE_LETTERS, JOIN, (Piece(total, letters),))


def _unlike(one: Piece, other: Piece) -> Iterator[tuple[CommonError, Piece]]:
    total = one.size + other.size
    if not one.letters or not other.letters:
        letters = one.letters or other.letters
        yield UNLIKE_JOINED, Piece(total, letters)
        yield UNLIKE_JOINED, Piece(total)
        yield UNLIKE_JOINED, Piece(one.size * other.size, letters)
        return
    both = joined_monomial(one.letters, other.letters)
    same = {name for name, _ in one.letters} == {name for name, _ in other.letters}
    error = POWERS_JOINED if same else UNLIKE_LETTERS
    yield error, Piece(total, both)
    yield error, Piece(one.size * other.size, both)
    if same:
        yield error, Piece(total, max(one.letters, other.letters))
        yield error, Piece(total, min(one.letters, other.letters))


def _within_a_kind(parts: Pieces) -> Iterator[Change]:
    for place, part in enumerate(parts):
        alike = [p for p in parts if p.letters == part.letters and not p.groups]
        if part.groups or len(alike) < 2:
            continue
        wrong = (*parts[:place], turned(part), *parts[place + 1 :])
        near = any(p.size < 0 for p in alike)
        if (near or any(p.size < 0 for p in parts)) and (part.size < 0 or part is not alike[0]):
            yield Change(JOINING_SIGN, KIND, _joined(wrong, part.letters), 0 if near else 2)
        first = alike[0] is part
        if part.letters and abs(part.size) == 1:
            rest = (*parts[:place], *parts[place + 1 :])
            yield Change(BARE_LETTER, KIND, _joined(rest, part.letters))
        if part.letters and first:
            yield from _sizes(parts, alike, part.letters)
        if len(part.letters) == 1 and part.size == -1 and len(alike) == 2:
            other = alike[0] if alike[1] is part else alike[1]
            rest = tuple(p for p in parts if p is not part and p is not other)
            yield Change(UNKNOWN_CANCELLED, KIND, (*rest, Piece(other.size)))


def _every_kind(parts: Pieces) -> Iterator[Change]:
    """Powers added in every kind of term that is collected."""
    counts = {part.letters: sum(p.letters == part.letters for p in parts) for part in parts}
    repeated = [letters for letters, count in counts.items() if letters and count > 1]
    if len(repeated) < 2 or any(part.groups for part in parts):
        return
    after = tuple(
        Piece(
            part.size, tuple((name, power * counts[part.letters]) for name, power in part.letters)
        )
        for part in collected(parts)
    )
    yield Change(LIKE_SQUARED, JOIN, after)


def _sizes(parts: Pieces, alike: list[Piece], letters: Monomial) -> Iterator[Change]:
    rest = tuple(p for p in parts if p not in alike)
    total = sum((p.size for p in alike), Fraction(0))
    powers = tuple((name, power * len(alike)) for name, power in letters)
    yield Change(LIKE_SQUARED, KIND, (Piece(total, powers), *rest))
    if len(alike) == 2:
        yield Change(LIKE_MULTIPLIED, KIND, (Piece(alike[0].size * alike[1].size, letters), *rest))
        if letters:
            both = Piece(alike[0].size * alike[1].size, powers)
            yield Change(LIKE_MULTIPLIED, KIND, (both, *rest), 1)


def _joined(parts: Pieces, letters: Monomial) -> Pieces:
    """The terms of one kind joined where the first of them stands."""
    same = [p for p in parts if p.letters == letters and not p.groups]
    total = sum((p.size for p in same), Fraction(0))
    out: list[Piece] = []
    for part in parts:
        if part.letters != letters or part.groups:
            out.append(part)
        elif part is same[0] and total:
            out.append(Piece(total, letters))
    return tuple(out)


def wrong_powers(node: Node) -> Iterator[Change]:
    """Letters multiplied wrongly in one term of an expression: ``2x × 3x``, ``(2x)^2``."""
    try:
        parts = pieces(node)
    except NoValue:
        return
    for place, (sign, body) in enumerate(terms(node)):
        if parts[place].groups or not isinstance(body, Product | Power):
            continue
        for error, piece in _of_term(body):
            mine = piece._replace(size=sign * piece.size)
            yield Change(error, POWER, (*parts[:place], mine, *parts[place + 1 :]))


def _of_term(body: Node) -> Iterator[tuple[CommonError, Piece]]:
    right = pieces(body)[0]
    for place, factor in enumerate(factors(body)):
        rest = [f for k, f in enumerate(factors(body)) if k != place]
        for error, wrong in _raised(factor):
            yield error, _times(wrong, rest)
    sizes, letters = _taken_apart(body)
    if len(sizes) > 1:
        yield COEFFICIENTS_ADDED, right._replace(size=sum(sizes, Fraction(0)))
    for name, powers in letters.items():
        if len(powers) < 2:
            continue
        other = {n: p for n, p in right.letters if n != name}
        product = 1
        for power in powers:
            product *= power
        if product != sum(powers) and max(powers) > 1:
            wrong_letters = tuple(sorted({**other, name: product}.items()))
            yield POWERS_MULTIPLIED, right._replace(letters=wrong_letters)
        if powers == [1, 1]:
            kept = tuple(sorted({**other, name: 1}.items()))
            yield LETTERS_DOUBLED, Piece(2 * right.size, kept)
            yield LETTER_KEPT, Piece(right.size, kept)


def _raised(factor: Node) -> Iterator[tuple[CommonError, Piece]]:
    """A power of a term worked wrongly."""
    if not isinstance(factor, Power) or not symbols(factor.base):
        return
    inside, right = polynomial(factor.base), polynomial(factor)
    if len(inside) != 1 or (isinstance(factor.base, Power) and isinstance(factor.base.base, Power)):
        return
    (monomial, size), power = inside[0], number(factor.exponent)
    if size not in (1, -1):
        yield NOT_SQUARED, Piece(size, right[0][0])
        yield POWER_OF_NUMBER_DOUBLED, Piece(size * power, right[0][0])
    added = tuple((name, exponent + int(power)) for name, exponent in monomial)
    if added != right[0][0] and any(exponent > 1 for _, exponent in monomial):
        yield POWER_ADDED, Piece(right[0][1], added)


def _times(piece: Piece, rest: list[Node]) -> Piece:
    size, letters = piece.size, piece.letters
    for node in rest:
        ((monomial, factor),) = polynomial(node) or (((), Fraction(0)),)
        size, letters = size * factor, joined_monomial(letters, monomial)
    return Piece(size, letters)


def _taken_apart(body: Node) -> tuple[list[Fraction], dict[str, list[int]]]:
    """The numbers other than 1, and the powers of each letter, factor by factor."""
    sizes: list[Fraction] = []
    letters: dict[str, list[int]] = {}
    for factor in factors(body):
        value = polynomial(factor)
        if len(value) != 1:
            return [], {}
        monomial, size = value[0]
        if size != 1:
            sizes.append(size)
        for name, power in monomial:
            letters.setdefault(name, []).append(power)
    return sizes, letters
