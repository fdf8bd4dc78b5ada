"""Are the marks the same whoever makes them, and is nothing left behind when the work is ended?"""

from __future__ import annotations

import json
import os
import signal
import subprocess
import sys
import time
from collections.abc import Iterator, Sequence
from pathlib import Path
from random import Random

import psutil
import pytest
from distributed import Client, LocalCluster

from itembank.cli import sharing
from itembank.cli.faults import Fault
from itembank.cli.sharing import BATCH, FEW, Sharing, made_in_order
from itembank.cli.streams import Incoming
from schemes.simulating import simulate
from tests.benchmarks.workload import ERRING, problems
from tests.itembank.cli.conftest import Call

HOUSE = Path(__file__).resolve().parents[3]


def scripts(count: int) -> str:
    """Invented scripts as JSON lines; some of the lines cannot be marked, some cannot be read."""
    random = Random("shared")
    few = problems(30)
    lines = []
    for number in range(count):
        script = simulate(random.choice(few), random, ERRING)
        record = {
            "id": number,
            "problem": script.problem if number % 41 else "4x + = 3",
            "lines": [line.text for line in script.lines],
            "show_working": number % 2 == 0,
        }
        lines.append(json.dumps(record) if number % 53 else f'{{"id": {number} and no more')
    return "\n".join(lines) + "\n"


def table(count: int) -> str:
    """Rows of a table; the last one says something that cannot be read."""
    rows = [f"{n},{n % 7 + 2}x + 3 = 17,{n % 7 + 2}x = 14 | x = 2" for n in range(count)]
    return "\n".join(["id,problem,lines", *rows, '9,"x = 1",']) + "\n"


@pytest.fixture(scope="module")
def cluster() -> Iterator[str]:
    """The address of a cluster of two processes on this machine."""
    with LocalCluster(
        n_workers=2, threads_per_worker=1, processes=True, dashboard_address=None
    ) as found:
        yield found.scheduler_address


@pytest.mark.parametrize(("option", "content"), [("--jsonl", scripts(400)), ("--csv", table(400))])
def test_one_process_several_and_a_cluster_write_the_same_bytes(
    call: Call, tmp_path: Path, cluster: str, option: str, content: str
) -> None:
    (tmp_path / "scripts").write_text(content)
    ways = {
        "one": ("--workers", "1"),
        "several": ("--workers", "2"),
        "cluster": ("--cluster", cluster),
    }

    statuses = {
        name: call("mark", option, "scripts", "--out", name, *way).status
        for name, way in ways.items()
    }

    assert statuses == dict.fromkeys(ways, int(option == "--jsonl"))
    one, *others = ((tmp_path / name).read_bytes() for name in ways)
    assert others == [one, one]
    assert len(one.splitlines()) == 400 + 2 * (option == "--csv")


def test_the_scheme_s_author_is_heeded_by_every_worker(call: Call, tmp_path: Path) -> None:
    scheme = json.loads(call("scheme", "4x + 3 = 17", "--json").out)
    scheme["points"][1]["value"], scheme["total"] = 5, 6
    (tmp_path / "schemes.jsonl").write_text(json.dumps(scheme) + "\n")
    record = {"problem": "4x + 3 = 17", "lines": ["4x = 14", "x = 3.5"]}
    lines = [json.dumps({"id": number, **record}) for number in range(3 * BATCH)]
    (tmp_path / "scripts.jsonl").write_text("\n".join(lines))

    outcome = call(
        *("mark", "--jsonl", "scripts.jsonl", "--schemes", "schemes.jsonl", "--workers", "2")
    )

    answers = [json.loads(line) for line in outcome.out.splitlines()]
    assert [answer["id"] for answer in answers] == list(range(3 * BATCH))
    assert {answer["total"] for answer in answers} == {6}


def processes_that_marked(batch: Sequence[Incoming]) -> list[int]:
    """For each record, the process that did it."""
    return [os.getpid()] * len(batch)


def _processes(count: int, how: Sharing) -> list[int]:
    incoming = (Incoming(f"line {number}", {}) for number in range(count))
    return [one for some in made_in_order(incoming, processes_that_marked, how) for one in some]


