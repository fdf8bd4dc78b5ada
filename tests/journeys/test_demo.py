"""Does the demo play a whole job, and does everything in it add up?"""

from __future__ import annotations

import json
import re
import subprocess
import sys
from collections import Counter, defaultdict
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path
from random import Random
from typing import Any

import pytest
from lxml import html
from sqlmodel import Session

from exports.documents import INVENTED
from itembank.bank.assessments import find_assessment, questions_of
from itembank.bank.opening import open_bank, reading
from itembank.bank.paging import Page
from itembank.bank.search import ItemFilter, find_items
from itembank.bank.tables import Assessment
from itembank.cli import main
from itembank.cli.demo import BANK, FILES, GUIDE, MARKS, PAPER, SAMPLE, SCRIPTS, SUMMARY
from itembank.cli.marker import Marker
from itembank.topics import topics_by_name
from schemes.candidates import list_candidates
from schemes.cautions import CAUTIONS
from schemes.moderation.sampling import find_sample
from schemes.standing import list_marks, totals
from tests.exports.pdf_facts import page_texts


@dataclass(frozen=True, slots=True)
class Played:
    """A demo that was played once for all tests: its folder and what stood on the screen."""

    folder: Path
    screen: str

    def records(self, name: str) -> list[dict[str, Any]]:
        return [json.loads(line) for line in (self.folder / name).read_text().splitlines()]

    def text(self, name: str) -> str:
        return " ".join(page_texts((self.folder / name).read_bytes())).replace("’", "'")


@pytest.fixture(scope="module")
def played(tmp_path_factory: pytest.TempPathFactory) -> Played:
    folder = tmp_path_factory.mktemp("harbour") / "demo"
    done = subprocess.run(
        [sys.executable, "-m", "itembank.cli", "demo", "--out", str(folder), "--seed", "4"],
        capture_output=True,
        text=True,
        check=False,
    )
    assert done.returncode == 0, done.stderr
    return Played(folder, done.stdout)


@pytest.fixture
def bank(played: Played) -> Iterator[Session]:
    engine = open_bank(str(played.folder / BANK))
    with reading(engine) as session:
        yield session
    engine.dispose()


@pytest.fixture
def assessment(bank: Session) -> Assessment:
    return find_assessment(bank, "HQ-ALG-1")


def test_the_folder_holds_what_it_says_and_nothing_else_is_left(played: Played) -> None:
    assert {path.name for path in played.folder.iterdir()} == set(FILES)
    assert [path.name for path in played.folder.parent.iterdir()] == ["demo"]
    for name in FILES:
        assert name in played.screen
        assert name in (played.folder / "README.txt").read_text()


def test_progress_and_cautions_stand_on_the_screen(played: Played) -> None:
    assert [f"{n}/9" in played.screen for n in range(1, 10)] == [True] * 9
    assert INVENTED in played.screen
    assert all(caution in played.screen for caution in CAUTIONS)


def test_the_bank_holds_reviewed_items_of_every_pattern(bank: Session) -> None:
    every = find_items(bank, ItemFilter(), Page(1, 1000))
    approved = find_items(bank, ItemFilter(state="approved"), Page(1, 1000))
    families = {
        (topic.name, family.name)
        for topic in topics_by_name().values()
        for family in topic.families
    }

    assert {(row.topic, row.tags[0]) for row in every.rows} == families
    assert approved.total >= 100
    assert len({(row.topic, row.problem) for row in every.rows}) == every.total


def test_ninety_candidates_are_entered_by_code(bank: Session, assessment: Assessment) -> None:
    rows = list_candidates(bank, assessment, Page(1, 100)).rows

    assert [row.code for row in rows] == [f"HQ-{n:03d}" for n in range(1, 91)]
    assert {str(row.attendance) for row in rows} == {"present", "absent", "withdrawn"}
    assert any("25% extra time" in row.arrangements for row in rows)


