"""What do the tags of a PDF still need? Formulas, header scopes and running lines, mended.

WeasyPrint tags a picture of maths as a figure, gives table headers no scope, and leaves the
running line of a page tagged but outside the tree. ISO 14289-1 asks for Formula (7.7), headers
with a scope or cells that name their headers (7.5), and running lines as artifacts (7.8); a box is
in points from the page's foot (ISO 32000-1, 14.8.5.4.3), where WeasyPrint counts from the top.
"""

from __future__ import annotations

from typing import Any

Elements = dict[bytes, Any]


def mend_tags(document: Any, pdf: Any) -> None:
    """Mend the tags of a finished ``pydyf.PDF`` in place; every picture in ours is maths."""
    by_reference = {bytes(thing.reference): thing for thing in pdf.objects[1:]}
    elements = {r: thing for r, thing in by_reference.items() if _is_kind(thing, "/StructElem")}
    for element in elements.values():
        if element["S"] == "/Figure":
            element["S"] = "/Formula"
            element["A"]["BBox"] = _in_points(element["A"]["BBox"], by_reference[element["Pg"]])
        elif element["S"] == "/TH":
            element["A"]["Scope"] = _scope(element, elements)
    _set_running_lines_apart(elements, by_reference)


def _is_kind(thing: Any, kind: str) -> bool:
    return isinstance(thing, dict) and thing.get("Type") == kind


def _scope(header: Any, elements: Elements) -> str:
    """``/Column`` within a table's head, ``/Row`` elsewhere."""
    ancestor = header
    while ancestor is not None and ancestor["S"] != "/Table":
        if ancestor["S"] == "/THead":
            return "/Column"
        ancestor = elements.get(ancestor["P"])
    return "/Row"


def _in_points(box: Any, page: Any) -> Any:
    """A box in CSS pixels from the top of a page as one in points from its foot."""
    left, top, right, bottom = (side * 0.75 for side in box)
    height = page["MediaBox"][3]
    return type(box)((left, height - bottom, right, height - top))


def _set_running_lines_apart(elements: Elements, by_reference: dict[bytes, Any]) -> None:
    """Turn marked content that no path from the root reaches into artifacts."""
    root = next(t for t in by_reference.values() if _is_kind(t, "/StructTreeRoot"))
    parents = by_reference[root["ParentTree"]]["Nums"]
    for reference in elements.keys() - _reached(root, elements):
        element = elements[reference]
        page = by_reference[element["Pg"]]
        for number in (kid for kid in element["K"] if isinstance(kid, int)):
            _to_artifact(by_reference[page["Contents"]].stream, number)
            owners = parents[parents.index(page["StructParents"]) + 1]
            owners[number] = "null"
        element["K"].clear()


def _reached(root: Any, elements: Elements) -> set[bytes]:
    """The references of the elements that hang on the root."""
    reached: set[bytes] = set()
    waiting = list(root["K"])
    while waiting:
        reference = waiting.pop()
        if reference in elements and reference not in reached:
            reached.add(reference)
            waiting.extend(kid for kid in elements[reference]["K"] if isinstance(kid, bytes))
    return reached


def _to_artifact(stream: list[Any], number: int) -> None:
    """Rewrite ``/Span <</MCID number>> BDC`` as ``/Artifact BMC`` in a page's operators."""
    for place, operand in enumerate(stream):
        if isinstance(operand, dict) and operand.get("MCID") == number:
            stream[place - 1 : place + 2] = [b"/Artifact", b"BMC"]
            return
