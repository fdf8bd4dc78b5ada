"""In which ways are fractions with letters cancelled, multiplied, divided, added?"""

from __future__ import annotations

from collections.abc import Iterator

from itembank.algebra.inside import symbols
from itembank.algebra.polynomials import constant, quotient, times
from itembank.algebra.rationals import least_common, rational
from itembank.algebra.values import NoValue, Polynomial, polynomial
from itembank.algebra.written import Integer, Negative, Node, Power, Quotient, Sum
from itembank.topics.expressions.finished import is_collected, unfinished
from itembank.topics.expressions.fractions import (
    ONE,
    as_terms,
    factored_node,
    flat_fractions,
    fraction_of,
    has_division,
    needs_factors,
    top_and_bottom,
)
from itembank.topics.expressions.pieces import flat, has_bracket, pieces, written
from itembank.topics.expressions.problems import ADD
from itembank.topics.expressions.trees import (
    factors,
    over,
    plain,
    polynomial_node,
    product,
    summed,
    terms,
)

Lines = list[tuple[Node, str, bool]]

FACTOR_FIRST = "factorise, then cancel"
CANCEL_ONLY = "cancel common factors"
EACH_TERM = "divide each term"
EACH_PART = "raise the numerator and the denominator to the power"
MULTIPLY_FIRST = "multiply first, then cancel"
LEAST = "over the least common denominator"
PRODUCT = "over the product of the denominators"
SAME = "over the denominator that they share"


def cancelling(node: Node) -> Iterator[tuple[str, Lines]]:
    """One fraction brought to its lowest terms."""
    sign, body = terms(node)[0]
    top, bottom = top_and_bottom(body)
    answer = fraction_of(*rational(node))
    shown = _factored(top, bottom)
    needed = shown != (top, bottom)
    lines: Lines = [(summed([(sign, over(*shown))]), "factorise", True)] if needed else []
    if isinstance(body, Power):
        yield EACH_PART, [(answer, EACH_PART, True)]
        return
    yield (FACTOR_FIRST if needed else CANCEL_ONLY), [*lines, (answer, CANCEL_ONLY, True)]
    if isinstance(top, Sum) and len(polynomial(bottom)) == 1:
        each = summed([(s * sign, over(part, bottom)) for s, part in terms(top)])
        if not isinstance(answer, Quotient) and not isinstance(answer, Negative):
            yield EACH_TERM, [(each, EACH_TERM, True), (answer, "cancel in each term", True)]


def _factored(top: Node, bottom: Node) -> tuple[Node, Node]:
    """Top and bottom, each as its factors where it has to be factorised."""
    above = _as_factors(top) if needs_factors(top, bottom) else top
    below = _as_factors(bottom) if needs_factors(bottom, top) else bottom
    return above, below


def _as_factors(node: Node) -> Node:
    return factored_node(polynomial(node))


def multiplying(node: Node) -> Iterator[tuple[str, Lines]]:
    """Fractions multiplied or divided."""
    sign, body = terms(node)[0]
    lines: Lines = []
    pairs = flat_fractions(body)
    if has_division(body):
        lines.append((_signed(sign, pairs), "multiply by the reciprocal", True))
    answer = fraction_of(*rational(node))
    top, bottom = top_and_bottom(body)
    shown = tuple(_shown(pair, top, bottom) for pair in pairs)
    first = list(lines)
    if shown != pairs:
        first.append((_signed(sign, shown), "factorise", True))
    yield (FACTOR_FIRST if shown != pairs else CANCEL_ONLY), [*first, (answer, CANCEL_ONLY, True)]
    tops, bottoms = zip(*shown, strict=True)
    joined = summed([(sign, over(_product(list(tops)), _product(list(bottoms))))])
    second = [*first, (joined, "multiply the numerators, and the denominators", True)]
    yield MULTIPLY_FIRST, [*second, (answer, CANCEL_ONLY, True)]


def _shown(pair: tuple[Node, Node], top: Node, bottom: Node) -> tuple[Node, Node]:
    above, below = pair
    return (
        _as_factors(above) if needs_factors(above, bottom) else above,
        _as_factors(below) if needs_factors(below, top) else below,
    )


def _signed(sign: int, pairs: tuple[tuple[Node, Node], ...]) -> Node:
    return summed([(sign, product([over(top, bottom) for top, bottom in pairs]))])


def _product(parts: list[Node]) -> Node:
    """The parts as one product, numbers first, then letters, then brackets."""
    kept = [factor for part in parts for factor in factors(part) if factor != ONE]
    kept.sort(key=lambda part: (bool(symbols(part)), isinstance(_base(part), Sum)))
    return product(kept) if kept else ONE


def _base(node: Node) -> Node:
    return node.base if isinstance(node, Power) else node


def adding(node: Node) -> Iterator[tuple[str, Lines]]:
    """Fractions added or taken away, to a single one."""
    bottoms = [polynomial(bottom) for _, _, bottom in as_terms(node)]
    least = least_common(bottoms)
    whole = bottoms[0]
    for bottom in bottoms[1:]:
        whole = times(whole, bottom)
    name = SAME if len(set(bottoms)) == 1 else LEAST
    yield name, _over(node, least)
    if whole != least and len(bottoms) == 2 and not any(constant(b) == 1 for b in bottoms):
        yield PRODUCT, _over(node, whole)


def _over(node: Node, bottom: Polynomial) -> Lines:
    """The lines from separate fractions to a single one, over a common denominator."""
    below = factored_node(bottom)
    parts = [(sign, _multiplied(top, under, bottom)) for sign, top, under in as_terms(node)]
    apart = summed([(sign, over(top, below)) for sign, top in parts])
    joined = plain(summed(parts))
    lines: Lines = [
        (apart, "write each fraction over the common denominator", True),
        (over(joined, below), "write as one fraction", True),
    ]
    spread = flat(pieces(joined))
    if has_bracket(pieces(joined)):
        lines.append((over(written(spread), below), "multiply out above the bar", True))
    total = polynomial(joined)
    if total and not is_collected(joined):
        lines.append((_collected(total, below), "collect like terms above the bar", True))
    answer = fraction_of(*rational(node), expand=True) if total else Integer("0")
    if total and unfinished(lines[-1][0], ADD):
        shown = over(factored_node(total), below)
        lines.append((shown, "factorise above the bar", False))
    elif total:
        answer = lines[-1][0]
    lines.append((answer, "cancel common factors", True))
    return lines


def _collected(total: Polynomial, below: Node) -> Node:
    """A fraction with its numerator collected; a numerator of one term has its minus before it."""
    above = polynomial_node(total)
    if isinstance(above, Negative):
        return Negative(over(above.body, below))
    return over(above, below)


def _multiplied(top: Node, under: Node, bottom: Polynomial) -> Node:
    factor = quotient(bottom, polynomial(under))
    if factor is None:
        raise NoValue("no common denominator")
    if constant(factor) == 1:
        return top
    if len(polynomial(top)) == 1 and len(factor) == 1:
        return polynomial_node(times(polynomial(top), factor))
    if constant(polynomial(top)) == 1:
        return factored_node(factor)
    if isinstance(top, Sum):
        return product([factored_node(factor), top])
    return product([top, factored_node(factor)])
