"""The pages by which a printer is measured and proved: one portrait, one landscape."""

from __future__ import annotations

from dataclasses import replace

from templater.geometry import Size
from templater.layout.model import Margins
from templater.paper import Paper
from templater.printing.model import Printer, PrintSetup
from templater.scene.guide.calibration_page import draw_measuring_page, draw_proof_page, draw_wide_page
from templater.scene.guide.true_size import LongRulers, fit_rulers
from templater.scene.model import Form
from templater.sheets.model import Layer, Page, PageKind

SHORTEST_RULER_MM = 120.0
"""On a shorter ruler, a quarter of a millimetre misread is as much as most printers are off."""

_MARGINS = Margins(left=5.5, right=5.5, top=5.5, bottom=15.0)
"""What is left blank for a printer not yet known; at the foot, the edge ruler shows 14 mm.

Little enough at the other edges for rulers of 180 and 240 mm on A4 and Letter, either way round.
"""

_ROLL_LENGTH = 1.4
"""How long a page of a roll is, in its widths."""


def compose_calibration(paper: Paper, printer: Printer | None) -> tuple[Page, ...]:
    """The pages that measure a printer not yet known, or those that prove one."""
    setup = PrintSetup(paper, printer.margins if printer else _MARGINS, 0.0, printer)
    forms = _list_forms(setup)
    portrait, *_ = rulers = _fit_alike(forms)
    pages = []
    for number, form in enumerate(forms):
        if printer is not None:
            drawings = draw_proof_page(form, printer)
        elif number:
            drawings = draw_wide_page(form, rulers[number], portrait)
        else:
            drawings = draw_measuring_page(form, portrait, paper.name)
        pages += [(form, drawing) for drawing in drawings]
    return tuple(
        Page(PageKind.FORM, drawing.size, (Layer(drawing.items),), str(number), scale=form.scale)
        for number, (form, drawing) in enumerate(pages, 1)
    )


def list_rulers(paper: Paper) -> Size:
    """The lengths across and down of the rulers on the page that measures a printer."""
    rulers, *_ = _fit_alike(_list_forms(PrintSetup(paper, _MARGINS, 0.0)))
    return Size(rulers.across_mm, rulers.up_mm)


def _fit_alike(forms: list[Form]) -> list[LongRulers]:
    """The rulers of the page as it is fed and, if there is one, of the page turned.

    Turned rulers have the same lengths; they are shorter than those of the page as it is fed only
    where that page would have to give up rulers that are long enough.
    """
    rulers = [fit_rulers(form) for form in forms]
    if len(rulers) == 1:
        return rulers
    fed, turned = rulers
    across, up = min(fed.across_mm, turned.up_mm), min(fed.up_mm, turned.across_mm)
    if across >= SHORTEST_RULER_MM:
        fed = replace(fed, across_mm=across, up_mm=up)
    return [fed, replace(turned, across_mm=up, up_mm=across)]


def _list_forms(setup: PrintSetup) -> list[Form]:
    """The page as it is fed, then turned; of a roll, a page that is not very long."""
    sizes = setup.page_sizes()
    if setup.paper.is_roll:
        width = sizes[0].width
        sizes = (Size(width, width * _ROLL_LENGTH), Size(width * _ROLL_LENGTH, width))
    return [Form.of(setup, size) for size in sizes]
