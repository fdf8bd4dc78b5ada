"""``itembank item revise`` and ``item withdraw``: how is an item put right, or out of use?"""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING, Annotated, Any

import typer

from itembank.cli.banking import DEFAULT_BANK, Bank, By, writing_to
from itembank.cli.faults import Fault
from itembank.cli.printing import console, say
from itembank.cli.streams import read_json_lines

if TYPE_CHECKING:
    from itembank.bank.drafts import ItemDraft
    from schemes.scheme import Scheme


def revise(
    code: Annotated[str, typer.Argument(metavar="CODE", help="The item's code.")],
    by: By,
    problem: Annotated[
        str | None, typer.Option(metavar="PROBLEM", help="Another problem, of the same topic.")
    ] = None,
    scheme: Annotated[
        str | None,
        typer.Option(
            metavar="FILE",
            help="A scheme of its own, as `scheme --json` prints one; - is standard input.",
        ),
    ] = None,
    instruction: Annotated[str | None, typer.Option(help="What is asked.")] = None,
    tag: Annotated[
        list[str] | None, typer.Option(help="A tag in place of all it has; may be given again.")
    ] = None,
    year: Annotated[int | None, typer.Option(help="The year level, 1 to 13.")] = None,
    minutes: Annotated[int | None, typer.Option(help="The time it takes.")] = None,
    notes: Annotated[str | None, typer.Option(help="The author's notes.")] = None,
    show_working: Annotated[
        bool | None,
        typer.Option("--show-working/--no-show-working", help="'Show your working' or not."),
    ] = None,
    same_problem: Annotated[
        bool, typer.Option("--same-problem", help="Let a problem in that the bank has already.")
    ] = False,
    bank: Bank = DEFAULT_BANK,
) -> None:
    """Make the next version of an item, as a draft: what has been set stays as it was.

    Another problem is solved and checked anew and gets its default scheme, unless --scheme is
    given too.
    """
    from itembank.bank.items import draft_of, item_version, new_version

    with writing_to(bank) as session:
        draft = draft_of(item_version(session, code))
        if problem is not None:
            draft = _with_problem(draft, problem)
        if scheme is not None:
            draft = _with_scheme(draft, read_scheme(scheme))
        changed: dict[str, Any] = {
            "instruction": instruction,
            "tags": None if tag is None else tuple(tag),
            "year_level": year,
            "minutes": minutes,
            "notes": notes,
            "show_working": show_working,
        }
        given = {name: value for name, value in changed.items() if value is not None}
        if not (given or problem or scheme):
            raise Fault("nothing to revise: say what is to be changed")
        made = new_version(session, code, replace(draft, **given), by, same_problem=same_problem)
        line = f"{code}, version {made.number}: {made.problem} ({made.marks} marks)"
    say(console(), f"Added as a draft: {line}")


def withdraw(
    codes: Annotated[list[str], typer.Argument(metavar="CODE", help="The items' codes.")],
    by: By,
    reason: Annotated[str, typer.Option(help="Why they are not to be set any more.")] = "",
    bank: Bank = DEFAULT_BANK,
) -> None:
    """Withdraw items, all of those named or none: they are not set any more, and stay on record."""
    from itembank.bank.review import review_items
    from itembank.bank.tables import ReviewState

    with writing_to(bank) as session:
        review_items(session, codes, ReviewState.WITHDRAWN, by, reason)
    say(console(), f"Withdrawn: {', '.join(codes)}")


def read_scheme(path: str) -> Scheme:
    """The one scheme that a file holds, as ``scheme --json`` prints one.

    Raises:
        Fault: for another number of lines, or a record that holds no scheme.
    """
    from itembank.cli.scheme_records import scheme_from_record

    found = list(read_json_lines(path))
    if len(found) != 1:
        raise Fault(f"{path}: {len(found)} lines of JSON, where one scheme belongs")
    (one,) = found
    if one.fault:
        raise Fault(f"{one.place}: {one.fault}")
    try:
        return scheme_from_record(one.record, "")
    except ValueError as raised:
        raise Fault(f"{one.place}: {raised}") from raised


def _with_problem(draft: ItemDraft, problem: str) -> ItemDraft:
    from itembank.cli.scheme import scheme_of
    from itembank.cli.solve import solution_of
    from schemes.scheme import to_record

    topic = draft.solution.topic
    solution = solution_of(problem, topic)
    made = scheme_of(solution.problem, topic)
    return replace(draft, solution=solution, scheme=to_record(made))


def _with_scheme(draft: ItemDraft, scheme: Scheme) -> ItemDraft:
    from schemes.building import checked
    from schemes.scheme import to_record

    own = replace(scheme, topic=scheme.topic or draft.solution.topic)
    return replace(draft, scheme=to_record(checked(own)))
