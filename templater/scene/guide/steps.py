"""The instructions: step by step from the printer to the wall, each with a small drawing."""

from __future__ import annotations

from dataclasses import dataclass, replace

from templater.drawing import Item
from templater.lengths import format_both, format_length
from templater.placement.model import Plan
from templater.scene.guide.cautions import (
    BEDS,
    CABLES,
    DUST,
    EARTHQUAKE,
    HEAT,
    HEAVY,
    RATING,
    Caution,
    choose_ladder,
)
from templater.scene.guide.flow import GUTTER, Part, column_width, draw_page_heads, flow
from templater.scene.guide.step_pictures import (
    PICTURE,
    draw_card,
    draw_corner,
    draw_cutting_apart,
    draw_datum,
    draw_diagonals,
    draw_drilling,
    draw_hanging,
    draw_height_check,
    draw_levelling,
    draw_levelling_again,
    draw_printing,
    draw_ruler_check,
    draw_spacer,
    draw_stepping_back,
    draw_taping,
    draw_taping_up,
    draw_tearing,
)
from templater.scene.model import Form, PageDrawing
from templater.scene.passages import (
    Passage,
    draw_boxed,
    draw_heading,
    draw_paragraph,
    indent_passage,
    move_items,
    stack_passages,
)

NARROW = 112.0
"""In a column below this width the drawing stands above its words, not beside them, mm."""


@dataclass(frozen=True, slots=True)
class PaperWork:
    """What a kit's paper asks for that not every kit does.

    Sheets that join; templates to be cut out of shared sheets; spacers; the corner of a band and
    cards, which are set on the wall by measure.
    """

    is_joined: bool = True
    is_shared: bool = False
    has_spacers: bool = False
    has_corners: bool = False
    has_cards: bool = False

    @property
    def is_partial(self) -> bool:
        """Whether something of a template is not on paper."""
        return self.has_corners or self.has_cards


PLAIN = PaperWork()
"""Every template whole, of several sheets of its own."""


@dataclass(frozen=True, slots=True)
class Step:
    """One thing to do, what it looks like, and what to beware of while doing it."""

    title: str
    text: str
    picture: tuple[Item, ...]
    cautions: tuple[Caution, ...] = ()


def draw_steps(
    plan: Plan, form: Form, *, revision: str, work: PaperWork = PLAIN
) -> tuple[PageDrawing, ...]:
    """All steps in order, on as many pages as they need."""
    width = column_width(form)
    first, later = draw_page_heads("Step by step", form)
    parts: list[Part] = []
    for number, step in enumerate(list_steps(plan, revision, work), 1):
        parts += _draw_step(number, step, width)
    return flow(parts, form, title="Step by step", first_head=first, later_head=later)


def list_steps(plan: Plan, revision: str, work: PaperWork = PLAIN) -> tuple[Step, ...]:
    """What is done with the kit of this wall, from first to last."""
    return (
        *_printing_steps(revision),
        *([_CUT_APART] if work.is_shared else []),
        *_paper_steps(work),
        *_wall_steps(plan, work),
        *_hole_steps(),
    )


_CUT_APART = Step(
    "Cut shared sheets apart",
    "Sheets named S1, S2 and so on hold several templates. Check the ruler first: it stays behind. Then"
    " cut on the dashed line round each template. Every part bears its piece's name and the revision:"
    " keep parts of one piece together.",
    draw_cutting_apart(),
)
_SPACERS = Step(
    "Hold a spacer between neighbours",
    "Cut the strips on the page “Spacers” out. Hold one between two neighbours while you tape, where the"
    " paper shows the edges of both: it is as wide as their gap. If strip and lines do not agree, the"
    " lines decide: measure again.",
    draw_spacer(),
)
_CORNER = Step(
    "Set the bottom corner by measure",
    "Of a band, the sheet with the bottom left corner joins no other. Tape it straight below the top"
    " left corner, as far down as it says. Then check its distance from the top right corner. It is"
    " only for looking: no hole is on it.",
    draw_corner(),
)
_CARD = Step(
    "Set each card by measure",
    "A card shows only what is near the holes. Set its LEVEL LINE as far from the datum as it says."
    " Sideways, set its centre line at its distance from the wall's left end; where the card does not"
    " reach that line, set the hole at its own distance. With two cards for a piece, measure from hole"
    " to hole before you drill: the checklist tells how far it is.",
    draw_card(),
)


def _printing_steps(revision: str) -> tuple[Step, ...]:
    """At the printer."""
    return (
        Step(
            "Print",
            "Print every page at “Actual size” or “100 %”, on one side of the paper. Each sheet"
            f" bears the revision {revision}. Never mix it with sheets of another revision.",
            draw_printing(),
        ),
        Step(
            "Check the ruler",
            "Measure the page “Print test” first. Then, on each sheet, measure one of the bars of"
            " 100 mm and 4 in. If it is off, print that sheet again.",
            draw_ruler_check(),
        ),
    )


