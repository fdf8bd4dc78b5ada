"""``itembank demo``: does a whole job go through? A bank, a paper, marks, a sample, a summary.

Everything in it is invented, and says so: Harrow Quay School, its candidates, their working.
"""

from __future__ import annotations

import shutil
import tempfile
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from time import perf_counter
from typing import TYPE_CHECKING

from exports.documents import INVENTED
from itembank.cli.department import DEPARTMENT
from itembank.cli.faults import Fault
from itembank.cli.printing import print_cautions, say, table

if TYPE_CHECKING:
    from rich.console import Console

BANK = "harrow-quay.sqlite"
PAPER, GUIDE, SAMPLE, SUMMARY = "paper.pdf", "guide.pdf", "sample.pdf", "summary.html"
SCRIPTS, MARKS, CONTENTS = "scripts.jsonl", "marks.jsonl", "README.txt"
FILES = {
    PAPER: "the test paper",
    GUIDE: "the marking guide: routes, mark points, forms, what common errors earn",
    SAMPLE: "the moderation sample, with space for a second mark",
    SUMMARY: "the summary, a page for a browser",
    BANK: "the bank: items, schemes, candidates, scripts, every mark with its history",
    SCRIPTS: "the simulated working, one script a line, as `itembank mark --jsonl` takes it",
    MARKS: "the marks that stand, one a line",
    CONTENTS: "what lies in the folder, and what to try",
}


def play(out: Path, seed: int, screen: Console) -> None:
    """Play the whole job into a folder that is not there yet, is empty, or holds an earlier demo.

    Raises:
        Fault: a folder that holds anything else, or cannot be written.
    """
    from itembank.cli.playing import play_into
    from itembank.cli.summary_screen import show_summary

    began = perf_counter()
    say(screen, f"{DEPARTMENT}. {INVENTED}", "bold")
    with _fresh(out) as folder:
        summary = play_into(folder, seed, screen)
        (folder / CONTENTS).write_text(_contents(seed), encoding="utf-8")
    show_summary(screen, summary)
    screen.print(table(f"In the folder {out}", ("File", "What"), FILES.items()))
    say(screen, f"Made in {perf_counter() - began:.0f} seconds, from the number {seed}.")
    print_cautions(screen)


@contextmanager
def _fresh(out: Path) -> Iterator[Path]:
    """A folder that takes the place of ``out`` when all is made, and else leaves no trace."""
    if out.exists() and not out.is_dir():
        raise Fault(f"{out}: a file, not a folder")
    others = sorted({one.name for one in out.iterdir()} - set(FILES)) if out.exists() else []
    if others:
        raise Fault(f"{out}: holds other files, such as {others[0]}; name a new folder")
    try:
        out.absolute().parent.mkdir(parents=True, exist_ok=True)
        draft = Path(tempfile.mkdtemp(prefix=".demo.", dir=out.absolute().parent))
    except OSError as raised:
        raise Fault(f"{out}: cannot be written: {raised.strerror}") from raised
    try:
        yield draft
        draft.chmod(0o755)
        if out.exists():
            shutil.rmtree(out)
        draft.rename(out)
    finally:
        shutil.rmtree(draft, ignore_errors=True)


def _contents(seed: int) -> str:
    """The list of files, for a person who opens the folder."""
    from schemes.cautions import CAUTIONS

    lines = [DEPARTMENT, INVENTED, f"Made by `itembank demo` from the number {seed}.", ""]
    lines += [f"{name:20}{what}" for name, what in FILES.items()]
    lines += ["", *CAUTIONS, "", "To try, in this folder:", ""]
    lines += [f"    {command} --bank {BANK}" for command in _TO_TRY]
    lines += [f"    itembank mark --jsonl {SCRIPTS}", ""]
    return "\n".join(lines)


_TO_TRY = (
    "itembank item list",
    "itembank assessment show HQ-EQ-1",
    "itembank script list HQ-EQ-1 --question 9",
    "itembank marks list HQ-EQ-1",
    "itembank marks list HQ-EQ-1 --question 9 --history",
)
