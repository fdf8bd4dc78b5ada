"""What would a teacher do next? The sensible moves from a line, the preferred one first."""

from __future__ import annotations

from dataclasses import dataclass
from math import gcd

from itembank.algebra.exact import Fraction
from itembank.algebra.inside import symbols, walk
from itembank.algebra.written import Bracket, Decimal, Negative, Node, Quotient, Relation, Sum
from itembank.topics.linear_equations.labels import (
    ABOVE_THE_BAR,
    CLEAR,
    CLEAR_DECIMALS,
    COMBINE_FRACTIONS,
    COMMON_FACTOR,
    CONSTANT_BESIDE,
    CONSTANTS_FIRST,
    DIVIDE_OUT,
    EXPAND_BRACKETS,
    LEFT,
    LEFT_LATER,
    LIKE_TERMS,
    MADE_POSITIVE,
    OWN_DENOMINATOR,
    RECIPROCAL,
    RIGHT,
    RIGHT_LATER,
)
from itembank.topics.linear_equations.rewriting import (
    common_denominator,
    has_bracket,
    has_like,
    is_fraction,
)
from itembank.topics.linear_equations.steps import (
    ADD,
    COMBINE,
    DIVIDE,
    EXPAND,
    JOIN,
    MULTIPLY,
    SUBTRACT,
    TIDY,
    Move,
)
from itembank.topics.linear_equations.terms import (
    Piece,
    Pieces,
    Term,
    number,
    pieces,
    term,
)
from itembank.topics.linear_equations.tidying import tidied


@dataclass(frozen=True, slots=True)
class Choice:
    """Moves that belong together, with the words that tell a route apart by them."""

    label: str
    moves: tuple[Move, ...]


@dataclass(frozen=True, slots=True)
class Half:
    """One side of a line, its pieces read as terms."""

    parts: Pieces
    terms: tuple[Term, ...]

    @property
    def letters(self) -> tuple[Piece, ...]:
        """The pieces that hold the unknown."""
        return tuple(p for p, t in zip(self.parts, self.terms, strict=True) if t.body is not None)

    @property
    def constants(self) -> tuple[Piece, ...]:
        """The pieces that hold no unknown; a bare 0 is none."""
        return tuple(
            p for p, t in zip(self.parts, self.terms, strict=True) if t.body is None and t.top
        )


Halves = tuple[Half, Half]


def halves(relation: Relation) -> Halves:
    """Both sides of a line."""
    left, right = (pieces(one) for one in relation.sides)
    return Half(left, tuple(map(term, left))), Half(right, tuple(map(term, right)))


def choices(relation: Relation) -> list[Choice]:
    """The sensible moves from a line that is not solved yet, the preferred one first.

    An empty list where nothing is left to do: ``x = c``, ``c = x``, or two numbers.
    """
    if tidied(relation) != relation:
        return [Choice("", (Move(TIDY),))]
    return _distinct(_by_shape(halves(relation)))


def _distinct(options: list[Choice]) -> list[Choice]:
    """Without a later choice of the same moves."""
    return list({choice.moves: choice for choice in reversed(options)}.values())[::-1]


def _by_shape(both: Halves) -> list[Choice]:
    terms = [one for half in both for one in half.terms]
    fractions = [one for one in terms if is_fraction(one)]
    if len(fractions) > 1 or any(isinstance(one.body, Sum) for one in fractions):
        return _on_fractions(both, fractions)
    if any(isinstance(one.body, Sum) for one in terms):
        return _on_brackets(both, bool(fractions))
    if any(has_like(half.parts) for half in both):
        join = Choice(LIKE_TERMS, (Move(JOIN),))
        return [*_clearing(both), join] if fractions else [join]
    if all(half.letters for half in both):
        collecting = _collecting(both)
        return [*_clearing(both), *collecting] if fractions else [*collecting, *_clearing(both)]
    if any(half.letters and half.constants for half in both):
        return _on_constants(both)
    return _on_last_term(both)


