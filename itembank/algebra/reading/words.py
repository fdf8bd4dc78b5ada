"""Which signs does a line say in words, or type in another way? The text with the signs, its
columns kept.

``x is at least 4`` is ``x >= 4``, ``plus or minus`` is ``±``, ``x₁ = 3`` is ``x = 3``.
"""

from __future__ import annotations

import re
from functools import lru_cache, partial

# Spaces are taken all at once (``++``): a wide gap stays cheap.
_ANY = r"(?:any(?:thing|\s+(?:number|value))\s*+)?"
_LEAD = rf"\s++(?:(?:is|are|must\s+be|has\s+to\s+be|can\s+be)\s*+{_ANY})?"
_IS_ANY = rf"\s++(?:is|are|must\s+be|can\s+be)\s+{_ANY}"
_EQUAL = r"(?:\s+or\s+(?:is\s+)?equals?(?:\s+to)?)"
_MORE = r"(?:greater|more|bigger|larger)\s+than"
_LESS = r"(?:less|smaller|fewer)\s+than"
_ORDERS = (
    (">=", re.compile(rf"{_LEAD}(?:{_MORE}{_EQUAL}|(?:not|no)\s+{_LESS}|at\s+least)\s+", re.I)),
    ("<=", re.compile(rf"{_LEAD}(?:{_LESS}{_EQUAL}|(?:not|no)\s+{_MORE}|at\s+most)\s+", re.I)),
    (">", re.compile(rf"{_LEAD}{_MORE}\s+", re.I)),
    ("<", re.compile(rf"{_LEAD}{_LESS}\s+", re.I)),
    (">", re.compile(rf"{_IS_ANY}above\s+(?=-?\d)", re.I)),
    ("<", re.compile(rf"{_IS_ANY}below\s+(?=-?\d)", re.I)),
)
_SECOND_ORDER = re.compile(
    r"(?P<first>\b(?P<letter>[a-z])\s*[<>≤≥]=?\s*-?[\d./]+\s*,?\s+)(?:and|but)(?P<room>\s{2,})(?=[<>≤≥])",
    re.IGNORECASE,
)
# ``x = -4 or less``: the words stand behind the number.
_OR_MORE = re.compile(
    r"(?:=|\bis\b)(?P<number>\s*-?\d[\d./ ]*?)\s+(?:or|and)\s+"
    r"(?:(?P<more>more|greater|bigger|above|over)|less|smaller|lower|below|under)\s*$",
    re.IGNORECASE,
)
_CHOICE = re.compile(r"(?<=\bis)\s+either\b", re.IGNORECASE)
_REALS = re.compile(r"(?<=[\d.)\]∞])\s*[,(]?\s*(?:where\s+)?[a-z]\s*∈\s*[ℝR]\s*\)?\s*$", re.I)
_ORDER_SIGN = re.compile(r"[<>≤≥]")
_PLACES_WITHIN = re.compile(
    r"(?<=\d)\s+\(?(?:to\s+)?\d+\s*(?:d\.?\s*p|s\.?\s*f)\.?\)?(?=\s*(?:,|\bor\b|\band\b))", re.I
)
_EITHER = re.compile(r"\bplus\s+or\s+minus\b|\+\s*or\s*-(?=\s*[\d√.(])", re.IGNORECASE)
# ``(x2)`` or a wide gap and ``x2`` at the end: both sides times 2.
_TIMES_NOTED = re.compile(r"(?<![+\-×÷/=\s])(?P<gap>\s+[(\[]\s*|\s{3,})[xX](?=\s*\d+\s*[)\]]?\s*$)")
_ROOT_OF = re.compile(r"\b(?:square\s+)?root\s+(?:of\s+)?(?=\d)", re.IGNORECASE)
_RAISED = re.compile(r"(?<=[A-Za-z])[₀-₉]")
# ``discriminant = -44``: the letter that is used for it
_DISCRIMINANT = re.compile(r"\b(?:the\s+)?discriminant\s*(?:is\b|=|:(?=[^=]*$))", re.IGNORECASE)
# ``x = 30 : 6 = 5``, a division; ``LHS = 4 + 3``, a side of the problem
_DIVIDED = re.compile(r"(?P<lead>=\s*-?[\d.]+\s*):(?=\s*-?[\d.]+\s*=)")
_SIDE = re.compile(
    r"\b(?:[LR]\.?H\.?S\.?|(?:left|right)(?:[ -]hand)?\s+side)\s*[:=]", re.IGNORECASE
)
_FIRST = re.compile(r"\b(?P<letter>[a-z])_?1(?=\s*=)", re.IGNORECASE)

