"""What goes wrong where one of two parts is enough? They are held together, as a set or a chain."""

from __future__ import annotations

from collections.abc import Iterator

from itembank.algebra.joining import AND
from itembank.algebra.order import points_up, turned
from itembank.topics.inequalities.catalogue import AND_FOR_OR, ONE_DOUBLE
from itembank.topics.inequalities.following import pairings
from itembank.topics.inequalities.lines import (
    CHAIN,
    Inequality,
    Parts,
    is_solved,
    joint,
    ray,
    said_apart,
    same_boundary,
    solved,
)
from itembank.topics.judging import Wrong
from itembank.topics.linear_equations import following


class Joined(tuple[Inequality, Inequality]):
    """The parts that a line holds together wrongly: what each of its own follows from."""

    __slots__ = ()


def wrong_joints(source: Parts, last: str) -> Iterator[Wrong]:
    """The two parts solved and held together; ``last`` is the stage of the solution."""
    rays = [ray(part) for part in source]
    if len(source) < 2 or any(one.said or one.sign == "=" for one in rays):
        return
    parts = [Inequality(solved(one.boundary), one.sign) for one in rays]
    where = Joined((source[0], source[1]))
    for error, how in ((AND_FOR_OR, AND), (ONE_DOUBLE, CHAIN)):
        if how == CHAIN and points_up(rays[0].sign) == points_up(rays[1].sign):
            continue
        after = (parts[0], parts[1]._replace(joint=how))
        yield Wrong(error.name, error.words, (last,), (), after, where=where)


def joint_fits(wrong: Wrong, form: Parts) -> int | None:
    """What a person pays to get from such an error to a line; None where it is another.

    In a chain the signs may be turned so that numbers lie between its ends: its ends count.
    """
    if not isinstance(wrong.where, Joined) or joint(form) != joint(wrong.after):
        return None
    costs = []
    for pairing in pairings(2, len(form)):
        pairs = [(wrong.where[place], part) for place, part in zip(pairing, form, strict=True)]
        if all(_is_of(source, part, joint(form) == CHAIN) for source, part in pairs):
            found = [following.fit(source.equation, part.equation) for source, part in pairs]
            costs.append(max((fit.cost for fit in found if fit is not None), default=0))
    return min(costs, default=None)


def _is_of(source: Inequality, part: Inequality, any_sign: bool) -> bool:
    if not same_boundary(source, part):
        return False
    mine, theirs = ray(part).sign, ray(source).sign
    return mine == theirs or (any_sign and turned(mine) == theirs)


def is_wrongly_joined(form: Parts) -> bool:
    """Whether a line states a solution whose parts are held together; in working it is condoned."""
    return bool(joint(form)) and all(map(is_solved, said_apart(form)))
