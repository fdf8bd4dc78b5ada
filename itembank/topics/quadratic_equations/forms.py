"""What does a line of a quadratic equation's working say? Its polynomial, or its branches.

A line is an equation of the second degree, or *branches*: linear equations joined with ``or`` or
``±`` (``x - 2 = 0 or x + 5 = 0``, ``x - 3 = ±√7``, a formula with numbers put in). Both have one
*key*: the sum and the product of the solutions, so that a right step is one that keeps the key.
"""

from __future__ import annotations

from collections.abc import Hashable
from dataclasses import dataclass
from functools import lru_cache

from itembank.algebra.either import holds_either
from itembank.algebra.exact import Fraction
from itembank.algebra.inside import relation_symbols, symbols, walk
from itembank.algebra.joining import apart, is_joined
from itembank.algebra.surds import Exact, Surd, exact_value, holds_root
from itembank.algebra.values import NoValue, polynomial
from itembank.algebra.written import Decimal, Integer, Node, Relation, Symbol
from itembank.topics.quadratic_equations.clearing import cleared_poly, has_unknown_below
from itembank.topics.quadratic_equations.linear import branch_values
from itembank.topics.quadratic_equations.polys import ONE, NotQuadratic, Poly, difference, roots
from itembank.topics.quadratic_equations.shapes import (
    BESIDE,
    BRANCH,
    BRANCHES,
    FRACTIONS,
    IDENTITY,
    letter_factors,
    shape_of,
)

NAMES = frozenset("abcD")
"""Letters by which pupils call the numbers of ``ax² + bx + c`` and its discriminant."""

DISCRIMINANT = Symbol("D")


@dataclass(frozen=True, eq=False, slots=True)
class Form:
    """A line as it is judged: the relation, what it says, and how it is written.

    ``poly`` is left minus right as ``(a, b, c)``, None for branches; ``values`` are those of the
    branches, in order; ``shape`` is one of the names above. Two forms are equal where their
    relations are.
    """

    relation: Relation
    poly: Poly | None
    values: tuple[Exact, ...]
    key: Hashable
    shape: str

    def __eq__(self, other: object) -> bool:
        return self is other or (isinstance(other, Form) and self.relation == other.relation)

    def __hash__(self) -> int:
        return hash(self.relation)


@dataclass(frozen=True, slots=True)
class Known:
    """What the next line is judged against where one branch stands alone: the line it came from,
    the values found so far, and the branch itself."""

    base: Form
    found: frozenset[Exact]
    last: Form


@lru_cache(maxsize=4096)
def form_of(relation: Relation, unknown: str) -> Form:
    """The form of a relation, joined or not.

    Raises:
        NotQuadratic: for another degree or another letter.
        NoValue: where a part has no exact value.
    """
    if is_joined(relation):
        parts = [part for group in apart(relation) for part in group]
        values = tuple(value for part in parts for value in branch_values(part, unknown))
        return Form(relation, None, values, key_of(values), BRANCHES)
    letters = relation_symbols(relation)
    if letters & (NAMES - {unknown}):
        return _beside(relation, letters, unknown)
    if not relation.signs:
        return _lone(relation, unknown)
    if len(relation.sides) != 2 or relation.signs[0] not in ("=", "≈"):
        raise NotQuadratic("an equation is expected")
    if not letters:
        raise NotQuadratic("no unknown is left")
    if has_unknown_below(relation):
        return _fractions_form(relation, unknown)
    if _plain(relation):
        return _polynomial_form(relation, unknown)
    values = branch_values(relation, unknown)
    shape = BRANCHES if len(values) > 1 else BRANCH
    return Form(relation, None, values, key_of(values), shape)


def _plain(relation: Relation) -> bool:
    """Whether both sides are polynomials with rational coefficients."""
    try:
        for side in relation.sides:
            polynomial(side)
    except NoValue:
        if not any(holds_either(side) or holds_root(side) for side in relation.sides):
            raise
        return False
    return True


