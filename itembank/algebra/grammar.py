"""What did the writer write? Typed text of one expression or relation -> tree, or a clear fault.

The grammar, from the loosest to the tightest::

    relation   = expression { ("=" | "<" | "<=" | ">" | ">=" | "≠" | "≈") expression }
    expression = signed { ("+" | "-" | "±") signed }
    signed     = { "+" | "-" | "±" } product
    product    = power { ("×" | "/" | nothing) power | "÷" divisor }      left to right
    divisor    = { "+" | "-" } power { "/" power | letter }
    power      = atom [ "^" { "+" | "-" } atom ]
    atom       = number | mixed number | letter | "√" [ "-" ] atom
               | "(" expression ")" | "[" ... "]" | "{" ... "}"

A bar binds closer than ``÷``, and so do letters behind a number or a letter: ``x/3 ÷ 4x/5`` is a
fraction divided by a fraction, ``6x^2 ÷ 3x`` is ``2x``. A product with nothing between its factors
never joins two numbers (``2 3`` is a fault), except that ``2 3/4`` is a mixed number. There is no
``eval`` here: the reader is a recursive descent over tokens, bounded in length, depth, digits and
exponents.
"""

from __future__ import annotations

from collections.abc import Callable

from itembank.algebra.numerals import number_of
from itembank.algebra.tokens import VULGAR, ReadingFault, Token, same_signs, tokens_of
from itembank.algebra.written import (
    Bracket,
    Integer,
    Mixed,
    Negative,
    Node,
    PlusMinus,
    Positive,
    Power,
    Product,
    Quotient,
    Relation,
    Root,
    Sum,
    Symbol,
)

LONGEST_LINE = 400
DEEPEST_BRACKET = 24
MOST_DIGITS = 30
MOST_SIGNS = 8
HIGHEST_EXPONENT = 12

_RAISED = dict(zip("⁰¹²³⁴⁵⁶⁷⁸⁹", "0123456789", strict=True))
RELATION_SIGNS = {
    "=": "=", "==": "=", "<": "<", "<=": "<=", "≤": "<=", "=<": "<=", ">": ">", ">=": ">=",
    "≥": ">=", "≠": "≠", "!=": "≠", "≈": "≈", "~=": "≈",
}  # fmt: skip
CLOSING = {"(": ")", "[": "]", "{": "}"}
CLOSED = tuple(CLOSING.values())
_SIGNED: dict[str, Callable[[Node], Node]] = {"+": Positive, "-": Negative, "±": PlusMinus}


def read_expression(text: str) -> Node:
    """Read one expression.

    Raises:
        ReadingFault: with the column and what was expected there.
    """
    relation = read_relation(text)
    if relation.signs:
        raise ReadingFault(1, "one expression", f"a relation with {relation.signs[0]}")
    return relation.sides[0]


def read_relation(text: str, column: int = 1) -> Relation:
    """Read a relation, chained as written, or a lone expression.

    ``column`` is where ``text`` starts in its line, for faults.

    Raises:
        ReadingFault: with the column and what was expected there.
    """
    if len(text) > LONGEST_LINE:
        raise ReadingFault(
            column + LONGEST_LINE, f"at most {LONGEST_LINE} characters", f"{len(text)}"
        )
    return _Reader(tokens_of(same_signs(text), column)).relation()


def with_factor(body: Node, factor: Node, mark: str) -> Product:
    """``body`` as a product with one factor more, the mark as written before it."""
    if isinstance(body, Product):
        return Product((*body.factors, factor), (*body.marks, mark))
    return Product((body, factor), (mark,))


