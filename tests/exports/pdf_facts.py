"""What does a finished PDF hold? Small readers over pypdf and pikepdf."""

from __future__ import annotations

import re
from collections.abc import Iterator
from io import BytesIO
from typing import Any

import pikepdf
from pypdf import PdfReader


def page_texts(data: bytes) -> list[str]:
    """The text of each page, with runs of white space as one space."""
    reader = PdfReader(BytesIO(data))
    return [re.sub(r"\s+", " ", page.extract_text()) for page in reader.pages]


def elements(document: pikepdf.Pdf) -> Iterator[Any]:
    """Every structure element of the tag tree, in reading order."""
    waiting = list(reversed(list(document.Root.StructTreeRoot.K)))
    while waiting:
        element = waiting.pop()
        if isinstance(element, pikepdf.Dictionary) and "/S" in element:
            yield element
            kids = element.get("/K", pikepdf.Array())
            waiting.extend(reversed(list(kids if isinstance(kids, pikepdf.Array) else [kids])))


def alternative_texts(data: bytes) -> list[str]:
    """What a screen reader says for each piece of maths."""
    document = pikepdf.open(BytesIO(data))
    return [str(e.Alt) for e in elements(document) if e.S == "/Formula"]


def unmarked_content(document: pikepdf.Pdf) -> list[str]:
    """Operators that paint outside both tagged content and artifacts."""
    painting = {"Tj", "TJ", "'", '"', "S", "s", "f", "F", "f*", "B", "B*", "b", "b*", "Do", "sh"}
    found = []
    for page in document.pages:
        depth = 0
        for _, operator in pikepdf.parse_content_stream(page):
            name = str(operator)
            depth += {"BDC": 1, "BMC": 1, "EMC": -1}.get(name, 0)
            if name in painting and depth == 0:
                found.append(name)
    return found


def loose_content(document: pikepdf.Pdf) -> list[int]:
    """Numbers of marked content that no structure element holds, page by page."""
    held = {
        (element.Pg.objgen, int(kid))
        for element in elements(document)
        for kid in (element.K if isinstance(element.get("/K"), pikepdf.Array) else [])
        if isinstance(kid, int)
    }
    marked = set()
    for page in document.pages:
        for operands, operator in pikepdf.parse_content_stream(page):
            if str(operator) == "BDC":
                marked.add((page.objgen, int(operands[1].MCID)))
    return sorted(number for place, number in marked - held)


def ruled_spaces(data: bytes) -> list[tuple[int, float, float]]:
    """Every ruled space as (page, top, height), in mm from the page's top; rules are a pattern."""
    found = []
    document = pikepdf.open(BytesIO(data))
    for number, page in enumerate(document.pages, 1):
        ruling = False
        for operands, operator in pikepdf.parse_content_stream(page):
            if str(operator) == "scn":
                ruling = isinstance(operands[0], pikepdf.Name)
            elif str(operator) == "re" and ruling:
                _, top, _, height = (float(operand) * 25.4 / 96 for operand in operands)
                found.append((number, top, height))
                ruling = False
    return found
