"""How would a teacher say how a line follows from what is known?"""

from __future__ import annotations

from itembank.algebra.exact import Fraction
from itembank.algebra.showing import typed
from itembank.topics.judging import Move
from itembank.topics.linear_equations.spelling import spell
from itembank.topics.parts import NUMBER
from itembank.topics.simultaneous_equations.errors_in_values import value_stage
from itembank.topics.simultaneous_equations.following import (
    ADDED,
    CIRCULAR,
    SAME,
    SOLVED,
    eliminated,
    way,
)
from itembank.topics.simultaneous_equations.lines import (
    Letters,
    Line,
    Row,
    System,
    equation_in,
    key,
    linear,
)
from itembank.topics.simultaneous_equations.stages import (
    ELIMINATED,
    PREPARED,
    SIMPLIFIED,
    SUBSTITUTED,
)
from itembank.topics.simultaneous_equations.writing import standard, typed_line

ADD, SUBTRACT, EQUATE = "add the equations", "subtract the equations", "equate the expressions"


def path(system: System, line: Line, letters: Letters) -> tuple[Move, ...]:
    """The steps to a line that follows naturally."""
    found = way(system, line, letters)
    if found is None:
        return ()
    if found.kind == CIRCULAR:
        return (Move("circular", "", "an equation put into itself: always true, and no help"),)
    lines = [system[place] for place in found.places]
    if found.kind == SOLVED:
        return _solving(system, lines[0], line, letters)
    if found.kind == SAME:
        return _rewriting(lines[0], line, found.factors[0], letters)
    if found.kind == ADDED:
        turned = found.factors[0] * found.factors[1] < 0
        return (Move("combine", "", f"{SUBTRACT if turned else ADD}: both unknowns stay"),)
    return _eliminating(system, lines[0], lines[1], found.factors, line, letters)


def _solving(system: System, known: Line, line: Line, letters: Letters) -> tuple[Move, ...]:
    stage = value_stage(system, line.place)
    moves = linear(letters[line.place]).path(equation_in(known), equation_in(line))
    return tuple(Move(move.name, stage, move.words) for move in moves)


def _rewriting(known: Line, line: Line, times: Fraction, letters: Letters) -> tuple[Move, ...]:
    moves = []
    if line.plain and not known.plain:
        moves.append(Move("simplify", SIMPLIFIED, "remove brackets and fractions"))
    elif line.subject >= 0 and known.subject != line.subject:
        words = f"make {letters[line.subject]} the subject"
        return (Move("make the subject", PREPARED, words),)
    if abs(times) != 1:
        moves.append(times_words(known.row, times, letters))
    return tuple(moves) or (Move("rearrange", "", "rearrange the equation"),)


def times_words(row: Row, times: Fraction, letters: Letters) -> Move:
    """``multiply 2x + y = 7 by 3``."""
    shown = typed(standard(row, letters))
    if abs(times) < 1:
        return Move("divide", PREPARED, f"divide {shown} by {spell(1 / times)}")
    return Move("multiply", PREPARED, f"multiply {shown} by {spell(times)}")


def _put_into(system: System, known: Line, line: Line) -> Line | None:
    """The equation that a value was put into: the one whose right side still stands."""
    if line.equation is None:
        return None
    numbers = [abs(part.worth) for side in line.equation for part in side if part.kind == NUMBER]
    found = []
    for into in system.kinds():
        result = eliminated(into.row, known.row, known.place)
        if result is not None and key(result[0]) == key(line.row) and abs(into.row[2]) in numbers:
            found.append(into)
    return found[0] if len(found) == 1 else None


def _eliminating(
    system: System,
    one: Line,
    other: Line,
    factors: tuple[Fraction, ...],
    line: Line,
    letters: Letters,
) -> tuple[Move, ...]:
    if not line.both and line.place < 0:
        return (Move("eliminate", ELIMINATED, "combine the equations: both unknowns go"),)
    gone = 1 - line.place
    for known in (other, one):
        if known.place == gone:
            into = _put_into(system, known, line)
            words = put_in_words(letters[gone], known, into, letters)
            return (Move("substitute the value", SUBSTITUTED, words),)
    for known, into in ((other, one), (one, other)):
        if known.subject == gone:
            if into.subject == gone:
                return (Move("equate", ELIMINATED, EQUATE),)
            words = f"put the expression for {letters[gone]} into the other equation"
            return (Move("substitute", ELIMINATED, words),)
    moves = [
        times_words(known.row, abs(times), letters)
        for known, times in zip((one, other), factors, strict=True)
        if abs(times) != 1
    ]
    same = one.row[gone] * factors[0] * other.row[gone] * factors[1] < 0
    words = ADD if same and factors[0] * factors[1] > 0 else SUBTRACT
    return (*moves, Move("eliminate", ELIMINATED, f"{words} to eliminate {letters[gone]}"))


def put_in_words(letter: str, known: Line, into: Line | None, letters: Letters) -> str:
    """``put x = 3 into 2x + y = 7``."""
    value = known.value
    said = "" if value is None else f" = {spell(value)}"
    where = "an equation" if into is None else typed_line(into, letters)
    return f"put {letter}{said} into {where}"
