"""Texts, lists and lengths as they are written into a layout file."""

from __future__ import annotations

import json
import re
from collections.abc import Mapping, Sequence
from typing import TypeAlias

from templater.layout.model import Arrangement, Group
from templater.lengths import Unit, format_inches

Written: TypeAlias = "str | Sequence[str] | Mapping[str, str | Mapping[str, str]]"
"""What is to be written: a text, texts, or texts by their names, once more by theirs."""

_PLAIN = re.compile(r"[^\W_](?:[\w ./'()+%-]*[\w./'()+%-])?")
"""Texts that need no quotes, wherever they stand."""

_WIDEST = 100
_SAME_MM = 1e-6


def write_length(mm: float, units: Unit) -> str:
    """A length that reads back as the same one: sixteenths where it is whole ones, else decimals."""
    sixteenths = mm / 25.4 * 16
    if units.is_imperial and abs(sixteenths - round(sixteenths)) * 25.4 / 16 <= _SAME_MM:
        return format_inches(mm).replace("−", "-")
    return f"{mm:.6f}".rstrip("0").rstrip(".") + " mm"


def write_choice(group: Group, units: Unit) -> dict[str, Written]:
    """The keys that say how a settled group is composed, whichever of them were open before."""
    keys: dict[str, Written] = {"pieces": list(group.members), "arrange": group.arrange.value}
    if group.arrange is Arrangement.GRID and group.columns is not None:
        keys |= {"columns": str(group.columns), "cells": group.cells.value}
    if group.spread_mm is None:
        keys["gap"] = write_length(group.gap_mm, units)
    return keys


def write_text(text: str) -> str:
    """A text, quoted if it needs to be."""
    return text if _PLAIN.fullmatch(text) else json.dumps(text, ensure_ascii=False)


def write_pair(key: str, value: Written, *, column: int, newline: str, is_flow: bool) -> str:
    """A key and its value, to stand at a column; on several lines where one would be too long."""
    inline = f"{write_text(key)}: {_write_inline(value)}"
    if isinstance(value, str) or column + len(inline) <= _WIDEST:
        return inline
    indent = newline + " " * (column + 2)
    if isinstance(value, Mapping):
        lines = [f"{write_text(name)}: {_write_inline(inner)}" for name, inner in value.items()]
        opening, closing = "{", "}"
    else:
        lines = [write_text(text) if is_flow else f"- {write_text(text)}" for text in value]
        opening, closing = "[", "]"
    if not is_flow:
        return f"{write_text(key)}:{indent}{indent.join(lines)}"
    return f"{write_text(key)}: {opening}{indent}{f',{indent}'.join(lines)}{closing}"


def _write_inline(value: Written) -> str:
    """A value in one line."""
    if isinstance(value, str):
        return write_text(value)
    if isinstance(value, Mapping):
        pairs = (f"{write_text(key)}: {_write_inline(each)}" for key, each in value.items())
        return f"{{{', '.join(pairs)}}}"
    return f"[{', '.join(map(write_text, value))}]"
