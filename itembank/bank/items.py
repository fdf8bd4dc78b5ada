"""How do items come into the bank? Drafts of items, their first version, later versions."""

from __future__ import annotations

import dataclasses
import re
from collections.abc import Sequence
from typing import Any

from sqlmodel import Session, col, select

from itembank.bank.drafts import ItemDraft, draft_faults, placed, problem_key
from itembank.bank.faults import BankFaults, refuse
from itembank.bank.tables import (
    LONGEST_NAME,
    Item,
    ItemTag,
    ItemVersion,
    Review,
    ReviewState,
    known,
)
from itembank.topics.kinds import Figure, NumberLine, Route, RouteLine, Solution, Stage


def add_item(
    session: Session, draft: ItemDraft, made_by: str, *, same_problem: bool = False
) -> ItemVersion:
    """Add one item as ``add_items`` does."""
    return add_items(session, [draft], made_by, same_problem=same_problem)[0]


def add_items(
    session: Session, drafts: Sequence[ItemDraft], made_by: str, *, same_problem: bool = False
) -> list[ItemVersion]:
    """Add items, all or none, each as version 1 in state draft.

    ``same_problem`` lets a problem in that another item of the bank holds already.

    Raises:
        BankFaults: every fault of every draft; a problem that is in the bank already is one.
    """
    faults = _by_faults(made_by)
    taken = _codes(session, [draft.code for draft in drafts if draft.code])
    for draft in drafts:
        found = draft_faults(draft)
        if draft.code is not None:
            if draft.code in taken:
                found.append(f"the code {draft.code} is taken")
            taken.add(draft.code)
        faults += placed(draft, found)
    if not same_problem:
        faults += _same_problems(session, drafts)
    refuse(faults)
    versions = []
    for draft, code in zip(drafts, _numbered(session, drafts), strict=True):
        item = Item(code=code)
        session.add(item)
        session.flush()
        versions.append(_version(item, 1, draft, made_by))
    _store(session, versions, made_by)
    return versions


def new_version(
    session: Session, code: str, draft: ItemDraft, made_by: str, *, same_problem: bool = False
) -> ItemVersion:
    """Add the next version of an item, in state draft; older versions stay as they are.

    A draft to start from is ``draft_of(version)``, changed with ``dataclasses.replace``.

    Raises:
        BankFaults: every fault, an unknown code among them.
    """
    latest = item_version(session, code)
    faults = _by_faults(made_by)
    faults += placed(draft, draft_faults(draft))
    if draft.code not in (None, code):
        faults.append(f"the code {code} is stable and cannot become {draft.code}")
    if not same_problem:
        faults += _same_problems(session, [draft], other_than=latest.item_id)
    refuse(faults)
    version = _version(latest.item, latest.number + 1, draft, made_by)
    _store(session, [version], made_by)
    return version


def item_version(session: Session, code: str, number: int | None = None) -> ItemVersion:
    """A version of an item, by default its latest.

    Raises:
        BankFaults: no such item, or no such version.
    """
    query = select(ItemVersion).join(Item).where(Item.code == code)
    if number is not None:
        query = query.where(ItemVersion.number == number)
    found = session.exec(query.order_by(col(ItemVersion.number).desc()).limit(1)).first()
    if found is not None:
        return found
    if session.exec(select(Item).where(Item.code == code)).first() is None:
        raise BankFaults([f"there is no item {code} in the bank"])
    raise BankFaults([f"the item {code} has no version {number}"])


def item_versions(session: Session, code: str) -> list[ItemVersion]:
    """Every version of an item, the first one first.

    Raises:
        BankFaults: no such item.
    """
    query = select(ItemVersion).join(Item).where(Item.code == code)
    found = session.exec(query.order_by(col(ItemVersion.number))).all()
    if not found:
        raise BankFaults([f"there is no item {code} in the bank"])
    return list(found)


def solution_of(version: ItemVersion) -> Solution:
    """The stored reference solution of an item version."""
    record = version.solution
    return Solution(
        problem=record["problem"],
        topic=record["topic"],
        answer=record["answer"],
        forms=tuple(record["forms"]),
        routes=tuple(
            Route(route["name"], tuple(RouteLine(**line) for line in route["lines"]))
            for route in record["routes"]
        ),
        stages=tuple(Stage(**stage) for stage in record["stages"]),
        checked=record["checked"],
        figure=Figure(**record["figure"]) if record.get("figure") else None,
        number_line=_number_line(record.get("number_line")),
    )


