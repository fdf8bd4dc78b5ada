"""How does a teacher or a program call the house from a command line? One module a group.

``--help`` must answer at once: what takes long to import (the algebra system, the typesetter, the
database) is imported inside the command that needs it.
"""

from __future__ import annotations

import sys
from collections.abc import Sequence


def main(arguments: Sequence[str] | None = None) -> None:
    """Run one command and leave with its exit status: 0, 1 for a fault, 2 for wrong usage."""
    from itembank.cli.app import app
    from itembank.cli.faults import told

    try:
        app(args=None if arguments is None else list(arguments), prog_name="itembank")
    except Exception as raised:
        message = told(raised)
        if message is None:
            raise
        print(f"itembank: {message}", file=sys.stderr)
        sys.exit(1)
