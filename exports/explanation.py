"""How does the explanation of one script's marks look? A page for a browser, whole in one file."""

from __future__ import annotations

import re

from exports.documents import INVENTED
from exports.explaining import Explanation
from exports.rendering import filled


def explanation_html(doc: Explanation) -> str:
    """The page: no network, no script; maths as MathML, nothing told by colour alone."""
    return filled("explanation.html", doc=doc, invented=INVENTED, sentence=sentence)


def sentence(text: str) -> str:
    """The text with a capital letter and a full stop; a letter of mathematics keeps its size."""
    word = re.match(r"[A-Za-z]*", text)
    first = word.group() if word else ""
    start = text[:1].upper() + text[1:] if len(first) > 1 else text
    return start if start.endswith((".", "?", "!")) else f"{start}."
