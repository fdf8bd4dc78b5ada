"""Which lines does each method write? Plan -> the lines between the problem and the answer."""

from __future__ import annotations

from collections.abc import Iterator
from typing import NamedTuple

from itembank.algebra.exact import Fraction
from itembank.algebra.showing import typed
from itembank.algebra.values import Monomial, Polynomial, joined_monomial
from itembank.topics.factorising.answers import Answers, plain_led
from itembank.topics.factorising.bracketed import same_bracket
from itembank.topics.factorising.first_brackets import Quadratic
from itembank.topics.factorising.pair_and_product import pair_and_product
from itembank.topics.factorising.plans import Plan, smallest_prime
from itembank.topics.factorising.shapes import Shape, Term, value_of, written
from itembank.topics.factorising.stages import (
    BRACKET,
    COMMON,
    FULL,
    GROUPED,
    PAIR,
    objection,
)

ONE = Fraction(1)
ORDERS = ((0, 1, 2, 3), (0, 2, 1, 3), (0, 3, 1, 2))


class Line(NamedTuple):
    """A line of a method; ``last`` are the words for the answer where that comes next."""

    text: str
    words: str
    stage: str
    required: bool = True
    last: str = "factorise fully"


def line_of(
    shape: Shape, words: str, stage: str, required: bool = True, last: str = "factorise fully"
) -> Line:
    """A line that writes a shape."""
    return Line(typed(written(shape)), words, stage, required, last)


def expanded(value: Polynomial) -> Line:
    """The problem multiplied out and collected."""
    return line_of(plain_led(value), "multiply out the brackets and collect like terms", "")


def taken_out(shape: Shape, plan: Plan) -> tuple[Line, ...]:
    """The common factor taken out, or the minus in front; nothing where there is neither."""
    if plan.number == 1 and not plan.letters:
        return ()
    term = Term(plan.number, plan.letters)
    product = term._replace(brackets=((_rest(shape, plan), 1),))
    bare = abs(plan.number) == 1 and not plan.letters
    words = "take out the minus" if bare else f"take out the common factor {_shown(term)}"
    return (line_of((product,), words, "" if bare else COMMON, not bare),)


def _shown(term: Term) -> str:
    return typed(written((term,)))


def _rest(shape: Shape, plan: Plan) -> Shape:
    """What is left in the bracket, its terms in the order of the sum."""
    rest = tuple(
        Term(term.number / plan.number, less(term.letters, plan.letters)) for term in shape
    )
    return rest if rest[0].number > 0 else plain_led(plan.rest)


def less(letters: Monomial, powers: Monomial) -> Monomial:
    """The letters without those taken out."""
    less = dict(powers)
    left = ((name, exponent - less.get(name, 0)) for name, exponent in letters)
    return tuple((name, exponent) for name, exponent in left if exponent)


def shown_common(shape: Shape, plan: Plan, found: Answers) -> tuple[Line, ...]:
    """Each term as the common factor times what is left, before the bracket is written."""
    term = Term(plan.number, plan.letters)
    last = f"take out the highest common factor {_shown(term)}"
    factor = _shown(Term(abs(plan.number), plan.letters))
    parts = []
    for one in shape:
        left = Term(abs(one.number / plan.number), less(one.letters, plan.letters))
        parts.append(("-" if one.number < 0 else "+", f"{factor} × {_shown(left)}"))
    text = "".join(f" {sign} {part}" for sign, part in parts).removeprefix(" + ")
    text = text.replace(" - ", "-", 1) if text.startswith(" - ") else text
    if plan.number.denominator != 1:
        return (Line(found.text, last, FULL),)
    return (Line(text, f"write each term with the common factor {factor}", "", False, last),)


def by_one_factor_at_a_time(
    shape: Shape, plan: Plan, found: Answers
) -> Iterator[tuple[str, tuple[Line, ...]]]:
    """A part of the common factor first: a prime number, or the letters."""
    if plan.parts < 2 or plan.number.denominator != 1:
        return
    size, letters = plan.number, plan.letters
    firsts: list[tuple[str, Fraction, Monomial]] = []
    if letters and abs(size) > 1:
        firsts = [("the number first", size, ()), ("the letters first", ONE, letters)]
    elif abs(size) > 1:
        firsts = [("one factor at a time", _smallest_prime(size), ())]
    else:
        firsts = [("one factor at a time", ONE, letters[:1] if len(letters) > 1 else _one(letters))]
    for name, number, powers in firsts:
        inner = tuple(Term(t.number / number, less(t.letters, powers)) for t in shape)
        words = f"take out the common factor {_shown(Term(number, powers))}"
        last = "take out what is still common"
        yield name, (line_of((Term(number, powers, ((inner, 1),)),), words, COMMON, True, last),)


def _smallest_prime(size: Fraction) -> Fraction:
    prime = smallest_prime(abs(int(size)))
    return Fraction(prime if size > 0 else -prime)


def _one(letters: Monomial) -> Monomial:
    return ((letters[0][0], 1),)


