"""Which scripts hold the same working? Lines in one way of writing, whatever hand wrote them.

Two scripts with the same canonical working differ in nothing that a mark could hang on: in spaces
and signs of typing, in how a product or a quotient is written, in the kind of bracket, in which
side stands left, in the order of terms, in a word such as ``so`` before a line, in the letter for
the unknown. The form of a number is kept (``22/8`` is not ``11/4``), and so is everything else:
what is not known to be the same is not called the same.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from functools import lru_cache

from itembank.algebra.inside import relation_symbols, symbols
from itembank.algebra.reading import ReadingFault, read_lines
from itembank.algebra.renaming import renamed
from itembank.algebra.showing import typed
from itembank.algebra.written import (
    Bracket,
    Line,
    Negative,
    Node,
    Note,
    Positive,
    Power,
    Product,
    Quotient,
    Relation,
    Sum,
    Symbol,
)
from schemes.verdicts import ScriptLine

UNKNOWN = "x"  # where the problem does not name one

# Words that open a line and say nothing about it; `check`, `again` and their like stay.
_SAYS_NOTHING = frozenset(
    {
        *("so", "therefore", "hence", "thus", "then", "and so", "giving", "gives"),
        *("which gives", "we get", "i.e.", "ie", "now"),
        *("∴", "⇒", "→", "=>", "->", "-->", "..."),
    }
)
_TURNED = {"<": ">", ">": "<", "<=": ">=", ">=": "<="}


def canonical_working(
    lines: Sequence[ScriptLine], problem: str = "", *, comma: bool = False
) -> tuple[str, ...]:
    """The lines of a script as everyone would write them, one text a line of working.

    ``problem`` (typed text) tells which letter is the unknown; with several unknowns each letter
    stays what it is. ``comma`` reads ``3,5`` as a decimal. A crossed-out line says so; one that
    cannot be read stays as it was typed, but for its spaces. Blank lines are left out.
    """
    return _canonical(tuple(lines), problem, comma)


@lru_cache(maxsize=4096)
def _canonical(lines: tuple[ScriptLine, ...], problem: str, comma: bool) -> tuple[str, ...]:
    read = [(line, _read(line.text, comma)) for line in lines]
    letters = _renaming([one for _, found in read for one in found or ()], problem)
    out: list[str] = []
    for line, found in read:
        texts = [_spaced(line.text)] if found is None else [_text(one, letters) for one in found]
        out += [f"[{text}]" if line.crossed_out else text for text in texts if text]
    return tuple(out)


def _read(text: str, comma: bool) -> tuple[Line, ...] | None:
    try:
        return read_lines(text, comma=comma)
    except ReadingFault:
        return None


def _spaced(text: str) -> str:
    return re.sub(r"\s+", " ", text).strip()


def _renaming(lines: Sequence[Line], problem: str) -> dict[str, str]:
    """The letters to be renamed: the one that stands for the unknown throughout (5.9).

    Two letters mixed are renamed only where they are one in two sizes (``X``, ``x``), or where
    the other stands in nothing but the problem copied down.
    """
    given = _relations(_read(problem, False) or ())
    unknowns = frozenset().union(*map(relation_symbols, given))
    if len(unknowns) > 1:
        return {}
    own = next(iter(unknowns), UNKNOWN)
    written = [relation for relation in _relations(lines) if relation not in given]
    used = frozenset().union(*map(relation_symbols, written))
    alone = len(used) == 1 or {letter.lower() for letter in used} == {own.lower()}
    return dict.fromkeys(used, own) if alone else {}


def _relations(lines: Sequence[Line]) -> list[Relation]:
    return [relation for line in lines for relation in line.relations]


def _text(line: Line, letters: dict[str, str]) -> str:
    groups = tuple(
        tuple(_relation(_named(relation, letters)) for relation in group)
        for group in line.alternatives
    )
    notes = tuple(
        Note(note.sign, _node(_named(Relation((note.operand,)), letters).sides[0]))
        for note in line.notes
    )
    heads = tuple(head for head in line.heads if head not in _SAYS_NOTHING)
    text = typed(Line("", groups, line.statement, notes, heads, commas=line.commas))
    return f"{text}   {_spaced(line.label)}" if line.label else text


def _named(relation: Relation, letters: dict[str, str]) -> Relation:
    for old, new in letters.items():
        relation = renamed(relation, old, new)
    return relation


def _relation(relation: Relation) -> Relation:
    """Sides and terms in one order; a computation on numbers stays in the order of its doing."""
    if not relation_symbols(relation):
        return Relation(
            tuple(_node(side, ordered=False) for side in relation.sides), relation.signs
        )
    sides = tuple(_node(side) for side in relation.sides)
    if len(sides) == 2 and _rank(sides[1]) < _rank(sides[0]):
        (sign,) = relation.signs
        return Relation((sides[1], sides[0]), (_TURNED.get(sign, sign),))
    return Relation(sides, relation.signs)


def _rank(node: Node) -> tuple[bool, str]:
    """Letters before numbers, then by how it is typed."""
    return (not symbols(node), typed(node))


def _node(node: Node, *, ordered: bool = True) -> Node:
    def part(inner: Node) -> Node:
        return _node(inner, ordered=ordered)

    match node:
        case Sum(terms):
            found = tuple((sign, part(body)) for sign, body in terms)
            return Sum(_in_order(found) if ordered else found)
        case Product(factors, marks):
            parts = tuple(map(part, factors))
            return Product(parts, tuple(map(_mark, marks, parts[1:])))
        case Quotient(top, bottom):
            return Quotient(part(top), part(bottom), "/")
        case Power(base, exponent):
            return Power(part(base), part(exponent))
        case Negative(body):
            return Negative(part(body))
        case Positive(body):
            return Positive(part(body))
        case Bracket(body):
            return Bracket(part(body))
        case _:
            return node


def _mark(mark: str, factor: Node) -> str:
    """``3 × x`` is ``3x``; between two numbers the sign stays."""
    opening = factor.base if isinstance(factor, Power) else factor
    return "" if isinstance(opening, Symbol | Bracket) else mark


def _in_order(terms: tuple[tuple[str, Node], ...]) -> tuple[tuple[str, Node], ...]:
    """The terms by rank, each with its sign; a minus that comes to the front is its term's own."""
    (first, body), *rest = terms
    if isinstance(body, Negative):
        first, body = "-", body.body
    ranked = sorted([(first, body), *rest], key=lambda term: (_rank(term[1]), term[0]))
    (sign, front), *others = ranked
    return (("+", Negative(front) if sign == "-" else front), *others)
