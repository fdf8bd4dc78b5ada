"""Does memory stay flat and time linear? ``python -m tests.benchmarks.streaming --out FOLDER``.

Invented scripts are played by one process and marked by another, as the command marks a file that
has no end: neither holds more than a few of them. A new problem comes every few scripts, so that
what is remembered of the last one helps little. Time is the marker's own processor time. The first
decade (from the first to the thousandth script, unless told otherwise) is the baseline of the
ratios. No test asserts a time.
"""

from __future__ import annotations

import argparse
import json
import os
import resource
import subprocess
import sys
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise
from pathlib import Path
from random import Random
from time import process_time

import psutil
from rich.console import Console

from itembank.cli.mark_files import mark_records
from itembank.cli.marker import Marker
from itembank.cli.printing import table
from itembank.cli.sharing import Sharing
from itembank.cli.streams import read_json_lines
from itembank.topics.linear_equations.families import FAMILIES
from schemes.simulating import simulate
from tests.benchmarks.workload import ERRING

SCRIPTS_OF_A_PROBLEM = 50
DECADES = 3
SAMPLES = 400
COLUMNS = (
    *("Scripts#", "Processor time#", "a script, this decade#", "ratio to the first#"),
    *("Memory at the peak#", "grown in this decade#", "ratio to the first#"),
)


@dataclass(frozen=True, slots=True)
class Sample:
    """After so many scripts: processor ``seconds``, ``megabytes`` held, and held at most."""

    scripts: int
    seconds: float
    megabytes: float
    peak: float


def main(arguments: Sequence[str] | None = None) -> None:
    """Measure, print the table, write the picture."""
    parser = argparse.ArgumentParser(prog="python -m tests.benchmarks.streaming")
    parser.add_argument("--scripts", type=int, default=100_000, help="scripts to stream")
    parser.add_argument("--out", type=Path, help="folder for the picture (SVG and PNG)")
    parser.add_argument("--part", choices=("play", "mark"), help=argparse.SUPPRESS)
    asked = parser.parse_args(arguments)
    if asked.part == "play":
        play(asked.scripts)
    elif asked.part == "mark":
        mark(asked.scripts)
    else:
        samples = measure(asked.scripts)
        Console(highlight=False, width=140).print(
            table("Streaming", COLUMNS, rows(samples, decades(asked.scripts)))
        )
        if asked.out is not None:
            print(*draw(samples, asked.out), sep="\n")


def decades(scripts: int) -> list[int]:
    """The ends of the decades: a hundredth of the scripts, a tenth, all."""
    return [max(1, scripts // 10**place) for place in reversed(range(DECADES))]


def play(scripts: int) -> None:
    """Write invented scripts to standard output, one a line."""
    for record in played(scripts):
        sys.stdout.write(json.dumps(record) + "\n")


def played(scripts: int) -> Iterator[dict[str, object]]:
    """Invented scripts, most of them with something wrong, as records of the contract."""
    random = Random("streaming")
    problem = ""
    for number in range(scripts):
        if number % SCRIPTS_OF_A_PROBLEM == 0:
            problem = random.choice(FAMILIES).make(random)
        lines = [line.text for line in simulate(problem, random, ERRING).lines]
        yield {"id": number, "problem": problem, "lines": lines, "show_working": True}


def mark(scripts: int) -> None:
    """Mark the scripts of standard input as the command does; write the samples as JSON lines."""
    ends = {*decades(scripts), *range(0, scripts, max(1, scripts // SAMPLES))}
    done = 0
    began = process_time()

    def sample() -> None:
        held = psutil.Process().memory_info().rss / 2**20
        peak = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 2**10
        print(json.dumps([done, process_time() - began, held, peak]))

    def tell(more: int) -> None:
        nonlocal done
        done += more
        if done in ends:
            sample()

    sample()
    with open(os.devnull, "w", encoding="utf-8") as nowhere:
        mark_records(read_json_lines("-"), "jsonl", Marker(), nowhere, Sharing(workers=1), tell)


def measure(scripts: int) -> list[Sample]:
    """Play in one process, mark in another.

    Raises:
        RuntimeError: where either fails.
    """
    command = [sys.executable, "-m", "tests.benchmarks.streaming", "--scripts", str(scripts)]
    with (
        subprocess.Popen([*command, "--part", "play"], stdout=subprocess.PIPE) as player,
        subprocess.Popen(
            [*command, "--part", "mark"], stdin=player.stdout, stdout=subprocess.PIPE, text=True
        ) as marker,
    ):
        assert player.stdout is not None
        assert marker.stdout is not None
        player.stdout.close()
        found = [Sample(*json.loads(line)) for line in marker.stdout]
    if player.returncode or marker.returncode:
        raise RuntimeError(f"played with {player.returncode}, marked with {marker.returncode}")
    return found


def rows(samples: Sequence[Sample], ends: Sequence[int]) -> list[tuple[str, ...]]:
    """A row for each decade, the first one the baseline of the ratios."""
    at = {sample.scripts: sample for sample in samples}
    marks = [at[0], *(at[end] for end in ends)]
    grown = [
        (
            (after.seconds - before.seconds) / (after.scripts - before.scripts),
            after.peak - before.peak,
        )
        for before, after in pairwise(marks)
    ]
    return [
        (
            f"{sample.scripts:,}",
            f"{sample.seconds:.1f} s",
            f"{each * 1000:.2f} ms",
            _ratio(each, grown[0][0]),
            f"{sample.peak:.0f} MB",
            f"{more:.0f} MB",
            _ratio(more, grown[0][1]),
        )
        for sample, (each, more) in zip(marks[1:], grown, strict=True)
    ]


def _ratio(figure: float, baseline: float) -> str:
    return f"{figure / baseline:.2f}" if baseline else "-"


def draw(samples: Sequence[Sample], folder: Path) -> list[Path]:
    """Time and memory against the number of scripts, as SVG and PNG; the files written."""
    import matplotlib

    matplotlib.use("Agg")
    from matplotlib import pyplot

    figure, (upper, lower) = pyplot.subplots(2, 1, figsize=(8, 8), sharex=True)
    scripts = [sample.scripts for sample in samples]
    upper.plot(scripts, [sample.seconds for sample in samples], label="measured")
    upper.plot(
        [0, scripts[-1]], [0, samples[-1].seconds], "--", color="grey", label="straight to the end"
    )
    upper.set_ylabel("processor time, seconds")
    upper.legend()
    lower.plot(scripts, [sample.megabytes for sample in samples], label="held")
    lower.plot(scripts, [sample.peak for sample in samples], label="held at most")
    lower.set_ylim(bottom=0)
    lower.set_ylabel("memory, MB")
    lower.set_xlabel(f"scripts marked; a new problem every {SCRIPTS_OF_A_PROBLEM}")
    lower.legend()
    figure.suptitle("Marking a stream of invented scripts in one process")
    figure.tight_layout()
    folder.mkdir(parents=True, exist_ok=True)
    paths = [folder / f"streaming.{ending}" for ending in ("svg", "png")]
    for path in paths:
        figure.savefig(path, dpi=120)
    pyplot.close(figure)
    return paths


if __name__ == "__main__":
    main()
