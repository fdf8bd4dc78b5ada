"""How does a teacher or a program call the house from a command line? One module a group.

``--help`` must answer at once: what takes long to import (the algebra system, the typesetter, the
database) is imported inside the command that needs it.
"""

from __future__ import annotations

import signal
import sys
import threading
from collections.abc import Iterator, Sequence
from contextlib import contextmanager
from types import FrameType


def main(arguments: Sequence[str] | None = None) -> None:
    """Run one command and leave with its exit status: 0, 1 for a fault, 2 for wrong usage."""
    from itembank.cli.app import app
    from itembank.cli.faults import told

    try:
        with _ended_tidily():
            app(args=None if arguments is None else list(arguments), prog_name="itembank")
    except Exception as raised:
        message = told(raised)
        if message is None:
            raise
        print(f"itembank: {message}", file=sys.stderr)
        sys.exit(1)


@contextmanager
def _ended_tidily() -> Iterator[None]:
    """SIGTERM unwinds the work as an interrupt does: no half file and no process is left behind."""
    if threading.current_thread() is not threading.main_thread():
        yield
        return
    before = signal.signal(signal.SIGTERM, _leave)
    try:
        yield
    finally:
        signal.signal(signal.SIGTERM, before)


def _leave(number: int, frame: FrameType | None) -> None:
    sys.exit(128 + number)
