"""What is a script worth, typed in one line? A problem and lines as text -> the awards as text."""

from __future__ import annotations

from collections.abc import Iterable

import pytest

from schemes.building import default_scheme, with_follow_through, with_line_seen
from schemes.marking import mark_script
from schemes.scheme import Scheme, Settings
from schemes.verdicts import MarkedScript, ScriptLine


def marks(
    problem: str,
    lines: str | list[str],
    *,
    show_working: bool = False,
    seen: Iterable[str] = (),
    follow_through: bool = False,
    scheme: Scheme | None = None,
    **settings: object,
) -> str:
    """The awards of a script, as ``M1 A0``; ``M0 A0, referred 0-1`` where a teacher decides.

    ``lines`` are a list, or one text with `` // `` between the lines; ``~6x = 16~`` is a line
    crossed out. ``seen`` names the points whose required line must be seen, ``follow_through``
    lets A1 follow through, and every other keyword is a setting. A special case is ``SC B1``.
    """
    marked = marked_script(
        problem,
        lines,
        show_working=show_working,
        seen=seen,
        follow_through=follow_through,
        scheme=scheme,
        **settings,
    )
    awards = marked.special or awards_of(marked)
    if marked.referred:
        return f"{awards}, referred {marked.lowest}-{marked.highest}"
    assert marked.lowest == marked.total == marked.highest
    return awards


def marked_script(
    problem: str,
    lines: str | list[str],
    *,
    show_working: bool = False,
    seen: Iterable[str] = (),
    follow_through: bool = False,
    scheme: Scheme | None = None,
    **settings: object,
) -> MarkedScript:
    """The same script with everything that its marks rest on."""
    used = scheme or default_scheme(problem, settings=Settings(**settings))  # type: ignore[arg-type]
    for point in seen:
        used = with_line_seen(used, point)
    if follow_through:
        used = with_follow_through(used, "A1")
    typed = lines.split(" // ") if isinstance(lines, str) else lines
    return mark_script(used, [_script_line(line) for line in typed], show_working=show_working)


def awards_of(marked: MarkedScript) -> str:
    """The awards alone, in the order of the mark points."""
    return " ".join(f"{point.point[0]}{point.awarded}" for point in marked.points)


def table(*rows: tuple[str, ...]) -> pytest.MarkDecorator:
    """Rows of (what is shown, problem, lines, expected awards) as data of a test."""
    return pytest.mark.parametrize(
        ("problem", "lines", "expected"), [pytest.param(*row[1:], id=row[0]) for row in rows]
    )


def _script_line(text: str) -> ScriptLine:
    if len(text) > 1 and text[0] == text[-1] == "~":
        return ScriptLine(text[1:-1], crossed_out=True)
    return ScriptLine(text)
