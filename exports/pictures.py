"""What do the figures of an assessment look like? Inline SVG for a page, drawn with Matplotlib.

Nothing is told by colour alone: bars carry their numbers. Text stays text, so that a picture is
small and scales with the page; every picture names itself by ``role="img"`` and a label.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Sequence
from io import StringIO
from textwrap import wrap
from typing import Any
from zlib import crc32

from markupsafe import Markup, escape

from exports.documents import ErrorCount, SummaryQuestion
from schemes.audited import ErrorEarns

WIDTH = 4.8
"""Inches: on a telephone the text is still legible, on a desk not out of scale."""

MOST_NUMBERED = 45
"""Bars that have room for a number above each."""

INK, BAR, FAINT, RANGE = "#1a1a1a", "#4a6d8c", "#c9d3dc", "#8496a6"

BESIDE = {"textcoords": "offset points", "fontsize": 7}

Draw = Callable[[Any], None]


def distribution(counts: Sequence[tuple[int, int, int]], label: str) -> Markup:
    """Bars of how many scripts have each total; each as (first total, last total, scripts)."""

    def draw(axes: Any) -> None:
        for first, last, scripts in counts:
            middle = (first + last) / 2
            axes.bar(middle, scripts, width=last - first + 0.8, color=BAR)
            if scripts and len(counts) <= MOST_NUMBERED:
                axes.annotate(str(scripts), (middle, scripts), (0, 2), ha="center", **BESIDE)
        axes.set_xlabel("total")
        axes.set_ylabel("scripts")
        axes.xaxis.get_major_locator().set_params(integer=True)
        axes.yaxis.get_major_locator().set_params(integer=True)
        axes.set_xlim(-0.6, counts[-1][1] + 0.6)
        axes.margins(y=0.1)

    return _svg(draw, 2.6, label)


def facilities(questions: Sequence[SummaryQuestion], label: str) -> Markup:
    """A row for each question, a box for each mark point, filled as far as its facility."""

    def draw(axes: Any) -> None:
        for row, question in enumerate(questions):
            for column, point in enumerate(question.points):
                share = float(point.facility)
                axes.barh(row, 0.92, height=0.5, left=column, color=FAINT)
                axes.barh(row, 0.92 * share, height=0.5, left=column, color=BAR)
                words = f"{point.point}: {percent(point.facility)}"
                axes.text(column, row - 0.31, words, fontsize=7, va="bottom")
        axes.set_yticks(range(len(questions)), [str(n + 1) for n in range(len(questions))])
        axes.set_ylim(len(questions) - 0.6, -0.8)
        axes.set_xlim(-0.05, max(len(q.points) for q in questions))
        axes.set_ylabel("question")
        axes.set_xticks([])
        axes.spines["bottom"].set_visible(False)

    return _svg(draw, 0.5 + 0.34 * len(questions), label)


def commonest(errors: Sequence[ErrorCount], label: str) -> Markup:
    """A bar for each error, the commonest on top."""

    def draw(axes: Any) -> None:
        names = ["\n".join(wrap(error.name, 30)) for error in errors]
        counts = [error.scripts for error in errors]
        axes.barh(range(len(errors)), counts, height=0.6, color=BAR)
        axes.set_yticks(range(len(errors)), names)
        axes.invert_yaxis()
        for place, count in enumerate(counts):
            axes.annotate(str(count), (count, place), (3, 0), va="center", **BESIDE)
        axes.set_xlabel("scripts")
        axes.xaxis.get_major_locator().set_params(integer=True)
        axes.margins(x=0.1)

    lines = sum(max(1, len(wrap(error.name, 30))) for error in errors)
    return _svg(draw, 0.6 + 0.14 * lines + 0.14 * len(errors), label)


def earnings(errors: Sequence[ErrorEarns], total: int, label: str) -> Markup:
    """A row for each error: a line from its lowest to its highest total, a dot on the commonest."""

    def draw(axes: Any) -> None:
        names = ["\n".join(wrap(error.name, 30)) for error in errors]
        for row, error in enumerate(errors):
            axes.plot((error.lowest, error.highest), (row, row), color=RANGE, linewidth=4,
                      solid_capstyle="round", zorder=1)  # fmt: skip
            axes.plot(error.commonest, row, "o", color=INK, markersize=6, zorder=2)
            words = f"{error.commonest} of {total}"
            if error.lowest < error.highest:
                words += f" ({error.lowest} to {error.highest})"
            if error.referred:
                words += f", {percent(error.share_referred)} referred"
            axes.annotate(words, (total, row), (12, 0), va="center", **BESIDE)
        axes.set_yticks(range(len(errors)), names)
        axes.set_ylim(len(errors) - 0.4, -0.6)
        axes.set_xlim(-0.2, total + 0.2)
        axes.set_xlabel("total")
        axes.set_xticks(range(total + 1))
        axes.grid(axis="x", color=FAINT, linewidth=0.5, zorder=0)

    lines = sum(max(1, len(wrap(error.name, 30))) for error in errors)
    return _svg(draw, 0.6 + 0.14 * lines + 0.12 * len(errors), label)


def percent(share: Any) -> str:
    """A share as a whole percentage, halves to the even number."""
    return f"{round(share * 100)}%"


def _svg(draw: Draw, height: float, label: str) -> Markup:
    """The picture as an ``<svg>`` element; its ids are its own, so that several fit one page."""
    import matplotlib as mpl
    from matplotlib.figure import Figure

    settings: Any = {
        "svg.fonttype": "none",
        "svg.hashsalt": label,
        "font.family": "sans-serif",
        "font.size": 8,
        "text.color": INK,
        "axes.labelcolor": INK,
        "xtick.color": INK,
        "ytick.color": INK,
        "axes.spines.top": False,
        "axes.spines.right": False,
    }
    with mpl.rc_context(settings):
        figure = Figure(figsize=(WIDTH, height), layout="constrained")
        draw(figure.add_subplot())
        written = StringIO()
        figure.savefig(written, format="svg", transparent=True, metadata={"Date": None})
    text = written.getvalue()
    return _inline(text[text.index("<svg") :], label)


def _inline(svg: str, label: str) -> Markup:
    """The element with a label for screen readers and no size of its own."""
    prefix = f"p{crc32(label.encode()):x}"
    svg = re.sub(r'\bid="', f'id="{prefix}-', svg)
    svg = re.sub(r'(href="#|url\(#)', rf"\g<1>{prefix}-", svg)
    svg = re.sub(r"<metadata>.*?</metadata>", "", svg, flags=re.DOTALL)
    svg = re.sub(r'(<svg[^>]*?) height="[^"]*"', r"\1", svg, count=1)
    svg = re.sub(r'(<svg[^>]*?) width="[^"]*"', r"\1", svg, count=1)
    return Markup(svg.replace("<svg", f'<svg role="img" aria-label="{escape(label)}"', 1))
