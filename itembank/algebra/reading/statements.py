"""Does a line state that nothing solves the problem, or everything? In words, or in signs."""

from __future__ import annotations

import re

_OF = r"(?:\s+(?:of|for)\s+[a-z](?:\s*(?:and|,)\s*[a-z])?)?"
_WORKS = r"(?:\s+(?:exists?|works?))?"
_SOLUTION = r"(?:real\s+|possible\s+)?(?:solutions?|solns?|sols?|values?|answers?|roots?)"
_NOT = r"(?:does\s+not|doesn't|do\s+not|don't)"
_ANY = r"(?:all|any|every|each)"
_VALUES = r"(?:values?(?:\s+of\s+[a-z])?|numbers?)"
_NUMBERS = rf"{_ANY}\s+(?:real\s+|possible\s+)?(?:values?|numbers?|reals?)"

_NONE = re.compile(
    r"(?:there\s+(?:is|are)\s+|has\s+|have\s+)?\b(?:"
    rf"(?:no|0|zero)\s+{_SOLUTION}{_OF}{_WORKS}|no\s+[a-z]\s+works?|no\s+real\s+[a-z]|none"
    rf"|(?:{_NOT}\s+have|there\s+(?:is\s+not|isn't|does\s+not\s+exist))\s+(?:a|any)\s+{_SOLUTION}"
    r"|(?:can\s*no|can'|can)t\s+(?:be\s+(?:solved|done)"
    r"|(?:take\s+the\s+)?(?:square\s+)?root\s+(?:of\s+)?(?:a\s+)?negatives?(?:\s+numbers?)?)"
    r"|(?:un|not\s+)able\s+to\s+(?:be\s+)?solved?|unsolvable|insoluble"
    r"|(?:a\s+|the\s+)?(?:square|[a-z](?:²|\^2))\s+(?:(?:is|can)\s+never|(?:can\s*no|can')t)\s+(?:be\s+)?"
    r"(?:a\s+)?negative"
    r"|never\s+(?:true|equal|works?)|impossible|not\s+possible|contradiction|inconsistent"
    r"|parallel(?:\s+lines)?|(?:do\s+not|don't|never)\s+(?:meet|cross|intersect)"
    rf"|not\s+true\s+for\s+any\s+[a-z]|(?:[a-z]\s+)?{_NOT}\s+(?:work|exist))\b|[∅øØ]|\{{\s*\}}",
    re.IGNORECASE,
)
_ALL = re.compile(
    rf"\b{_NUMBERS}{_OF}(?:\s+works?)?\b|\bevery\s+[a-z]\b(?:\s+works?)?"
    r"|\b(?:infinite(?:ly)?(?:\s+(?:many|(?:number|amount)\s+of))?|unlimited)"
    rf"(?:\s+{_SOLUTION})?\b|\balways\s+true\b"
    rf"|\b(?:true|works|holds)\s+for\s+{_ANY}(?:\s+(?:{_VALUES}|[a-z]))?\b"
    rf"|\bfor\s+{_ANY}\s+(?:{_VALUES}|[a-z])\b|(?:(?<![a-z]\s)|(?<=\bso\s)){_ANY}\s+[a-z]\b(?:\s+in\s+(?:the\s+)?(?:[ℝR]|reals?))?|∀\s*[a-z]\b"
    r"|\b(?:all|any|every)\s+(?:the\s+)?points?\s+on\s+(?:the|this|that)\s+line\b"
    r"|\bidentity\b|\b(?:the\s+)?same\s+(?:lines?|equations?)\b"
    r"|\bsame\s+as\s+(?:\(\d\)|the\s+(?:other|first)(?:\s+(?:one|equation|line))?)"
    r"|\b[a-z]\s+c(?:an|ould)\s+(?:be|equal)\s+any(?:thing|\s+\w+)"
    r"|(?:\b[a-z]\s*(?:=|equals|is)\s*)?\banything\b|\b[a-z]\s*∈\s*[ℝR]\b|ℝ"
    r"|(?:\b[a-z]\s*∈\s*)?\(\s*-\s*(?:∞|inf(?:inity)?)\s*,\s*\+?\s*(?:∞|inf(?:inity)?)\s*\)",
    re.IGNORECASE,
)
_TAIL = re.compile(r"[\s.!,;:)]*$")
_LEAD = re.compile(
    r"(?:[,;:.\s]|\b(?:you|we|i|so|therefore|hence|thus|then|it|is|the|equation|has|which|this|an|a"
    r"|and|because|means|that|are|they|lines|equations|both|two|true|works|holds|for|with|there"
    r"|solution|answer)\b|\b[a-z]\s*(?:=|is\b|equals\b)|∴|⇒|=>|-|->|→|\()*$",
    re.IGNORECASE,
)


def statement_at_end(text: str, start: int, end: int) -> tuple[str, int]:
    """A statement that closes the piece, and where the piece then ends."""
    for name, pattern in (("no solution", _NONE), ("all values", _ALL)):
        for match in pattern.finditer(text, start, end):
            if _TAIL.match(text, match.end(), end):
                lead = _LEAD.search(text, start, match.start())
                stop = lead.start() if lead else match.start()
                # ``parallel lines, no solution`` says it twice
                before, earlier = statement_at_end(text, start, stop)
                return name, earlier if before == name else stop
    return "", end
