"""How is an expression built up as a person sees it? Terms and factors of a written tree, and back.

The trees here are *plain*: without brackets that only group, sums and products flat. A fraction
bar binds closer than ``÷`` and ``×`` between fractions: ``(x + 2)/3 ÷ 5/x`` is a fraction divided
by a fraction.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from functools import lru_cache
from itertools import pairwise, takewhile

from itembank.algebra.exact import Fraction
from itembank.algebra.inside import kinds, signed, symbols, walk
from itembank.algebra.polynomials import in_order, in_writing
from itembank.algebra.values import Monomial, Polynomial
from itembank.algebra.written import (
    Bracket,
    Integer,
    Negative,
    Node,
    Positive,
    Power,
    Product,
    Quotient,
    Relation,
    Sum,
    Symbol,
)

Signed = tuple[int, Node]


@lru_cache(maxsize=4096)
def plain(node: Node) -> Node:
    """The plain tree of a written one; what is plain already stays the same tree."""
    return _plain_tree(node)


def _plain_tree(node: Node) -> Node:
    match _regrouped(node):
        case Sum(parts) as whole:
            flat = tuple(_flat_terms(parts))
            same = len(flat) == len(parts)
            return whole if same and _all_same(flat, parts) else Sum(flat)
        case Product(parts) as whole:
            found = product([_plain_tree(part) for part in parts])
            same = isinstance(found, Product) and found.marks == whole.marks
            return whole if same and found == whole else found
        case Bracket(body) | Positive(body):
            return _plain_tree(body)
        case Negative(body) as whole:
            inner = _plain_tree(body)
            return whole if inner is body else Negative(inner)
        case Power(base, exponent) as whole:
            below, above = _plain_tree(base), _plain_tree(exponent)
            return whole if below is base and above is exponent else Power(below, above)
        case Quotient(top, bottom, mark) as whole:
            over, under = _plain_tree(top), _plain_tree(bottom)
            return whole if over is top and under is bottom else Quotient(over, under, mark)
        case other:
            return other


def _all_same(ours: Sequence[tuple[str, Node]], theirs: Sequence[tuple[str, Node]]) -> bool:
    return all(one[1] is other[1] for one, other in zip(ours, theirs, strict=True))


def _regrouped(node: Node) -> Node:
    """``a/b × c/d``, read from left to right, as a product of two fractions."""
    match node:
        case Quotient(Product(parts, marks), last, "/") if "×" in marks:
            cut = len(marks) - marks[::-1].index("×")  # what follows the sign stands above the bar
            above: Node = parts[cut]
            if len(parts) > cut + 1:
                above = Product(parts[cut:], marks[cut:])
            return Product((*parts[:cut], Quotient(above, last, "/")), marks[:cut])
        case _:
            return node


def meant(node: Node) -> Node:
    """A problem's tree with its bars as they are meant; brackets stay.

    ``a/b × c/d`` is a product of two fractions. Letters behind a number below a bar that has
    letters above it stand below, too: ``10ab/15b``; ``2/3 x`` stays two thirds of x.
    """
    if Quotient not in kinds(node):
        return node
    match _as_meant(node):
        case Bracket(body, kind):
            return Bracket(meant(body), kind)
        case Positive(body):
            return Positive(meant(body))
        case Negative(body):
            return Negative(meant(body))
        case Sum(parts):
            return Sum(tuple((sign, meant(body)) for sign, body in parts))
        case Product(parts, marks):
            return Product(tuple(map(meant, parts)), marks)
        case Quotient(top, bottom, mark):
            return Quotient(meant(top), meant(bottom), mark)
        case Power(base, exponent):
            return Power(meant(base), exponent)
        case other:
            return other


def _as_meant(node: Node) -> Node:
    found = _regrouped(node)
    below = _letters_below(found) if isinstance(found, Product) else None
    return found if below is None else _as_meant(below)


def _letters_below(whole: Product) -> Node | None:
    """The first number below a bar that has letters above, with the letters behind it below."""
    parts, marks = whole.factors, whole.marks
    for place, part in enumerate(parts):
        if not isinstance(part, Quotient) or part.mark != "/" or symbols(part.bottom):
            continue
        behind = _letters_behind(parts[place + 1 :], marks[place:])
        if behind and symbols(part.top):
            end = place + behind
            under = Product((part.bottom, *parts[place + 1 : end + 1]), ("",) * behind)
            out = (*parts[:place], Quotient(part.top, under, "/"), *parts[end + 1 :])
            left = (*marks[:place], *marks[end:])
            return Product(out, left) if left else out[0]
    return None


def _letters_behind(parts: Sequence[Node], marks: Sequence[str]) -> int:
    """How many letters, or powers of them, follow with no sign between."""
    bases = [part.base if isinstance(part, Power) else part for part in parts]
    followed = zip(bases, marks, strict=True)
    return sum(
        1 for _ in takewhile(lambda one: isinstance(one[0], Symbol) and not one[1], followed)
    )


def _flat_terms(terms: Sequence[tuple[str, Node]]) -> Iterable[tuple[str, Node]]:
    for sign, body in terms:
        inner = _plain_tree(body)
        if sign == "+" and isinstance(inner, Sum):
            yield from inner.terms
        else:
            yield sign, inner


@lru_cache(maxsize=4096)
def terms(node: Node) -> tuple[Signed, ...]:
    """The terms of an expression, each with its sign (1 or -1); a lone term is one."""
    match node:
        case Sum(parts):
            return tuple(signed(body if sign == "+" else Negative(body)) for sign, body in parts)
        case _:
            return (signed(node),)


def summed(parts: Sequence[Signed]) -> Node:
    """The terms as one expression; ``0`` for none."""
    if not parts:
        return Integer("0")
    (sign, body), *rest = parts
    first = Negative(body) if sign < 0 else body
    if not rest:
        return first
    return Sum((("+", first), *(("+" if s > 0 else "-", b) for s, b in rest)))


def factors(node: Node) -> tuple[Node, ...]:
    """The factors of a term as written."""
    return node.factors if isinstance(node, Product) else (node,)


def product(parts: Sequence[Node]) -> Node:
    """The factors as one product, a sign between those that would run together."""
    flat = [factor for part in parts for factor in factors(part)]
    if not flat:
        return Integer("1")
    if len(flat) == 1:
        return flat[0]
    marks = [
        "×" if _fraction(one) or _fraction(other) or _plain(other) else ""
        for one, other in pairwise(flat)
    ]
    return Product(tuple(flat), tuple(marks))


def _fraction(node: Node) -> bool:
    return isinstance(node, Quotient) and bool(symbols(node))


def _plain(node: Node) -> bool:
    return not symbols(node) and not isinstance(node, Sum)


def over(top: Node, bottom: Node) -> Node:
    """A fraction; the top itself where the bottom is 1."""
    return top if bottom == Integer("1") else Quotient(top, bottom, "/")


@lru_cache(maxsize=4096)
def has_fraction(node: Node) -> bool:
    """Whether a fraction bar stands below or above a letter."""
    return Quotient in kinds(node) and any(
        isinstance(part, Quotient) and symbols(part) for part in walk(node)
    )


def whole(value: int) -> Node:
    """A whole number as a tree."""
    return Negative(Integer(str(-value))) if value < 0 else Integer(str(value))


def number_node(value: Fraction) -> Node:
    """A number as an integer or one fraction, its minus before it."""
    top = Integer(str(abs(value.numerator)))
    out: Node = top
    if value.denominator != 1:
        out = Quotient(top, Integer(str(value.denominator)), "/")
    return Negative(out) if value < 0 else out


def letters_node(monomial: Monomial) -> list[Node]:
    """The letters of a monomial as factors: ``x^2``, ``y``."""
    return [
        Symbol(name) if power == 1 else Power(Symbol(name), Integer(str(power)))
        for name, power in in_writing(monomial)
    ]


def term_node(size: Fraction, monomial: Monomial, brackets: Sequence[Node] = ()) -> Node:
    """A term without its sign, ``size`` not negative: ``3x^2y``, ``5x/6``, ``2(x + 1)``."""
    top, below = size.numerator, size.denominator
    parts = [*letters_node(monomial), *brackets]
    if top != 1 or not parts:
        parts.insert(0, Integer(str(top)))
    body = Product(tuple(parts), ("",) * (len(parts) - 1)) if len(parts) > 1 else parts[0]
    return body if below == 1 else Quotient(body, Integer(str(below)), "/")


def polynomial_node(polynomial: Polynomial) -> Node:
    """A polynomial as a person writes it: collected, the highest power first.

    Of two terms the one with a plus comes first: ``13 - 3x``.
    """
    parts = [(size, monomial) for monomial, size in in_order(polynomial)]
    if len(parts) == 2 and parts[0][0] < 0 < parts[1][0]:
        parts.reverse()
    return term_list(parts)


def term_list(parts: Sequence[tuple[Fraction, Monomial]]) -> Node:
    """Terms in the order given, each as a person writes it."""
    return summed([(1 if size > 0 else -1, term_node(abs(size), m)) for size, m in parts if size])


def lone(node: Node) -> Relation:
    """An expression as a line of its own."""
    return Relation((node,))
