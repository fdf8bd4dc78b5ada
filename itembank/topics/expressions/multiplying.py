"""In which ways are brackets multiplied out? Each way as the lines that a person would write."""

from __future__ import annotations

from collections.abc import Iterator

from itembank.algebra.exact import Fraction
from itembank.algebra.written import Integer, Node, Power, Product, Sum
from itembank.topics.expressions.pieces import (
    Group,
    Piece,
    Pieces,
    collected,
    has_bracket,
    has_like,
    multiplied,
    scaled,
    times,
    turned,
    written,
)
from itembank.topics.expressions.trees import term_node

Lines = list[tuple[Node, str, bool]]

EACH_BY_EACH = "each term by each term"
COLUMNS = "by the columns of a grid"
SPLIT = "split the first bracket"
SQUARE = "square by its pattern"
AS_PRODUCT = "write the square as a product"
DIFFERENCE = "difference of squares by its pattern"
PLAIN = "multiply out the bracket"
INSIDE_FIRST = "collect inside the bracket first"


def ways(parts: Pieces) -> Iterator[tuple[str, Lines]]:
    """Every way to multiply out what stands in brackets, the usual one first."""
    several = any(len(part.brackets) > 1 for part in _all(parts))
    yield (EACH_BY_EACH if several else PLAIN), _lines(parts, True)
    if several:
        yield COLUMNS, _lines(parts, False)
        pattern = _by_pattern(parts)
        if pattern is not None:
            yield pattern
        squares = _without_powers(parts)
        if squares != parts:
            first = (written(squares), AS_PRODUCT, True)
            yield AS_PRODUCT, [first, *_lines(squares, True)]
        split = _split(squares)
        if split != squares:
            yield SPLIT, [(written(split), SPLIT, True), *_lines(split, True)]
    inside = tidied(parts)
    if inside != parts:
        yield INSIDE_FIRST, [(written(inside), INSIDE_FIRST, True), *_lines(inside, True)]


def _all(parts: Pieces) -> Iterator[Piece]:
    for part in parts:
        yield part
        for inner in part.brackets:
            yield from _all(inner)


def _lines(parts: Pieces, across: bool) -> Lines:
    """Line after line until no bracket is left; what has been multiplied is collected inside."""
    out: Lines = []
    while has_bracket(parts):
        parts = tuple(new for part in parts for new in advanced(part, across))
        out.append((written(parts), _words(across), True))
        inside = tidied(parts)
        if inside != parts:
            parts = inside
            out.append((written(parts), "collect like terms inside the bracket", True))
    return out


def _words(across: bool) -> str:
    return "multiply out the brackets" if across else "multiply out, column by column"


def advanced(part: Piece, across: bool) -> Pieces:
    """One step for a term: the innermost bracket, two brackets, or one with what is before it."""
    if not part.groups:
        return (part,)
    if any(has_bracket(inner) for inner in part.brackets):
        groups = tuple(
            Group(tuple(new for p in group.inner for new in advanced(p, across)), group.power)
            for group in part.groups
        )
        return (part._replace(groups=groups),)
    front = Piece(part.size, part.letters)
    if len(part.brackets) == 1:
        return scaled(part.brackets[0], front)
    first, second, *others = part.brackets
    product = multiplied(first, second, across)
    if not others and front == Piece(Fraction(1)):
        return product
    return (front._replace(groups=(Group(product), *(Group(inner) for inner in others))),)


def tidied(parts: Pieces) -> Pieces:
    """The pieces with like terms collected inside every bracket."""
    return tuple(
        part._replace(groups=tuple(Group(_tidy(tidied(g.inner)), g.power) for g in part.groups))
        for part in parts
    )


def _tidy(inner: Pieces) -> Pieces:
    return collected(inner) if has_like(inner) and not has_bracket(inner) else inner


def _without_powers(parts: Pieces) -> Pieces:
    return tuple(
        part._replace(groups=tuple(Group(inner) for inner in part.brackets)) for part in parts
    )


def _split(parts: Pieces) -> Pieces:
    """``(x + 3)(x + 5)`` as ``x(x + 5) + 3(x + 5)``."""
    out: list[Piece] = []
    for part in parts:
        front = Piece(part.size, part.letters)
        plain = len(part.brackets) == 2 and front == Piece(Fraction(1))
        if not plain or any(map(has_bracket, part.brackets)):
            out.append(part)
            continue
        first, second = part.brackets
        out.extend(times(term, Piece(Fraction(1), (), (Group(second),))) for term in first)
    return tuple(out)


def _by_pattern(parts: Pieces) -> tuple[str, Lines] | None:
    """``x^2 + 2 × x × 3 + 3^2``, or ``x^2 - 3^2``, where the expression is nothing else."""
    if len(parts) != 1 or parts[0][:2] != Piece(Fraction(1))[:2]:
        return None
    brackets = parts[0].brackets
    if len(brackets) != 2 or any(len(b) != 2 or has_bracket(b) for b in brackets):
        return None
    (a, b), (c, d) = brackets
    if (a, b) == (c, d):
        sign = "+" if b.size > 0 else "-"
        middle = Product((Integer("2"), _term(a), _term(b)), ("×", "×"))
        terms = (("+", _square(a)), (sign, middle), ("+", _square(b)))
        return SQUARE, [(Sum(terms), "square each term and add twice their product", True)]
    if a == c and b == turned(d) and a.size > 0:
        return DIFFERENCE, [
            (Sum((("+", _square(a)), ("-", _square(b)))), "the difference of the squares", True)
        ]
    return None


def _term(piece: Piece) -> Node:
    return term_node(abs(piece.size), piece.letters)


def _square(piece: Piece) -> Node:
    return Power(_term(piece), Integer("2"))
