"""Is plain text set as a printer would set it, and nothing but text?"""

from __future__ import annotations

import pytest

from exports.rendering import counted, environment


@pytest.mark.parametrize(
    ("typed", "printed"),
    [
        ("divide both sides by -2", "divide both sides by −2"),
        ("divide both sides by (-2)", "divide both sides by (−2)"),
        ("candidate HQ-001 on 2026-05-14", "candidate HQ-001 on 2026-05-14"),
        ("the pupil's own well-kept line", "the pupil’s own well-kept line"),
        ("<b>3 & 4</b>", "&lt;b&gt;3 &amp; 4&lt;/b&gt;"),
    ],
)
def test_text_is_escaped_and_typographic(typed: str, printed: str) -> None:
    assert environment().from_string("{{ text }}").render(text=typed) == printed


@pytest.mark.parametrize("line", ["x = = 6 ??", "<script>", "6x - 7 = = "])
def test_an_unreadable_line_stays_as_typed_and_is_escaped(line: str) -> None:
    template = environment().from_string("{{ line|maths }} {{ line|mathml }}")

    assert template.render(line=line).count('class="typed"') == 2
    assert "<script>" not in template.render(line=line)


def test_one_is_counted_in_the_singular() -> None:
    assert [counted(n, "mark") for n in (0, 1, 2)] == ["0 marks", "1 mark", "2 marks"]
