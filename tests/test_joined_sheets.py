"""A kit's sheets as pictures, cropped and taped together, beside the picture of the whole template.

The sheets are laid as people lay them: in their order, each cropped to what the manifest says it shows,
the later one over the lap of the earlier. What then stands on paper must be what the template's SVG
shows, within a pixel. Only what a sheet has for itself is left out of the comparison, mark by mark: its
block, its rulers, and what it says and draws at its seams.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from io import BytesIO
from itertools import pairwise
from math import floor
from typing import Any, TypeAlias

import cairosvg
import numpy as np
import numpy.typing as npt
import pypdfium2
import pytest
from PIL import Image

from templater.drawing import Item, Line, Polyline, Words
from templater.geometry import Box, Size
from templater.layout.model import Margins
from templater.lettering import words_box
from templater.paper import parse_paper
from templater.pipeline import PrintChoices, plan_kit, plan_wall
from templater.printing.calibration import Calibration
from templater.sheets.compose import TemplatePages
from templater.to_files.kit import write_kit
from tests.kits import MadeKit, without_picture

PIXELS_PER_MM = 6
FINER = 2
"""Pages are drawn with pixels half as wide, since letters are set to whole ones there."""

# A black pixel must find one that is at least rather grey no farther than a pixel away: both programs
# spread a thin line over two pixels, each in its own way.
BLACK, GREY = 0.5, 0.15

LAYOUT = """\
title: Keeper's cottage, oil store
units: in
wall: {{width: 12 ft, height: 9 ft}}
pieces:
  - name: Wick trimmer
    size: {size}
    hang: {{by: d-rings, drop: 3, apart: 6, rise: 1/2}}
    place: {{centre: 60}}
