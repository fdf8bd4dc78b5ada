"""What does an item of each pattern look like? Pure functions of a random state.

Each public function gives one typed problem of its pattern, of our own invention; the same state
gives the same problem. :mod:`itembank.topics.linear_equations.families` names them for teachers.
"""

from __future__ import annotations

from random import Random

from itembank.algebra.exact import Fraction


def _small(r: Random, lowest: int = 2, highest: int = 9) -> int:
    return r.randint(lowest, highest)


def _signed(r: Random, highest: int = 12) -> int:
    return r.choice((-1, 1)) * r.randint(1, highest)


def _letter(r: Random) -> str:
    return r.choice("xxxxxyntpam")


def _times(size: int | str, what: str) -> str:
    """``3x``, ``x``, ``-x``."""
    return {"1": "", "-1": "-"}.get(str(size), str(size)) + what


def _plus(size: int, what: str = "") -> str:
    """`` + 3``, `` - 3x``."""
    amount = _times(abs(size), what) if what else str(abs(size))
    return f" {'+' if size > 0 else '-'} {amount}" if size else ""


def _tenths(size: int) -> str:
    """A whole number of tenths as a decimal: 23 -> ``2.3``, 20 -> ``2``."""
    whole, rest = divmod(abs(size), 10)
    sign = "-" if size < 0 else ""
    return f"{sign}{whole}.{rest}" if rest else f"{sign}{whole}"


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
    x, c, value = _letter(r), _signed(r, 20), _signed(r, 15)
    return f"{x}{_plus(c)} = {value + c}"


def one_product(r: Random) -> str:
    """``7x = 63``."""
    x, k = _letter(r), r.choice((-1, 1, 1)) * _small(r, 2, 12)
    m = k * _signed(r, 9) if r.random() < 0.6 else _signed(r, 60)
    return f"{_times(k, x)} = {m}"


def minus_unknown(r: Random) -> str:
    """``-x = 5``."""
    x, m = _letter(r), _signed(r, 30)
    return f"-{x} = {m}" if r.random() < 0.5 else f"{m} = -{x}"


def one_quotient(r: Random) -> str:
    """``x/4 = 3``."""
    x, k, m = _letter(r), _small(r, 2, 12), _signed(r, 12)
    return f"{r.choice(('', '', '-'))}{x}/{k} = {m}"


def two_steps(r: Random) -> str:
    """``6x - 7 = 23``."""
    x, k, c = _letter(r), _small(r), _signed(r)
    return f"{k}{x}{_plus(c)} = {k * _signed(r, 9) + c}"


def two_steps_unfriendly(r: Random) -> str:
    """``12x + 5 = 36``."""
    x, k, c, m = _letter(r), _small(r, 3, 12), _signed(r), _signed(r, 40)
    return f"{k}{x}{_plus(c)} = {m}"


def number_less_unknown(r: Random) -> str:
    """``15 - 4x = 29``."""
    x, k, c = _letter(r), _small(r, 1, 9), _small(r, 1, 30)
    return f"{c} - {_times(k, x)} = {_signed(r, 40)}"


def unknown_on_right(r: Random) -> str:
    """``30 = 4x - 2``."""
    x, k, c = _letter(r), r.choice((-1, 1, 1)) * _small(r), _signed(r)
    side = f"{k}{x}{_plus(c)}" if r.random() < 0.6 else f"{c}{_plus(k, x)}"
    return f"{k * _signed(r, 9) + c} = {side}"


def quotient_and_constant(r: Random) -> str:
    """``2x/3 + 2 = 9``."""
    x, k, c, m = _letter(r), _small(r, 2, 8), _signed(r), _signed(r, 12)
    top = r.choice((1, 1, _small(r)))
    top += Fraction(top, k).denominator != k  # a fraction in its lowest terms
    return f"{_times(top, x)}/{k}{_plus(c)} = {m}"


def fraction_times_unknown(r: Random) -> str:
    """``3/4 x - 1 = 6``."""
    x, m = _letter(r), _signed(r, 12)
    if r.random() < 0.5:
        return f"{_proper(r)} {x} = {m}"
    return f"{_proper(r)} {x}{_plus(_signed(r))} = {m}"


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
    return f"{_small(r)}{x} {sign} {_proper(r)} = {_signed(r, 9)}"


def decimals(r: Random) -> str:
    """``0.3x + 1.2 = 2.7``."""
    x, k, c = _letter(r), _small(r, 2, 29), _signed(r, 60)
    m = k * _signed(r, 12) + c if r.random() < 0.7 else _signed(r, 90)
    return f"{_times(_tenths(k), x)}{_decimal_plus(c)} = {_tenths(m)}"


