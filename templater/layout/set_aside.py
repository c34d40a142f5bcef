"""Turns pieces that are not to hang into comments of the layout's text, so that nothing is lost."""

from __future__ import annotations

import re
from collections.abc import Collection, Iterator

from templater.errors import Fault, LayoutError
from templater.layout.names import fold_name
from templater.layout.read import read_layout
from templater.layout.spans import Span, read_spans
from templater.quoting import quote

_MARK = "\ufeff"
_LINE = re.compile(r"[^\r\n]*(?:\r\n|\r|\n|\Z)")
_NOT_CHOSEN = "# not chosen: "


def set_aside_pieces(text: str, names: Collection[str]) -> str:
    """The layout's text with the entries of some pieces made comments, all else as it was.

    Raises LayoutError where the result would not read back.
    """
    plain = text.removeprefix(_MARK)
    pieces = read_spans(plain).find("pieces")
    if not names or pieces is None:
        return text
    folded = {fold_name(name) for name in names}
    chosen = [number for number, part in enumerate(pieces.parts) if _name_of(part) in folded]
    edit = _cut_from_line if pieces.is_flow else _comment_out
    changed = edit(plain, pieces, chosen)
    if faults := read_layout(changed, "layout").faults:
        shown = ", ".join(map(quote, names))
        message = f"what is not chosen ({shown}) cannot be set aside: {faults[0].message}"
        hint = "take those pieces out by hand, then try again"
        raise LayoutError([Fault(message, hint)])
    return text[: len(text) - len(plain)] + changed


def _name_of(entry: Span) -> str | None:
    name = entry.find("name") if entry.pairs else None
    return None if name is None or name.text is None else fold_name(name.text)


def _comment_out(text: str, pieces: Span, chosen: Collection[int]) -> str:
    """Entries of a list on lines of their own: each of their lines becomes a comment."""
    starts = [match.start() for match in _LINE.finditer(text)]
    lines = [match.group() for match in _LINE.finditer(text)]
    for number in chosen:
        entry = pieces.parts[number]
        dash = text.rindex("-", 0, entry.start)
        column = dash - max(start for start in starts if start <= dash)
        for index, start in enumerate(starts):
            is_within = start + len(lines[index]) > dash and start < entry.end
            if is_within and lines[index].strip() and not lines[index].startswith("#", column):
                lines[index] = f"{lines[index][:column]}# {lines[index][column:]}"
    return "".join(lines)


def _cut_from_line(text: str, pieces: Span, chosen: Collection[int]) -> str:
    """Entries of a list in brackets: each moves to a comment above the line where the list is."""
    line = max(text.rfind("\n", 0, pieces.start), text.rfind("\r", 0, pieces.start)) + 1
    newline = next(_list_newlines(text), "\n")
    kept = [part for number, part in enumerate(pieces.parts) if number not in chosen]
    gone = [pieces.parts[number] for number in chosen]
    notes = "".join(
        f"{_NOT_CHOSEN}{' '.join(text[part.start : part.end].split())}{newline}" for part in gone
    )
    inside = ", ".join(text[part.start : part.end] for part in kept)
    return f"{text[:line]}{notes}{text[line : pieces.start]}[{inside}]{text[pieces.end :]}"


def _list_newlines(text: str) -> Iterator[str]:
    """The line ends of a text as they are written."""
    return (match.group() for match in re.finditer(r"\r\n|\r|\n", text))
