"""What would SymPy alone do in each topic? The answer of a problem, and which lines follow.

``answer`` gives what SymPy makes of a problem, without steps (an equation or a pair of them by
``sympy.solve``; an inequality by ``solveset``; an expression expanded, cancelled or factored);
``follow`` tells of each line whether it says what the line before it says. Neither gives a reason
or a mark. They get our own typed text only, as SymPy's parser evaluates what it reads.

A step is checked by itself: both its lines are parsed, then compared by what they mean. How is what
someone who knows SymPy would write, and decides every line of the topic that has letters:

- an equation or an inequality by its solution set (``solveset``), a line of several parts by the
  union or the intersection of theirs, surds and ``±`` included;
- a line of a pair of equations by the solutions of what was known, with it and without
  (``linsolve``, which SymPy's manual gives for linear systems);
- an expression by ``simplify(a - b) == 0``, the way of SymPy's manual (its tutorial and "Gotchas
  and Pitfalls" on equals signs), which holds for fractions in letters as for polynomials.

``quickest`` is the shortest way to the same verdicts that we know where it is another one: of
expressions, whether the numerator of the difference expands to nothing.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from itertools import pairwise
from typing import Any

import sympy

from tests.benchmarks import baseline
from tests.benchmarks.baseline import parsed_in

_SIGN = re.compile(r"\s*(<=|>=|=|<|>)\s*")
_RELATIONS = {
    "<": sympy.StrictLessThan,
    "<=": sympy.LessThan,
    ">": sympy.StrictGreaterThan,
    ">=": sympy.GreaterThan,
    "=": sympy.Eq,
}


@dataclass(frozen=True, slots=True)
class Yardstick:
    """What SymPy alone is asked in a topic."""

    answer: Callable[[str], Any]
    follow: Callable[[str, Sequence[str]], list[bool]]
    quickest: Callable[[str, Sequence[str]], list[bool]] | None = None


def _letters(*texts: str) -> dict[str, sympy.Symbol]:
    return {name: sympy.Symbol(name) for text in texts for name in re.findall(r"[a-z]", text)}


def _parsed(text: str, letters: dict[str, sympy.Symbol]) -> Any:
    apart = re.sub(r"(?<=[a-z])(?=[a-z])", " ", text)
    return parsed_in(re.sub(r"(\S+) ÷ (\S.*)", r"(\1)/(\2)", apart), letters)


# Inequalities: the sets of real numbers of two lines


def _set(text: str, unknown: sympy.Symbol) -> Any:
    """The numbers that meet a typed line of one part or two; None for a line of other kind."""
    if " or " in text:
        return sympy.Union(*(_set(part, unknown) for part in text.split(" or ")))
    sets = []
    text = text.removesuffix(", integers")
    if "," in text or "{" in text:
        return None  # an interval, a set by its condition or a list
    for part in text.split(" and "):
        sides = _SIGN.split(part)
        for place in range(0, len(sides) - 2, 2):
            left, sign, right = sides[place : place + 3]
            names = {unknown.name: unknown}
            relation = _RELATIONS[sign](parsed_in(left, names), parsed_in(right, names))
            sets.append(sympy.solveset(relation, unknown, sympy.S.Reals))
    return sympy.Intersection(*sets) if sets else None


def _inequality(problem: str) -> Any:
    return _set(problem, _unknown(problem))


def _unknown(problem: str) -> sympy.Symbol:
    return baseline.unknown_of(re.sub(r"\b(?:integers|or|and)\b", "", problem))


def _inequalities(problem: str, lines: Sequence[str]) -> list[bool]:
    unknown = _unknown(problem)
    return [_set(a, unknown) == _set(b, unknown) for a, b in pairwise([problem, *lines])]


# Expressions: the difference of two lines


def _expression(problem: str) -> Any:
    text, values = _with_values(problem)
    expression = _parsed(text, _letters(problem))
    if values:
        return expression.subs(values)
    return sympy.cancel(sympy.together(expression)) if "/" in problem else sympy.expand(expression)


def _with_values(problem: str) -> tuple[str, dict[Any, Any]]:
    text, *values = problem.split(", ")
    letters = _letters(problem)
    pairs = [value.split(" = ") for value in values]
    return text, {letters[name]: sympy.Rational(v) for name, v in pairs}


def _simplifies(one: Any, other: Any) -> bool:
    return bool(sympy.simplify(one - other) == 0)


def _cancels(one: Any, other: Any) -> bool:
    above, _ = sympy.fraction(sympy.together(one - other))
    return bool(sympy.expand(above) == 0)


def _expands(one: Any, other: Any) -> bool:
    return bool(sympy.expand(one - other) == 0)


def _differences(same: Callable[[Any, Any], bool]) -> Callable[[str, Sequence[str]], list[bool]]:
    """Of each line whether it is the same expression as the one before it, values put in."""

    def follow(problem: str, lines: Sequence[str]) -> list[bool]:
        first, values = _with_values(problem)
        letters = _letters(problem)

        def read(line: str) -> Any:
            found = _parsed(line, letters)
            return found.subs(values) if values else found

        # pairs of numbers stand beside the work
        texts = [first, *(line for line in lines if "=" not in line)]
        return [same(read(one), read(other)) for one, other in pairwise(texts)]

    return follow


def _factors(problem: str) -> Any:
    return sympy.factor(_parsed(problem, _letters(problem)))


# Quadratic equations: the values of two lines, a line of several parts by its parts


def _values(text: str, unknown: sympy.Symbol) -> Any:
    found = sympy.S.EmptySet
    for part in re.split(r"\bor\b|, ", text):
        for sign in ("+", "-") if "±" in part else ("",):
            left, equals, right = part.replace("±", sign).partition("=")
            if not equals:
                return None  # working on numbers alone, or words
            names = {unknown.name: unknown, "sqrt": sympy.sqrt}
            sides = [re.sub(r"√(\d+|\()", _root, side) for side in (left, right)]
            difference = parsed_in(sides[0], names) - parsed_in(sides[1], names)
            found = sympy.Union(found, sympy.solveset(difference, unknown))
    return found


def _root(found: re.Match[str]) -> str:
    return "sqrt(" if found[1] == "(" else f"sqrt({found[1]})"


def _quadratic(problem: str) -> Any:
    return baseline.value(problem)


def _quadratics(problem: str, lines: Sequence[str]) -> list[bool]:
    unknown = baseline.unknown_of(problem)
    lettered = [line for line in lines if unknown.name in line]
    return [_values(a, unknown) == _values(b, unknown) for a, b in pairwise([problem, *lettered])]


# Simultaneous equations: whether a line holds for the solution of the lines before it


def _equations(text: str, letters: dict[str, sympy.Symbol]) -> list[Any]:
    out = []
    for part in _parts(text, letters):
        left, equals, right = part.partition("=")
        if equals:
            out.append(_parsed(left, letters) - _parsed(right, letters))
    return out


def _parts(text: str, letters: dict[str, sympy.Symbol]) -> list[str]:
    """The equations of a line; ``(1, 6)`` gives each letter its value."""
    if point := re.fullmatch(r"\(([^(),]+), ([^(),]+)\)", text):
        return [
            f"{name} = {value}" for name, value in zip(sorted(letters), point.groups(), strict=True)
        ]
    return re.split(r", | and ", re.sub(r"^[^:]*:|\s\(\d\)$", "", text))


def _pair(problem: str) -> Any:
    letters = _letters(problem)
    return sympy.solve(_equations(problem, letters), *letters.values())


def _system(problem: str, lines: Sequence[str]) -> list[bool]:
    letters = _letters(problem)
    known: list[Any] = []
    out = []
    for before, line in pairwise([problem, *lines]):
        known = [*known, *_equations(before, letters)]
        after = [*known, *_equations(line, letters)]
        found = (sympy.linsolve(system, *letters.values()) for system in (known, after))
        out.append(next(found) == next(found))
        if not out[-1]:
            known = []  # the work goes on from the wrong line
    return out


YARDSTICKS = {
    "linear equations": Yardstick(baseline.value, baseline.follow),
    "linear inequalities": Yardstick(_inequality, _inequalities),
    "simultaneous equations": Yardstick(_pair, _system),
    "expressions": Yardstick(_expression, _differences(_simplifies), _differences(_cancels)),
    "factorising": Yardstick(_factors, _differences(_simplifies), _differences(_expands)),
    "quadratic equations": Yardstick(_quadratic, _quadratics),
    "fractional equations": Yardstick(_quadratic, _quadratics),
}
