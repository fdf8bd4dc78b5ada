"""Which right lines can follow a line? Steps of a person, drawn and written without our solver.

A second opinion on what follows: plain data, exact fractions, its own words for a line; nothing
here asks the engine.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from fractions import Fraction
from math import gcd, lcm, prod
from random import Random


@dataclass(frozen=True)
class Term:
    """``size`` times x, times 1, or times a bracket or the top of a fraction over ``below``."""

    size: Fraction
    kind: str  # "x", "1", "()" or "/"
    inner: tuple[Term, ...] = ()
    below: int = 1


Side = tuple[Term, ...]
Equation = tuple[Side, Side]
Step = Callable[[], Equation]


def problem(random: Random) -> Equation:
    """An equation of one of ten shapes."""

    def number(least: int = 1, most: int = 12) -> Term:
        return Term(Fraction(random.choice((1, -1)) * random.randint(least, most)), "1")

    def x(size: Fraction | int) -> Term:
        return Term(Fraction(size), "x")

    def bracket(size: int, *inner: Term) -> Term:
        return Term(Fraction(size), "()", inner)

    def fraction(below: int, *inner: Term) -> Term:
        return Term(Fraction(1), "/", inner, below)

    def some(least: int = 2, most: int = 9) -> int:
        return random.randint(least, most)

    shapes: tuple[Callable[[], Equation], ...] = (
        lambda: ((x(some()), number()), (number(1, 40),)),
        lambda: ((x(some()), number()), (x(random.choice((1, -1)) * some()), number())),
        lambda: ((bracket(some(), x(some(1, 4)), number()),), (number(1, 40),)),
        lambda: ((bracket(some(), x(1), number()),), (x(some()), number())),
        lambda: (
            (bracket(some(), x(1), number()), bracket(-some(2, 5), x(some(1, 3)), number())),
            (number(1, 40),),
        ),
        lambda: ((fraction(some(2, 7), x(some(1, 5)), number()),), (number(1, 20),)),
        lambda: (
            (fraction(some(2, 6), x(1), number()),),
            (fraction(some(2, 6), x(1), number()),),
        ),
        lambda: (
            (x(Fraction(1, some(2, 5))), number()),
            (x(Fraction(1, some(6, 9))), number()),
        ),
        lambda: ((Term(Fraction(some(5, 20)), "1"), x(-some())), (number(1, 40),)),
        lambda: (
            (bracket(some(), x(some(1, 3)), number()), number()),
            (bracket(some(), x(1), number()),),
        ),
    )
    return random.choice(shapes)()


def typed(equation: Equation) -> str:
    """The equation as a pupil types it."""
    return " = ".join(map(_side, equation))


def steps(equation: Equation, random: Random) -> list[Step]:
    """The steps that a person could take from a line; each gives a line with the same solutions."""
    found = [*_clearing(equation), *_opening(equation, random), *_joining(equation)]
    found += _moving(equation)
    if all(term.kind in "x1" for side in equation for term in side):
        found += _on_both_sides(equation)
    return found


def ends(equation: Equation) -> bool:
    """Whether nothing is left to do: the unknown alone, or gone."""
    left, right = equation
    lettered = [term for term in (*left, *right) if term.kind != "1"]
    return not lettered or (len(left) == len(right) == len(lettered) == 1 == lettered[0].size)


def _clearing(equation: Equation) -> Iterator[Step]:
    below = [term.below * term.size.denominator for side in equation for term in side]
    below = [number for number in below if number > 1]
    for multiple in dict.fromkeys((lcm(*below), prod(below)) if below else ()):
        if multiple <= 400:
            yield lambda by=Fraction(multiple): _each(equation, lambda side: _times(side, by))


def _opening(equation: Equation, random: Random) -> Iterator[Step]:
    """One bracket multiplied out, all of them, or divided out where it stands alone."""
    found = [term for side in equation for term in side if term.kind == "()"]
    if not found:
        return
    one = random.choice(found)
    yield lambda: _each(equation, lambda side: _opened(side, found))
    yield lambda: _each(equation, lambda side: _opened(side, [one]))
    if all(len(side) == 1 for side in equation) and one.size not in (0, 1):
        yield lambda: _each(equation, lambda side: _bare(_times(side, 1 / one.size)))


def _bare(side: Side) -> Side:
    return side[0].inner if side[0].kind == "()" and side[0].size == 1 else side


def _joining(equation: Equation) -> Iterator[Step]:
    for place, side in enumerate(equation):
        kinds = [term.kind for term in side]
        if kinds.count("x") > 1 or kinds.count("1") > 1:
            yield lambda at=place: _on_one(equation, at, _joined)
            yield lambda: _each(equation, _joined)


def _moving(equation: Equation) -> Iterator[Step]:
    for place, side in enumerate(equation):
        other = equation[1 - place]
        for at, term in enumerate(side):
            leaves = len(side) > 1 or (term.kind == "x" and any(t.kind != "1" for t in other))
            if term.kind in "x1" and term.size and leaves:
                yield lambda p=place, a=at: _moved(equation, p, a)
                yield lambda p=place, a=at: _each(_moved(equation, p, a), _joined)


def _on_both_sides(equation: Equation) -> Iterator[Step]:
    """Exchanging, turning the signs, dividing by a common factor or by the last coefficient."""
    yield lambda: (equation[1], equation[0])
    yield lambda: _each(equation, lambda side: _times(side, Fraction(-1)))
    sizes = [term.size for side in equation for term in side if term.size]
    common = gcd(*(size.numerator for size in sizes))
    if common > 1 and all(size.denominator == 1 for size in sizes):
        yield lambda: _each(equation, lambda side: _times(side, Fraction(1, common)))
    if sorted(term.kind for side in equation for term in side) == ["1", "x"]:
        (last,) = (term.size for side in equation for term in side if term.kind == "x")
        if last != 1 and all(len(side) == 1 for side in equation):
            yield lambda: _each(equation, lambda side: _times(side, 1 / last))


def _each(equation: Equation, change: Callable[[Side], Side]) -> Equation:
    return change(equation[0]), change(equation[1])


def _on_one(equation: Equation, place: int, change: Callable[[Side], Side]) -> Equation:
    left, right = equation
    return (change(left), right) if place == 0 else (left, change(right))


def _moved(equation: Equation, place: int, at: int) -> Equation:
    here, there = equation[place], equation[1 - place]
    turned = _times((here[at],), Fraction(-1))
    rest = here[:at] + here[at + 1 :]
    other = (*(term for term in there if term.size), *turned)
    return (rest, other) if place == 0 else (other, rest)


def _times(side: Side, by: Fraction) -> Side:
    out: list[Term] = []
    for term in side:
        if term.kind != "/":
            out.append(Term(term.size * by, term.kind, term.inner))
            continue
        size = by / term.below
        if size.denominator > 1:
            top = _times(term.inner, Fraction(size.numerator))
            out.append(Term(Fraction(1), "/", top, size.denominator))
        elif len(term.inner) > 1:
            out.append(Term(size, "()", term.inner))
        else:
            out += _times(term.inner, size)
    return tuple(out)


def _opened(side: Side, which: list[Term]) -> Side:
    out: list[Term] = []
    for term in side:
        out += _times(term.inner, term.size) if term in which else (term,)
    return tuple(out)


def _joined(side: Side) -> Side:
    kept = [term for term in side if term.kind not in "x1"]
    for kind in dict.fromkeys(term.kind for term in side if term.kind in "x1"):
        size = sum((term.size for term in side if term.kind == kind), Fraction(0))
        kept += [Term(size, kind)] if size else []
    return tuple(kept)


def _side(side: Side) -> str:
    text = ""
    for term in side:
        body = _term(term)
        minus = body.startswith("-")
        body = body.removeprefix("-")
        text += f" {'-' if minus else '+'} {body}" if text else f"{'-' if minus else ''}{body}"
    return text or "0"


def _term(term: Term) -> str:
    if term.kind == "/":
        top = _side(term.inner)
        return f"({top})/{term.below}" if len(term.inner) > 1 else f"{top}/{term.below}"
    sign, size = ("-" if term.size < 0 else ""), abs(term.size)
    if term.kind == "1":
        return f"{sign}{size}"
    body = "x" if term.kind == "x" else f"({_side(term.inner)})"
    if term.kind == "x" and size.denominator > 1:
        return f"{sign}{'' if size.numerator == 1 else size.numerator}x/{size.denominator}"
    return f"{sign}{'' if size == 1 else size}{body}"