class _Reader:
    """Recursive descent over the tokens of one relation."""

    def __init__(self, tokens: list[Token]) -> None:
        self.tokens = tokens
        self.place = 0
        self.depth = 0

    @property
    def here(self) -> Token:
        return self.tokens[self.place]

    def at(self, *signs: str) -> bool:
        return self.here.kind == "sign" and self.here.text in signs

    def take(self) -> Token:
        token = self.here
        self.place += 1
        return token

    def fault(self, expected: str) -> ReadingFault:
        found = "the end of the line" if self.here.kind == "end" else repr(self.here.text)
        return ReadingFault(self.here.column, expected, found)

    def relation(self) -> Relation:
        sides, signs = [self.expression()], []
        while self.here.kind == "relation":
            signs.append(RELATION_SIGNS[self.take().text])
            sides.append(self.expression())
        if self.here.kind != "end":
            raise self.fault("a sign or the end of the line")
        return Relation(tuple(sides), tuple(signs))

    def expression(self) -> Node:
        terms = [("+", self.signed())]
        while self.at("+", "-") or self.here.kind == "either":
            token = self.take()
            terms.append(("±" if token.kind == "either" else token.text, self.signed()))
        return terms[0][1] if len(terms) == 1 else Sum(tuple(terms))

    def signed(self) -> Node:
        signs: list[str] = []
        while self.at("+", "-") or self.here.kind == "either":
            token = self.take()
            signs.append("±" if token.kind == "either" else token.text)
            if len(signs) > MOST_SIGNS:
                raise self.fault(f"at most {MOST_SIGNS} signs in a row")
        body = self.product()
        for sign in reversed(signs):
            body = _SIGNED[sign](body)
        return body

    def product(self) -> Node:
        body = self.power()
        while True:
            if self.at("×"):
                self.take()
                body = with_factor(body, self.signed_power(), "×")
            elif self.at("/"):
                body = self.over(body)
            elif self.at("÷"):
                self.take()
                body = Quotient(body, self.divisor(), "÷")
            elif self.starts_factor():
                body = with_factor(body, self.power(), "")
            else:
                return body

    def divisor(self) -> Node:
        if self.at("+", "-"):
            return self.sign_before(self.divisor)
        body = self.power()
        while True:
            if self.at("/"):
                body = self.over(body)
            elif self.here.kind == "letter" and self.tokens[self.place - 1].text not in CLOSED:
                body = with_factor(body, self.power(), "")
            else:
                return body

    def over(self, top: Node) -> Node:
        self.take()
        return Quotient(top, self.signed_power(), "/")

    def starts_factor(self) -> bool:
        if self.here.kind == "number" or self.here.kind == "vulgar":
            if self.tokens[self.place - 1].kind in ("number", "vulgar"):
                raise self.fault("a sign between two numbers")
            return True
        return self.here.kind in ("letter", "root") or self.at("(", "[", "{")

    def signed_power(self) -> Node:
        return self.sign_before(self.signed_power) if self.at("+", "-") else self.power()

    def sign_before(self, what: Callable[[], Node]) -> Node:
        sign = self.take()
        self.deeper(sign)
        body = what()
        self.depth -= 1
        return Negative(body) if sign.text == "-" else Positive(body)

    def power(self) -> Node:
        base = self.atom()
        if self.here.kind == "raised":
            token = self.take()
            exponent: Node = Integer("".join(_RAISED[c] for c in token.text))
        elif self.at("^"):
            self.take()
            token = self.here
            sign = self.take().text if self.at("+", "-") else ""
            exponent = self.atom()
            if sign:
                exponent = Negative(exponent) if sign == "-" else Positive(exponent)
        else:
            return base
        if isinstance(exponent, Integer) and int(exponent.digits) > HIGHEST_EXPONENT:
            raise ReadingFault(token.column, f"an exponent up to {HIGHEST_EXPONENT}", token.text)
        return Power(base, exponent)

    def atom(self) -> Node:
        if self.here.kind == "number":
            return self.number()
        if self.here.kind == "vulgar":
            top, bottom = VULGAR[self.take().text].split("/")
            return Quotient(Integer(top), Integer(bottom), "/")
        if self.here.kind == "letter":
            return Symbol(self.take().text)
        if self.here.kind == "root":
            return self.root()
        if self.at("(", "[", "{"):
            return self.bracket()
        raise self.fault("a number, a letter or a bracket")

    def root(self) -> Node:
        sign = self.take()
        self.deeper(sign)
        negative = self.at("-") and self.take()
        body = self.atom()
        self.depth -= 1
        return Root(Bracket(Negative(body)) if negative else body)

    def bracket(self) -> Node:
        opening = self.take()
        self.deeper(opening)
        body = self.expression()
        closing = CLOSING[opening.text]
        if not self.at(closing):
            raise self.fault(f"{closing!r} for the bracket opened in column {opening.column}")
        self.take()
        self.depth -= 1
        return Bracket(body, opening.text)

    def deeper(self, token: Token) -> None:
        self.depth += 1
        if self.depth > DEEPEST_BRACKET:
            expected = f"brackets at most {DEEPEST_BRACKET} deep"
            raise ReadingFault(token.column, expected, repr(token.text))

    def number(self) -> Node:
        token = self.take()
        if sum(c.isdigit() for c in token.text) > MOST_DIGITS:
            raise ReadingFault(token.column, f"at most {MOST_DIGITS} digits", "more")
        node = number_of(token)
        if isinstance(node, Integer):
            return self.mixed(node)
        return node

    def mixed(self, whole: Integer) -> Node:
        if self.here.kind == "vulgar":
            top, bottom = VULGAR[self.take().text].split("/")
            return Mixed(whole.digits, top, bottom)
        ahead = self.tokens[self.place : self.place + 3]
        if (
            len(ahead) == 3
            and ahead[0].kind == "number"
            and ahead[0].spaced
            and ahead[0].text.isdigit()
            and (ahead[1].kind, ahead[1].text) == ("sign", "/")
            and ahead[2].kind == "number"
            and ahead[2].text.isdigit()
        ):
            self.place += 3
            return Mixed(whole.digits, ahead[0].text, ahead[2].text)
        return whole