_NUMERALS = {
    "zero": "0", "one": "1", "two": "2", "three": "3", "four": "4", "five": "5", "six": "6",
    "seven": "7", "eight": "8", "nine": "9", "ten": "10", "eleven": "11", "twelve": "12",
}  # fmt: skip
_NUMERAL = re.compile(
    r"(?:=\s*|\b(?:by|add(?:ed|ing)?|subtract(?:ed|ing)?|take|away|plus|minus|times|is)\s+)"
    rf"(?P<word>{'|'.join(_NUMERALS)})\b",
    re.IGNORECASE,
)
_COMES_TO = r"\s+(?=[\d.]+\s*(?:=|(?:is|equals|makes)\b))"
_COMPUTED = tuple(
    (sign, re.compile(rf"(?<=[\d)])\s+(?:{words}){_COMES_TO}", re.IGNORECASE))
    for sign, words in (
        ("+", "plus|add"),
        ("-", r"minus|take\s+away|subtract"),
        ("×", r"times|multiplied\s+by"),
        ("÷", r"(?:divided|shared)\s+by"),
    )
)
_POINTED = re.compile(r"\s++(?:<-+|←)\s*+(?=[a-z]{3}|[+×÷])", re.IGNORECASE)
# ``13 ÷ 4 = 3 r 1`` comes to 3 1/4
_REMAINDER = re.compile(
    r"(?P<lead>[÷/]\s*(?P<by>\d{1,6})\s*=\s*)(?P<whole>\d+)\s*r(?:em|emainder)?\.?\s*(?P<left>\d+)(?![\d.])",
    re.IGNORECASE,
)


def signs_for_words(text: str) -> str:
    """The text with signs and digits in the place of words, and with plain letters.

    An arrow that points back from a note is a wide gap before it.
    """
    text = _POINTED.sub(lambda found: " " * max(3, len(found.group())), text)
    text = _TIMES_NOTED.sub(lambda found: f"{found['gap']}×", text)
    text = _NUMERAL.sub(_in_digits, text)
    text = _REMAINDER.sub(_with_remainder, text)
    for sign, words in _COMPUTED:
        text = words.sub(partial(_put_first, sign), text)
    for sign, words in _ORDERS:
        text = words.sub(partial(_put, sign), text)
    text = _with_left(text)
    text = _PLACES_WITHIN.sub(_blank, text)
    text = _OR_MORE.sub(_ordered, _CHOICE.sub(_blank, text))
    if _ORDER_SIGN.search(text):
        text = _REALS.sub(_blank, text)
    text = _ROOT_OF.sub(lambda found: "√".rjust(len(found.group())), text)
    text = _EITHER.sub(lambda found: "±".ljust(len(found.group())), text)
    text = _RAISED.sub(" ", text)
    text = _DISCRIMINANT.sub(lambda found: "D =".rjust(len(found.group())), text)
    text = _DIVIDED.sub(lambda found: f"{found['lead']}÷", text)
    text = _SIDE.sub(_blank, text)
    letter = numbered_letter(text)
    return without_numbers(text, letter) if letter else text


def _in_digits(found: re.Match[str]) -> str:
    word = found["word"]
    return found.group()[: -len(word)] + _NUMERALS[word.lower()].ljust(len(word))


def _with_remainder(found: re.Match[str]) -> str:
    if int(found["left"]) >= int(found["by"]):
        return found.group()
    return f"{found['lead']}{found['whole']} {found['left']}/{found['by']}".ljust(
        len(found.group())
    )


def _put_first(sign: str, words: re.Match[str]) -> str:
    """A sign as wide as its words, no wide space before it, which would make a note of it."""
    return f" {sign}".ljust(len(words.group()))


def _put(sign: str, words: re.Match[str]) -> str:
    """A sign as wide as its words; no space behind it, where a note could stand."""
    return f" {sign} ".rjust(len(words.group()))


def _with_left(text: str) -> str:
    """``x > -2 and      <= 3``: the letter of the first order stands before the second as well."""
    return _SECOND_ORDER.sub(
        lambda f: f"{f['first']}and {f['letter'].ljust(len(f['room']) - 1)}", text
    )


def _blank(found: re.Match[str]) -> str:
    return " " * len(found.group())


def _ordered(found: re.Match[str]) -> str:
    sign = ">=" if found["more"] else "<="
    return f"{sign}{found['number']}".ljust(len(found.group()))


def numbered_letter(text: str) -> str:
    """The letter that is numbered 1 and 2 for its two values, in one line or in two; or empty."""
    first = _FIRST.search(text)
    if first is None:
        return ""
    found = _numbered(first["letter"]).findall(text)
    return first["letter"] if len(found) > 1 else ""


def without_numbers(text: str, letter: str) -> str:
    """``x1 = 3, x2 = -5`` and ``x1 + x2 = -2`` with the letter alone; columns are kept."""
    both = {found[-1] for found in _anywhere(letter).findall(text)} == {"1", "2"}
    pattern = _anywhere(letter) if both else _numbered(letter)
    return pattern.sub(lambda found: found.group()[0].ljust(len(found.group())), text)


@lru_cache(maxsize=64)
def _anywhere(letter: str) -> re.Pattern[str]:
    return re.compile(rf"(?<![A-Za-z]){letter}_?[12](?![\d.])", re.IGNORECASE)


@lru_cache(maxsize=64)
def _numbered(letter: str) -> re.Pattern[str]:
    return re.compile(rf"\b{letter}_?[12](?=\s*=)", re.IGNORECASE)
