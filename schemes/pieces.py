"""What is a relation to a problem, whatever stands before it? Asked of the judge once."""

from __future__ import annotations

from contextlib import suppress
from functools import lru_cache
from typing import Any, NamedTuple

from itembank.algebra.exact import Fraction
from itembank.algebra.inside import relation_symbols
from itembank.algebra.joining import is_joined
from itembank.algebra.matching import same_relation, values_put_in
from itembank.algebra.operations import left_to_right
from itembank.algebra.renaming import put_in
from itembank.algebra.values import NoValue, number
from itembank.algebra.written import Product, Quotient, Relation, Sum
from itembank.topics.judging import Answer, Instead, Judge


@lru_cache(maxsize=4096)
def is_given(judge: Judge, relation: Relation) -> bool:
    """Whether the relation is the problem, or a part of it, written down again."""
    return any(same_relation(relation, given) for given in judge.given)


@lru_cache(maxsize=4096)
def answer_of(judge: Judge, relation: Relation) -> Answer | None:
    """The value that a relation states, or None."""
    return judge.answer(relation)


@lru_cache(maxsize=4096)
def form_of(judge: Judge, relation: Relation) -> Any:
    """The form of a relation, or None where it is none of the topic."""
    try:
        return judge.form(relation)
    except NoValue:
        return None


def is_trial(judge: Judge, source: Any, piece: Relation) -> bool:
    """Whether a value is put into a side of the problem (5.6), to see whether it serves.

    ``15 - 8 = 7`` for ``15 - x = 8`` is how 7 is found, no trial of 8.
    """
    right = judge.value_of(source)
    wanted = set(right) if isinstance(right, frozenset | tuple) else {right}
    tried = [
        found
        for given in judge.given
        for side in given.sides
        for ours in piece.sides
        if isinstance(side, Sum | Product | Quotient) and (found := values_put_in(side, ours))
    ]
    finds = _comes_to(piece) in wanted
    return any(not finds or wanted.issuperset(found.values()) for found in tried)


def _comes_to(piece: Relation) -> Fraction | None:
    """The number at the end of a computation; None where that is no single one."""
    try:
        return number(piece.sides[-1])
    except NoValue:
        return None


def ends_in_a_side(judge: Judge, answer: Answer, written: Relation) -> bool:
    """Whether a computation ends in what a side of the problem comes to at a value (5.6)."""
    try:
        return number(written.sides[-1]) in _sides_at(judge, answer)
    except NoValue:
        return False


@lru_cache(maxsize=4096)
def _sides_at(judge: Judge, answer: Answer) -> frozenset[Fraction]:
    """What the sides of a problem in one unknown come to at a value."""
    if len(judge.unknowns) != 1:
        return frozenset()
    (unknown,) = judge.unknowns
    out: set[Fraction] = set()
    for side in (side for given in judge.given for side in given.sides):
        with suppress(NoValue):
            out.add(number(put_in(Relation((side,)), unknown, answer.node).sides[0]))
    return frozenset(out)


class Piece(NamedTuple):
    """A relation as it is judged, with what it is to the problem.

    ``numbers`` tells that no letter stands in it and that it states no value; ``answer`` and
    ``form`` are the judge's, None where it has none; ``given`` tells that it is the problem or a
    part of it, ``identity`` that it holds for every value though its letters do not cancel;
    ``meant`` is the relation as it stands in the order written, where that is another;
    ``otherwise`` what the typed signs can mean as well (``2/3x`` as 2/(3x)).
    """

    relation: Relation
    numbers: bool
    answer: Answer | None
    form: Any
    given: bool
    identity: bool
    meant: Relation | None
    otherwise: tuple[Instead, ...] = ()


@lru_cache(maxsize=4096)
def piece_of(judge: Judge, relation: Relation) -> Piece:
    """What a relation is to the problem."""
    answer = answer_of(judge, relation)
    lone = judge.lone and not relation.signs
    numbers = answer is None and not lone and not relation_symbols(relation)
    if numbers:
        signs = tuple(["=" if sign == "≠" else sign for sign in relation.signs])
        return Piece(Relation(relation.sides, signs), True, None, None, False, False, None)
    form, given = form_of(judge, relation), is_given(judge, relation)
    says_all = form is not None and judge.conclusion_of(form) == "all values"
    identity = says_all and not judge.ended(form) and not is_joined(relation)
    meant = _in_writing_order(relation)
    others = judge.otherwise(relation)
    return Piece(relation, False, answer, form, given, identity, meant, others)


def _in_writing_order(relation: Relation) -> Relation | None:
    """``x = 23 + 7 / 6`` as ``x = (23 + 7)/6``; None where that is how it reads anyway."""
    if len(relation.sides) != 2:
        return None
    first, last = relation.sides
    meant = left_to_right(last)
    return None if meant is None else Relation((first, meant), relation.signs)
