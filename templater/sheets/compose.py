"""A whole kit: every page in the order of printing, each template drawn when its turn comes."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace

from templater.geometry import Box, Size
from templater.layout.model import Layout
from templater.lengths import Unit
from templater.paper import default_paper
from templater.placement.model import PlacedPiece, Plan
from templater.printing.model import PrintSetup, Tiling
from templater.rules.model import Finding
from templater.scene.checklist import draw_checklist
from templater.scene.cover import draw_cover
from templater.scene.measure_form import draw_measure_form
from templater.scene.model import Form, PageDrawing
from templater.scene.overview import draw_overview
from templater.scene.print_test import draw_print_test
from templater.scene.sheet_block import SheetNames
from templater.scene.steps import draw_steps
from templater.scene.template import draw_template
from templater.sheets.lay_out import lay_out_pages, lay_out_template, piece_target, whole_template
from templater.sheets.model import Layer, Page, PageKind
from templater.sheets.revision import name_revision

_LARGEST_TEXT_PAGE = 300.0
"""Papers whose short side is longer are for templates; what is read comes on A4 or Letter, mm."""


@dataclass(frozen=True, slots=True)
class TemplatePages:
    """One piece: its sheets, and its template as one drawing that shows the box ``view``."""

    piece: PlacedPiece
    pages: tuple[Page, ...]
    layers: tuple[Layer, ...]
    view: Box


@dataclass(frozen=True, slots=True)
class Kit:
    """Everything that is printed for one wall; templates come one at a time."""

    plan: Plan
    setup: PrintSetup
    revision: str
    cover: tuple[Page, ...]
    overview: tuple[Page, ...]
    checklist: tuple[Page, ...]
    tilings: Mapping[str, Tiling]
    page_count: int

    def templates(self) -> Iterator[TemplatePages]:
        """Draw the pieces in the order of the layout."""
        first = len(self.cover) + len(self.overview) + 1
        for piece in self.plan.pieces:
            tiling = self.tilings[piece.slug]
            title = f"{self.plan.title} · {self.plan.issue}" if self.plan.issue else self.plan.title
            printer = self.setup.printer.name if self.setup.printer else None
            names = SheetNames(title, piece.name, self.revision, first, self.page_count, printer)
            drawing = draw_template(piece, self.plan, tiling, names)
            layers, view = whole_template(drawing)
            pages = tuple(lay_out_template(drawing, tiling, piece, self.setup))
            yield TemplatePages(piece, pages, layers, view)
            first += len(tiling.tiles)


def compose_kit(
    plan: Plan,
    findings: Sequence[Finding],
    tilings: Mapping[str, Tiling],
    setup: PrintSetup,
    *,
    version: str,
) -> Kit:
    """Draw all pages but the templates, and number them."""
    revision = name_revision(plan, setup, version)
    form, wide = text_form(setup, plan.units), overview_form(setup)
    targets = {piece.slug: piece_target(piece.slug) for piece in plan.pieces}
    parts: tuple[tuple[Sequence[PageDrawing], PageKind, Form], ...] = (
        (
            (
                *draw_cover(plan, tilings, setup, form, revision=revision),
                *draw_print_test(form),
                *draw_steps(plan, form, revision=revision),
            ),
            PageKind.COVER,
            form,
        ),
        (
            draw_overview(plan, findings, wide, revision=revision, piece_targets=targets),
            PageKind.OVERVIEW,
            wide,
        ),
        (draw_checklist(plan, form, revision=revision), PageKind.CHECKLIST, form),
    )
    sheets = sum(len(tiling.tiles) for tiling in tilings.values())
    counts = [len(drawings) for drawings, _, _ in parts]
    total = sum(counts) + sheets
    firsts = (1, 1 + counts[0], 1 + counts[0] + counts[1] + sheets)
    cover, overview, checklist = (
        lay_out_pages(
            drawings,
            kind,
            page_form,
            first_page=first,
            page_count=total,
            title=_title_foot(plan, setup),
            revision=revision,
        )
        for (drawings, kind, page_form), first in zip(parts, firsts, strict=True)
    )
    return Kit(plan, setup, revision, cover, overview, checklist, tilings, total)


def _title_foot(plan: Plan, setup: PrintSetup) -> str:
    """The kit's title at the foot of a page; with a printer's name where it is corrected for one."""
    return plan.title if setup.printer is None else f"for “{setup.printer.name}” only · {plan.title}"


def compose_measure_form(layout: Layout | None, setup: PrintSetup, units: Unit) -> tuple[Page, ...]:
    """The form for a far client; with a layout, what is known of it is filled in."""
    form = text_form(setup, units)
    drawings = draw_measure_form(layout, form)
    return tuple(
        Page(PageKind.FORM, drawing.size, (Layer(drawing.items),), label=str(number))
        for number, drawing in enumerate(drawings, 1)
    )


def text_form(setup: PrintSetup, units: Unit) -> Form:
    """A portrait page for what is read: the kit's paper, or A4 or Letter where that is too large."""
    paper = setup.paper
    if paper.is_roll or paper.size.width > _LARGEST_TEXT_PAGE:
        setup = replace(setup, paper=default_paper(units))
    return Form.of(setup, setup.page_sizes()[0])


def overview_form(setup: PrintSetup) -> Form:
    """A landscape page of the kit's paper; of a roll, as wide as the roll and in A's proportion."""
    wide = setup.page_sizes()[-1]
    if setup.paper.is_roll:
        wide = Size(wide.height * 2**0.5, wide.height)
    return Form.of(setup, wide)
