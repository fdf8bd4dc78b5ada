"""Which item has an author written, problem, routes, mark points and all? A TOML file to a draft.

For problems that the engine does not solve: nothing is turned away because it is not clever
enough. Maths in the text stands between backticks, as typed everywhere else.
"""

from __future__ import annotations

import base64
import tomllib
from collections.abc import Mapping
from pathlib import Path
from typing import TYPE_CHECKING, Any

from itembank.cli.faults import Fault

if TYPE_CHECKING:
    from itembank.bank.drafts import ItemDraft
    from itembank.topics.kinds import Figure, Route

TOPIC = "any other item"
INSTRUCTION = "Answer the question."
MOST_BYTES = 1_000_000
MEDIA = {".png": "image/png", ".jpg": "image/jpeg", ".jpeg": "image/jpeg", ".svg": "image/svg+xml"}

_ITEM = {
    "text": str, "instruction": str, "answer": str, "image": str, "image_words": str,
    "code": str, "tags": list, "year_level": int, "minutes": int, "calculator": bool,
    "show_working": bool, "notes": str, "points": list, "routes": list,
}  # fmt: skip
_POINT = {
    "point": str, "kind": str, "value": int, "text": str, "depends_on": list,
    "must_be_seen": bool,
}  # fmt: skip
_ROUTE = {"name": str, "lines": list}
_LINE = {"text": str, "step": str, "earns": str, "optional": bool}


def draft_of_author(path: str) -> tuple[ItemDraft, tuple[str, ...]]:
    """The draft that a file holds, and what the engine could not confirm of its routes.

    Raises:
        Fault: every fault of the file, each with its place.
    """
    from itembank.bank.drafts import ItemDraft
    from itembank.topics.kinds import Solution, Stage
    from schemes.authored import route_checks
    from schemes.building import SchemeFaults, checked
    from schemes.scheme import MarkPoint, Scheme, to_record

    record = _read(path)
    faults = _form_faults(record)
    if faults:
        raise Fault("\n".join(f"{path}: {fault}" for fault in faults))
    figure = _figure(path, record)
    routes = tuple(_route(route) for route in record["routes"])
    points = tuple(
        MarkPoint(
            point["point"], point["kind"], point.get("value", 1), point["point"],
            tuple(point.get("depends_on", ())), False, point.get("must_be_seen", False),
            point["text"],
        )
        for point in record["points"]
    )  # fmt: skip
    problem = " ".join(record["text"].split())
    scheme = Scheme(problem, TOPIC, points, routes=routes)
    try:
        checked(scheme)
    except SchemeFaults as found:
        raise Fault("\n".join(f"{path}: {fault}" for fault in found.faults)) from found
    stages = tuple(Stage(point.stage, point.kind, point.text) for point in points)
    answer = record.get("answer") or routes[0].lines[-1].text
    draft = ItemDraft(
        instruction=record.get("instruction") or INSTRUCTION,
        solution=Solution(problem, TOPIC, answer, (), routes, stages, False, figure),
        scheme=to_record(scheme),
        minutes=record.get("minutes", scheme.total),
        code=record.get("code"),
        tags=tuple(record.get("tags", ())),
        year_level=record.get("year_level"),
        calculator_allowed=record.get("calculator", False),
        show_working=record.get("show_working", False),
        notes=record.get("notes", ""),
        where=path,
    )
    return draft, route_checks(routes)


def _read(path: str) -> dict[str, Any]:
    try:
        text = Path(path).read_text(encoding="utf-8")
    except OSError as fault:
        raise Fault(f"{path}: cannot be opened: {fault.strerror}") from fault
    except UnicodeDecodeError as fault:
        raise Fault(f"{path}: is no UTF-8 text, at byte {fault.start}") from fault
    try:
        return tomllib.loads(text)
    except tomllib.TOMLDecodeError as fault:
        raise Fault(f"{path}: is no TOML: {fault}") from fault


def _form_faults(record: dict[str, Any]) -> list[str]:
    """Everything that is wrong with the form of a file."""
    faults = _fields("", record, _ITEM, ("text", "points", "routes"))
    for at, point in enumerate(_tables(record, "points"), start=1):
        faults += _fields(f"points, number {at}: ", point, _POINT, ("point", "kind", "text"))
    for at, route in enumerate(_tables(record, "routes"), start=1):
        lead = f"routes, number {at}: "
        faults += _fields(lead, route, _ROUTE, ("name", "lines"))
        for line_at, line in enumerate(_tables(route, "lines"), start=1):
            faults += _fields(f"{lead}lines, number {line_at}: ", line, _LINE, ("text",))
    if record.get("image") and not record.get("image_words"):
        faults.append("image_words is missing: say what the image shows, for who cannot see it")
    return faults


def _tables(record: Any, name: str) -> list[Any]:
    found = record.get(name) if isinstance(record, dict) else None
    return found if isinstance(found, list) else []


def _fields(
    lead: str, record: Any, known: Mapping[str, type], needed: tuple[str, ...]
) -> list[str]:
    if not isinstance(record, dict):
        return [f"{lead}must be a table"]
    faults = [f"{lead}unknown name {name!r}" for name in record if name not in known]
    faults += [f"{lead}{name} is missing or empty" for name in needed if not record.get(name)]
    words = {str: "a text", int: "a whole number", bool: "true or false", list: "a list"}
    return faults + [
        f"{lead}{name} must be {words[kind]}"
        for name, kind in known.items()
        if name in record and type(record[name]) is not kind
    ]


def _route(record: dict[str, Any]) -> Route:
    from itembank.topics.kinds import Route, RouteLine

    return Route(
        record["name"],
        tuple(
            RouteLine(
                line["text"],
                line.get("step", ""),
                line.get("earns", ""),
                not line.get("optional", False),
            )
            for line in record["lines"]
        ),
    )


def _figure(path: str, record: dict[str, Any]) -> Figure | None:
    from itembank.topics.kinds import Figure

    name = record.get("image")
    if not name:
        return None
    file = Path(path).parent / name
    media = MEDIA.get(file.suffix.lower())
    if media is None:
        raise Fault(f"{path}: image {name!r} is none of {', '.join(MEDIA)}")
    try:
        content = file.read_bytes()
    except OSError as fault:
        raise Fault(f"{path}: image {name!r} cannot be opened: {fault.strerror}") from fault
    if len(content) > MOST_BYTES:
        raise Fault(f"{path}: image {name!r} has more than {MOST_BYTES:,} bytes")
    return Figure(media, base64.b64encode(content).decode(), record["image_words"])
