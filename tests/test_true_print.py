"""A kit corrected for a printer that prints 98.5 % across and 99.4 % along, as it comes out of it."""

from __future__ import annotations

from collections.abc import Sequence
from math import dist
from pathlib import Path

import pikepdf
import pytest

from templater.geometry import Box, Point, Size
from templater.layout.model import Margins
from templater.pipeline import PrintChoices, plan_kit, read_wall
from templater.printing.calibration import Calibration
from tests.conftest import KitMaker
from tests.kits import LAYOUTS, Entry, MadeKit, make_kit
from tests.reading import Ink, Outline, Ring, Run, read_pdf_page, visible

PRINTED = (0.985, 0.994)
# The rulers of 180 and 240 mm come out as 177.3 and 238.56 mm.
MEASURED = Calibration("study inkjet", Size(180, 240), Size(177.3, 238.56), Margins(4.0, 5.0, 3.0, 16.0))
PAIRS = (("stair-hall", "letter"), ("lamp-room-corridor", "a4"), ("stair-hall", "roll 24 in"))
NEAR = 0.01


@pytest.fixture(scope="module", params=PAIRS, ids=lambda pair: "-on-".join(pair).replace(" ", "-"))
def kit(request: pytest.FixtureRequest, tmp_path_factory: pytest.TempPathFactory) -> MadeKit:
    """A corrected kit as it comes out of the printer."""
    stem, paper = request.param
    folder = tmp_path_factory.mktemp("true") / stem
    choices = PrintChoices(printer=MEASURED.printer)
    made = make_kit(LAYOUTS / f"{stem}.yaml", folder, paper, choices=choices)
    return MadeKit(made.folder, PRINTED)


def _printed_at(sheet: Entry, point: Point) -> Point:
    """Where a point of the template comes out on a sheet, by the manifest and the printer."""
    (x, y), (across, up) = sheet.facts["origin_mm"], sheet.facts["scale"]
    printed = _printed_on(sheet.facts["paper_mm"])
    return Point((x + across * point.x) * printed[0], (y + up * point.y) * printed[1])


def _printed_on(page: Sequence[float]) -> tuple[float, float]:
    """What the printer makes of a millimetre across and up a page.

    It turns a page that is as high as A4, Letter or the roll is wide.
    """
    return (
        PRINTED[::-1] if any(abs(page[1] - width) < 0.01 for width in (210, 215.9, 609.6)) else PRINTED
    )


def test_holes_come_out_as_far_apart_as_they_are_on_the_wall(kit: MadeKit) -> None:
    found = {(slug, number): 0 for slug in kit.pieces for number in range(len(kit.holes(slug)))}
    for sheet in kit.sheets:
        slug = sheet.facts["piece"]
        corner = Point(sheet.clip.x0, sheet.clip.y0)
        start = _printed_at(sheet, corner)
        for number, hole in enumerate(kit.holes(slug)):
            there = start.moved(hole.x - corner.x, hole.y - corner.y)
            rings = [ring for ring in sheet.ink.rings if dist(ring.centre, there) < NEAR]
            assert all(ring.radius_mm == pytest.approx(5.0, abs=0.001) for ring in rings)
            found[slug, number] += len(rings)
    assert all(found.values())
    pages = {sheet.facts["page"] for sheet in kit.sheets}
    assert sum(len(kit.pages[page - 1].rings) for page in pages) == sum(found.values())


def test_sheets_lie_both_ways(kit: MadeKit) -> None:
    # Else the exchange of the factors on wide pages would not have been tried.
    turned = {_printed_on(sheet.facts["paper_mm"]) for sheet in kit.sheets}
    assert turned == {PRINTED, PRINTED[::-1]} or kit.manifest["paper"].startswith("roll")


def test_the_manifest_leads_to_every_hole_in_the_file(kit: MadeKit) -> None:
    for sheet in kit.sheets:
        (x, y), (across, up) = sheet.facts["origin_mm"], sheet.facts["scale"]
        holes = [hole for hole in kit.holes(sheet.facts["piece"]) if sheet.clip.has(hole)]
        with pikepdf.open(kit.folder / "kit.pdf") as pdf:
            page = pdf.pages[sheet.facts["page"] - 1]
            # The factors of the manifest are taken out again.
            ink = read_pdf_page(page, (1 / across, 1 / up))
        for hole in holes:
            there = Point(x / across + hole.x, y / up + hole.y)
            assert any(dist(ring.centre, there) < 0.001 for ring in ink.rings)


def test_pages_are_as_large_as_the_paper(kit: MadeKit) -> None:
    paper = kit.manifest["paper"]
    sides = {"letter": (215.9, 279.4), "a4": (210.0, 297.0)}.get(paper)
    with pikepdf.open(kit.folder / "kit.pdf") as pdf:
        boxes = [[float(side) * 25.4 / 72 for side in page.mediabox] for page in pdf.pages]
    for facts in kit.manifest["pages"]:
        box = boxes[facts["page"] - 1]
        assert box == pytest.approx([0, 0, *facts["paper_mm"]], abs=0.001)
        if sides:
            assert sorted(facts["paper_mm"]) == pytest.approx(sides, abs=0.001)
        elif facts["kind"] == "template":
            assert 609.6 in [pytest.approx(side, abs=0.001) for side in facts["paper_mm"]]


