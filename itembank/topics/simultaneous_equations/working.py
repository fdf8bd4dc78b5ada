"""How is a route written, line by line? The lines of a worked solution, put together."""

from __future__ import annotations

from dataclasses import dataclass, field

from itembank.algebra.exact import Fraction
from itembank.algebra.showing import typed
from itembank.algebra.written import Bracket, Negative, Node, Product, Relation
from itembank.topics.kinds import RouteLine
from itembank.topics.linear_equations.forms import answer_form, solved
from itembank.topics.linear_equations.spelling import spell, spell_term
from itembank.topics.simultaneous_equations.following import multiples
from itembank.topics.simultaneous_equations.lines import Letters, Line, Row
from itembank.topics.simultaneous_equations.stages import (
    CONCLUSION,
    ELIMINATED,
    FIRST,
    PREPARED,
    SECOND,
    SUBSTITUTED,
)
from itembank.topics.simultaneous_equations.writing import (
    Term,
    equation,
    expression,
    number,
    side,
    standard,
    summed,
    term,
    typed_line,
)

CONCLUSIONS = {"no solution": "no solution", "all values": "infinitely many solutions"}

ONE = Fraction(1)
Side = tuple[Fraction, Fraction]
"""A side in one letter: the letter's coefficient and the number."""


@dataclass
class Route:
    """The lines of one route as they are put together, and the values found."""

    letters: Letters
    stages: tuple[str, ...]
    lines: list[RouteLine] = field(default_factory=list)
    found: dict[int, Fraction] = field(default_factory=dict)

    def write(self, text: str, step: str, stage: str, required: bool = True) -> None:
        """One more line; a line that says what the last one says is left out."""
        if not self.lines or self.lines[-1].text != text:
            self.lines.append(RouteLine(text, step, stage, required))

    @property
    def value_stage(self) -> str:
        """The value that is being found; the elimination where there is none to find."""
        if SECOND not in self.stages:
            return ELIMINATED
        return SECOND if self.found or FIRST not in self.stages else FIRST

    @property
    def ready(self) -> str:
        """The stage that making the equations ready serves."""
        return PREPARED if PREPARED in self.stages else ELIMINATED

    def prepared(self, row: Row, times: Fraction) -> Row:
        """An equation multiplied through."""
        if abs(times) == 1:
            return row
        after = (row[0] * times, row[1] * times, row[2] * times)
        step = f"multiply {typed(standard(row, self.letters))} by {spell(times)}"
        self.write(typed(standard(after, self.letters)), step, self.ready)
        return after

    def eliminate(self, one: Row, other: Row, gone: int) -> None:
        """Multiply where needed, add or subtract, solve; or say what follows where both go."""
        p, q = multiples(one[gone], other[gone])
        first, second = self.prepared(one, p), self.prepared(other, abs(q))
        sign = -1 if q > 0 else 1
        place = 1 - gone
        size = first[place] + sign * second[place]
        right = first[2] + sign * second[2]
        if sign > 0:
            words = "add the equations"
        elif size < 0 or (size == 0 and right < 0):
            size, right = -size, -right
            words = "subtract the first equation from the second"
        else:
            words = "subtract the second equation from the first"
        if not size:
            self.write(f"0 = {right}", f"{words}: both unknowns go", ELIMINATED)
            self.conclude("no solution" if right else "all values")
            return
        letter = self.letters[place]
        text = typed(equation(((size, letter),), ((right, ""),)))
        self.write(text, f"{words} to eliminate {self.letters[gone]}", ELIMINATED)
        self.solve(place, (size, Fraction(0)), (Fraction(0), right))

    def conclude(self, words: str) -> None:
        """What follows where there is not just one solution."""
        always = "never" if words == "no solution" else "always"
        self.write(CONCLUSIONS[words], f"{self.lines[-1].text} is {always} true", CONCLUSION)

    def substitute(self, subject: Line, other: Row) -> None:
        """Put the expression for a letter into the other equation, and solve."""
        gone = subject.subject
        terms = expression(subject, self.letters)
        k, place = other[gone], 1 - gone
        nodes: list[tuple[Fraction, Node]] = []
        for n in (0, 1):
            if n == gone:
                nodes.append((k, _multiple(abs(k), terms)))
            else:
                nodes.append((other[n], term(abs(other[n]), self.letters[n])))
        right = side(((other[2], ""),))
        letter = self.letters[gone]
        self.write(
            typed(Relation((summed(nodes), right), ("=",))),
            f"put {typed(side(terms))} for {letter} into {typed(standard(other, self.letters))}",
            ELIMINATED,
        )
        spread: list[Term] = []
        for n in (0, 1):
            own = [(k * size, name) for size, name in terms]
            spread.extend(own if n == gone else [(other[n], self.letters[n])])
        text = typed(equation(spread, ((other[2], ""),)))
        if text != self.lines[-1].text:
            self.write(text, "expand the bracket", self.value_stage, required=False)
        size = sum((v for v, name in spread if name), Fraction(0))
        constant = sum((v for v, name in spread if not name), Fraction(0))
        self.solve(place, (size, constant), (Fraction(0), other[2]), joins=True)

    def substitute_in_turn(self, subject: Line, other: Line) -> None:
        """``x = 2y + 1`` put into ``y = 3x - 2``: ``y = 3(2y + 1) - 2``."""
        gone, place = subject.subject, other.subject
        letter, inner = self.letters[place], expression(subject, self.letters)
        own = expression(other, self.letters)
        nodes = [(k, _multiple(abs(k), inner) if name else term(abs(k), "")) for k, name in own]
        into = typed_line(other, self.letters)
        words = f"put {typed(side(inner))} for {self.letters[gone]} into {into}"
        whole = Relation((term(ONE, letter), summed(nodes)), ("=",))
        self.write(typed(whole), words, ELIMINATED)
        spread = [
            (k * size, part) for k, name in own for size, part in (inner if name else ((ONE, ""),))
        ]
        text = typed(equation(((ONE, letter),), spread))
        if text != self.lines[-1].text:
            self.write(text, "expand the bracket", self.value_stage, required=False)
        numbers = sum(not name for _, name in spread)
        self.solve(place, (ONE, Fraction(0)), _sums(tuple(spread)), joins=numbers > 1)

    def equate(self, one: Line, other: Line) -> None:
        """Both expressions for one letter equal."""
        terms = expression(one, self.letters), expression(other, self.letters)
        text = typed(equation(*terms))
        letter = self.letters[one.subject]
        self.write(text, f"equate the two expressions for {letter}", ELIMINATED)
        left, right = (_sums(found) for found in terms)
        self.solve(1 - one.subject, left, right)

    def solve(self, place: int, left: Side, right: Side, joins: bool = False) -> None:
        """An equation in one letter worked down to its value; ``joins`` where like terms stood."""
        letter, stage = self.letters[place], self.value_stage
        (a, b), (c, d) = left, right
        shown = self._shown(letter, (a, b), (c, d))
        if a and c:
            a, b, c, d = (a - c, b, Fraction(0), d) if a >= c else (Fraction(0), b, c - a, d)
            less = min(left[0], right[0])
            if not a and not c:
                self._lost(b, d)
                return
            shown = self._move(spell_term(abs(less), letter), less, letter, (a, b), (c, d))
        elif joins and (a or c):
            text = self._shown(letter, (a, b), (c, d))
            self.write(text, "collect like terms", stage)
        if not a and not c:
            self._lost(b, d)
            return
        if c:
            a, b, c, d = c, d, a, b
        if b:
            d, moved, b = d - b, b, Fraction(0)
            shown = self._move(spell(abs(moved)), moved, letter, (a, b), (c, d))
        value = d / a
        if a != 1 or not shown.startswith(f"{letter} ="):
            words = f"divide both sides by {spell(a)}" if a != 1 else "exchange the sides"
            self.write(solved(letter, answer_form(value)), words, stage)
        self.found[place] = value

    def _lost(self, left: Fraction, right: Fraction) -> None:
        self.write(f"{spell(left)} = {spell(right)}", "the unknown goes", ELIMINATED)
        self.conclude("all values" if left == right else "no solution")

    def _shown(self, letter: str, left: Side, right: Side) -> str:
        sides = [((size, letter), (constant, "")) for size, constant in (left, right)]
        return typed(equation(*sides))

    def _move(self, what: str, size: Fraction, letter: str, left: Side, right: Side) -> str:
        text = self._shown(letter, left, right)
        self.write(text, _moving(what, size), self.value_stage)
        return text

    def find_other(self, line: Line) -> None:
        """Put the value found into an equation, and solve for the other letter."""
        (known,) = self.found
        place, value = 1 - known, self.found[known]
        letter, row = self.letters[place], line.row
        into = typed_line(line, self.letters)
        step = f"put {self.letters[known]} = {spell(value)} into {into}"
        if line.subject == place:
            terms = expression(line, self.letters)
            written = summed(self._with_value(terms, known, value))
            right = typed(written)
            self.write(f"{letter} = {right}", step, SUBSTITUTED)
            worked = [(size * value if name else size, "") for size, name in terms]
            if all(size for size, _ in worked) and len(worked) > 1:
                self.write(typed(equation(((ONE, letter),), worked)),
                           "work out the product", SECOND, required=False)  # fmt: skip
            total = sum((size for size, _ in worked), Fraction(0))
            self.write(solved(letter, answer_form(total)), "work out the value", SECOND)
            self.found[place] = total
            return
        if line.subject == known:
            terms = expression(line, self.letters)
            text = typed(equation(((value, ""),), terms))
            self.write(text, step, SUBSTITUTED)
            self.solve(place, (Fraction(0), value), _sums(terms))
            return
        terms = ((row[0], self.letters[0]), (row[1], self.letters[1]))
        text = typed(Relation((summed(self._with_value(terms, known, value)),
                               side(((row[2], ""),))), ("=",)))  # fmt: skip
        self.write(text, step, SUBSTITUTED)
        constant = row[known] * value
        if abs(row[known]) != 1 or not value:
            own = (row[place], letter)
            worked_out = [(constant, "") if n == known else own for n in (0, 1)]
            text = typed(equation(worked_out, ((row[2], ""),)))
            self.write(text, "work out the product", SECOND, required=False)
        rest = row[2] - constant
        moved = _moving(spell(abs(constant)), constant)
        if row[place] != 1:
            if constant:
                text = typed(equation(((row[place], letter),), ((rest, ""),)))
                self.write(text, moved, SECOND)
            moved = f"divide both sides by {spell(row[place])}"
        result = rest / row[place]
        self.write(solved(letter, answer_form(result)), moved, SECOND)
        self.found[place] = result

    def _with_value(
        self, terms: tuple[Term, ...], known: int, value: Fraction
    ) -> list[tuple[Fraction, Node]]:
        out: list[tuple[Fraction, Node]] = []
        for size, name in terms:
            if not size:
                continue
            if name != self.letters[known]:
                out.append((size, term(abs(size), name)))
            elif abs(size) != 1:
                product = Product((term(abs(size), ""), number(value)), ("×",))
                out.append((size, product))
            elif not out and size > 0:
                node = term(abs(value), "")
                out.append((size, Negative(node) if value < 0 else node))
            else:
                out.append((size, number(value) if value < 0 else term(value, "")))
        return out

    def state(self) -> None:
        """Both values together."""
        if len(self.found) == 2:
            values = (solved(self.letters[n], answer_form(self.found[n])) for n in (0, 1))
            self.write(", ".join(values), "state both values", SECOND, required=False)


def _multiple(size: Fraction, terms: tuple[Term, ...]) -> Node:
    """``3(2y + 1)``; no bracket where one term with a plus is taken once."""
    if size == 1 and len(terms) == 1 and terms[0][0] > 0:
        return side(terms)
    inner = Bracket(side(terms))
    return inner if size == 1 else Product((term(size, ""), inner), ("",))


def _moving(what: str, size: Fraction) -> str:
    """How a term of this size goes from one side to the other."""
    return f"add {what} to both sides" if size < 0 else f"subtract {what} from both sides"


def _sums(terms: tuple[Term, ...]) -> Side:
    return (
        sum((size for size, name in terms if name), Fraction(0)),
        sum((size for size, name in terms if not name), Fraction(0)),
    )
