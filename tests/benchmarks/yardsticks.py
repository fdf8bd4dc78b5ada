"""What would SymPy alone do in each topic? The answer of a problem, and which lines follow.

``answer`` gives what SymPy makes of a problem, without steps; ``follow`` tells of each line whether
it says what the line before it says. Neither gives a reason or a mark. They get our own typed text
only, as SymPy's parser evaluates what it reads.
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


def _letters(*texts: str) -> dict[str, sympy.Symbol]:
    return {name: sympy.Symbol(name) for text in texts for name in re.findall(r"[a-z]", text)}


def _parsed(text: str, letters: dict[str, sympy.Symbol]) -> Any:
    apart = re.sub(r"(?<=[a-z])(?=[a-z])", " ", text)
    return parsed_in(re.sub(r"(\S+) ÷ (\S.*)", r"(\1)/(\2)", apart), letters)


# Inequalities: the sets of real numbers of two lines


def _set(text: str, unknown: sympy.Symbol) -> Any:
    """The numbers that meet a typed line of one part or two; None for a line of other kind."""
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
    return _set(problem, baseline.unknown_of(problem.removesuffix(", integers")))


def _inequalities(problem: str, lines: Sequence[str]) -> list[bool]:
    unknown = baseline.unknown_of(problem.removesuffix(", integers"))
    return [_set(a, unknown) == _set(b, unknown) for a, b in pairwise([problem, *lines])]


# Expressions: the difference of two lines


def _with_values(problem: str) -> tuple[Any, dict[Any, Any]]:
    text, *values = problem.split(", ")
    letters = _letters(problem)
    pairs = [value.split(" = ") for value in values]
    return _parsed(text, letters), {letters[name]: sympy.Rational(v) for name, v in pairs}


def _expression(problem: str) -> Any:
    expression, values = _with_values(problem)
    if values:
        return expression.subs(values)
    return sympy.cancel(sympy.together(expression)) if "/" in problem else sympy.expand(expression)


def _expressions(problem: str, lines: Sequence[str]) -> list[bool]:
    first, values = _with_values(problem)
    letters = _letters(problem)
    every = [first, *(_parsed(line, letters) for line in lines)]
    if values:
        every = [line.subs(values) for line in every]
    return [sympy.cancel(one - other) == 0 for one, other in pairwise(every)]


def _factors(problem: str) -> Any:
    return sympy.factor(_parsed(problem, _letters(problem)))


def _factorings(problem: str, lines: Sequence[str]) -> list[bool]:
    letters = _letters(problem)
    texts = [line for line in lines if "=" not in line]  # pairs of numbers stand beside the work
    every = [_parsed(text, letters) for text in (problem, *texts)]
    return [sympy.expand(one - other) == 0 for one, other in pairwise(every)]


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
    return _values(problem, baseline.unknown_of(problem))


def _quadratics(problem: str, lines: Sequence[str]) -> list[bool]:
    unknown = baseline.unknown_of(problem)
    lettered = [line for line in lines if unknown.name in line]
    return [_values(a, unknown) == _values(b, unknown) for a, b in pairwise([problem, *lettered])]


# Simultaneous equations: whether a line holds for the solution of the lines before it


def _equations(text: str, letters: dict[str, sympy.Symbol]) -> list[Any]:
    out = []
    for part in re.split(r", | and ", re.sub(r"^[^:]*:|\s\(\d\)$", "", text)):
        left, equals, right = part.partition("=")
        if equals:
            out.append(_parsed(left, letters) - _parsed(right, letters))
    return out


def _pair(problem: str) -> Any:
    letters = _letters(problem)
    return sympy.linsolve(_equations(problem, letters), *letters.values())


def _system(problem: str, lines: Sequence[str]) -> list[bool]:
    letters = _letters(problem)
    known = _equations(problem, letters)
    out = []
    for line in lines:
        fresh = _equations(line, letters)
        before = sympy.linsolve(known, *letters.values())
        out.append(before == sympy.linsolve([*known, *fresh], *letters.values()))
        known = [*known, *fresh] if out[-1] else fresh or known
    return out


YARDSTICKS = {
    "linear equations": Yardstick(baseline.value, baseline.follow),
    "linear inequalities": Yardstick(_inequality, _inequalities),
    "simultaneous equations": Yardstick(_pair, _system),
    "expressions": Yardstick(_expression, _expressions),
    "factorising": Yardstick(_factors, _factorings),
    "quadratic equations": Yardstick(_quadratic, _quadratics),
}
