"""The print test: rulers that tell whether paper comes out full size, and what the printer cuts off.

The rulers across and up share their zero and are 3 : 4 (on a wide page 4 : 3), so from end to end is
5: one more whole length, which tells whether the paper went through the printer squarely.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from math import ceil, floor, hypot

from templater.drawing import Anchor, Circle, Item, Line, Words
from templater.geometry import Box, Point
from templater.lengths import format_inches
from templater.lettering import ASCENT, DESCENT
from templater.scene.guide.flow import column_width, draw_page_heads, flow
from templater.scene.lines import FINE, LARGE, SMALL, THIN
from templater.scene.model import Form, PageDrawing
from templater.scene.passages import (
    Passage,
    draw_boxed,
    draw_heading,
    draw_list,
    draw_paragraph,
    move_items,
    stack_passages,
)

TITLE = "Print test"

INCH = 25.4

TICKS = (3.0, 2.2, 1.4)
"""Lengths of a ruler's ticks, from whole numbers down, mm."""

FIGURE_GAP = 0.8
"""From a tick to its figure, mm."""

RING = 1.0
"""Radius of the rings at the free ends of the rulers, mm."""

EDGE_TICKS = 15
"""So many mm from the paper's edge the edge rulers reach."""

EDGE_TICK_LENGTH = 3.4

EDGE_DEPTH = 20.5
"""What an edge ruler takes from the edge inward, figures included, mm."""

UP_INCHES = Point(12.0, 10.0)
"""The zero of the inches that run up, from the zero that the rulers share, mm."""

NARROWEST = 70.0
"""The words stand between the rulers where they find this width, mm; else on the next page."""


@dataclass(frozen=True, slots=True)
class LongRulers:
    """The long rulers of one page: the zero that they share and their lengths in mm."""

    zero: Point
    across_mm: float
    up_mm: float

    @property
    def corner_mm(self) -> float:
        """From the end of one to the end of the other (3 : 4 : 5)."""
        return hypot(self.across_mm, self.up_mm)

    @property
    def inches_across(self) -> int:
        """Whole inches on the ruler across."""
        return floor(self.across_mm / INCH)

    @property
    def inches_up(self) -> int:
        """Whole inches on the ruler up, which start higher than the millimetres."""
        return floor((self.up_mm - UP_INCHES.y) / INCH)


def fit_rulers(form: Form) -> LongRulers:
    """The longest rulers of 30 k and 40 k mm that the page has room for; k is 1 at least.

    The longer one lies along the page's longer side.
    """
    inner = form.inner
    below = TICKS[0] + FIGURE_GAP + (ASCENT + DESCENT) * SMALL
    zero = Point(max(EDGE_DEPTH, form.printable.x0 + RING), inner.y0 + below + 0.2)
    across, up = (40.0, 30.0) if form.size.width > form.size.height else (30.0, 40.0)
    k = max(1, floor(min((inner.x1 - RING - zero.x) / across, (inner.y1 - RING - zero.y) / up)))
    return LongRulers(zero, across * k, up * k)


def draw_print_test(form: Form) -> tuple[PageDrawing, ...]:
    """The kit's test page."""

    def write(rulers: LongRulers, width_mm: float) -> list[Passage]:
        return _write_words(form, rulers, width_mm)

    return draw_ruler_page(TITLE, form, write)


def draw_ruler_page(
    title: str,
    form: Form,
    write: Callable[[LongRulers, float], list[Passage]],
    *,
    rulers: LongRulers | None = None,
) -> tuple[PageDrawing, ...]:
    """A page of rulers and the words on them; where it is small they go on on a page of their own.

    ``write`` is told the rulers, and how wide the words may stand (mm). The rulers are the longest
    that fit, unless others are given.
    """
    rulers = rulers or fit_rulers(form)
    marks = (*draw_long_rulers(rulers), *draw_edge_rulers(form, rulers))
    room = _room_for_words(form, rulers)
    first, later = draw_page_heads(title, form)
    passages, count = write(rulers, column_width(form)), 0
    if room.width >= NARROWEST:
        beside = [draw_heading(title, room.width, height_mm=LARGE), *write(rulers, room.width)]
        count = _count_fitting(beside, room.height)
        words = stack_passages(beside[:count])
        marks = (*marks, *move_items(words.items, room.x0, room.y1))
        passages, first = passages[count - 1 :], later
    page = PageDrawing(title, form.size, marks)
    if not passages:
        return (page,)
    return (page, *flow(passages, form, title=title, first_head=first, later_head=later))


def _count_fitting(passages: Sequence[Passage], height_mm: float) -> int:
    """How many passages stand one under the other beside the rulers; one at the least.

    All, if they find room; else whole sections, of which the last two go on together elsewhere, so
    that they fill more than the head of a page.
    """
    counts = range(1, len(passages) + 1)
    fits = [count for count in counts if stack_passages(passages[:count]).height_mm <= height_mm]
    most = max(fits, default=1)
    heads = [place for place in range(1, most + 1) if place < len(passages) and passages[place].needs_mm]
    return most if most == len(passages) or not heads else heads[-2:][0]


