"""What did the pupil hand in? A script's typed lines read, their letters made those of the problem.

Nothing is judged here. A line that cannot be read stays, with its fault; crossed-out lines stay
where nothing replaces them (conventions 5.3).
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace
from functools import cached_property, lru_cache

from itembank.algebra.close_typing import is_close
from itembank.algebra.hashing import HashedOnce
from itembank.algebra.inside import relation_symbols, symbols
from itembank.algebra.reading import ReadingFault, read_lines
from itembank.algebra.reading.words import numbered_letter, without_numbers
from itembank.algebra.renaming import put_in, renamed
from itembank.algebra.units import without_units
from itembank.algebra.written import Line, Node, Note, Relation, Symbol
from itembank.topics.judging import Judge
from schemes.naming import labelled, letters_in, standing_for
from schemes.pieces import answer_of
from schemes.verdicts import ScriptLine


@dataclass(frozen=True)
class WorkLine(HashedOnce):
    """One line handed in, with the lines read from it, and every letter that stands in them.

    ``counts`` is false where the line is replaced.
    """

    __hash__ = HashedOnce.__hash__

    number: int
    text: str
    lines: tuple[Line, ...] = ()
    fault: ReadingFault | None = None
    counts: bool = True
    letters: frozenset[str] = frozenset()

    @cached_property
    def relations(self) -> tuple[Relation, ...]:
        """Every relation of the line as written, in order."""
        return tuple(relation for line in self.lines for relation in line.relations)

    def judged(self, judge: Judge) -> tuple[Relation, ...]:
        """What the line is judged as."""
        return tuple(r for line in self.lines for r in judge.relations(line))

    @cached_property
    def closes(self) -> bool:
        """Whether it matters that this is the last line: numbers alone (4.6), or a value."""
        goes_on = any(line.opening for line in self.lines)
        return goes_on or any(map(_can_close, self.relations))


def _can_close(relation: Relation) -> bool:
    """Whether a relation at the end of a script says something else than before the end."""
    alone = any(isinstance(side, Symbol) for side in relation.sides)
    return alone or len(relation.sides) > 2 or not relation_symbols(relation)


@dataclass(frozen=True, slots=True)
class Working:
    """A whole script as read. ``renaming`` tells of another letter used throughout, ``mixed`` is
    the first line in which two letters stand for the unknown (0 for none)."""

    lines: tuple[WorkLine, ...]
    renaming: str = ""
    mixed: int = 0


def read_working(lines: Sequence[ScriptLine], judge: Judge, *, comma: bool = False) -> Working:
    """Read every line of a script; never raises for what a pupil wrote."""
    numbered = numbered_letter("\n".join([line.text for line in lines]))
    read = tuple([_read(n, line.text, comma, numbered) for n, line in enumerate(lines, start=1)])
    if any(len(line.letters) > 1 for line in read):  # the units that are known have two letters
        read = tuple([_without_units(line, judge.unknowns) for line in read])
    crossed = [line.crossed_out for line in lines]
    read = _with_labels(read, crossed, judge, comma)
    named = _with_letters(read, judge)
    if any(is_close(line.text) for line in named.lines):
        named = replace(named, lines=tuple([_as_meant(line, judge) for line in named.lines]))
    if not any(crossed):
        return named
    return replace(named, lines=_replaced(named.lines, crossed, judge))


@lru_cache(maxsize=4096)
def _read(number: int, text: str, comma: bool, numbered: str) -> WorkLine:
    try:
        plain = without_numbers(text, numbered) if numbered else text
        lines, letters = _remembered(_closed(plain), comma)
    except ReadingFault as fault:
        return WorkLine(number, text, (), fault.with_traceback(None))
    return WorkLine(number, text, lines, letters=letters)


def _closed(text: str) -> str:
    """``x = 30/6 =`` without the sign that the next line goes on with."""
    bare = text.rstrip()
    return bare[:-1] if bare.endswith("=") and "=" in bare[:-1] else text


@lru_cache(maxsize=4096)
def _remembered(text: str, comma: bool) -> tuple[tuple[Line, ...], frozenset[str]]:
    """The lines read from a text, and their letters: many pupils write the same lines."""
    lines = read_lines(text, comma=comma)
    return lines, letters_in(lines)


def _without_units(line: WorkLine, own: frozenset[str]) -> WorkLine:
    if len(line.letters - own) < 2:
        return line
    lines = tuple(_with_relations(one, lambda r: without_units(r, own)) for one in line.lines)
    return line if lines == line.lines else replace(line, lines=lines, letters=letters_in(lines))


def _with_labels(
    read: tuple[WorkLine, ...], crossed: Sequence[bool], judge: Judge, comma: bool
) -> tuple[WorkLine, ...]:
    """The script's own labels as numbers; problems of several equations alone have them."""
    named = any(line.label for work in read for line in work.lines)
    if len(judge.given) < 2 or not named:
        return read
    standing = [() if out else work.lines for work, out in zip(read, crossed, strict=True)]
    found = labelled(standing, judge, comma)
    return tuple(
        work
        if out or lines == work.lines
        else replace(work, lines=lines, letters=letters_in(lines))
        for work, out, lines in zip(read, crossed, found, strict=True)
    )


def counting(
    crossed: Sequence[bool], says: Sequence[bool], *, answered: bool = True
) -> tuple[bool, ...]:
    """Which lines count: crossed-out ones only where nothing replaces them (conventions 5.3).

    ``says`` tells which lines say something, ``answered`` whether those that stand state a value:
    what is crossed out after the last of them is replaced by nothing where they do not.
    """
    standing = [at for at, out in enumerate(crossed) if says[at] and not out]
    if not standing:
        return (True,) * len(crossed)
    last = standing[-1]
    return tuple(not out or (at > last and not answered) for at, out in enumerate(crossed))