# Fractions


def _on_fractions(both: Halves, fractions: list[Term]) -> list[Choice]:
    options = _constants_first(both) + _clearing(both)
    if any(_combinable(half) for half in both):
        options.append(Choice(COMBINE_FRACTIONS, (Move(COMBINE), Move(EXPAND), Move(JOIN))))
    alone = _lone_letter(both)
    if alone is not None and len(both[0].parts) == len(both[1].parts) == 1:
        below = Move(MULTIPLY, number(fractions[0].over, True))
        options.append(Choice(OWN_DENOMINATOR, (below,)))
    bodies = [one.body for one in fractions if isinstance(one.body, Sum)]
    if any(has_bracket(pieces(b)) or has_like(pieces(b), deep=True) for b in bodies):
        options.append(Choice(ABOVE_THE_BAR, (Move(EXPAND), Move(JOIN))))
    if any(not one.barred and isinstance(one.body, Sum) for one in fractions):
        options.append(Choice(EXPAND_BRACKETS, (Move(EXPAND),)))
    return options


def _combinable(half: Half) -> bool:
    overs = [one.over for one in half.terms if is_fraction(one)]
    return len(overs) > 1 and all(over.denominator == 1 for over in overs)


def _clearing(both: Halves) -> list[Choice]:
    """Multiply through by the least common multiple; by a power of ten for decimals."""
    terms = [one for half in both for one in half.terms]
    below = common_denominator(terms)
    if below != 1:
        return [Choice(CLEAR, (Move(MULTIPLY, number(below, True)),))]
    places = [
        len(node.text.partition(".")[2].rstrip("0"))
        for half in both
        for _, part in half.parts
        for node in walk(part)
        if isinstance(node, Decimal)
    ]
    if not any(places):
        return []
    power = number(Fraction(10 ** max(places)))
    return [Choice(CLEAR_DECIMALS, (Move(MULTIPLY, power),))]


def _lone_letter(both: Halves) -> Half | None:
    """The side that holds the only piece with the unknown, where there is one only."""
    holding = [half for half in both if half.letters]
    if len(holding) == 1 and len(holding[0].letters) == 1:
        return holding[0]
    return None


def _constants_first(both: Halves) -> list[Choice]:
    """Take the constant away from beside a lone fraction or bracket."""
    half = _lone_letter(both)
    if half is None or len(half.constants) != 1:
        return []
    return [Choice(CONSTANT_BESIDE, (taking_away(half.constants[0]),))]


def taking_away(piece: Piece) -> Move:
    """Subtract a term from both sides; add it where it is negative."""
    sign, node = piece
    if term(("+", node)).top < 0:
        raise ValueError("a tidy piece carries its sign in front")
    return Move(SUBTRACT if sign == "+" else ADD, node)


# Brackets


def _on_brackets(both: Halves, fractions: bool) -> list[Choice]:
    bodies = [one.body for half in both for one in half.terms if isinstance(one.body, Sum)]
    if any(has_like(pieces(body), deep=True) for body in bodies):
        expand = Choice(EXPAND_BRACKETS, (Move(JOIN),))
    else:
        expand = Choice(EXPAND_BRACKETS, (Move(EXPAND),))
    nice, other = _dividing_out(both)
    clear = _clearing(both) if fractions else []
    return [*nice, expand, *other, *_constants_first(both), *clear]


def _dividing_out(both: Halves) -> tuple[list[Choice], list[Choice]]:
    """Divide both sides by a bracket's factor: where it divides nicely, and where it does not."""
    if any(len(half.parts) != 1 for half in both):
        return [], []
    left, right = both[0].terms[0], both[1].terms[0]
    if left.body is not None and right.body is not None:
        return [], _common_factor(left, right)
    bracket, constant = (left, right) if right.body is None else (right, left)
    if bracket.size == 1:
        return [], []
    choice = [Choice(DIVIDE_OUT, (dividing(bracket.size),))]
    nice = (constant.size / bracket.size).denominator == 1
    return (choice, []) if nice else ([], choice)


