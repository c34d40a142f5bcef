"""Which keys of a piece's frame demand each other and which exclude each other.

Judged on the raw tree, so that these faults are found even where a value beside them is faulty.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from templater.layout.flaws import Flaw
from templater.layout.misspelt import lacks
from templater.layout.schema import PieceEntry
from templater.layout.source import Path
from templater.quoting import quote

_EXAMPLES = {"size": "16 x 20 in", "moulding": "1 in", "rabbet": "1/4 in"}


def check_piece(path: Path, piece: dict[str, Any], owner: str) -> Iterator[Flaw]:
    """A piece has an outside size, or a picture from which it follows."""
    if "picture" in piece:
        yield from _check_picture(path, piece, owner)
    else:
        yield from _check_size(path, piece, owner)
    made_of = piece.get("made_of")
    moulding = made_of.get("moulding") if isinstance(made_of, dict) else None
    if isinstance(moulding, dict):
        yield from _check_moulding(
            (*path, "made_of", "moulding"), moulding, is_width_given="moulding" in piece
        )


def _check_picture(path: Path, piece: dict[str, Any], owner: str) -> Iterator[Flaw]:
    if "size" in piece:
        message = "'picture' does not apply beside 'size'"
        yield Flaw((*path, "picture"), message, "keep one of the two", at_key=True)
    for key in ("moulding", "rabbet"):
        if lacks(piece, key, PieceEntry):
            message = f"{owner} needs {quote(key)} beside 'picture'"
            yield Flaw(path, message, f"add for example '{key}: {_EXAMPLES[key]}'")


def _check_size(path: Path, piece: dict[str, Any], owner: str) -> Iterator[Flaw]:
    if lacks(piece, "size", PieceEntry) and lacks(piece, "picture", PieceEntry):
        yield Flaw(path, f"{owner} needs 'size'", f"add for example 'size: {_EXAMPLES['size']}'")
    for key in ("mat", "moulding", "rabbet"):
        if key in piece:
            message = f"{quote(key)} does not apply without 'picture'"
            hint = "remove it, or give the picture's own size as 'picture' in place of 'size'"
            yield Flaw((*path, key), message, hint, at_key=True)


def _check_moulding(path: Path, moulding: dict[str, Any], *, is_width_given: bool) -> Iterator[Flaw]:
    """The moulding's width is told once."""
    if is_width_given and "width" in moulding:
        message = "'width' does not apply beside the piece's own 'moulding'"
        yield Flaw((*path, "width"), message, "keep one of the two", at_key=True)
    elif not is_width_given and "width" not in moulding:
        yield Flaw(path, "'moulding' needs 'width'", "add for example 'width: 30 mm'")
