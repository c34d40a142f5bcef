"""Holds the SVG drawings against the Plan: their physical size and every mark on them."""

from __future__ import annotations

from collections.abc import Iterator
from functools import cached_property
from pathlib import Path

from templater.verify.check_overview import check_overview, place_holes, read_elevation
from templater.verify.check_picture import check_picture
from templater.verify.check_sheet import Sheet, check_reading, check_sheet
from templater.verify.ink.read_svg import Drawing, read_svg
from templater.verify.model import NEAR_MM, Expected, Findings
from templater.verify.own_words import check_revision
from templater.verify.template_marks import expect_marks


def check_template(path: Path, slug: str, expected: Expected, *, is_shared: bool) -> Findings:
    """A piece's template as one drawing. Raises UnreadableError."""
    drawing = read_svg(path, expected.pieces[slug].size.height)
    marks = expect_marks(expected, slug)
    faults = (*_check_size(drawing), *check_revision(drawing.ink, expected.revision, expected.given))
    sheet = Sheet("", drawing.ink, drawing.view, drawing.view, is_shared)
    return Findings(faults) if faults else check_sheet(sheet, marks)


class OverviewReading:
    """The overview as one drawing, read once for its own sake and for that of its picture."""

    def __init__(self, path: Path, expected: Expected) -> None:
        self._path, self._expected = path, expected

    @cached_property
    def _drawing(self) -> Drawing:
        return read_svg(self._path)

    def check_drawing(self) -> Findings:
        """What is wrong with the drawing. Raises UnreadableError."""
        drawing, ink = self._drawing, self._drawing.ink
        faults = (
            *_check_size(drawing),
            *check_revision(ink, self._expected.revision, self._expected.given),
            *check_reading(ink),
        )
        return Findings(faults or tuple(check_overview(ink, self._expected.plan)))

    def check_picture(self, path: Path) -> Findings:
        """What is wrong with the picture that was made of the drawing. Raises UnreadableError."""
        plan, drawing = self._expected.plan, self._drawing
        elevation = read_elevation(drawing.ink, plan)
        holes = {} if elevation is None else place_holes(elevation, plan)
        return Findings(tuple(check_picture(path, drawing.view.size, holes)))


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
