"""May an item version be set? Its states of review: who, when, why."""

from __future__ import annotations

from collections.abc import Sequence

from sqlalchemy import Subquery, func
from sqlmodel import Session, col, select

from itembank.bank.faults import BankFaults, refuse
from itembank.bank.items import item_version
from itembank.bank.tables import LONGEST_NAME, ItemVersion, Review, ReviewState, known

# From each state, where a review can lead; a reason has to be given where something is undone.
MOVES = {
    ReviewState.DRAFT: (ReviewState.IN_REVIEW, ReviewState.APPROVED, ReviewState.WITHDRAWN),
    ReviewState.IN_REVIEW: (ReviewState.DRAFT, ReviewState.APPROVED, ReviewState.WITHDRAWN),
    ReviewState.APPROVED: (ReviewState.IN_REVIEW, ReviewState.WITHDRAWN),
    ReviewState.WITHDRAWN: (ReviewState.IN_REVIEW,),
}
_WITHOUT_REASON = (
    (ReviewState.DRAFT, ReviewState.IN_REVIEW),
    (ReviewState.DRAFT, ReviewState.APPROVED),
    (ReviewState.IN_REVIEW, ReviewState.APPROVED),
)


def review(
    session: Session,
    code: str,
    state: ReviewState | str,
    by: str,
    reason: str = "",
    version: int | None = None,
) -> Review:
    """Bring a version of an item (by default the latest) into a state of review.

    Raises:
        BankFaults: an unknown item, version or state, a move that review does not make, or a
            reason that is missing.
    """
    return review_items(session, [(code, version)], state, by, reason)[0]


def review_items(
    session: Session,
    items: Sequence[str | tuple[str, int | None]],
    state: ReviewState | str,
    by: str,
    reason: str = "",
) -> list[Review]:
    """Bring several items, each a code or a code with a version, into a state: all or none.

    Raises:
        BankFaults: every fault, as in ``review``.
    """
    state = review_state(state)
    faults = []
    if not 1 <= len(by.strip()) <= LONGEST_NAME:
        faults.append(f"say in 1 to {LONGEST_NAME} characters by whom the review is made")
    if len(set(items)) < len(items):
        faults.append("an item is named twice")
    records = []
    for item in items:
        code, number = (item, None) if isinstance(item, str) else item
        try:
            version = item_version(session, code, number)
        except BankFaults as fault:
            faults += fault.faults
            continue
        fault_found = _move_fault(version, state_of(session, version), state, reason)
        if fault_found:
            faults.append(fault_found)
        records.append(Review(item_version_id=known(version.id), state=state, by=by, reason=reason))
    refuse(faults)
    session.add_all(records)
    session.flush()
    return records


def state_of(session: Session, version: ItemVersion) -> ReviewState:
    """The state of review that a version is in."""
    query = select(Review).where(Review.item_version_id == version.id)
    return session.exec(query.order_by(col(Review.id).desc()).limit(1)).one().state


def reviews_of(session: Session, version: ItemVersion) -> list[Review]:
    """Every review record of a version, the first one first."""
    query = select(Review).where(Review.item_version_id == version.id)
    return list(session.exec(query.order_by(col(Review.id))))


def review_state(word: str) -> ReviewState:
    """The state of review that a word names.

    Raises:
        BankFaults: no state has that name.
    """
    if word not in tuple(ReviewState):
        raise BankFaults([f"{word!r} is no state of review: {', '.join(ReviewState)}"])
    return ReviewState(word)


def current_states() -> Subquery:
    """For queries: ``item_version_id`` and ``state`` of each version's latest review record."""
    latest = select(func.max(Review.id)).group_by(col(Review.item_version_id))
    return (
        select(Review.item_version_id, Review.state)
        .where(col(Review.id).in_(latest))
        .subquery("current_states")
    )


def _move_fault(
    version: ItemVersion, old: ReviewState, new: ReviewState, reason: str
) -> str | None:
    name = f"{version.code} version {version.number}"
    if new not in MOVES[old]:
        ways = ", ".join(MOVES[old])
        return f"{name} is {old} and cannot become {new}; from here it can become: {ways}"
    if (old, new) not in _WITHOUT_REASON and not reason.strip():
        return f"{name} becomes {new} from {old}: give a reason"
    return None
