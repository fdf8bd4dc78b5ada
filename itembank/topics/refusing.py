"""Why does no topic take a problem? One sentence: what was found, and what would take it."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator, Sequence

from itembank.algebra.inside import symbols, walk
from itembank.algebra.rationals import has_letter_below
from itembank.algebra.showing import typed
from itembank.algebra.written import Line, Product, Quotient, Relation, Symbol
from itembank.topics.kinds import OtherKind, TopicError

MOST_WORDS = 6  # of an instruction that is typed before a problem
ANY_OTHER = "An item that no topic takes comes in with its author's own routes (any other item)"
KINDS = (
    "it is no equation or inequality in one unknown, no pair of equations in two, and no "
    "expression with letters"
)

# ``Solve``, ``for x:``, ``3)``, ``(a)``, ``2.``: words of two letters or more, and numbers of a
# question; the letter that is asked for belongs to its words.
_WORD = re.compile(
    r"\s*(?:[A-Za-z]{2,}(?:\s+for\s+[a-z]\b)?[:,.]*|\(?(?:\d{1,2}|[a-z]|[ivx]{1,4})[).](?![\d)]))\s+",
    re.IGNORECASE,
)
_FUNCTION = re.compile(r"\b(?:sin|cos|tan|log|ln|exp)\b", re.IGNORECASE)
_NUMBER_BEHIND = re.compile(r"(?<![A-Za-z])([A-Za-z])(\d+)(?![A-Za-z]{2})")
_LETTER_BEHIND = re.compile(r"/\s*\d+[A-Za-z]")
_BARS = re.compile(r"\|[^|=<>]+\|")


def found_beside(problem: str, taker: Callable[[str], str]) -> TopicError | None:
    """What is told of an instruction typed before a problem, of a function, of bars; else None.

    ``taker`` names the topic that takes a text, empty where none does.
    """
    if function := _FUNCTION.search(problem):
        return _untaken(f"it has the function {function[0]!r}, which no topic reads")
    for said, rest in _without_words(problem):
        if name := taker(rest):
            return TopicError(
                f"{said!r} stands before the problem: type {rest} alone, and the topic {name} "
                "takes it"
            )
    if _BARS.search(problem):
        return _untaken("it has the bars of a modulus, which no topic reads")
    return None


def refused_by_all(refusals: Sequence[TopicError]) -> TopicError:
    """What is told of a problem that every topic refuses: the reasons of its own kind."""
    own = [str(refused) for refused in refusals if not isinstance(refused, OtherKind)]
    return _untaken("; ".join(dict.fromkeys(own or [KINDS])))


def refuse_beside(line: Line) -> None:
    """Raise TopicError where a statement, a note or a word stands beside a problem.

    Also for a number right behind a letter: ``x2`` is most often a power that lost its place.
    """
    if not line.alternatives:
        return
    notes = (f"{note.sign}{typed(Relation((note.operand,)))}" for note in line.notes)
    beside = [said for said in (*line.heads, *notes, line.statement) if said]
    if beside:
        raise TopicError(f"a problem must stand alone; beside it stands {beside[0]!r}")
    behind = _NUMBER_BEHIND.search(line.text)
    if behind:
        letter, number = behind.groups()
        raise TopicError(
            f"{letter}{number} can be read in two ways: type {letter}^{number} or {number}{letter}"
        )


def refuse_two_readings(problem: str, relation: Relation) -> None:
    """Raise TopicError for ``(x + 1)/2x``: the letter behind the number may be meant below.

    Also for ``5/2x - 1/x``, with letters below other bars; ``2/3x`` alone, and ``5/2 x`` with a
    blank, is a fraction of x.
    """
    if not _LETTER_BEHIND.search(problem):
        return
    below = any(map(has_letter_below, relation.sides))
    for part in (part for side in relation.sides for part in walk(side)):
        match part:
            case Product((Quotient(top, bottom, "/") as one, Symbol() as last, *_), ("", *_)) if (
                not symbols(bottom) and (below or symbols(top))
            ):
                above, under, letter, whole = (
                    typed(Relation((node,))) for node in (top, bottom, last, one)
                )
                raise TopicError(
                    f"{whole}{letter} can be read in two ways: type {above}/({under}{letter}) or "
                    f"({whole}){letter}"
                )


def _untaken(reason: str) -> TopicError:
    return TopicError(f"no topic takes this problem: {reason}. {ANY_OTHER}")


def _without_words(problem: str) -> Iterator[tuple[str, str]]:
    """The words before a problem, and what is left without them, one word more each time."""
    end = 0
    for _ in range(MOST_WORDS):
        found = _WORD.match(problem, end)
        if found is None or found.end() == len(problem):
            return
        end = found.end()
        yield problem[:end].strip(), problem[end:]
