"""Marks that are there and cannot be seen, and what was laid over a page afterwards."""

from __future__ import annotations

import re
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pikepdf
import pytest

from tests.kits import MadeKit, make_kit
from tests.verify.faults import faults, page_of, the_fault
from tests.verify.planting import DRAWS_NOTHING, POINTS_PER_MM, Copy, list_half_diamonds

LAMP = """
title: A lamp
wall: {width: 2 m, height: 2.4 m}
units: mm
datum: {height: 1500}
pieces:
  - {name: Signal lamp, size: 320 x 880, hang: {by: nail, drop: 40}, place: {centre: 1000, top: 1700}}
"""


@pytest.fixture(scope="module")
def lamp(tmp_path_factory: pytest.TempPathFactory) -> MadeKit:
    """A kit of one piece, one hole, and eight sheets of A4."""
    folder = tmp_path_factory.mktemp("lamp")
    layout = folder / "lamp.yaml"
    layout.write_text(LAMP, encoding="utf-8")
    return make_kit(layout, folder / "kit", "a4", picture=True)


@pytest.fixture
def copy(lamp: MadeKit, tmp_path: Path) -> Copy:
    return Copy(lamp.folder, tmp_path)


@pytest.fixture
def entry(copy: Copy) -> dict[str, Any]:
    """The sheet with the hole."""
    return copy.sheets(hole=True)[0]


def _hole(entry: dict[str, Any]) -> tuple[float, float]:
    """Where the hole lies on its page, in points: 160 mm from the left edge, 880 - 40 mm up."""
    x, y = entry["origin_mm"]
    return (x + 160) * POINTS_PER_MM, (y + 840) * POINTS_PER_MM


def _wrap(copy: Copy, page: int, before: str, after: str = "Q") -> None:
    with copy.opened_pdf() as document:
        sheet = document.pages[page - 1]
        content = sheet.Contents.read_bytes()
        sheet.Contents = document.make_stream(before.encode() + b"\n" + content + b"\n" + after.encode())


def _add(copy: Copy, page: int, content: str) -> None:
    _wrap(copy, page, "q", f"Q q {content} Q")


def _square(entry: dict[str, Any], half_mm: float) -> str:
    """A square round the hole, as an instruction that draws nothing yet."""
    (x, y), half = _hole(entry), half_mm * POINTS_PER_MM
    return f"{x - half:.4f} {y - half:.4f} {2 * half:.4f} {2 * half:.4f} re"


@pytest.mark.parametrize(
    ("drawn", "told"),
    [
        ("1 g {0} f", "it holds ink that is not black"),
        ("1 1 1 rg {0} f", "it holds ink that is not black"),
        ("0 0 0 0 k {0} f", "it holds ink that is not black"),
        ("0 g {0} f", "hole 1 is covered with black"),
        ("0.5 w 0.9 G {0} S", "it holds ink that is not black"),
        ("60 w {0} S", "it holds a line so wide that it may hide others"),
    ],
)
def test_a_hole_that_is_painted_over(copy: Copy, entry: dict[str, Any], drawn: str, told: str) -> None:
    _add(copy, entry["page"], drawn.format(_square(entry, 6)))
    assert the_fault(copy) == f"{page_of(entry)}{told}"


@pytest.mark.parametrize(
    ("above_mm", "told"),
    [
        (3.0, "hole 1 is not marked"),
        (-4.5, "hole 1's cross is partly hidden or too short"),
        (-9.5, "hole 1's cross is partly hidden or too short"),
    ],
)
def test_a_clip_that_hides_the_mark_or_a_part_of_it(
    copy: Copy, entry: dict[str, Any], above_mm: float, told: str
) -> None:
    # The marks are drawn in the first layer, which has a clip of its own; the rest of the page stays.
    low = _hole(entry)[1] + above_mm * POINTS_PER_MM
    with copy.opened_pdf() as document:
        sheet = document.pages[entry["page"] - 1]
        before, clip, after = sheet.Contents.read_bytes().partition(b"W* n")
        narrower = f"{clip.decode()} 0 {low:.4f} 5000 5000 re W* n"
        sheet.Contents = document.make_stream(before + narrower.encode() + after)
    assert f"{page_of(entry)}{told}" in faults(copy)


