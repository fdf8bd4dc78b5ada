"""How is deep plain data kept cheap as a key? Its hash is worked out once and then remembered.

A tree is also asked the same few questions again and again, at every node; it keeps the answers.
"""

from __future__ import annotations

from operator import attrgetter
from typing import Any

_VALUES: dict[type, tuple[str, attrgetter[Any]]] = {}
"""For each kind of data its name, and what takes its values out of it."""


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
            known = _VALUES.get(kind)
            if known is None:
                known = _VALUES[kind] = kind.__name__, attrgetter(*kind.__match_args__)
            found = hash((known[0], known[1](self)))
            _keep_hash(self, found)
            return found


# The slot's own setter: what is worked out about frozen data is no change of it.
_keep_hash = vars(HashedOnce)["_hash"].__set__


class Tree(HashedOnce):
    """A node that keeps what is found out about it, once it is asked.

    ``letters_held`` are the letters and ``kinds_held`` the kinds of node that stand in it, a bit
    for each; ``leaves_held`` a number that is the same for the same leaves in whatever order
    (:mod:`itembank.algebra.inside`). ``value_held`` is its canonical polynomial, kept by
    :mod:`itembank.algebra.values`, and ``text_held`` its typed text, kept by
    :mod:`itembank.algebra.showing`.
    """

    __slots__ = ("kinds_held", "leaves_held", "letters_held", "text_held", "value_held")
    letters_held: frozenset[str]
    kinds_held: int
    leaves_held: int
    text_held: str
    value_held: tuple[Any, ...]
