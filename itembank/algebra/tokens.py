"""Which signs, numbers and letters stand in typed text? Look-alikes made one, columns kept."""

from __future__ import annotations

import re
import unicodedata
from dataclasses import dataclass


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
        "Δ": "D",  # either names b² - 4ac
        **dict.fromkeys("£$€", " "),
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
IN_ROUND = r"\(\s*(?:\d|(?-i:[A-H])|i{1,3}|iv)\s*\)"
"""A label in round brackets, as a pattern."""
RELATION_SIGN = re.compile(r"[=<>≤≥≠≈]")
_EITHER = re.compile(r"([=(<>≤≥]\s*|\s(?=\+-\s))\+-|\+-(?=\s*(?:√|sqrt))", re.IGNORECASE)


# Words of three letters that may stand close behind a number.
_WORDS = {
    *("add", "all", "and", "ans", "but", "cos", "for", "log", "max", "min", "mod", "not", "off"),
    *("out", "rem", "sin", "sub", "tan", "the"),
}


def same_signs(text: str) -> str:
    """The text with look-alike signs (unicode minus, dots for times) made one, columns kept.

    Digits of every script are made those of ours: exact numbers know no others.
    """
    same = text.replace("**", "^ ").translate(_SAME).replace("+/-", "±  ")
    if "+-" in same:
        same = _EITHER.sub(lambda found: f"{found[1] or ''}± ", same)
    if same.isascii():
        return same
    same = re.sub(r"\d", lambda digit: str(unicodedata.decimal(digit.group())), same)
    return "".join([" " if _is_picture(sign) else sign for sign in same])


def is_whole_relation(text: str) -> bool:
    """Whether a relation stands complete in a text: a sign, and something on both sides of it."""
    text = text.strip()
    found = RELATION_SIGN.search(text) is not None
    return found and not RELATION_SIGN.match(text) and text[-1] not in "=<>+-×÷/("


def _is_picture(sign: str) -> bool:
    """A tick, a face, a box, a degree sign beside the work; a cross says that it is wrong."""
    return sign not in "✗✘❌" and (unicodedata.category(sign) == "So" or sign in "∎\ufe0f\u200d")


def tokens_of(text: str, column: int) -> list[Token]:
    """The signs, numbers and letters of a text that starts at ``column``, and an ``end``.

    Raises:
        ReadingFault: where something else stands, or a word.
    """
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


def is_word(letters: str, behind_number: bool) -> bool:
    """Whether letters in a run are a word and no product.

    Two letters never are; ``abc``, ``xyz``, ``πrh`` and, behind their number, ``6prh`` are
    products, but not ``5and``.
    """
    if len(letters) < 3:
        return False
    codes = [ord(letter) for letter in letters]
    if letters.islower() and codes == list(range(codes[0], codes[0] + len(codes))):
        return False
    product = behind_number or not letters.isascii()
    return not product or len(letters) > 3 or letters.lower() in _WORDS


def _refuse_words(tokens: list[Token]) -> None:
    end = 0
    for start, token in enumerate(tokens):
        if start < end or token.kind != "letter":
            continue
        end = start + 1
        while end < len(tokens) and tokens[end].kind == "letter" and not tokens[end].spaced:
            end += 1
        behind_number = start > 0 and tokens[start - 1].kind == "number" and not token.spaced
        if is_word("".join(letter.text for letter in tokens[start:end]), behind_number):
            raise ReadingFault(token.column, "a number, a letter or a sign", "a word")


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