def _polynomial_form(relation: Relation, unknown: str) -> Form:
    a, b, c = poly = difference(relation, unknown)
    if a:
        shape = shape_of(relation, unknown)
        return Form(relation, poly, (), poly_key(poly), shape)
    if b:
        value = -c / b
        return Form(relation, None, (value,), key_of((value,)), BRANCH)
    if c:
        raise NotQuadratic("the unknown is lost and the numbers are not equal")
    return Form(relation, None, (), IDENTITY, IDENTITY)


def _fractions_form(relation: Relation, unknown: str) -> Form:
    """An equation with the unknown below a bar: what it is once the fractions are cleared."""
    poly = cleared_poly(relation, unknown)
    if poly[0]:
        return Form(relation, poly, (), poly_key(poly), FRACTIONS)
    if not poly[1]:
        raise NotQuadratic("no unknown is left")
    value = -poly[2] / poly[1]
    return Form(relation, None, (value,), key_of((value,)), BRANCH)


def _lone(relation: Relation, unknown: str) -> Form:
    """``(x - 2)(x + 5)`` by itself stands for the equation; other expressions are none."""
    side = relation.sides[0]
    if symbols(side) != {unknown} or len(letter_factors(side, unknown)) != 2:
        raise NotQuadratic("an expression by itself")
    whole = Relation((side, Integer("0")), ("=",))
    found = _polynomial_form(whole, unknown)
    return Form(relation, found.poly, found.values, found.key, found.shape)


def _beside(relation: Relation, letters: frozenset[str], unknown: str) -> Form:
    """``b² - 4ac = 9 + 8``: the discriminant worked out; ``a = 2``: a number named."""
    if unknown in letters or len(relation.sides) < 2:
        raise NotQuadratic("letters that are not in the problem")
    left = relation.sides[0]
    equal = next((n for n, sign in enumerate(relation.signs) if sign != "="), len(relation.signs))
    try:
        value = exact_value(relation.sides[equal])  # ``= 9 - 28 = -19 < 0``: what stands before
    except NoValue:
        return Form(relation, None, (), (BESIDE,), BESIDE)
    if isinstance(value, Fraction) and (left == DISCRIMINANT or _is_discriminant(left)):
        return Form(relation, None, (value,), (BESIDE, value), BESIDE)
    return Form(relation, None, (), (BESIDE,), BESIDE)


_DISCRIMINANT = {
    ((("b", 2),), ONE),
    ((("a", 1), ("c", 1)), Fraction(-4)),
}


def _is_discriminant(node: Node) -> bool:
    try:
        return set(polynomial(node)) == _DISCRIMINANT
    except NoValue:
        return False


def poly_key(poly: Poly) -> Hashable:
    """The key of an equation of the second degree."""
    a, b, c = poly
    return pair_key(-b / a, c / a)


def pair_key(total: Exact, product: Exact) -> Hashable:
    """The key of two values by their sum and their product."""
    return ("values", total, product)


@lru_cache(maxsize=4096)
def key_of(values: tuple[Exact, ...]) -> Hashable:
    """The sum and the product of two values (one value counts twice); else the values."""
    distinct = tuple(dict.fromkeys(values))
    if len(distinct) > 2:
        return ("values", frozenset(distinct))
    one, other = distinct[0], distinct[-1]
    try:
        return pair_key(one + other, one * other)
    except NoValue:
        return ("values", frozenset(distinct))


@lru_cache(maxsize=4096)
def solutions(form: Form) -> tuple[Exact, ...]:
    """The real solutions, the larger first; none where there is none.

    Raises:
        NoValue: where the radicand is too large.
    """
    if form.poly is None:
        return tuple(dict.fromkeys(v for v in form.values if is_real(v)))
    return roots(form.poly)


def is_real(value: Exact) -> bool:
    """Whether a value is no root of a negative number."""
    return not isinstance(value, Surd) or value.radicand > 0


def holds_decimal(form: Form) -> bool:
    """Whether a decimal stands in a line."""
    return any(isinstance(part, Decimal) for side in form.relation.sides for part in walk(side))
