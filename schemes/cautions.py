"""What must stand wherever marks are shown? Three cautions, worded once for screen and paper."""

from __future__ import annotations

CAUTIONS = (
    "The engine suggests marks; a teacher decides every one.",
    "Candidates stand here by code, never by name.",
    "The school's own policy and the awarding body's rules come first.",
)
