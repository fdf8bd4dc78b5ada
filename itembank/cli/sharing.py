"""Who does a long piece of work? This process, every core, or a cluster; results come in order.

Records are read and handed out in bounded batches, so that memory does not grow with their number,
and what is made of them does not depend on who made it. Processes beside this one end with it.
"""

from __future__ import annotations

import hashlib
import os
import signal
import threading
import time
from collections.abc import Callable, Generator, Iterable, Iterator, Sequence
from contextlib import contextmanager
from dataclasses import dataclass
from functools import lru_cache
from itertools import chain, islice
from pathlib import Path
from typing import Any, TypeVar
from urllib.parse import urlsplit

import itembank
from itembank.cli.faults import Fault
from itembank.cli.long_runs import look_seldom
from itembank.cli.streams import Incoming

PATIENCE = 1.5  # seconds of work here before more processes are worth their start
FEW = 500  # records that must still follow then
BATCH = 32  # records handed out in one go
BATCH_SIZE = 1_000_000  # a batch ends where it holds so much text
BATCHES_AHEAD = 16  # for each worker: handed out, not yet written
WAIT_FOR_CLUSTER = 20  # seconds

Made = TypeVar("Made")
Work = Callable[[Sequence[Incoming]], list[Made]]
Batch = list[Incoming]


@dataclass(frozen=True, slots=True)
class Sharing:
    """How work is shared: so many processes (None: as is sensible), or a cluster's address."""

    workers: int | None = None
    cluster: str | None = None


def made_in_order(
    incoming: Iterable[Incoming], work: Work[Made], sharing: Sharing
) -> Generator[list[Made]]:
    """What ``work`` makes of the records, in their order, some at a time.

    ``work`` must be one that can be sent to another process. Unless told how many workers,
    records are done here for a while, one by one, before other processes are started for the rest.

    Raises:
        Fault: where the cluster cannot be used, or a worker ends before its work is done.
    """
    records = iter(incoming)
    if sharing.cluster is not None:
        with _cluster(sharing.cluster) as cores:
            yield from _shared(_batches(records), work, cores)
        return
    workers = sharing.workers
    if workers is None:
        yield from _at_first(records, work)
        ahead = list(islice(records, FEW))
        records = chain(ahead, records)
        workers = _cores() if len(ahead) == FEW else 1
    if workers == 1:
        yield from _here(records, work)
        return
    with _processes(workers):
        yield from _shared(_batches(records), work, workers)


def _here(records: Iterable[Incoming], work: Work[Made]) -> Iterator[list[Made]]:
    for one in records:
        yield work([one])


def _at_first(records: Iterator[Incoming], work: Work[Made]) -> Iterator[list[Made]]:
    began = time.monotonic()
    while time.monotonic() - began < PATIENCE:
        made = next(_here(records, work), None)
        if made is None:
            return
        yield made


def _batches(records: Iterator[Incoming]) -> Iterator[Batch]:
    batch: Batch = []
    size = 0
    for one in records:
        batch.append(one)
        size += one.size
        if len(batch) == BATCH or size >= BATCH_SIZE:
            yield batch
            batch, size = [], 0
    if batch:
        yield batch


def _shared(batches: Iterator[Batch], work: Work[Made], workers: int) -> Iterator[list[Made]]:
    """The batches in blocks, each read before it is handed out: faults of reading come up here."""
    from joblib import Parallel, delayed
    from joblib.externals.loky.process_executor import TerminatedWorkerError

    job = delayed(work)
    with Parallel(n_jobs=workers, batch_size=1) as pool:
        while block := list(islice(batches, workers * BATCHES_AHEAD)):
            try:
                yield from pool(job(batch) for batch in block)
            except TerminatedWorkerError as raised:
                raise Fault("a worker process ended before its work was done") from raised


def _cores() -> int:
    from joblib import cpu_count

    return int(cpu_count())


@contextmanager
def _processes(workers: int) -> Iterator[None]:
    """Processes on this machine, gone at the end however it comes."""
    from joblib import parallel_config
    from joblib.externals.loky import get_reusable_executor

    try:
        with parallel_config("loky", n_jobs=workers, initializer=_stay_with_parent):
            yield
    finally:
        get_reusable_executor(reuse=True).shutdown(wait=True, kill_workers=True)


def _stay_with_parent() -> None:
    """A worker leaves the interrupt key to its parent, and ends where the parent is gone."""
    look_seldom()
    signal.signal(signal.SIGINT, signal.SIG_IGN)
    threading.Thread(target=_end_with, args=(os.getppid(),), daemon=True).start()


def _end_with(parent: int) -> None:
    while os.getppid() == parent:
        time.sleep(1)
    os._exit(1)


@contextmanager
def _cluster(address: str) -> Iterator[int]:
    """The cores of a cluster that runs this very program."""
    try:
        from distributed import Client
    except ImportError as raised:
        raise Fault("--cluster needs more: pip install 'itembank[cluster]'") from raised
    from joblib import parallel_config

    if not _is_address(address):
        raise Fault(f"cluster {address}: not an address such as tcp://10.0.0.5:8786")
    try:
        client = Client(address, timeout=WAIT_FOR_CLUSTER, set_as_default=False)  # type: ignore[no-untyped-call]
    except OSError as raised:
        raise Fault(f"cluster {address}: no scheduler answers there: {raised}") from raised
    with client:
        cores = _checked_cores(client, address)
        with parallel_config("dask", client=client):
            yield cores


def _is_address(text: str) -> bool:
    try:
        found = urlsplit(text)
        return bool(found.scheme and found.hostname and found.port)
    except ValueError:
        return False


def _checked_cores(client: Any, address: str) -> int:
    """How many cores there are. Raises :class:`Fault` unless every worker has the same program."""
    try:
        client.wait_for_workers(1, timeout=WAIT_FOR_CLUSTER)
        programs = client.run(program)
    except TimeoutError as raised:
        raise Fault(f"cluster {address}: it has no workers") from raised
    except ImportError as raised:
        raise Fault(f"cluster {address}: a worker has no itembank: {raised}") from raised
    others = sorted(worker for worker, found in programs.items() if found != program())
    if others:
        raise Fault(
            f"cluster {address}: another version of itembank than here on {', '.join(others)}"
        )
    return sum(client.ncores().values())


@lru_cache(maxsize=1)
def program() -> str:
    """A digest of the program's source: the same program gives the same marks."""
    home = Path(itembank.__file__).parent
    found = hashlib.sha256()
    for package in (home, home.parent / "schemes", home.parent / "exports"):
        for path in sorted(package.rglob("*.py")):
            found.update(path.relative_to(home.parent).as_posix().encode() + b"\0")
            found.update(path.read_bytes() + b"\0")
    return found.hexdigest()
