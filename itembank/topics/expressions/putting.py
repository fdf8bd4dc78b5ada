"""How are values put in for letters, and how is what they make worked out?"""

from __future__ import annotations

from collections.abc import Callable, Mapping

from itembank.algebra.exact import Fraction
from itembank.algebra.inside import symbols
from itembank.algebra.number_forms import number_form
from itembank.algebra.values import number
from itembank.algebra.written import (
    Bracket,
    Negative,
    Node,
    Power,
    Product,
    Quotient,
    Sum,
    Symbol,
)
from itembank.topics.expressions.trees import number_node, product


def put_in(node: Node, values: Mapping[str, Node]) -> Node:
    """The tree with a value for each letter; a negative one in a bracket of its own."""
    return mapped(node, lambda part: _value(part, values))


def _value(part: Node, values: Mapping[str, Node]) -> Node | None:
    if not isinstance(part, Symbol) or part.name not in values:
        return None
    value = values[part.name]
    plain = not isinstance(value, Negative) and number_form(value) in ("integer", "decimal")
    return value if plain or isinstance(value, Bracket) else Bracket(value)


def mapped(node: Node, change: Callable[[Node], Node | None]) -> Node:
    """The tree with what ``change`` gives in the place of each part that it knows."""
    found = change(node)
    if found is not None:
        return found
    match node:
        case Sum(parts):
            return Sum(tuple((sign, mapped(body, change)) for sign, body in parts))
        case Product(parts, marks):
            inner = [mapped(part, change) for part in parts]
            joined = product(inner)
            flat = isinstance(joined, Product) and len(joined.marks) == len(marks)
            return joined if flat else Product(tuple(inner), marks)
        case Quotient(top, bottom, mark):
            return Quotient(mapped(top, change), mapped(bottom, change), mark)
        case Power(base, exponent):
            return Power(mapped(base, change), exponent)
        case Negative(body):
            return Negative(mapped(body, change))
        case Bracket(body, kind):
            return Bracket(mapped(body, change), kind)
        case _:
            return node


def powers_worked_out(node: Node) -> Node:
    """The tree of numbers with every power as a number."""
    return mapped(node, lambda part: _number(part) if isinstance(part, Power) else None)


def products_worked_out(node: Node) -> Node:
    """The tree of numbers with every term as a number."""
    if isinstance(node, Sum):
        terms = []
        for place, (sign, body) in enumerate(node.terms):
            value = number(body)
            if value < 0 and place:
                sign, value = ("-" if sign == "+" else "+"), -value
            terms.append((sign, number_node(value)))
        return Sum(tuple(terms))
    return node


def _number(part: Node) -> Node:
    out = number_node(number(part))
    return Bracket(out) if isinstance(out, Negative | Quotient) else out


def value_of(node: Node, values: Mapping[str, Node]) -> Fraction:
    """The value of an expression with its letters put in; raises NoValue where it has none."""
    return number(put_in(node, values)) if symbols(node) else number(node)
