"""Does SymPy confirm every line of a solution?

Independent of the routes: the typed lines are read back and compared as fractions of SymPy's
polynomials; where values are put in, SymPy puts them in.
"""

from __future__ import annotations

from itembank.algebra.inside import symbols
from itembank.algebra.reading import ReadingFault, read_expression
from itembank.algebra.written import Node
from itembank.topics.confirming import Fractions, in_fractions, same_fractions
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
        if not same_fractions(found, expected):
            raise CheckFailed(f"{task.text}: SymPy does not confirm the line {text}")


def _worth(node: Node, task: Task, letters: tuple[str, ...]) -> Fractions:
    top, bottom = in_fractions(node, letters)
    if not task.put:
        return top, bottom
    put = [in_fractions(task.put[letter], letters)[0].coeff(1) for letter in letters]
    found = top.evaluate(list(zip(top.ring.gens, put, strict=False))) if put else top.coeff(1)
    if bottom is None:
        return found, None
    below = bottom.evaluate(list(zip(bottom.ring.gens, put, strict=False)))
    if not below:
        raise CheckFailed(f"{task.text}: a division by zero")
    return found / below, None
