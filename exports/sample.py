"""What does the second marker get? A moderation sample as a tagged PDF."""

from __future__ import annotations

from exports.documents import INVENTED, Sample, SampleQuestion
from exports.rendering import pdf

WIDEST_BESIDE = 26
"""Characters of typed text that a column of 40 mm holds."""


def sample_pdf(doc: Sample) -> bytes:
    """The sample as a PDF that claims PDF/UA-1; first marks are left out unless asked for."""
    return pdf("sample.html", doc=doc, invented=INVENTED, stands_wide=stands_wide)


def stands_wide(question: SampleQuestion) -> bool:
    """Whether a line is too long to stand beside the mark points."""
    return any(len(line.text) > WIDEST_BESIDE for line in question.lines)
