"""Which stages does a problem have, and which of them has a line reached?

The allocation is common practice, no source: a bracket multiplied out M1 (of two brackets all but
one of the products right), collected A1; values put in M1, the value A1; each factorisation M1 and
lowest terms A1; common denominator M1, numerators M1, single fraction A1.
"""

from __future__ import annotations

from functools import lru_cache

from itembank.algebra.exact import Fraction
from itembank.algebra.inside import symbols, walk
from itembank.algebra.polynomials import total_degree
from itembank.algebra.rationals import common_factor, has_letter_below, least_common, unreduced
from itembank.algebra.values import NoValue, Polynomial, polynomial
from itembank.algebra.written import Node, Power, Sum
from itembank.topics.expressions.fractions import (
    ONE,
    as_terms,
    has_division,
    needs_factors,
    top_and_bottom,
)
from itembank.topics.expressions.pieces import (
    Pieces,
    bracket_count,
    flat,
    has_bracket,
    has_like,
    pieces,
)
from itembank.topics.expressions.problems import ADD, CANCEL, COLLECT, EXPAND, MULTIPLY, PUT
from itembank.topics.expressions.trees import factors, has_fraction, product, terms

TWO_BRACKETS = "two brackets multiplied"
BRACKETS = "brackets removed"
ONE_KIND = "one kind of term collected"
COLLECTED = "terms collected"
PUT_IN = "values put in"
VALUE = "value"
TURNED = "division turned into multiplication"
NUMERATOR = "numerator factorised"
DENOMINATOR = "denominator factorised"
FACTORISED = "factors shown"
LOWEST = "lowest terms"
COMMON_BAR = "common denominator"
NUMERATORS = "numerators multiplied"
SINGLE = "single fraction"

ORDER = (
    TWO_BRACKETS,
    BRACKETS,
    ONE_KIND,
    COLLECTED,
    PUT_IN,
    VALUE,
    TURNED,
    NUMERATOR,
    DENOMINATOR,
    FACTORISED,
    LOWEST,
    COMMON_BAR,
    NUMERATORS,
    SINGLE,
)

LAST = {
    COLLECT: COLLECTED,
    EXPAND: COLLECTED,
    PUT: VALUE,
    CANCEL: LOWEST,
    MULTIPLY: LOWEST,
    ADD: SINGLE,
}

WORDS = {
    TWO_BRACKETS: "multiplies two of the brackets, all but one of the products right",
    BRACKETS: "multiplies out the brackets; of two brackets all but one of the products right",
    ONE_KIND: "collects the terms of one kind",
    COLLECTED: "the expression expanded and collected",
    PUT_IN: "puts the values in",
    VALUE: "the value",
    TURNED: "multiplies by the reciprocal",
    NUMERATOR: "factorises the numerator",
    DENOMINATOR: "factorises the denominator",
    FACTORISED: "factorises what can be factorised",
    LOWEST: "one fraction in its lowest terms",
    COMMON_BAR: "writes the fractions over a common denominator",
    NUMERATORS: "multiplies every numerator as its denominator",
    SINGLE: "a single fraction in its lowest terms, its numerator collected",
}


@lru_cache(maxsize=4096)
def stage_names(kind: str, node: Node) -> tuple[str, ...]:
    """The stages present in a problem, in order."""
    present = {
        COLLECT: _collecting,
        EXPAND: _expanding,
        PUT: lambda _: (PUT_IN,),
        CANCEL: _cancelling,
        MULTIPLY: _multiplying,
        ADD: _adding,
    }[kind](node)
    return (*present, LAST[kind])


def _collecting(node: Node) -> tuple[str, ...]:
    return (ONE_KIND,) if len(repeated(pieces(node))) > 1 else ()


def repeated(parts: Pieces) -> frozenset[object]:
    """The kinds of term that stand more than once."""
    kinds = [part.letters for part in parts]
    return frozenset(kind for kind in kinds if kinds.count(kind) > 1)


def _expanding(node: Node) -> tuple[str, ...]:
    parts = pieces(node)
    if is_one_bracket(parts):
        return ()
    return (TWO_BRACKETS, BRACKETS) if _most_factors(parts) > 2 else (BRACKETS,)


def is_one_bracket(parts: Pieces) -> bool:
    """One bracket with a term before it, nothing to collect afterwards: one mark."""
    spread = flat(parts)
    return (
        len(parts) == 1
        and len(parts[0].brackets) == 1
        and not has_bracket(parts[0].brackets[0])
        and not has_like(spread)
    )


def _most_factors(parts: Pieces) -> int:
    return max(
        (
            max(bracket_count(part), *map(_most_factors, part.brackets))
            for part in parts
            if part.groups
        ),
        default=0,
    )


def _cancelling(node: Node) -> tuple[str, ...]:
    top, bottom = top_and_bottom(terms(node)[0][1])
    out = [NUMERATOR] if needs_factors(top, bottom) else []
    out += [DENOMINATOR] if needs_factors(bottom, top) else []
    return tuple(out)


def _multiplying(node: Node) -> tuple[str, ...]:
    body = terms(node)[0][1]
    top, bottom = top_and_bottom(body)
    out = [TURNED] if has_division(body) else []
    if needs_factors(top, bottom) or needs_factors(bottom, top):
        out.append(FACTORISED)
    return tuple(out)


