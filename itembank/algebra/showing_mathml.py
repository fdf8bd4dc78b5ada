"""How is a written tree shown on a page? Presentation MathML within MathML Core (W3C).

Fractions stand upright over a bar, which groups what is above and below it: a bracket round the
whole of a numerator or denominator is not drawn. ``÷`` stays an operator. Implied products hold an
invisible times sign (U+2062), mixed numbers an invisible plus (U+2064), so that screen readers tell
``2 3/4`` from two times three quarters.
"""

from __future__ import annotations

from html import escape
from itertools import pairwise

from itembank.algebra.grammar import CLOSING
from itembank.algebra.joining import UNION, WORDS, between, between_alternatives
from itembank.algebra.showing import INFINITE
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

NAMESPACE = "http://www.w3.org/1998/Math/MathML"
INVISIBLE_TIMES = "\u2062"
INVISIBLE_PLUS = "\u2064"
MINUS = "\u2212"
BAR = "\u00af"
DOT = "\u02d9"

_SIGNS = {"-": MINUS, "<=": "≤", ">=": "≥"}
_SPACE = "\u00a0"
_UNION = '<mo lspace="0.22em" rspace="0.22em">∪</mo>'
_SINGLE = (Integer, Decimal, Symbol, Bracket)
_NUMBERS = (Integer, Decimal, Recurring, CutShort, Mixed)


def mathml(written: Node | Relation | Line, *, alttext: str = "") -> str:
    """Return a ``math`` element in display style, so that the digits of fractions are full size.

    ``alttext`` is what a reader hears where MathML is not understood (see ``spoken``).
    """
    spoken = f' alttext="{escape(alttext)}"' if alttext else ""
    shown = _shown(written)
    return f'<math xmlns="{NAMESPACE}" displaystyle="true"{spoken}>{shown}</math>'


def _shown(written: Node | Relation | Line) -> str:
    match written:
        case Line():
            return _line(written)
        case Relation((side,)):
            return _node(side)
        case Relation(sides, signs):
            return _row(_chain(sides, signs))
        case _:
            return _node(written)


def _line(line: Line) -> str:
    parts = []
    if line.heads:
        parts.append(_text(" ".join(line.heads) + _SPACE))
    for number, relations in enumerate(line.alternatives):
        if number:
            word = between_alternatives(line.alternatives)
            parts.append(_UNION if word == UNION else _joining(word))
        listed = {" and ": _joining("and"), ", ": _text(f",{_SPACE}")}
        joiner = listed[between(relations, line.commas)]
        parts.append(joiner.join(map(_shown, relations)))
    if line.statement:
        parts.append(_text((_SPACE if line.alternatives else "") + line.statement))
    if line.domain:
        parts.append(_text(f",{_SPACE}{line.domain}"))
    parts.extend('<mspace width="2em"/>' + _note(note) for note in line.notes)
    return parts[0] if len(parts) == 1 else _row("".join(parts))


def _note(note: Note) -> str:
    sign = f'<mo form="prefix" lspace="0" rspace="0">{_SIGNS.get(note.sign, note.sign)}</mo>'
    return _row(_bracketed(sign + _node(note.operand), "("))


def _chain(sides: tuple[Node, ...], signs: tuple[str, ...]) -> str:
    shown = _node(sides[0])
    for sign, side in zip(signs, sides[1:], strict=True):
        shown += (_joining(sign) if sign in WORDS else _operator(sign)) + _node(side)
    return shown


def _joining(word: str) -> str:
    return _text(f"{_SPACE}{word}{_SPACE}")


def _node(node: Node) -> str:
    match node:
        case Integer(text) | Decimal(text):
            return _number(text)
        case Symbol(name):
            return f"<mi>{escape(name)}</mi>"
        case Recurring():
            return _recurring(node)
        case CutShort(text):
            return _number(f"{text}…")
        case Mixed(whole, top, bottom):
            part = _fraction(_number(top), _number(bottom))
            return _row(_number(whole) + _operator(INVISIBLE_PLUS) + part)
        case Negative(body):
            return _row(_prefix("-") + _guarded(body, isinstance(body, Sum)))
        case Positive(body):
            return _row(_prefix("+") + _guarded(body, isinstance(body, Sum)))
        case PlusMinus(body):
            return _row(_prefix("±") + _guarded(body, isinstance(body, Sum)))
        case Root(body):
            return f"<msqrt>{_grouped(body)}</msqrt>"
        case Sum(terms):
            return _row(_sum(terms))
        case Product(factors, marks):
            return _row(_product(factors, marks))
        case Quotient(top, bottom, "/"):
            return _fraction(_grouped(top), _grouped(bottom))
        case Quotient(top, bottom):
            return _row(_division(top, bottom))
        case Power(base, exponent):
            raised = _guarded(base, not isinstance(base, _SINGLE)) + _grouped(exponent)
            return f"<msup>{raised}</msup>"
        case Bracket(body, kind):
            return _row(_bracketed(_node(body), kind))
        case Infinity():
            return _number(INFINITE)
        case Interval(opening, low, high, closing):
            return _row(_between(opening, [_node(low), _node(high)], closing))
        case Listed(items):
            return _row(_between("{", list(map(_node, items)), "}"))
        case SetBuilder(letter, sides, signs):
            condition = f"{_node(letter)}<mo>:</mo>{_chain(sides, signs)}"
            return _row(_between("{", [condition], "}"))


