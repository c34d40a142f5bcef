"""Finds what a group or a position asks for that cannot be, wherever on the wall it goes."""

from __future__ import annotations

import shlex
from collections.abc import Iterable, Iterator, Mapping

from templater.errors import Fault
from templater.geometry import Box
from templater.layout.model import Arrangement, Group, Layout
from templater.lengths import Unit, format_both
from templater.mounting.amounts import SLACK_MM, format_at_least
from templater.placement.arrange import add_lengths
from templater.placement.blocks import Block, GroupOnWall
from templater.placement.compose import hangs_around
from templater.placement.things import find_room, find_things
from templater.quoting import quote


def find_unmet_demands(layout: Layout, blocks: Iterable[Block]) -> Iterator[Fault]:
    """Every group that is left open, and every demand of the rest that cannot be met."""
    things = find_things(layout)
    for group in layout.groups:
        if group.open_choice is not None:
            hint = f"run: templater arrange {shlex.quote(group.at.file)}"
            yield Fault(f"{quote(group.name)} leaves its arrangement open", hint, group.at)
    for block in blocks:
        yield from _check_around(block)
        yield from _check_between(block, things, layout.units)
        for placed in block.groups:
            yield from _check_spread(placed, things, layout.units)
            yield from _check_ledge(placed, layout.units)
            yield from _check_heights(placed.group)


def _check_around(block: Block) -> Iterator[Fault]:
    """Something that is to hang on both sides of a thing but has no two sides."""
    around = block.position.around
    if around is not None and not (block.groups and hangs_around(block.groups[0].group)):
        yield Fault(
            f"{block} is to hang around {quote(around)}, but is no row or column of two or more",
            "use 'beside', or arrange two pieces or more as a row or column",
            block.position.at,
        )


def _check_between(block: Block, things: Mapping[str, Box], units: Unit) -> Iterator[Fault]:
    """Something that is too wide for the room between two things, or where there is none."""
    if block.position.between is None:
        return
    room = find_room(block.position.between, things)
    pair = f"between {quote(room.left)} and {quote(room.right)}"
    if room.width <= SLACK_MM:
        overlap = "they touch"
        if room.width < -SLACK_MM:
            overlap = f"they overlap by {format_at_least(-room.width, units)} across"
        message = f"{block} has no room {pair}: {overlap}"
        yield Fault(message, "name two things that stand apart", block.position.at)
    elif (excess := block.box.width - room.width) > SLACK_MM:
        amount = format_at_least(excess, units)
        message = f"{block} is {amount} too wide to hang {pair}, {format_both(room.width, units)} apart"
        yield Fault(message, f"make it narrower by at least {amount}", block.position.at)


def _check_spread(group: GroupOnWall, things: Mapping[str, Box], units: Unit) -> Iterator[Fault]:
    """Members that are longer than the length over which they are to be spread."""
    asked = group.group
    if asked.spread_mm is None:
        return
    sizes = [group.boxes[name].size for name in asked.members]
    if hangs_around(asked) and asked.position and asked.position.around:
        sizes.append(things[asked.position.around].size)
    excess = add_lengths(asked, sizes) - asked.spread_mm
    if excess > SLACK_MM:
        way = "tall" if asked.arrange is Arrangement.COLUMN else "wide"
        amount = format_at_least(excess, units)
        yield Fault(
            f"what is in group {quote(asked.name)} is {amount} too {way} "
            f"for its 'spread', {format_both(asked.spread_mm, units)}",
            f"make 'spread' longer by at least {amount}, or take something out",
            asked.at,
        )


def _check_ledge(group: GroupOnWall, units: Unit) -> Iterator[Fault]:
    """A row that is wider than the ledge it stands on."""
    asked = group.group
    if asked.ledge is None:
        return
    row = Box.around(group.boxes[name] for name in asked.members)
    excess = row.width - group.boxes[asked.ledge.piece].width
    if excess > SLACK_MM:
        amount = format_at_least(excess, units)
        yield Fault(
            f"the row of group {quote(asked.name)} is {amount} wider than its ledge",
            f"make the ledge's 'width' longer by at least {amount}, or the 'gap' smaller",
            asked.at,
        )


def _check_heights(group: Group) -> Iterator[Fault]:
    """Heights asked for in vain of a group that stairs or a ledge give its height."""
    if group.stair is not None:
        way, act = "along stairs", "use 'eye_line', measured up from the steps' edges"
        keys = ["bottom", "top"]
    elif group.ledge is not None:
        way, act = "on a ledge", "use the ledge's 'height'"
        keys = ["eye_line", "bottom", "top"]
    else:
        return
    what = f"group {quote(group.name)} hangs {way}"
    if group.position is None:
        message = f"{what}, so it cannot be part of another group"
        yield Fault(message, "take it out of the other group", group.at)
        return
    for key in keys:
        if getattr(group.position, f"{key}_mm") is not None:
            message = f"{what}, which gives its height, so {quote(key)} does not apply"
            yield Fault(message, f"remove it, or {act}", group.at)