@pytest.mark.parametrize(("looks", "told"), [
    ("0 w", "it holds a line too thin to be seen"),
    ("1 G", "it holds ink that is not black"),
    ("0.2 0.2 0.2 RG", "it holds ink that is not black"),
])  # fmt: skip
def test_lines_that_may_not_be_seen(copy: Copy, entry: dict[str, Any], looks: str, told: str) -> None:
    operands, operator = looks.rsplit(" ", 1)
    numbers = [float(number) for number in operands.split()]

    def act(given: list[Any], name: str) -> tuple[list[Any], str]:
        return (numbers, operator) if name == "w" else (given, name)

    copy.rewrite(entry["page"], act)
    assert the_fault(copy) == f"{page_of(entry)}{told}"


def _mark(entry: dict[str, Any], away_mm: float = -30.0) -> str:
    """A whole mark of another hole beside the right one."""
    x, y = _hole(entry)
    x, arm, radius = x - away_mm * POINTS_PER_MM, 10 * POINTS_PER_MM, 5 * POINTS_PER_MM
    k = 0.5522847 * radius
    return (
        f"0.7 w {x - arm} {y} m {x + arm} {y} l S {x} {y - arm} m {x} {y + arm} l S"
        f" {x + radius} {y} m {x + radius} {y + k} {x + k} {y + radius} {x} {y + radius} c"
        f" {x - k} {y + radius} {x - radius} {y + k} {x - radius} {y} c"
        f" {x - radius} {y - k} {x - k} {y - radius} {x} {y - radius} c"
        f" {x + k} {y - radius} {x + radius} {y - k} {x + radius} {y} c h S"
    )


NONE_THERE = (
    "a hole is marked where the plan has none, 190.00 mm from the frame's left edge,"
    " 840.00 mm above its lower one"  # 160 + 30 and 880 - 40
)


def test_another_hole(copy: Copy, entry: dict[str, Any]) -> None:
    _add(copy, entry["page"], _mark(entry))
    assert the_fault(copy) == f"{page_of(entry)}{NONE_THERE}"


def test_another_hole_in_a_drawing_within_the_page(copy: Copy, entry: dict[str, Any]) -> None:
    with copy.opened_pdf() as document:
        sheet = document.pages[entry["page"] - 1]
        form = document.make_stream(
            _mark(entry).encode(), Type=pikepdf.Name.XObject, Subtype=pikepdf.Name.Form,
            BBox=[0, 0, 2000, 2000],
        )  # fmt: skip
        sheet.resources["/XObject"] = pikepdf.Dictionary(Fm0=form)
        sheet.contents_add(b"q /Fm0 Do Q")
    assert the_fault(copy) == f"{page_of(entry)}{NONE_THERE}"


def test_another_hole_in_an_annotation(copy: Copy, entry: dict[str, Any]) -> None:
    with copy.opened_pdf() as document:
        sheet = document.pages[entry["page"] - 1]
        form = document.make_stream(
            _mark(entry).encode(), Subtype=pikepdf.Name.Form, BBox=[0, 0, 2000, 2000]
        )
        stamp = pikepdf.Dictionary(
            Type=pikepdf.Name.Annot, Subtype=pikepdf.Name.Stamp, Rect=[0, 0, 595, 842],
            AP=pikepdf.Dictionary(N=form),
        )  # fmt: skip
        sheet.obj["/Annots"] = pikepdf.Array([document.make_indirect(stamp)])
    assert the_fault(copy) == f"{page_of(entry)}something is laid over it (an annotation)"


