"""Does ``--help`` answer at once and read well?"""

from __future__ import annotations

import subprocess
import sys

import pytest

from tests.itembank.cli.conftest import Call

SLOW = (
    *("sympy", "weasyprint", "matplotlib", "sqlmodel", "sqlalchemy", "alembic", "ziamath"),
    *("joblib", "distributed"),
)

EVERY_HELP = """
import sys
from itembank.cli import main

calls = [[]]
while calls:
    call = calls.pop()
    try:
        main([*call, "--help"])
    except SystemExit as left:
        assert left.code == 0, call
    if not call:
        from itembank.cli.app import app
        import typer
        group = typer.main.get_command(app)
        for name, command in group.commands.items():
            calls.append([name])
            calls += [[name, part] for part in getattr(command, "commands", ())]
print("LOADED", [name for name in SLOW if name in sys.modules])
"""


def test_help_of_every_command_loads_nothing_slow() -> None:
    done = subprocess.run(
        [sys.executable, "-c", f"SLOW = {SLOW!r}\n{EVERY_HELP}"],
        capture_output=True,
        text=True,
        check=False,
    )

    assert done.returncode == 0, done.stderr
    assert done.stdout.count("Usage: itembank") > 20
    assert done.stdout.endswith("LOADED []\n")


def test_the_check_itself_sees_what_is_loaded() -> None:
    done = subprocess.run(
        [sys.executable, "-c", "import sqlmodel, sys; print('sqlmodel' in sys.modules)"],
        capture_output=True,
        text=True,
        check=True,
    )

    assert done.stdout == "True\n"


def test_help_opens_with_the_job_and_the_cautions(call: Call) -> None:
    outcome = call("--help")

    assert outcome.status == 0
    text = " ".join(outcome.out.split())
    assert "An item bank for a school mathematics department" in text
    assert "a teacher decides every one" in text


@pytest.mark.parametrize(
    "arguments",
    [
        pytest.param(("sovle", "x = 1"), id="no such command"),
        pytest.param(("solve",), id="nothing to solve"),
        pytest.param(("solve", "x = 1", "--jsonl", "-"), id="two things to solve"),
        pytest.param(("solve", "--jsno"), id="a mistyped option"),
        pytest.param(("solve", "x = 1", "y = 2"), id="two problems"),
        pytest.param(("scheme", "show"), id="no problem"),
        pytest.param(("mark", "--jsonl", "-", "--csv", "-"), id="two files"),
        pytest.param(("mark", "x = 1", "--csv", "-"), id="a script and a table"),
        pytest.param(("item", "show"), id="no item"),
        pytest.param(("marks", "record", "A1", "HQ-001"), id="no question"),
        pytest.param(("demo",), id="no folder"),
    ],
)
def test_wrong_usage_leaves_with_status_2(call: Call, arguments: tuple[str, ...]) -> None:
    outcome = call(*arguments)

    assert outcome.status == 2
    assert outcome.out == ""
    assert "Usage: itembank" in outcome.err
