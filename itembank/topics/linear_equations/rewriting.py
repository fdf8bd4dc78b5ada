"""How does a step change a written line? The rewrites that the steps are made of.

Each takes a relation (and an operand where the step has one) and gives a relation with the same
solutions. The operand of adding or subtracting is a positive term; of multiplying or dividing a
number, in a bracket where it is negative. A relation may be an inequality, of several parts too:
then a negative factor turns its signs, and so does exchanging its sides.
"""

from __future__ import annotations

from collections.abc import Callable
from math import gcd, lcm

from itembank.algebra.exact import Fraction
from itembank.algebra.grammar import with_factor
from itembank.algebra.inside import walk
from itembank.algebra.order import all_turned
from itembank.algebra.written import (
    Bracket,
    Integer,
    Mixed,
    Node,
    Product,
    Quotient,
    Relation,
    Sum,
)
from itembank.topics.linear_equations.terms import (
    Piece,
    Pieces,
    Term,
    holds_decimal,
    pieces,
    side,
    term,
    term_of,
    written,
)


def on_both(relation: Relation, change: Callable[[Node], Node]) -> Relation:
    """The relation with the same change made to each of its sides."""
    return Relation(tuple(change(part) for part in relation.sides), relation.signs)


def _by_factor(relation: Relation, operand: Node, change: Callable[[Node], Node]) -> Relation:
    """The same change to each side, the signs turned where the operand is negative."""
    after = on_both(relation, change)
    return Relation(after.sides, all_turned(after.signs)) if term_of(operand).size < 0 else after


# Adding and subtracting a term


def write_added(relation: Relation, operand: Node) -> Relation:
    """``6x - 7 = 23`` and 7 -> ``6x - 7 + 7 = 23 + 7``."""
    return on_both(relation, lambda part: side((*pieces(part), ("+", operand))))


def write_subtracted(relation: Relation, operand: Node) -> Relation:
    """``6x + 7 = 23`` and 7 -> ``6x + 7 - 7 = 23 - 7``."""
    return on_both(relation, lambda part: side((*pieces(part), ("-", operand))))


def added(relation: Relation, operand: Node) -> Relation:
    """``6x - 7 = 23`` and 7 -> ``6x = 30``: joined with the like terms, nothing else touched."""
    decimals = holds_decimal(relation)
    return on_both(
        relation, lambda part: side(_joined_with(pieces(part), ("+", operand), decimals))
    )


def subtracted(relation: Relation, operand: Node) -> Relation:
    """``9x = 4x - 21`` and 4x -> ``5x = -21``: joined with the like terms."""
    decimals = holds_decimal(relation)
    return on_both(
        relation, lambda part: side(_joined_with(pieces(part), ("-", operand), decimals))
    )


def _joined_with(parts: Pieces, extra: Piece, decimals: bool) -> Pieces:
    kept = tuple(piece for piece in parts if term(piece).top)
    return _join_kind((*kept, extra), term(extra).body, decimals)


def _join_kind(parts: Pieces, kind: Node | None, decimals: bool) -> Pieces:
    """The pieces of one kind made one, standing where the first of them stood."""
    alike = [i for i, piece in enumerate(parts) if term(piece).body == kind]
    total = sum((term(parts[i]).size for i in alike), Fraction(0))
    if len(alike) == 1:
        return parts
    out: list[Piece] = []
    for i, piece in enumerate(parts):
        if i == alike[0]:
            out.extend(written(total, kind, decimals))
        elif i not in alike:
            out.append(piece)
    return tuple(out)


# Multiplying and dividing both sides by a number


def write_multiplied(relation: Relation, operand: Node) -> Relation:
    """``x/4 = 3`` and 4 -> ``x/4 × 4 = 3 × 4``."""
    return _by_factor(relation, operand, lambda part: side(_times(pieces(part), operand)))


def write_divided(relation: Relation, operand: Node) -> Relation:
    """``6x = 30`` and 6 -> ``6x/6 = 30/6``; with ``÷`` where a fraction stands already."""
    fraction = any(
        isinstance(node, Quotient | Mixed)
        for part in (*relation.sides, operand)
        for node in walk(part)
    )
    mark = "÷" if fraction else "/"
    return _by_factor(relation, operand, lambda part: side(_over(pieces(part), operand, mark)))


def _times(parts: Pieces, operand: Node) -> Pieces:
    if len(parts) > 1:
        return (("+", Product((Bracket(side(parts)), operand), ("×",))),)
    (sign, node), *_ = parts
    return ((sign, with_factor(node, operand, "×")),)


def _over(parts: Pieces, operand: Node, mark: str) -> Pieces:
    if len(parts) > 1:
        return (("+", Quotient(Bracket(side(parts)), operand, mark)),)
    (sign, node), *_ = parts
    return ((sign, Quotient(node, operand, mark)),)


def multiplied(relation: Relation, operand: Node) -> Relation:
    """``x/2 + x/3 = 10`` and 6 -> ``3x + 2x = 60``: every term multiplied."""
    factor, decimals = term_of(operand).size, holds_decimal(relation)
    return _by_factor(relation, operand, lambda part: side(_scaled(pieces(part), factor, decimals)))


