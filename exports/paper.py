"""What does the candidate get? A test paper as a tagged PDF."""

from __future__ import annotations

from urllib.parse import quote

from exports.documents import INVENTED, Paper
from exports.rendering import pdf

PITCH_MM = 7
"""Between two rules: handwriting on one, a fraction over two."""

RULES_PER_LINE = 2
"""Rules for each required line of the longest route."""

MOST_RULES = 30
"""What leaves a page room for the question itself, so that no question splits."""

_RULE = quote(
    f"<svg xmlns='http://www.w3.org/2000/svg' viewBox='0 0 174 {PITCH_MM}'>"
    f"<path d='M0 {PITCH_MM - 0.5}H174' stroke='#888' stroke-width='.15'/></svg>"
)


def paper_pdf(doc: Paper) -> bytes:
    """The paper as a PDF that claims PDF/UA-1."""
    questions = [(q, space_mm(q.required_lines)) for q in doc.questions]
    return pdf(
        "paper.html", doc=doc, questions=questions, pitch=PITCH_MM, rule=_RULE, invented=INVENTED
    )


def space_mm(required_lines: int) -> int:
    """The height in mm of the space for working: in proportion to the lines, up to a page."""
    return PITCH_MM * min(RULES_PER_LINE * max(required_lines, 1), MOST_RULES)
