"""How is a written tree typed?

Law: reading ``typed(tree)`` gives the same tree, for every tree that the reader makes. A tree put
together by a program may need a bracket that it does not hold (a :class:`Quotient` whose top is a
bare :class:`Sum`): the bracket is typed all the same, so that the value is kept, and the text then
reads back with an explicit :class:`Bracket` there. Programs that want the very same tree back put
the :class:`Bracket` into the tree.
"""

from __future__ import annotations

from itertools import pairwise

from itembank.algebra.written import (
    Bracket,
    CutShort,
    Decimal,
    Integer,
    Line,
    Mixed,
    Negative,
    Node,
    Note,
    Positive,
    Power,
    Product,
    Quotient,
    Recurring,
    Relation,
    Sum,
    Symbol,
)

CLOSING = {"(": ")", "[": "]", "{": "}"}
DOT_ABOVE = "\u0307"
OVERLINE = "\u0305"

_ATOMS = (Integer, Decimal, Symbol, Bracket)
_ENDS_APART = (Quotient, Mixed, Recurring, CutShort)


def typed(written: Node | Relation | Line) -> str:
    """Return the typed text of an expression, a relation or a whole line (``(x + 2)/3 = 5``)."""
    match written:
        case Line():
            return _line(written)
        case Relation(sides, signs):
            return _chain(sides, signs)
        case _:
            return _node(written)


def typed_note(note: Note) -> str:
    """Return the typed text of an operation noted beside a line: ``(+7)``."""
    return f"({note.sign}{_node(note.operand)})"


def is_single(node: Node) -> bool:
    """Say whether a node holds together by itself, beside any operation: a number, letter, bracket.

    Mixed numbers and marked recurring decimals do not: ``2 3/4`` falls apart under a power.
    """
    return isinstance(node, _ATOMS)


def _line(line: Line) -> str:
    alternatives = (" and ".join(map(typed, relations)) for relations in line.alternatives)
    said = [*line.heads, " or ".join(alternatives), line.statement]
    text = " ".join(part for part in said if part)
    return "   ".join([text, *map(typed_note, line.notes)]).strip()


def _chain(sides: tuple[Node, ...], signs: tuple[str, ...]) -> str:
    text = _node(sides[0])
    for sign, side in zip(signs, sides[1:], strict=True):
        text += f" {sign} {_node(side)}"
    return text


def _node(node: Node) -> str:
    match node:
        case Integer(text) | Decimal(text) | Symbol(text):
            return text
        case Recurring() | CutShort():
            return _unending(node)
        case Mixed(whole, top, bottom):
            return f"{whole} {top}/{bottom}"
        case Negative(body):
            return f"-{_guarded(body, isinstance(body, Sum))}"
        case Positive(body):
            return f"+{_guarded(body, isinstance(body, Sum))}"
        case Sum(terms):
            return _sum(terms)
        case Product(factors, marks):
            return _product(factors, marks)
        case Quotient(top, bottom, mark):
            return _quotient(top, bottom, mark)
        case Power(base, exponent):
            return f"{_guarded(base, not is_single(base))}^{_exponent(exponent)}"
        case Bracket(body, kind):
            return f"{kind}{_node(body)}{CLOSING[kind]}"


def _guarded(node: Node, needs_bracket: bool) -> str:
    """Type a node, in a bracket where the text around it would otherwise change the value."""
    return f"({_node(node)})" if needs_bracket else _node(node)


def _unending(number: Recurring | CutShort) -> str:
    if isinstance(number, CutShort):
        return number.text if number.text.endswith(("...", "…")) else f"{number.text}..."
    block, plain = number.block, number.plain
    match number.mark:
        case "dot" if len(block) == 1:
            return f"{plain}{block}{DOT_ABOVE}"
        case "dot":
            return f"{plain}{block[0]}{DOT_ABOVE}{block[1:]}{DOT_ABOVE}"
        case "bar":
            return plain + "".join(digit + OVERLINE for digit in block)
        case "word":
            return f"{plain}{block * number.repeats} recurring"
        case _:
            return f"{plain}{block * number.repeats}..."


def _sum(terms: tuple[tuple[str, Node], ...]) -> str:
    first, *rest = terms
    text = _guarded(first[1], isinstance(first[1], Sum))
    for sign, term in rest:
        text += f" {sign} {_guarded(term, isinstance(term, Sum))}"
    return text


def _product(factors: tuple[Node, ...], marks: tuple[str, ...]) -> str:
    text = _guarded(factors[0], isinstance(factors[0], Sum))
    for (before, factor), mark in zip(pairwise(factors), marks, strict=True):
        if mark:
            text += f" {mark} {_guarded(factor, isinstance(factor, Sum))}"
        else:
            gap = " " if isinstance(before, _ENDS_APART) else ""
            text += gap + _guarded(factor, not _joins(factor))
    return text


def _joins(factor: Node) -> bool:
    """Say whether an implied factor can be read behind another: not in ``3 4``, ``3 1/4``, ``3-2``.

    A letter or a bracket has to open it.
    """
    opening = _node(factor)[0]
    return not isinstance(factor, Sum) and (opening.isalpha() or opening in CLOSING)


def _quotient(top: Node, bottom: Node, mark: str) -> str:
    """Type a division; multiplying and dividing are read from left to right with equal rank."""
    bar = mark == "/"
    above = _guarded(top, isinstance(top, Sum) or (bar and isinstance(top, Mixed)))
    loose = (Sum, Product, Quotient, Mixed) if bar else (Sum, Product, Quotient)
    below = _guarded(bottom, isinstance(bottom, loose))
    return f"{above}/{below}" if bar else f"{above} ÷ {below}"


def _exponent(exponent: Node) -> str:
    match exponent:
        case Negative(body) if is_single(body):
            return f"-{_node(body)}"
        case _:
            return _guarded(exponent, not is_single(exponent))