def divided(relation: Relation, operand: Node) -> Relation:
    """``4(x + 3) = 20`` and 4 -> ``x + 3 = 5``: every term divided."""
    factor, decimals = 1 / term_of(operand).size, holds_decimal(relation)
    return _by_factor(relation, operand, lambda part: side(_scaled(pieces(part), factor, decimals)))


def _scaled(parts: Pieces, factor: Fraction, decimals: bool) -> Pieces:
    out: list[Piece] = []
    for piece in parts:
        one = term(piece)
        out.extend(written(one.size * factor, one.body, decimals))
    return tuple(out)


# Brackets


def expanded(relation: Relation, _: Node | None = None) -> Relation:
    """``2(x + 1) - (x - 3) = 7`` -> ``2x + 2 - x + 3 = 7``; the innermost brackets first."""
    decimals = holds_decimal(relation)
    return on_both(relation, lambda part: side(_spread(pieces(part), decimals)))


def _spread(parts: Pieces, decimals: bool) -> Pieces:
    out: list[Piece] = []
    for piece in parts:
        one = term(piece)
        if not isinstance(one.body, Sum):
            out.append(piece)
        elif has_bracket(pieces(one.body)):
            inner = side(_spread(pieces(one.body), decimals))
            out.extend(with_body(one, inner, decimals))
        elif one.barred:
            out.append(piece)
        else:
            for part in pieces(one.body):
                inside = term(part)
                out.extend(written(one.size * inside.size, inside.body, decimals))
    return tuple(out)


def has_bracket(parts: Pieces) -> bool:
    """Whether a bracket (not a fraction's numerator alone) holds the unknown."""
    for piece in parts:
        one = term(piece)
        if isinstance(one.body, Sum) and (not one.barred or has_bracket(pieces(one.body))):
            return True
    return False


def with_body(outer: Term, inner: Node, decimals: bool) -> Pieces:
    """The pieces of ``outer`` with another body; a body of one term is taken in."""
    parts = pieces(inner)
    if len(parts) > 1:
        return written(outer.size, inner, decimals)
    one = term(parts[0])
    return written(outer.size * one.size, one.body, decimals)


# Like terms


def joined(relation: Relation, _: Node | None = None) -> Relation:
    """``3x + 2 - x = 9 + 1`` -> ``2x + 2 = 10``; inside brackets and above bars as well."""
    decimals = holds_decimal(relation)
    return on_both(relation, lambda part: side(_join(pieces(part), decimals)))


def _join(parts: Pieces, decimals: bool) -> Pieces:
    inside: list[Piece] = []
    for piece in parts:
        one = term(piece)
        if isinstance(one.body, Sum) and has_like(pieces(one.body), deep=True):
            inside.extend(with_body(one, side(_join(pieces(one.body), decimals)), decimals))
        else:
            inside.append(piece)
    out = tuple(inside)
    for kind in dict.fromkeys(term(piece).body for piece in inside):
        if not isinstance(kind, Sum):
            out = _join_kind(out, kind, decimals)
    return out


def has_like(parts: Pieces, *, deep: bool = False) -> bool:
    """Whether two like terms stand apart here; ``deep`` looks into brackets as well."""
    bodies = [term(piece).body for piece in parts]
    plain = [body for body in bodies if not isinstance(body, Sum)]
    if len(plain) > len(set(plain)):
        return True
    return deep and any(has_like(pieces(b), deep=True) for b in bodies if isinstance(b, Sum))


# Fractions


def is_fraction(one: Term) -> bool:
    """Whether a fraction bar goes with the unknown of this term."""
    return one.body is not None and one.over != 1


def common_denominator(terms: list[Term]) -> Fraction:
    """The least common multiple of the denominators, of constants too."""
    overs = [one.over for one in terms]
    return Fraction(lcm(*(o.numerator for o in overs)), gcd(*(o.denominator for o in overs)))


def combined(relation: Relation, _: Node | None = None) -> Relation:
    """``x/2 + x/3 = 10`` -> ``(3x + 2x)/6 = 10``, on each side with several such fractions."""
    decimals = holds_decimal(relation)
    return on_both(relation, lambda part: side(_over_one_bar(pieces(part), decimals)))


def _over_one_bar(parts: Pieces, decimals: bool) -> Pieces:
    fractions = [i for i, piece in enumerate(parts) if is_fraction(term(piece))]
    if len(fractions) < 2:
        return parts
    below = common_denominator([term(parts[i]) for i in fractions])
    above: list[Piece] = []
    for i in fractions:
        one = term(parts[i])
        above.extend(written(one.size * below, one.body, decimals))
    bar = Quotient(Bracket(side(above)), Integer(str(below.numerator)), "/")
    out: list[Piece] = []
    for i, piece in enumerate(parts):
        if i == fractions[0]:
            out.append(("+", bar))
        elif i not in fractions:
            out.append(piece)
    return tuple(out)


# Turning round


def exchanged(relation: Relation, _: Node | None = None) -> Relation:
    """``-14 = 4x`` -> ``4x = -14``; ``-14 < 4x`` -> ``4x > -14``."""
    return Relation(relation.sides[::-1], all_turned(relation.signs)[::-1])