def _decimal_plus(tenths: int) -> str:
    return f" {'+' if tenths > 0 else '-'} {_tenths(abs(tenths))}"


def decimals_both_sides(r: Random) -> str:
    """``2.3x - 1.5 = 0.4x + 2``."""
    x, k, n = _letter(r), _small(r, 11, 49), _small(r, 2, 9)
    c, d = _signed(r, 60), _signed(r, 60)
    right = f"{_times(_tenths(n), x)}{_decimal_plus(d)}"
    return f"{_times(_tenths(k), x)}{_decimal_plus(c)} = {right}"


def one_bracket(r: Random) -> str:
    """``4(x + 3) = 22``."""
    x, k, c = _letter(r), _small(r), _signed(r)
    m = k * _signed(r, 12) if r.random() < 0.5 else _signed(r, 60)
    return f"{k}({_times(r.choice((1, 1, _small(r))), x)}{_plus(c)}) = {m}"


def bracket_with_constant_first(r: Random) -> str:
    """``3(7 - 2x) = 12``."""
    x, k = _letter(r), _small(r)
    return f"{k}({_small(r, 1, 12)} - {_times(_small(r, 1, 5), x)}) = {k * _signed(r, 9)}"


def bracket_and_constant(r: Random) -> str:
    """``4(x + 3) - 5 = 27``."""
    x, k, c, d = _letter(r), _small(r), _signed(r), _signed(r)
    return f"{k}({x}{_plus(c)}){_plus(d)} = {_signed(r, 50)}"


def minus_before_bracket(r: Random) -> str:
    """``9 - 2(x + 3) = 8``."""
    x, c, d = _letter(r), _signed(r), _small(r, 1, 30)
    k = r.choice((1, _small(r)))
    bracket = _times(k, f"({_times(r.choice((1, _small(r))), x)}{_plus(c)})")
    return f"{d} - {bracket} = {_signed(r, 30)}"


def decimal_bracket(r: Random) -> str:
    """``0.5(x + 3) = 4``."""
    x, k, c = _letter(r), r.choice((2, 4, 5, 12, 15, 25)), _signed(r)
    return f"{_tenths(k)}({x}{_plus(c)}) = {_tenths(k * _signed(r, 12))}"


def fraction_before_bracket(r: Random) -> str:
    """``3/4(x + 8) = 9``."""
    x, c = _letter(r), _signed(r)
    return f"{_proper(r)}({x}{_plus(c)}) = {_signed(r, 12)}"


def two_brackets(r: Random) -> str:
    """``3(x + 1) - 2(x - 4) = 7``."""
    x, j, k = _letter(r), _small(r), _small(r)
    sign = r.choice("+-")
    if (sign == "-") and j == k:
        k += 1
    return f"{j}({x}{_plus(_signed(r))}) {sign} {k}({x}{_plus(_signed(r))}) = {_signed(r, 60)}"


def nested_brackets(r: Random) -> str:
    """``2(3(x + 1) - 4) = 10``."""
    x, j, k, c, d = _letter(r), _small(r, 2, 5), _small(r, 2, 5), _signed(r, 9), _signed(r, 9)
    inner = f"{k}({x}{_plus(c)}){_plus(d)}"
    if r.random() < 0.5:
        return f"{j}({inner}) = {j * _signed(r, 12)}"
    return f"{_small(r, 1, 20)} - {j}[{_small(r)}{x} - ({x}{_plus(c)})] = {_signed(r, 30)}"


def like_terms(r: Random) -> str:
    """``3x + 5 + 2x = 40``."""
    x, k = _letter(r), _small(r)
    n = r.choice([i for i in range(-8, 9) if i not in (0, -k)])
    c, d = _signed(r), r.choice((0, 0, 1)) * _signed(r)
    return f"{k}{x}{_plus(c)}{_plus(n, x)}{_plus(d)} = {_signed(r, 50)}"


def both_sides(r: Random) -> str:
    """``9x + 4 = 4x - 17``."""
    x, k, c, d = _letter(r), _small(r, 2, 12), _signed(r), _signed(r, 30)
    n = r.choice([i for i in range(1, 12) if i != k])
    right = f"{_times(n, x)}{_plus(d)}" if r.random() < 0.7 else f"{d}{_plus(n, x)}"
    return f"{k}{x}{_plus(c)} = {right}"


