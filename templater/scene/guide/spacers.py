"""Strips of paper as wide as the gaps between pieces, to hold between taped templates."""

from __future__ import annotations

from collections.abc import Collection, Iterator, Sequence
from dataclasses import dataclass

from templater.drawing import Item, Words
from templater.geometry import Box, Point
from templater.lengths import format_both
from templater.lettering import ASCENT, LINE_PITCH, shorten
from templater.placement.model import PlacedGroup, Plan
from templater.scene.guide.flow import draw_page_heads, text_area
from templater.scene.lines import MEDIUM, SMALL, THIN
from templater.scene.marks import draw_arrow, draw_box
from templater.scene.model import Form, PageDrawing
from templater.scene.passages import Passage, draw_paragraph, move_items, stack_passages

_LENGTH_MM = 200.0
_COPIES = 2
_APART_MM = 8.0
_LEAST_MM = 1.0
"""Pieces that hang nearer than this have no strip between them."""

_SAME_MM = 0.1
_ROW_MM = LINE_PITCH * SMALL
_WORDS_MM = 2 * _ROW_MM + 3.0
"""A strip as wide as this has its words on it; a narrower one has them below."""

_HOWTO = (
    "Cut the strips out on their lines. Hold one between two templates as you tape them: the strip is as"
    " wide as the gap. The holes are set by measure all the same, not by the strips."
)


@dataclass(frozen=True, slots=True)
class _Gap:
    """A gap of some groups, mm, and what its strips say."""

    width_mm: float
    text: str
    names: str

    @property
    def has_words_inside(self) -> bool:
        """Whether the words stand on the strip."""
        return self.width_mm >= _WORDS_MM

    def draw(self, length: float) -> Passage:
        """One strip."""
        width = self.width_mm
        items: list[Item] = [draw_box(Box(0.0, -width, length, 0.0), MEDIUM)]
        top = -width
        if self.has_words_inside:
            middle = Point(5.0, -width / 2)
            items += draw_arrow(middle, Point(5.0, -0.5), THIN)
            items += draw_arrow(middle, Point(5.0, -width + 0.5), THIN)
            top = _ROW_MM - width / 2
        for row, (text, bold) in enumerate(
            ((f"{self.text}: hold between the taped templates", True), (self.names, False))
        ):
            at = Point(10.0, top - ASCENT * SMALL - row * _ROW_MM)
            items.append(Words(at, shorten(text, SMALL, length - 12.0, bold), SMALL, bold=bold))
        depth = width if self.has_words_inside else width + 2 * _ROW_MM
        return Passage(tuple(items), depth, _APART_MM)

    def tell(self, width_mm: float) -> Passage:
        """What is said of a gap that is wider than a page is tall."""
        text = f"{self.text}: too wide for a strip of this paper, measure it. {self.names}"
        return draw_paragraph(text, width_mm, after_mm=_APART_MM)


def draw_spacers(
    plan: Plan, form: Form, *, revision: str, cards: Collection[str] = ()
) -> tuple[PageDrawing, ...]:
    """Two strips for every gap of the groups, several to a page; nothing where no group has a gap.

    A strip serves between neighbours whose sides are on paper, so not beside the ``cards``, the names
    of pieces of which only the holes are printed.
    """
    gaps = _list_gaps(plan, revision, cards)
    if not gaps:
        return ()
    area = text_area(form)
    first, later = draw_page_heads("Spacers", form)
    first = stack_passages([first, draw_paragraph(_HOWTO, area.width)], after_mm=_APART_MM)
    room, length = area.height - first.height_mm - _APART_MM, min(_LENGTH_MM, area.width)
    strips = [
        strip
        for gap in gaps
        for strip in ([gap.draw(length)] * _COPIES if gap.width_mm <= room else [gap.tell(area.width)])
    ]
    pages = _fill_pages(strips, first, later, area.height)
    return tuple(
        PageDrawing("Spacers", form.size, move_items(page.items, area.x0, area.y1)) for page in pages
    )


def _fill_pages(
    strips: Sequence[Passage], first: Passage, later: Passage, depth_mm: float
) -> Iterator[Passage]:
    """The strips one under the other, under a head, on as many pages as they need."""
    page = [first]
    for strip in strips:
        if stack_passages([*page, strip]).height_mm > depth_mm:
            yield stack_passages(page)
            page = [later]
        page.append(strip)
    yield stack_passages(page)


def _list_gaps(plan: Plan, revision: str, cards: Collection[str]) -> list[_Gap]:
    """The gaps that pieces of a group really have, each once, the narrowest first."""
    groups: dict[float, list[PlacedGroup]] = {}
    for group in sorted(plan.groups, key=lambda group: group.gap_mm):
        if group.gap_mm >= _LEAST_MM and _is_met(group, plan, cards):
            same = (width for width in groups if group.gap_mm - width < _SAME_MM)
            groups.setdefault(next(same, group.gap_mm), []).append(group)
    return [
        _Gap(
            width,
            f"gap {format_both(width, plan.units)}",
            f"rev {revision} · for {'; '.join(group.name for group in members)}",
        )
        for width, members in groups.items()
    ]


def _is_met(group: PlacedGroup, plan: Plan, cards: Collection[str]) -> bool:
    """Whether two neighbours in a group hang its gap apart, neither of them printed as a card."""
    members = set(group.pieces).difference(cards)
    return any(
        neighbour.name in members and abs(neighbour.gap_mm - group.gap_mm) < _SAME_MM
        for piece in plan.pieces
        if piece.name in members
        for neighbour in piece.neighbours
    )