def _number_line(record: dict[str, Any] | None) -> NumberLine | None:
    if not record:
        return None
    others = tuple(NumberLine(**_fields(one)) for one in record.get("others", ()))
    return NumberLine(**{**_fields(record), "others": others})


def _fields(record: dict[str, Any]) -> dict[str, Any]:
    """The fields of one piece of a number line; those of other pieces stand with the first."""
    return {**record, "listed": tuple(record["listed"]), "others": ()}


def draft_of(version: ItemVersion) -> ItemDraft:
    """A draft that holds what the version holds."""
    return ItemDraft(
        instruction=version.instruction,
        solution=solution_of(version),
        scheme=version.scheme,
        minutes=version.minutes,
        code=version.code,
        tags=version.tags,
        year_level=version.year_level,
        calculator_allowed=version.calculator_allowed,
        show_working=version.show_working,
        notes=version.notes,
    )


def _by_faults(made_by: str) -> list[str]:
    if 1 <= len(made_by.strip()) <= LONGEST_NAME:
        return []
    return [f"say in 1 to {LONGEST_NAME} characters by whom the item is made"]


def _same_problems(
    session: Session, drafts: Sequence[ItemDraft], *, other_than: int | None = None
) -> list[str]:
    keys = [problem_key(draft.solution.topic, draft.solution.problem) for draft in drafts]
    query = select(ItemVersion.problem_key, Item.code).join(Item)
    query = query.where(col(ItemVersion.problem_key).in_(keys))
    if other_than is not None:
        query = query.where(Item.id != other_than)
    holders = {key: f"in the bank already as {code}" for key, code in session.exec(query)}
    faults = []
    for draft, key in zip(drafts, keys, strict=True):
        if key in holders:
            fault = f"the problem {draft.solution.problem} is {holders[key]}"
            faults += placed(draft, [fault])
        else:
            holders[key] = f"here twice, first at {draft.where or draft.code or 'another place'}"
    return faults


def _codes(session: Session, codes: Sequence[str]) -> set[str]:
    return set(session.exec(select(Item.code).where(col(Item.code).in_(codes))))


def _numbered(session: Session, drafts: Sequence[ItemDraft]) -> list[str]:
    """The codes of the drafts: their own, or the topic's initials and the next free number."""
    own = {draft.code for draft in drafts if draft.code}
    highest: dict[str, int] = {}
    codes = []
    for draft in drafts:
        if draft.code:
            codes.append(draft.code)
            continue
        initials = "".join(word[0] for word in re.findall(r"[A-Za-z]+", draft.solution.topic))
        prefix = initials.upper() or "I"
        number = highest.get(prefix) or _highest(session, prefix)
        code = None
        while code is None or code in own:
            number += 1
            code = f"{prefix}-{number:04d}"
        highest[prefix] = number
        codes.append(code)
    return codes


def _highest(session: Session, prefix: str) -> int:
    found = session.exec(select(Item.code).where(col(Item.code).startswith(f"{prefix}-")))
    numbers = (code.removeprefix(f"{prefix}-") for code in found)
    return max((int(number) for number in numbers if re.fullmatch(r"\d{1,9}", number)), default=0)


def _version(item: Item, number: int, draft: ItemDraft, made_by: str) -> ItemVersion:
    solution = draft.solution
    return ItemVersion(
        item_id=known(item.id),
        item=item,
        number=number,
        instruction=draft.instruction.strip(),
        problem=solution.problem,
        problem_key=problem_key(solution.topic, solution.problem),
        topic=solution.topic,
        year_level=draft.year_level,
        marks=draft.scheme["total"],
        minutes=draft.minutes,
        calculator_allowed=draft.calculator_allowed,
        show_working=draft.show_working,
        notes=draft.notes,
        solution=dataclasses.asdict(solution),
        scheme=dict(draft.scheme),
        made_by=made_by,
        tag_rows=[ItemTag(tag=tag) for tag in sorted(set(draft.tags))],
    )


def _store(session: Session, versions: Sequence[ItemVersion], made_by: str) -> None:
    session.add_all(versions)
    session.flush()
    for version in versions:
        session.add(Review(item_version_id=known(version.id), state=ReviewState.DRAFT, by=made_by))
    session.flush()
