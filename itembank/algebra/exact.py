"""What is an exact number here? A rational number, from a library that is quick at it.

``gmpy2.mpq`` behaves as the standard library's ``Fraction`` does wherever it is used here, at
several times the speed, and marking is mostly fractions. Everything imports the one name from here.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from fractions import Fraction
else:
    from gmpy2 import mpq as Fraction

__all__ = ["Fraction"]
