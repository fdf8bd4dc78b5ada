"""How is a written tree typed?

Law: reading ``typed(tree)`` gives the same tree, for every tree that the reader makes. A tree put
together by a program may need a bracket that it does not hold (a :class:`Quotient` whose top is a
bare :class:`Sum`): the bracket is typed all the same, so that the value is kept, and the text then
reads back with an explicit :class:`Bracket` there. Programs that want the very same tree back put
the :class:`Bracket` into the tree.

Multiplying and dividing have one rank and are read from left to right, so ``3 × 7/9`` is three
sevens over nine: a :class:`Quotient` typed as a later factor reads back as another tree of the
same value. MathML and spoken words have modules of their own beside this one.
"""

from __future__ import annotations

import re
from collections.abc import Callable
from typing import Any

from itembank.algebra.grammar import CLOSED, CLOSING
from itembank.algebra.joining import between, between_alternatives
from itembank.algebra.tokens import VULGAR, is_word
from itembank.algebra.written import (
    Bracket,
    CutShort,
    Decimal,
    Infinity,
    Integer,
    Interval,
    Line,
    Listed,
    Mixed,
    Negative,
    Node,
    Note,
    PlusMinus,
    Positive,
    Power,
    Product,
    Quotient,
    Recurring,
    Relation,
    Root,
    SetBuilder,
    Sum,
    Symbol,
)

INFINITE = "∞"
DOT_ABOVE = "\u0307"
OVERLINE = "\u0305"

_ONE_SIGN = {value: sign for sign, value in VULGAR.items()}
_RAISED = str.maketrans("012345", "⁰¹²³⁴⁵")
_LETTERS_LAST = re.compile(r"[A-Za-zα-ωθ]+$")
_PLAIN_POWER = re.compile(r"\^([0-5]+)$")
_ATOMS = (Integer, Decimal, Recurring, CutShort, Mixed, Symbol, Bracket, Root)


def typed(written: Node | Relation | Line) -> str:
    """Return the typed text of an expression, a relation or a whole line (``(x + 2)/3 = 5``)."""
    match written:
        case Line():
            return _line(written)
        case Relation(sides, signs):
            return _chain(sides, signs)
        case _:
            return _whole(written)


def _whole(node: Node) -> str:
    try:
        return node.text_held
    except AttributeError:
        text = _node(node)
        object.__setattr__(node, "text_held", text)
        return text


def typed_note(note: Note) -> str:
    """Return the typed text of an operation noted beside a line: ``(+7)``."""
    return f"({note.sign}{_node(note.operand)})"


def _line(line: Line) -> str:
    groups = (between(one, line.commas).join(map(typed, one)) for one in line.alternatives)
    said = [
        *line.heads,
        f" {between_alternatives(line.alternatives)} ".join(groups),
        line.statement,
    ]
    text = " ".join(part for part in said if part)
    text = f"{text}, {line.domain}" if line.domain else text
    return "   ".join([text, *map(typed_note, line.notes)]).strip()


def _chain(sides: tuple[Node, ...], signs: tuple[str, ...]) -> str:
    text = _whole(sides[0])
    for sign, side in zip(signs, sides[1:], strict=True):
        text += f" {sign} {_whole(side)}"
    return text


def _node(node: Node) -> str:
    return _SHOWN[type(node)](node)


def _guarded(node: Node, needs_bracket: bool) -> str:
    """Type a node; in a bracket, or as ``½``, where the text around it would change the value."""
    if not needs_bracket:
        return _node(node)
    return _as_one_sign(node) or f"({_node(node)})"


def _as_one_sign(node: Node) -> str:
    """``½`` for one over two; empty for what has no sign of its own."""
    match node:
        case Quotient(Integer(top), Integer(bottom), "/"):
            return _ONE_SIGN.get(f"{top}/{bottom}", "")
        case _:
            return ""


def _unending(number: Recurring | CutShort) -> str:
    if isinstance(number, CutShort):
        return f"{number.text}..."
    block, plain = number.block, number.plain
    match number.mark:
        case "dot" if len(block) == 1:
            return f"{plain}{block}{DOT_ABOVE}"
        case "dot":
            return f"{plain}{block[0]}{DOT_ABOVE}{block[1:]}{DOT_ABOVE}"
        case "bar":
            return plain + "".join(digit + OVERLINE for digit in block)
        case "word":
            return f"{plain}{block} recurring"
        case _:
            return f"{plain}{block * number.repeats}..."


def _under_root(body: Node) -> str:
    """A root holds what stands next to it alone: a number, a letter or a bracket."""
    return _guarded(body, not isinstance(body, _ATOMS))


def _sum(node: Sum) -> str:
    text = ""
    for sign, term in node.terms:
        shown = _guarded(term, isinstance(term, Sum))
        text = f"{text} {sign} {shown}" if text else shown
    return text


def _product(node: Product) -> str:
    before = node.factors[0]
    text = _guarded(before, isinstance(before, Sum))
    for factor, mark in zip(node.factors[1:], node.marks, strict=True):
        if mark:
            text += f" {mark} {_signed(factor, (Sum,))}"
        else:
            divisor = _is_letter(factor) and _ends_in_division(before)
            whole = f"({text})" if divisor and not text.endswith(CLOSED) else text
            text = _joined(whole, before, factor)
        before = factor
    return text


