"""A layout's way through the whole core, and the one promise of it: success, or faults to mend."""

from __future__ import annotations

import re
from collections.abc import Mapping
from contextlib import redirect_stdout
from enum import Enum
from io import StringIO

from templater.commands.check_report import print_report
from templater.commands.for_programs import format_findings, format_proposals
from templater.commands.proposals import print_proposals
from templater.errors import Fault, LayoutError
from templater.layout.model import Layout
from templater.layout.read import read_layout
from templater.layout.texts import list_texts
from templater.mounting.model import Mount
from templater.mounting.mount import mount_pieces
from templater.pipeline import PlannedWall, PrintChoices, count_wall, plan_kit, plan_wall
from templater.placement.place import place_pieces
from templater.reading_order import WITHOUT_ISOLATES
from templater.rules.check import check_all
from templater.search.saved import save_choices
from templater.search.settle import settle_groups

FILE = "hall.yaml"
_LONGEST = 700
"""Characters of a message or a hint; the longest is the list of a layout's keys."""

_LINE_END = re.compile("\r\n|\r|\n")


class Reached(Enum):
    """How far a layout came."""

    UNREAD = "refused by the reader"
    UNPLACED = "refused by mounting or placement"
    UNCUT = "refused by the paper"
    UNSETTLED = "refused by the search"
    DONE = "done"


class JourneyError(AssertionError):
    """A fault that breaks the promise: without a place, without an act, too long or unclean."""


def travel(content: bytes, *, far: bool, search: bool = True) -> Reached:
    """Take a layout through the core; judge all that is told.

    ``far``: on to its report and pages; ``search``: what it leaves open is searched, too.
    """
    reading = read_layout(content, FILE)
    _judge_faults(reading.faults, content)
    layout = reading.layout
    if layout is None:
        return Reached.UNREAD
    mounting = mount_pieces(layout)
    placement = place_pieces(layout, mounting.mounts)
    _judge_faults((*mounting.faults, *placement.faults), content)
    if reading.faults:
        return Reached.UNREAD
    if search and not mounting.faults and not _settle(layout, mounting.mounts, content):
        return Reached.UNSETTLED
    if mounting.faults or placement.faults:
        return Reached.UNPLACED
    return _go_on(PlannedWall(content, layout, placement.plan), content, far=far)


def _settle(layout: Layout, mounts: Mapping[str, Mount], content: bytes) -> bool:
    """Search what the layout leaves open, save it and plan that; whether there is a way."""
    if not any(group.open_choice for group in layout.groups):
        return True
    try:
        settlements = settle_groups(layout, mounts)
        saved = save_choices(content.decode(), layout, settlements).encode()
    except LayoutError as error:
        _judge_faults(error.faults, content)
        return False
    with redirect_stdout(StringIO()):
        print_proposals(settlements, list_texts(layout))
    format_proposals(settlements)
    try:
        plan_wall(saved, FILE)
    except LayoutError as error:
        _judge_faults(error.faults, saved)
    return True


def _go_on(wall: PlannedWall, content: bytes, *, far: bool) -> Reached:
    """Rules, sheets, report and pages of a wall on which everything has its place."""
    findings = check_all(wall.plan)
    format_findings(findings)
    if not far:
        return Reached.DONE
    try:
        counts = count_wall(wall)
        names, paper = list_texts(wall.layout), wall.layout.paper.name
        with redirect_stdout(StringIO()) as shown:
            print_report(wall.plan, findings, counts, paper=paper, names=names, show_all=True)
        if not shown.getvalue().translate(WITHOUT_ISOLATES).replace("\n", "").isprintable():
            raise JourneyError(f"the report has what cannot be printed: {shown.getvalue()!r}")
        plan_kit(wall, PrintChoices())
    except LayoutError as error:
        _judge_faults(error.faults, content)
        return Reached.UNCUT
    return Reached.DONE


def _judge_faults(faults: tuple[Fault, ...], content: bytes) -> None:
    lines = _LINE_END.split(content.decode("utf-8", "replace").removeprefix("\ufeff"))
    for fault in faults:
        _judge_fault(fault, lines)


def _judge_fault(fault: Fault, lines: list[str]) -> None:
    """One line and one act, short and clean, at a place that is in the file."""
    for text in (fault.message, fault.hint):
        if not 0 < len(text.strip()) <= _LONGEST or not text.isprintable():
            raise JourneyError(f"empty, long or unclean: {fault!r:.2000}")
    place = fault.place
    if place is None or place.file != FILE or not 1 <= place.line <= len(lines):
        raise JourneyError(f"no place in the file: {fault!r:.2000}")
    if not 1 <= place.column <= len(lines[place.line - 1]) + 1:
        raise JourneyError(f"past the end of its line: {fault!r:.2000}")
