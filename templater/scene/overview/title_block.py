"""The overview's title block, and the notes that stand beside it: what the lines mean, cautions."""

from __future__ import annotations

from collections.abc import Iterator

from templater.drawing import Anchor, Circle, Dash, Item, Line, Words
from templater.geometry import Box, Point
from templater.layout.model import LeftRight
from templater.lettering import text_width
from templater.placement.model import Plan
from templater.scene.contents import count_pieces, count_things
from templater.scene.lines import (
    FINE,
    LARGE,
    MEDIUM,
    NORMAL,
    SMALL,
    THIN,
    centre_dash,
    datum_dash,
    short_dash,
    spaced_dash,
)
from templater.scene.marks import draw_box
from templater.scene.overview.named_things import draw_cross
from templater.scene.overview.surroundings import draw_hidden, draw_opening, is_hidden
from templater.scene.passages import (
    Passage,
    draw_paragraph,
    indent_passage,
    move_items,
    stack_passages,
)
from templater.scene.wording import describe_datum

PADDING = 1.5
"""Clear space inside the title block's cells, mm."""

_SAMPLE = 24.0
_HALF = _SAMPLE / 2 - 1

_BRIEF_CAUTIONS = (
    "Look for cables and pipes with a detector before you drill. The maker's rating of each hook, screw"
    " and anchor governs, and so do local codes. Heavy or doubtful work is for a licensed tradesperson."
)


def draw_title_block(plan: Plan, width_mm: float, *, scale: str, revision: str) -> Passage:
    """What the drawing is: title, people, scale, revision, issue, unit; one cell under the other."""
    room = width_mm - 2 * PADDING
    people = (("for", plan.for_whom), ("from", plan.from_whom), ("contact", plan.contact))
    named = "; ".join(f"{word}: {text}" for word, text in people if text)
    cells = [
        draw_paragraph(
            plan.title, room, height_mm=_fitting(plan.title, room, LARGE), bold=True, most_lines=2
        ),
        *([draw_paragraph(named, room, most_lines=3)] if named else []),
        draw_paragraph(scale, room, height_mm=_fitting(scale, room, NORMAL), bold=True),
        _draw_revision(revision, plan.issue, room),
        draw_paragraph(_describe_units(plan), room),
    ]
    return _rule_cells(cells, width_mm)


def draw_scale_line(plan: Plan, width_mm: float, scale: str) -> Passage:
    """The scale and the unit alone, for a page without a title block."""
    return draw_paragraph(f"{scale}. {_describe_units(plan)}", width_mm, bold=True)


def _fitting(text: str, room: float, height: float) -> float:
    """The height asked for if the bold text then stands on one line, else the next smaller."""
    smaller = {LARGE: NORMAL, NORMAL: SMALL}[height]
    return height if text_width(text, height, bold=True) <= room else smaller


def _describe_units(plan: Plan) -> str:
    """The unit of the figures and what the wall holds."""
    units = "inches (millimetres)" if plan.units.is_imperial else "millimetres (inches)"
    return f"Lengths in {units}. {count_pieces(plan)}, {count_things(plan.hole_count, 'hole')}."


def _draw_revision(revision: str, issue: str | None, room: float) -> Passage:
    """The revision, large, and the user's own word for the issue beside it, or below if it is long."""
    passage = draw_paragraph(f"rev {revision}", room, height_mm=LARGE, bold=True)
    if not issue:
        return passage
    used = text_width(f"rev {revision}", LARGE, bold=True) + 4.0
    text = f"issue {issue}"
    if text_width(text, NORMAL) > room - used:
        return stack_passages([passage, draw_paragraph(text, room, most_lines=2)], after_mm=0.0)
    baseline = next(item.at.y for item in passage.items if isinstance(item, Words))
    words = Words(Point(room, baseline), text, NORMAL, Anchor.END)
    return Passage((*passage.items, words), passage.height_mm)