def both_sides_negative(r: Random) -> str:
    """``8 - 3x = 2x + 5``."""
    x, k, c, d = _letter(r), _small(r, 1, 9), _small(r, 1, 30), _signed(r, 30)
    n = r.choice([i for i in range(-9, 10) if i not in (0, -k)])
    return f"{c} - {_times(k, x)} = {_times(n, x)}{_plus(d)}"


def both_sides_one_constant(r: Random) -> str:
    """``5x = 2x + 12``."""
    x, k, c = _letter(r), _small(r), _signed(r, 40)
    n = r.choice([i for i in range(1, 12) if i != k])
    left, right = f"{k}{x}", f"{_times(n, x)}{_plus(c)}"
    return f"{left} = {right}" if r.random() < 0.5 else f"{right} = {left}"


def bracket_both_sides(r: Random) -> str:
    """``4(x - 3) = 2x + 9``."""
    x, k, c = _letter(r), _small(r), _signed(r)
    n = r.choice([i for i in range(1, 12) if i != k])
    return f"{k}({x}{_plus(c)}) = {_times(n, x)}{_plus(_signed(r, 30))}"


def brackets_both_sides(r: Random) -> str:
    """``5(x + 1) = 3(x - 2)``."""
    x, j, k = _letter(r), _small(r), _small(r)
    k += j == k
    return f"{j}({x}{_plus(_signed(r))}) = {k}({x}{_plus(_signed(r))})"


def one_numerator(r: Random) -> str:
    """``(2x + 9)/7 = 5``."""
    x, k = _letter(r), _small(r)
    return f"({_times(r.choice((1, _small(r))), x)}{_plus(_signed(r))})/{k} = {_signed(r, 12)}"


def numerator_and_constant(r: Random) -> str:
    """``(x + 8)/3 + 2 = 7``."""
    x, k, d = _letter(r), _small(r), _signed(r)
    return f"({x}{_plus(_signed(r))})/{k}{_plus(d)} = {_signed(r, 12)}"


def bracket_over_number(r: Random) -> str:
    """``3(x + 2)/4 = 6``."""
    x, below = _letter(r), _small(r, 2, 7)
    above = r.choice([k for k in range(2, 10) if k % below])
    return f"{above}({x}{_plus(_signed(r))})/{below} = {_signed(r, 15)}"


def two_fractions(r: Random) -> str:
    """``x/2 + x/3 = 10``."""
    x = _letter(r)
    j, k = r.sample(range(2, 9), 2)
    top = r.choice((1, 1, r.choice(_coprime(k))))
    return f"{x}/{j} {r.choice('+-')} {_times(top, x)}/{k} = {_signed(r, 20)}"


def two_numerators(r: Random) -> str:
    """``(x + 5)/2 - (x - 3)/4 = 6``."""
    x = _letter(r)
    j, k = r.sample(range(2, 7), 2)
    first, second = f"({x}{_plus(_signed(r))})/{j}", f"({x}{_plus(_signed(r))})/{k}"
    return f"{first} {r.choice('+-')} {second} = {_signed(r, 12)}"


def fraction_equals_fraction(r: Random) -> str:
    """``(x + 2)/3 = (x - 1)/5``."""
    x = _letter(r)
    j, k = r.sample(range(2, 9), 2)
    return f"({x}{_plus(_signed(r))})/{j} = ({x}{_plus(_signed(r))})/{k}"


def fractions_both_sides(r: Random) -> str:
    """``x/2 + 3 = x - 4``."""
    x, k, n = _letter(r), _small(r, 2, 6), _small(r, 1, 5)
    return f"{x}/{k}{_plus(_signed(r))} = {_times(n, x)}{_plus(_signed(r))}"


def no_solution(r: Random) -> str:
    """``3(x + 4) = 3x + 5``."""
    x, k, c = _letter(r), _small(r), _signed(r)
    d = r.choice([i for i in range(-12, 13) if i not in (0, k * c, c)])
    if r.random() < 0.5:
        return f"{k}({x}{_plus(c)}) = {k}{x}{_plus(d)}"
    return f"{k}{x}{_plus(c)} = {k}{x}{_plus(d)}"


def all_values(r: Random) -> str:
    """``3(x + 4) = 3x + 12``."""
    x, k, c = _letter(r), _small(r), _signed(r)
    j = _small(r, 1, k - 1)
    if r.random() < 0.5:
        return f"{k}({x}{_plus(c)}) = {k}{x}{_plus(k * c)}"
    return f"{_times(j, x)}{_plus(k * c)}{_plus(k - j, x)} = {k}({x}{_plus(c)})"
