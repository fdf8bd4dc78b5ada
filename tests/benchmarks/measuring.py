"""How long does a piece of work take from a cold start, and how much memory does a program take?"""

from __future__ import annotations

import gc
import json
import subprocess
import sys
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from time import perf_counter

from itembank.cli.long_runs import long_run

OURS = ("itembank", "schemes", "exports")

_MEASURED = """
import json, resource, subprocess, sys, time
began = time.perf_counter()
done = subprocess.run(sys.argv[1:], stdout=subprocess.DEVNULL)
seconds = time.perf_counter() - began
peak = resource.getrusage(resource.RUSAGE_CHILDREN).ru_maxrss
print(json.dumps({"seconds": seconds, "kilobytes": peak, "status": done.returncode}))
"""


@dataclass(frozen=True, slots=True)
class Run:
    """One run of a program: ``seconds`` from start to end, ``megabytes`` of memory at its peak."""

    seconds: float
    megabytes: float


def best(work: Callable[[], object], repeats: int) -> float:
    """The shortest of several runs in seconds, each with nothing remembered, ours or SymPy's."""
    found = []
    for _ in range(repeats):
        forget()
        with long_run():
            began = perf_counter()
            work()
            found.append(perf_counter() - began)
    return min(found)


def forget() -> None:
    """Empty every memory of ours and SymPy's own, and collect what is left over."""
    from sympy.core.cache import clear_cache

    clear_cache()
    for name, module in list(sys.modules.items()):
        if name.partition(".")[0] in OURS:
            for thing in list(vars(module).values()):
                if hasattr(thing, "cache_clear"):
                    thing.cache_clear()
    gc.collect()


def run(arguments: Sequence[str]) -> Run:
    """Run a module of Python's path as a program of its own (``["itembank.cli", "demo", ...]``).

    Raises:
        RuntimeError: where it fails.
    """
    command = [sys.executable, "-c", _MEASURED, sys.executable, "-m", *arguments]
    done = subprocess.run(command, capture_output=True, text=True, check=True)
    found = json.loads(done.stdout)
    if found["status"]:
        raise RuntimeError(f"{' '.join(arguments)}: exit status {found['status']}\n{done.stderr}")
    return Run(found["seconds"], found["kilobytes"] / 1024)
