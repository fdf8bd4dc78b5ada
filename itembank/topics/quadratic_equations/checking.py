"""Does SymPy confirm every line of a solution?

Independent of the solver: it reads the typed lines back and does its own arithmetic in SymPy's
ring of polynomials over the rationals, with one more generator for the root of the discriminant
that SymPy finds. A line holds where it is the problem up to a factor, or where the product of its
branches is. SymPy is imported on first use only.
"""

from __future__ import annotations

from functools import lru_cache
from typing import Any

from itembank.algebra.inside import symbols, walk
from itembank.algebra.joining import apart, joined
from itembank.algebra.rationals import has_letter_below
from itembank.algebra.reading import ReadingFault, read_line
from itembank.algebra.written import (
    Bracket,
    Negative,
    Node,
    PlusMinus,
    Positive,
    Power,
    Product,
    Quotient,
    Relation,
    Root,
    Sum,
    Symbol,
)
from itembank.topics.confirming import as_expression, in_sympy
from itembank.topics.kinds import CheckFailed, Solution

Quadratic = tuple[Any, Any, Any]


def check(solution: Solution, unknown: str) -> None:
    """Confirm a solution: each line of each route, the answer and its forms.

    Raises:
        CheckFailed: naming the problem and the line that SymPy does not confirm.
    """
    problem = _relation(solution.problem)
    monic = _monic(problem, unknown, _own_root(problem))
    under = monic[1] ** 2 - 4 * monic[2]
    if (solution.answer == "no solution") != (under < 0):
        raise CheckFailed(f"{solution.problem}: SymPy does not confirm {solution.answer}")
    texts = {line.text for route in solution.routes for line in route.lines}
    for text in sorted({*texts, *solution.forms}):
        if text == "no real solutions":
            agrees = under < 0
        else:
            agrees = _agrees(_relation(text), unknown, monic, under)
        if not agrees:
            raise CheckFailed(f"{solution.problem}: SymPy does not confirm the line {text}")


def _own_root(relation: Relation) -> Any:
    """The number below a root of the problem itself, where it is half solved; 1 where none is."""
    for part in (part for side in relation.sides for part in walk(side)):
        if isinstance(part, Root) and not symbols(part):
            return in_sympy(part.body).coeff(1)
    return _ring()[3](1)


def _relation(text: str) -> Relation:
    try:
        line = read_line(text)
    except ReadingFault as fault:
        raise CheckFailed(f"{text}: {fault}") from fault
    relations = line.relations
    if not relations or line.statement or line.notes:
        raise CheckFailed(f"{text}: no equation")
    return relations[0] if len(relations) == 1 else joined(line.alternatives)


def _agrees(relation: Relation, unknown: str, monic: Quadratic, under: Any) -> bool:
    if not any(symbols(side) == {unknown} for side in relation.sides):
        values = [in_sympy(side) for side in relation.sides[1:]]  # b² - 4ac, worked out
        return all(value == values[0] for value in values)
    return _monic(relation, unknown, under) == monic


@lru_cache(maxsize=1)
def _ring() -> tuple[Any, Any, Any, Any]:
    from sympy import QQ
    from sympy.polys.rings import ring

    polynomials, letter, root = ring("x,r", QQ)
    return polynomials, letter, root, QQ


def _monic(relation: Relation, unknown: str, under: Any) -> Quadratic:
    """The product of a relation's branches with leading coefficient 1: one branch counts twice."""
    polynomials, letter, _, _ = _ring()
    if any(map(has_letter_below, relation.sides)):
        return _without_fractions(relation, unknown)
    sides = []
    for group in apart(relation):
        for part in group:
            for either in (1, -1) if _either(part) else (1,):
                left, right = (_mapped(side, under, either) for side in part.sides)
                sides.append(left - right)
    if len(sides) == 1 and _degree(sides[0], letter) == 1:
        sides *= 2
    whole = polynomials(1)
    for side in sides:
        whole = _reduced(whole * side, under)
    found = [whole.coeff(letter**2), whole.coeff(letter), whole.coeff(1)]
    if not found[0] or whole != found[0] * letter**2 + found[1] * letter + found[2]:
        raise CheckFailed("not a quadratic equation")
    return (found[0] / found[0], found[1] / found[0], found[2] / found[0])


