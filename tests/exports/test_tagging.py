"""Do the printed documents keep PDF/UA-1 (ISO 14289-1:2014), as far as a library can check?"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from io import BytesIO
from itertools import pairwise

import pikepdf
import pytest

from exports.guide import guide_pdf
from exports.paper import paper_pdf
from exports.sample import sample_pdf
from tests.exports.invented import GUIDE, PAPER, SAMPLE
from tests.exports.pdf_facts import elements, loose_content, unmarked_content

DOCUMENTS: dict[str, Callable[[], bytes]] = {
    "paper": lambda: paper_pdf(PAPER),
    "guide": lambda: guide_pdf(GUIDE),
    "sample": lambda: sample_pdf(SAMPLE),
}


@pytest.fixture(scope="module", params=DOCUMENTS)
def document(request: pytest.FixtureRequest) -> Iterator[pikepdf.Pdf]:
    with pikepdf.open(BytesIO(DOCUMENTS[request.param]())) as opened:
        yield opened


def test_the_document_claims_part_1(document: pikepdf.Pdf) -> None:
    # ISO 14289-1, 5: the identifier in the metadata.
    with document.open_metadata() as metadata:
        assert metadata["pdfuaid:part"] == "1"


def test_the_document_is_marked_and_has_a_tag_tree(document: pikepdf.Pdf) -> None:
    # ISO 14289-1, 6.2 and 7.1.
    assert document.Root.MarkInfo.Marked is True
    assert "/StructTreeRoot" in document.Root


def test_the_language_is_named(document: pikepdf.Pdf) -> None:
    # ISO 14289-1, 7.2.
    assert str(document.Root.Lang) == "en-GB"


def test_the_title_is_named_and_shown(document: pikepdf.Pdf) -> None:
    # ISO 14289-1, 7.1: dc:title, and DisplayDocTitle true.
    with document.open_metadata() as metadata:
        assert "Linear equations, spring test" in metadata["dc:title"]
    assert document.Root.ViewerPreferences.DisplayDocTitle is True


def test_everything_painted_is_tagged_or_an_artifact(document: pikepdf.Pdf) -> None:
    # ISO 14289-1, 7.1.
    assert unmarked_content(document) == []
    assert loose_content(document) == []


def test_maths_stands_in_formulas_that_say_it_in_words(document: pikepdf.Pdf) -> None:
    # ISO 14289-1, 7.7: Formula with an alternative text; 7.3: every Figure has one.
    formulas = [element for element in elements(document) if element.S == "/Formula"]

    assert formulas
    assert all(str(element.Alt).strip() for element in formulas)
    assert "/Figure" not in {str(element.S) for element in elements(document)}


def test_headings_begin_at_one_and_skip_no_level(document: pikepdf.Pdf) -> None:
    # ISO 14289-1, 7.4.2.
    kinds = [str(element.S) for element in elements(document)]
    levels = [int(kind[2]) for kind in kinds if kind in ("/H1", "/H2", "/H3", "/H4")]

    assert levels[0] == 1
    assert all(after <= before + 1 for before, after in pairwise(levels))


def test_each_header_cell_has_a_scope(document: pikepdf.Pdf) -> None:
    # ISO 14289-1, 7.5.
    scopes = {str(e.A.Scope) for e in elements(document) if e.S == "/TH"}

    assert scopes <= {"/Column", "/Row"}
    assert "/Row" in scopes


def test_each_row_stands_in_a_table(document: pikepdf.Pdf) -> None:
    # ISO 14289-1, 7.5, with ISO 32000-1, 14.8.4.3.4: Table holds rows, rows hold cells.
    for element in elements(document):
        if element.S == "/TR":
            assert element.P.S in ("/Table", "/THead", "/TBody", "/TFoot")
        if element.S in ("/TH", "/TD"):
            assert element.P.S == "/TR"


def test_fonts_are_embedded(document: pikepdf.Pdf) -> None:
    # ISO 14289-1, 7.21.4.1.
    descriptors = [
        descendant.FontDescriptor
        for page in document.pages
        for font in page.Resources.Font.values()
        for descendant in font.DescendantFonts
    ]

    assert descriptors
    assert all("/FontFile2" in d or "/FontFile3" in d for d in descriptors)


def test_the_box_of_maths_lies_where_it_is_drawn() -> None:
    # ISO 32000-1, 14.8.5.4.3: BBox is in default user space, from the page's foot.
    document = pikepdf.open(BytesIO(paper_pdf(PAPER)))
    tops = [float(e.A.BBox[3]) for e in elements(document) if e.S == "/Formula"]

    # The first problem stands below the top margin (20 mm) and above the second.
    assert 841.89 - 20 / 25.4 * 72 > tops[0] > tops[1] > 20 / 25.4 * 72
