"""What is a linear equation by its parts? Its two sides, what they come to, what they hold."""

from __future__ import annotations

from collections.abc import Iterator
from functools import cached_property, lru_cache
from typing import NamedTuple

from itembank.algebra.exact import Fraction
from itembank.algebra.written import Relation
from itembank.topics.parts import (
    ZERO,
    Flat,
    Part,
    Parts,
    Residual,
    flat,
    holds_letter,
    is_fraction,
    parts_of,
    residual,
)

Key = tuple[str, Fraction]
"""What every right step keeps: the solution, that there is none, or that all values serve."""


def key_between(left: Residual, right: Residual) -> Key:
    """The key of an equation whose sides come to so much of the unknown and so much beside it."""
    slope, constant = left[0] - right[0], left[1] - right[1]
    if slope:
        return ("value", -constant / slope)
    return ("none", ZERO) if constant else ("all", ZERO)


class Balance(NamedTuple):
    """Two sides joined: ``a x + b = c x + d``."""

    a: Fraction
    b: Fraction
    c: Fraction
    d: Fraction

    @property
    def slope(self) -> Fraction:
        """The unknown's coefficient in left minus right."""
        return self.a - self.c

    @property
    def constant(self) -> Fraction:
        """The constant in left minus right."""
        return self.b - self.d


class Equation(tuple[Parts, Parts]):
    """Two sides in parts, ``Equation((left, right))``: a pair that works out once what it is asked
    again and again, its hash too."""

    _hash: int

    @property
    def left(self) -> Parts:
        """The side before the sign of equality."""
        return self[0]

    @property
    def right(self) -> Parts:
        """The side after it."""
        return self[1]

    @cached_property
    def key(self) -> Key:
        """What every right step keeps."""
        return key_between(residual(self[0]), residual(self[1]))

    @cached_property
    def flats(self) -> tuple[Flat, Flat]:
        """Each side multiplied out."""
        return flat(self[0]), flat(self[1])

    @cached_property
    def balance(self) -> Balance:
        """The equation with each side multiplied out and joined."""
        left, right = self.flats
        return Balance(left.slope, left.constant, right.slope, right.constant)

    @cached_property
    def fractions(self) -> tuple[Part, ...]:
        """The fractions that hold the unknown, at any depth."""
        return tuple([part for side in self for part in everything(side) if is_fraction(part)])

    @cached_property
    def brackets(self) -> tuple[Part, ...]:
        """The brackets that hold the unknown; that of a fraction's numerator alone is none."""
        return tuple(
            [
                part
                for side in self
                for part in everything(side)
                if len(part.inner) > 1 and holds_letter(part) and not is_fraction(part)
            ]
        )

    def __hash__(self) -> int:
        try:
            return self._hash
        except AttributeError:
            self._hash = super().__hash__()
            return self._hash


@lru_cache(maxsize=4096)
def equation_of(relation: Relation, unknown: str) -> Equation:
    """The parts of a relation's two sides.

    Raises:
        NoValue: where a side is not linear, or has no exact value (see :func:`parts_of`).
    """
    return Equation((parts_of(relation.sides[0], unknown), parts_of(relation.sides[1], unknown)))


def everything(side: Parts) -> Iterator[Part]:
    """Every part of a side at any depth."""
    for part in side:
        yield part
        if part.inner:
            yield from everything(part.inner)
