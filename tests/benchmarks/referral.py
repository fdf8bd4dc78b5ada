"""How much is referred, and is what is decided right? ``python -m tests.benchmarks.referral``.

Simulated scripts make at most one error in a gap, from the catalogue, and leave out at most two
required lines. The truth is what the same script earns with every line written out, where that is
decided. The measure is taken with a third, two thirds and all of the catalogue known to the
explainer: the more errors it knows, the more often two of them explain one line.

What the conventions themselves refer is counted apart: a script that is referred with every line
written out too, an operation on one side that nothing follows (3.13), a line that no known error
explains (5.8, 3.6: where the error played is among those left out). So is what they take for a
line left out: a wrong value implies nothing (3.9), nor does a lost unknown (3.15) or a value
alone (5.1).
"""

from __future__ import annotations

import argparse
from collections import Counter
from collections.abc import Iterator, Sequence
from contextlib import contextmanager
from dataclasses import dataclass
from functools import lru_cache
from itertools import combinations
from random import Random
from typing import Any

from rich.console import Console

from itembank.cli.printing import table
from itembank.topics import find_topic
from itembank.topics.judging import Wrong
from itembank.topics.linear_equations.errors import catalogue
from itembank.topics.linear_equations.judging import LinearJudge
from schemes.blaming import UNKNOWN_LOST, VALUE_ALONE, rule
from schemes.building import default_scheme
from schemes.marking import mark_script
from schemes.mistakes import Mistake, continuation, mistakes
from schemes.scheme import Scheme
from schemes.verdicts import MarkedScript, ScriptLine
from tests.benchmarks.measuring import forget
from tests.benchmarks.workload import problems

MOST_SKIPPED = 2
SHARE_WRONG = 0.85  # of the scripts; the others have no error

SHARES = ((1, 3), (2, 3), (3, 3))
COLUMNS = (
    *("Catalogue", "Scripts#", "Referred#", "by the conventions#", "beyond them#"),
    *("Decided#", "differ#", "less by 3.9, 3.15, 5.1#"),
)
_FOR_A_LINE_LEFT_OUT = ("3.9", *(name.split()[0] for name in (UNKNOWN_LOST, VALUE_ALONE)))


@dataclass(frozen=True, slots=True)
class Case:
    """A script with lines left out, and the same script with every line written out."""

    problem: str
    error: str
    lines: tuple[str, ...]
    whole: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Measure:
    """Counts of scripts; ``differ`` and ``less`` are of those decided here and in the truth."""

    known: int
    scripts: int
    referred: int
    beyond: int
    decided: int
    differ: int
    less: int
    examples: tuple[str, ...] = ()

    @property
    def share_beyond(self) -> float:
        """The share referred beyond what the conventions themselves refer, from 0 to 1."""
        return self.beyond / self.scripts

    @property
    def share_differing(self) -> float:
        """The share of decided totals that differ from the truth, from 0 to 1."""
        return self.differ / self.decided