def _recurring(number: Recurring) -> str:
    plain, block = number.plain, number.block
    match number.mark:
        case "dot":
            over = [_over(digit, DOT) for digit in block]
            if len(block) > 2:
                over[1:-1] = [_number(block[1:-1])]
            return _row(_number(plain) + "".join(over))
        case "bar":
            return _row(_number(plain) + _over(block, BAR))
        case "word":
            return _row(_number(plain + block) + _text(f"{_SPACE}recurring"))
        case _:
            return _number(f"{plain}{block * number.repeats}…")


def _over(digits: str, mark: str) -> str:
    return f'<mover accent="true">{_number(digits)}{_operator(mark)}</mover>'


def _sum(terms: tuple[tuple[str, Node], ...]) -> str:
    first, *rest = terms
    shown = _guarded(first[1], isinstance(first[1], Sum))
    for sign, term in rest:
        shown += _operator(sign) + _guarded(term, isinstance(term, Sum))
    return shown


def _product(factors: tuple[Node, ...], marks: tuple[str, ...]) -> str:
    shown = _guarded(factors[0], isinstance(factors[0], Sum))
    for (before, factor), mark in zip(pairwise(factors), marks, strict=True):
        if mark:
            shown += _operator(mark) + _guarded(factor, isinstance(factor, Sum))
        else:
            shown += _operator(INVISIBLE_TIMES) + _guarded(factor, not _may_join(before, factor))
    return shown


def _may_join(before: Node, factor: Node) -> bool:
    """Say whether an implied factor can stand behind another: not ``3 4``, nor 3 before ¼."""
    opening = factor.base if isinstance(factor, Power) else factor
    if isinstance(opening, Symbol | Bracket | Root):
        return True
    stands = isinstance(opening, _NUMBERS) or (
        isinstance(opening, Quotient) and opening.mark == "/"
    )
    return stands and isinstance(before, Symbol | Bracket)


def _division(top: Node, bottom: Node) -> str:
    loose = isinstance(bottom, Sum | Product) or (
        isinstance(bottom, Quotient) and bottom.mark != "/"
    )
    over = _guarded(top, isinstance(top, Sum))
    return over + _operator("÷") + _guarded(bottom, loose)


def _grouped(node: Node) -> str:
    """What stands above or below a bar, or raised: its place groups it, not its bracket."""
    return _node(node.body if isinstance(node, Bracket) else node)


def _bracketed(content: str, kind: str) -> str:
    """Brackets grow round a fraction only; elsewhere they keep the size of the text."""
    grows = "" if "<mfrac>" in content else ' stretchy="false"'
    return f"<mo{grows}>{kind}</mo>{content}<mo{grows}>{CLOSING[kind]}</mo>"


def _between(opening: str, parts: list[str], closing: str) -> str:
    """Parts with commas between two brackets of whatever kinds, as an interval has them."""
    inner = "<mo>,</mo>".join(parts)
    grows = "" if "<mfrac>" in inner else ' stretchy="false"'
    first = f'<mo form="prefix"{grows}>{opening}</mo>'
    return f'{first}{inner}<mo form="postfix"{grows}>{closing}</mo>'


def _guarded(node: Node, needs_bracket: bool) -> str:
    return _node(Bracket(node)) if needs_bracket else _node(node)


def _fraction(top: str, bottom: str) -> str:
    return f"<mfrac>{top}{bottom}</mfrac>"


def _row(content: str) -> str:
    return f"<mrow>{content}</mrow>"


def _number(text: str) -> str:
    return f"<mn>{escape(text)}</mn>"


def _text(text: str) -> str:
    return f"<mtext>{escape(text)}</mtext>"


def _operator(sign: str) -> str:
    return f"<mo>{escape(_SIGNS.get(sign, sign))}</mo>"


def _prefix(sign: str) -> str:
    return f'<mo form="prefix">{escape(_SIGNS.get(sign, sign))}</mo>'
