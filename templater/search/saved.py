"""Writes what was chosen into the layout's text."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from templater.layout.model import Arrangement, Cells, Group, Layout
from templater.layout.rewrite import settle_group
from templater.layout.set_aside import set_aside_pieces
from templater.layout.written import Written, write_length
from templater.lengths import Unit
from templater.search.model import Settlement


def save_choices(text: str, layout: Layout, settlements: Sequence[Settlement]) -> str:
    """The layout's text with every open group settled, all else as it was, comments too.

    Pieces of a pool that nothing took become comments, or they would hang by themselves. Raises
    LayoutError where the text cannot be changed so.
    """
    groups = {group.name: group for group in layout.groups}
    pools: dict[str, None] = {}
    for settlement in settlements:
        settled, was = settlement.choice.group, groups[settlement.name]
        text = settle_group(text, settlement.name, _list_keys(settled, was, layout.units))
        pools |= dict.fromkeys((was.open_choice.pool or ()) if was.open_choice else ())
    taken = {name for settlement in settlements for name in settlement.choice.group.members}
    return set_aside_pieces(text, [name for name in pools if name not in taken])


def _list_keys(settled: Group, was: Group, units: Unit) -> Mapping[str, Written]:
    """The keys of a group that were open, and what they are now."""
    keys: dict[str, Written] = {}
    choice = was.open_choice
    if choice is None:
        return keys
    if choice.pool is not None:
        keys["pieces"] = list(settled.members)
    if choice.arrange:
        keys["arrange"] = settled.arrange.value
        if settled.arrange is Arrangement.GRID and settled.columns is not None:
            keys["columns"] = str(settled.columns)
            keys |= {"cells": "true"} if settled.cells is Cells.TRUE else {}
    if choice.gap:
        keys["gap"] = write_length(settled.gap_mm, units)
    return keys
