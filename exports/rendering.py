"""How does a filled template become a page or a tagged PDF?

The fonts come from the installed packages, so that a document looks the same on every machine:
STIX for text and DejaVu for the few signs that STIX lacks, both free to use and to embed (the STIX
and Bitstream Vera font licences), both shipped with Matplotlib. Maths is set by
:mod:`exports.typeset`.
"""

from __future__ import annotations

import re
from functools import cache
from importlib.util import find_spec
from pathlib import Path
from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from collections.abc import Callable

    from jinja2 import Environment
    from markupsafe import Markup

TEMPLATES = Path(__file__).parent / "templates"


def pdf(template: str, **context: Any) -> bytes:
    """The template filled with ``context`` as a PDF that claims PDF/UA-1 (ISO 14289-1)."""
    from weasyprint import HTML

    from exports.tagging import mend_tags

    page = filled(template, fonts=font_faces(), **context)
    document = HTML(string=page, base_url=str(TEMPLATES))
    written = document.write_pdf(pdf_variant="pdf/ua-1", finisher=mend_tags)
    assert isinstance(written, bytes)  # always, where no target is given
    return written


def filled(template: str, **context: Any) -> str:
    """The template filled with ``context``; everything is escaped but maths and pictures."""
    return environment().get_template(template).render(**context)


@cache
def environment() -> Environment:
    """The templates, with the filters ``maths`` (PDF) and ``mathml`` (browser)."""
    from jinja2 import Environment, FileSystemLoader, StrictUndefined

    made = Environment(
        loader=FileSystemLoader(TEMPLATES),
        autoescape=True,
        undefined=StrictUndefined,
        trim_blocks=True,
        lstrip_blocks=True,
        finalize=_typographic,
    )
    made.filters.update(maths=_maths, mathml=_mathml, awards=dict, count=counted)
    return made


def counted(number: int, noun: str) -> str:
    """``1 mark``, ``2 marks``."""
    return f"{number} {noun}" if number == 1 else f"{number} {noun}s"


@cache
def font_faces() -> str:
    """CSS that names the fonts' files."""
    spec = find_spec("matplotlib")
    if spec is None or spec.origin is None:
        raise RuntimeError("the fonts are missing: install the package matplotlib")
    folder = Path(spec.origin).parent / "mpl-data" / "fonts" / "ttf"
    return "\n".join(
        f"@font-face {{ font-family: '{family}'; font-weight: {weight}; font-style: {style};"
        f" src: url('{(folder / file).as_uri()}'); }}"
        for family, weight, style, file in _FONTS
    )


_FONTS = (
    ("Text", "normal", "normal", "STIXGeneral.ttf"),
    ("Text", "bold", "normal", "STIXGeneralBol.ttf"),
    ("Text", "normal", "italic", "STIXGeneralItalic.ttf"),
    ("Text", "bold", "italic", "STIXGeneralBolIta.ttf"),
    ("Signs", "normal", "normal", "DejaVuSans.ttf"),
    ("Signs", "bold", "normal", "DejaVuSans-Bold.ttf"),
)


def _typographic(value: object) -> object:
    """Plain text with real apostrophes and minus signs; markup (maths, pictures) stays as it is."""
    if type(value) is not str:
        return value
    return _MINUS.sub("−", value.replace("'", "’"))


_MINUS = re.compile(r"(?<![^\s(])-(?=[\w(])")
"""A hyphen that begins a number or a term (``by -2``), not one within a word or a code."""


def _maths(text: str, widest: float = 36) -> Markup:
    from exports.breaking import fitted_svg

    return _set(text, lambda readable: fitted_svg(readable, widest))


def _mathml(text: str) -> Markup:
    from exports.typeset import inline_mathml

    return _set(text, inline_mathml)


def _set(text: str, setter: Callable[[str], str]) -> Markup:
    """Maths where it can be read; a pupil's unreadable line stands as it was typed."""
    from markupsafe import Markup, escape

    from itembank.algebra.reading import ReadingFault

    try:
        return Markup(setter(text))
    except ReadingFault:
        if "`" in text:
            return _prose(text, setter)
        return Markup(f'<span class="typed">{escape(text)}</span>')


def _prose(text: str, setter: Callable[[str], str]) -> Markup:
    """Words with maths between backticks, as an author types them."""
    from markupsafe import Markup, escape

    pieces = text.split("`")
    return Markup("").join(
        _set(piece, setter) if place % 2 and piece.strip() else escape(_typographic(piece))
        for place, piece in enumerate(pieces)
    )
