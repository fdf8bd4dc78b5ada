"""Is a typed problem two linear equations in two unknowns, and in which?"""

from __future__ import annotations

from itembank.algebra.inside import relation_symbols, symbols
from itembank.algebra.reading import read_lines
from itembank.algebra.showing import typed
from itembank.algebra.values import NoValue, polynomial
from itembank.algebra.written import Relation, Symbol
from itembank.topics.kinds import OtherKind, TopicError
from itembank.topics.refusing import refuse_beside
from itembank.topics.simultaneous_equations.lines import Letters, Line, line_of

Pair = tuple[Relation, Relation]


def read_problem(problem: str) -> tuple[Pair, Letters]:
    """The two equations of a typed problem and its letters in the order of the alphabet.

    They stand apart by a comma, ``and``, ``;`` or a line break.

    Raises:
        ReadingFault: where the text cannot be read.
        TopicError: where it is no pair of linear equations in two unknowns; the message says why.
    """
    lines = read_lines(problem, comma=True)
    for line in lines:
        refuse_beside(line)
    relations = [relation for line in lines for relation in line.relations]
    if len(relations) < 2:
        raise _one_line(relations[0] if relations else None)
    if any(not relation.signs for relation in relations):
        raise OtherKind("simultaneous equations need a sign of equality in each")
    if any(relation.signs != ("=",) for relation in relations):
        raise OtherKind("simultaneous equations need one sign = in each")
    if any(len(line.alternatives) > 1 for line in lines):
        raise OtherKind("simultaneous equations hold together; here are alternatives")
    letters = sorted(frozenset().union(*map(relation_symbols, relations)))
    if len(letters) != 2:
        raise _other_letters(letters)
    if len(relations) > 2:
        raise TopicError(f"two equations are enough for two unknowns; here are {len(relations)}")
    one, other = relations
    named = (letters[0], letters[1])
    _checked(one, other, named)
    return (one, other), named


def _one_line(relation: Relation | None) -> TopicError:
    """What is told of one line: two equations, chained, are typed apart."""
    chained = relation is not None and relation.signs == ("=", "=")
    if relation and chained and len(relation_symbols(relation)) == 2 and symbols(relation.sides[1]):
        one, middle, other = (typed(Relation((side,))) for side in relation.sides)
        return TopicError(
            f"two signs of equality and no comma: for a chain type {one} = {other}, "
            f"{middle} = {other}; between two equations put a comma"
        )
    return OtherKind("simultaneous equations are two equations; here is one line only")


def _other_letters(letters: list[str]) -> TopicError:
    named = ", ".join(letters) or "none"
    return TopicError(f"this topic solves two equations in two unknowns; here there are: {named}")


def _checked(one: Relation, other: Relation, letters: Letters) -> None:
    """Raise where an equation is not linear, says nothing, or nothing is left to find."""
    lines = [_line(relation, letters) for relation in (one, other)]
    if any(not any(line.row[:2]) for line in lines):
        raise TopicError("one of the equations holds no unknown once its terms are joined")
    if all(line.place >= 0 for line in lines):
        if lines[0].place == lines[1].place:
            raise TopicError("both equations are about the same unknown")
        raise TopicError(
            "each equation has one unknown: they are two equations of the topic 'linear equations'"
        )


def _line(relation: Relation, letters: Letters) -> Line:
    try:
        return line_of(relation, letters)
    except NoValue as fault:
        raise TopicError(_why(relation, str(fault))) from fault


def _why(relation: Relation, fault: str) -> str:
    """What makes an equation none of this topic's."""
    try:
        monomials = [m for side in relation.sides for m, _ in polynomial(side)]
    except NoValue:
        return f"an equation is not linear: {fault}"
    for monomial in monomials:
        if sum(power for _, power in monomial) > 1:
            shown = "".join(f"{n}^{p}" if p > 1 else n for n, p in monomial)
            return f"an equation is not linear: it holds {shown}; this topic solves linear ones"
    return f"an equation is not linear: {fault}"


def states_value(relation: Relation, line: Line) -> bool:
    """Whether an equation of the problem gives the value of an unknown."""
    return line.place >= 0 and any(isinstance(side, Symbol) for side in relation.sides)
