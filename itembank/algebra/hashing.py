"""How is deep plain data kept cheap as a key? Its hash is worked out once and then remembered.

A tree is also asked the same few questions again and again, at every node; it keeps the answers.
"""

from __future__ import annotations

from operator import attrgetter
from typing import Any

_VALUES: dict[type, attrgetter[Any]] = {}
"""For each kind of data what takes its values out of it."""


class HashedOnce:
    """Plain data that is asked for its hash again and again works it out once.

    A frozen dataclass that inherits it must take over the method by name, as it would else write
    one of its own: ``__hash__ = HashedOnce.__hash__``.
    """

    __slots__ = ("_hash",)
    _hash: int
    __match_args__: tuple[str, ...] = ()

    def __hash__(self) -> int:
        try:
            return self._hash
        except AttributeError:
            kind = type(self)
            values = _VALUES.get(kind) or _VALUES.setdefault(kind, attrgetter(*kind.__match_args__))
            found = hash((kind.__name__, values(self)))
            object.__setattr__(self, "_hash", found)
            return found


class Tree(HashedOnce):
    """A node that keeps what :mod:`itembank.algebra.values` finds out about it, once it is asked.

    ``letters_held`` and ``kinds_held`` are the letters and the kinds of node that stand in it,
    ``leaves_held`` a number that is the same for the same leaves in whatever order, and
    ``value_held`` its canonical polynomial.
    """

    __slots__ = ("kinds_held", "leaves_held", "letters_held", "value_held")
    letters_held: frozenset[str]
    kinds_held: frozenset[type]
    leaves_held: int
    value_held: tuple[Any, ...]
