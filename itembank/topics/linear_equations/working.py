"""Which lines has a route written so far, and which stages has it reached?"""

from __future__ import annotations

from dataclasses import dataclass, replace

from itembank.algebra.inside import symbols
from itembank.algebra.showing import typed
from itembank.algebra.written import Relation, Symbol
from itembank.topics.kinds import RouteLine
from itembank.topics.linear_equations.equations import Equation, equation_of
from itembank.topics.linear_equations.stages import (
    CONSTANTS,
    VALUE,
    constants_rest,
    reached_by,
    stage_names,
)
from itembank.topics.linear_equations.steps import (
    EXCHANGE,
    Move,
    Step,
    made,
    next_present,
    served,
    words,
    written_out,
)
from itembank.topics.linear_equations.tidying import in_preferred_form, is_value

WORKED_OUT = "work out both sides"
TURNED = ", and turn the sign round"


@dataclass(frozen=True, slots=True)
class Working:
    """A route as far as it is written: its lines, its last line as a tree, the stages reached."""

    lines: tuple[RouteLine, ...]
    line: Relation
    unknown: str
    problem: Equation
    present: tuple[str, ...]
    reached: frozenset[str]

    @classmethod
    def begun(cls, relation: Relation, unknown: str) -> Working:
        """The working that holds the problem alone."""
        problem = equation_of(relation, unknown)
        first = RouteLine(typed(relation), "", "", True)
        at_start = reached_by(problem, problem)
        return cls((first,), relation, unknown, problem, stage_names(problem), at_start)

    def after(self, move: Move) -> Working:
        """The working with the lines that the move adds; itself where the move changes nothing."""
        new = made(move, self.line)
        if new == self.line:
            return self
        if move.step.write is not None or move.step is EXCHANGE:
            new = in_preferred_form(new)
        newly = self.newly_reached(new)
        stage = self.stage_of(move, new, newly)
        lines = list(self.lines)
        if is_value(new) and newly - {VALUE} and len(lines) > 1:
            # a stage that the value alone would reach: the line before it shows the method
            lines[-1] = replace(lines[-1], required=True)
        said = words(move) + (TURNED if new.signs != self.line.signs else "")
        if (written := written_out(move, self.line)) is not None:
            lines.append(RouteLine(typed(written), said, stage, False))
            said = WORKED_OUT
        lines.append(RouteLine(typed(new), said, stage, _is_required(move, new, newly)))
        return replace(self, lines=tuple(lines), line=new, reached=self.reached | newly)

    def newly_reached(self, new: Relation) -> frozenset[str]:
        """The stages present in the problem that this line is the first to reach."""
        equation = equation_of(new, self.unknown)
        reached = reached_by(equation, self.problem)
        if constants_rest(equation, self.problem):
            reached |= {CONSTANTS}
        return (reached & frozenset(self.present)) - self.reached

    def stage_of(self, move: Move, new: Relation, newly: frozenset[str]) -> str:
        """The stage that the move serves; the value where it is the last."""
        if is_value(new):
            return VALUE
        stage = served(move, self.reached, self.present)
        if stage in self.present:
            return stage
        reaching = [name for name in self.present if name in newly]
        return reaching[0] if reaching else next_present(stage, self.present)

    def stated(self, statement: str, step: Step) -> Working:
        """The working closed by a statement."""
        line = RouteLine(statement, step.words.format(what=typed(self.line)), step.stage, True)
        return replace(self, lines=(*self.lines, line))


def _is_required(move: Move, new: Relation, newly: frozenset[str]) -> bool:
    """Whether a full solution shows the line: it reaches a stage, or loses the unknown."""
    left, right = new.sides
    if is_value(new):  # 5 = x is to be exchanged, and x = 5 then shown
        return isinstance(left, Symbol)
    lost = not symbols(left) and not symbols(right)
    return lost or (move.step.required and bool(newly))
