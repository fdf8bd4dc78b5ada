"""What goes wrong when values are put in and worked out? Common errors on trees of numbers."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from functools import lru_cache
from typing import NamedTuple

from itembank.algebra.inside import symbols
from itembank.algebra.operations import left_to_right
from itembank.algebra.values import NoValue, number
from itembank.algebra.written import (
    Bracket,
    Integer,
    Negative,
    Node,
    Power,
    Product,
    Quotient,
    Sum,
    Symbol,
)
from itembank.topics.catalogue import CommonError
from itembank.topics.expressions.catalogue import SQUARE_WITHOUT_MIDDLE
from itembank.topics.expressions.putting import mapped, put_in
from itembank.topics.expressions.putting_catalogue import (
    BRACKETS_FORGOTTEN,
    DIGIT,
    LEFT_TO_RIGHT,
    MINUS_BEFORE_SQUARE,
    MINUS_MINUS,
    PRODUCT_OF_NEGATIVES,
    PRODUCT_SQUARED,
    SIGN_NOT_PUT,
    SQUARED_DOUBLED,
    VALUE_ADDED,
    VALUES_EXCHANGED,
)
from itembank.topics.expressions.trees import plain, product
from itembank.topics.expressions.unbracketed import opened, without_brackets

PUTTING, WORKING = "putting in", "working out"
"""What an error costs: the values put in, or only the value."""

UNWRITTEN = (BRACKETS_FORGOTTEN, MINUS_BEFORE_SQUARE)
"""The errors of a line that lacks brackets, which may be meant all the same (conventions 5.4)."""


class NumberChange(NamedTuple):
    """A common error in numbers: what it is, what it touches, the tree after it."""

    error: CommonError
    touches: str
    after: Node


def wrong_values(node: Node, values: Mapping[str, Node]) -> Iterator[NumberChange]:
    """Every way to put the values in wrongly, or to work out wrongly what they make."""
    if symbols(node):
        yield from _wrongly_put(node, values)
        try:
            numbers = plain(put_in(node, values))
        except NoValue:
            return
    else:
        numbers = node
    for error, after in _wrongly_worked(numbers):
        yield NumberChange(error, WORKING, after)


def _wrongly_put(node: Node, values: Mapping[str, Node]) -> Iterator[NumberChange]:
    known = {name: value for name, value in values.items() if name in symbols(node)}
    for name, value in known.items():
        if isinstance(plain(value), Negative):
            inner = plain(value)
            assert isinstance(inner, Negative)
            yield _put(SIGN_NOT_PUT, node, {**values, name: inner.body})
    names = sorted(known)
    for place, one in enumerate(names):
        for other in names[place + 1 :]:
            swapped = {**values, one: values[other], other: values[one]}
            yield _put(VALUES_EXCHANGED, node, swapped)
    for error in (DIGIT, VALUE_ADDED):
        for after in _misread_products(node, values, error):
            yield NumberChange(error, PUTTING, plain(put_in(after, values)))


def _put(error: CommonError, node: Node, values: Mapping[str, Node]) -> NumberChange:
    return NumberChange(error, PUTTING, plain(put_in(node, values)))


def _misread_products(node: Node, values: Mapping[str, Node], error: CommonError) -> Iterator[Node]:
    """``2x`` as 23, or as 2 + 3, where x is 3: in one product, or in all of them."""
    found: list[tuple[Node, Node]] = []
    for part, put in _places(node):
        ways = tuple(_misread(part, values, error)) if isinstance(part, Product) else ()
        found += [(part, way) for way in ways[:1]]
        for way in ways:
            yield _beside(put(way), (way,), error)
    if len(found) > 1:
        every = mapped(node, lambda part: next((way for p, way in found if p == part), None))
        yield _beside(every, [way for _, way in found], error)


def _beside(node: Node, ways: Sequence[Node], error: CommonError) -> Node:
    """A negative value behind its number is read as taken away: ``5 - 3x`` as ``5 - 3 - 2``."""
    return opened(node, frozenset(ways)) if error is DIGIT else node


def _misread(part: Product, values: Mapping[str, Node], error: CommonError) -> Iterator[Node]:
    first, second, *rest = part.factors
    power = second.exponent if isinstance(second, Power) else None
    letter = second.base if isinstance(second, Power) else second
    one, other = _known(first, values), _known(letter, values)
    if one is None or other is None or not isinstance(letter, Symbol):
        return
    if error is VALUE_ADDED:
        if power is None:
            yield product([Sum((("+", one), ("+", other))), *rest])
        return
    digits = other.body if isinstance(other, Negative) else other
    if isinstance(one, Negative) and isinstance(one.body, Integer) and isinstance(other, Integer):
        yield product([Negative(_written_behind(one.body, other, power)), *rest])
    if not isinstance(one, Integer) or not isinstance(digits, Integer):
        return
    both = _written_behind(one, digits, power)
    if not isinstance(other, Negative):
        yield product([both, *rest])
        return
    if not rest:
        away = digits if power is None else Power(digits, power)
        yield Sum((("+", one), ("-", away)))
    yield product([Negative(both), *rest])
    yield product([both, *rest])  # its minus left out as well


def _written_behind(one: Integer, other: Integer, power: Node | None) -> Node:
    both = Integer(one.digits + other.digits)
    return both if power is None else Power(both, power)


def _known(factor: Node, values: Mapping[str, Node]) -> Node | None:
    """The number that stands in a place, or the value of the letter there."""
    if isinstance(factor, Symbol):
        return plain(values[factor.name]) if factor.name in values else None
    return factor if isinstance(factor, Integer) else None


@lru_cache(maxsize=4096)
def _wrongly_worked(node: Node) -> tuple[tuple[CommonError, Node], ...]:
    """Every way to work out numbers wrongly."""
    return tuple(_worked(node))


def _worked(node: Node) -> Iterator[tuple[CommonError, Node]]:
    meant = left_to_right(node)
    if meant is not None:
        yield LEFT_TO_RIGHT, plain(meant)
    for part, put in _places(node):
        match part:
            case Power(Negative(body), Integer(power)) if int(power) % 2 == 0:
                yield MINUS_BEFORE_SQUARE, put(Negative(Power(body, Integer(power))))
            case Sum(parts):
                for place, (sign, body) in enumerate(parts):
                    if place and sign == "-" and isinstance(body, Negative):
                        changed = (*parts[:place], ("-", body.body), *parts[place + 1 :])
                        yield MINUS_MINUS, put(Sum(changed))
            case Power(Sum(parts), Integer("2")):
                squares = [Power(body, Integer("2")) for _, body in parts]
                signs = tuple(sign for sign, _ in parts)
                for kept in dict.fromkeys((signs, ("+",) * len(parts))):
                    each = tuple(zip(kept, squares, strict=True))
                    yield SQUARE_WITHOUT_MIDDLE, put(Sum(each))
            case _:
                pass
        if isinstance(part, Power) and isinstance(part.exponent, Integer):
            yield SQUARED_DOUBLED, put(product([part.base, part.exponent]))
        if isinstance(part, Product):
            yield from _product(part, put)
    for after in without_brackets(node):
        yield BRACKETS_FORGOTTEN, plain(after)
    yield from _negative_terms(node)


def _negative_terms(node: Node) -> Iterator[tuple[CommonError, Node]]:
    """A negative product taken away: ``7 - 3(-2)`` as ``7 - 6``."""
    if not isinstance(node, Sum):
        return
    for place, (sign, body) in enumerate(node.terms):
        if place and sign == "-" and _is_negative(body) and not isinstance(body, Negative):
            changed = (*node.terms[:place], ("+", body), *node.terms[place + 1 :])
            yield MINUS_MINUS, Sum(changed)


def _is_negative(body: Node) -> bool:
    try:
        return number(body) < 0
    except NoValue:
        return False


def _product(part: Product, put: _Put) -> Iterator[tuple[CommonError, Node]]:
    negatives = [f for f in part.factors if isinstance(f, Negative)]
    if negatives:
        yield PRODUCT_OF_NEGATIVES, put(Negative(part))
    for place, factor in enumerate(part.factors):
        if place and isinstance(factor, Power):
            before = part.factors[:place]
            base = product([*before, factor.base])
            whole = Power(Bracket(base), factor.exponent)
            yield PRODUCT_SQUARED, put(plain(product([whole, *part.factors[place + 1 :]])))


class _Put(NamedTuple):
    """How a changed part goes back into the tree that it came from."""

    frames: tuple[tuple[Node, int], ...] = ()

    def __call__(self, part: Node) -> Node:
        for whole, place in reversed(self.frames):
            part = _with(whole, place, part)
        return plain(part)


def _places(node: Node, frames: tuple[tuple[Node, int], ...] = ()) -> Iterator[tuple[Node, _Put]]:
    yield node, _Put(frames)
    for place, child in enumerate(_children(node)):
        yield from _places(child, (*frames, (node, place)))


def _children(node: Node) -> tuple[Node, ...]:
    match node:
        case Sum(parts):
            return tuple(body for _, body in parts)
        case Product(parts):
            return parts
        case Quotient(top, bottom):
            return (top, bottom)
        case Power(base) | Negative(base) | Bracket(base):
            return (base,)
        case _:
            return ()


def _with(whole: Node, place: int, part: Node) -> Node:
    match whole:
        case Sum(parts):
            sign = parts[place][0]
            return Sum((*parts[:place], (sign, part), *parts[place + 1 :]))
        case Product(parts):
            return product([*parts[:place], part, *parts[place + 1 :]])
        case Quotient(top, bottom, mark):
            return Quotient(part, bottom, mark) if place == 0 else Quotient(top, part, mark)
        case Power(_, exponent):
            return Power(part, exponent)
        case Negative():
            return Negative(part)
        case Bracket(_, kind):
            return Bracket(part, kind)
        case _:
            raise AssertionError(whole)