def cases(count: int, even: bool = False) -> list[Case]:
    """So many scripts of problems of every family, the same every time.

    Errors are drawn as often as pupils make them; with ``even`` each as often as any other.
    """
    random = Random("referral")
    texts = problems(max(12, count // 8))
    found: list[Case] = []
    while len(found) < count:
        case = _case(random.choice(texts), random, even)
        if case is not None:
            found.append(case)
    return found


def _case(problem: str, random: Random, even: bool) -> Case | None:
    topic = find_topic(problem)
    routes = topic.solve(problem).routes
    place = random.randrange(len(routes))
    lines = routes[place].lines
    name, whole, required = "", [line.text for line in lines], _required(lines)
    if random.random() < SHARE_WRONG:
        mistake = _drawn(mistakes(problem, topic.name, place), random, even)
        if mistake is None:
            return None
        before = lines[: mistake.place + 1]
        written = tuple(line.text for line in before)
        name, onward = mistake.name, continuation(mistake.text, topic.name, problem, written)
        whole = [*(line.text for line in before), mistake.text, *(line.text for line in onward)]
        required = [*_required(before), mistake.text, *_required(onward)]
    kept = _left_out(required, random)
    return Case(problem, name, kept, tuple(whole))


def _required(lines: Sequence[Any]) -> list[str]:
    return [line.text for line in lines if line.required]


def _drawn(found: Sequence[Mistake], random: Random, even: bool) -> Mistake | None:
    names = list(dict.fromkeys(mistake.name for mistake in found))
    if not names:
        return None
    often = find_topic("x + 1 = 2").frequency
    (name,) = random.choices(names, [1 if even else often(one) for one in names])
    return random.choice([mistake for mistake in found if mistake.name == name])


def _left_out(required: Sequence[str], random: Random) -> tuple[str, ...]:
    """The required lines without at most two of those between the problem and the last."""
    inner = range(1, len(required) - 1)
    count = random.randint(0, min(MOST_SKIPPED, len(inner)))
    out = random.choice(list(combinations(inner, count)))
    return tuple(text for at, text in enumerate(required) if at not in out)


@contextmanager
def knowing(names: frozenset[str]) -> Iterator[None]:
    """The explainer knows only the named errors; what it remembers is forgotten before and after.

    The product always knows its whole catalogue: this is for the measure alone.
    """
    every, pairs = LinearJudge.wrongs_to, LinearJudge.pairs

    def wrongs_to(self: LinearJudge, source: Any, form: Any) -> list[Wrong]:
        return [wrong for wrong in every(self, source, form) if wrong.name in names]

    def known_pairs(self: LinearJudge, source: Any, form: Any) -> Iterator[tuple[Wrong, Wrong]]:
        return (pair for pair in pairs(self, source, form) if {p.name for p in pair} <= names)

    forget()
    LinearJudge.wrongs_to, LinearJudge.pairs = wrongs_to, known_pairs  # type: ignore[method-assign]
    try:
        yield
    finally:
        LinearJudge.wrongs_to, LinearJudge.pairs = every, pairs  # type: ignore[method-assign]
        forget()


def part_of_catalogue(part: int, parts: int) -> frozenset[str]:
    """So much of the catalogue, by name; a larger part holds the smaller ones."""
    names = sorted(error.name for error in catalogue())
    Random("catalogue").shuffle(names)
    return frozenset(names[: len(names) * part // parts])


def measure(
    scripts: Sequence[Case], known: frozenset[str], truth: Sequence[MarkedScript]
) -> Measure:
    """Mark scripts with some of the catalogue known, against the truth of each."""
    scheme_of = lru_cache(maxsize=None)(default_scheme)
    counts: Counter[str] = Counter()
    examples = []
    with knowing(known):
        for case, whole in zip(scripts, truth, strict=True):
            scheme = scheme_of(case.problem)
            marked = _marked(scheme, case.lines)
            kind = _kind(case, scheme, marked, whole, known)
            counts[kind] += 1
            if kind in ("beyond", "differs"):
                examples.append(
                    f"{kind}: {case.error or 'no error'}: {' | '.join(case.lines)}: "
                    f"{marked.total} ({marked.lowest} to {marked.highest}), truth {whole.total}"
                )
    return Measure(
        known=len(known),
        scripts=len(scripts),
        referred=counts["beyond"] + counts["referred"],
        beyond=counts["beyond"],
        decided=counts["same"] + counts["differs"] + counts["less"],
        differ=counts["differs"],
        less=counts["less"],
        examples=tuple(examples),
    )


def truths(scripts: Sequence[Case]) -> list[MarkedScript]:
    """What each script earns with every line written out, the whole catalogue known."""
    scheme_of = lru_cache(maxsize=None)(default_scheme)
    return [_marked(scheme_of(case.problem), case.whole) for case in scripts]


def _marked(scheme: Scheme, lines: Sequence[str]) -> MarkedScript:
    return mark_script(scheme, [ScriptLine(text) for text in lines])


def _kind(
    case: Case, scheme: Scheme, marked: MarkedScript, whole: MarkedScript, known: frozenset[str]
) -> str:
    """``same``, ``differs``, ``less`` (by a rule for lines left out), ``referred``, ``beyond``."""
    if marked.referred:
        left_out = bool(case.error) and case.error not in known
        return "referred" if whole.referred or left_out or _one_sided(marked) else "beyond"
    if whole.referred:
        return "undecided"
    if marked.total == whole.total:
        return "same"
    if marked.total < whole.total and _by_rule(scheme, marked, whole):
        return "less"
    return "differs"


def _one_sided(marked: MarkedScript) -> bool:
    verdicts = [marked.lines[one.line - 1].verdict for one in marked.referrals if one.line]
    return bool(verdicts) and all(verdict == "notation" for verdict in verdicts)


def _by_rule(scheme: Scheme, marked: MarkedScript, whole: MarkedScript) -> bool:
    """Whether every mark that is missing is taken by a rule for lines that are left out."""
    missing = [
        rule(mark, point.kind, marked)
        for point, mark, right in zip(scheme.points, marked.points, whole.points, strict=True)
        if mark.awarded < right.awarded
    ]
    return all(name.startswith(_FOR_A_LINE_LEFT_OUT) for name in missing)


def rows(count: int, even: bool = False) -> list[Measure]:
    """The measure for each part of the catalogue."""
    scripts = cases(count, even)
    truth = truths(scripts)
    return [measure(scripts, part_of_catalogue(*share), truth) for share in SHARES]


def main(arguments: Sequence[str] | None = None) -> None:
    """Measure and print."""
    parser = argparse.ArgumentParser(prog="python -m tests.benchmarks.referral")
    parser.add_argument("--scripts", type=int, default=2000, help="scripts for each row")
    parser.add_argument("--examples", type=int, default=0, help="examples of the whole catalogue")
    asked = parser.parse_args(arguments)
    screen = Console(highlight=False, width=120)
    for even in (False, True):
        found = rows(asked.scripts, even)
        title = "every error alike" if even else "errors as often as pupils make them"
        screen.print(table(f"Referrals, {title}", COLUMNS, [_row(one) for one in found]))
        for example in found[-1].examples[: asked.examples]:
            screen.print(example, markup=False)
    screen.print(
        "Differ: decided totals other than the truth; less: decided lower by a rule for lines "
        "left out."
    )


def _row(one: Measure) -> tuple[object, ...]:
    return (
        f"{one.known} errors",
        one.scripts,
        f"{one.referred / one.scripts:.1%}",
        f"{(one.referred - one.beyond) / one.scripts:.1%}",
        f"{one.share_beyond:.1%}",
        one.decided,
        f"{one.share_differing:.2%}",
        f"{one.less / one.decided:.1%}",
    )


if __name__ == "__main__":
    main()
