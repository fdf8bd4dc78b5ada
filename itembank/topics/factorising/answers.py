"""In which forms may the factorisation be given? The preferred form first."""

from __future__ import annotations

from dataclasses import dataclass

from itembank.algebra.exact import Fraction
from itembank.algebra.polynomials import in_order, plus, scaled
from itembank.algebra.showing import typed
from itembank.algebra.values import Polynomial
from itembank.topics.factorising.plans import Plan, TwoSquares
from itembank.topics.factorising.shapes import Form, Shape, Term, plain, turned, written

Brackets = tuple[tuple[Shape, int], ...]


@dataclass(frozen=True, slots=True)
class Answers:
    """The answer as a shape and as text, and every form of it that the guide lists."""

    shape: Shape
    text: str
    forms: tuple[str, ...]


def answers_of(plan: Plan, form: Form) -> Answers:
    """The factorisation of a problem.

    Where the problem begins with a term that does not lead (``9 - x^2``), the brackets begin with
    theirs, and the minus stands in one of them: ``(3 - x)(3 + x)``.
    """
    if plan.squares is not None:
        return _of_squares(plan, plan.squares)
    found = [(plain_led(value), exponent) for value, exponent in plan.factors.brackets]
    brackets = tuple(sorted(found, key=_in_writing_order))
    leading = Term(plan.factors.content, plan.factors.letters, brackets)
    turned_round = _constants_first(leading)
    first = _first_number(form.shape)
    preferred = turned_round if turned_round and leading.number < 0 < first else leading
    others = [leading, *([turned_round] if turned_round else []), *_reordered(preferred)]
    texts = dict.fromkeys(typed(written((term,))) for term in (preferred, *others))
    texts.update(dict.fromkeys(_repeated(preferred)))
    return Answers((preferred,), next(iter(texts)), tuple(texts))


def _of_squares(plan: Plan, squares: TwoSquares) -> Answers:
    """Each bracket begins with the terms of the square from which the other is taken."""
    brackets = tuple((_laid_out(squares, sign), 1) for sign in (-1, 1))
    preferred = Term(plan.number, plan.letters, brackets)
    leading = tuple((plain_led(value), exponent) for value, exponent in plan.factors.brackets)
    plainest = Term(plan.factors.content, plan.factors.letters, leading)
    all_ = (preferred, *_reordered(preferred), plainest)
    texts = dict.fromkeys(typed(written((term,))) for term in all_)
    return Answers((preferred,), next(iter(texts)), tuple(texts))


def _laid_out(squares: TwoSquares, sign: int) -> Shape:
    """``first + sign second``, its constant last where both have one."""
    value = dict(plus(squares.first, scaled(squares.second, Fraction(sign))))
    both = (*in_order(squares.first), *in_order(squares.second))
    order = list(dict.fromkeys(monomial for monomial, _ in both))
    if squares.overlap and () in order:
        order.remove(())
        order.append(())
    return tuple(Term(value[monomial], monomial) for monomial in order if monomial in value)


def plain_led(value: Polynomial) -> Shape:
    """A polynomial as a sum, the leading term first."""
    return plain(in_order(value))


def _in_writing_order(item: tuple[Shape, int]) -> tuple[int, Fraction, Fraction, Fraction]:
    """Single letters before squares, small numbers before large, minus before plus."""
    inner, _ = item
    degree = max(sum(e for _, e in term.letters) for term in inner)
    return degree, inner[0].number, abs(inner[-1].number), inner[-1].number


def _first_number(shape: Shape) -> Fraction:
    return shape[0].number if shape else Fraction(0)


def _constants_first(term: Term) -> Term | None:
    """A minus in front taken into a bracket that holds one, the last terms first."""
    if term.number > 0:
        return None
    back = tuple((_back(inner), exponent) for inner, exponent in term.brackets)
    for place, (inner, exponent) in enumerate(back):
        if exponent == 1 and inner[-1].number < 0:
            flipped = (*back[:place], (turned(inner[::-1]), 1), *back[place + 1 :])
            return term._replace(number=-term.number, brackets=flipped)
    return None


def _back(inner: Shape) -> Shape:
    """The last term first, unless it has a minus."""
    return inner[::-1] if inner[-1].number > 0 else inner


def _reordered(term: Term) -> list[Term]:
    if len(term.brackets) < 2:
        return []
    return [term._replace(brackets=tuple(reversed(term.brackets)))]


def _repeated(term: Term) -> list[str]:
    """A squared bracket written twice: ``(x + 3)(x + 3)``."""
    if all(exponent == 1 for _, exponent in term.brackets):
        return []
    out: Brackets = ()
    for inner, exponent in term.brackets:
        out += ((inner, 1),) * exponent
    return [typed(written((term._replace(brackets=out),)))]