def test_the_manifest_tells_the_printer(kit: MadeKit) -> None:
    # 180 / 177.3 = 1.0152284; 240 / 238.56 = 1.0060362
    margins = {"left": 4, "right": 5, "top": 3, "bottom": 16}
    told = {"name": "study inkjet", "across": 1.015228, "along": 1.006036, "margin_mm": margins}
    assert kit.manifest["options"]["printer"] == told | {"rulers_mm": [180, 240]}
    assert kit.manifest["options"]["margin_mm"] == margins
    scales = {tuple(sheet.facts["scale"]) for sheet in kit.sheets}
    assert scales <= {(1.015228, 1.006036), (1.006036, 1.015228)}


def test_rulers_come_out_at_100_mm_and_4_in(kit: MadeKit) -> None:
    for sheet in kit.sheets:
        for level in (True, False):
            bars = [
                _turned(stroke.box, level) for stroke in sheet.page_ink.strokes if stroke.clip is None
            ]
            (bar,) = (bar for bar in bars if bar.height < 1e-6 and abs(bar.width - 101.6) < 0.005)
            # Ticks of 3 mm at 0, 50 and 100 mm on one side; at 0, 1, 2, 3 and 4 in on the other.
            ticks = [
                tick.x0 - bar.x0
                for tick in bars
                if tick.width < 1e-6 and tick.height == pytest.approx(3.0, abs=0.001)
                if bar.y0 - 3.01 < tick.y0 < bar.y0 + 0.01 and bar.x0 - 1 < tick.x0 < bar.x1 + 1
            ]
            whole = sorted([0, 50, 100, 0, 25.4, 50.8, 76.2, 101.6])
            assert sorted(ticks) == pytest.approx(whole, abs=0.002), (sheet.facts, level)


def _turned(box: Box, level: bool) -> Box:
    return box if level else Box(box.y0, box.x0, box.y1, box.x1)


def test_the_print_test_comes_out_true(kit: MadeKit) -> None:
    ink = next(ink for ink in kit.pages if "Print test" in {run.text for run in ink.runs})
    lengths = [round(stroke.length_mm, 2) for stroke in ink.strokes]
    texts = {run.text for run in ink.runs}
    (across,) = (mm for mm in (180, 150) if f"{mm} mm" in texts)
    assert {float(across), across * 4 / 3} <= set(lengths)


def test_every_sheet_says_for_which_printer_it_is(kit: MadeKit) -> None:
    for sheet in kit.sheets:
        words = " ".join(run.text for run in sheet.page_ink.runs)
        assert "Corrected for “study inkjet”" in words or "“study inkjet” only, 100 %" in words
    for ink in kit.pages[: kit.sheets[0].facts["page"] - 1]:
        assert any("for “study inkjet” only" in run.text for run in ink.runs)


def test_nothing_but_edge_rulers_stands_where_the_printer_cannot_print(kit: MadeKit) -> None:
    # On the paper 4 mm at the left, 5 at the right, 3 above and 16 below; a wide page is turned either
    # way, so that 16 mm are lost at both of its sides, and 5 mm above and below.
    for facts in kit.manifest["pages"]:
        number, ink = facts["page"], kit.pages[facts["page"] - 1]
        width, height = facts["paper_mm"]
        across, up = _printed_on(facts["paper_mm"])
        reach = Box(4, 16, width - 5, height - 3)
        if width > height and kit.manifest["paper"] in ("a4", "letter"):
            reach = Box(16, 5, width - 16, height - 5)
        if "Print test" in {run.text for run in ink.runs}:
            continue
        for x0, y0, x1, y1 in _reach(ink):
            box = Box(x0 / across, y0 / up, x1 / across, y1 / up)
            assert reach.holds(box, slack=0.01), (number, box)


def _reach(ink: Ink) -> list[Box]:
    """All that is seen of a page's ink; lines by their axes."""
    seen = [box for stroke in ink.strokes if (box := visible(stroke)) is not None]
    marks: list[Outline | Ring | Run] = [*ink.outlines, *ink.rings, *ink.runs]
    seen += [mark.box if mark.clip is None else mark.box.common(mark.clip) for mark in marks]
    return [box for box in seen if box.x0 <= box.x1 and box.y0 <= box.y1]


def test_templates_as_svg_are_not_corrected(kit: MadeKit, shipped_kit: KitMaker) -> None:
    plain = shipped_kit("stair-hall", "letter")
    if kit.manifest["title"] == plain.manifest["title"]:
        assert kit.manifest["pieces"] == plain.manifest["pieces"]
    for slug, piece in kit.pieces.items():
        x0, y0, x1, y1 = piece["rect_mm"]
        reading = kit.template(slug)
        assert (reading.width_mm, reading.height_mm) == pytest.approx(reading.ink.size)
        for hole in kit.holes(slug):
            assert any(dist(ring.centre, hole) < 0.001 for ring in reading.ink.rings)
        assert reading.view.holds(Box(0, 0, x1 - x0, y1 - y0), slack=0.001)


def test_a_margin_asked_for_goes_before_the_printers(tmp_path: Path) -> None:
    wall = read_wall(LAYOUTS / "stair-hall.yaml")
    planned, _ = plan_kit(wall, PrintChoices(margin_mm=9.0, printer=MEASURED.printer))
    assert planned.setup.margins == Margins(9.0, 9.0, 9.0, 9.0)
    planned, _ = plan_kit(wall, PrintChoices(printer=MEASURED.printer))
    assert planned.setup.margins == MEASURED.margins
