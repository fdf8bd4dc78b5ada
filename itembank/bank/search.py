"""Which items does the bank hold? Items found by what they are, a page at a time."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime

from sqlalchemy import Select, func, or_
from sqlalchemy import select as sqlalchemy_select
from sqlmodel import Session, col, select

from itembank.bank.paging import FIRST_PAGE, Listing, Page
from itembank.bank.review import current_states, review_state
from itembank.bank.tables import Item, ItemTag, ItemVersion, ReviewState


@dataclass(frozen=True, slots=True)
class ItemFilter:
    """What the items looked for have in common; ``None`` and an empty tuple ask for nothing.

    ``code`` is the beginning of the code, ``tags`` are all there, ``words`` stand somewhere in the
    instruction, the problem or the notes, in capitals or not. ``latest`` looks at the latest
    version of each item alone.
    """

    code: str | None = None
    topic: str | None = None
    tags: tuple[str, ...] = ()
    year_level: int | None = None
    state: ReviewState | str | None = None
    calculator_allowed: bool | None = None
    show_working: bool | None = None
    marks: int | None = None
    minutes_at_most: int | None = None
    words: str | None = None
    latest: bool = True


@dataclass(frozen=True, slots=True)
class ItemRow:
    """An item version as a list shows it."""

    code: str
    version: int
    instruction: str
    problem: str
    topic: str
    tags: tuple[str, ...]
    year_level: int | None
    marks: int
    minutes: int
    calculator_allowed: bool
    show_working: bool
    state: ReviewState
    made_by: str
    made_at: datetime


EVERYTHING = ItemFilter()


def find_items(
    session: Session, filters: ItemFilter = EVERYTHING, page: Page = FIRST_PAGE
) -> Listing[ItemRow]:
    """The item versions that fit the filters, in the order of their codes."""
    states = current_states()
    fitting = _fitting(filters).join(states, states.c.item_version_id == col(ItemVersion.id))
    if filters.state is not None:
        fitting = fitting.where(states.c.state == review_state(filters.state))
    total = session.exec(select(func.count()).select_from(fitting.subquery())).one()
    ids = fitting.order_by(Item.code, col(ItemVersion.number))
    shown = list(session.scalars(ids.offset(page.offset).limit(page.size)))
    versions = session.exec(
        select(ItemVersion, states.c.state)
        .join(Item)
        .join(states, states.c.item_version_id == col(ItemVersion.id))
        .where(col(ItemVersion.id).in_(shown))
        .order_by(Item.code, col(ItemVersion.number))
    )
    return Listing(tuple(_row(version, state) for version, state in versions), total, page)


def tags_in_use(session: Session) -> list[tuple[str, int]]:
    """Every tag, in alphabetical order, with the number of item versions that carry it."""
    query = select(ItemTag.tag, func.count()).group_by(ItemTag.tag).order_by(ItemTag.tag)
    return [(tag, count) for tag, count in session.exec(query)]


def _fitting(filters: ItemFilter) -> Select[int | None]:
    query = sqlalchemy_select(col(ItemVersion.id)).join(Item)
    for column, wanted in (
        (ItemVersion.topic, filters.topic),
        (ItemVersion.year_level, filters.year_level),
        (ItemVersion.calculator_allowed, filters.calculator_allowed),
        (ItemVersion.show_working, filters.show_working),
        (ItemVersion.marks, filters.marks),
    ):
        if wanted is not None:
            query = query.where(col(column) == wanted)
    if filters.code:
        query = query.where(col(Item.code).istartswith(filters.code, autoescape=True))
    if filters.minutes_at_most is not None:
        query = query.where(col(ItemVersion.minutes) <= filters.minutes_at_most)
    for tag in filters.tags:
        carrying = select(ItemTag.item_version_id).where(ItemTag.tag == tag)
        query = query.where(col(ItemVersion.id).in_(carrying))
    if filters.words:
        places = (ItemVersion.instruction, ItemVersion.problem, ItemVersion.notes)
        query = query.where(
            or_(*(col(place).icontains(filters.words, autoescape=True) for place in places))
        )
    if filters.latest:
        newest = select(func.max(ItemVersion.number)).where(ItemVersion.item_id == Item.id)
        query = query.where(col(ItemVersion.number) == newest.correlate(Item).scalar_subquery())
    return query


def _row(version: ItemVersion, state: ReviewState) -> ItemRow:
    return ItemRow(
        code=version.code,
        version=version.number,
        instruction=version.instruction,
        problem=version.problem,
        topic=version.topic,
        tags=version.tags,
        year_level=version.year_level,
        marks=version.marks,
        minutes=version.minutes,
        calculator_allowed=version.calculator_allowed,
        show_working=version.show_working,
        state=state,
        made_by=version.made_by,
        made_at=version.made_at,
    )
