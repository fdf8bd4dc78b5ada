"""What is a wrong line that no common error explains? One number wrong, or brackets that miss."""

from __future__ import annotations

from itembank.algebra.exact import Fraction
from itembank.algebra.factoring import common_monomial, without_monomial
from itembank.algebra.polynomials import divided_monomial
from itembank.topics.arithmetic import nameable
from itembank.topics.factorising.catalogue import NOT_COMMON, TERMS_DO_NOT_MATCH, WRONG_PAIR
from itembank.topics.factorising.cubes import gives_root_bracket
from itembank.topics.factorising.first_brackets import factorises_twice
from itembank.topics.factorising.shapes import Form
from itembank.topics.factorising.stages import (
    BRACKET,
    COMMON,
    CUBE,
    FULL,
    GROUPED,
    PAIR,
    PRODUCT,
    SQUARE,
)
from itembank.topics.judging import Slip, Wrong

ENOUGH = 2  # terms of a quadratic that two brackets give right, for the method (section 2)


def one_number_wrong(source: Form, form: Form) -> Slip | None:
    """One coefficient of the multiplied-out line wrong by one nameable error.

    In a product of two brackets a wrong number is no slip of writing: see :func:`unmatched`.
    """
    if any(term.multiplicity > 1 for term in form.shape) or not _is_common(source, form):
        return None
    right, got = dict(source.value), dict(form.value)
    if set(right) != set(got):
        return None
    wrong = [(got[m], right[m]) for m in right if got[m] != right[m]]
    if len(wrong) != 1:
        return None
    name = nameable(*wrong[0])
    if not name:
        return None
    words = f"multiplied out, {wrong[0][0]} should be {wrong[0][1]}: {name}"
    kind = "miscopy" if _is_carried_over(form, wrong[0][0]) else "slip"
    return Slip(kind, words, (COMMON, PAIR, GROUPED), 0)


def _is_carried_over(form: Form, size: Fraction) -> bool:
    """Whether a wrong number stands in a term of a plain sum that nothing was done to (3.14)."""
    plain = all(not term.brackets and term.numbers < 2 for term in form.shape)
    return plain and any(term.number == size for term in form.shape)


def _is_common(source: Form, form: Form) -> bool:
    """Whether what stands before a bracket divides every term of the line before."""
    if len(form.shape) != 1 or not form.shape[0].multiplicity or not source.value:
        return True
    term = form.shape[0]
    number, letters = common_monomial(source.value)
    return (
        bool(term.number)
        and (number / term.number).denominator == 1
        and (divided_monomial(letters, term.letters) is not None)
    )


def unmatched(source: Form, form: Form) -> Wrong | None:
    """A product that is not the expression and that no common error explains.

    Two brackets are worth the method where two of three terms are right; a single bracket after a
    factor that is not common is worth nothing.
    """
    if len(form.shape) != 1 or not form.shape[0].multiplicity:
        return None
    if form.shape[0].multiplicity == 1:
        if _is_common(source, form):
            return None
        return Wrong(NOT_COMMON.name, NOT_COMMON.words, (COMMON,), (), form)
    if gives_root_bracket(source.value, form.shape):
        return Wrong(TERMS_DO_NOT_MATCH.name, TERMS_DO_NOT_MATCH.words, (FULL,), (), form)
    right, got = dict(source.value), dict(form.value)
    matching = sum(got.get(monomial) == size for monomial, size in right.items())
    if len(right) == 3 and matching >= ENOUGH:
        words = f"the brackets give {matching} of the 3 terms"
        stage = PRODUCT if _twice(source) else FULL
        return Wrong(WRONG_PAIR.name, words, (stage,), (), form)
    outside = Fraction(form.shape[0].number), form.shape[0].letters
    taken_out = () if source.value and outside == common_monomial(source.value) else (COMMON,)
    error = TERMS_DO_NOT_MATCH
    removed = (*taken_out, GROUPED, BRACKET, SQUARE, CUBE, PRODUCT)
    return Wrong(error.name, error.words, (PAIR,), removed, form)


def _twice(source: Form) -> bool:
    """Whether the line before factorises further after its first two brackets."""
    number, letters = common_monomial(source.value)
    return factorises_twice(without_monomial(source.value, number, letters))
