"""Which single wrong number, or which error of the sign beside another, explains a line?"""

from __future__ import annotations

from collections.abc import Iterator

from itembank.topics.inequalities.believing import Made
from itembank.topics.inequalities.following import follows, pairings, sign_error
from itembank.topics.inequalities.lines import Inequality, Parts, is_solved, ray
from itembank.topics.judging import Slip, Wrong
from itembank.topics.linear_equations.following import fit_error
from itembank.topics.linear_equations.judging import wrong_of
from itembank.topics.linear_equations.slips import find_pairs as pairs_of_equation
from itembank.topics.linear_equations.slips import find_slip as slip_of_equation


def find_slip(source: Parts, form: Parts) -> Slip | None:
    """The one number wrong in a line, its signs right; the same one in both parts is one.

    So is a rounding of both ends.
    """
    found = []
    for pairing in pairings(len(source), len(form)):
        slips = [_slip(source[i], part) for i, part in zip(pairing, form, strict=True)]
        made = [slip for slip in slips if isinstance(slip, Slip)]
        alike = len({slip.words for slip in made}) == 1 or all(map(_is_rounding, made))
        if None not in slips and made and alike:
            found.append(max(made, key=lambda slip: slip.cost))
    return min(found, key=lambda slip: slip.cost) if found else None


def rounds(source: Parts, form: Parts) -> bool:
    """Whether a line only rounds the ends of a solution that stands."""
    found = find_slip(source, form) if all(map(is_solved, source)) else None
    return found is not None and _is_rounding(found)


def _is_rounding(slip: Slip) -> bool:
    return slip.name == "rounding"


def _slip(source: Inequality, part: Inequality) -> Slip | str | None:
    """The slip in a part, ``right`` where it follows, None where neither."""
    if follows(source, part) is not None:
        return "right"
    mine, theirs = ray(part), ray(source)
    if part.sign != "=" and (mine.sign != theirs.sign or mine.said or theirs.said):
        return None
    return slip_of_equation(source.equation, part.equation)


def find_pairs(
    source: Parts, form: Parts, candidates: Iterator[Wrong], last: str
) -> Iterator[tuple[Wrong, Wrong]]:
    """Two errors in a line of one part, each exact: one of the sign, or both of equations (3.11).

    ``candidates`` are the errors of the source, ``last`` is the stage of the solution.
    """
    if len(source) != 1 or len(form) != 1:
        return
    (part,) = form
    for wrong in candidates:
        believed = wrong.where[0] if isinstance(wrong.where, tuple) else None
        if wrong.both is not None or not isinstance(believed, Made) or last in wrong.stages:
            continue
        error = sign_error(believed.after, part)
        if error is None:
            continue
        if fit_error(believed.after.equation, part.equation, believed.where) is not None:
            yield wrong, Wrong(error.name, error.words, (last,), (), form)
    if part.sign == "=" or ray(part).sign == ray(source[0]).sign:
        for one, other in pairs_of_equation(source[0].equation, part.equation):
            yield wrong_of(one), wrong_of(other)
