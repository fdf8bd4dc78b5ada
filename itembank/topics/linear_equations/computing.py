"""What does a computation on numbers alone do to an equation?

``37 - 9 = 28`` beside ``4x + 9 = 37`` is the operation that takes 9 from both sides; what goes on
is the pupil's own result, ``4x = 28`` (conventions 5.5).
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import NamedTuple

from itembank.algebra.exact import Fraction
from itembank.algebra.values import number
from itembank.algebra.written import Bracket, Negative, Node, Product, Quotient, Sum
from itembank.topics.catalogue import DROPPED, EXCHANGED, KEPT_SIGN, CommonError
from itembank.topics.judging import Worked, Wrong
from itembank.topics.linear_equations.equations import Equation
from itembank.topics.linear_equations.spelling import spell, spell_term
from itembank.topics.linear_equations.stages import BRACKETS, CONSTANTS, FRACTIONS, UNKNOWN, VALUE
from itembank.topics.parts import GROUP, LETTER, NUMBER, Part, Parts, holds_letter, multiplied_out

RIGHT, COEFFICIENT, PLUS, MINUS = "right", "coefficient", "plus", "minus"

Operation = tuple[str, Fraction, Fraction]


class Undoing(NamedTuple):
    """An operation on numbers that a line invites: its spellings, what follows, the error in it.

    ``place`` tells where the pupil's result goes: the constant on the right, the unknown's
    coefficient, or one more constant on the left (positive or negative).
    """

    spellings: frozenset[Operation]
    stage: str
    words: str
    after: Equation
    place: str
    error: Wrong | None = None


def worked(form: Equation, node: Node, result: Fraction, unknown: str) -> Worked | None:
    """The computation ``node`` with the pupil's ``result`` as an operation on ``form``, or None."""
    operation = _operation(node)
    if operation is None:
        return None
    for undoing in _undoings(form, unknown):
        if operation in undoing.spellings:
            after = _with_result(undoing, result)
            return Worked(after, undoing.stage, undoing.words, undoing.error)
    return None


def _operation(node: Node) -> Operation | None:
    """The one operation of a computation, its sign and its two numbers."""
    while isinstance(node, Bracket):
        node = node.body
    match node:
        case Sum(((_, first), (sign, second))):
            left, right = number(first), number(second)
            return ("-", left, -right) if sign == "+" and right < 0 else (sign, left, right)
        case Product((first, second)):
            return ("×", number(first), number(second))
        case Quotient(top, bottom):
            return ("÷", number(top), number(bottom))
        case Negative(body):
            inner = _operation(body)
            return inner and (inner[0], -inner[1], inner[2])
        case _:
            return None


def _with_result(undoing: Undoing, result: Fraction) -> Equation:
    """The pupil's own result in the place of the right one."""
    if undoing.place in (PLUS, MINUS):
        size = abs(result) if undoing.place == PLUS else -abs(result)
        return Equation(((*undoing.after.left, Part(size, NUMBER)), undoing.after.right))
    if undoing.place == COEFFICIENT:
        letters = tuple(
            Part(result, LETTER) if part.kind == LETTER else part for part in undoing.after.left
        )
        return Equation((letters, undoing.after.right))
    return Equation((undoing.after.left, (Part(result, NUMBER),)))


def _undoings(form: Equation, unknown: str) -> Iterator[Undoing]:
    for left, right in (form, (form.right, form.left)):
        if any(holds_letter(part) for part in right) or not any(map(holds_letter, left)):
            continue
        m = sum((part.worth for part in right), Fraction(0))
        yield from _one_sided(left, m)
    yield from _expanding(form)
    yield from _collecting(form, unknown)


def _one_sided(left: Parts, m: Fraction) -> Iterator[Undoing]:
    """``left = m`` with the unknown on the left alone."""
    letters = tuple(part for part in left if holds_letter(part))
    p = sum((part.worth for part in left if not holds_letter(part)), Fraction(0))
    if p and len(letters) == 1:
        yield from _constant(letters, p, m)
    elif not p and len(letters) == 1:
        yield from _factor(letters[0], m)


