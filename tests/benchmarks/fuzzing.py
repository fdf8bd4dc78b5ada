"""Does every line get a verdict? ``python -m tests.benchmarks.fuzzing --lines 1000000``.

Hostile and careless scripts (:mod:`tests.benchmarks.hostile`) are marked; each must come back with
a verdict for every line, an unreadable one with the column where reading failed, with marks within
their bounds and in a counted bound of work. All cores share the lines; what is asked of each
script stands in :func:`faults_of`. The same seed gives the same scripts. No test asserts a time.
"""

from __future__ import annotations

import argparse
import os
import re
import sys
from collections import Counter
from collections.abc import Callable, Iterator, Sequence
from concurrent.futures import ProcessPoolExecutor, as_completed
from dataclasses import dataclass, field
from functools import lru_cache
from multiprocessing import get_context
from random import Random
from time import process_time

import psutil
from rich.console import Console

from itembank.cli.printing import table
from schemes.alike import canonical_working
from schemes.building import default_scheme
from schemes.marking import mark_script
from schemes.scheme import Scheme, Settings
from schemes.verdicts import VERDICTS, MarkedScript, ScriptLine
from tests.benchmarks.counting import counted
from tests.benchmarks.hostile import KINDS, PROBLEMS, Hostile, Real, hostile_script, real_lines

BATCH = 10_000  # lines of one task
COUNTED_EACH = 20  # one script of so many has its work counted: counting takes time
MOST_CALLS = 200_000  # of Python functions, for a line and all that can stand before it
SLOWEST = 5
MOST_SHOWN = 50  # faults
_COLUMN = re.compile(r"column (\d+): expected .+, found ")


@dataclass(slots=True)
class Tally:
    """What came of some scripts; ``seconds`` and ``lines`` by kind, ``faults`` in words."""

    lines: Counter[str] = field(default_factory=Counter)
    seconds: Counter[str] = field(default_factory=Counter)
    verdicts: Counter[str] = field(default_factory=Counter)
    calls: dict[str, int] = field(default_factory=dict)
    slowest: list[tuple[float, str, str]] = field(default_factory=list)
    faults: list[str] = field(default_factory=list)
    held: list[tuple[int, int, float]] = field(default_factory=list)

    def add(self, other: Tally) -> None:
        """Take another tally in."""
        self.lines += other.lines
        self.seconds += other.seconds
        self.verdicts += other.verdicts
        for kind, calls in other.calls.items():
            self.calls[kind] = max(calls, self.calls.get(kind, 0))
        self.slowest = sorted([*self.slowest, *other.slowest], reverse=True)[:SLOWEST]
        self.faults += other.faults
        self.held += other.held


def main(arguments: Sequence[str] | None = None) -> None:
    """Fuzz, print what was found; exit status 1 for any fault."""
    parser = argparse.ArgumentParser(prog="python -m tests.benchmarks.fuzzing")
    parser.add_argument("--lines", type=int, default=100_000, help="lines to mark")
    parser.add_argument("--seed", type=int, default=1, help="another number, other lines")
    parser.add_argument("--processes", type=int, default=os.cpu_count(), help="that share them")
    asked = parser.parse_args(arguments)
    found = fuzz(
        asked.lines, asked.seed, asked.processes, lambda told: print(told, file=sys.stderr)
    )
    screen = Console(highlight=False, width=140, soft_wrap=True)
    show(found, screen)
    raise SystemExit(1 if found.faults else 0)


def fuzz(lines: int, seed: int, processes: int, tell: Callable[[str], None]) -> Tally:
    """Mark so many lines, shared by processes that each go on from batch to batch.

    ``tell`` hears how far it has come; an interrupt ends it after the batches at work.
    """
    sizes = [min(BATCH, lines - start) for start in range(0, lines, BATCH)]
    found = Tally()
    with ProcessPoolExecutor(processes, mp_context=get_context("spawn")) as pool:
        tasks = [pool.submit(batch, f"{seed}-{place}", size) for place, size in enumerate(sizes)]
        try:
            for task in as_completed(tasks):
                more = task.result()
                found.add(more)
                for fault in more.faults:
                    tell(fault[:1000])
                tell(f"{found.lines.total():,} lines, {len(found.faults)} faults")
        except KeyboardInterrupt:  # what is found so far is shown
            pool.shutdown(cancel_futures=True)
    return found


def batch(seed: str, lines: int, problems: int = PROBLEMS) -> Tally:
    """Mark hostile scripts until there are so many lines, of so many problems."""
    found = Tally()
    for number, script in enumerate(scripts(seed, lines, problems)):
        _one(script, found, count=number % COUNTED_EACH == 0)
    held = psutil.Process().memory_info().rss / 2**20
    found.held.append((os.getpid(), found.lines.total(), held))
    return found


def scripts(seed: str, lines: int, problems: int = PROBLEMS) -> Iterator[Hostile]:
    """Hostile scripts with so many lines in all, or a few more."""
    random = Random(seed)
    done = 0
    while done < lines:
        script = hostile_script(random, _real(problems))
        done += len(script.lines)
        yield script


@lru_cache(maxsize=1)
def _real(problems: int) -> list[Real]:
    return real_lines(problems)


