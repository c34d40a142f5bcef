"""The first page of the kit: what it is, how to print it, what is needed, and what to beware of."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace

from templater.drawing import Anchor, Line
from templater.geometry import Point
from templater.lengths import format_length, format_other
from templater.lettering import wrap
from templater.paper import PAPERS, Paper
from templater.placement.model import Plan
from templater.printing.model import Coverage, PrintSetup, SheetCounts, Tiling
from templater.rules.cautions.over_stairs import is_over_stairs
from templater.scene.contents import count_pieces, count_things, needs_no_hole, tell_no_hole
from templater.scene.guide.cautions import ADVICE, CABLES, CODES, HEAVY, choose_ladder
from templater.scene.guide.flow import (
    Listing,
    column_width,
    draw_page_heads,
    draw_section,
    flow,
    hold_together,
    section_width,
    text_area,
)
from templater.scene.lines import HUGE, LARGE, MEDIUM, TITLE
from templater.scene.model import Form, PageDrawing
from templater.scene.passages import Passage, draw_boxed, draw_list, draw_paragraph, stack_passages
from templater.scene.tables import Column, Fit, fit_columns

NARROW = 100.0
"""In a column below this width each caution has a box of its own, mm."""

_TOOLS = (
    "Removable tape, and scissors or a knife with a straight edge",
    "A steel ruler, a tape measure, a pencil",
    "A spirit level or a laser",
    "A detector for cables, pipes and studs",
    "A drill with bits; the hooks, screws and anchors that suit your wall",
    "A dust mask and eye protection",
)
_LADDER = "A step ladder that stands firmly"
_OVER_STAIRS = (
    f"{_LADDER}, for level floor only",
    "Over the stairs a platform or a ladder made for stairs, or a scaffold, and a second person",
)


def draw_cover(
    plan: Plan,
    tilings: Mapping[str, Tiling],
    counts: SheetCounts,
    setup: PrintSetup,
    form: Form,
    *,
    revision: str,
) -> tuple[PageDrawing, ...]:
    """The cover; ``tilings`` are by the pieces' slugs. A long list of sheets goes on further pages."""
    column = column_width(form)
    width = section_width(column)
    first = _draw_head(plan, form, revision)
    _, later = draw_page_heads("Cover", form)
    sheets = _list_sheets(plan, tilings, counts, setup, width)
    covers = draw_paragraph(_compare_covers(counts, setup.cover), width)
    parts = [
        *draw_section("What this is", [draw_paragraph(_describe_kit(plan), width)], column),
        *draw_section("Print it", _write_printing(plan, counts, setup, width), column),
        *draw_section("You need", [stack_passages(draw_list(_list_tools(plan), width))], column),
        *draw_section("Take care", _write_cautions(plan, width), column),
        *draw_section("The sheets", [hold_together(covers, sheets, form, later), sheets], column),
    ]
    return flow(parts, form, title="Cover", first_head=first, later_head=later, is_spread=False)


def _draw_head(plan: Plan, form: Form, revision: str) -> Passage:
    """The title as large as it fits two lines, for whom and from whom, the revision, a line below."""
    width = text_area(form).width
    height = HUGE if len(wrap(plan.title, HUGE, width, bold=True)) <= 2 else TITLE
    people = (("For", plan.for_whom), ("From", plan.from_whom), ("Contact", plan.contact))
    issue = f" · {plan.issue}" if plan.issue else ""
    names = [
        draw_paragraph(f"{word}: {name}", width, after_mm=0.8, most_lines=2)
        for word, name in people
        if name
    ]
    head = stack_passages(
        [
            draw_paragraph(plan.title, width, height_mm=height, bold=True, most_lines=3),
            *([stack_passages(names, after_mm=3.0)] if names else []),
            draw_paragraph(
                f"Revision {revision}{issue}", width, height_mm=LARGE, bold=True, most_lines=2
            ),
        ],
        after_mm=5.0,
    )
    below = -head.height_mm - 2.0
    rule = Line(Point(0.0, below), Point(width, below), MEDIUM)
    return replace(head, items=(*head.items, rule), height_mm=head.height_mm + 2.0)


def _describe_kit(plan: Plan) -> str:
    holes = count_things(plan.hole_count, "hole")
    templates = f"These are full-size paper templates for hanging {count_pieces(plan)} on one wall."
    if plan.hole_count:
        return (
            f"{templates} You tape them to the wall, look, measure, and drill {holes} straight through"
            " the crosses on the paper."
        )
    if all(needs_no_hole(piece, plan) for piece in plan.pieces):
        return f"{templates} You tape them to the wall, look and measure. No hole is needed."
    return (
        f"{templates} You tape them to the wall and look. No hole is marked yet: by what"
        " they hang was not told."
    )


