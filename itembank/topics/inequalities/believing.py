"""What must a line look like for an error to be believed of it? Each of its parts by itself."""

from __future__ import annotations

from collections.abc import Sequence
from typing import NamedTuple

from itembank.topics.catalogue import CommonError
from itembank.topics.inequalities.following import pairings, sign_error
from itembank.topics.inequalities.lines import Inequality, Parts, ray, same_boundary
from itembank.topics.judging import Wrong
from itembank.topics.linear_equations import following
from itembank.topics.linear_equations.following import Where, fit_error


class Made(NamedTuple):
    """A part after an error of equations: where a line must look like it (``where``)."""

    after: Inequality
    where: Where | None


class Kept(NamedTuple):
    """A part that the error leaves right: a line's part follows from ``source``."""

    source: Inequality


class Signed(NamedTuple):
    """A part whose sides follow from ``source`` and whose sign may be wrong, as ``error`` is."""

    source: Inequality
    error: CommonError


Believed = tuple[Made | Kept | Signed, ...]


def fits(wrong: Wrong, form: Parts, either: bool = False) -> int | None:
    """What a person pays to get from an error to a line; None where it is not natural.

    ``either`` tells that one of two parts is enough: they then share no middle.
    """
    if not isinstance(wrong.where, tuple) or len(wrong.where) != len(form):
        return None
    costs = []
    middles = {part.equation.left for part in wrong.after}
    one_middle = len(middles) < len(form) > 1 and not either
    for pairing in pairings(len(form), len(form)):
        pairs = [(wrong.where[i], part) for i, part in zip(pairing, form, strict=True)]
        found = [_fit(believed, part) for believed, part in pairs]
        fits = [fit for fit in found if fit is not None]
        if len(fits) < len(found) or not _is_made(pairs):
            continue
        if not one_middle or len({abs(fit.factor) for fit in fits}) == 1:
            costs.append(max(fit.cost for fit in fits))
    return min(costs, default=None)


def is_of_signs(wrong: Wrong) -> bool:
    """Whether an error is one of the sign alone."""
    return isinstance(wrong.where, tuple) and all(isinstance(one, Signed) for one in wrong.where)


def _is_made(pairs: Sequence[tuple[Made | Kept | Signed, Inequality]]) -> bool:
    """Whether an error of the sign is made in one part at least, and no other one beside it."""
    found = [
        (sign_error(believed.source, part), believed.error)
        for believed, part in pairs
        if isinstance(believed, Signed)
    ]
    made = [error for error, _ in found if error is not None]
    return not found or (bool(made) and all(error is found[0][1] for error in made))


def _fit(believed: Made | Kept | Signed, part: Inequality) -> following.Fit | None:
    if isinstance(believed, Made):
        after = believed.after
        if not same_boundary(after, part):
            return None
        if part.sign != "=" and ray(part) != ray(after):
            return None
        return fit_error(after.equation, part.equation, believed.where)
    if not same_boundary(believed.source, part):
        return None
    right = part.sign == "=" or ray(part) == ray(believed.source)
    if isinstance(believed, Kept) and not right:
        return None
    return following.fit(believed.source.equation, part.equation)
