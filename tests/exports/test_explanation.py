"""Does the explanation say why a script has its marks, to everyone and on every screen?"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from pathlib import Path
from shutil import which
from typing import Any

import pytest
from lxml import html

from exports.explaining import Explanation, StandingMark, explanation
from exports.explanation import explanation_html, sentence
from schemes.building import default_scheme, with_settings
from schemes.cautions import CAUTIONS
from schemes.marking import mark_script
from schemes.scheme import Settings
from schemes.verdicts import ScriptLine

CHROMIUM = which("chromium")
FLAGS = [
    *("--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run"),
    *("--disable-background-networking", "--disable-component-update", "--disable-sync"),
]
STANDING = (
    StandingMark("M1", 1, 1, "T-04", "overruled, decision 3", "2026-03-02 14:10 UTC", "plain"),
    StandingMark("A1", 0, 1, "engine", "suggested", "2026-03-02 14:00 UTC", "not the value"),
)


def explained(problem: str, *lines: str, crossed: Sequence[int] = (), **more: Any) -> Explanation:
    """Invented scripts, marked by the engine."""
    scheme = default_scheme(problem)
    script = [ScriptLine(line, number in crossed) for number, line in enumerate(lines, 1)]
    marked = mark_script(scheme, script, show_working=True)
    return explanation(scheme, script, marked, show_working=True, invented=True, **more)


REFERRED = explained(
    "6x - 7 = 23",
    "6x == 30",
    "6x = 31",
    "x = 31/6",
    crossed=[1],
    instruction="Solve the equation.",
    about="HQ-007, question 1",
    standing=STANDING,
)


@pytest.fixture(scope="module")
def page() -> Any:
    return html.document_fromstring(explanation_html(REFERRED))


def text_of(doc: Explanation) -> str:
    written = html.document_fromstring(explanation_html(doc)).text_content()
    return " ".join(str(written).replace("’", "'").split())


def test_marks_stand_beside_the_lines_that_they_rest_on() -> None:
    # Conventions 7, example 8: part of the bracket multiplied, then follow through.
    doc = explained("5(x - 2) = 7", "5x - 2 = 7", "5x = 9", "x = 9/5")
    beside = [[(mark.point, mark.awarded) for mark in line.marks] for line in doc.lines]
    assert beside == [[("M1", 0)], [("M2", 1)], [("A1", 0)]]
    assert [line.seen for line in doc.lines] == [
        "A method error",
        "Follows from the candidate's own wrong line",
        "Follows from the candidate's own wrong line",
    ]
    assert doc.without_line == ()
    assert doc.total_words == "1 of 3"


def test_what_a_marks_reason_says_is_not_said_twice() -> None:
    doc = explained("5(x - 2) = 7", "5x - 2 = 7", "5x = 9", "x = 9/5")
    assert doc.lines[1].marks[0].reason == "add 2 to both sides"
    assert doc.lines[1].how == ()
    assert doc.lines[2].how == ("divide both sides by 5",)


def test_marks_that_no_line_bears_on_are_not_lost() -> None:
    doc = explained("6x - 7 = 23")
    assert [mark.point for mark in doc.without_line] == ["M1", "A1"]
    assert "There is no line of working." in text_of(doc)


def test_readings_are_listed_once_each_with_what_tells_them_apart() -> None:
    # Conventions 3.11: with the same total the readings are listed, nothing is referred.
    doc = explained("5(x - 2) = 7", "5x + 10 = 7", "5x = -3", "x = -3/5")
    (line,) = [line for line in doc.lines if line.readings]
    assert len({reading.words for reading in line.readings}) == len(line.readings) >= 2
    assert [reading.taken for reading in line.readings].count(True) == 1
    assert not line.totals_differ
    assert "about as natural, with the same total" in text_of(doc)


def test_a_question_says_line_reason_and_range() -> None:
    text = text_of(REFERRED)
    assert "Decided by a teacher Line 2: a slip, and the operation is not written" in text
    assert "The total is from 0 to 1." in text
    assert "Suggested by the engine: 0 of 2 (from 0 to 1, as the teacher decides)" in text


def test_a_question_that_a_teacher_has_answered_is_no_question_any_more() -> None:
    again = explained("6x - 7 = 23", "6x = 31")

    assert "Decided by a teacher" in text_of(REFERRED)
    assert "For a teacher to decide" not in text_of(REFERRED)
    assert "For a teacher to decide" in text_of(again)


def test_the_marks_that_stand_say_who_how_when_and_why(page: Any) -> None:
    rows = page.xpath("//table[@class='standing']/tbody/tr")
    cells = [[" ".join(cell.text_content().split()) for cell in row] for row in rows]
    assert cells[0] == [
        *("M1", "1 of 1", "T-04", "overruled, decision 3", "2026-03-02 14:10 UTC", "plain"),
    ]
    assert "In the bank: 1 of 2" in text_of(REFERRED)


def test_a_special_mark_is_told() -> None:
    text = text_of(explained("6x - 7 = 23", "x = 5"))
    assert "1 of 2 as a special case, SC B1" in text


def test_settings_that_differ_are_told() -> None:
    scheme = with_settings(default_scheme("6x = 35"), Settings(lowest_terms=True))
    lines = [ScriptLine("x = 35/6")]
    doc = explanation(scheme, lines, mark_script(scheme, lines))
    assert "fraction in lowest terms: yes" in text_of(doc)


def test_a_script_on_paper_shows_the_marks_that_stand() -> None:
    doc = explanation(default_scheme("6x - 7 = 23"), (), None, standing=STANDING, state="On paper.")
    text = text_of(doc)
    assert "On paper." in text
    assert "In the bank: 1 of 2" in text
    assert "Suggested by the engine" not in text


def test_the_page_has_a_language_a_title_and_headings_in_order(page: Any) -> None:
    # WCAG 2.2, 3.1.1, 2.4.2 and 1.3.1.
    assert page.get("lang") == "en-GB"
    assert page.findtext(".//title") == "Why these marks: HQ-007, question 1"
    headings = [heading.tag for heading in page.iter("h1", "h2", "h3")]
    assert headings == ["h1", "h2", "h2", "h2", "h2"]
    assert {cell.get("scope") for cell in page.iter("th")} == {"col", "row"}
    ids = page.xpath("//@id")
    assert len(ids) == len(set(ids))


def test_the_page_stands_alone_with_its_cautions(page: Any) -> None:
    sources = [*page.xpath("//@src"), *page.xpath("//@href")]
    assert all(source.startswith("data:") for source in sources)
    assert page.xpath("//script") == []
    text = text_of(REFERRED)
    assert all(caution in text for caution in CAUTIONS)
    assert "Invented data" in text


def test_lines_are_mathml_with_words_and_what_cannot_be_read_stays_typed(page: Any) -> None:
    # MathML Core, 2.1: the math element.
    maths = list(page.iter("math", "{http://www.w3.org/1998/Math/MathML}math"))
    assert [one.get("alttext") for one in maths] == [
        "6 x minus 7 equals 23",
        "6 x equals 30",
        "6 x equals 31",
        "x equals 31 over 6",
    ]
    unreadable = explained("6x - 7 = 23", "6x = = <b>30", "x = 5")
    assert '<span class="typed">6x = = &lt;b&gt;30</span>' in explanation_html(unreadable)


def test_a_crossed_out_line_says_so_in_words(page: Any) -> None:
    (gone,) = page.xpath("//del")
    assert gone.getparent().text_content().startswith("Crossed out: ")


@pytest.mark.parametrize(
    ("text", "shown"),
    [
        ("withheld: no method", "Withheld: no method."),
        ("x stands for n", "x stands for n."),
        ("4x is copied as 5x", "4x is copied as 5x."),
        ("Done.", "Done."),
    ],
)
def test_sentences_leave_letters_of_mathematics_alone(text: str, shown: str) -> None:
    assert sentence(text) == shown


@pytest.fixture(scope="module")
def browser() -> Iterator[Any]:
    if CHROMIUM is None:
        pytest.skip("chromium is not installed")
    from playwright.sync_api import sync_playwright

    with sync_playwright() as player:
        opened = player.chromium.launch(executable_path=CHROMIUM, args=FLAGS)
        yield opened
        opened.close()


@pytest.mark.parametrize("width", [360, 1280])
def test_a_browser_shows_the_page_whole(browser: Any, tmp_path: Path, width: int) -> None:
    file = tmp_path / "explanation.html"
    file.write_text(explanation_html(REFERRED), encoding="utf-8")
    complaints: list[str] = []
    tab = browser.new_page(viewport={"width": width, "height": 800})
    tab.on("console", lambda message: complaints.append(message.text))
    tab.on("pageerror", lambda error: complaints.append(str(error)))
    tab.route("http*://**", lambda route: (complaints.append(route.request.url), route.abort()))

    tab.goto(file.as_uri())

    assert complaints == []
    assert tab.evaluate("document.documentElement.scrollWidth") == width
    assert tab.locator("math").first.bounding_box()["width"] > 40
    # A mark's words never run over its frame, and on a wide screen it stands beside its line.
    frames = "[...document.querySelectorAll('.award')].map(e => e.scrollWidth - e.clientWidth)"
    assert max(tab.evaluate(frames)) <= 0
    line, mark = (
        tab.locator(f".line:nth-child(2) {part}").first.bounding_box()
        for part in (".written", ".award")
    )
    beside = abs(line["y"] - mark["y"]) < 40 and mark["x"] > line["x"] + 100
    assert beside == (width > 1000)
    tab.close()
