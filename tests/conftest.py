"""What holds for every test? Skips that count as failures where asked, and a steady hypothesis."""

from __future__ import annotations

import os
from collections.abc import Iterator

import pytest
from hypothesis import settings

# Runs are the same every time and never fail for a slow machine; more examples on demand:
# ITEMBANK_EXAMPLES=2000 python -m pytest ...
settings.register_profile(
    "house",
    deadline=None,
    derandomize=True,
    max_examples=int(os.environ.get("ITEMBANK_EXAMPLES", "100")),
)
settings.load_profile("house")

# CI installs everything, so that nothing there has a reason to be left out.
NO_SKIPS = os.environ.get("ITEMBANK_NO_SKIPS") == "1"


@pytest.hookimpl(wrapper=True)
def pytest_runtest_makereport(
    item: pytest.Item, call: pytest.CallInfo[None]
) -> Iterator[None] | pytest.TestReport:
    """Turn a skipped test into a failed one where skips are not allowed."""
    report: pytest.TestReport = yield
    if NO_SKIPS and report.skipped and not hasattr(report, "wasxfail"):
        report.outcome = "failed"
        report.longrepr = f"skipped, which ITEMBANK_NO_SKIPS=1 forbids: {report.longrepr}"
    return report


@pytest.hookimpl(wrapper=True)
def pytest_make_collect_report(
    collector: pytest.Collector,
) -> Iterator[None] | pytest.CollectReport:
    """The same for a whole module that is skipped."""
    report: pytest.CollectReport = yield
    if NO_SKIPS and report.skipped:
        report.outcome = "failed"
        report.longrepr = f"skipped, which ITEMBANK_NO_SKIPS=1 forbids: {report.longrepr}"
    return report
