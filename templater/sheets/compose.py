"""A whole kit: every page in the order of printing, each template drawn when its turn comes."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace

from templater.geometry import Box, Size
from templater.layout.model import Layout
from templater.lengths import Unit
from templater.paper import default_paper
from templater.placement.model import PlacedPiece, Plan
from templater.printing.error import Errors
from templater.printing.model import Coverage, PrintSetup, Tiling
from templater.rules.model import Finding
from templater.scene.guide.checklist import draw_checklist
from templater.scene.guide.cover import draw_cover
from templater.scene.guide.measure_form import draw_measure_form
from templater.scene.guide.spacers import draw_spacers
from templater.scene.guide.steps import PaperWork, draw_steps
from templater.scene.guide.true_size import draw_print_test
from templater.scene.model import Form, PageDrawing
from templater.scene.overview.draw import draw_overview
from templater.scene.template.draw import draw_template, whole_tiling
from templater.scene.template.sheet_block import SheetNames
from templater.sheets.cuttings import expect_errors
from templater.sheets.lay_out import (
    lay_out_pages,
    lay_out_shared,
    lay_out_template,
    piece_target,
    whole_template,
)
from templater.sheets.model import Layer, Page, PageKind
from templater.sheets.revision import name_revision
from templater.sheets.share import (
    SharedPage,
    count_all_sheets,
    name_sheets,
    share_pages,
)
from templater.typesetting import Typesetter, current_typesetter

_LARGEST_TEXT_PAGE = 300.0
"""Papers whose short side is longer are for templates; what is read comes on A4 or Letter, mm."""


@dataclass(frozen=True, slots=True)
class TemplatePages:
    """One piece: its sheets, and its template as one drawing that shows the box ``view``.

    Where it shares a page of the kit (``is_shared``), its sheets are only for who prints it alone.
    """

    piece: PlacedPiece
    pages: tuple[Page, ...]
    layers: tuple[Layer, ...]
    view: Box
    is_shared: bool


@dataclass(frozen=True, slots=True)
class Kit:
    """Everything that is printed for one wall; templates come one at a time.

    It must be written by the typesetter by which it was composed.
    """

    plan: Plan
    setup: PrintSetup
    revision: str
    cover: tuple[Page, ...]
    overview: tuple[Page, ...]
    checklist: tuple[Page, ...]
    tilings: Mapping[str, Tiling]
    page_count: int
    errors: Mapping[str, Errors]
    shared: tuple[SharedPage, ...]
    spacers: tuple[Page, ...]
    version: str
    typesetter: Typesetter

    def templates(self) -> Iterator[TemplatePages]:
        """Draw the pieces in the order of the layout."""
        first, shared_on = self._first_sheet, self._shared_numbers
        for number, piece in enumerate(self.plan.pieces, 1):
            tiling, errors = self.tilings[piece.slug], self.errors[piece.slug]
            page = shared_on.get(piece.slug)
            names = replace(self._name(piece.name, page or first), number=number)
            if page and len(tiling.tiles) > 1:
                names = replace(names, page_count=0)  # its sheets are cut out of one page
            drawing = draw_template(piece, self.plan, tiling, names, errors=errors)
            pages = tuple(lay_out_template(drawing, tiling, piece, self.setup))
            if tiling.cover is not Coverage.FULL:
                drawing = draw_template(piece, self.plan, whole_tiling(piece), names, errors=errors)
            yield TemplatePages(piece, pages, *whole_template(drawing), is_shared=page is not None)
            first += 0 if page else len(tiling.tiles)

    def shared_pages(self) -> Iterator[Page]:
        """The pages that several templates share."""
        numbers = sorted(set(self._shared_numbers.values()))
        for number, page in zip(numbers, self.shared, strict=True):
            yield lay_out_shared(page, self._name("", number), self.setup)

    @property
    def _first_sheet(self) -> int:
        """The number of the first page of the templates."""
        return len(self.cover) + len(self.overview) + 1

    @property
    def _shared_numbers(self) -> dict[str, int]:
        """On which page each piece stands that shares one; these pages follow the others."""
        shared = {slug for page in self.shared for slug in page.slugs}
        own = (len(tiling.tiles) for slug, tiling in self.tilings.items() if slug not in shared)
        pages = enumerate(self.shared, start=self._first_sheet + sum(own))
        return {slug: number for number, page in pages for slug in page.slugs}

    def _name(self, piece: str, first_page: int) -> SheetNames:
        """The words of a piece's sheets."""
        names = name_sheets(self.plan, self.setup, self.revision)
        return replace(names, piece=piece, first_page=first_page, page_count=self.page_count)


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
    errors = {piece.slug: expect_errors(piece, tilings[piece.slug], setup) for piece in plan.pieces}
    shared = share_pages(plan, tilings, setup, revision)
    counted = count_all_sheets(plan, tilings, setup, shared)
    covers = {piece.name: tilings[piece.slug].cover for piece in plan.pieces}
    cards = {name for name, cover in covers.items() if cover is Coverage.CARD}
    spacers_drawn = draw_spacers(plan, form, revision=revision, cards=cards)
    work = PaperWork(
        is_joined=any(tiling.seams for tiling in tilings.values()),
        is_shared=bool(shared),
        has_spacers=bool(spacers_drawn),
        has_corners=Coverage.BAND in covers.values(),
        has_cards=bool(cards),
    )
    parts: tuple[tuple[Sequence[PageDrawing], PageKind, Form], ...] = (
        (
            (
                *draw_cover(plan, tilings, counted, setup, form, revision=revision),
                *draw_print_test(form),
                *draw_steps(plan, form, revision=revision, work=work),
            ),
            PageKind.COVER,
            form,
        ),
        (
            draw_overview(plan, findings, wide, revision=revision, piece_targets=targets, errors=errors),
            PageKind.OVERVIEW,
            wide,
        ),
        (spacers_drawn, PageKind.SPACER, form),
        (draw_checklist(plan, form, revision=revision), PageKind.CHECKLIST, form),
    )
    sheets = counted.total(setup.cover)
    counts = [len(drawings) for drawings, _, _ in parts]
    total = sum(counts) + sheets
    firsts = [1 + sum(counts[:place]) + (sheets if place >= 2 else 0) for place in range(len(parts))]
    cover, overview, spacers, checklist = (
        lay_out_pages(
            drawings,
            kind,
            page_form,
            first_page=first,
            page_count=total,
            title=_title_foot(plan, setup),
            revision=revision,
            issue=plan.issue,
        )
        for (drawings, kind, page_form), first in zip(parts, firsts, strict=True)
    )
    return Kit(
        plan,
        setup,
        revision,
        cover,
        overview,
        checklist,
        tilings,
        total,
        errors,
        shared,
        spacers,
        version,
        current_typesetter(),
    )


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
