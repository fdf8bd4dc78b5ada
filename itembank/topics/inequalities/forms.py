"""How is a solution written? As an inequality, a set, an interval, on a number line."""

from __future__ import annotations

from itembank.algebra.inside import symbols
from itembank.algebra.joining import OR, UNION, joined
from itembank.algebra.order import holds, is_closed, points_up
from itembank.algebra.showing import typed
from itembank.algebra.values import number
from itembank.algebra.written import Node, Relation, Symbol
from itembank.topics.inequalities.solutions import integers_of
from itembank.topics.judging import Shaped
from itembank.topics.kinds import NumberLine
from itembank.topics.linear_equations import rewriting
from itembank.topics.linear_equations.forms import answer_form, value_forms
from itembank.topics.linear_equations.steps import (
    CONCLUDE_ALL,
    CONCLUDE_NONE,
    EXCHANGE,
    NAME_VALUE,
    Move,
)
from itembank.topics.linear_equations.working import Working


def answer(found: Shaped, unknown: str) -> str:
    """A solution with its numbers as an answer gives them."""
    return _written(found, unknown, [answer_form(n) for n in found.numbers])


def answer_forms(found: Shaped, unknown: str) -> tuple[str, ...]:
    """The accepted forms of a solution, the preferred one first."""
    ways = max(len(value_forms(n)) for n in found.numbers)
    forms = [shown(found, unknown, way) for way in range(ways)]
    forms.append(f"{{{unknown} : {forms[0]}}}")
    forms.append(_intervals(found))
    forms.append(_other_way(found, unknown))
    return tuple(dict.fromkeys(forms))


def shown(found: Shaped, unknown: str, way: int = 0) -> str:
    """``x > 3``, ``-2 < x <= 3`` with its numbers in one of their forms, 0 the preferred one."""
    numbers = [value_forms(n)[min(way, len(value_forms(n)) - 1)] for n in found.numbers]
    return _written(found, unknown, numbers)


def integers_shown(found: Shaped | None) -> str:
    """The integers of a solution as a list."""
    return ", ".join(map(str, sorted(integers_of(found) or ())))


def pieces(found: Shaped) -> tuple[Shaped, ...]:
    """The pieces of a solution: rays of which one is enough, else the whole, that below first."""
    assert isinstance(found.shape, tuple)
    if found.shape[0] != OR:
        return (found,)
    every = zip(found.shape[1:], found.numbers, strict=True)
    return tuple(Shaped((sign,), (number,)) for sign, number in every)


def number_line(found: Shaped | None, integers: bool) -> NumberLine | None:
    """A solution, or the integers in it, as a picture shows it; None where there is no boundary."""
    if found is None:
        return None
    if integers:
        return NumberLine(listed=tuple(map(str, sorted(integers_of(found) or ()))))
    first, *others = map(_drawn, pieces(found))
    return NumberLine(*first, others=tuple(NumberLine(*one) for one in others))


def _drawn(piece: Shaped) -> tuple[str, bool, str, bool]:
    low = high = ("", False)
    for sign, end in zip(_signs(piece), piece.numbers, strict=True):
        if points_up(sign):
            low = (str(end), is_closed(sign))
        else:
            high = (str(end), is_closed(sign))
    return (*low, *high)


def _written(found: Shaped, unknown: str, numbers: list[Node]) -> str:
    signs = _signs(found)
    if signs[0] == OR:
        ends = zip(signs[1:], numbers, strict=True)
        return f" {OR} ".join(_ray(unknown, sign, end) for sign, end in ends)
    if len(numbers) == 1:
        return _ray(unknown, signs[0], numbers[0])
    turned = rewriting.exchanged(Relation((Symbol(unknown), numbers[0]), signs[:1]))
    return typed(Relation((*turned.sides, numbers[1]), (*turned.signs, signs[1])))


def _ray(unknown: str, sign: str, end: Node) -> str:
    return typed(Relation((Symbol(unknown), end), (sign,)))


def _signs(found: Shaped) -> tuple[str, ...]:
    assert isinstance(found.shape, tuple)
    return found.shape


def _intervals(found: Shaped) -> str:
    """``(3, ∞)``, ``(-2, 3]``, ``(-∞, -3) ∪ [3, ∞)``."""
    in_order = sorted(pieces(found), key=lambda piece: points_up(_signs(piece)[0]))
    return f" {UNION} ".join(map(_interval, in_order))


def _interval(found: Shaped) -> str:
    numbers = [typed(value_forms(n)[0]) for n in found.numbers]
    signs = _signs(found)
    opening = {">": "(", ">=": "["}.get(signs[0], "(")
    closing = {"<": ")", "<=": "]"}.get(signs[-1], ")")
    if len(numbers) == 2:
        return f"{opening}{numbers[0]}, {numbers[1]}{closing}"
    return f"{opening}{numbers[0]}, ∞)" if points_up(signs[0]) else f"(-∞, {numbers[0]}{closing}"


def _other_way(found: Shaped, unknown: str) -> str:
    """``3 < x``; ``x > -2 and x <= 3``; ``-3 > x or 3 <= x``."""
    signs = [sign for sign in _signs(found) if sign != OR]
    ends = [
        Relation((Symbol(unknown), value_forms(n)[0]), (sign,))
        for n, sign in zip(found.numbers, signs, strict=True)
    ]
    if len(signs) == len(_signs(found)) > 1:
        return typed(joined((tuple(ends),)))
    return typed(joined(tuple((rewriting.exchanged(one),) for one in ends)))


def finished(working: Working) -> Working:
    """The working closed by the solution, or by what follows where the unknown is lost."""
    left, right = working.line.sides
    if not symbols(left) and not symbols(right):
        true = holds(number(left), working.line.signs[0], number(right))
        if true:
            return working.stated("all values", CONCLUDE_ALL)
        return working.stated("no solution", CONCLUDE_NONE)
    return working.after(Move(EXCHANGE if isinstance(right, Symbol) else NAME_VALUE))
