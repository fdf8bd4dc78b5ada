"""Which rows of a long list are shown? A page, and what it holds."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Generic, TypeVar

from itembank.bank.faults import BankFaults

T = TypeVar("T")

LARGEST_PAGE = 1000
LAST_PAGE = 1_000_000


@dataclass(frozen=True, slots=True)
class Page:
    """A page of a list: ``number`` counts from 1, ``size`` is the most rows it holds.

    Raises:
        BankFaults: a number outside 1 to 1000000, or a size outside 1 to 1000.
    """

    number: int = 1
    size: int = 50

    def __post_init__(self) -> None:
        faults = []
        if not 1 <= self.number <= LAST_PAGE:
            faults.append(f"pages count from 1 to {LAST_PAGE}, not {self.number}")
        if not 1 <= self.size <= LARGEST_PAGE:
            faults.append(f"a page holds 1 to {LARGEST_PAGE} rows, not {self.size}")
        if faults:
            raise BankFaults(faults)

    @property
    def offset(self) -> int:
        """How many rows stand before the page."""
        return (self.number - 1) * self.size


FIRST_PAGE = Page()


@dataclass(frozen=True, slots=True)
class Listing(Generic[T]):
    """The rows of one page, and how many there are on all pages together."""

    rows: tuple[T, ...]
    total: int
    page: Page

    @property
    def pages(self) -> int:
        """How many pages there are, at least 1."""
        return max(1, -(-self.total // self.page.size))
