"""How are canonical polynomials added, multiplied and divided? Exact arithmetic on plain tuples.

A polynomial is what :func:`itembank.algebra.values.polynomial` gives: monomials with their
coefficients, in order, no coefficient zero; the empty tuple is zero. What leads is the highest
total degree, then the letter that comes first in the alphabet.
"""

from __future__ import annotations

from functools import lru_cache
from math import isqrt

from itembank.algebra.exact import Fraction
from itembank.algebra.values import Monomial, Polynomial, joined_monomial

Terms = dict[Monomial, Fraction]
Term = tuple[Monomial, Fraction]
Rank = tuple[int, tuple[tuple[int, int], ...]]

MOST_STEPS = 200


def plus(one: Polynomial, other: Polynomial) -> Polynomial:
    """The sum of two polynomials."""
    if not one or not other:
        return one or other
    out = dict(one)
    for monomial, size in other:
        before = out.get(monomial)
        out[monomial] = size if before is None else before + size
    return canonical(out)


def minus(one: Polynomial, other: Polynomial) -> Polynomial:
    """The first polynomial less the second."""
    return plus(one, tuple([(monomial, -size) for monomial, size in other]))


def scaled(polynomial: Polynomial, number: Fraction) -> Polynomial:
    """The polynomial times a number that is not zero."""
    if number == 1:
        return polynomial
    return tuple([(monomial, size * number) for monomial, size in polynomial])


def times(one: Polynomial, other: Polynomial) -> Polynomial:
    """The product of two polynomials."""
    out: Terms = {}
    for left, size in one:
        for right, factor in other:
            joined = joined_monomial(left, right)
            before = out.get(joined)
            out[joined] = size * factor if before is None else before + size * factor
    return canonical(out)


def power(base: Polynomial, exponent: int) -> Polynomial:
    """A polynomial raised to a whole power of 0 or more."""
    if exponent == 0:
        return (((), Fraction(1)),)
    out = base
    for _ in range(exponent - 1):
        out = times(out, base)
    return out


def canonical(terms: Terms) -> Polynomial:
    """Terms in order, those of coefficient zero left out."""
    return tuple(sorted([(m, size) for m, size in terms.items() if size]))


def quotient(polynomial: Polynomial, divisor: Polynomial) -> Polynomial | None:
    """The exact quotient of two polynomials; None where the division leaves a remainder."""
    lead, size = leading(divisor)
    rest, out = polynomial, Terms()
    for _ in range(MOST_STEPS):
        if not rest:
            return canonical(out)
        monomial, top = leading(rest)
        left = divided_monomial(monomial, lead)
        if left is None:
            return None
        out[left] = top / size
        rest = minus(rest, times(divisor, ((left, top / size),)))
    return None


def square_root(polynomial: Polynomial) -> Polynomial | None:
    """The polynomial whose square this is, its leading coefficient positive; None for none."""
    if not polynomial:
        return ()
    first = _term_root(leading(polynomial))
    if first is None:
        return None
    root: Polynomial = (first,)
    for _ in range(MOST_STEPS):
        rest = minus(polynomial, times(root, root))
        if not rest:
            return root
        monomial, size = leading(rest)
        left = divided_monomial(monomial, first[0])
        if left is None or _rank(left) >= _rank(min(root, key=_rank_of)[0]):
            return None
        root = plus(root, ((left, size / (2 * first[1])),))
    return None


def _term_root(term: Term) -> Term | None:
    monomial, size = term
    if size < 0 or any(exponent % 2 for _, exponent in monomial):
        return None
    above, below = isqrt(int(size.numerator)), isqrt(int(size.denominator))
    if above * above != size.numerator or below * below != size.denominator:
        return None
    return tuple((name, exponent // 2) for name, exponent in monomial), Fraction(above, below)


def leading(polynomial: Polynomial) -> Term:
    """The leading term of a polynomial that is not zero."""
    return max(polynomial, key=_rank_of)


def in_order(polynomial: Polynomial) -> tuple[Term, ...]:
    """The terms as a person writes them: the leading one first."""
    return tuple(sorted(polynomial, key=_rank_of, reverse=True))


def in_writing(monomial: Monomial) -> Monomial:
    """The letters as a person writes them: π, which is a number, before the others."""
    return tuple(sorted(monomial, key=lambda factor: factor[0] != "π"))


def _rank_of(term: Term) -> Rank:
    return _rank(term[0])


@lru_cache(maxsize=4096)
def _rank(monomial: Monomial) -> Rank:
    """Total degree, then the powers of the letters in the order of the alphabet."""
    return sum([e for _, e in monomial]), tuple([(-ord(name[0]), e) for name, e in monomial])


def total_degree(polynomial: Polynomial) -> int:
    """The highest total degree of a term; 0 for a number."""
    return max([_rank(monomial)[0] for monomial, _ in polynomial], default=0)


def letters_of(polynomial: Polynomial) -> tuple[str, ...]:
    """The letters that stand in a polynomial, in the order of the alphabet."""
    found = {name for monomial, _ in polynomial for name, _ in monomial}
    return tuple(found) if len(found) < 2 else tuple(sorted(found))


def degree_in(polynomial: Polynomial, letter: str) -> int:
    """The highest power of a letter."""
    return max((dict(monomial).get(letter, 0) for monomial, _ in polynomial), default=0)


def coefficients_in(polynomial: Polynomial, letter: str) -> tuple[Polynomial, ...]:
    """The coefficients of the powers of a letter, from the power 0 up."""
    found: list[Terms] = [{} for _ in range(degree_in(polynomial, letter) + 1)]
    for monomial, size in polynomial:
        powers = dict(monomial)
        exponent = powers.pop(letter, 0)
        found[exponent][tuple(sorted(powers.items()))] = size
    return tuple(canonical(terms) for terms in found)


def constant(polynomial: Polynomial) -> Fraction | None:
    """The value of a polynomial without letters; None where it has one."""
    if not polynomial:
        return Fraction(0)
    ((monomial, size), *others) = polynomial
    return size if not monomial and not others else None


def divided_monomial(one: Monomial, other: Monomial) -> Monomial | None:
    """The quotient of two monomials; None where a power would be negative."""
    if not other:
        return one
    powers = dict(one)
    for name, exponent in other:
        left = powers.get(name, 0) - exponent
        if left < 0:
            return None
        powers[name] = left
    return tuple(sorted([(name, e) for name, e in powers.items() if e]))
