"""Holds the SVG drawings against the Plan: their physical size and every mark on them."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

from templater.verify.check_overview import check_overview
from templater.verify.check_sheet import Sheet, check_reading, check_sheet
from templater.verify.model import NEAR_MM, Expected, Findings
from templater.verify.own_words import check_revision
from templater.verify.read_svg import Drawing, read_svg
from templater.verify.template_marks import expect_marks


def check_template(path: Path, slug: str, expected: Expected) -> Findings:
    """A piece's template as one drawing. Raises UnreadableError."""
    drawing = read_svg(path, expected.pieces[slug].size.height)
    marks = expect_marks(expected, slug)
    faults = (*_check_size(drawing), *check_revision(drawing.ink, expected.revision))
    return Findings(faults) if faults else check_sheet(Sheet("", drawing.ink, drawing.view), marks)


def check_overview_drawing(path: Path, expected: Expected) -> Findings:
    """The overview as one drawing. Raises UnreadableError."""
    drawing = read_svg(path)
    ink = drawing.ink
    faults = (*_check_size(drawing), *check_revision(ink, expected.revision), *check_reading(ink))
    return Findings(faults or tuple(check_overview(ink, expected.plan)))


def _check_size(drawing: Drawing) -> Iterator[str]:
    """Whether one unit of the drawing is one millimetre."""
    if drawing.size is None:
        yield "it has no physical size (width and height in mm)"
        return
    view = drawing.view.size
    if max(abs(one - other) for one, other in zip(drawing.size, view, strict=True)) > NEAR_MM:
        yield (
            f"its {view.width:.2f} × {view.height:.2f} units are drawn"
            f" {drawing.size.width:.2f} × {drawing.size.height:.2f} mm large"
        )
