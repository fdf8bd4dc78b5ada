"""Is a scheme fair before anyone sits the test? What it gives to thousands of simulated scripts.

An error that costs its method mark, and the accuracy mark with it, is as it should be and is
described; what costs more is an alarm. The report advises; it changes nothing in the scheme.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Sequence

from schemes.audited import (
    BELOW,
    COSTS_MORE,
    NEVER,
    UNEARNED,
    UNEQUAL,
    Alarm,
    Audit,
    ErrorEarns,
    Example,
    KindTried,
    Lost,
    PointEarned,
    RouteEarns,
)
from schemes.blaming import VALUE_IMPLIES, rule
from schemes.marking import mark_script
from schemes.scheme import MarkPoint, Scheme
from schemes.simulating import ERROR, MISREAD, SLIP
from schemes.trying import ALL_LINES, KINDS, REQUIRED_LINES, VALID, Trial, trials
from schemes.verdicts import MarkedScript

Marked = tuple[Trial, MarkedScript]


def audit(
    scheme: Scheme,
    *,
    scripts: int = 2000,
    seed: int = 1,
    watch: Callable[[int], None] | None = None,
) -> Audit:
    """Try a scheme on simulated scripts; ``watch`` is told how many there have been.

    The systematic scripts are always all tried; chance fills up to ``scripts``.

    Raises:
        ReadingFault: where the scheme's problem cannot be read.
        TopicError: where its topic does not take it.
    """
    found: dict[tuple[str, ...], Marked] = {}
    tried = 0
    for trial in trials(scheme, scripts, seed):
        tried += 1
        if trial.texts not in found:
            found[trial.texts] = (trial, mark_script(scheme, trial.lines))
        if watch is not None:
            watch(tried)
    marked = list(found.values())
    routes = _routes(found, scheme, seed)
    points = tuple(_point(point, marked) for point in scheme.points)
    alarms = (
        *_below(scheme, marked),
        *_costing_more(scheme, marked),
        *_never(points, marked),
        *_unearned(points, marked),
        *_unequal(routes),
    )
    return Audit(
        scheme, seed, tried, len(marked), _kinds(marked), routes, points,
        _errors(scheme, marked), alarms,
    )  # fmt: skip


def lost_points(scheme: Scheme, marked: MarkedScript) -> tuple[Lost, ...]:
    """The mark points that a script does not earn in full, each with the rule that takes it."""
    return tuple(
        Lost(mark.point, rule(mark, point.kind, marked))
        for point, mark in zip(scheme.points, marked.points, strict=True)
        if mark.awarded < mark.value
    )


def _example(trial: Trial, marked: MarkedScript) -> Example:
    awards = " ".join(p.point if p.awarded else f"{p.point[:1]}0" for p in marked.points)
    return Example(trial.texts, marked.total, marked.lowest, marked.highest, awards)


def _kinds(marked: Sequence[Marked]) -> tuple[KindTried, ...]:
    scripts = Counter(trial.kind for trial, _ in marked)
    referred = Counter(trial.kind for trial, script in marked if script.referred)
    return tuple(KindTried(kind, scripts[kind], referred[kind]) for kind in KINDS)


def _routes(
    found: dict[tuple[str, ...], Marked], scheme: Scheme, chance: int
) -> tuple[RouteEarns, ...]:
    totals: dict[str, dict[str, int]] = {}
    for trial in trials(scheme, 0, chance):
        if trial.kind == VALID and trial.name in (ALL_LINES, REQUIRED_LINES):
            totals.setdefault(trial.route, {})[trial.name] = found[trial.texts][1].total
    return tuple(RouteEarns(name, of[ALL_LINES], of[REQUIRED_LINES]) for name, of in totals.items())


def _point(point: MarkPoint, marked: Sequence[Marked]) -> PointEarned:
    awarded = wrong_step = without = 0
    for trial, script in marked:
        mark = next(mark for mark in script.points if mark.point == point.point)
        alone = point.kind == "M" and mark.reason.startswith(VALUE_IMPLIES)
        awarded += mark.awarded > 0 and not alone
        if _plays(trial, point.stage):
            wrong_step += 1
            without += _unearned_in(trial, script)
    return PointEarned(point.point, point.stage, point.value, awarded, wrong_step, without)


def _plays(trial: Trial, stage: str) -> bool:
    """Whether the script plays a step wrong that can serve a point's stage, in a written line."""
    return bool(set(trial.stages) & set(stage.split(" + ")))


def _unearned_in(trial: Trial, script: MarkedScript) -> bool:
    """Whether every point that the wrong step can serve is awarded for certain all the same."""
    return all(
        mark.awarded > 0 and mark.decided for mark in script.points if _plays(trial, mark.stage)
    )


