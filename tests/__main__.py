"""Does everything hold? ``python -m tests``: lint, format, types, the import contract, the tests.

Arguments go on to pytest (``python -m tests tests/schemes -k slip``). All checks run even where
one fails; the exit status is not 0 if any of them failed.
"""

from __future__ import annotations

import subprocess
import sys
from pathlib import Path

HOUSE = Path(__file__).resolve().parent.parent
BESIDE_PYTHON = Path(sys.executable).parent

CHECKS: tuple[tuple[str, tuple[str, ...]], ...] = (
    ("lint", (sys.executable, "-m", "ruff", "check", ".")),
    ("format", (sys.executable, "-m", "ruff", "format", "--check", ".")),
    ("types", (sys.executable, "-m", "mypy")),
    ("imports", (str(BESIDE_PYTHON / "lint-imports"),)),
)


def main(arguments: list[str]) -> int:
    """Run every check, then the tests; the number of those that failed."""
    failed = [name for name, command in CHECKS if _fails(name, command)]
    tests = (sys.executable, "-m", "pytest", "-n", "2", *arguments)
    # pytest comes last, so that its closing line is the last that is seen.
    if failed:
        print(f"== failed so far: {', '.join(failed)}", flush=True)
    return len(failed) + _fails("tests", tests)


def _fails(name: str, command: tuple[str, ...]) -> bool:
    print(f"== {name}", flush=True)
    return subprocess.run(command, cwd=HOUSE, check=False).returncode != 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