def _adding(node: Node) -> tuple[str, ...]:
    parts = as_terms(node)
    several = any(isinstance(top, Sum) for _, top, _ in parts) or any(
        isinstance(part, Sum) for _, _, bottom in parts for part in walk(bottom)
    )
    same = len({polynomial(bottom) for _, _, bottom in parts}) == 1
    out = [] if same else [COMMON_BAR]
    return (*out, NUMERATORS) if several or not out else tuple(out)


@lru_cache(maxsize=4096)
def reached_by(kind: str, problem: Node, node: Node) -> frozenset[str]:
    """The stages that stand reached in a line, by its form alone."""
    try:
        return frozenset(_reached(kind, problem, node)) & frozenset(ORDER)
    except NoValue:
        return frozenset()


def _reached(kind: str, problem: Node, node: Node) -> set[str]:
    if kind == PUT:
        return set() if symbols(node) else {PUT_IN}
    if kind == COLLECT:
        mine = repeated(pieces(node))
        return {ONE_KIND} if repeated(pieces(problem)) - mine else set()
    if kind == EXPAND:
        return _expanded(problem, node)
    if kind == ADD:
        return _added(problem, node)
    return _simplified(kind, problem, node)


def _expanded(problem: Node, node: Node) -> set[str]:
    parts = pieces(node)
    out = set() if has_bracket(parts) else {BRACKETS, TWO_BRACKETS}
    if _most_factors(parts) < _most_factors(pieces(problem)):
        out.add(TWO_BRACKETS)
    return out


def _simplified(kind: str, problem: Node, node: Node) -> set[str]:
    if not has_fraction(node) and len(terms(node)) > 1:
        return {TURNED, NUMERATOR, DENOMINATOR, FACTORISED}
    body = terms(node)[0][1]
    out = set() if has_division(body) else {TURNED}
    if len(terms(node)) > 1:
        below = total_degree(unreduced(node)[1]) < total_degree(_bottom_of(problem))
        return {TURNED, NUMERATOR, DENOMINATOR, FACTORISED} if below else out
    top, bottom = top_and_bottom(body)
    if _smaller(problem, top, bottom):
        return {TURNED, NUMERATOR, DENOMINATOR, FACTORISED}
    if _shows_common_factor(top, bottom, problem):
        return {TURNED, NUMERATOR, DENOMINATOR, FACTORISED}
    above, below = _shows_factors(top, bottom), _shows_factors(bottom, top)
    out |= {NUMERATOR} if above else set()
    out |= {DENOMINATOR} if below else set()
    return out | ({FACTORISED} if above and below else set())


def _bottom_of(problem: Node) -> Polynomial:
    return polynomial(top_and_bottom(terms(problem)[0][1])[1])


def _shows_common_factor(top: Node, bottom: Node, problem: Node) -> bool:
    """``2(2x + 4)/12`` for ``(4x + 8)/12``: a factor of the one term below is taken out, or
    cancelled, not yet the whole."""
    below, under = polynomial(bottom), _bottom_of(problem)
    if len(below) != 1 or len(under) != 1:
        return False
    if _number(below) < _number(under) or total_degree(below) < total_degree(under):
        return True
    alone = [part for part in factors(top) if not isinstance(part, Sum | Power)]
    if not alone or len(alone) == len(factors(top)):
        return False
    shared = common_factor(polynomial(product(alone)), below)
    return total_degree(shared) > 0 or _number(shared) > 1


def _smaller(problem: Node, top: Node, bottom: Node) -> bool:
    """Whether something has been cancelled since the problem."""
    over, under = unreduced(problem)
    a, b = polynomial(top), polynomial(bottom)
    if total_degree(b) < total_degree(under) or total_degree(a) < total_degree(over):
        return True
    return _number(b) < _number(under) and total_degree(b) == total_degree(under) == 0


def _number(value: Polynomial) -> Fraction:
    return abs(value[0][1]) if value else Fraction(0)


def _shows_factors(node: Node, other: Node) -> bool:
    return not needs_factors(node, other)


def _added(problem: Node, node: Node) -> set[str]:
    parts = as_terms(node)
    if len(parts) == 1 or not has_fraction(node):
        least = least_common([polynomial(bottom) for _, _, bottom in as_terms(problem)])
        bottom = unreduced(node)[1]
        enough = len(parts) == 1 or total_degree(bottom) >= total_degree(least)
        return {COMMON_BAR, NUMERATORS} if enough else set()
    bottoms = {polynomial(bottom) for _, _, bottom in parts}
    over_one = len(bottoms) == 1 and parts[0][2] != ONE
    return {COMMON_BAR, NUMERATORS} if over_one or _joined_across(problem, node) else set()


def _joined_across(problem: Node, node: Node) -> bool:
    """``x/2 - (x - 3)/5`` as ``3x/10 + 3/5``: like terms of several fractions stand joined."""
    if has_letter_below(problem) or has_letter_below(node):
        return False
    apart, parts = flat(pieces(problem)), pieces(node)
    return has_like(apart) and not has_bracket(parts) and not has_like(parts)


STEP_WORDS = {
    TWO_BRACKETS: "multiply two of the brackets",
    BRACKETS: "multiply out the brackets",
    ONE_KIND: "collect like terms",
    COLLECTED: "collect like terms",
    PUT_IN: "put the values in",
    VALUE: "work out the value",
    TURNED: "multiply by the reciprocal",
    NUMERATOR: "factorise the numerator",
    DENOMINATOR: "factorise the denominator",
    FACTORISED: "factorise",
    LOWEST: "cancel common factors",
    COMMON_BAR: "write over a common denominator",
    NUMERATORS: "multiply the numerators",
    SINGLE: "write as a single fraction and collect above the bar",
}
