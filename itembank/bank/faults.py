"""What can go wrong with a bank? Each fault as an exception whose message is for a teacher."""

from __future__ import annotations

from collections.abc import Sequence


class BankError(Exception):
    """Any fault of a bank; nothing has been written when it is raised."""


class BankMissing(BankError):
    """There is no bank at the address."""


class BankExists(BankError):
    """There is a bank at the address already."""


class BankUnreachable(BankError):
    """The database server does not answer, or refuses to let the program in."""


class BankLocked(BankError):
    """Another program is writing to the bank; trying again later helps."""


class BankNewer(BankError):
    """The bank was made by a newer version of the program."""


class BankOlder(BankError):
    """The bank was made by an older version of the program and has to be upgraded."""


class NotABank(BankError):
    """The file is no database, or the database holds something else."""


class AppendOnly(BankError):
    """A record that is only ever added to was about to be changed or deleted."""


class BankFaults(BankError):
    """Everything that is wrong with what was to be written, all of it at once.

    ``faults`` holds one sentence a fault, in the order of the input.
    """

    def __init__(self, faults: Sequence[str]) -> None:
        self.faults = tuple(faults)
        super().__init__("\n".join(self.faults))


def refuse(faults: Sequence[str]) -> None:
    """Raise BankFaults where there is any fault; to be called before anything is written."""
    if faults:
        raise BankFaults(faults)
