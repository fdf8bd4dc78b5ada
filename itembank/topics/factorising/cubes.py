"""What do two cubes become, rightly and wrongly? ``x^3 + 8``, ``27a^3 - 1``."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from itembank.algebra.exact import Fraction
from itembank.algebra.factoring import common_monomial, whole_root, without_monomial
from itembank.algebra.showing import typed
from itembank.algebra.two_powers import cube_root, sum_of_cubes
from itembank.algebra.values import Polynomial, joined_monomial
from itembank.topics.catalogue import CommonError
from itembank.topics.factorising import cubes_catalogue as known
from itembank.topics.factorising.methods import Line, less, taken_out
from itembank.topics.factorising.plans import Plan
from itembank.topics.factorising.shapes import Shape, Term, value_of, written
from itembank.topics.factorising.slipped import Slipped
from itembank.topics.factorising.square_methods import first_product
from itembank.topics.factorising.stages import CUBE, FULL

ONE = Fraction(1)
Pair = tuple[Term, Term]
Found = tuple[CommonError, tuple[tuple[Shape, int], ...], str]


def by_cubes(shape: Shape, plan: Plan) -> tuple[str, tuple[Line, ...]]:
    """The method's name, and its lines: ``2 - 16y^3`` as ``2(1 - 8y^3)``, ``512 - p^3`` as cubes.

    Where the sum begins with a plus, no minus is taken out of it.
    """
    if shape[0].number > 0:
        plan = replace(plan, number=abs(plan.number))
    lead = taken_out(shape, plan)
    one, other = (
        term._replace(number=term.number / plan.number, letters=less(term.letters, plan.letters))
        for term in shape
    )
    sign, middle = ("+", "-") if one.number * other.number > 0 else ("-", "+")
    name = f"{'sum' if sign == '+' else 'difference'} of two cubes"
    last = f"{name}: (a {sign} b)(a^2 {middle} ab + b^2)"
    text = "" if lead else f"{_cubed(one)} {sign} {_cubed(other)}"
    shown = Line(text, "write each term as a cube" if text else "", "", False, last)
    bare = abs(plan.number) == 1 and not plan.letters
    first = f"{'minus' if bare else 'common factor'} first, then " if lead else ""
    return first + name, (*lead, shown, *first_product(plan, last))


def roots_of(value: Polynomial) -> Pair:
    """The two single terms whose cubes add to a polynomial that is a sum of cubes."""
    roots = sum_of_cubes(value)
    assert roots is not None
    ((one,),), ((other,),) = ((root,) for root in roots)
    return Term(one[1], one[0]), Term(other[1], other[0])


def gives_root_bracket(value: Polynomial, shape: Shape) -> bool:
    """Whether a product has the bracket of the cube roots of a sum of cubes as a factor."""
    rest = without_monomial(value, *common_monomial(value)) if len(value) > 1 else ()
    if len(shape) != 1 or sum_of_cubes(rest) is None:
        return False
    right = value_of(roots_of(rest))
    found = (value_of(inner) for inner, _ in shape[0].brackets)
    return any(without_monomial(one, *common_monomial(one)) == right for one in found if one)


def wrong_cubes(value: Polynomial) -> Iterator[Slipped]:
    """Every wrong product that a sum or a difference of two cubes is taken for."""
    number, letters = common_monomial(value)
    rest = without_monomial(value, number, letters)
    if sum_of_cubes(rest) is None:
        return
    around = Term(number, letters)
    a, b = roots_of(rest)
    for find in (_wrong_signs, _wrong_middles, _wrong_squares, _wrong_roots):
        for error, brackets, stage in find(a, b):
            yield Slipped(error, (around._replace(brackets=brackets),), stage)


def _wrong_signs(a: Term, b: Term) -> Iterator[Found]:
    """A sign of either bracket wrong; the cube of a sum in place of a sum of cubes."""
    yield known.CUBE_OF_SUM, (((a, b), 3),), CUBE
    for middle in (-1, 1):
        yield known.ROOTS_SIGN, (((a, _scaled(b, -1)), 1), (_second(a, b, middle), 1)), CUBE
    for middle, last in ((1, 1), (-1, -1), (1, -1)):
        yield known.CUBES_SIGN, (((a, b), 1), (_second(a, b, middle, last), 1)), FULL


def _wrong_middles(a: Term, b: Term) -> Iterator[Found]:
    """The middle term of the second bracket doubled, or left out."""
    for middle in (-2, 2):
        yield known.MIDDLE_DOUBLED, (((a, b), 1), (_second(a, b, middle), 1)), FULL
    for last in (1, -1):
        yield known.MIDDLE_LEFT_OUT, (((a, b), 1), (_second(a, b, 0, last), 1)), FULL


def _wrong_squares(a: Term, b: Term) -> Iterator[Found]:
    """A number of the roots not squared in the second bracket."""
    first, last = _times(a, a), _times(b, b)
    for one, other in (
        (first._replace(number=abs(a.number)), last),
        (first, last._replace(number=abs(b.number))),
        (first._replace(number=abs(a.number)), last._replace(number=abs(b.number))),
    ):
        if (one, other) != (first, last):
            square = (one, _scaled(_times(a, b), -1), other)
            yield known.ROOT_NOT_SQUARED, (((a, b), 1), (square, 1)), FULL


def _wrong_roots(a: Term, b: Term) -> Iterator[Found]:
    """A number left as it is, divided by 3, or its square root taken, for its cube root."""
    for one, error in _taken_for(a):
        yield error, _pattern(one, b), CUBE
    for other, error in _taken_for(b):
        yield error, _pattern(a, other), CUBE
    for one, error in _taken_for(a):
        for other, same in _taken_for(b):
            if same is error:
                yield error, _pattern(one, other), CUBE


def _taken_for(root: Term) -> Iterator[tuple[Term, CommonError]]:
    cube = root.number**3
    if abs(cube) == 1 or cube.denominator != 1:
        return
    yield root._replace(number=cube), known.CUBE_ROOT_NOT_TAKEN
    if cube % 3 == 0 and cube / 3 != root.number:
        yield root._replace(number=cube / 3), known.DIVIDED_BY_THREE
    square = whole_root(abs(int(cube)))
    if square is not None:
        sign = 1 if cube > 0 else -1
        yield root._replace(number=Fraction(sign * square)), known.SQUARE_ROOT_TAKEN


def _pattern(a: Term, b: Term) -> tuple[tuple[Shape, int], ...]:
    """``(a + b)(a^2 - ab + b^2)``."""
    return ((a, b), 1), (_second(a, b), 1)


def _second(a: Term, b: Term, middle: int = -1, last: int = 1) -> Shape:
    """``a^2 - ab + b^2``, or with other numbers before its last two terms; 0 leaves one out."""
    ends = ((_times(a, b), middle), (_times(b, b), last))
    return (_times(a, a), *(_scaled(term, size) for term, size in ends if size))


def _times(one: Term, other: Term) -> Term:
    return Term(one.number * other.number, joined_monomial(one.letters, other.letters))


def _scaled(term: Term, size: int) -> Term:
    return term._replace(number=size * term.number)


def _cubed(term: Term) -> str:
    """A cube, its sign left out, as the cube of its root: ``27a^3`` as ``(3a)^3``."""
    root = cube_root((term.letters, abs(term.number)))
    assert root is not None
    text = typed(written((Term(root[1], root[0]),)))
    return f"{text}^3" if len(text) == 1 or text.isdigit() else f"({text})^3"
