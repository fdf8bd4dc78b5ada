"""Which label does a line of several equations carry, and which labels is it made from?

``2x + y = 7 (1)`` is given a label; ``(1) + (2): 3x = 9`` and ``3 × (1) - (2)`` are made from
labelled lines. A label is a number (also ``ii``) or one of the first capital letters, in round or
square brackets or in a circle, or follows the word ``eq`` or ``equation``. Labels come out in one
form: ``3 × (1) - (2)``.
"""

from __future__ import annotations

import re

from itembank.algebra.tokens import IN_ROUND, RELATION_SIGN, is_whole_relation

_NUMBER = rf"(?:{IN_ROUND}|\[\s*(?:\d|(?-i:[A-H]))\s*\]|[①-⑨])"
_NAME = rf"(?:eq(?:n|uation)?s?\.?\s*(?:{_NUMBER}|\d)|{_NUMBER})"
_TERM = rf"(?:(?:\d+\s*[×x]?\s*)?{_NAME}(?:\s*(?:[×÷/]\s*|\s[xX]\s*|[xX](?=\s*\d))\d+)?)"
_MADE = rf"-?\s*{_TERM}(?:\s*[+\-]\s*{_TERM})*"
# Where a search begins with spaces it takes all of them (``++``): a wide gap stays cheap.
_GIVES = r"\s*(?::|=+>|→|⇒|\bgives\b|\bgiving\b)\s*"
_USING = r"(?:from\s+|using\s+|(?:[a-z]\s*=\s*-?[\d./]+\s+)?in(?:to)?\s+)"
_GOES_ON = r"\s+(?=-?[0-9a-z])(?!x\s*\d)"
_HEAD = re.compile(
    rf"\s*{_USING}?(?P<made>{_MADE})(?:{_GIVES}|\s{{2,}}(?=\S)|{_GOES_ON})", re.IGNORECASE
)
_FROM = re.compile(rf"\s*{_USING}(?P<made>{_MADE})\s*,?\s+(?=\S)", re.IGNORECASE)
_BARE = r"(?:\d+\s*[×x*]?\s*)?(?-i:[A-H])(?:\s*[×÷x*]\s*\d+)?"
_HEAD_BARE = re.compile(
    rf"\s*(?P<made>(?:{_BARE}(?:\s*[+\-]\s*{_BARE})*)|[1-9]\s*[+\-]\s*[1-9]|[1-9]\s*[×x*]\s*\d+)\s*:\s*",
    re.IGNORECASE,
)
_TAIL_GIVEN = re.compile(
    rf"(?:\s++|\s*+[.\-]{{2,}}\s*+)(?:\(?\s*(?:in|into|from|using)\s+)?(?P<given>{_NAME})\s*\)?\s*$",
    re.IGNORECASE,
)
_TAIL_MADE = re.compile(rf"\s{{2,}}+(?:from\s+|using\s+)?(?P<made>{_MADE})\s*$", re.IGNORECASE)
_TAIL_TIMES = re.compile(rf"\s++(?P<made>{_NAME}\s*[×xX]\s*\d+)\s*$", re.IGNORECASE)
_ALONE = re.compile(rf"\s*(?P<made>{_MADE})\s*$", re.IGNORECASE)
_LISTED = re.compile(rf"(=\s*-?[\d.]+\s+{_NAME})\s*,", re.IGNORECASE)
# ``(1) x + y = 3, (2) x - y = 1``: a number of a line before each of them.
_HEADED = re.compile(
    rf"(?<![^\s,;])({IN_ROUND}\s+[^,;=]*=[^,;=]*?)\s*(?:,|\band\b)(?=\s*{IN_ROUND}\s+[^,;=]*=)"
)
_AND_SO = r"(?=\s*$|\s*:|\s+[^=]*=)"
_WORDED = (
    (re.compile(rf"add(?:ing)?\s+({_NAME})\s+(?:and|to|\+)\s+({_NAME}){_AND_SO}", re.I), r"\1+\2"),
    (re.compile(rf"(?:subtract|take)(?:ing)?\s+({_NAME})\s+(?:away\s+)?from\s+({_NAME}){_AND_SO}",
                re.I), r"\2-\1"),
    (re.compile(rf"({_NAME})\s+(?:plus|add)\s+({_NAME}){_AND_SO}", re.I), r"\1+\2"),
    (re.compile(rf"({_NAME})\s+(?:minus|subtract|take(?:\s+away)?)\s+({_NAME}){_AND_SO}", re.I),
     r"\1-\2"),
    (re.compile(rf"({_NAME})\s+(?:times|multiplied\s+by)\s+(\d+){_AND_SO}", re.I), r"\1×\2"),
)  # fmt: skip
_ONE = re.compile(_NAME, re.IGNORECASE)
_OPERATION = re.compile(r"[+\-×÷/xX]")
_CIRCLED = "①②③④⑤⑥⑦⑧⑨"
_ROMAN = {"i": "1", "ii": "2", "iii": "3", "iv": "4"}
_GIVEN_NAME = re.compile(r"\((?:\d|[A-H])\)")


