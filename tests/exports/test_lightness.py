"""Does naming the exports stay cheap? The heavy libraries load only when a document is made."""

from __future__ import annotations

import subprocess
import sys
from pathlib import Path

import pytest

HOUSE = Path(__file__).resolve().parents[2]


@pytest.mark.parametrize(
    "module", ["exports", "exports.documents", "exports.paper", "exports.guide", "exports.summary"]
)
def test_an_import_loads_no_heavy_library(module: str) -> None:
    heavy = {"weasyprint", "matplotlib", "ziamath", "jinja2", "sympy", "sqlmodel"}
    code = f"import sys, {module}; print(*sorted(set(sys.modules) & {heavy!r}))"

    ran = subprocess.run(
        [sys.executable, "-c", code], cwd=HOUSE, capture_output=True, text=True, check=True
    )

    assert ran.stdout.split() == []