def _replaced(
    read: tuple[WorkLine, ...], crossed: list[bool], judge: Judge
) -> tuple[WorkLine, ...]:
    standing = [line for line, out in zip(read, crossed, strict=True) if not out and _says(line)]
    if _same_value_alone(standing, read, crossed, judge):
        return read
    answered = any(answer_of(judge, r) for line in standing for r in line.judged(judge))
    counts = counting(crossed, list(map(_says, read)), answered=answered)
    return tuple(replace(line, counts=one) for line, one in zip(read, counts, strict=True))


def _says(line: WorkLine) -> bool:
    return bool(line.lines or line.fault)


def _same_value_alone(
    standing: list[WorkLine], read: tuple[WorkLine, ...], crossed: list[bool], judge: Judge
) -> bool:
    """Everything crossed out and the crossed-out value written again: the lines count."""
    values = [_value(r, judge) for line in standing for r in line.judged(judge)]
    if not values or None in values:
        return False
    gone = [
        _value(r, judge)
        for line, out in zip(read, crossed, strict=True)
        if out
        for r in line.judged(judge)
    ]
    stated = [value for value in gone if value is not None]
    return bool(stated) and stated[-1] == values[-1]


def _value(relation: Relation, judge: Judge) -> object:
    answer = answer_of(judge, relation) or judge.bare_answer(relation)
    return answer.values if answer else None


def _with_letters(read: tuple[WorkLine, ...], judge: Judge) -> Working:
    own = judge.unknowns
    used = frozenset().union(*[line.letters for line in read])
    # ``a`` throughout is the unknown renamed, no number's name, as ``D`` is
    alone = len(used) == 1 and not any(map(str.isupper, used))
    known = own if alone else own | judge.names
    foreign = sorted(used - known)
    if not foreign:
        return Working(read)
    if len(own) == 2:
        return _two_letters(read, judge)
    meant = _meant_by(read, own, foreign)
    if meant is not None:
        return Working(tuple(_put_in(line, foreign[0], meant) for line in read))
    if len(own) != 1 or len(foreign) != 1:
        return Working(read, mixed=_first_mixed(read, known) if len(own) == 1 else 0)
    (unknown,), letter = tuple(own), foreign[0]
    lines = tuple(_rename(line, letter, unknown) for line in read)
    own_used = [
        line.number
        for line in read
        if line.counts and unknown in line.letters and not set(judge.given) & set(line.relations)
    ]
    if not own_used or letter.lower() == unknown.lower():
        note = "" if letter.lower() == unknown.lower() else f"{letter} stands for {unknown}"
        return Working(lines, note)
    first = min(line.number for line in read if letter in line.letters)
    return Working(lines, "", max(first, min(own_used)))


def _meant_by(
    read: tuple[WorkLine, ...], own: frozenset[str], foreign: Sequence[str]
) -> Node | None:
    """The expression that a new letter is said to stand for: ``u = x + 1``, ``let y = 1/x``."""
    if len(own) != 1 or len(foreign) != 1:
        return None
    letter = Symbol(foreign[0])
    for relation in (r for line in read for r in line.relations if r.signs == ("=",)):
        for side, other in (relation.sides, relation.sides[::-1]):
            if side == letter and symbols(other) == own and not isinstance(other, Symbol):
                return other
    return None


@lru_cache(maxsize=4096)
def _put_in(line: WorkLine, letter: str, meant: Node) -> WorkLine:
    lines = tuple(_with_relations(one, lambda r: put_in(r, letter, meant)) for one in line.lines)
    return replace(line, lines=lines, letters=line.letters - {letter} | symbols(meant))


def _two_letters(read: tuple[WorkLine, ...], judge: Judge) -> Working:
    """Another pair of letters, or one of them in another size, used throughout (5.9)."""
    letters = standing_for([line.lines for line in read if line.counts], judge)
    lines = read
    for old, new in letters.items():
        lines = tuple(_rename(line, old, new) if old in line.letters else line for line in lines)
    others = [(old, new) for old, new in letters.items() if old.lower() != new.lower()]
    return Working(lines, ", ".join(f"{old} stands for {new}" for old, new in others))


def _first_mixed(read: tuple[WorkLine, ...], own: frozenset[str]) -> int:
    return next((line.number for line in read if line.letters - own), 0)


@lru_cache(maxsize=4096)
def _rename(line: WorkLine, old: str, new: str) -> WorkLine:
    lines = tuple(
        replace(
            _with_relations(one, lambda r: renamed(r, old, new)),
            notes=tuple(_rename_note(note, old, new) for note in one.notes),
        )
        for one in line.lines
    )
    return replace(line, lines=lines, letters=line.letters - {old} | {new})


def _as_meant(line: WorkLine, judge: Judge) -> WorkLine:
    if not is_close(line.text):
        return line
    return replace(line, lines=tuple(_with_relations(one, judge.meant) for one in line.lines))


def _with_relations(line: Line, change: Callable[[Relation], Relation]) -> Line:
    changed = tuple(tuple(change(relation) for relation in group) for group in line.alternatives)
    return replace(line, alternatives=changed)


def _rename_note(note: Note, old: str, new: str) -> Note:
    return Note(note.sign, renamed(Relation((note.operand,)), old, new).sides[0])
