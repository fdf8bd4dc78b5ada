"""What does the marker get? A marking guide as a tagged PDF."""

from __future__ import annotations

from exports.documents import INVENTED, Guide
from exports.rendering import pdf


def guide_pdf(doc: Guide) -> bytes:
    """The guide as a PDF that claims PDF/UA-1."""
    return pdf("guide.html", doc=doc, invented=INVENTED)
