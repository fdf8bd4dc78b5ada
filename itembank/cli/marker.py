"""Which scheme marks a script from outside? Its author's where one is given, else the default."""

from __future__ import annotations

from dataclasses import replace
from functools import lru_cache
from typing import TYPE_CHECKING

from itembank.cli.contract import (
    Record,
    ScriptRequest,
    marked_record,
    script_request,
    with_overrides,
)
from itembank.cli.faults import Fault
from itembank.cli.scheme import scheme_of
from itembank.cli.scheme_records import scheme_from_record
from itembank.cli.streams import Incoming, read_json_lines

if TYPE_CHECKING:
    from schemes.scheme import Scheme
    from schemes.verdicts import MarkedScript

_KEPT_SCHEMES = 4_096  # default schemes held ready: enough for a cohort's problems, no more


class Marker:
    """Marks requests; the schemes of ``path`` (JSON lines) go before the default ones.

    Raises :class:`Fault` with every fault of every line where a scheme there does not hold: a
    script is never marked by another scheme than its author meant.
    """

    def __init__(self, path: str | None = None) -> None:
        self._schemes = _schemes_by_problem(path) if path is not None else {}

    def answer(self, record: Record) -> Record:
        """The contract's answer to one record. Raises ``ValueError`` where it cannot be marked."""
        return marked_record(record.get("id"), self.marked(script_request(record)))

    def marked(self, request: ScriptRequest) -> MarkedScript:
        """The suggested marks of one script."""
        return self.marked_by(request)[1]

    def marked_by(self, request: ScriptRequest) -> tuple[Scheme, MarkedScript]:
        """The scheme that marks one script, and the suggested marks."""
        from schemes.marking import mark_script

        scheme = self._scheme(request)
        settings = with_overrides(scheme.settings, request.settings)
        if settings != scheme.settings:
            scheme = replace(scheme, settings=settings)
        return scheme, mark_script(scheme, request.lines, request.show_working)

    def _scheme(self, request: ScriptRequest) -> Scheme:
        if self._schemes:
            found = self._schemes.get(_key(request.problem))
            if found is not None and request.topic in (None, found.topic):
                return found
        return _default_scheme(request.problem, request.topic)


@lru_cache(maxsize=_KEPT_SCHEMES)
def _default_scheme(problem: str, topic: str | None) -> Scheme:
    return scheme_of(problem, topic)


def scheme_in_file(path: str, problem: str) -> Scheme | None:
    """The scheme of a problem in a file of schemes; None where it holds none.

    Raises :class:`Fault` with every fault of every line where a scheme there does not hold.
    """
    return _schemes_by_problem(path).get(_key(problem))


def _schemes_by_problem(path: str) -> dict[object, Scheme]:
    found: dict[object, Scheme] = {}
    faults = []
    for one in read_json_lines(path):
        try:
            scheme = _read_scheme(one)
        except ValueError as raised:
            faults.append(f"{one.place}: {raised}")
            continue
        key = _key(scheme.problem)
        if key in found:
            faults.append(f"{one.place}: a second scheme for {scheme.problem}")
        found[key] = scheme
    if faults:
        raise Fault("\n".join(faults))
    return found


def _read_scheme(one: Incoming) -> Scheme:
    from itembank.topics import find_topic
    from schemes.building import checked

    if one.fault:
        raise ValueError(one.fault)
    record = one.record
    named = record.get("topic") if isinstance(record, dict) else None
    scheme = scheme_from_record(record, "")
    if scheme.routes:
        return checked(replace(scheme, topic=named or ""))
    topic = find_topic(scheme.problem, named).name
    return checked(replace(scheme, topic=topic))


def _key(problem: str) -> object:
    """Problems are the same where they are written the same, whatever the spacing."""
    from itembank.algebra.reading import ReadingFault, read_line

    try:
        return read_line(problem).alternatives
    except ReadingFault:
        return problem.strip()
