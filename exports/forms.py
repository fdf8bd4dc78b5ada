"""Which forms of the value are accepted, which refused? Proposed here, decided by the marker."""

from __future__ import annotations

import math
import re
from collections.abc import Iterator, Sequence

from exports.documents import GuideForm
from itembank.algebra.exact import Fraction
from itembank.algebra.reading import ReadingFault, read_line
from itembank.algebra.showing import typed
from itembank.topics.kinds import Solution
from schemes.marking import mark_script
from schemes.scheme import Scheme
from schemes.verdicts import ScriptLine

Forms = tuple[GuideForm, ...]


def tried_forms(solution: Solution, scheme: Scheme) -> tuple[Forms, Forms]:
    """The accepted and the refused forms of the value, each tried as the last line of a script.

    Both are empty where the problem has no single value (no solution, all values).
    """
    if not solution.forms:
        return (), ()
    named = _ONE_VALUE.fullmatch(solution.answer)
    unknown = named[1] if named else ""
    proposed = {_stated(unknown, form): "" for form in _shown_apart(solution.forms)}
    value = exact(solution.forms)
    for text, reason in doubtful_forms(value) if value is not None else ():
        proposed.setdefault(_stated(unknown, text), reason)
    forms = [GuideForm(text, reason) for text, reason in proposed.items()]
    ranges = [_range(solution, scheme, form) for form in forms]
    judged = list(zip(forms, ranges, strict=True))
    accepted = [
        form for form, (lowest, _) in judged if lowest == scheme.total - scheme.for_pictures
    ]
    refused = [form for form, (_, highest) in judged if highest < scheme.total]
    return tuple(accepted), tuple(refused)


def _shown_apart(forms: Sequence[str]) -> list[str]:
    """The forms that look different once they are set: ``x = 2, x = 3`` is ``x = 2 or x = 3``."""
    found: dict[str, str] = {}
    for form in forms:
        try:
            found.setdefault(typed(read_line(form)), form)
        except ReadingFault:
            found.setdefault(form, form)
    return list(found.values())


def exact(forms: tuple[str, ...]) -> Fraction | None:
    """The value, from the first form that is an integer or a plain fraction."""
    for form in forms:
        if match := _PLAIN.fullmatch(form.partition("=")[2].strip() or form):
            return Fraction(match[0])
    return None


def doubtful_forms(value: Fraction) -> Iterator[tuple[str, str]]:
    """Forms that markers ask about, as (typed text, what is doubtful in it)."""
    top, bottom = value.numerator, value.denominator
    if bottom == 1:
        yield f"{2 * top}/2", "unfinished: the division is left"
        return
    yield f"{2 * top}/{2 * bottom}", "not in lowest terms"
    yield f"{-top}/{-bottom}" if top > 0 else f"{-top}/(-{bottom})", "sign below the fraction bar"
    whole, rest = divmod(abs(top), bottom)
    sign = "-" if top < 0 else ""
    if whole:
        yield f"{sign}{whole} {rest}/{bottom}", "mixed number"
    if whole > 1:
        yield f"{sign}{whole - 1} {rest + bottom}/{bottom}", "improper part in a mixed number"
    places = _places_to_round(value)
    if places and abs(value) * 10**places >= 1:
        yield _rounded(value, places), "rounded"


_ONE_VALUE = re.compile(r"([^\W\d_]) = [^=,]*")
_PLAIN = re.compile(r"-?\d+(?:/\d+)?")


def _places_to_round(value: Fraction) -> int:
    """Two decimal places where the decimal does not end, one where it has more, else none."""
    if (value * 10).denominator == 1:
        return 0
    return 1 if (value * 10**6).denominator == 1 else 2


def _rounded(value: Fraction, places: int) -> str:
    """The decimal to ``places``, halves away from nought, as a pupil writes it."""
    scaled = math.floor(abs(value) * 10**places + Fraction(1, 2))
    whole, rest = divmod(scaled, 10**places)
    sign = "-" if value < 0 and scaled else ""
    return f"{sign}{whole}.{rest:0{places}d}"


def _stated(unknown: str, form: str) -> str:
    return form if "=" in form or not unknown else f"{unknown} = {form}"


def _range(solution: Solution, scheme: Scheme, form: GuideForm) -> tuple[int, int]:
    """The lowest and highest total of a right script that states the value in this form alone."""
    route = solution.routes[0].lines
    texts = [
        line.text for line in route if line.required and line.stage != solution.stages[-1].name
    ]
    marked = mark_script(scheme, [ScriptLine(text) for text in (*texts, form.text)])
    return marked.lowest, marked.highest