def test_work_that_is_soon_done_starts_no_other_process(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(sharing, "_cores", lambda: 2)
    monkeypatch.setattr(sharing, "PATIENCE", 3600)

    assert _processes(3 * FEW, Sharing()) == [os.getpid()] * 3 * FEW


def test_what_is_left_of_long_work_is_not_shared_where_it_is_little(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    monkeypatch.setattr(sharing, "_cores", lambda: 2)
    monkeypatch.setattr(sharing, "PATIENCE", 0)

    assert _processes(FEW - 1, Sharing()) == [os.getpid()] * (FEW - 1)


def test_long_work_is_shared_by_as_many_processes_as_there_are_cores(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    monkeypatch.setattr(sharing, "_cores", lambda: 2)
    monkeypatch.setattr(sharing, "PATIENCE", 0)

    found = _processes(FEW + 10 * BATCH, Sharing())

    assert os.getpid() not in found
    assert len(set(found)) <= 2
    assert len(found) == FEW + 10 * BATCH


def test_records_are_read_no_further_ahead_than_the_bound() -> None:
    read = 0

    def incoming() -> Iterator[Incoming]:
        nonlocal read
        for number in range(100_000):
            read += 1
            yield Incoming(f"line {number}", {})

    made = made_in_order(incoming(), processes_that_marked, Sharing(workers=2))
    next(made)
    made.close()

    assert read == 2 * sharing.BATCHES_AHEAD * BATCH


def test_a_batch_ends_where_it_holds_much_text() -> None:
    large = [Incoming(f"line {number}", {}, size=600_000) for number in range(5)]

    assert [len(batch) for batch in sharing._batches(iter(large))] == [2, 2, 1]


def die(batch: Sequence[Incoming]) -> list[int]:
    """A worker that is killed, as a machine short of memory kills one."""
    os.kill(os.getpid(), signal.SIGKILL)
    return []


def test_a_worker_that_is_killed_is_a_fault_that_says_so() -> None:
    with pytest.raises(Fault, match="a worker process ended before its work was done"):
        list(made_in_order([Incoming("line 1", {})], die, Sharing(workers=2)))


@pytest.mark.parametrize("address", ["here", "tcp://127.0.0.1", "tcp://127.0.0.1:port"])
def test_what_is_no_address_is_a_fault_that_names_it(address: str) -> None:
    with pytest.raises(Fault, match=f"cluster {address}: not an address"):
        _processes(1, Sharing(cluster=address))


def test_an_address_where_nothing_answers_is_a_fault(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    monkeypatch.setattr(sharing, "WAIT_FOR_CLUSTER", 1)

    with pytest.raises(Fault, match="no scheduler answers there"):
        _processes(1, Sharing(cluster="tcp://127.0.0.1:9"))


def test_a_cluster_that_runs_another_version_is_refused(
    cluster: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(sharing, "program", lambda: f"the program of {os.getpid()}")
    with Client(cluster, set_as_default=False) as client:
        workers = list(client.scheduler_info()["workers"])

    with pytest.raises(Fault, match="another version of itembank than here") as caught:
        _processes(1, Sharing(cluster=cluster))

    assert all(worker in str(caught.value) for worker in workers)


@pytest.mark.parametrize(
    "arguments",
    [
        pytest.param(("x = 1", "--workers", "2"), id="workers for one script"),
        pytest.param(("--jsonl", "-", "--workers", "0"), id="no worker"),
        pytest.param(
            ("--jsonl", "-", "--workers", "2", "--cluster", "tcp://127.0.0.1:9"), id="both"
        ),
    ],
)
def test_what_cannot_be_shared_is_wrong_usage(call: Call, arguments: tuple[str, ...]) -> None:
    assert call("mark", *arguments).status == 2


@pytest.mark.parametrize("number", [signal.SIGINT, signal.SIGTERM, signal.SIGKILL])
def test_work_that_is_ended_leaves_no_process_and_no_half_file(
    tmp_path: Path, number: signal.Signals
) -> None:
    (tmp_path / "scripts.jsonl").write_text(scripts(400) * 20)
    program = subprocess.Popen(
        [
            *(sys.executable, "-m", "itembank.cli", "mark", "--jsonl", "scripts.jsonl"),
            *("--workers", "2", "--out", "marks.jsonl"),
        ],
        cwd=tmp_path,
        env={**os.environ, "PYTHONPATH": str(HOUSE)},
        stderr=subprocess.PIPE,
    )
    with program:
        parent = psutil.Process(program.pid)
        while not any(path.stat().st_size for path in tmp_path.glob(".marks*")):
            assert program.poll() is None
            time.sleep(0.05)
        children = parent.children(recursive=True)
        program.send_signal(number)
        assert program.wait(timeout=60) != 0
        _, alive = psutil.wait_procs(children, timeout=30)
        assert program.stderr is not None
        errors = program.stderr.read().decode()

    assert len(children) >= 2
    assert alive == []
    assert not (tmp_path / "marks.jsonl").exists()
    assert "Traceback" not in errors
    if number != signal.SIGKILL:  # nothing can clear up after that
        assert [path.name for path in tmp_path.iterdir()] == ["scripts.jsonl"]
