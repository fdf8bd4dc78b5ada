"""Which items does a family give? Drawn by chance under named controls, in exact number.

The controls say how hard an item is to be; they are read off its checked solution, so that they
mean the same in every topic. No item of one draw is trivial, and none is there twice, nor differs
from another in nothing but its letters.
"""

from __future__ import annotations

import re
from collections.abc import Collection
from dataclasses import dataclass
from random import Random

from itembank.algebra.number_forms import number_form
from itembank.algebra.reading import read_expression
from itembank.algebra.tokens import ReadingFault
from itembank.topics import Topic, topics_by_name
from itembank.topics.kinds import Family, Solution, TopicError

TRIES = 400
"""Problems made for each item that is wanted, before the family is given up on."""

WHOLE, FRACTION, DECIMAL, WORDS, OTHER = "whole", "fraction", "decimal", "words", "other"
VALUES = (WHOLE, FRACTION, DECIMAL, WORDS, OTHER)
POSITIVE, NEGATIVE, NOUGHT = "positive", "negative", "nought"
SIGNS = (POSITIVE, NEGATIVE, NOUGHT)

_FORMS = {
    "integer": WHOLE,
    "fraction": FRACTION,
    "mixed": FRACTION,
    "decimal": DECIMAL,
    "recurring": DECIMAL,
}
_NUMBER = re.compile(r"\d+(?:\.\d+)?")
_LETTER = re.compile(r"[^\W\d_]")


@dataclass(frozen=True, slots=True)
class Controls:
    """How hard an item is to be; None leaves a control open.

    ``value`` is the form of the value (one of ``VALUES``), ``sign`` its sign; ``largest`` the
    largest number that may stand in the problem; ``lines`` how many required lines, the problem's
    not counted, its preferred route has; ``stages`` the stages that it has.
    """

    value: str | None = None
    sign: str | None = None
    largest: int | None = None
    lines: int | None = None
    stages: tuple[str, ...] | None = None


def find_family(name: str) -> tuple[Topic, Family]:
    """A family by its name, with its topic.

    Raises:
        TopicError: where there is none of that name.
    """
    for topic in topics_by_name().values():
        for family in topic.families:
            if family.name == name:
                return topic, family
    raise TopicError(f"there is no family {name!r} of items")


def draw(
    topic: Topic,
    family: Family,
    count: int,
    *,
    seed: int = 1,
    controls: Controls | None = None,
    without: Collection[str] = (),
) -> tuple[Solution, ...]:
    """So many items of a family, each with its checked solution; the same seed gives the same.

    ``without`` are problems that may not come up, as those that a bank has already.

    Raises:
        TopicError: where the family has not so many items under these controls.
    """
    random = Random(f"{family.name} {seed}")
    there = {alike(problem) for problem in without}
    found: list[Solution] = []
    for _ in range(TRIES * count):
        if len(found) == count:
            break
        problem = family.make(random)
        made = alike(problem)
        if made in there:
            continue
        there.add(made)
        solution = topic.solve(problem)
        solved = alike(solution.problem)
        if solved != made and solved in there:
            continue
        there.add(solved)
        if not is_trivial(solution) and fits(solution, controls or Controls()):
            found.append(solution)
    if len(found) < count:
        raise TopicError(
            f"the family {family.name!r} gave {len(found)} of {count} items under these controls"
        )
    return tuple(found)


def parallel(solution: Solution) -> Controls:
    """The controls under which another item of the same family is as hard as a given one."""
    return Controls(
        value=value_of(solution),
        lines=lines_of(solution),
        stages=tuple(stage.name for stage in solution.stages),
    )


def fits(solution: Solution, controls: Controls) -> bool:
    """Whether an item is as hard as the controls say."""
    wanted = {
        value_of: controls.value,
        sign_of: controls.sign,
        lines_of: controls.lines,
    }
    if any(want is not None and of(solution) != want for of, want in wanted.items()):
        return False
    if controls.largest is not None and largest_of(solution) > controls.largest:
        return False
    names = tuple(stage.name for stage in solution.stages)
    return controls.stages is None or names == controls.stages


def is_trivial(solution: Solution) -> bool:
    """Whether nothing is to be done: the problem states its own answer."""
    return solution.problem == solution.answer or lines_of(solution) == 0


def alike(problem: str) -> str:
    """A problem with its letters named in order: two alike are the same exercise."""
    names: dict[str, str] = {}
    plain = problem.replace(" ", "")
    return _LETTER.sub(lambda found: names.setdefault(found.group(), f"u{len(names)}"), plain)


def value_of(solution: Solution) -> str:
    """The form of the value: the least tidy where there are several."""
    values = _values(solution)
    if not values:
        return WORDS if not solution.forms else OTHER
    return max((_form(value) for value in values), key=VALUES.index)


def sign_of(solution: Solution) -> str | None:
    """The sign of the value; negative where one of several is; None where it is no number."""
    values = _values(solution)
    if not values or OTHER in map(_form, values):
        return None
    if any(value.startswith("-") for value in values):
        return NEGATIVE
    return NOUGHT if values == ["0"] else POSITIVE


def largest_of(solution: Solution) -> float:
    """The largest number that stands in the problem."""
    return max(map(float, _NUMBER.findall(solution.problem)), default=0)


def lines_of(solution: Solution) -> int:
    """The required lines of the preferred route, the problem's not counted."""
    return sum(line.required for line in solution.routes[0].lines[1:])


def _values(solution: Solution) -> list[str]:
    """What stands behind each sign of equality of the answer, or the answer itself."""
    if not solution.forms:
        return []
    parts = re.split(r",|\bor\b|\band\b", solution.answer)
    return [part.rpartition("=")[2].strip() for part in parts]


def _form(text: str) -> str:
    try:
        return _FORMS.get(number_form(read_expression(text)) or "", OTHER)
    except ReadingFault:
        return OTHER
