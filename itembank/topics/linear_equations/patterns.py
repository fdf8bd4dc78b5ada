"""What does an item of each pattern look like? Pure functions of a random state.

Each public function gives one typed problem of its pattern, of our own invention; the same state
gives the same problem. :mod:`itembank.topics.linear_equations.families` names them for teachers.
"""

from __future__ import annotations

from random import Random

from itembank.algebra.exact import Fraction
from itembank.topics.patterning import plus, signed, tenths, times


def _small(r: Random, lowest: int = 2, highest: int = 9) -> int:
    return r.randint(lowest, highest)


def _letter(r: Random) -> str:
    return r.choice("xxxxxyntpam")


def _mixed(r: Random) -> str:
    below = r.randint(2, 6)
    return f"{r.randint(1, 4)} {r.choice(_coprime(below))}/{below}"


def _coprime(below: int) -> list[int]:
    return [n for n in range(1, below) if Fraction(n, below).denominator == below]


def _proper(r: Random) -> str:
    below = r.randint(2, 9)
    return f"{r.choice(_coprime(below))}/{below}"


def one_sum(r: Random) -> str:
    """``x + 5 = 12``."""
    x, c, value = _letter(r), signed(r, 20), signed(r, 15)
    return f"{x}{plus(c)} = {value + c}"


def one_product(r: Random) -> str:
    """``7x = 63``."""
    x, k = _letter(r), r.choice((-1, 1, 1)) * _small(r, 2, 12)
    m = k * signed(r, 9) if r.random() < 0.6 else signed(r, 60)
    return f"{times(k, x)} = {m}"


def minus_unknown(r: Random) -> str:
    """``-x = 5``."""
    x, m = _letter(r), signed(r, 30)
    return f"-{x} = {m}" if r.random() < 0.5 else f"{m} = -{x}"


def one_quotient(r: Random) -> str:
    """``x/4 = 3``."""
    x, k, m = _letter(r), _small(r, 2, 12), signed(r, 12)
    return f"{r.choice(('', '', '-'))}{x}/{k} = {m}"


def two_steps(r: Random) -> str:
    """``6x - 7 = 23``."""
    x, k, c = _letter(r), _small(r), signed(r, 12)
    return f"{k}{x}{plus(c)} = {k * signed(r, 9) + c}"


def two_steps_unfriendly(r: Random) -> str:
    """``12x + 5 = 36``."""
    x, k, c, m = _letter(r), _small(r, 3, 12), signed(r, 12), signed(r, 40)
    return f"{k}{x}{plus(c)} = {m}"


def number_less_unknown(r: Random) -> str:
    """``15 - 4x = 29``."""
    x, k, c = _letter(r), _small(r, 1, 9), _small(r, 1, 30)
    return f"{c} - {times(k, x)} = {signed(r, 40)}"


def unknown_on_right(r: Random) -> str:
    """``30 = 4x - 2``."""
    x, k, c = _letter(r), r.choice((-1, 1, 1)) * _small(r), signed(r, 12)
    side = f"{k}{x}{plus(c)}" if r.random() < 0.6 else f"{c}{plus(k, x)}"
    return f"{k * signed(r, 9) + c} = {side}"


def quotient_and_constant(r: Random) -> str:
    """``2x/3 + 2 = 9``."""
    x, k, c, m = _letter(r), _small(r, 2, 8), signed(r, 12), signed(r, 12)
    top = r.choice((1, 1, _small(r)))
    top += Fraction(top, k).denominator != k  # a fraction in its lowest terms
    return f"{times(top, x)}/{k}{plus(c)} = {m}"


def fraction_times_unknown(r: Random) -> str:
    """``3/4 x - 1 = 6``."""
    x, m = _letter(r), signed(r, 12)
    if r.random() < 0.5:
        return f"{_proper(r)} {x} = {m}"
    return f"{_proper(r)} {x}{plus(signed(r, 12))} = {m}"


def mixed_numbers(r: Random) -> str:
    """``2 1/2 x = 9``."""
    x = _letter(r)
    if r.random() < 0.5:
        return f"{_mixed(r)} {x} = {_small(r, 1, 15)}"
    return f"{_small(r)}{x} + {_mixed(r)} = {_mixed(r)}"


def fraction_constants(r: Random) -> str:
    """``3x + 1/4 = 2``."""
    x = _letter(r)
    sign = r.choice("+-")
    if r.random() < 0.5:
        return f"{x} {sign} {_proper(r)} = {_proper(r)}"
    return f"{_small(r)}{x} {sign} {_proper(r)} = {signed(r, 9)}"


