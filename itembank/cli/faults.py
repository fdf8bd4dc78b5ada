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
    from schemes.building import SchemeFaults

    if isinstance(raised, ReadingFault):
        return f"cannot be read: {raised}"
    told_as_they_are = (Fault, RecordFault, TopicError, CheckFailed, SchemeFaults, BankError)
    return str(raised) if isinstance(raised, told_as_they_are) else None
