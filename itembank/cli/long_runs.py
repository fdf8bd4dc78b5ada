"""How does a run over many records spend its time on them? It looks for garbage seldom."""

from __future__ import annotations

import gc
from collections.abc import Iterator
from contextlib import contextmanager

SELDOM = 500_000  # things made and still held since Python last looked for rings of garbage


@contextmanager
def long_run() -> Iterator[None]:
    """A block that makes much plain data that stays, and hardly a ring of it.

    Python frees what nothing points to at once; only rings need looking for, and looking through
    everything that is remembered for them took a fifth of the time of marking.
    """
    before = gc.get_threshold()
    look_seldom()
    try:
        yield
    finally:
        gc.set_threshold(*before)
        gc.unfreeze()


def look_seldom() -> None:
    """For the rest of this process: what stands now is left out, the rest looked through seldom."""
    gc.freeze()
    gc.set_threshold(SELDOM, 20, 100)
