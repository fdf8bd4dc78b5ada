"""Does the summary page tell how an assessment went, to everyone and on every screen?"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path
from shutil import which
from statistics import mean, median
from typing import Any

import pytest
from lxml import html

from exports.summary import bands, mean_of, median_of, summary_html
from schemes.cautions import CAUTIONS
from tests.exports.invented import SUMMARY

CHROMIUM = which("chromium")
FLAGS = [
    *("--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run"),
    *("--disable-background-networking", "--disable-component-update", "--disable-sync"),
]


@pytest.fixture(scope="module")
def page() -> Any:
    return html.document_fromstring(summary_html(SUMMARY))


def test_the_page_has_a_language_a_title_and_headings_in_order(page: Any) -> None:
    # WCAG 2.2, 3.1.1, 2.4.2 and 1.3.1.
    assert page.get("lang") == "en-GB"
    assert page.findtext(".//title") == "Linear equations, spring test: summary"
    assert [h.tag for h in page.iter("h1", "h2", "h3")] == ["h1", "h2", "h2", "h2"]


def test_the_page_stands_alone(page: Any) -> None:
    sources = [
        *page.xpath("//@src"),
        *page.xpath("//@href"),
        *page.xpath("//@*[name()='xlink:href']"),
    ]

    assert all(source.startswith(("data:", "#")) for source in sources)
    assert page.xpath("//script") == []


def test_cautions_and_the_banner_stand_on_the_page(page: Any) -> None:
    text = page.text_content().replace("’", "'")

    assert all(caution in text for caution in CAUTIONS)
    assert "Invented data" in text


def test_real_data_carries_no_banner() -> None:
    assert "Invented data" not in summary_html(replace(SUMMARY, invented=False))


def test_each_picture_says_in_words_what_it_shows(page: Any) -> None:
    labels = [svg.get("aria-label") for svg in page.iter("svg") if svg.get("role") == "img"]

    assert len(labels) == 3
    assert "lowest 0, highest 12, most often 9 (2 scripts)" in labels[0]
    assert "lowest question 2 M1 (14%), highest question 1 M1 (71%)" in labels[1]
    assert "wrong inverse" in labels[2]


def test_ids_are_used_once(page: Any) -> None:
    ids = page.xpath("//@id")

    assert len(ids) == len(set(ids))


def test_the_table_counts_every_script_once(page: Any) -> None:
    rows = page.xpath("//table")[0].xpath(".//tbody/tr")
    counts = {int(row[0].text): int(row[1].text) for row in rows}

    assert counts == {n: SUMMARY.totals.count(n) for n in range(13)}


def test_facilities_stand_in_the_table(page: Any) -> None:
    cells = [cell.text for cell in page.xpath("//table")[1].xpath(".//td")]

    # 5 of 7, 3 of 7, 1 of 7, 2 of 7.
    assert cells[2::3] == ["71%", "43%", "14%", "29%"]


def test_errors_are_ranked_and_those_never_seen_left_out(page: Any) -> None:
    names = [cell.text for cell in page.xpath("//table")[2].xpath(".//tbody/tr/th")]

    assert names == [SUMMARY.errors[1].name, SUMMARY.errors[0].name]


def test_header_cells_name_their_scope(page: Any) -> None:
    assert {cell.get("scope") for cell in page.iter("th")} == {"col", "row", "rowgroup"}


def test_problems_are_mathml_with_words(page: Any) -> None:
    # MathML Core, 2.1: the math element.
    maths = list(page.iter("math", "{http://www.w3.org/1998/Math/MathML}math"))

    assert maths[0].get("alttext") == "6 x minus 7 equals 23"


def test_an_assessment_without_marks_says_so() -> None:
    text = summary_html(replace(SUMMARY, totals=(), questions=(), errors=()))

    assert "No script has a total yet." in text
    assert "No mark point has been marked yet." in text
    assert "No common error was recognised." in text


@pytest.mark.parametrize("totals", [(3,), (0, 1), (1, 2, 2, 9), (4, 4, 5, 7, 8)])
def test_mean_and_median_are_those_of_the_standard_library(totals: tuple[int, ...]) -> None:
    assert mean_of(totals) == f"{mean(totals):.1f}"
    assert float(median_of(totals)) == median(totals)


@pytest.mark.parametrize("total", [1, 12, 60, 61, 100, 300])
def test_bands_are_equal_and_lose_no_script(total: int) -> None:
    totals = list(range(total + 1))
    found = bands(totals, total)

    assert sum(scripts for _, _, scripts in found) == len(totals)
    assert [first for first, _, _ in found[1:]] == [last + 1 for _, last, _ in found[:-1]]
    assert len(found) <= 61


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
    file = tmp_path / "summary.html"
    file.write_text(summary_html(SUMMARY), encoding="utf-8")
    complaints: list[str] = []
    tab = browser.new_page(viewport={"width": width, "height": 800})
    tab.on("console", lambda message: complaints.append(message.text))
    tab.on("pageerror", lambda error: complaints.append(str(error)))
    tab.route("http*://**", lambda route: (complaints.append(route.request.url), route.abort()))

    tab.goto(file.as_uri())
    tab.evaluate("document.querySelectorAll('details').forEach(d => { d.open = true })")

    assert complaints == []
    assert tab.evaluate("document.documentElement.scrollWidth") == width
    assert tab.locator("img:not([alt])").count() == 0
    assert tab.locator("svg[role=img]").count() == 3
    assert tab.locator("math").first.bounding_box()["width"] > 40
    assert all(box["width"] > 300 for box in map(_box, tab.locator("svg[role=img]").all()))
    tab.close()


def _box(picture: Any) -> Any:
    return picture.bounding_box()