def _room_for_words(form: Form, rulers: LongRulers) -> Box:
    """Between the rulers; no wider than reads well."""
    left = rulers.zero.x + UP_INCHES.x + 12.0
    right = min(form.size.width - EDGE_DEPTH, form.printable.x1) - 4.0
    top = min(form.size.height - EDGE_DEPTH, form.inner.y1) - 4.0
    return Box(left, rulers.zero.y + 14.0, min(right, left + 145.0), top)


def draw_long_rulers(rulers: LongRulers) -> tuple[Item, ...]:
    """Across: millimetres above the line, inches below; up: two lines, figures on their right."""
    zero = rulers.zero

    def above(along: float, aside: float) -> Point:
        return zero.moved(along, aside)

    def below(along: float, aside: float) -> Point:
        return zero.moved(along, -aside)

    def upward(along: float, aside: float) -> Point:
        return zero.moved(aside, along)

    def upward_inches(along: float, aside: float) -> Point:
        return zero.moved(UP_INCHES.x + aside, UP_INCHES.y + along)

    figure = TICKS[0] + FIGURE_GAP
    return (
        *_draw_millimetres(above, rulers.across_mm, figure + DESCENT * SMALL, turned=False),
        *_draw_inches(below, rulers.inches_across, figure + ASCENT * SMALL, turned=False),
        *_draw_millimetres(upward, rulers.up_mm, figure + ASCENT * SMALL, turned=True),
        *_draw_inches(upward_inches, rulers.inches_up, figure + ASCENT * SMALL, turned=True),
        Line(upward_inches(0.0, 0.0), upward_inches(rulers.inches_up * INCH, 0.0), THIN),
        Circle(above(rulers.across_mm, 0.0), RING, THIN),
        Circle(upward(rulers.up_mm, 0.0), RING, THIN),
    )


_Place = Callable[[float, float], Point]
"""A point of a ruler: so far along it, so far to the side of its figures."""


def _draw_millimetres(place: _Place, length_mm: float, baseline: float, *, turned: bool) -> list[Item]:
    """A line with a tick every millimetre and a figure every 20.

    The zero is figured once, under the corner; the ruler up leaves the corner to the one across.
    """
    first = ceil(TICKS[0]) + 1 if turned else 0
    ticks = [
        Line(place(mm, 0.0), place(mm, _tick_length(mm, 10)), FINE)
        for mm in range(first, round(length_mm) + 1)
    ]
    figures = [
        Words(place(mm, baseline), str(mm), SMALL, Anchor.MIDDLE, turned=turned)
        for mm in range(20, round(length_mm) - 14, 20)
    ]
    end = place(length_mm + RING, baseline)
    last = Words(end, f"{length_mm:.0f} mm", SMALL, Anchor.END, bold=True, turned=turned)
    return [Line(place(0.0, 0.0), place(length_mm, 0.0), THIN), *ticks, *figures, last]


def _draw_inches(place: _Place, inches: int, baseline: float, *, turned: bool) -> list[Item]:
    """A tick every eighth of an inch and a figure every inch."""
    ticks = [
        Line(place(eighth * INCH / 8, 0.0), place(eighth * INCH / 8, _tick_length(eighth, 8)), FINE)
        for eighth in range(inches * 8 + 1)
    ]
    figures = [
        Words(place(inch * INCH, baseline), str(inch), SMALL, Anchor.MIDDLE, turned=turned)
        for inch in range(inches)
    ]
    end = place(inches * INCH + RING, baseline)
    return [*ticks, *figures, Words(end, f"{inches} in", SMALL, Anchor.END, bold=True, turned=turned)]


