"""How is a written tree read aloud? Plain English words, as a teacher would say them in class.

The words can be followed without seeing the page: brackets are said, what stands under a fraction
bar is never run together with what follows it, and ``minus`` (take away) is told from ``negative``
(a sign). Numbers stay in digits, which every voice can say.
"""

from __future__ import annotations

from itertools import pairwise

from itembank.algebra.joining import UNION, between, between_alternatives
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

_RELATIONS = {
    "=": "equals",
    "<": "is less than",
    "<=": "is less than or equal to",
    ">": "is greater than",
    ">=": "is greater than or equal to",
    "≠": "is not equal to",
    "∈": "is in",
    "≈": "is approximately equal to",
    "or": "or",
    "and": "and",
}
_OPERATIONS = {
    "+": "plus",
    "-": "minus",
    "±": "plus or minus",
    "×": "times",
    "÷": "divided by",
}
_NOTED = {"+": "add", "-": "subtract", "×": "multiply by", "÷": "divide by"}
_KINDS = {"(": "bracket", "[": "square bracket", "{": "curly bracket"}
_PARTS = {
    "2": ("half", "halves"),
    "3": ("third", "thirds"),
    "4": ("quarter", "quarters"),
    "5": ("fifth", "fifths"),
    "6": ("sixth", "sixths"),
    "7": ("seventh", "sevenths"),
    "8": ("eighth", "eighths"),
    "9": ("ninth", "ninths"),
    "10": ("tenth", "tenths"),
    "11": ("eleventh", "elevenths"),
    "12": ("twelfth", "twelfths"),
    "100": ("hundredth", "hundredths"),
}
_SIMPLE = (Integer, Decimal, Symbol)
_NUMBERS = (Integer, Decimal, Recurring, CutShort, Mixed)


def spoken(written: Node | Relation | Line) -> str:
    """Return the words for an expression, a relation or a whole line.

    ``4x + 3 = 17`` is ``4 x plus 3 equals 17``; ``(x + 2)/3`` is ``open bracket x plus 2 close
    bracket, over 3``; ``2 3/4`` is ``2 and 3 quarters``.
    """
    match written:
        case Line():
            return _line(written)
        case Relation(sides, signs):
            return _chain(sides, signs)
        case _:
            return _node(written)


def _line(line: Line) -> str:
    groups = (between(one, line.commas).join(map(spoken, one)) for one in line.alternatives)
    word = between_alternatives(line.alternatives)
    heads = [_RELATIONS.get(head, head) for head in line.heads]
    said = [*heads, f" {'together with' if word == UNION else word} ".join(groups), line.statement]
    words = " ".join(part for part in said if part)
    words = f"{words}, {line.domain}" if line.domain else words
    return ", noted: ".join(part for part in [words, *map(_note, line.notes)] if part)


def _note(note: Note) -> str:
    return f"{_NOTED[note.sign]} {_node(note.operand)}"


def _chain(sides: tuple[Node, ...], signs: tuple[str, ...]) -> str:
    words = _node(sides[0])
    for sign, side in zip(signs, sides[1:], strict=True):
        words += f" {_RELATIONS[sign]} {_node(side)}"
    return words


def _node(node: Node) -> str:
    match node:
        case Integer(digits):
            return digits
        case Decimal(text):
            return _decimal(text)
        case Symbol(name):
            return f"capital {name}" if name.isupper() else name
        case Recurring():
            return _recurring(node)
        case CutShort(text):
            return f"{_decimal(text)} and so on"
        case Mixed(whole, top, bottom):
            return f"{whole} and {_part(top, bottom)}"
        case Negative(body):
            return f"negative {_guarded(body, isinstance(body, Sum))}"
        case Positive(body):
            return f"positive {_guarded(body, isinstance(body, Sum))}"
        case PlusMinus(body):
            return f"plus or minus {_guarded(body, isinstance(body, Sum))}"
        case Root(body):
            return _root(body)
        case Sum(terms):
            return _sum(terms)
        case Product(factors, marks):
            return _product(factors, marks)
        case Quotient(top, bottom, mark):
            return _quotient(top, bottom, "over" if mark == "/" else "divided by")
        case Power(base, exponent):
            return _power(base, exponent)
        case Bracket(body, kind):
            return f"open {_KINDS[kind]} {_node(body)} close {_KINDS[kind]}"
        case Infinity():
            return "infinity"
        case Interval(opening, low, high, closing):
            first = "included" if opening == "[" else "not included"
            last = "included" if closing == "]" else "not included"
            return f"the interval from {_node(low)}, {first}, to {_node(high)}, {last}"
        case Listed(items):
            return f"the set of {', '.join(map(_node, items))}"
        case SetBuilder(letter, sides, signs):
            return f"the set of all {_node(letter)} for which {_chain(sides, signs)}"


