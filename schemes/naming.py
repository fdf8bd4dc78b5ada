"""What do the labels and the letters of a script name? Its own names made those of the problem."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import replace
from itertools import permutations

from itembank.algebra.inside import relation_symbols
from itembank.algebra.reading import ReadingFault, read_lines
from itembank.algebra.reading.labels import is_given
from itembank.algebra.renaming import renamed
from itembank.algebra.values import NoValue
from itembank.algebra.written import Line, Relation
from itembank.topics.judging import Judge

Script = Sequence[tuple[Line, ...]]
"""The lines read from each line handed in."""

_ONE = re.compile(r"\((\d+|[A-H])\)")


def labelled(script: Script, judge: Judge, comma: bool) -> list[tuple[Line, ...]]:
    """The script with its own labels as the numbers that the lines have by their order.

    A label written beside a line names that line, whatever its place; ``A - B`` is an operation on
    labels where the script has given them.
    """
    given = {name for line in _flat(script) for name in _given(line)}
    bare = {name[1] for name in given if name[1].isalpha()} - judge.unknowns
    script = [_bracketed(lines, bare, comma) for lines in script]
    known, numbers = judge.start, dict[str, int]()
    out: list[tuple[Line, ...]] = []
    for lines in script:
        now: list[Line] = []
        for line in lines:
            own = _given(line)
            made = "" if is_given(line.label) else line.label
            now.append(replace(line, label=_numbered(made, numbers)) if made else line)
            number = 0
            for relation in judge.relations(line):
                try:
                    form = judge.form(relation)
                except NoValue:
                    continue
                if not judge.number_of(known, form):
                    known = judge.onward(known, form)
                number = judge.number_of(known, form)
            numbers.update({name: number for name in own if number})
        out.append(tuple(now))
    return out


def _flat(script: Script) -> Iterator[Line]:
    return (line for lines in script for line in lines)


def _given(line: Line) -> tuple[str, ...]:
    """The labels that a line is given."""
    if not line.alternatives:
        return ()
    return tuple(name for name in (line.label, line.name) if is_given(name))


def _bracketed(lines: tuple[Line, ...], bare: set[str], comma: bool) -> tuple[Line, ...]:
    """``3A - B`` read as ``3(A) - (B)`` where these are labels."""
    if not letters_in(lines) & bare:
        return lines
    text = " ; ".join(line.text for line in lines)
    for name in sorted(bare):
        text = re.sub(rf"(?<![A-Za-z(]){name}(?![A-Za-z)])", f"({name})", text)
    try:
        return read_lines(text, comma=comma)
    except ReadingFault:
        return lines


def _numbered(label: str, numbers: dict[str, int]) -> str:
    """An operation on labels, each by the number of its line."""
    return _ONE.sub(lambda found: f"({numbers.get(found.group(), found.group(1))})", label)


def letters_in(lines: Sequence[Line]) -> frozenset[str]:
    """The letters that stand in the relations of some lines."""
    return frozenset().union(*[relation_symbols(r) for line in lines for r in line.relations])


def standing_for(script: Script, judge: Judge) -> dict[str, str]:
    """The letters that stand for those of a problem in two unknowns, used throughout (5.9).

    Empty where none do, or where it cannot be told for which.
    """
    written = [relation for line in _flat(script) for relation in line.relations]
    work = [relation for relation in written if relation not in judge.given]
    used = frozenset().union(*map(relation_symbols, work))
    own = sorted(judge.unknowns)
    foreign = sorted(used - judge.unknowns - judge.names)
    sized = {one: other for one in foreign for other in own if one.lower() == other.lower()}
    left = [one for one in foreign if one not in sized]
    unused = [one for one in own if one not in used and one not in sized.values()]
    if not left:
        return sized
    if len(left) != len(unused):
        return {}
    ways = [dict(zip(left, order, strict=False)) for order in permutations(unused, len(left))]
    found = max(ways, key=lambda way: _right(work, way, judge))  # the alphabet's order before
    return {**sized, **found}


def _right(work: Sequence[Relation], way: dict[str, str], judge: Judge) -> int:
    """How many lines keep what the problem says, the letters read in one way."""
    count = 0
    for relation in work:
        for old, new in way.items():
            relation = renamed(relation, old, new)
        try:
            count += judge.keeps(judge.start, judge.form(relation))
        except NoValue:
            continue
    return count