def _paper_steps(work: PaperWork) -> tuple[Step, ...]:
    """At the table: from sheets to whole templates."""
    part = " A band or a card tells what can be measured of it." if work.is_partial else ""
    cut_out = (
        f"{part} Then cut it out along the outline. Where it says “do not cut”, fold the paper back."
    )
    if not work.is_joined:
        text = (
            "Measure the width and the height of each template, and the diagonals where it tells them."
            f" Off by more than 1.5 mm (1/16 in)? Print it again.{cut_out}"
        )
        return (Step("Measure and cut out", text, draw_diagonals()),)
    return (
        Step(
            "Trim and tape the sheets",
            "Lay the sheets of one template out as the small map on each sheet shows; the names at"
            " the marks, such as “to B2”, tell which sheet joins there. At each join, cut the sheet"
            " to the right, or the lower sheet, on its trim line. Lay it over the strip of the"
            " other. The marks must meet. Then tape.",
            draw_taping(),
        ),
        Step(
            "Check the diagonals",
            "Measure the width, the height and both diagonals of the taped-up template. It tells"
            " what they must be. Off by more than 1.5 mm (1/16 in)? Take it apart and tape it again."
            f"{cut_out}",
            draw_diagonals(),
        ),
    )


def _wall_steps(plan: Plan, work: PaperWork) -> tuple[Step, ...]:
    """At the wall, before anything is drilled."""
    height = plan.datum.height_mm
    place = f"At this place: {plan.datum.at_place}," if plan.datum.at_place else "At one place"
    return (
        Step(
            "Set the datum",
            f"{place} measure {format_both(height, plan.units)} up from the floor and make a small"
            " pencil mark. Do this once only. From there draw one line across the wall with a spirit"
            " level or a laser: this line is the datum. Floors and ceilings slope: take every other"
            " height from the datum, never from the floor.",
            draw_datum(format_length(height, plan.units)),
            (choose_ladder(plan),),
        ),
        Step(
            "Tape the templates up",
            "Set each template by two lines. Its line DATUM lies on the datum that you drew. Where it"
            " has none, set its LEVEL LINE as far above or below the datum as is printed beside it; of"
            " a template without holes, the edge that it names. Its CENTRE LINE stands upright (use the"
            " level, or a weight on a string) at its distance from the wall's left end. The outline is"
            " only for looking.",
            draw_taping_up(),
        ),
        *([_CARD] if work.has_cards else []),
        *([_CORNER] if work.has_corners else []),
        *([_SPACERS] if work.has_spacers else []),
        Step(
            "Step back and look",
            "Look at the whole wall from across the room, and sitting down. Now is the time to change"
            " your mind: so far there is no hole.",
            draw_stepping_back(),
            (BEDS, HEAT),
        ),
        Step(
            "Check the heights",
            "For every cross, measure the distance from the datum and from the wall's left end; where a"
            " piece has two or more holes, also from hole to hole. The checklist on the last pages"
            " tells all of them. Tick “checked”.",
            draw_height_check(),
        ),
        Step(
            "Level across the crosses",
            "Where a piece has two or more holes at one height, hold the level across their crosses"
            " before you drill the first one. Not level? Set the template again.",
            draw_levelling(),
        ),
    )


def _hole_steps() -> tuple[Step, ...]:
    """From the first hole to the piece on the wall."""
    return (
        Step(
            "Drill through the marks",
            "Drill, or drive the nail, straight through the paper where the two lines cross. Use the"
            " bit, the anchor and the depth that the maker of your hook asks for. Where a piece has two"
            " or more holes, drill one only, then go to the next step. Tick “drilled”.",
            draw_drilling(),
            (CABLES, DUST, RATING, HEAVY),
        ),
        Step(
            "Level again after the first hole",
            "Where a piece has two or more holes, hold the level from the first hole to each cross at"
            " its height. If the first hole strayed, mark these level with it; a cross at another height"
            " moves as far up or down. Then drill them.",
            draw_levelling_again(),
        ),
        Step(
            "Tear the paper away",
            "Pull the paper off gently, tape first. Set the anchors, screws and hooks. Keep the"
            " template until the piece hangs.",
            draw_tearing(),
        ),
        Step(
            "Hang",
            "Hang the piece and make sure that every hanger has caught. Set it level. Tick “hung”.",
            draw_hanging(),
            (EARTHQUAKE,),
        ),
    )


def _draw_step(number: int, step: Step, column_mm: float) -> list[Passage]:
    """The drawing beside the words, or above them where the column is narrow; then the cautions."""
    gutter = GUTTER if column_mm >= NARROW else 0.0
    width = column_mm - gutter
    title = draw_heading(f"{number}. {step.title}", width, before_mm=0.0)
    words = stack_passages([title, draw_paragraph(step.text, width)])
    picture = Passage(move_items(step.picture, 0.0, -PICTURE.height), PICTURE.height)
    entries = [(f"Caution: {caution.title}", caution.text) for caution in step.cautions]
    if not gutter:
        boxes = [draw_boxed((entry,), width) for entry in entries]
        together = PICTURE.height + picture.after_mm + words.height_mm
        return [replace(picture, needs_mm=together), replace(words, after_mm=3.0), *boxes]
    right = [words, draw_boxed(entries, width)] if entries else [words]
    return [_set_side_by_side(picture, indent_passage(stack_passages(right), gutter))]


def _set_side_by_side(picture: Passage, right: Passage) -> Passage:
    """One step whole: the drawing at the left, the words and their cautions at the right."""
    height = max(picture.height_mm, right.height_mm)
    return Passage((*picture.items, *right.items), height, 3.0)