def _without_fractions(relation: Relation, unknown: str) -> Quadratic:
    """The numerator of left minus right in lowest terms, leading coefficient 1."""
    from sympy import Poly, Symbol, cancel, fraction, together

    left, right = (as_expression(side) for side in relation.sides)
    top, _ = fraction(cancel(together(left - right)))
    found = Poly(top, Symbol(unknown)).all_coeffs()
    if len(found) != 3:
        raise CheckFailed("not a quadratic equation")
    rationals = _ring()[3]
    a, b, c = (rationals(int(size.p), int(size.q)) for size in found)
    return (a / a, b / a, c / a)


def _degree(polynomial: Any, letter: Any) -> int:
    return int(polynomial.degree(letter))


def _reduced(whole: Any, under: Any) -> Any:
    """The square of the root's generator is the discriminant."""
    polynomials, letter, root, _ = _ring()
    out = polynomials(0)
    for (power, rooted), size in whole.terms():
        factor = polynomials(under) ** (rooted // 2) if rooted > 1 else polynomials(1)
        out = out + factor * root ** (rooted % 2) * letter**power * size
    return out


def _either(relation: Relation) -> bool:
    return any(_holds_either(side) for side in relation.sides)


def _holds_either(node: Node) -> bool:
    match node:
        case PlusMinus():
            return True
        case Sum(terms):
            return any(sign == "±" or _holds_either(body) for sign, body in terms)
        case Negative(body) | Positive(body) | Bracket(body) | Root(body):
            return _holds_either(body)
        case Product(factors):
            return any(map(_holds_either, factors))
        case Quotient(top, bottom):
            return _holds_either(top) or _holds_either(bottom)
        case _:
            return False


def _mapped(node: Node, under: Any, either: int) -> Any:
    """A side in SymPy's ring; a root is a rational number, or one times the discriminant's root."""
    polynomials, letter, root, rationals = _ring()

    def inner(part: Node) -> Any:
        return _mapped(part, under, either)

    match node:
        case Symbol():
            return letter
        case Root(body):
            square = _number(inner(body))
            size = _rational_root(square, rationals)
            if size is not None:
                return polynomials(size)
            size = _rational_root(square / under, rationals) if under else None
            if size is None:
                raise CheckFailed("a root that is not the discriminant's")
            return size * root
        case PlusMinus(body):
            return either * inner(body)
        case Negative(body):
            return -inner(body)
        case Positive(body) | Bracket(body):
            return inner(body)
        case Sum(terms):
            signs = {"+": 1, "-": -1, "±": either}
            return sum((signs[sign] * inner(body) for sign, body in terms), polynomials(0))
        case Product(factors):
            out = polynomials(1)
            for factor in factors:
                out = out * inner(factor)
            return out
        case Quotient(top, bottom):
            return inner(top) * polynomials(1 / _number(inner(bottom)))
        case Power(base, exponent):
            return inner(base) ** int(_number(inner(exponent)))
        case _:
            return polynomials(in_sympy(node).coeff(1))


def _number(value: Any) -> Any:
    if not value.is_ground:
        raise CheckFailed("an unknown below a fraction bar, below a root or in an exponent")
    return value.coeff(1)


def _rational_root(square: Any, rationals: Any) -> Any:
    from sympy.core.intfunc import isqrt
    from sympy.ntheory.primetest import is_square

    if square < 0:
        return None
    top, bottom = int(square.numerator), int(square.denominator)
    if not (is_square(top) and is_square(bottom)):
        return None
    return rationals(isqrt(top), isqrt(bottom))
