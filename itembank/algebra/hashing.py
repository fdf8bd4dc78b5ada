"""How is deep plain data kept cheap as a key? Its hash is worked out once and then remembered."""

from __future__ import annotations


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
            values = [getattr(self, name) for name in self.__match_args__]
            found = hash((type(self).__name__, *values))
            object.__setattr__(self, "_hash", found)
            return found