def test_a_layer_that_can_be_hidden(copy: Copy, entry: dict[str, Any]) -> None:
    with copy.opened_pdf() as document:
        sheet = document.pages[entry["page"] - 1]
        layer = document.make_indirect(pikepdf.Dictionary(Type=pikepdf.Name.OCG, Name="Marks"))
        document.Root.OCProperties = pikepdf.Dictionary(
            OCGs=[layer], D=pikepdf.Dictionary(OFF=[layer], Order=[layer])
        )
        sheet.resources["/Properties"] = pikepdf.Dictionary(Layer=layer)
        content = sheet.Contents.read_bytes()
        sheet.Contents = document.make_stream(b"/OC /Layer BDC\n" + content + b"\nEMC")
    assert the_fault(copy) == f"{page_of(entry)}it holds a layer that can be hidden"


def test_ink_that_can_be_seen_through(copy: Copy, entry: dict[str, Any]) -> None:
    with copy.opened_pdf() as document:
        sheet = document.pages[entry["page"] - 1]
        sheet.resources["/ExtGState"] = pikepdf.Dictionary(Faint=pikepdf.Dictionary(CA=0.05))
        sheet.Contents = document.make_stream(b"/Faint gs\n" + sheet.Contents.read_bytes())
    assert the_fault(copy) == f"{page_of(entry)}it holds ink that can be seen through"


def test_a_picture(copy: Copy, entry: dict[str, Any]) -> None:
    with copy.opened_pdf() as document:
        sheet = document.pages[entry["page"] - 1]
        image = document.make_stream(
            b"\0", Subtype=pikepdf.Name.Image, Width=1, Height=1, BitsPerComponent=8,
            ColorSpace=pikepdf.Name.DeviceGray,
        )  # fmt: skip
        sheet.resources["/XObject"] = pikepdf.Dictionary(Im0=image)
        sheet.contents_add(b"q /Im0 Do Q")
    assert the_fault(copy) == f"{page_of(entry)}it holds a picture"


# --- what is missing ------------------------------------------------------------------------------


def _leave_out(
    copy: Copy, page: int, is_meant: Callable[[list[float], list[float], float, int], bool]
) -> None:
    """Leave out straight lines by their ends (mm of the page), width (mm) and number of dashes."""
    state: dict[str, Any] = {"w": 0.0, "d": 0, "m": [], "l": []}

    def act(operands: list[Any], operator: str) -> tuple[list[Any], str]:
        if operator == "w":
            state["w"] = float(operands[0]) / POINTS_PER_MM
        elif operator == "d":
            state["d"] = len(operands[0])
        elif operator in ("q", "Q"):
            state["d"] = 0
        elif operator in ("m", "l"):
            state[operator] = [float(number) / POINTS_PER_MM for number in operands]
            state["n"] = 1 if operator == "m" else state["n"] + 1
        elif operator == "S" and state["n"] == 2 and is_meant(*(state[key] for key in "mlwd")):
            return [], "n"
        return operands, operator

    copy.rewrite(page, act)


def _is_level(start: list[float], end: list[float]) -> bool:
    return abs(start[1] - end[1]) < 0.001


@pytest.mark.parametrize("way", ["across", "up"])
def test_no_ruler(copy: Copy, entry: dict[str, Any], way: str) -> None:
    def is_ruler(start: list[float], end: list[float], _width: float, _dashes: int) -> bool:
        length = max(abs(end[0] - start[0]), abs(end[1] - start[1]))
        return abs(length - 101.6) < 0.01 and _is_level(start, end) == (way == "across")

    _leave_out(copy, entry["page"], is_ruler)
    assert the_fault(copy) == f"{page_of(entry)}it has no ruler {way}"