def _joined(text: str, before: Node, factor: Node) -> str:
    """Type an implied factor behind others; two numbers never meet (``3 4``, ``3 1/4``)."""
    if isinstance(factor, Symbol):
        return text + (" " if _wants_gap(text, before, factor.name) else "") + factor.name
    after = _as_one_sign(factor) or _node(factor)
    number_first = _is_number(after[0])
    two_numbers = number_first and (_is_number(text[-1]) or text.endswith("recurring"))
    holds = isinstance(factor, (*_ATOMS, Power)) or _as_one_sign(factor)
    raised = _PLAIN_POWER.search(text)
    if raised and two_numbers and holds:
        return text[: raised.start()] + raised[1].translate(_RAISED) + after
    if two_numbers or not holds:
        after = f"({_node(factor)})"
    return text + (" " if _wants_gap(text, before, after) else "") + after


def _is_number(character: str) -> bool:
    """Say whether a character belongs to a number: a digit, a one-sign fraction, a mark over."""
    return character.isnumeric() or character in (DOT_ABOVE, OVERLINE, ".")


def _wants_gap(text: str, before: Node, after: str) -> bool:
    """Say whether tight typing would mislead people (``3/4 x``) or make a word (``ax b``).

    Never before a bracket: a line's last ``(-2)`` behind a space is an operation noted beside it.
    """
    apart = isinstance(before, Quotient | Mixed | Recurring | CutShort)
    return after[0] not in CLOSING and (apart or _makes_a_word(text, after))


def _makes_a_word(text: str, after: str) -> bool:
    if not after[0].isalpha():
        return False
    run = _LETTERS_LAST.search(text)
    if run is None:
        return False
    behind_number = run.start() > 0 and text[run.start() - 1].isdecimal()
    return is_word(run.group() + after[0], behind_number)


def _quotient(node: Quotient) -> str:
    divided = node.mark == "÷"
    loose = isinstance(node.top, Sum) or (not divided and _ends_in_division(node.top))
    above = _guarded(node.top, loose)
    if divided and _is_one_divisor(node.bottom):
        return f"{above} ÷ {_node(node.bottom)}"
    # A divisor lets go of part of itself without a bracket: 3/4x is three quarters of x.
    below = _signed(node.bottom, (Sum, Product, Quotient))
    return f"{above} ÷ {below}" if divided else f"{above}/{below}"


def _ends_in_division(node: Node) -> bool:
    """Say whether a bar or a letter typed behind a node would go to its last divisor alone."""
    match node:
        case Quotient(_, _, mark):
            return mark == "÷"
        case Product((*_, last)):
            return _ends_in_division(last)
        case Negative(body) | Positive(body):
            return _ends_in_division(body)
        case _:
            return False


def _is_letter(node: Node) -> bool:
    return isinstance(node.base if isinstance(node, Power) else node, Symbol)


def _is_one_divisor(node: Node) -> bool:
    """Say whether ``÷`` takes the whole of a node without a bracket: ``4x``, ``2/3``, ``4x/5``."""
    match node:
        case Quotient(top, bottom, "/"):
            return _is_one_divisor(top) and not isinstance(bottom, Sum | Product | Quotient)
        case Product((first, *letters), marks):
            named = not any(marks) and all(map(_is_letter, letters))
            return named and not isinstance(first, Bracket | Root) and _is_one_divisor(first)
        case Negative(body) | Positive(body):
            return _is_one_divisor(body)
        case _:
            return isinstance(node, (*_ATOMS, Power))


def _with_sign(sign: str) -> Callable[[Any], str]:
    return lambda node: sign + _guarded(node.body, isinstance(node.body, Sum))


def _signed(node: Node, loose: tuple[type, ...]) -> str:
    """Type what stands behind ``×``, ``/`` or ``÷``, its own signs first."""
    match node:
        case Negative(body):
            return f"-{_signed(body, loose)}"
        case Positive(body):
            return f"+{_signed(body, loose)}"
        case PlusMinus():
            return f"({_node(node)})"
        case _:
            return _as_one_sign(node) or _guarded(node, isinstance(node, loose))


def _alone(node: Node) -> str:
    """Type what holds together beside a power sign."""
    return _guarded(node, not isinstance(node, _ATOMS))


def _exponent(exponent: Node) -> str:
    match exponent:
        case Negative(body) if not isinstance(body, Negative | Positive):
            return f"-{_alone(body)}"
        case Positive(body) if not isinstance(body, Negative | Positive):
            return f"+{_alone(body)}"
        case _:
            return _alone(exponent)


_SHOWN: dict[type, Callable[[Any], str]] = {
    Integer: lambda node: node.digits,
    Decimal: lambda node: node.text,
    Symbol: lambda node: node.name,
    Recurring: _unending,
    CutShort: _unending,
    Mixed: lambda node: f"{node.whole} {node.top}/{node.bottom}",
    Negative: _with_sign("-"),
    Positive: _with_sign("+"),
    PlusMinus: _with_sign("±"),
    Root: lambda node: f"√{_under_root(node.body)}",
    Sum: _sum,
    Product: _product,
    Quotient: _quotient,
    Power: lambda node: f"{_alone(node.base)}^{_exponent(node.exponent)}",
    Bracket: lambda node: f"{node.kind}{_node(node.body)}{CLOSING[node.kind]}",
    Infinity: lambda node: INFINITE,
    Interval: lambda node: f"{node.opening}{_node(node.low)}, {_node(node.high)}{node.closing}",
    Listed: lambda node: f"{{{', '.join(map(_node, node.items))}}}",
    SetBuilder: lambda node: f"{{{node.letter.name} : {_chain(node.sides, node.signs)}}}",
}