def _decimal(text: str) -> str:
    """``2.50`` is ``2 point 5 0``: the digits behind the point are said one by one."""
    whole, point, after = text.partition(".")
    return f"{whole or '0'} point {' '.join(after)}".strip() if point else whole


def _recurring(number: Recurring) -> str:
    plain, block = number.plain, number.block
    if number.mark == "dots":
        return f"{_decimal(plain + block * number.repeats)} and so on"
    after_point = plain.partition(".")[2]
    if not after_point and len(block) == 1:
        return f"{_decimal(plain + block)} recurring"
    return f"{_decimal(plain + block)}, with {' '.join(block)} recurring"


def _part(top: str, bottom: str) -> str:
    """``3 quarters``, ``1 half``; ``3 over 17`` where no common word names the part."""
    if bottom not in _PARTS:
        return f"{top} over {bottom}"
    one, many = _PARTS[bottom]
    return f"{top} {one if top == '1' else many}"


def _sum(terms: tuple[tuple[str, Node], ...]) -> str:
    first, *rest = terms
    words = _guarded(first[1], isinstance(first[1], Sum))
    for (_, before), (sign, term) in pairwise([first, *rest]):
        pause = "," if _ends_in_fraction(before) else ""
        words += f"{pause} {_OPERATIONS[sign]} {_guarded(term, isinstance(term, Sum))}"
    return words


def _product(factors: tuple[Node, ...], marks: tuple[str, ...]) -> str:
    words = _guarded(factors[0], isinstance(factors[0], Sum))
    for (before, factor), mark in zip(pairwise(factors), marks, strict=True):
        pause = "," if _ends_in_fraction(before) else ""
        times = " times" if mark or _needs_times(before, factor) else ""
        words += f"{pause}{times} {_guarded(factor, isinstance(factor, Sum))}"
    return words


def _needs_times(before: Node, factor: Node) -> bool:
    """Say whether an implied product would be misheard: ``x 2``, ``3 over 4 x``, ``2 and 3 x``."""
    firm = isinstance(before, Integer | Decimal | Symbol | Bracket | Power)
    stands = isinstance(factor, Symbol | Bracket | Power | Root)
    return not firm or not stands or _opens_number(factor)


def _opens_number(node: Node) -> bool:
    return isinstance(node, Power) and isinstance(node.base, _NUMBERS)


def _quotient(top: Node, bottom: Node, words: str) -> str:
    above = _guarded(top, isinstance(top, Sum))
    simple = isinstance(top, _SIMPLE) or (
        isinstance(top, Product) and all(isinstance(factor, _SIMPLE) for factor in top.factors)
    )
    below = bottom
    while isinstance(below, Negative | Positive):
        below = below.body
    compound = isinstance(below, Sum | Product | Quotient | Mixed)
    return f"{above}{'' if simple else ','} {words} {_guarded(bottom, compound)}"


def _root(body: Node) -> str:
    """``the square root of 17``; a longer body stands in a spoken bracket."""
    return f"the square root of {_guarded(body, not isinstance(body, (*_SIMPLE, Bracket)))}"


def _power(base: Node, exponent: Node) -> str:
    words = _guarded(base, not isinstance(base, Integer | Decimal | Symbol | Bracket))
    pause = "" if isinstance(base, _SIMPLE) else ","
    match exponent:
        case Integer("2"):
            return f"{words}{pause} squared"
        case Integer("3"):
            return f"{words}{pause} cubed"
        case _:
            simple = isinstance(exponent, (*_SIMPLE, Bracket)) or (
                isinstance(exponent, Negative | Positive) and isinstance(exponent.body, _SIMPLE)
            )
            return f"{words}{pause} to the power {_guarded(exponent, not simple)}"


def _ends_in_fraction(node: Node) -> bool:
    """Say whether the last words name a fraction, so that what follows needs a pause before it."""
    match node:
        case Quotient():
            return True
        case Negative(body) | Positive(body):
            return _ends_in_fraction(body)
        case Product(factors):
            return _ends_in_fraction(factors[-1])
        case _:
            return False


def _guarded(node: Node, needs_bracket: bool) -> str:
    return _node(Bracket(node)) if needs_bracket else _node(node)