def _rule_cells(cells: list[Passage], width_mm: float) -> Passage:
    """Cells one under the other in a frame, a line between each two."""
    items: list[Item] = []
    depth = 0.0
    for cell in cells:
        if depth:
            items.append(Line(Point(0.0, -depth), Point(width_mm, -depth), THIN))
        items += move_items(cell.items, PADDING, -depth - PADDING / 2)
        depth += cell.height_mm + PADDING
    items.append(draw_box(Box(0.0, -depth, width_mm, 0.0), MEDIUM))
    return Passage(tuple(items), depth)


def draw_key(plan: Plan, width_mm: float) -> Passage:
    """What each line and mark of the elevation means."""
    same = abs(plan.datum.height_mm - plan.eye_line_mm) < 0.01
    datum = (
        f"datum{', on the eye line' if same else ''}: {describe_datum(plan)}. Set it there once,"
        " carry it across level, and measure all heights from it: floors and ceilings slope."
    )
    lines = [_entry(_sample_line(MEDIUM, datum_dash(MEDIUM)), datum, width_mm)]
    if not same:
        eye = _sample_line(THIN, centre_dash(THIN))
        lines.append(_entry(eye, "eye line: middles of pieces and groups, as a rule", width_mm))
    cross = (*draw_cross(Point(_HALF - 6, 0)), Circle(Point(_HALF + 6, 0), 0.8, THIN))
    text = "cross: a hole, see the table; circle: from there the figures are measured"
    lines.append(_entry(cross, text, width_mm))
    lines += _explain_openings(plan, width_mm)
    if any(group.stair for group in plan.groups):
        nosing = _sample_line(THIN, short_dash(THIN))
        text = "nosing line, up the stairs: through the edges of the steps"
        lines.append(_entry(nosing, text, width_mm))
    if plan.studs:
        stud = _sample_line(FINE, spaced_dash(FINE))
        text = "upright dashes: the centre of a stud as it was told; find it again before you drill"
        lines.append(_entry(stud, text, width_mm))
    return stack_passages(lines)


def _explain_openings(plan: Plan, width_mm: float) -> Iterator[Passage]:
    """What is drawn in an opening whose leaf folds back, in all others, and behind furniture."""
    box = Box(_HALF - 3, -2.0, _HALF + 3, 2.0)
    fronts = [thing.box for thing in plan.furniture]
    hidden = [thing for thing in plan.obstacles if is_hidden(thing.box, fronts)]
    swings = {thing.swing is not None for thing in plan.obstacles if thing not in hidden}
    if False in swings:
        text = "crossed box: an opening or a fixture, which nothing may cover"
        yield _entry(tuple(draw_opening(box, box)), text, width_mm)
    if True in swings:
        leaf = draw_opening(box, box, hinges=LeftRight.LEFT)
        text = "dashes in a box: they meet at the hinges of its leaf, which folds back to that side"
        yield _entry(tuple(leaf), text, width_mm)
    if hidden:
        text = "dashed box: an opening or a fixture behind furniture"
        yield _entry(tuple(draw_hidden(box, box)), text, width_mm)


def _sample_line(width_mm: float, dash: Dash) -> tuple[Item, ...]:
    return (Line(Point(0, 0), Point(_SAMPLE - 2, 0), width_mm, dash),)


def _entry(sample: tuple[Item, ...], text: str, width_mm: float) -> Passage:
    """A sample of a line with its meaning beside it."""
    words = indent_passage(draw_paragraph(text, width_mm - _SAMPLE), _SAMPLE)
    first = next(item.at.y for item in words.items if isinstance(item, Words))
    return Passage(
        (*move_items(sample, 0.0, first + SMALL / 2), *words.items), words.height_mm, after_mm=0.7
    )


def draw_cautions(width_mm: float) -> Passage:
    """What to mind before a hole is drilled, in short."""
    return draw_paragraph(_BRIEF_CAUTIONS, width_mm, after_mm=0.0)