@lru_cache(maxsize=1024)
def _scheme(problem: str, comma: bool) -> Scheme:
    return default_scheme(problem, settings=Settings(decimal_comma=comma))


def marked(script: Hostile) -> MarkedScript:
    """The marks of a hostile script by the default scheme of its problem."""
    scheme = _scheme(script.problem, script.comma)
    return mark_script(scheme, script_lines(script), script.show_working)


def script_lines(script: Hostile) -> list[ScriptLine]:
    """The lines as they are handed in."""
    return [ScriptLine(text, at in script.crossed_out) for at, text in enumerate(script.lines)]


def _one(script: Hostile, found: Tally, *, count: bool) -> None:
    _scheme(script.problem, script.comma)
    began = process_time()
    try:
        result, calls = counted(lambda: marked(script)) if count else (marked(script), 0)
        wrong = faults_of(script, result)
        canonical_working(script_lines(script), script.problem, comma=script.comma)
    except Exception as raised:  # what is looked for
        found.faults.append(f"{type(raised).__name__}: {raised}: {script}")
        return
    spent = process_time() - began
    lines = len(script.lines)
    if calls > MOST_CALLS * lines:
        wrong.append(f"{calls} calls for {lines} lines")
    found.faults += [f"{fault}: {script}" for fault in wrong]
    found.lines[script.kind] += lines
    found.verdicts.update(line.verdict for line in result.lines)
    if count:
        found.calls[script.kind] = max(calls // lines, found.calls.get(script.kind, 0))
        return
    found.seconds[script.kind] += spent
    found.slowest.append((spent / lines, script.kind, repr(script)))
    found.slowest = sorted(found.slowest, reverse=True)[:SLOWEST]


def faults_of(script: Hostile, result: MarkedScript) -> list[str]:
    """What is wrong with the marks of a script, whatever its lines; nothing, as a rule."""
    faults = []
    if not 0 <= result.lowest <= result.total <= result.highest <= result.maximum:
        faults.append(f"{result.total} is not within its bounds")
    awarded = sum(point.awarded for point in result.points)
    if result.special is None and awarded != result.total:
        faults.append(f"the points come to {awarded}, the total is {result.total}")
    if any(not 0 <= point.awarded <= point.value for point in result.points):
        faults.append("a point is awarded more than its value")
    if any(not point.reason for point in result.points):
        faults.append("a mark without a reason")
    if result.referred != (result.lowest != result.highest):
        faults.append("referred and the range do not say the same")
    if [line.text for line in result.lines] != list(script.lines):
        faults.append("not a verdict for each line")
    for text, line in zip(script.lines, result.lines, strict=False):
        if line.verdict not in VERDICTS:
            faults.append(f"verdict {line.verdict!r}")
        if not line.reads and line.verdict != "ignored":
            faults += _unreadable_faults(text, line.verdict, line.note)
    return faults


def _unreadable_faults(text: str, verdict: str, note: str) -> list[str]:
    column = _COLUMN.search(note)
    if verdict != "unreadable" or column is None:
        return [f"{text!r} cannot be read, yet it is {verdict}: {note}"]
    # Reading can fail at the end of the line, just past its last character.
    within = 1 <= int(column.group(1)) <= len(text) + 1
    return [] if within else [f"{text!r}: no such {column.group()}"]


def show(found: Tally, screen: Console) -> None:
    """Print the tables: the kinds, the slowest first, memory, and every fault."""
    lines = found.lines.total()
    kinds = sorted(KINDS, key=lambda kind: -_each(found, kind))
    rows = [
        (
            kind,
            f"{found.lines[kind]:,}",
            f"{_each(found, kind):.2f}",
            f"{found.calls.get(kind, 0):,}",
        )
        for kind in kinds
    ]
    columns = ("Kind", "Lines#", "ms a line#", "Calls a line, at most#")
    screen.print(table(f"{lines:,} lines", columns, rows))
    verdicts = [(name, f"{found.verdicts[name]:,}") for name in VERDICTS]
    screen.print(table("Verdicts", ("Verdict", "Lines#"), verdicts))
    screen.print(table("Memory held", ("Process", "Lines#", "MB#"), _memory_rows(found)))
    screen.print("Slowest scripts, seconds a line:")
    for seconds, kind, text in found.slowest:
        screen.print(f"  {seconds:.3f}  {kind}: {text[:300]}", markup=False)
    screen.print(f"{len(found.faults)} faults")
    for fault in found.faults[:MOST_SHOWN]:
        screen.print(f"  {fault[:1000]}", markup=False)


def _each(found: Tally, kind: str) -> float:
    """Milliseconds a line."""
    return 1000 * found.seconds[kind] / max(1, found.lines[kind])


def _memory_rows(found: Tally) -> list[tuple[str, str, str]]:
    """Each process after about a tenth of its lines, and after all of them."""
    rows = []
    for process in dict.fromkeys(pid for pid, _, _ in found.held):
        own = [(lines, held) for pid, lines, held in found.held if pid == process]
        for part in (max(1, len(own) // 10), len(own)):
            done = sum(lines for lines, _ in own[:part])
            rows.append((str(process), f"{done:,}", f"{own[part - 1][1]:.0f}"))
    return rows


if __name__ == "__main__":
    main()
