"""Is one part of a fraction written as a product that it is not? Told by the other part."""

from __future__ import annotations

from itembank.algebra.values import NoValue, polynomial
from itembank.algebra.written import Node, Power, Sum
from itembank.topics.expressions.fraction_catalogue import WRONG_PRODUCT
from itembank.topics.expressions.fractions import top_and_bottom
from itembank.topics.expressions.problems import CANCEL, Task
from itembank.topics.expressions.stages import DENOMINATOR, NUMERATOR
from itembank.topics.expressions.trees import factors, terms
from itembank.topics.judging import Wrong


def wrong_product(task: Task, source: Node, form: Node) -> Wrong | None:
    """``(x + 2)(x + 6)/(x + 3)`` for ``(x^2 + 7x + 12)/(x + 3)``: no factorisation of the top."""
    if task.kind != CANCEL or len(terms(source)) > 1 or len(terms(form)) > 1:
        return None
    try:
        (top, bottom), (above, below) = (top_and_bottom(terms(n)[0][1]) for n in (source, form))
        same_top = polynomial(top) == polynomial(above)
        same_bottom = polynomial(bottom) == polynomial(below)
    except NoValue:
        return None
    if same_top == same_bottom:
        return None
    stage, part = (DENOMINATOR, below) if same_top else (NUMERATOR, above)
    if _brackets(part) < 2:
        return None
    return Wrong(WRONG_PRODUCT.name, WRONG_PRODUCT.words, (stage,), (), form)


def _brackets(node: Node) -> int:
    """How many brackets are multiplied, a square for two."""
    bases = [(f.base, 2) if isinstance(f, Power) else (f, 1) for f in factors(node)]
    return sum(count for base, count in bases if isinstance(base, Sum))
