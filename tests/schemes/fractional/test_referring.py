"""What is no error of the catalogue is referred where the unknown stands below a bar."""

from __future__ import annotations

from schemes.building import default_scheme
from schemes.marking import mark_script
from schemes.verdicts import ScriptLine


def test_an_operation_that_no_error_explains_is_referred() -> None:
    marked = mark_script(default_scheme("5/x = 2/3"), [ScriptLine("4 = 9x")])
    assert marked.referred
    assert (marked.lowest, marked.highest) == (0, 1)