def _tick_length(number: int, whole: int) -> float:
    """Long at every whole, shorter at the halves, shortest between."""
    if number % whole == 0:
        return TICKS[0]
    return TICKS[1] if number % (whole // 2) == 0 else TICKS[2]


def draw_edge_rulers(form: Form, rulers: LongRulers) -> tuple[Item, ...]:
    """At each edge a stair of short lines, each numbered by its distance from the edge in mm.

    They stand where the printer may not reach: that is what they show.
    """
    return (
        *_draw_side_stair(form, rulers, right=False),
        *_draw_side_stair(form, rulers, right=True),
        *_draw_top_stair(form, rulers),
        *_draw_bottom_stair(form),
    )


def _draw_side_stair(form: Form, rulers: LongRulers, *, right: bool) -> list[Item]:
    """Upright lines with their figures beside them, about half-way up the page."""
    pitch = 4.3
    lowest = rulers.zero.y + 16.0
    count = min(EDGE_TICKS, int((form.size.height - EDGE_DEPTH - lowest) / pitch))
    bottom = max(lowest, (form.size.height - EDGE_TICKS * pitch) / 2)
    sign, edge = (-1.0, form.size.width) if right else (1.0, 0.0)
    items: list[Item] = []
    for mm in range(1, count + 1):
        x, y = edge + sign * mm, bottom + (count - mm) * pitch
        items.append(Line(Point(x, y), Point(x, y + EDGE_TICK_LENGTH), THIN))
        at = Point(x + sign * 0.7, y + (EDGE_TICK_LENGTH - SMALL) / 2)
        items.append(Words(at, str(mm), SMALL, Anchor.END if right else Anchor.START))
    return items


def _draw_top_stair(form: Form, rulers: LongRulers) -> list[Item]:
    """Level lines with their figures under them."""
    pitch = 4.7
    leftmost = rulers.zero.x + UP_INCHES.x + 10.0
    count = min(EDGE_TICKS, int((form.size.width - EDGE_DEPTH - leftmost) / pitch))
    left = max(leftmost, (form.size.width - EDGE_TICKS * pitch) / 2)
    items: list[Item] = []
    for mm in range(1, count + 1):
        x, y = left + (mm - 1) * pitch, form.size.height - mm
        items.append(Line(Point(x, y), Point(x + EDGE_TICK_LENGTH, y), THIN))
        at = Point(x + EDGE_TICK_LENGTH / 2, y - 0.5 - ASCENT * SMALL)
        items.append(Words(at, str(mm), SMALL, Anchor.MIDDLE))
    return items


def _draw_bottom_stair(form: Form) -> list[Item]:
    """Level lines with their figures beside them, as far up as the page's own foot line lets them."""
    pitch = EDGE_TICK_LENGTH + 5.8
    highest = form.printable.y0 - ASCENT * SMALL - 0.1
    count = min(EDGE_TICKS, floor(form.printable.y0 - 0.2), int((form.size.width - 16.0) / pitch))
    left = (form.size.width - count * pitch) / 2
    items: list[Item] = []
    for mm in range(1, count + 1) if highest > DESCENT * SMALL else ():
        x = left + (mm - 1) * pitch
        items.append(Line(Point(x, mm), Point(x + EDGE_TICK_LENGTH, mm), THIN))
        baseline = min(max(mm, DESCENT * SMALL), highest)
        items.append(Words(Point(x + EDGE_TICK_LENGTH + 0.6, baseline), str(mm), SMALL))
    return items


def _write_words(form: Form, rulers: LongRulers, width_mm: float) -> list[Passage]:
    """What to do with the page, in the order in which it is done."""
    across, up, corner = (f"{mm:.0f} mm" for mm in (rulers.across_mm, rulers.up_mm, rulers.corner_mm))
    return [
        draw_paragraph(
            "Print this page first, alone: with the printer, the paper and the settings that you"
            " will use for all the others. Measure it with a good steel ruler or tape.",
            width_mm,
        ),
        *draw_list(
            (
                f"The long ruler across must be {across}; the inches under it,"
                f" {rulers.inches_across} in.",
                f"The long ruler up must be {up}; the inches beside it, {rulers.inches_up} in.",
                f"From ring to ring must be {corner} ({format_inches(rulers.corner_mm)}).",
            ),
            width_mm,
        ),
        draw_paragraph("All three right to 0.5 mm (1/64 in)? Print the rest.", width_mm, bold=True),
        draw_heading("If one is off", width_mm),
        draw_paragraph(
            "Print it again. In the print window choose “Actual size” or “100 %”. Switch off"
            " “Fit to page”, “Shrink” and “Scale”. Measure again.",
            width_mm,
        ),
        draw_boxed(
            (
                (
                    "Still off by more than 0.5 mm?",
                    "Do not drill by these sheets. Try another printer, or a copy shop, and measure"
                    " again; or tell whoever sent you this kit the three lengths that you measured:",
                ),
            ),
            width_mm,
        ),
        *(
            draw_paragraph(f"{name}: ____________ mm", width_mm)
            for name in ("Across", "Up", "From ring to ring")
        ),
        draw_heading("The edges", width_mm),
        draw_paragraph(
            "No printer reaches the edge of the paper. The short lines along each edge are numbered"
            f" in mm from the edge; the lowest ones may be missing. You must see {describe_edges(form)},"
            " and the whole line of words at the foot. If one is cut off, ask for sheets with a wider"
            " margin.",
            width_mm,
        ),
    ]


def describe_edges(form: Form) -> str:
    """From which line on the edge rulers must be whole."""
    page, reach = form.size, form.printable
    margins = {"left": reach.x0, "right": page.width - reach.x1, "top": page.height - reach.y1}
    first = {side: max(1, ceil(mm - 1e-6)) for side, mm in margins.items()}
    if len(set(first.values())) == 1:
        lines = f"from {first['left']} on at the left, the right and the top"
    else:
        lines = "from {left} on at the left, from {right} at the right, from {top} at the top".format(
            **first
        )
    return f"the lines {lines}"
