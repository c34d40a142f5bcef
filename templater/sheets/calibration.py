"""The pages by which a printer is measured and proved: one portrait, one landscape."""

from __future__ import annotations

from templater.geometry import Size
from templater.layout.model import Margins
from templater.paper import Paper
from templater.printing.model import Printer, PrintSetup
from templater.scene.guide.calibration_page import draw_measuring_page, draw_proof_page, draw_wide_page
from templater.scene.guide.true_size import fit_rulers
from templater.scene.model import Form
from templater.sheets.model import Layer, Page, PageKind

_MARGINS = Margins(left=5.5, right=5.5, top=5.5, bottom=15.0)
"""What is left blank for a printer not yet known; at the foot, the edge ruler shows 14 mm.

Little enough at the other edges for rulers of 180 and 240 mm on A4 and Letter, either way round.
"""

_ROLL_LENGTH = 1.4
"""How long a page of a roll is, in its widths."""


def compose_calibration(paper: Paper, printer: Printer | None) -> tuple[Page, ...]:
    """The pages that measure a printer not yet known, or those that prove one."""
    setup = PrintSetup(paper, printer.margins if printer else _MARGINS, 0.0, printer)
    pages = []
    for number, form in enumerate(_list_forms(setup)):
        if printer is not None:
            drawings = draw_proof_page(form, printer)
        else:
            drawings = draw_wide_page(form) if number else draw_measuring_page(form, paper.name)
        pages += [(form, drawing) for drawing in drawings]
    return tuple(
        Page(PageKind.FORM, drawing.size, (Layer(drawing.items),), str(number), scale=form.scale)
        for number, (form, drawing) in enumerate(pages, 1)
    )


def list_rulers(paper: Paper) -> Size:
    """The lengths across and down of the rulers on the page that measures a printer."""
    portrait, *_ = _list_forms(PrintSetup(paper, _MARGINS, 0.0))
    rulers = fit_rulers(portrait)
    return Size(rulers.across_mm, rulers.up_mm)


def _list_forms(setup: PrintSetup) -> list[Form]:
    """The page as it is fed, then turned; of a roll, a page that is not very long."""
    sizes = setup.page_sizes()
    if setup.paper.is_roll:
        width = sizes[0].width
        sizes = (Size(width, width * _ROLL_LENGTH), Size(width * _ROLL_LENGTH, width))
    return [Form.of(setup, size) for size in sizes]
