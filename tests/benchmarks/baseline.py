"""What would SymPy alone do? Lines parsed by SymPy's parser, their solution sets compared.

This is the yardstick of the benchmarks, not a marker: it tells that a line is wrong, never why,
and gives no marks. It gets our own typed text only, as SymPy's parser evaluates what it reads.

``python -m tests.benchmarks.baseline FILE`` checks the scripts of a file of JSON lines.
"""

from __future__ import annotations

import json
import re
import sys
from collections.abc import Sequence
from itertools import pairwise
from pathlib import Path
from typing import Any

import sympy
from sympy.parsing.sympy_parser import (
    convert_xor,
    implicit_multiplication,
    parse_expr,
    standard_transformations,
)

_TRANSFORMATIONS = (*standard_transformations, implicit_multiplication, convert_xor)
# A decimal is read as the exact number that it is.
_EXACT = {
    "Integer": sympy.Integer,
    "Rational": sympy.Rational,
    "Float": sympy.Rational,
    "Symbol": sympy.Symbol,
}
_MIXED = re.compile(r"(?<![\w./])(\d+) (\d+)/(\d+)")
_RECURRING = re.compile(r"(\d+\.\d*?)(\d+?)\2+\.\.\.")
_OURS = str.maketrans({"×": "*", "÷": "/", "[": "(", "]": ")", "{": "(", "}": ")"})


def solution_set(text: str, unknown: sympy.Symbol) -> Any:
    """The values that solve a typed equation; a line that is no equation solves nothing."""
    left, equals, right = text.partition("=")
    if not equals:
        return sympy.EmptySet
    names = {unknown.name: unknown}
    return sympy.solveset(parsed_in(left, names) - parsed_in(right, names), unknown)


def parsed_in(side: str, names: dict[str, Any]) -> Any:
    """A typed side as SymPy's parser reads it, with the names it may use."""
    written = _MIXED.sub(r"(\1+\2/\3)", side).translate(_OURS)
    written = _RECURRING.sub(r"\1[\2]", written)
    return parse_expr(written, dict(names), _TRANSFORMATIONS, _EXACT)


def unknown_of(problem: str) -> sympy.Symbol:
    """The one letter of a problem."""
    (name,) = {character for character in problem if character.isalpha()}
    return sympy.Symbol(name)


def value(problem: str) -> Any:
    """The solution of a problem by ``sympy.solve``, given the equation as it stands."""
    unknown = unknown_of(problem)
    names = {unknown.name: unknown}
    left, right = (parsed_in(side, names) for side in problem.split("="))
    return sympy.solve(sympy.Eq(left, right), unknown)


def follow(problem: str, lines: Sequence[str]) -> list[bool]:
    """Whether each line has the solution set of the line before it; each step judged by itself."""
    unknown = unknown_of(problem)
    return [
        solution_set(before, unknown) == solution_set(line, unknown)
        for before, line in pairwise((problem, *lines))
    ]


def main(path: str) -> None:
    """Check every script of a file and print how many lines do not follow."""
    records = [json.loads(line) for line in Path(path).read_text().splitlines()]
    records = [one for one in records if one["topic"] == "linear equations"]
    checks = [follow(one["problem"], one["lines"]) for one in records]
    wrong = sum(not right for found in checks for right in found)
    print(f"{len(records)} scripts, {sum(map(len, checks))} lines, {wrong} do not follow")


if __name__ == "__main__":
    main(sys.argv[1])
