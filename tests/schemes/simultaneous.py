"""A spike: two equations in two unknowns behind the same judge's interface.

It proves that the explainer and the marker know no topic: a line is judged against a *set* of
equations, and what a right step keeps is the row space. The topic itself is not built here.
"""

from __future__ import annotations

from collections.abc import Hashable, Iterator, Sequence
from dataclasses import dataclass
from functools import cached_property
from itertools import combinations

from itembank.algebra.exact import Fraction
from itembank.algebra.reading import read_line
from itembank.algebra.values import NoValue, number_form, polynomial, symbols
from itembank.algebra.written import Relation, Symbol
from itembank.topics.arithmetic import nameable
from itembank.topics.judging import Answer, Move, Slip, Wrong
from itembank.topics.plain import PlainJudge
from schemes.scheme import MarkPoint, Scheme

ELIMINATED = "one unknown eliminated"
SUBSTITUTED = "the other unknown found"
VALUES = "values"
ORDER = (ELIMINATED, SUBSTITUTED, VALUES)

Row = tuple[Fraction, Fraction, Fraction]  # a x + b y = c
Basis = tuple[Row, ...]
System = tuple[Basis, ...]  # what the pupil can go on from: any one of these pairs of equations


@dataclass(frozen=True)
class SimultaneousJudge(PlainJudge):
    """Judges lines against two linear equations in two unknowns."""

    given: tuple[Relation, ...]

    @cached_property
    def letters(self) -> tuple[str, ...]:
        return tuple(sorted(self.unknowns))

    @cached_property
    def start(self) -> System:
        return (tuple(self.form(relation) for relation in self.given),)

    @property
    def unknowns(self) -> frozenset[str]:
        return frozenset().union(*(symbols(side) for r in self.given for side in r.sides))

    @property
    def stages(self) -> tuple[str, ...]:
        return ORDER

    @property
    def order(self) -> tuple[str, ...]:
        return ORDER

    def split(self, relation: Relation) -> tuple[Relation, ...]:
        if len(relation.sides) <= 2:
            return (relation,)
        pairs = range(len(relation.sides) - 1)
        return tuple(Relation(relation.sides[i : i + 2], ("=",)) for i in pairs)

    def form(self, relation: Relation) -> Row:
        if len(relation.sides) != 2 or relation.signs != ("=",):
            raise NoValue("an equation is expected")
        terms: dict[object, Fraction] = {}
        for side, sign in zip(relation.sides, (1, -1), strict=True):
            for monomial, size in polynomial(side):
                terms[monomial] = terms.get(monomial, Fraction(0)) + sign * size
        wanted = [((letter, 1),) for letter in self.letters]
        if set(terms) - {*wanted, ()}:
            raise NoValue("not linear in the two unknowns")
        a, b = (terms.get(monomial, Fraction(0)) for monomial in wanted)
        return (a, b, -terms.get((), Fraction(0)))

    def key(self, form: Row) -> Hashable:
        lead = next((size for size in form if size), Fraction(1))
        return tuple(size / lead for size in form)

    def keeps(self, source: System | Row, form: Row) -> bool:
        if isinstance(source[0], Fraction):
            return self.key(source) == self.key(form)
        return any(_spans(basis, form) for basis in source)

    def follows(self, source: System | Row, form: Row) -> int | None:
        return 0 if self.keeps(source, form) and any(form[:2]) else None

    def onward(self, source: System, form: Row) -> System:
        if self.keeps(source, form):
            return tuple((*basis, form) for basis in source if _spans(basis, form))
        rows = {row for basis in source for row in basis}
        return tuple((row, form) for row in sorted(rows) if not _spans((row,), form))

    def path(self, source: System, form: Row) -> tuple[Move, ...]:
        if not all(form[:2]):
            return (Move("eliminate", ELIMINATED, "eliminate one unknown"),)
        return (Move("rewrite", "", "write an equation in another form"),)

    def wrongs(self, source: System) -> Iterator[Wrong]:
        """Equations added or subtracted with the wrong sign on one of the three terms."""
        rows = {row for basis in source for row in basis}
        for one, other in combinations(sorted(rows), 2):
            for sign in (1, -1):
                for place in range(3):
                    signs = [-sign if k == place else sign for k in range(3)]
                    mixed = [a + s * b for a, b, s in zip(one, other, signs, strict=True)]
                    after = (mixed[0], mixed[1], mixed[2])
                    name = "sign lost in combining"
                    words = "a term is added where it should be subtracted, or the other way"
                    yield Wrong(name, words, (ELIMINATED,), (), after)

    def fits(self, wrong: Wrong, form: Row) -> int | None:
        return 0 if self.key(wrong.after) == self.key(form) else None

    def slip(self, source: System, form: Row) -> Slip | None:
        for a, b in {(1, 1), (1, -1), (-1, 1)}:
            for one, other in combinations({row for basis in source for row in basis}, 2):
                right = [a * p + b * q for p, q in zip(one, other, strict=True)]
                wrong = [(g, r) for g, r in zip(form, right, strict=True) if g != r]
                if len(wrong) == 1 and nameable(*wrong[0]):
                    return Slip("slip", nameable(*wrong[0]), (ELIMINATED,), 0)
        return None

    def reached(self, source: System, form: Row) -> frozenset[str]:
        out = set()
        if not all(form[:2]) and any(form[:2]):
            out.add(ELIMINATED)
            known = {_alone(row) for basis in source for row in basis} - {None}
            if known - {_alone(form)}:
                out.add(SUBSTITUTED)
        return frozenset(out)

    def ended(self, form: Row) -> bool:
        return not any(form[:2])

    def answer(self, relation: Relation) -> Answer | None:
        left, right = relation.sides[0], relation.sides[-1]
        if len(relation.sides) != 2 or not isinstance(left, Symbol) or symbols(right):
            return None
        if number_form(right) is None:
            return None
        value = dict(polynomial(right)).get((), Fraction(0))
        return Answer(right, (value,), working=True, of=left.name)

    def together(self, answers: Sequence[Answer]) -> Answer | None:
        found = {answer.of: answer.values[0] for answer in answers}
        if set(found) != set(self.letters):
            return None
        pair = tuple(found[letter] for letter in self.letters)
        return Answer(answers[-1].node, (pair,))

    def value_of(self, form: System) -> Hashable | None:
        (a, b, c), (d, e, f) = form[0][:2]
        det = a * e - b * d
        return ((c * e - b * f) / det, (a * f - c * d) / det) if det else None

    def show(self, form: Row) -> str:
        return " + ".join(map(str, form))

    def misread(self, relation: Relation) -> None:
        return None


def _alone(row: Row) -> int | None:
    """Which unknown stands by itself in an equation."""
    if all(row[:2]) or not any(row[:2]):
        return None
    return 0 if row[0] else 1


def _spans(basis: Sequence[Row], form: Row) -> bool:
    """Whether an equation is a combination of others: their rank does not grow."""
    return _rank([*basis, form]) == _rank(list(basis))


def _rank(rows: list[Row]) -> int:
    left, rank = [list(row) for row in rows], 0
    for column in range(3):
        pivot = next((row for row in left if row[column]), None)
        if pivot is None:
            continue
        left.remove(pivot)
        rank += 1
        for row in left:
            size = row[column] / pivot[column]
            row[:] = [value - size * p for value, p in zip(row, pivot, strict=True)]
    return rank


def judge(*equations: str) -> SimultaneousJudge:
    return SimultaneousJudge(tuple(read_line(text).alternatives[0][0] for text in equations))


def scheme(problem: str) -> Scheme:
    points = (
        MarkPoint("M1", "M", 1, ELIMINATED),
        MarkPoint("M2", "M", 1, SUBSTITUTED),
        MarkPoint("A1", "A", 1, VALUES, ("M1", "M2")),
    )
    return Scheme(problem, "simultaneous equations", points)