def decimals(r: Random) -> str:
    """``0.3x + 1.2 = 2.7``."""
    x, k, c = _letter(r), _small(r, 2, 29), signed(r, 60)
    m = k * signed(r, 12) + c if r.random() < 0.7 else signed(r, 90)
    return f"{times(tenths(k), x)}{_decimal_plus(c)} = {tenths(m)}"


def _decimal_plus(size: int) -> str:
    return f" {'+' if size > 0 else '-'} {tenths(abs(size))}"


def decimals_both_sides(r: Random) -> str:
    """``2.3x - 1.5 = 0.4x + 2``."""
    x, k, n = _letter(r), _small(r, 11, 49), _small(r, 2, 9)
    c, d = signed(r, 60), signed(r, 60)
    right = f"{times(tenths(n), x)}{_decimal_plus(d)}"
    return f"{times(tenths(k), x)}{_decimal_plus(c)} = {right}"


def one_bracket(r: Random) -> str:
    """``4(x + 3) = 22``."""
    x, k, c = _letter(r), _small(r), signed(r, 12)
    m = k * signed(r, 12) if r.random() < 0.5 else signed(r, 60)
    return f"{k}({times(r.choice((1, 1, _small(r))), x)}{plus(c)}) = {m}"


def bracket_with_constant_first(r: Random) -> str:
    """``3(7 - 2x) = 12``."""
    x, k = _letter(r), _small(r)
    return f"{k}({_small(r, 1, 12)} - {times(_small(r, 1, 5), x)}) = {k * signed(r, 9)}"


def bracket_and_constant(r: Random) -> str:
    """``4(x + 3) - 5 = 27``."""
    x, k, c, d = _letter(r), _small(r), signed(r, 12), signed(r, 12)
    return f"{k}({x}{plus(c)}){plus(d)} = {signed(r, 50)}"


def minus_before_bracket(r: Random) -> str:
    """``9 - 2(x + 3) = 8``."""
    x, c, d = _letter(r), signed(r, 12), _small(r, 1, 30)
    k = r.choice((1, _small(r)))
    bracket = times(k, f"({times(r.choice((1, _small(r))), x)}{plus(c)})")
    return f"{d} - {bracket} = {signed(r, 30)}"


def decimal_bracket(r: Random) -> str:
    """``0.5(x + 3) = 4``."""
    x, k, c = _letter(r), r.choice((2, 4, 5, 12, 15, 25)), signed(r, 12)
    return f"{tenths(k)}({x}{plus(c)}) = {tenths(k * signed(r, 12))}"


def fraction_before_bracket(r: Random) -> str:
    """``3/4(x + 8) = 9``."""
    x, c = _letter(r), signed(r, 12)
    return f"{_proper(r)}({x}{plus(c)}) = {signed(r, 12)}"


def two_brackets(r: Random) -> str:
    """``3(x + 1) - 2(x - 4) = 7``."""
    x, j, k = _letter(r), _small(r), _small(r)
    sign = r.choice("+-")
    if (sign == "-") and j == k:
        k += 1
    return f"{j}({x}{plus(signed(r, 12))}) {sign} {k}({x}{plus(signed(r, 12))}) = {signed(r, 60)}"


def nested_brackets(r: Random) -> str:
    """``2(3(x + 1) - 4) = 10``."""
    x, j, k, c, d = _letter(r), _small(r, 2, 5), _small(r, 2, 5), signed(r, 9), signed(r, 9)
    inner = f"{k}({x}{plus(c)}){plus(d)}"
    if r.random() < 0.5:
        return f"{j}({inner}) = {j * signed(r, 12)}"
    return f"{_small(r, 1, 20)} - {j}[{_small(r)}{x} - ({x}{plus(c)})] = {signed(r, 30)}"


def like_terms(r: Random) -> str:
    """``3x + 5 + 2x = 40``."""
    x, k = _letter(r), _small(r)
    n = r.choice([i for i in range(-8, 9) if i not in (0, -k)])
    c, d = signed(r, 12), r.choice((0, 0, 1)) * signed(r, 12)
    return f"{k}{x}{plus(c)}{plus(n, x)}{plus(d)} = {signed(r, 50)}"


def both_sides(r: Random) -> str:
    """``9x + 4 = 4x - 17``."""
    x, k, c, d = _letter(r), _small(r, 2, 12), signed(r, 12), signed(r, 30)
    n = r.choice([i for i in range(1, 12) if i != k])
    right = f"{times(n, x)}{plus(d)}" if r.random() < 0.7 else f"{d}{plus(n, x)}"
    return f"{k}{x}{plus(c)} = {right}"


