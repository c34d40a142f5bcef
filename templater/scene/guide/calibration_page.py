"""The pages by which a printer is measured, and proved once it is corrected."""

from __future__ import annotations

from templater.printing.model import Printer
from templater.scene.guide.true_size import LongRulers, describe_edges, draw_ruler_page
from templater.scene.lines import NORMAL
from templater.scene.model import Form, PageDrawing
from templater.scene.passages import (
    Passage,
    draw_boxed,
    draw_heading,
    draw_list,
    draw_paragraph,
)

_EXAMPLE_OFF = (0.994, 0.996)
"""What the printer of the example makes of a millimetre, across and down."""


def draw_measuring_page(form: Form, rulers: LongRulers, paper: str) -> tuple[PageDrawing, ...]:
    """The portrait page: what to measure on it, and what to type; ``paper`` is the paper's name."""

    def write(rulers: LongRulers, width_mm: float) -> list[Passage]:
        return _write_measuring(rulers, width_mm, paper)

    return draw_ruler_page("Measure your printer", form, write, rulers=rulers)


def draw_wide_page(form: Form, rulers: LongRulers, portrait: LongRulers) -> tuple[PageDrawing, ...]:
    """The landscape page beside it: whether the printer's driver turns wide pages as it should.

    Its rulers are compared with those of the ``portrait`` page, and are no longer than they.
    """

    def write(rulers: LongRulers, width_mm: float) -> list[Passage]:
        return _write_wide(rulers, portrait, width_mm)

    return draw_ruler_page("The same printer, a wide page", form, write, rulers=rulers)


def draw_proof_page(form: Form, printer: Printer) -> tuple[PageDrawing, ...]:
    """A page corrected for a printer: printed on it, every ruler must measure true."""

    def write(rulers: LongRulers, width_mm: float) -> list[Passage]:
        return _write_proof(form, rulers, width_mm, printer)

    return draw_ruler_page(f"Proof of “{printer.name}”", form, write)


def _write_measuring(rulers: LongRulers, width_mm: float, paper: str) -> list[Passage]:
    """What to do with the page, in the order in which it is done."""
    across, down, corner = (f"{mm:.0f} mm" for mm in (rulers.across_mm, rulers.up_mm, rulers.corner_mm))
    return [
        draw_paragraph(
            "Print this page alone, at “Actual size” or “100 %”, with the printer, the paper and the"
            " settings that you will use for the templates. Measure with a good steel ruler, to a"
            " quarter of a millimetre, from the corner that both long rulers share to the tick in"
            " each ring.",
            width_mm,
        ),
        *draw_list(
            (
                f"ACROSS, along the foot of the sheet, drawn {across} long: ________ mm",
                f"DOWN, along its left side, drawn {down} long: ________ mm",
            ),
            width_mm,
        ),
        draw_paragraph(
            "The short lines along each edge are numbered in mm from it. Write down the lowest number"
            " whose line is whole:",
            width_mm,
        ),
        draw_paragraph("left ______ right ______ top ______ bottom ______", width_mm),
        draw_heading("Type", width_mm),
        draw_paragraph(
            "on one line, with your own lengths and your own name for the printer:", width_mm
        ),
        *_write_command(rulers, width_mm, paper),
        draw_heading("Then prove it", width_mm),
        draw_paragraph('templater calibrate --printer "study inkjet"', width_mm, height_mm=NORMAL),
        draw_paragraph(
            "gives these pages corrected for that printer; so does “templater kit” with the same"
            f" --printer. Are they within 0.3 mm of {across} and {down} already? Then there is nothing"
            " to correct.",
            width_mm,
        ),
        draw_heading("If from ring to ring is not right", width_mm),
        draw_paragraph(
            f"It must be {corner} where both rulers are right. If it is off by more than 1 mm, the"
            " paper goes through the printer askew; no correction mends that. Straighten the paper in"
            " its tray.",
            width_mm,
        ),
    ]


def _write_command(rulers: LongRulers, width_mm: float, paper: str) -> list[Passage]:
    """What is typed, with lengths such as a printer may make of these rulers."""
    across, down = (
        f"{asked * off:.1f}mm"
        for asked, off in zip((rulers.across_mm, rulers.up_mm), _EXAMPLE_OFF, strict=True)
    )
    lines = (
        f'templater calibrate --paper "{paper}" --printer "study inkjet"',
        f"--measured {across} {down}",
        "--margin left=4mm --margin right=4mm",
        "--margin top=3mm --margin bottom=13mm",
    )
    return [draw_paragraph(line, width_mm, height_mm=NORMAL, after_mm=0.5) for line in lines]


def _write_wide(rulers: LongRulers, portrait: LongRulers, width_mm: float) -> list[Passage]:
    """How the two pages must agree."""
    across, up = rulers.across_mm, rulers.up_mm
    return [
        draw_paragraph(
            "Print this page in the same way. Leave the paper's direction on “Auto”. The printer turns a"
            " page that is wider than tall, so what it makes too short across the paper is here too"
            " short upward.",
            width_mm,
        ),
        *draw_list(
            (
                f"The ruler along the foot, drawn {across:.0f} mm long, must come out as long as DOWN"
                f" on the other page{_tell_end(across, portrait.up_mm)}.",
                f"The ruler along the left side, drawn {up:.0f} mm long, must come out as long as"
                f" ACROSS there{_tell_end(up, portrait.across_mm)}.",
            ),
            width_mm,
        ),
        draw_boxed(
            (
                (
                    "Does one differ by more than 0.5 mm?",
                    "Then this printer treats wide pages in a way of its own, and its correction cannot"
                    " be trusted on them. Look for another scale in the settings of the printer.",
                ),
            ),
            width_mm,
        ),
    ]


def _tell_end(length_mm: float, other_mm: float) -> str:
    """Where on the longer ruler of the other page the length ends that is compared with this one's."""
    return f" from the corner to its line for {length_mm:.0f} mm" if length_mm < other_mm else ""


def _write_proof(form: Form, rulers: LongRulers, width_mm: float, printer: Printer) -> list[Passage]:
    """What must be true, and what to do if it is not."""
    across, up, corner = (f"{mm:.0f} mm" for mm in (rulers.across_mm, rulers.up_mm, rulers.corner_mm))
    return [
        draw_paragraph(
            f"This page is corrected for the printer “{printer.name}”: its lines are written"
            f" {printer.across:.4f} times as long across the paper and {printer.along:.4f} times along"
            " it. Print it on that printer alone, at “Actual size” or “100 %”.",
            width_mm,
        ),
        *draw_list(
            (
                f"The long ruler across must be {across}.",
                f"The long ruler up must be {up}.",
                f"From ring to ring must be {corner}.",
                f"You must see {describe_edges(form)}.",
            ),
            width_mm,
        ),
        draw_paragraph(
            "All right to 0.5 mm (1/64 in), on this page and on the one that lies the other way? Then"
            " print kits with:",
            width_mm,
            bold=True,
        ),
        draw_paragraph(f'templater kit LAYOUT --printer "{printer.name}"', width_mm, height_mm=NORMAL),
        draw_boxed(
            (
                (
                    "Is one off?",
                    "Do not type these lengths. Print the page that “templater calibrate” gives without"
                    " --printer, and measure again.",
                ),
            ),
            width_mm,
        ),
    ]