def by_pair(p: int, q: int) -> tuple[Line, ...]:
    """The two numbers on their own: ``2 × 3 = 6, 2 + 3 = 5``."""
    words = f"find two numbers with product {p * q} and sum {p + q}"
    text = f"{p} × {_in_bracket(q)} = {p * q}, {p} {'-' if q < 0 else '+'} {abs(q)} = {p + q}"
    return (Line(text, words, PAIR, True, "write the two brackets"),)


def _in_bracket(number: int) -> str:
    return f"({number})" if number < 0 else str(number)


def by_split(
    plan: Plan, whole: Quadratic, p: int, q: int, *, common_last: bool = False
) -> tuple[Line, ...]:
    """The middle term split, then grouped in pairs."""
    middle = joined_monomial(whole.u, whole.v)
    four = (
        Term(Fraction(whole.a), joined_monomial(whole.u, whole.u)),
        Term(Fraction(p), middle),
        Term(Fraction(q), middle),
        Term(Fraction(whole.c), joined_monomial(whole.v, whole.v)),
    )
    words = f"split the middle term: {p} and {q} have product {p * q} and sum {p + q}"
    lines = [line_of(around(plan, four), words, PAIR)]
    pulled = grouped_in(four, ORDERS[0])
    assert pulled is not None
    lines.append(line_of(around(plan, pulled), "take out the common factor of each pair", FULL))
    if common_last:
        product = common_bracket(pulled)
        lines.append(line_of((product,), "take out the common bracket", COMMON))
    return (*lines[:-1], lines[-1]._replace(last=_last(common_last)))


def _last(common_last: bool) -> str:
    return "take out the common factor" if common_last else "take out the common bracket"


def around(plan: Plan, inner: Shape) -> Shape:
    """What is left, with the common factor before it."""
    if plan.number == 1 and not plan.letters:
        return inner
    if len(inner) == 1:
        (only,) = inner
        return (
            only._replace(
                number=plan.number * only.number,
                letters=joined_monomial(plan.letters, only.letters),
            ),
        )
    return (Term(plan.number, plan.letters, ((inner, 1),)),)


def by_grouping(shape: Shape, found: Answers, plan: Plan | None = None) -> list[tuple[Line, ...]]:
    """Each way to group four terms in pairs that share a bracket."""
    out = []
    for order in ORDERS if len(shape) == 4 else ():
        pulled = grouped_in(shape, order)
        if pulled is None or len(value_of(pulled[0].brackets[0][0])) < 2:
            continue
        whole = pulled if plan is None else around(plan, pulled)
        line = line_of(whole, "take out the common factor of each pair", GROUPED)
        out.append((line, *_then_bracket(pulled, found, plan)))
    return out


def by_pair_and_product(shape: Shape, plan: Plan) -> tuple[Line, ...]:
    """``a^2 - b^2 + 2a + 2b`` as ``(a - b)(a + b) + 2(a + b)``."""
    grouped = pair_and_product(shape)
    assert grouped is not None
    words = "factorise two or three of the terms, and take out the common factor of the others"
    last = "take out the common bracket"
    return (line_of(around(plan, grouped), words, GROUPED, True, last),)


def from_grouped(shape: Shape, found: Answers) -> tuple[Line, ...]:
    """The lines after ``a(x + y) + b(x + y)``; none where the terms share no bracket."""
    if len(shape) != 2 or any(term.multiplicity != 1 for term in shape):
        return ()
    if not same_bracket(shape[0].brackets[0][0], shape[1].brackets[0][0]):
        return ()
    lines = _then_bracket(shape, found, None)
    if lines and lines[0].text:
        return lines
    return (Line("", "", FULL, False, "take out the common bracket"),)


def _then_bracket(pulled: Shape, found: Answers, plan: Plan | None) -> tuple[Line, ...]:
    """The common bracket taken out, where that is not the answer yet."""
    product = common_bracket(pulled)
    whole = (product,) if plan is None else around(plan, (product,))
    last = "take out the common bracket"
    if objection(whole, True) == "":
        return (Line("", "", FULL, False, last),)
    return (line_of(whole, last, BRACKET, True, "factorise what is left"),)


def grouped_in(shape: Shape, order: tuple[int, int, int, int]) -> tuple[Term, Term] | None:
    """Four terms in two pairs, each as its common factor times the same bracket."""
    from itembank.topics.factorising.common_errors import pulled

    one, other = pulled(shape, order[:2]), pulled(shape, order[2:])
    first, second = value_of(one.brackets[0][0]), value_of(other.brackets[0][0])
    if first == second:
        return one, other
    if same_bracket(one.brackets[0][0], other.brackets[0][0]):
        return one, other._replace(number=-other.number, brackets=one.brackets)
    return None


def common_bracket(grouped: Shape) -> Term:
    """``a(x + y) + b(x + y)`` as ``(a + b)(x + y)``."""
    one, other = grouped
    inner, mate = one.brackets[0][0], other.brackets[0][0]
    sign = 1 if value_of(inner) == value_of(mate) else -1
    outside = (
        one._replace(brackets=(), numbers=1),
        other._replace(number=sign * other.number, brackets=(), numbers=1),
    )
    if outside[0].letters == outside[1].letters:
        joined = outside[0]._replace(number=outside[0].number + outside[1].number)
        return joined._replace(brackets=((inner, 1),))
    return Term(ONE, (), ((outside, 1), (inner, 1)))