def label_at_head(text: str, start: int, end: int) -> tuple[str, int]:
    """A label at the head of a line and where the line itself starts: ``(1) + (2): 3x = 9``."""
    patterns = (_HEAD, _FROM, _HEAD_BARE)
    match = next((m for m in (one.match(text, start, end) for one in patterns) if m), None)
    if match is None or match.end() >= end or not RELATION_SIGN.search(text, match.end(), end):
        return "", start
    made = match.group("made")
    if match.re is _HEAD_BARE:
        made = re.sub(r"[A-H]|^[1-9](?=\s*[×x*])|[1-9](?=\s*[+\-])|(?<=[+\-])\s*[1-9]$",
                      lambda found: f"({found.group().strip()})", made)  # fmt: skip
    return plain(made), match.end()


def label_at_tail(text: str, start: int, end: int) -> tuple[str, int]:
    """A label at the end of a line and where the line itself ends: ``2x + y = 7 (1)``."""
    for pattern, group in ((_TAIL_MADE, "made"), (_TAIL_TIMES, "made"), (_TAIL_GIVEN, "given")):
        match = pattern.search(text, start, end)
        if match and is_whole_relation(text[start : match.start()]):
            return plain(match.group(group)), match.start()
    return "", end


def in_signs(text: str) -> str:
    """An operation on labels told in words, in signs: ``subtract (2) from (1)`` as ``(1)-(2)``.

    Lines listed with their labels are set apart. Blanks keep the columns of what follows.
    """
    text = _HEADED.sub(_apart, _LISTED.sub(r"\1;", text))
    for pattern, signs in _WORDED:
        match = pattern.search(text)
        if match is not None:
            made = match.expand(signs)
            text = text[: match.start()] + made.ljust(match.end() - match.start()) + text[
                match.end() :
            ]  # fmt: skip
    return text


def _apart(found: re.Match[str]) -> str:
    return f"{found[1]};".ljust(len(found[0]))


def is_given(label: str) -> bool:
    """Whether a label names a line, and is no operation on others."""
    return _GIVEN_NAME.fullmatch(label) is not None


def label_alone(text: str) -> str:
    """An operation on labels that is all that a line holds: ``(1) × 3``; empty for all else."""
    match = _ALONE.fullmatch(text)
    if match is None:
        return ""
    made = match.group("made")
    rest = _ONE.sub("", made)
    named = len(_ONE.findall(made)) > 1 or "eq" in made.lower() or any(c in made for c in _CIRCLED)
    return plain(made) if _OPERATION.search(rest) or (named and rest.strip()) else ""


def plain(label: str) -> str:
    """A label in one form: ``3 × (1) - (2)``."""
    named = _ONE.sub(lambda found: f"({_digit(found.group())})", label)
    spaced = re.sub(r"[xX*]", "×", named)
    spaced = re.sub(r"/", "÷", spaced)
    spaced = re.sub(r"(\d)\s*\((\d|[A-H])\)", r"\1 × (\2)", spaced)
    return " ".join(re.sub(r"([+\-×÷])", r" \1 ", spaced).split())


def _digit(name: str) -> str:
    for number, circled in enumerate(_CIRCLED, start=1):
        if circled in name:
            return str(number)
    inside = name.strip("()[] \t")
    if inside in "ABCDEFGH" and inside:
        return inside
    return _ROMAN.get(inside.lower()) or re.sub(r"\D", "", name)
