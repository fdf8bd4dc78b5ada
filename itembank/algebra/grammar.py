"""What did the writer write? Typed text of one expression or relation -> tree, or a clear fault.

The grammar, from the loosest to the tightest::

    relation   = expression { ("=" | "<" | "<=" | ">" | ">=" | "≠" | "≈") expression }
    expression = signed { ("+" | "-" | "±") signed }
    signed     = { "+" | "-" | "±" } product
    product    = power { ("×" | "/" | "÷" | nothing) power }      left to right, all of one rank
    power      = atom [ "^" { "+" | "-" } atom ]
    atom       = number | mixed number | letter | "√" [ "-" ] atom
               | "(" expression ")" | "[" ... "]" | "{" ... "}"

A product with nothing between its factors never joins two numbers (``2 3`` is a fault), except that
``2 3/4`` is a mixed number. There is no ``eval`` here: the reader is a recursive descent over
tokens, bounded in length, depth, digits and exponents.
"""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Callable
from dataclasses import dataclass

from itembank.algebra.written import (
    Bracket,
    CutShort,
    Decimal,
    Integer,
    Mixed,
    Negative,
    Node,
    PlusMinus,
    Positive,
    Power,
    Product,
    Quotient,
    Recurring,
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


class ReadingFault(ValueError):
    """Text that cannot be read: ``column`` counts from 1, ``expected`` and ``found`` are words."""

    def __init__(self, column: int, expected: str, found: str) -> None:
        super().__init__(f"column {column}: expected {expected}, found {found}")
        self.column = column
        self.expected = expected
        self.found = found


@dataclass(frozen=True, slots=True)
class Token:
    """One sign, number or letter; ``spaced`` tells whether white space stands before it."""

    kind: str
    text: str
    column: int
    spaced: bool


_SAME = str.maketrans(
    {
        **dict.fromkeys("−–—‒‐‑﹣－", "-"),
        **dict.fromkeys("∗*·∙⋅•✕✖＊", "×"),
        **dict.fromkeys("⁄∕／", "/"),
        **dict.fromkeys("＋﹢", "+"),
        **dict.fromkeys("＝﹦", "="),
        **dict.fromkeys("∓", "±"),
        **dict.fromkeys("（⟨", "("),
        **dict.fromkeys("）⟩", ")"),
        **dict.fromkeys(
            "\u00a0\u2000\u2001\u2002\u2003\u2004\u2005\u2006\u2007\u2008\u2009\u202f\t", " "
        ),
        "⩽": "≤",
        "⩾": "≥",
        "≃": "≈",
        "≅": "≈",
        "𝑥": "x",
        "𝑦": "y",
        "⋯": "…",
        **dict.fromkeys("⟹⟾⇔⟺↔⟷", "⇒"),
        **dict(zip("хуасеоХУАС", "xyaceoXYAC", strict=True)),
        **dict.fromkeys("⟶➔➜➝➞➙", "→"),
    }
)
VULGAR = {
    "½": "1/2", "⅓": "1/3", "⅔": "2/3", "¼": "1/4", "¾": "3/4", "⅕": "1/5", "⅖": "2/5",
    "⅗": "3/5", "⅘": "4/5", "⅙": "1/6", "⅚": "5/6", "⅐": "1/7", "⅛": "1/8", "⅜": "3/8",
    "⅝": "5/8", "⅞": "7/8", "⅑": "1/9", "⅒": "1/10",
}  # fmt: skip
_RAISED = dict(zip("⁰¹²³⁴⁵⁶⁷⁸⁹", "0123456789", strict=True))
_RELATIONS = {
    "=": "=", "==": "=", "<": "<", "<=": "<=", "≤": "<=", "=<": "<=", ">": ">", ">=": ">=",
    "≥": ">=", "≠": "≠", "!=": "≠", "≈": "≈", "~=": "≈",
}  # fmt: skip
_CLOSING = {"(": ")", "[": "]", "{": "}"}
_SIGNED: dict[str, Callable[[Node], Node]] = {"+": Positive, "-": Negative, "±": PlusMinus}

_TOKEN = re.compile(
    r"(?P<space>\s+)"
    r"|(?P<number>(?:\d[\u0307\u0305\u0304˙]*)+(?:\.(?:\d[\u0307\u0305\u0304˙]*)+)?"
    r"|\.(?:\d[\u0307\u0305\u0304˙]*)+)"
    r"(?P<tail>\s*(?:\.\.\.+|…|(?:recurring|repeating|rec)\b\.?))?"
    r"|(?P<relation><=|>=|=<|!=|~=|==|[=<>≤≥≠≈])"
    r"|(?P<vulgar>[½⅓⅔¼¾⅕⅖⅗⅘⅙⅚⅐⅛⅜⅝⅞⅑⅒])"
    r"|(?P<raised>[⁰¹²³⁴⁵⁶⁷⁸⁹]+)"
    r"|(?P<root>√|sqrt(?![a-z]))"
    r"|(?P<either>±)"
    r"|(?P<letter>[A-Za-zα-ωθ])"
    r"|(?P<sign>[+\-×/÷^()\[\]{}])",
    re.IGNORECASE,
)

# ``x = +-7``, ``6 +- √20``, ``3+-√5``; not ``4 +-3``, where a negative number is added.
_EITHER = re.compile(r"([=(<>≤≥]\s*|\s(?=\+-\s))\+-|\+-(?=\s*(?:√|sqrt))", re.IGNORECASE)


def same_signs(text: str) -> str:
    """The text with look-alike signs (unicode minus, dots for times) made one, columns kept.

    Digits of every script are made those of ours: exact numbers know no others.
    """
    same = text.translate(_SAME).replace("+/-", "±  ")
    if "+-" in same:
        same = _EITHER.sub(lambda found: f"{found[1] or ''}± ", same)
    if same.isascii():
        return same
    return re.sub(r"\d", lambda digit: str(unicodedata.decimal(digit.group())), same)


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
    return _Reader(_tokens(same_signs(text), column)).relation()


def _tokens(text: str, column: int) -> list[Token]:
    tokens: list[Token] = []
    place, spaced = 0, False
    while place < len(text):
        match = _TOKEN.match(text, place)
        if match is None:
            raise ReadingFault(column + place, "a number, a letter or a sign", repr(text[place]))
        kind = match.lastgroup if match.lastgroup != "tail" else "number"
        assert kind is not None
        if kind == "space":
            spaced = True
        else:
            tokens.append(Token(kind, match.group(), column + place, spaced))
            spaced = False
        place = match.end()
    _refuse_words(tokens)
    tokens.append(Token("end", "", column + len(text), False))
    return _times_for_letter(tokens)


def _refuse_words(tokens: list[Token]) -> None:
    """Three letters in a run are a word, not a product."""
    for first, second, third in zip(tokens, tokens[1:], tokens[2:], strict=False):
        run = (first, second, third)
        if all(t.kind == "letter" for t in run) and not (second.spaced or third.spaced):
            raise ReadingFault(first.column, "a number, a letter or a sign", "a word")


def _times_for_letter(tokens: list[Token]) -> list[Token]:
    """``3 x 4``: a letter x between two numbers, spaced on both sides, is a times sign."""
    out = list(tokens)
    for i in range(1, len(tokens) - 1):
        before, here, after = tokens[i - 1], tokens[i], tokens[i + 1]
        if (
            here.text in ("x", "X")
            and here.spaced
            and after.spaced
            and before.kind == after.kind == "number"
        ):
            out[i] = Token("sign", "×", here.column, here.spaced)
    return out


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
            signs.append(_RELATIONS[self.take().text])
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
                body = _times(body, self.signed_power(), "×")
            elif self.at("/", "÷"):
                mark = self.take().text
                body = Quotient(body, self.signed_power(), mark)
            elif self.starts_factor():
                body = _times(body, self.power(), "")
            else:
                return body

    def starts_factor(self) -> bool:
        if self.here.kind == "number" or self.here.kind == "vulgar":
            if self.tokens[self.place - 1].kind in ("number", "vulgar"):
                raise self.fault("a sign between two numbers")
            return True
        return self.here.kind in ("letter", "root") or self.at("(", "[", "{")

    def signed_power(self) -> Node:
        if not self.at("+", "-"):
            return self.power()
        sign = self.take()
        self.deeper(sign)
        body = self.signed_power()
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
        closing = _CLOSING[opening.text]
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
        node = _number(token)
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


def _times(body: Node, factor: Node, mark: str) -> Node:
    if isinstance(body, Product):
        return Product((*body.factors, factor), (*body.marks, mark))
    return Product((body, factor), (mark,))


_MARKED = re.compile("[\u0307\u0305\u0304˙]")


def _number(token: Token) -> Node:
    text = token.text
    digits = text.rstrip(" ….").strip()
    for word in ("recurring", "repeating", "rec"):
        if digits.lower().endswith(word):
            digits = digits[: -len(word)].strip()
            if "." not in digits or _MARKED.search(digits):
                raise ReadingFault(token.column, "a decimal that recurs", repr(text))
            return Recurring(digits[:-1], digits[-1], "word")
    if text.endswith(("…", "...")) and not _MARKED.search(digits):
        return _going_on(digits)
    if _MARKED.search(digits):
        return _marked(token, digits)
    if "." not in digits:
        return Integer(digits)
    return Decimal(digits if digits[0] != "." else "0" + digits)


def _going_on(digits: str) -> Node:
    """``5.8333...``: the shortest block that stands at least twice at the end recurs."""
    whole, _, after = digits.partition(".")
    for size in range(1, len(after) // 2 + 1):
        block, repeats = after[-size:], 1
        while after.endswith(block * (repeats + 1)):
            repeats += 1
        if repeats >= 2:
            return Recurring(
                f"{whole}.{after[: len(after) - size * repeats]}", block, "dots", repeats
            )
    return CutShort(digits)


def _marked(token: Token, digits: str) -> Node:
    plain = _MARKED.sub("", digits)
    places = [m.start() - n - 1 for n, m in enumerate(_MARKED.finditer(digits))]
    first, last = places[0], places[-1]
    dotted = "\u0307" in digits or "˙" in digits
    if last != len(plain) - 1 or first <= plain.find(".") or "." not in plain:
        raise ReadingFault(token.column, "the recurring block at the decimal's end", repr(digits))
    if dotted and len(places) > 2:
        raise ReadingFault(token.column, "one dot, or one at each end of the block", repr(digits))
    if not dotted and len(places) != last - first + 1:
        raise ReadingFault(token.column, "a bar over the whole block", repr(digits))
    return Recurring(plain[:first], plain[first:], "dot" if dotted else "bar")
