"""What is an exact number here? A fraction, from a library that is quick at it.

``quicktions`` is the standard library's ``Fraction`` compiled: the same behaviour, several times
the speed, and marking is mostly fractions. Everything imports the one name from here.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from fractions import Fraction
else:
    from quicktions import Fraction

__all__ = ["Fraction"]
