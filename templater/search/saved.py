"""Writes what was chosen into the layout's text."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from templater.layout.model import Group, Layout
from templater.layout.rewrite import settle_groups
from templater.layout.set_aside import set_aside_pieces
from templater.layout.written import Written, write_choice
from templater.lengths import Unit
from templater.search.model import Settlement


def save_choices(text: str, layout: Layout, settlements: Sequence[Settlement]) -> str:
    """The layout's text with every open group settled, all else as it was, comments too.

    Pieces of a pool that nothing took become comments, or they would hang by themselves. Raises
    LayoutError where the text cannot be changed so.
    """
    groups = {group.name: group for group in layout.groups}
    pools: dict[str, None] = {}
    chosen: dict[str, Mapping[str, Written]] = {}
    for settlement in settlements:
        settled, was = settlement.choice.group, groups[settlement.name]
        chosen[settlement.name] = _list_keys(settled, was, layout.units)
        pools |= dict.fromkeys((was.open_choice.pool or ()) if was.open_choice else ())
    taken = {name for settlement in settlements for name in settlement.choice.group.members}
    return set_aside_pieces(settle_groups(text, chosen), [name for name in pools if name not in taken])


def _list_keys(settled: Group, was: Group, units: Unit) -> Mapping[str, Written]:
    """The keys of a group that were open, and what they are now."""
    choice = was.open_choice
    if choice is None:
        return {}
    is_open = dict.fromkeys(("arrange", "columns", "cells"), choice.arrange)
    is_open |= {"pieces": choice.pool is not None, "gap": choice.gap}
    return {key: value for key, value in write_choice(settled, units).items() if is_open[key]}
