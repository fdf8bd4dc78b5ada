"""Which of the ways to read what was typed does the last line explain best?"""

from __future__ import annotations

from dataclasses import replace

from schemes.explaining import ERROR, PAIR, RIGHT, SLIP, explain
from schemes.pieces import Piece, piece_of
from schemes.states import State

LACKING = "the brackets that it needs are left out"
_KINDS = (RIGHT, ERROR, SLIP, PAIR)


def better_otherwise(state: State, piece: Piece) -> tuple[Piece, str] | None:
    """The line in another way that it can be read, where that explains it better (3.11).

    With it, how it was read. A value that lacks its brackets is not stated by it (5.4).
    """
    if not piece.otherwise:
        return None
    best, found = _explained(state, piece), None
    for other in piece.otherwise:
        read = piece_of(state.judge, other.relation)
        explained = _explained(state, read)
        if explained < best:
            best, found = explained, (read if other.states else _unstated(read), other.words)
    return found


def _unstated(piece: Piece) -> Piece:
    answer = piece.answer
    if answer is not None:
        answer = replace(answer, unfinished=answer.unfinished or LACKING, partial=True)
    return piece._replace(answer=answer)


def _explained(state: State, piece: Piece) -> int:
    """How well the last line explains one: copied or right, an error, a slip, not at all."""
    if piece.given:
        return 0
    readings = () if piece.form is None else explain(state.judge, state.live.form, piece.form)
    return _KINDS.index(readings[0].kind) if readings else len(_KINDS)
