"""``itembank item families`` and ``item draw``: which items can be made by chance, and how hard?"""

from __future__ import annotations

from typing import TYPE_CHECKING, Annotated

import typer

from itembank.cli.banking import DEFAULT_BANK, Bank, By, Json, writing_to
from itembank.cli.faults import Fault
from itembank.cli.printing import console, say, table
from itembank.cli.streams import json_text

if TYPE_CHECKING:
    from sqlmodel import Session

    from itembank.bank.drafts import ItemDraft
    from itembank.topics.drawing import Controls
    from itembank.topics.kinds import Family, Solution


def families(
    topic: Annotated[str | None, typer.Option(help="Only those of this topic.")] = None,
    json: Json = False,
) -> None:
    """List the families of items, with an example of each."""
    from random import Random

    from itembank.topics import find_topic, topics_by_name

    if topic is not None and topic not in topics_by_name():
        find_topic("x = 1", topic)  # raises, naming the topics
    rows = [
        (one.name, family.name, family.year, family.minutes, family.make(Random(1)))
        for one in topics_by_name().values()
        if topic in (None, one.name)
        for family in one.families
    ]
    if json:
        names = ("topic", "family", "year", "minutes", "example")
        for row in rows:
            typer.echo(json_text(dict(zip(names, row, strict=True))))
        return
    heads = ("Topic", "Family", "Year#", "Min.#", "For example=")
    console().print(table("Families of items", heads, rows))


def draw(
    by: By,
    family: Annotated[
        str | None,
        typer.Argument(metavar="FAMILY", help="The family's name, as `item families` lists it."),
    ] = None,
    like: Annotated[
        str | None,
        typer.Option(metavar="CODE", help="Parallel to this item: its family, just as hard."),
    ] = None,
    count: Annotated[int, typer.Option(min=1, max=1000, help="How many.")] = 1,
    value: Annotated[
        str | None,
        typer.Option(help="The form of the value: whole, fraction, decimal, words or other."),
    ] = None,
    sign: Annotated[
        str | None, typer.Option(help="The sign of the value: positive, negative or nought.")
    ] = None,
    largest: Annotated[
        int | None, typer.Option(help="The largest number that may stand in the problem.")
    ] = None,
    lines: Annotated[
        int | None, typer.Option(help="How many required lines the working has.")
    ] = None,
    seed: Annotated[int, typer.Option(help="Another number draws other items.")] = 1,
    show_working: Annotated[
        bool, typer.Option("--show-working", help="The items say 'show your working'.")
    ] = False,
    bank: Bank = DEFAULT_BANK,
) -> None:
    """Draw items of a family by chance and add them, solved and checked, as drafts.

    None is trivial, none repeats another or one that the bank has. `--like` draws items parallel
    to one of the bank: the same family, stages, number of lines and form of the value.
    """
    from itembank.bank.items import add_items
    from itembank.topics.drawing import Controls, draw, find_family, parallel

    if (family is None) == (like is None):
        raise Fault("name a family, or an item with --like, and not both")
    _known(value=value, sign=sign)
    controls = Controls(value, sign, largest, lines)
    with writing_to(bank) as session:
        if like is not None:
            family, model = _model(session, like)
            controls = _narrowed(parallel(model), controls)
        topic, found = find_family(family or "")
        there = _problems(session, topic.name)
        solutions = draw(topic, found, count, seed=seed, controls=controls, without=there)
        drafts = [
            drafted(found, one, topic.instruction_for(one.problem), show_working=show_working)
            for one in solutions
        ]
        added = add_items(session, drafts, by)
        said = [f"{version.code}: {version.problem} ({version.marks} marks)" for version in added]
    for line in said:
        say(console(), f"Added as a draft: {line}")


def _known(**asked: str | None) -> None:
    from itembank.topics.drawing import SIGNS, VALUES

    for name, choices in (("value", VALUES), ("sign", SIGNS)):
        given = asked[name]
        if given is not None and given not in choices:
            raise Fault(f"--{name} {given!r} is none of {', '.join(choices)}")


def _model(session: Session, code: str) -> tuple[str, Solution]:
    """The family of an item and its solution."""
    from itembank.bank.items import item_version, solution_of
    from itembank.topics import topic_named

    version = item_version(session, code, None)
    names = {family.name for family in topic_named(version.topic).families}
    tagged = [tag for tag in version.tags if tag in names]
    if not tagged:
        raise Fault(f"{code}: no tag of this item names a family, so it has no parallel items")
    return tagged[0], solution_of(version)


def _narrowed(model: Controls, asked: Controls) -> Controls:
    """The controls of a model item, those that were asked for in their place."""
    from dataclasses import fields, replace

    given = {f.name: getattr(asked, f.name) for f in fields(asked)}
    return replace(model, **{name: value for name, value in given.items() if value is not None})


def _problems(session: Session, topic: str) -> list[str]:
    """The problems of a topic that the bank has."""
    from itembank.bank.paging import Page
    from itembank.bank.search import ItemFilter, find_items

    out: list[str] = []
    number = 1
    while True:
        found = find_items(session, ItemFilter(topic=topic), Page(number, 200))
        out.extend(row.problem for row in found.rows)
        if number >= found.pages:
            return out
        number += 1


def drafted(
    family: Family, solution: Solution, instruction: str, *, show_working: bool, notes: str = ""
) -> ItemDraft:
    """A drawn item with its default scheme, as the bank takes it.

    Working is asked for where there is more than one mark to show it for.
    """
    from itembank.bank.drafts import ItemDraft
    from itembank.cli.scheme import scheme_of
    from schemes.scheme import to_record

    scheme = scheme_of(solution.problem, solution.topic)
    return ItemDraft(
        instruction=instruction,
        solution=solution,
        scheme=to_record(scheme),
        minutes=family.minutes,
        tags=(family.name,),
        year_level=family.year,
        show_working=show_working and scheme.total > 1,
        notes=notes,
    )