def test_paper_and_guide_print_the_marks_of_the_bank(
    played: Played, bank: Session, assessment: Assessment
) -> None:
    questions = questions_of(bank, assessment)
    marks = [one.item.marks for one in questions]
    paper, guide = played.text(PAPER), played.text(GUIDE)

    assert assessment.frozen
    assert len(questions) == 12
    assert sum(marks) == assessment.total
    assert f"Total: {assessment.total} marks" in paper
    assert [int(n) for n in re.findall(r"\((\d+) marks?\)", paper)] == marks
    assert f"12 questions, {assessment.total} marks" in guide
    assert guide.count("Common errors and what each would earn") == 12
    assert all(caution in guide for caution in CAUTIONS)


def test_totals_agree_between_bank_file_page_and_screen(
    played: Played, bank: Session, assessment: Assessment
) -> None:
    in_bank = {
        row.candidate: row.total for row in totals(bank, assessment) if row.total is not None
    }
    page = html.fromstring((played.folder / SUMMARY).read_text())
    distribution, facility = page.xpath("//details/table | //details/div/table")[:2]
    on_page = {
        int(row.xpath("th")[0].text): int(row.xpath("td")[0].text)
        for row in distribution.xpath(".//tbody/tr")
    }
    earned = sum(int(row.xpath("td")[0].text) for row in facility.xpath(".//tr[td]"))
    special = sum(row["awarded"] for row in played.records(MARKS) if row["point"] == "SC")

    assert _totals_of_file(played.records(MARKS)) == in_bank
    assert {mark: n for mark, n in on_page.items() if n} == Counter(in_bank.values())
    assert earned + special == sum(in_bank.values())
    assert f"{len(in_bank)} totals out of {assessment.total}" in played.screen


def _totals_of_file(rows: list[dict[str, Any]]) -> dict[str, int]:
    """Totals by candidate; a special mark counts in place of the points, which stand at 0."""
    found: dict[str, int] = defaultdict(int)
    for row in rows:
        if row["awarded"] is not None:
            found[row["candidate"]] += row["awarded"]
    return dict(found)


def test_the_suggestions_are_what_the_engine_says_of_the_scripts_in_the_file(
    played: Played, bank: Session, assessment: Assessment
) -> None:
    marker = Marker()
    suggested: dict[str, dict[str, int]] = defaultdict(dict)
    for award in _every_mark(bank, assessment):
        if award.marker == "engine" and award.point != "SC":
            suggested[f"{award.candidate}/{award.question}"][award.point] = award.awarded
    scripts = [one for one in played.records(SCRIPTS) if one["id"] in suggested][::25]

    assert len(scripts) >= 30
    for script in scripts:
        answer = marker.answer(script)
        assert {p["point"]: p["awarded"] for p in answer["points"]} == suggested[script["id"]]


def _every_mark(bank: Session, assessment: Assessment) -> Iterator[Any]:
    first = list_marks(bank, assessment, Page(1, 1000))
    for number in range(1, first.pages + 1):
        yield from list_marks(bank, assessment, Page(number, 1000)).rows


def test_marks_are_suggested_taken_and_overruled_with_reasons(
    played: Played, bank: Session, assessment: Assessment
) -> None:
    standing = Counter(row["standing"].removesuffix(", referred") for row in played.records(MARKS))
    overruled = [row for row in _every_mark(bank, assessment) if row.status == "overruled"]

    assert {"suggested", "taken", "overruled", "recorded", "no response"} <= set(standing)
    assert len(overruled) == standing["overruled"] > 0
    assert all(row.reason and row.role == "teacher" for row in overruled)


def test_the_sample_is_the_one_that_its_number_draws(
    played: Played, bank: Session, assessment: Assessment
) -> None:
    drawn = find_sample(bank, assessment)
    handed_in = sorted(
        {row["candidate"] for row in played.records(MARKS) if row["standing"] != "no response"}
    )
    text = played.text(SAMPLE)

    assert list(drawn.candidates) == Random(drawn.seed).sample(handed_in, 6)
    assert [code in text for code in drawn.candidates] == [True] * 6
    assert "simple random" in text
    assert INVENTED in text


def test_a_folder_with_other_files_is_refused_and_left_as_it_is(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    (tmp_path / "reports.txt").write_text("of the term")

    with pytest.raises(SystemExit) as left:
        main(["demo", "--out", str(tmp_path)])

    assert left.value.code == 1
    assert "reports.txt" in capsys.readouterr().err
    assert [path.name for path in tmp_path.iterdir()] == ["reports.txt"]
