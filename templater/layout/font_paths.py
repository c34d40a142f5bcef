"""The fonts that a layout gives: one path or a list of them, from the layout's own folder."""

from __future__ import annotations

from pathlib import PurePosixPath, PureWindowsPath
from typing import Annotated

from pydantic import PlainValidator

from templater.layout.values import fail, filled_text, is_unseen, show_value
from templater.quoting import quote

_MOST_FONTS = 8
_LONGEST = 250
_DEMAND = "the name of a font file, or a list of them"
_PUT_THERE = "put the font file into the folder of the layout, and write its name alone"


def _read_paths(raw: object) -> tuple[str, ...]:
    """The paths as written; whether there are such files is seen where they are read."""
    if not isinstance(raw, list):
        return (_read_path(raw),)
    if not 0 < len(raw) <= _MOST_FONTS:
        raise fail(f"needs 1 to {_MOST_FONTS} fonts, but has {len(raw)}", "list the fonts it needs")
    return tuple(map(_read_path, raw))


def _read_path(raw: object) -> str:
    path = filled_text(raw, _DEMAND).strip()
    if len(path) > _LONGEST:
        raise fail(f"has {len(path)} characters, more than {_LONGEST}", _PUT_THERE)
    if any(map(is_unseen, path)):
        raise fail(f"is {show_value(path)}, with a character that cannot be seen", "remove it")
    if PurePosixPath(path).is_absolute() or PureWindowsPath(path).anchor:
        raise fail(f"is {quote(path)}, which does not start in the layout's folder", _PUT_THERE)
    return path


FontPaths = Annotated[tuple[str, ...], PlainValidator(_read_paths, json_schema_input_type=str)]