def both_sides_negative(r: Random) -> str:
    """``8 - 3x = 2x + 5``."""
    x, k, c, d = _letter(r), _small(r, 1, 9), _small(r, 1, 30), signed(r, 30)
    n = r.choice([i for i in range(-9, 10) if i not in (0, -k)])
    return f"{c} - {times(k, x)} = {times(n, x)}{plus(d)}"


def both_sides_one_constant(r: Random) -> str:
    """``5x = 2x + 12``."""
    x, k, c = _letter(r), _small(r), signed(r, 40)
    n = r.choice([i for i in range(1, 12) if i != k])
    left, right = f"{k}{x}", f"{times(n, x)}{plus(c)}"
    return f"{left} = {right}" if r.random() < 0.5 else f"{right} = {left}"


def bracket_both_sides(r: Random) -> str:
    """``4(x - 3) = 2x + 9``."""
    x, k, c = _letter(r), _small(r), signed(r, 12)
    n = r.choice([i for i in range(1, 12) if i != k])
    return f"{k}({x}{plus(c)}) = {times(n, x)}{plus(signed(r, 30))}"


def brackets_both_sides(r: Random) -> str:
    """``5(x + 1) = 3(x - 2)``."""
    x, j, k = _letter(r), _small(r), _small(r)
    k += j == k
    return f"{j}({x}{plus(signed(r, 12))}) = {k}({x}{plus(signed(r, 12))})"


def one_numerator(r: Random) -> str:
    """``(2x + 9)/7 = 5``."""
    x, k = _letter(r), _small(r)
    return f"({times(r.choice((1, _small(r))), x)}{plus(signed(r, 12))})/{k} = {signed(r, 12)}"


def numerator_and_constant(r: Random) -> str:
    """``(x + 8)/3 + 2 = 7``."""
    x, k, d = _letter(r), _small(r), signed(r, 12)
    return f"({x}{plus(signed(r, 12))})/{k}{plus(d)} = {signed(r, 12)}"


def bracket_over_number(r: Random) -> str:
    """``3(x + 2)/4 = 6``."""
    x, below = _letter(r), _small(r, 2, 7)
    above = r.choice([k for k in range(2, 10) if k % below])
    return f"{above}({x}{plus(signed(r, 12))})/{below} = {signed(r, 15)}"


def two_fractions(r: Random) -> str:
    """``x/2 + x/3 = 10``."""
    x = _letter(r)
    j, k = r.sample(range(2, 9), 2)
    top = r.choice((1, 1, r.choice(_coprime(k))))
    return f"{x}/{j} {r.choice('+-')} {times(top, x)}/{k} = {signed(r, 20)}"


def two_numerators(r: Random) -> str:
    """``(x + 5)/2 - (x - 3)/4 = 6``."""
    x = _letter(r)
    j, k = r.sample(range(2, 7), 2)
    first, second = f"({x}{plus(signed(r, 12))})/{j}", f"({x}{plus(signed(r, 12))})/{k}"
    return f"{first} {r.choice('+-')} {second} = {signed(r, 12)}"


def fraction_equals_fraction(r: Random) -> str:
    """``(x + 2)/3 = (x - 1)/5``."""
    x = _letter(r)
    j, k = r.sample(range(2, 9), 2)
    return f"({x}{plus(signed(r, 12))})/{j} = ({x}{plus(signed(r, 12))})/{k}"


def fractions_both_sides(r: Random) -> str:
    """``x/2 + 3 = x - 4``."""
    x, k, n = _letter(r), _small(r, 2, 6), _small(r, 1, 5)
    return f"{x}/{k}{plus(signed(r, 12))} = {times(n, x)}{plus(signed(r, 12))}"


def no_solution(r: Random) -> str:
    """``3(x + 4) = 3x + 5``."""
    x, k, c = _letter(r), _small(r), signed(r, 12)
    d = r.choice([i for i in range(-12, 13) if i not in (0, k * c, c)])
    if r.random() < 0.5:
        return f"{k}({x}{plus(c)}) = {k}{x}{plus(d)}"
    return f"{k}{x}{plus(c)} = {k}{x}{plus(d)}"


def all_values(r: Random) -> str:
    """``3(x + 4) = 3x + 12``."""
    x, k, c = _letter(r), _small(r), signed(r, 12)
    j = _small(r, 1, k - 1)
    if r.random() < 0.5:
        return f"{k}({x}{plus(c)}) = {k}{x}{plus(k * c)}"
    return f"{times(j, x)}{plus(k * c)}{plus(k - j, x)} = {k}({x}{plus(c)})"
