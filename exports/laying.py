"""How is a worked solution laid out beside its marks? Topic and scheme data to document data."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import fields

from exports.documents import (
    GuideError,
    GuideLine,
    GuidePoint,
    GuideQuestion,
    GuideRoute,
    PaperQuestion,
    SampleLine,
    SamplePoint,
    SampleQuestion,
)
from exports.forms import tried_forms
from exports.number_lines import drawn, empty
from itembank.topics.kinds import Route, Solution
from schemes.comparing import earning
from schemes.marking import mark_script
from schemes.scheme import PICTURE, MarkPoint, Scheme, Settings
from schemes.verdicts import MarkedScript, ScriptLine


def paper_question(instruction: str, solution: Solution, scheme: Scheme) -> PaperQuestion:
    """A question whose space for working follows from its longest route."""
    longest = max(sum(line.required for line in route.lines) for route in solution.routes)
    asked = any(point.stage == PICTURE for point in scheme.points)
    return PaperQuestion(
        instruction,
        solution.problem,
        scheme.total,
        longest,
        solution.figure,
        empty(solution.number_line) if asked and solution.number_line else None,
    )


def guide_question(
    instruction: str,
    solution: Solution,
    scheme: Scheme,
    errors: Sequence[GuideError] = (),
    *,
    show_working: bool = False,
) -> GuideQuestion:
    """Everything that the guide says of one question; the forms are tried on the marker.

    ``show_working`` tells that the item asks for working, so that a value alone is a special case.
    """
    accepted, refused = tried_forms(solution, scheme)
    return GuideQuestion(
        instruction=instruction,
        problem=solution.problem,
        points=tuple(_guide_point(point) for point in scheme.points),
        routes=tuple(_guide_route(route, scheme) for route in solution.routes),
        accepted=accepted,
        refused=refused,
        follow_through=() if scheme.routes else tuple(_follow_through(scheme.points)),
        settings=tuple(differing_settings(scheme.settings)),
        errors=tuple(errors),
        notes=(*_value_alone(scheme, show_working), *_by_routes(solution, scheme), *scheme.notes),
        figure=solution.figure,
        number_line=drawn(solution.number_line) if solution.number_line else None,
    )


def guide_error(name: str, line: str, marked: MarkedScript) -> GuideError:
    """What a common error earns, from the marks of a script that makes it at ``line``."""
    return GuideError(
        name=name,
        line=line,
        points=tuple((point.point, point.awarded) for point in marked.points),
        total=marked.total,
        lowest=marked.lowest,
        highest=marked.highest,
    )


def sample_question(
    number: int, scheme: Scheme, lines: Sequence[ScriptLine], marked: MarkedScript | None
) -> SampleQuestion:
    """One question of a chosen script; ``marked`` holds the first marks, where there are any."""
    first = {point.point: point for point in marked.points} if marked else {}
    points = []
    for point in scheme.points:
        mark = first.get(point.point)
        points.append(
            SamplePoint(
                point=point.point,
                value=point.value,
                text=point.text,
                awarded=mark.awarded if mark else None,
                line=mark.line if mark else None,
                reason=mark.reason if mark else "",
            )
        )
    written = tuple(SampleLine(line.text, line.crossed_out) for line in lines)
    return SampleQuestion(number, scheme.problem, written, tuple(points))


def beside(route: Route, scheme: Scheme) -> list[list[str]]:
    """The points that stand beside each line of ``route``; every point stands beside one.

    A point stands beside the required line at which a script cut off there first earns it, by the
    marker: the guide and the engine say the same. What no line earns stands beside the last.
    """
    if scheme.routes:
        return [list(earning(line.stage)) for line in route.lines]
    placed: list[list[str]] = [[] for _ in route.lines]
    waiting = [point.point for point in scheme.points]
    for place, line in enumerate(route.lines):
        if not place or not line.required:
            continue
        script = [ScriptLine(one.text) for one in route.lines[: place + 1]]
        marked = mark_script(scheme, script, show_working=True)
        earned = {point.point for point in marked.points if point.awarded}
        placed[place] = [point for point in waiting if point in earned]
        waiting = [point for point in waiting if point not in earned]
    placed[-1].extend(waiting)
    return placed


def differing_settings(settings: Settings) -> Iterable[tuple[str, str]]:
    """The settings that differ from the default, as (name, value) in words."""
    for f in fields(Settings):
        value = getattr(settings, f.name)
        if value != f.default:
            words = {True: "yes", False: "no", None: "none"}
            shown = words[value] if isinstance(value, bool | None) else str(value)
            yield _SETTING_WORDS.get(f.name, f.name.replace("_", " ")), shown


_SETTING_WORDS = {
    "unwritten_slip": "slip with the operation not written",
    "value_only": "right value alone, where working is asked for",
    "lines_must_be_seen": "required lines must be seen",
    "accuracy_stands_unseen": "accuracy mark stands after an unseen line",
    "lowest_terms": "fraction in lowest terms",
    "mixed_number": "mixed number required",
    "refuse_sign_below": "a sign below the fraction bar is refused",
    "bare_value": "a bare number as the last line is accepted",
    "attempts": "of two attempts, the one that counts",
    "corrections": "a wrong line put right by the next is ignored",
    "trials": "a value found by trials counts as",
    "decimal_comma": "decimal comma",
}


def _by_routes(solution: Solution, scheme: Scheme) -> Iterable[str]:
    """The answer, and what the engine does where it does not solve the problem."""
    if scheme.routes:
        yield f"Answer: {solution.answer}"
        yield (
            "These routes are the author's own. The engine compares working with their lines, and "
            "leaves to the marker every point that it does not find there."
        )


def _value_alone(scheme: Scheme, show_working: bool) -> Iterable[str]:
    """What a right value without working earns where working is asked for (conventions 5.1)."""
    if not show_working or scheme.total == 1 or scheme.routes:
        return
    yield {
        "special": "SC B1: a right value without working earns 1 mark in place of everything.",
        "full": "A right value without working earns full marks.",
        "none": "A right value without working earns nothing.",
    }[scheme.settings.value_only]


def _guide_route(route: Route, scheme: Scheme) -> GuideRoute:
    placed = beside(route, scheme)
    lines = (
        GuideLine(line.text, line.step, line.required, tuple(marks))
        for line, marks in zip(route.lines, placed, strict=True)
    )
    return GuideRoute(route.name, tuple(lines))


def _guide_point(point: MarkPoint) -> GuidePoint:
    return GuidePoint(
        point=point.point,
        value=point.value,
        text=point.text,
        depends_on=point.depends_on,
        follow_through=point.follow_through,
        must_be_seen=point.must_be_seen,
    )


def _follow_through(points: Sequence[MarkPoint]) -> Iterable[str]:
    """What each accuracy or independent point makes of the candidate's own wrong value."""
    for point in points:
        if point.kind == "M" or point.stage == PICTURE:
            continue
        if point.follow_through:
            yield (
                f"{point.point} follows through: right for the candidate's own line, with a "
                "method mark earned and no stage removed by the error."
            )
        else:
            yield f"{point.point} does not follow through: correct answer only."
