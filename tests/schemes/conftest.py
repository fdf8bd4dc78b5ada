"""The banks that the tests here run on."""

from tests.banks import address, bank, empty_bank, session

__all__ = ["address", "bank", "empty_bank", "session"]