def _write_printing(plan: Plan, counts: SheetCounts, setup: PrintSetup, width: float) -> list[Passage]:
    """Paper, settings and how many sheets."""
    total = count_things(counts.total(setup.cover), "sheet")
    device = "A plotter or a copy shop" if setup.paper.is_roll else "Any printer that takes the paper"
    which = f"{device} will do."
    if setup.printer is not None:
        which = f"Only the printer “{setup.printer.name}”: all pages are corrected for it."
    texts = [
        f"{which} Plain white paper and black ink are enough.",
        f"Paper: {describe_paper(setup.paper, plan)}.",
        "Size: “Actual size” or “100 %”. Never “Fit to page”.",
        "One side of the paper only.",
        f"{total} of templates; the list below tells how many for each piece.",
        "First print the page “Print test” alone and measure its rulers. Only then print the rest.",
    ]
    if counts.lie_both_ways:
        texts.insert(3, "Some sheets are wider than tall: leave the paper's direction on “Auto”.")
    return draw_list(texts, width)


def describe_paper(paper: Paper, plan: Plan) -> str:
    """The paper's name and size, the layout's own units first."""
    if paper.is_roll:
        both = (show(paper.size.width, plan.units) for show in (format_length, format_other))
        return "a roll {} wide ({})".format(*both)
    own, other = (
        f"{show(paper.size.width, plan.units)} × {show(paper.size.height, plan.units)}"
        for show in (format_length, format_other)
    )
    if paper.name not in PAPERS:
        return f"{own} ({other})"
    words = (
        word.upper() if len(word) <= 2 or word == "ansi" else word.title() for word in paper.name.split()
    )
    return f"{' '.join(words)}, {own} ({other})"


def _list_tools(plan: Plan) -> tuple[str, ...]:
    """What is needed, and to stand on what the stairs allow."""
    return (*_TOOLS, *(_OVER_STAIRS if is_over_stairs(plan) else (_LADDER,)))


def _write_cautions(plan: Plan, width: float) -> list[Passage]:
    """What holds for the whole job; what belongs to one step stands beside that step."""
    general = (ADVICE, CABLES, choose_ladder(plan), HEAVY, CODES)
    entries = [(caution.title, caution.text) for caution in general]
    if width < NARROW:
        return [draw_boxed((entry,), width) for entry in entries]
    return [draw_boxed(entries, width)]


def _list_sheets(
    plan: Plan, tilings: Mapping[str, Tiling], counts: SheetCounts, setup: PrintSetup, width: float
) -> Listing:
    """One row a piece and the sum of all."""
    rows = [
        (
            piece.name,
            str(len(piece.marks)) if piece.marks else tell_no_hole(piece, plan),
            counts.shared.get(piece.slug, str(len(tilings[piece.slug].tiles))),
            "cut out of a shared sheet"
            if piece.slug in counts.shared
            else count_grid(tilings[piece.slug]),
        )
        for piece in plan.pieces
    ]
    rows.append(("All", str(plan.hole_count), str(counts.total(setup.cover)), ""))
    columns = (
        Column("Piece", Fit.WRAPPED),
        Column("Holes", Fit.WRAPPED, anchor=Anchor.MIDDLE),
        Column("Sheets", anchor=Anchor.MIDDLE),
        Column("Laid out", Fit.WRAPPED),
    )
    return Listing(fit_columns(columns, rows, width), tuple(rows))


def _compare_covers(counts: SheetCounts, cover: Coverage) -> str:
    """How many sheets the templates take with each cover."""
    others = ", ".join(f"{each.value} {counts.total(each)}" for each in Coverage)
    return (
        f"Sheets of templates by cover: {others}. This kit is made with {cover.value}. Full: all of"
        " every piece; band: its top edge, holes and one corner; card: its holes."
    )


def count_grid(tiling: Tiling) -> str:
    """How a template's sheets lie: ``3 across, 2 down``, or ``3 rows: 2 + 2 + 1 sheets``."""
    if tiling.cover is not Coverage.FULL:
        return f"{tiling.cover.value} only"
    across = len({round(tile.clip.x0, 3) for tile in tiling.tiles})
    down = len({round(tile.clip.y0, 3) for tile in tiling.tiles})
    if across * down == len(tiling.tiles):
        return f"{across} across, {down} down"
    return _describe_courses(tiling)


def _describe_courses(tiling: Tiling) -> str:
    """How many sheets each course has; courses are rows where the sheets of one lie side by side."""
    courses: dict[str, list[Point]] = {}
    for tile in tiling.tiles:
        courses.setdefault(tile.name.rstrip("0123456789"), []).append(tile.keep.centre)
    first, second = next(course for course in courses.values() if len(course) > 1)[:2]
    kind = "row" if abs(second.x - first.x) > abs(second.y - first.y) else "column"
    counts = " + ".join(str(len(course)) for course in courses.values())
    return f"{count_things(len(courses), kind)}: {counts} sheets"
