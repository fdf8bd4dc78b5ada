"""How do the tests call the command line? In this process, in a folder of their own."""

from __future__ import annotations

import io
from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path

import pytest

from itembank.cli import main


@dataclass(frozen=True, slots=True)
class Outcome:
    """What a call left behind: exit status, output, errors."""

    status: int
    out: str
    err: str


Call = Callable[..., Outcome]


@pytest.fixture
def call(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> Call:
    """A function that runs one command in ``tmp_path``, with the bank and the teacher set."""
    monkeypatch.chdir(tmp_path)
    monkeypatch.setenv("ITEMBANK_BANK", "department.sqlite")
    monkeypatch.setenv("ITEMBANK_BY", "T-04")
    monkeypatch.setenv("TERMINAL_WIDTH", "200")

    def run(*arguments: str, stdin: bytes = b"") -> Outcome:
        monkeypatch.setattr("sys.stdin", io.TextIOWrapper(io.BytesIO(stdin)))
        capsys.readouterr()
        with pytest.raises(SystemExit) as left:
            main(arguments)
        captured = capsys.readouterr()
        code = left.value.code
        return Outcome(code if isinstance(code, int) else 0, captured.out, captured.err)

    return run
