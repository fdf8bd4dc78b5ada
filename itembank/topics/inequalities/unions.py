"""Which numbers meet one of several parts at least? Rays apart, one ray, every number or none."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from itembank.algebra.exact import Fraction
from itembank.algebra.joining import OR
from itembank.algebra.order import is_closed, points_up
from itembank.topics.inequalities.lines import Parts, Ray, ray
from itembank.topics.judging import Shaped

ALL, NONE = "all values", "no solution"


def union(rays: Iterable[Ray]) -> tuple[Ray, ...]:
    """The pieces of a union, that below first; one that says ``all values`` or ``no solution``.

    Empty where a ray's sign is that of equality: there is nothing to unite.
    """
    every = tuple(rays)
    if any(one.sign == "=" for one in every):
        return ()
    if any(one.said == ALL for one in every):
        return (_said(ALL),)
    bounded = [one for one in every if not one.said]
    below = _widest([one for one in bounded if not points_up(one.sign)], 1)
    above = _widest([one for one in bounded if points_up(one.sign)], -1)
    if below and above and _meet(below, above):
        return (_said(ALL),)
    return tuple(one for one in (below, above) if one) or (_said(NONE),)


def _said(words: str) -> Ray:
    return Ray("", Fraction(0), words)


def _widest(rays: Sequence[Ray], way: int) -> Ray | None:
    """The ray that holds the others; of two at one boundary the closed one."""
    found = sorted(rays, key=lambda one: (way * one.boundary, is_closed(one.sign)))
    return found[-1] if found else None


def _meet(below: Ray, above: Ray) -> bool:
    """Whether a ray down and a ray up leave no number between them."""
    if below.boundary != above.boundary:
        return below.boundary > above.boundary
    return is_closed(below.sign) or is_closed(above.sign)


def solution_of_either(form: Parts) -> Shaped | None:
    """The numbers that meet a part at least; None where all do, none does, or an end is unsaid."""
    found = union(map(ray, form))
    return None if not found or found[0].said else beside(found)


def beside(rays: Iterable[Ray]) -> Shaped | None:
    """Rays side by side as they stand, in order; None where one has no boundary."""
    every = in_order(rays)
    if not every or any(one.said for one in every):
        return None
    signs = tuple(one.sign for one in every)
    shape = signs if len(every) == 1 else (OR, *signs)
    return Shaped(shape, tuple(one.boundary for one in every))


def in_order(rays: Iterable[Ray]) -> list[Ray]:
    """Rays down before rays up, each by its boundary."""
    return sorted(rays, key=lambda one: (points_up(one.sign), one.boundary))


def said_of_either(form: Parts) -> str:
    """``all values`` or ``no solution`` where that is what the parts come to, else empty."""
    found = union(map(ray, form))
    return found[0].said if found else ""