def _constant(letters: Parts, p: Fraction, m: Fraction) -> Iterator[Undoing]:
    after = Equation((letters, (Part(m - p, NUMBER),)))
    what = f"subtract {spell(p)} from" if p > 0 else f"add {spell(-p)} to"
    right = _spellings(m, -p)
    yield Undoing(right, CONSTANTS, f"{what} both sides", after, RIGHT)
    part = letters[0]
    if part.kind == LETTER and part.worth < 0:
        turned = Equation(((part._replace(factor=-part.factor),), (Part(p - m, NUMBER),)))
        yield Undoing(_spellings(p, -m), CONSTANTS, f"{what} both sides", turned, RIGHT)
    else:
        yield Undoing(
            _spellings(p, -m), CONSTANTS, EXCHANGED.words, after, RIGHT, _error(EXCHANGED)
        )
    yield Undoing(_spellings(m, p), CONSTANTS, KEPT_SIGN.words, after, RIGHT, _error(KEPT_SIGN))
    if part.worth not in (0, 1):
        bare = Equation(
            ((part._replace(factor=Fraction(1), over=1),), (Part(m / part.worth, NUMBER),))
        )
        division = frozenset({("÷", m, part.worth)})
        yield Undoing(division, CONSTANTS, DROPPED.words, bare, RIGHT, _error(DROPPED))


def _factor(part: Part, m: Fraction) -> Iterator[Undoing]:
    bare = part._replace(factor=Fraction(1), over=1)
    if part.over > 1:
        stage = FRACTIONS if part.kind == GROUP else VALUE
        cleared = Equation((_opened(part._replace(over=1)), (Part(m * part.over, NUMBER),)))
        spelt = frozenset({("×", m, Fraction(part.over)), ("×", Fraction(part.over), m)})
        yield Undoing(spelt, stage, f"multiply both sides by {part.over}", cleared, RIGHT)
        if abs(part.factor) == 1:
            return
    if part.worth in (0, 1):
        return
    stage = BRACKETS if part.kind == GROUP else VALUE
    after = Equation((_opened(bare), (Part(m / part.worth, NUMBER),)))
    words = f"divide both sides by {spell(part.worth)}"
    yield Undoing(frozenset({("÷", m, part.worth)}), stage, words, after, RIGHT)
    if part.worth.denominator > 1:
        k = 1 / part.worth
        yield Undoing(frozenset({("×", m, k), ("×", k, m)}), stage, words, after, RIGHT)


def _opened(part: Part) -> Parts:
    """A bracket that nothing multiplies stands open."""
    return part.inner if part.kind == GROUP and part.worth == 1 else (part,)


def _expanding(form: Equation) -> Iterator[Undoing]:
    """``4 × 3 = 12`` beside ``4(x + 3) = 22``: the product of the factor and the number inside."""
    for side, other in ((form.left, form.right), (form.right, form.left)):
        groups = [part for part in side if part.kind == GROUP]
        if len(groups) != 1 or groups[0].over != 1:
            continue
        group = groups[0]
        inside = [part for part in group.inner if part.kind == NUMBER]
        if len(inside) != 1:
            continue
        f, n = group.factor, inside[0].worth
        spelt = frozenset({("×", f, n), ("×", n, f), ("×", abs(f), abs(n)), ("×", abs(n), abs(f))})
        letters = multiplied_out(
            (group._replace(inner=tuple(p for p in group.inner if p not in inside)),)
        )
        rest = tuple(part for part in side if part.kind != GROUP)
        after = Equation(((*letters, *rest), other))
        yield Undoing(spelt, BRACKETS, "expand the brackets", after, PLUS if f * n > 0 else MINUS)


def _collecting(form: Equation, unknown: str) -> Iterator[Undoing]:
    """``6 - 2 = 4`` on the coefficients of ``6x + 5 = 2x - 9``."""
    a, b, c, d = form.balance
    if a and c:
        after = Equation(((Part(a - c, LETTER), *_constant_part(b)), _constant_part(d)))
        words = f"collect the terms: {spell_term(a, unknown)} and {spell_term(c, unknown)}"
        yield Undoing(_spellings(a, -c), UNKNOWN, words, after, COEFFICIENT)
        yield Undoing(
            _spellings(a, c), UNKNOWN, KEPT_SIGN.words, after, COEFFICIENT, _error(KEPT_SIGN)
        )


def _constant_part(value: Fraction) -> Parts:
    return (Part(value, NUMBER),) if value else ()


def _spellings(first: Fraction, second: Fraction) -> frozenset[Operation]:
    """The ways to write ``first + second`` as one operation."""
    out = {("+", first, second), ("+", second, first)}
    if second < 0:
        out = {("-", first, -second), ("+", second, first)}
    elif first < 0:
        out |= {("-", second, -first)}
    return frozenset(out)


def _error(error: CommonError) -> Wrong:
    return Wrong(error.name, error.words, (), (), None)