@pytest.mark.parametrize(
    ("dashes", "is_level", "told"),
    [
        (6, True, r"the datum is not drawn from \d+\.\d mm on"),
        (4, False, "the upright centre line is not drawn"),
    ],
)
def test_no_guide_line(
    copy: Copy, entry: dict[str, Any], dashes: int, is_level: bool, told: str
) -> None:
    def is_guide(start: list[float], end: list[float], _width: float, found: int) -> bool:
        return found == dashes and _is_level(start, end) == is_level

    pages = [sheet["page"] for hole in (True, False) for sheet in copy.sheets(hole=hole)]
    for page in pages:
        try:
            _leave_out(copy, page, is_guide)
        except AssertionError:
            continue  # this sheet shows no such line
    assert any(re.search(told, message) for message in faults(copy))


def test_no_level_centre_line_in_the_drawing(copy: Copy) -> None:
    def leave_out(text: str) -> str:
        lines = re.findall(
            r'<line [^>]*y1="([-\d.]+)"[^>]*y2="\1"[^>]*dasharray="[\d.]+[ ,][\d.]+[ ,]'
            r'[\d.]+[ ,][\d.]+" ?/>',
            text,
        )
        assert lines
        return re.sub(
            r'<line [^>]*y1="([-\d.]+)"[^>]*y2="\1"[^>]*dasharray="[\d.]+[ ,][\d.]+[ ,][\d.]+[ ,][\d.]+"'
            r" ?/>", "", text
        )  # fmt: skip

    copy.change_text("templates/signal-lamp.svg", leave_out)
    assert the_fault(copy) == "templates/signal-lamp.svg: the level centre line is not drawn"


def test_no_level_line(copy: Copy, entry: dict[str, Any]) -> None:
    height = entry["origin_mm"][1] + 840

    def is_level_line(start: list[float], end: list[float], _width: float, dashes: int) -> bool:
        return not dashes and _is_level(start, end) and abs(start[1] - height) < 0.01 and (
            abs(end[0] - start[0]) > 20.1
        )  # fmt: skip

    _leave_out(copy, entry["page"], is_level_line)
    assert re.search(r"the level line is not drawn from \d+\.\d mm on", the_fault(copy))


def test_no_join_marks_on_either_sheet(copy: Copy) -> None:
    for sheet in [*copy.sheets(hole=True), *copy.sheets(hole=False)]:
        with copy.opened_page(sheet["page"]) as (_, drawn):
            for at in list_half_diamonds(drawn):
                drawn[at + 3] = DRAWS_NOTHING
    for message in faults(copy):
        assert re.fullmatch(
            r"kit\.pdf: signal-lamp: the join marks of [A-Z]\d and [A-Z]\d are missing", message
        )


# --- the picture ----------------------------------------------------------------------------------


def _redraw(copy: Copy, act: Callable[[Any], Any], dpi: tuple[float, float] | None = (150, 150)) -> None:
    """Save the overview's picture anew."""
    from PIL import Image

    path = copy.folder / "overview.png"
    with Image.open(path) as image:
        changed = act(image.convert("L"))
    changed.save(path, **({} if dpi is None else {"dpi": dpi}))
    copy.renew_hashes()


def test_a_picture_that_is_moved_by_three_dots(copy: Copy) -> None:
    from PIL import ImageChops

    _redraw(copy, lambda image: ImageChops.offset(image, 3, 0))
    assert the_fault(copy) == "overview.png: signal-lamp hole 1 is not marked at its place"


def test_a_picture_without_its_size(copy: Copy) -> None:
    _redraw(copy, lambda image: image, None)
    assert the_fault(copy) == "overview.png: it does not tell its physical size, or is too coarse"


def test_a_picture_that_is_cut(copy: Copy) -> None:
    _redraw(copy, lambda image: image.crop((0, 0, image.width - 9, image.height)))
    assert re.fullmatch(
        r"overview\.png: it is [\d.]+ × [\d.]+ mm large, not [\d.]+ × [\d.]+ mm", the_fault(copy)
    )
