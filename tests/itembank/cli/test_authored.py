"""Does an item with its author's own routes go through the whole job?"""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from tests.itembank.cli.conftest import Call

HOUSE = Path(__file__).resolve().parents[3]
ITEM = (HOUSE / "README.md").read_text().partition("```toml\n")[2].partition("```")[0]
PICTURE = '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 9 9"><path d="M1 1h7v5h-7z"/></svg>'


@pytest.fixture
def written(tmp_path: Path) -> Path:
    (tmp_path / "berth.svg").write_text(PICTURE)
    lines = [line for line in ITEM.splitlines() if not line.startswith("#")]
    image = 'image = "berth.svg"\nimage_words = "a rectangle"\n'
    path = tmp_path / "berth.toml"
    path.write_text(image + "\n".join(lines))
    return path


def test_the_item_of_the_readme_is_added_printed_and_marked(
    call: Call, written: Path, tmp_path: Path
) -> None:
    call("bank", "create")
    added = call("item", "add", "--authored", str(written), "--by", "T-04")
    assert "AOI-0001" in added.out
    assert "does not find equivalent x = 6" in added.out

    call("item", "approve", "AOI-0001", "--by", "T-05")
    call("assessment", "make", "Y8", "AOI-0001", "--title", "Quay sums", "--by", "T-04")
    for kind, who in (("paper", ("--by", "T-04")), ("guide", ())):
        printed = call("export", kind, "Y8", "--out", str(tmp_path / f"{kind}.pdf"), *who)
        assert printed.status == 0, printed.err
    call("candidate", "enter", "Y8", "HQ-001", "HQ-002")
    (tmp_path / "s.csv").write_text(
        "candidate,question,lines,state\n"
        "HQ-001,1,x + x + 7 + x + x + 7 = 38 | x = 6 | 6 × 13 = 78,\n"
        "HQ-002,1,x = 12,\n"
    )
    handed = call("script", "hand-in", "Y8", "--csv", str(tmp_path / "s.csv"))
    assert handed.status == 0, handed.err
    call("marks", "suggest", "Y8")

    totals = [json.loads(row) for row in call("marks", "list", "Y8", "--json").out.splitlines()]
    assert [(row["candidate"], row["total"], row["referred"]) for row in totals] == [
        ("HQ-001", 3, 0),
        ("HQ-002", 0, 3),
    ]
    page = call("script", "explain", "Y8", "HQ-002", "1", "--out", str(tmp_path / "e.html"))
    assert page.status == 0, page.err


@pytest.mark.parametrize(
    ("change", "fault"),
    [
        (('kind = "M"', 'kind = "Q"'), "the kind 'Q' is none of M, A, B"),
        (("minutes = 6", 'minutes = "six"'), "minutes must be a whole number"),
        (("minutes = 6", "hours = 6"), "unknown name 'hours'"),
        (('earns = "A1"', 'earns = "A2"'), "earns 'A2', which is no point"),
        (('image_words = "a rectangle"\n', ""), "image_words is missing"),
        (("berth.svg", "quay.svg"), "image 'quay.svg' cannot be opened"),
        (("berth.svg", "quay.bmp"), "image 'quay.bmp' is none of .png"),
        (("[[routes]]", "[[routes"), "is no TOML"),
    ],
)
def test_a_fault_of_the_file_is_told_and_nothing_is_added(
    call: Call, written: Path, change: tuple[str, str], fault: str
) -> None:
    call("bank", "create")
    written.write_text(written.read_text().replace(*change))

    refused = call("item", "add", "--authored", str(written), "--by", "T-04")

    assert refused.status == 1
    assert f"{written.name}: " in refused.err
    assert fault in refused.err
    assert "0 items in all" in call("item", "list").out


def test_a_problem_that_no_topic_takes_is_shown_the_other_way_in(call: Call) -> None:
    call("bank", "create")

    assert "item add --authored FILE" in call("item", "add", "sin x = 1", "--by", "T-04").err