def _common_factor(left: Term, right: Term) -> list[Choice]:
    if left.size.denominator != 1 or right.size.denominator != 1:
        return []
    common = gcd(int(left.size), int(right.size))
    if common == 1:
        return []
    return [Choice(COMMON_FACTOR, (dividing(Fraction(common)),))]


def dividing(size: Fraction) -> Move:
    """Divide both sides by a number other than 1; by -1 a teacher multiplies."""
    if size == -1:
        return Move(MULTIPLY, signed(size))
    return Move(DIVIDE, signed(size, decimals=True))


def signed(size: Fraction, *, decimals: bool = False) -> Node:
    """A number as an operand: a negative one, or a fraction, in a bracket."""
    node = number(abs(size), decimals)
    if size < 0:
        return Bracket(Negative(node))
    return Bracket(node) if isinstance(node, Quotient) else node


# The unknown on both sides


def _collecting(both: Halves) -> list[Choice]:
    """Unknowns to one side, or constants to the other one first; a positive coefficient first."""
    left, right = both
    a, b = left.terms[_letter(left)].size, right.terms[_letter(right)].size
    to_left = Choice(LEFT, (taking_away(right.letters[0]),))
    to_right = Choice(RIGHT, (taking_away(left.letters[0]),))
    if a == b or not (left.constants or right.constants):
        return [to_left if a >= b else to_right]
    directions = [
        (to_left, LEFT_LATER, left, right, a > b),
        (to_right, RIGHT_LATER, right, left, b > a),
    ]
    directions.sort(key=lambda direction: not direction[-1])
    unknowns, constants = [], []
    for choice, later, here, other, positive in directions:
        # from a side without a constant only 0 is left: worth it for a positive coefficient
        if positive or other.constants:
            unknowns.append(choice)
            if here.constants:
                constants.append(Choice(later, (taking_away(here.constants[0]),)))
    return unknowns + constants


def _letter(half: Half) -> int:
    return next(i for i, one in enumerate(half.terms) if one.body is not None)


# The unknown on one side


def _on_constants(both: Halves) -> list[Choice]:
    half = next(one for one in both if one.letters)
    clear = _clearing(both) if _worth_clearing(half) else []
    label = CONSTANTS_FIRST if clear else ""
    options = [Choice(label, (taking_away(half.constants[0]),))]
    if half.terms[_letter(half)].size < 0:
        options.append(Choice(MADE_POSITIVE, (taking_away(half.letters[0]),)))
    return options + clear


def _worth_clearing(half: Half) -> bool:
    """Whether a fraction or a decimal stands on the side of the unknown, and not with x alone."""
    unknown = half.terms[_letter(half)].size
    return abs(unknown) != 1 and any(one.size.denominator != 1 for one in half.terms)


def _on_last_term(both: Halves) -> list[Choice]:
    """``kx = m``: divide, multiply, or change the signs."""
    half = next((one for one in both if one.letters), None)
    if half is None or half.terms[0].size == 1:
        return []
    one = half.terms[0]
    if one.over == 1:
        divide = Choice("", (dividing(one.size),))
        decimal = isinstance(number(abs(one.size), True), Decimal)
        return [divide, *_clearing(both)] if decimal else [divide]
    if abs(one.top) == 1:
        return [Choice("", (Move(MULTIPLY, signed(one.over / one.top, decimals=True)),))]
    return [
        Choice("", (Move(MULTIPLY, signed(one.over, decimals=True)),)),
        Choice(RECIPROCAL, (Move(MULTIPLY, signed(1 / one.size)),)),
    ]


def is_solved(relation: Relation) -> bool:
    """Whether the line is ``x = c`` or ``c = x`` with nothing left to work out."""
    return bool(symbols(relation.sides[0]) or symbols(relation.sides[1])) and not choices(relation)