"""
# 180 and 240 mm come out as 177.3 and 238.56 mm.
STUDY = Calibration("study inkjet", Size(180, 240), Size(177.3, 238.56), Margins(4.0, 5.0, 3.0, 16.0))

Picture: TypeAlias = npt.NDArray[np.float32]
"""How black each pixel is, 0 to 1, the top row first."""

Mask: TypeAlias = npt.NDArray[np.bool_]


@dataclass(frozen=True)
class Canvas:
    """The part of the template that is looked at, in its coordinates, as rows and columns of pixels."""

    view: Box
    pixels_per_mm: int = PIXELS_PER_MM

    @property
    def xs(self) -> npt.NDArray[np.float64]:
        """Where the middles of the columns lie, mm."""
        count = floor(self.view.width) * self.pixels_per_mm
        return self.view.x0 + (np.arange(count) + 0.5) / self.pixels_per_mm

    @property
    def ys(self) -> npt.NDArray[np.float64]:
        """Where the middles of the rows lie, mm, from the top down."""
        count = floor(self.view.height) * self.pixels_per_mm
        return self.view.y1 - (np.arange(count) + 0.5) / self.pixels_per_mm

    def find_inside(self, box: Box) -> tuple[slice, slice]:
        """The rows and columns whose middles lie in a box."""
        rows = np.flatnonzero((self.ys > box.y0) & (self.ys < box.y1))
        columns = np.flatnonzero((self.xs > box.x0) & (self.xs < box.x1))
        return _span(rows), _span(columns)

    def cover(self, boxes: Iterable[Box]) -> Mask:
        """The pixels in the boxes, and those next to them."""
        mask = np.zeros((len(self.ys), len(self.xs)), dtype=bool)
        for box in boxes:
            mask[self.find_inside(box.grown(1.5 / PIXELS_PER_MM))] = True
        return mask


def _span(places: npt.NDArray[np.intp]) -> slice:
    return slice(places[0], places[-1] + 1) if len(places) else slice(0, 0)


def _sample(
    picture: Picture, rows: npt.NDArray[np.float64], columns: npt.NDArray[np.float64]
) -> Picture:
    """The pixels in which places lie; nothing is lost, the places are as dense as the pixels."""
    at_rows = np.clip(np.floor(rows).astype(int), 0, picture.shape[0] - 1)
    at_columns = np.clip(np.floor(columns).astype(int), 0, picture.shape[1] - 1)
    sampled: Picture = picture[np.ix_(at_rows, at_columns)]
    return sampled


def _coarsen(picture: Picture) -> Picture:
    """Each pixel the mean of those it takes the place of."""
    rows, columns = (side // FINER for side in picture.shape)
    coarse: Picture = picture.reshape(rows, FINER, columns, FINER).mean(axis=(1, 3))
    return coarse


def _draw_pages(kit: MadeKit) -> list[tuple[dict[str, Any], Picture]]:
    """The sheets of the only piece as the manifest tells them, and their pictures."""
    drawn = []
    with pypdfium2.PdfDocument(kit.folder / "kit.pdf") as document:
        for facts in (page for page in kit.manifest["pages"] if page["kind"] == "template"):
            bitmap = document[facts["page"] - 1].render(
                scale=FINER * PIXELS_PER_MM * 25.4 / 72, grayscale=True
            )
            picture = np.asarray(bitmap.to_numpy(), dtype=np.float32)
            drawn.append((facts, 1 - picture.reshape(picture.shape[:2]) / np.float32(255)))
    return drawn


def _draw_whole(kit: MadeKit, view: Box) -> Picture:
    """A part of the SVG; its user space is the template's, y down from the frame's top."""
    (piece,) = kit.manifest["pieces"]
    reading, canvas = kit.template(piece["slug"]), Canvas(view)
    png = cairosvg.svg2png(
        url=str(kit.folder / "templates" / f"{piece['slug']}.svg"),
        scale=canvas.pixels_per_mm * 25.4 / 96,
        background_color="white",
    )
    with Image.open(BytesIO(png)) as image:
        picture = 1 - np.asarray(image.convert("L"), dtype=np.float32) / np.float32(255)
    columns = (canvas.xs - reading.view.x0) * canvas.pixels_per_mm
    rows = (reading.view.y1 - canvas.ys) * canvas.pixels_per_mm
    return _sample(picture, rows, columns)


def _grow(mask: Mask) -> Mask:
    """The pixels of a mask and all their neighbours."""
    padded = np.pad(mask, 1)
    rows = padded[:-2] | padded[1:-1] | padded[2:]
    grown: Mask = rows[:, :-2] | rows[:, 1:-1] | rows[:, 2:]
    return grown


def _missing(picture: Picture, other: Picture) -> Mask:
    """What is black on one picture, and nowhere near black on the other."""
    missing: Mask = (picture > BLACK) & ~_grow(other > GREY)
    return missing


_HALF_LINE = 0.2


def _list_boxes(items: Iterable[Item]) -> Iterator[Box]:
    """Where ink of each mark may stand; of a frame its sides only."""
    for item in items:
        if isinstance(item, Words):
            yield words_box(item)
        elif isinstance(item, Polyline) and not item.filled:
            ends = (*item.points, item.points[0]) if item.closed else item.points
            yield from (
                Line(one, other, item.width_mm).box.grown(_HALF_LINE) for one, other in pairwise(ends)
            )
        else:
            yield item.box.grown(_HALF_LINE)


@dataclass(frozen=True)
class Taped:
    """The pictures of a kit of one piece, and the marks that only its sheets have, or only the whole."""

    view: Box
    pages: Sequence[tuple[dict[str, Any], Picture]]
    whole: Picture
    not_on_whole: Mask
    not_on_sheets: Mask

    @property
    def names(self) -> list[str]:
        """The sheets, in their order."""
        return [facts["sheet"] for facts, _ in self.pages]

    def compare(self, moved: Mapping[str, tuple[float, float]] | None = None) -> tuple[int, int]:
        """Black pixels of the whole that the taped sheets lack, and the other way round."""
        joined = self._tape_together(moved or {})
        lost = _missing(self.whole, joined) & ~self.not_on_sheets
        added = _missing(joined, self.whole) & ~self.not_on_whole
        return int(lost.sum()), int(added.sum())

    def _tape_together(self, moved: Mapping[str, tuple[float, float]]) -> Picture:
        """The sheets as people lay them; some a little off, mm, to see that it shows."""
        canvas = Canvas(self.view, FINER * PIXELS_PER_MM)
        joined = np.zeros((len(canvas.ys), len(canvas.xs)), dtype=np.float32)
        for facts, picture in self.pages:
            inside = canvas.find_inside(Box(*facts["clip_mm"]))
            (x, y), (across, up), (width, height) = (
                facts[key] for key in ("origin_mm", "scale", "paper_mm")
            )
            dx, dy = moved.get(facts["sheet"], (0.0, 0.0))
            # A whole number of pixels stands for the page, so that they are not quite square.
            columns = (x + across * (canvas.xs[inside[1]] - dx)) * picture.shape[1] / width
            rows = (height - y - up * (canvas.ys[inside[0]] - dy)) * picture.shape[0] / height
            joined[inside] = _sample(picture, rows, columns)
        return _coarsen(joined)


def _take_pictures(kit: MadeKit, template: TemplatePages) -> Taped:
    """All that both the sheets and the whole template show."""
    view = template.view.grown(-6.0)  # there is a border of 5 mm round all that the sheets show
    assert Box.around(part.clip for page in template.pages for part in page.parts).holds(view)
    on_sheets = {item for page in template.pages for layer in page.layers for item in layer.items}
    on_whole = {item for layer in template.layers for item in layer.items}
    canvas = Canvas(view)
    return Taped(
        view,
        _draw_pages(kit),
        _draw_whole(kit, view),
        not_on_whole=canvas.cover(_list_boxes(on_sheets - on_whole)),
        not_on_sheets=canvas.cover(_list_boxes(on_whole - on_sheets)),
    )


CASES = (
    ("11 x 14", "letter", None),
    ("14 x 11", "a4", None),
    ("12 x 16", "a4", STUDY),
)


@pytest.fixture(scope="module", params=CASES, ids=lambda case: "-".join(map(str, case[:2])))
def taped(request: pytest.FixtureRequest, tmp_path_factory: pytest.TempPathFactory) -> Taped:
    """A kit of a piece that takes several sheets."""
    size, paper, measured = request.param
    source = LAYOUT.format(size=size).encode()
    wall = plan_wall(source, "oil-store.yaml")
    printer = None if measured is None else measured.printer
    kit, _ = plan_kit(wall, PrintChoices(paper=parse_paper(paper), printer=printer))
    folder = tmp_path_factory.mktemp("taped") / "kit"
    with without_picture():
        write_kit(kit, source, folder, prove=lambda _: {})
    (template,) = kit.templates()
    return _take_pictures(MadeKit(folder), template)


def test_sheets_taped_together_show_what_the_whole_template_shows(taped: Taped) -> None:
    assert len(taped.names) >= 2
    assert (taped.whole > BLACK).sum() > 5_000
    # What is not compared is little of the picture.
    assert float(taped.not_on_whole.mean()) < 0.12
    assert float(taped.not_on_sheets.mean()) < 0.01
    assert taped.compare() == (0, 0)


def test_the_kits_have_sheets_that_lie_every_way(taped: Taped) -> None:
    # Else neither wide pages nor the exchange of a printer's factors on them would have been tried.
    papers = [facts["paper_mm"] for facts, _ in taped.pages]
    wide = [width > height for width, height in papers]
    factors = {tuple(facts["scale"]) for facts, _ in taped.pages}
    assert (wide, len(factors)) in (
        ([True] * 4, 1),
        ([False] * 4, 1),
        ([True, True, False, False], 2),
    )


def test_a_sheet_laid_three_tenths_of_a_millimetre_off_would_show(taped: Taped) -> None:
    for moved in ((0.3, 0.0), (0.0, 0.3)):
        assert min(taped.compare({taped.names[-1]: moved})) > 20
