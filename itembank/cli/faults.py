"""Which failures are told to the user, and how? One sentence on the error stream, status 1."""

from __future__ import annotations

from itembank.cli.contract import RecordFault
from itembank.topics.kinds import CheckFailed, TopicError


class Fault(Exception):
    """Something that the user can mend; the message names the file, the line and the column."""


def told(raised: BaseException) -> str | None:
    """The sentence for the user; None where the failure is a fault of this program."""
    from itembank.algebra.reading import ReadingFault
    from itembank.bank.faults import BankError

    if isinstance(raised, ReadingFault):
        return f"cannot be read: {raised}"
    if isinstance(raised, Fault | TopicError | BankError | CheckFailed | RecordFault):
        return str(raised)
    return None