def _errors(scheme: Scheme, marked: Sequence[Marked]) -> tuple[ErrorEarns, ...]:
    """What each common error earns, the dearest first."""
    groups: dict[str, list[Marked]] = {}
    for trial, script in marked:
        if trial.kind == ERROR:
            groups.setdefault(trial.name, []).append((trial, script))
    found = [_earns(scheme, name, group) for name, group in groups.items()]
    return tuple(sorted(found, key=lambda one: (one.commonest, one.lowest, one.name)))


def _earns(scheme: Scheme, name: str, group: Sequence[Marked]) -> ErrorEarns:
    totals = Counter(script.total for _, script in group)
    commonest = min(totals, key=lambda total: (-totals[total], total))
    trial, script = next(one for one in group if one[1].total == commonest)
    return ErrorEarns(
        name=name,
        words=next((trial.words for trial, _ in group if trial.words), ""),
        scripts=len(group),
        lowest=min(script.lowest for _, script in group),
        commonest=commonest,
        highest=max(script.highest for _, script in group),
        referred=sum(script.referred for _, script in group),
        lost=lost_points(scheme, script),
        example=_example(trial, script),
    )


def _below(scheme: Scheme, marked: Sequence[Marked]) -> list[Alarm]:
    """Valid scripts that do not earn every mark, grouped by what they lose and why."""
    groups: dict[tuple[Lost, ...], list[Marked]] = {}
    for trial, script in marked:
        if trial.kind == VALID and (script.total < scheme.total or script.referred):
            groups.setdefault(lost_points(scheme, script), []).append((trial, script))
    return [_alarm(BELOW, group[0][0].name, lost, group) for lost, group in groups.items()]


def _costing_more(scheme: Scheme, marked: Sequence[Marked]) -> list[Alarm]:
    """One error, slip or misread that takes more than one method mark, for certain."""
    groups: dict[tuple[str, tuple[Lost, ...]], list[Marked]] = {}
    for trial, script in marked:
        if trial.kind not in (ERROR, SLIP, MISREAD) or script.referred:
            continue
        lost = lost_points(scheme, script)
        if _methods(scheme, lost) > 1:
            groups.setdefault((trial.name, lost), []).append((trial, script))
    return [_alarm(COSTS_MORE, name, lost, group) for (name, lost), group in groups.items()]


def _methods(scheme: Scheme, lost: Sequence[Lost]) -> int:
    """How many of the points lost are method points, or a scheme's own for a check."""
    value = scheme_value(scheme)
    return len({one.point for one in lost} - value)


def scheme_value(scheme: Scheme) -> set[str]:
    """The points that reward the value or the conclusion: accuracy marks, or a lone B mark."""
    accuracy = {point.point for point in scheme.points if point.kind == "A"}
    return accuracy or {scheme.points[-1].point}


def _alarm(kind: str, about: str, lost: Sequence[Lost], group: Sequence[Marked]) -> Alarm:
    words = ", ".join(one.point for one in lost)
    rules = tuple(dict.fromkeys(one.rule for one in lost))
    said = f"loses {words}" if lost else "is referred to a teacher"
    return Alarm(kind, about, said, rules, len(group), _example(*group[0]))


def _never(points: Sequence[PointEarned], marked: Sequence[Marked]) -> list[Alarm]:
    return [
        Alarm(NEVER, point.point, f"{point.point} ({point.stage}) is awarded in no script",
              (), len(marked))
        for point in points
        if not point.awarded
    ]  # fmt: skip


def _unearned(points: Sequence[PointEarned], marked: Sequence[Marked]) -> list[Alarm]:
    """Points awarded for certain in scripts that play their stage's step wrong, error by error."""
    groups: dict[tuple[str, str], list[Marked]] = {}
    for point in points:
        for trial, script in marked:
            if _plays(trial, point.stage) and _unearned_in(trial, script):
                groups.setdefault((point.point, trial.name), []).append((trial, script))
    return [
        Alarm(UNEARNED, point, f"{point} is awarded though its step is played wrong: {error}",
              (), len(group), _example(*group[0]))
        for (point, error), group in groups.items()
    ]  # fmt: skip


def _unequal(routes: Sequence[RouteEarns]) -> list[Alarm]:
    worth = {(route.all_lines, route.required_lines) for route in routes}
    if len(worth) == 1:
        return []
    said = "; ".join(f"{r.name}: {r.all_lines}, {r.required_lines}" for r in routes)
    words = f"with all lines, and with the required ones: {said}"
    return [Alarm(UNEQUAL, "routes", words, (), len(routes))]
