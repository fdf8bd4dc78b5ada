"""Does the measure of a stream say what it measured?"""

from __future__ import annotations

from pathlib import Path
from xml.etree import ElementTree

import pytest

from tests.benchmarks.streaming import Sample, decades, main, played, rows


def test_the_command_prints_a_row_for_each_decade_and_draws_them(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    main(["--scripts", "100", "--out", str(tmp_path / "pictures")])

    shown = capsys.readouterr().out
    assert [line.split()[0] for line in shown.splitlines() if " MB " in line] == ["1", "10", "100"]
    assert ElementTree.parse(tmp_path / "pictures" / "streaming.svg").getroot().tag.endswith("svg")
    assert (tmp_path / "pictures" / "streaming.png").read_bytes().startswith(b"\x89PNG")


def test_the_first_decade_is_the_baseline_of_the_ratios() -> None:
    samples = [
        Sample(0, 0.0, 30.0, 30.0),
        Sample(10, 1.0, 40.0, 40.0),
        Sample(100, 10.0, 45.0, 45.0),
        Sample(1000, 190.0, 45.0, 45.0),
    ]

    found = rows(samples, decades(1000))

    assert [row[3] for row in found] == ["1.00", "1.00", "2.00"]
    assert [row[6] for row in found] == ["1.00", "0.50", "0.00"]


def test_scripts_are_played_one_by_one_the_same_every_time() -> None:
    first, second = played(10**9), played(10**9)

    assert [next(first) for _ in range(3)] == [next(second) for _ in range(3)]
