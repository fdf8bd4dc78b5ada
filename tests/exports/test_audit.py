"""Does the page of an audit say what the report says, to everyone and on every screen?"""

from __future__ import annotations

from pathlib import Path
from shutil import which
from typing import Any

import pytest
from lxml import html

from exports.audit import audit_html, by_kind, marks_of
from schemes.audit import audit
from schemes.audited import COSTS_MORE, SIMULATED, Example
from schemes.building import default_scheme
from schemes.cautions import CAUTIONS

REPORT = audit(default_scheme("4(x - 3) = 2x + 9"), scripts=0)
QUIET = audit(default_scheme("6x - 7 = 23"), scripts=0)
CHROMIUM = which("chromium")


@pytest.fixture(scope="module")
def page() -> Any:
    return html.document_fromstring(audit_html(REPORT))


def text_of(element: Any) -> str:
    return " ".join(str(element.text_content()).replace("’", "'").split())


def test_the_page_bears_the_cautions_and_says_that_it_is_simulated(page: Any) -> None:
    (cautions,) = page.xpath("//section[@class='cautions']")
    for caution in (*CAUTIONS, SIMULATED):
        assert caution.replace("’", "'") in text_of(cautions)


def test_the_page_has_a_language_a_title_and_headings_in_order(page: Any) -> None:
    # WCAG 2.2, 3.1.1, 2.4.2 and 1.3.1.
    assert page.get("lang") == "en-GB"
    assert page.findtext(".//title") == "Audit of a scheme: 4(x − 3) = 2x + 9".replace("−", "-")
    headings = [heading.tag for heading in page.iter("h1", "h2", "h3")]
    assert headings == ["h1", "h2", "h3", "h2", "h2", "h2", "h2"]


def test_the_picture_names_itself_and_its_numbers_stand_in_a_table(page: Any) -> None:
    # WCAG 2.2, 1.1.1.
    (picture,) = page.xpath("//figure//*[@role='img']")
    assert f"{len(REPORT.errors)} common errors" in picture.get("aria-label")
    rows = page.xpath("//table[@class='errors']/tbody/tr")
    assert len(rows) == len(REPORT.errors)
    for row, error in zip(rows, REPORT.errors, strict=True):
        cells = [text_of(cell) for cell in row]
        assert cells[:5] == [
            error.name,
            *(str(n) for n in (error.scripts, error.lowest, error.commonest, error.highest)),
        ]
        assert all(lost.point in cells[6] for lost in error.lost)


def test_every_alarm_stands_with_its_rules_and_an_example(page: Any) -> None:
    blocks = page.xpath("//div[@class='alarm']")
    assert len(blocks) == len(REPORT.alarms) > 0
    ordered = [alarm for _, some in by_kind(REPORT.alarms) for alarm in some]
    for block, alarm in zip(blocks, ordered, strict=True):
        said = text_of(block)
        assert alarm.about in said
        assert all(rule in said for rule in alarm.rules)
        assert alarm.example is not None
        assert len(block.xpath(".//ol/li")) == len(alarm.example.lines)


def test_alarms_are_grouped_by_kind() -> None:
    assert [kind for kind, _ in by_kind(REPORT.alarms)] == [COSTS_MORE]


def test_a_fair_scheme_says_so() -> None:
    assert "No alarm: every valid script earns full marks" in text_of(
        html.document_fromstring(audit_html(QUIET))
    )


def test_a_referred_example_shows_its_range() -> None:
    decided = Example(("x = 5",), 1, 1, 1, "M1 A0")
    referred = Example(("x = 5",), 1, 1, 2, "M1 A0")
    assert marks_of(decided, 2) == "M1 A0: 1 of 2"
    assert marks_of(referred, 2) == "M1 A0: 1 of 2, referred, from 1 to 2"


def test_the_page_needs_no_network_and_runs_no_script() -> None:
    written = audit_html(REPORT)
    page = html.document_fromstring(written)
    assert page.xpath("//script | //link[not(starts-with(@href, 'data:'))] | //img") == []
    assert "url(http" not in written


@pytest.mark.skipif(CHROMIUM is None, reason="no browser")
def test_the_page_fits_a_telephone(tmp_path: Path) -> None:
    # WCAG 2.2, 1.4.10: no scrolling in two directions at 320 CSS pixels.
    from playwright.sync_api import sync_playwright

    file = tmp_path / "audit.html"
    file.write_text(audit_html(REPORT))
    with sync_playwright() as play:
        browser = play.chromium.launch(executable_path=CHROMIUM, args=["--no-sandbox"])
        view = browser.new_page(viewport={"width": 320, "height": 800})
        view.goto(file.as_uri())
        for summary in view.locator("summary").all():
            summary.click()
        wide = view.evaluate("document.documentElement.scrollWidth")
        browser.close()
    assert wide <= 320


@pytest.mark.skipif(CHROMIUM is None, reason="no browser")
def test_a_wide_screen_shows_the_table_of_mark_points_whole(tmp_path: Path) -> None:
    from playwright.sync_api import sync_playwright

    file = tmp_path / "audit.html"
    file.write_text(audit_html(REPORT))
    with sync_playwright() as play:
        browser = play.chromium.launch(executable_path=CHROMIUM, args=["--no-sandbox"])
        view = browser.new_page(viewport={"width": 1100, "height": 800})
        view.goto(file.as_uri())
        table = view.get_by_role("region", name="Mark points")
        hidden = table.evaluate("e => e.scrollWidth - e.clientWidth")
        browser.close()
    assert hidden <= 0
