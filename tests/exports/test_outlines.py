"""Does a drawing stay the same when its glyphs become one outline?"""

from __future__ import annotations

import re
import subprocess
from pathlib import Path
from shutil import which

import pytest
from lxml import etree

from exports.outlines import one_path

SVG = "http://www.w3.org/2000/svg"
# A square glyph of 2 by 2 units used at twice its size, a space, and a bar below.
DRAWING = (
    f'<svg xmlns="{SVG}" width="20" height="20" viewBox="0 0 20 20">'
    '<symbol id="g" viewBox="1 1 4 4"><path d="M 1 1 L 3 1 Q 3 2 3 3 L 1 3 Z " /></symbol>'
    '<use href="#g" x="10" y="0" width="8" height="8" fill="black" />'
    '<symbol id="s" viewBox="0 0 0 4" />'
    '<use href="#s" x="5" y="0" width="0" height="8" fill="black" />'
    '<rect x="0" y="15" width="20" height="2" fill="black" /></svg>'
)


def test_a_glyph_lands_where_its_use_puts_it() -> None:
    path = etree.fromstring(one_path(DRAWING)).find(f"{{{SVG}}}path")

    # SVG 2, 8.2: the view box (1 1 4 4) fills the box at (10, 0), 8 by 8.
    found = " ".join(re.findall(r"[A-Z]|[\d.]+", path.get("d")))
    assert found == "M 10 0 L 14 0 Q 14 2 14 4 L 10 4 Z"


def test_bars_and_size_stay() -> None:
    root = etree.fromstring(one_path(DRAWING))

    assert root.get("viewBox") == "0 0 20 20"
    assert root.find(f"{{{SVG}}}rect").attrib == {"x": "0", "y": "15", "width": "20", "height": "2"}


@pytest.mark.parametrize(
    "change", [("<rect", '<line x1="0" x2="9"/><rect'), ("Q 3 2 3 3", "A 1 1 0 0 1 3 3")]
)
def test_a_drawing_with_anything_unknown_is_left_alone(change: tuple[str, str]) -> None:
    drawing = DRAWING.replace(*change)

    assert one_path(drawing) == drawing


@pytest.mark.skipif(which("pdftoppm") is None, reason="pdftoppm is not installed")
def test_a_renderer_paints_both_alike(tmp_path: Path) -> None:
    from weasyprint import HTML
    from ziamath.zmath import Math

    drawing = Math("<math><mfrac><mn>3</mn><mi>x</mi></mfrac><mo>=</mo><mn>8</mn></math>").svg()
    painted = []
    for name, svg in (("symbols", drawing), ("path", one_path(drawing))):
        page = f"<style>@page {{ size: 60mm 30mm }} svg {{ width: 40mm }}</style>{svg}"
        HTML(string=page).write_pdf(tmp_path / f"{name}.pdf")
        command = ["pdftoppm", "-gray", "-singlefile", tmp_path / f"{name}.pdf", tmp_path / name]
        subprocess.run(command, check=True)
        painted.append((tmp_path / f"{name}.pgm").read_bytes())

    unlike = [abs(a - b) > 16 for a, b in zip(*painted, strict=True)]
    assert any(byte < 64 for byte in painted[0][20:])
    assert sum(unlike) < len(unlike) // 1000
