"""Does SymPy confirm every line of a solution?

Independent of the routes: the typed lines are read back and compared in SymPy's field of rational
functions; where values are put in, SymPy puts them in.
"""

from __future__ import annotations

from typing import Any

from itembank.algebra.reading import ReadingFault, read_expression
from itembank.algebra.values import symbols
from itembank.algebra.written import Node
from itembank.topics.confirming import in_field
from itembank.topics.expressions.problems import Task
from itembank.topics.kinds import CheckFailed, Solution


def check(task: Task, solution: Solution) -> None:
    """Confirm a solution: each line of each route, the answer and its forms.

    Raises:
        CheckFailed: naming the problem and the line that SymPy does not confirm.
    """
    texts = {line.text for route in solution.routes for line in route.lines[1:]}
    texts.update((solution.answer, *solution.forms))
    letters = tuple(sorted(symbols(task.node)))
    expected = _worth(task.relation.sides[-1], task, letters)
    for text in sorted(texts):
        try:
            found = _worth(read_expression(text), task, letters)
        except ReadingFault as fault:
            raise CheckFailed(f"{text}: {fault}") from fault
        if found != expected:
            raise CheckFailed(f"{task.text}: SymPy does not confirm the line {text}")


def _worth(node: Node, task: Task, letters: tuple[str, ...]) -> Any:
    found = in_field(node, letters)
    if not task.put:
        return found
    values = [(letter, in_field(task.put[letter], letters)) for letter in letters]
    top, bottom = found.numer, found.denom
    for place, (_, value) in enumerate(values):
        number = value.numer.coeff(1) / value.denom.coeff(1)
        generator = top.ring.gens[place]
        top, bottom = top.subs(generator, number), bottom.subs(generator, number)
    return top.coeff(1) / bottom.coeff(1)
