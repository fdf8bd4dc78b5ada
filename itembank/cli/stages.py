"""How far has a long job come? Its stages on the screen, each with what it made and its time."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator
from contextlib import contextmanager
from time import perf_counter
from typing import TYPE_CHECKING, TypeVar

if TYPE_CHECKING:
    from rich.console import Console
    from rich.progress import Progress, TaskID

Thing = TypeVar("Thing")


class Stages:
    """A bar for the stage at work, a line for each that is done; without a terminal, the lines."""

    def __init__(self, progress: Progress, count: int) -> None:
        self._progress = progress
        self._count = count
        self._done = 0
        self._task: TaskID | None = None

    @contextmanager
    def stage(self, name: str) -> Iterator[list[str]]:
        """One stage; what is put into the list is told of it when it is done."""
        began = perf_counter()
        self._done += 1
        told: list[str] = []
        self._task = self._progress.add_task(f"{self._done}/{self._count}  {name}", total=None)
        yield told
        self._progress.remove_task(self._task)
        line = f"{self._done:2}/{self._count}  {name}: {', '.join(told)}"
        self._progress.console.print(f"{line} ({perf_counter() - began:.1f} s)", markup=False)

    def each(self, things: Iterable[Thing], total: int) -> Iterator[Thing]:
        """The things one by one, with the bar moving on."""
        assert self._task is not None
        self._progress.update(self._task, total=total, completed=0)
        for thing in things:
            yield thing
            self._progress.advance(self._task)


@contextmanager
def stages_on(screen: Console, count: int) -> Iterator[Stages]:
    """The stages of a job of so many, shown on a screen while they last."""
    from rich.progress import BarColumn, Progress, SpinnerColumn, TextColumn

    bar = Progress(
        SpinnerColumn(),
        TextColumn("{task.description}"),
        BarColumn(),
        console=screen,
        transient=True,
    )
    with bar:
        yield Stages(bar, count)


@contextmanager
def tally_on(screen: Console, what: str, *, shown: bool) -> Iterator[Callable[[int], None]]:
    """A function that is told how many more things are done; the count stands on a terminal only.

    ``shown`` is false where the same terminal shows the things themselves.
    """
    if not (shown and screen.is_terminal):
        yield lambda more: None
        return
    from rich.progress import Progress, SpinnerColumn, TextColumn, TimeElapsedColumn

    columns = (SpinnerColumn(), TextColumn("{task.completed:,.0f} {task.description}"))
    with Progress(*columns, TimeElapsedColumn(), console=screen, transient=True) as progress:
        task = progress.add_task(what, total=None)
        yield lambda more: progress.advance(task, more)
