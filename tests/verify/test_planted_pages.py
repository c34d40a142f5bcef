"""Whole pages of a kit that are not as they were written: another size, place, order or paper."""

from __future__ import annotations

import re
from pathlib import Path
from typing import Any

import pikepdf
import pytest

from templater.proving import prove_kit
from tests.kits import MadeKit, make_kit
from tests.verify.faults import faults, page_of, the_fault
from tests.verify.planting import Copy


@pytest.mark.parametrize("hole", [True, False])
def test_a_page_scaled_to_99_9_per_cent(copy: Copy, hole: bool) -> None:
    entry = copy.sheets(hole=hole)[0]
    copy.transform(entry["page"], 0.999, 0, 0, 0.999, 0, 0)
    for message in faults(copy):
        assert message.startswith(f"{page_of(entry)}the ruler")
        # 100 mm x 0.999; 4 in x 0.999.
        assert "100 mm measure 99.900 mm, its 4 in 3.9960 in" in message


@pytest.mark.parametrize(("across", "up"), [(0.1, 0.0), (-0.1, 0.0), (0.0, 0.1), (0.0, -0.1)])
def test_a_sheet_with_a_hole_shifted_by_a_tenth(copy: Copy, across: float, up: float) -> None:
    entry = copy.sheets(hole=True)[0]
    copy.transform(entry["page"], 1, 0, 0, 1, across, up)
    told = rf"hole \d is 0\.100 mm off: \{across:+.3f} mm across, \{up:+.3f} mm up"
    for message in faults(copy):
        assert re.fullmatch(re.escape(page_of(entry)) + told, message)


@pytest.mark.parametrize(("across", "up"), [(0.1, 0.0), (0.0, 0.1)])
def test_a_sheet_without_a_hole_shifted_by_a_tenth(copy: Copy, across: float, up: float) -> None:
    entries = copy.sheets(hole=False)
    assert len(entries) > 3
    for entry in entries[:4]:
        copy.transform(entry["page"], 1, 0, 0, 1, across, up)
        told = faults(copy)
        assert any(
            message.startswith(page_of(entry)) and message.endswith("is 0.100 mm off")
            for message in told
        )
        copy.transform(entry["page"], 1, 0, 0, 1, -across, -up)
    prove_kit(copy.folder)


def test_two_sheets_swapped(copy: Copy) -> None:
    one, other = (entry["page"] for entry in copy.sheets(hole=True)[:2])
    with copy.opened_pdf() as document:
        pages = list(document.pages)
        document.pages[one - 1] = pages[other - 1]
        document.pages[other - 1] = pages[one - 1]
    assert [message.split(" stands ")[1] for message in faults(copy)] == [
        f"where page {one} belongs",
        f"where page {other} belongs",
    ]


def test_a_sheet_missing(copy: Copy) -> None:
    entry = copy.sheets(hole=False)[0]
    with copy.opened_pdf() as document:
        del document.pages[entry["page"] - 1]
    name = f"{entry['piece']}, sheet {entry['sheet']}"
    assert the_fault(copy) == f"kit.pdf: page {entry['page']} ({name}) is missing"


def test_a_sheet_twice(copy: Copy) -> None:
    entry = copy.sheets(hole=True)[0]
    with copy.opened_pdf() as document:
        document.pages.insert(entry["page"], document.pages[entry["page"] - 1])
    name = f"{entry['piece']}, sheet {entry['sheet']}"
    assert the_fault(copy) == f"kit.pdf: page {entry['page']} ({name}) is there twice"


def test_a_sheet_twice_and_its_neighbour_missing(copy: Copy) -> None:
    page = copy.sheets(hole=True)[0]["page"]
    with copy.opened_pdf() as document:
        document.pages[page] = document.pages[page - 1]
    assert [message.rsplit(") ", 1)[1] for message in faults(copy)] == ["is missing", "is there twice"]


MIRRORED = """
title: A mirror
wall: {width: 2 m, height: 2.4 m}
units: mm
datum: {height: 1500}
pieces:
  - {name: Signal lamp, size: 120 x 200, hang: {by: nail, drop: 20}, place: {centre: 1000, top: 1600}}
"""


@pytest.fixture(scope="module")
def lamp_kit(tmp_path_factory: pytest.TempPathFactory) -> MadeKit:
    """A kit whose one sheet with a hole is the same on its left and on its right, but for the words."""
    return _make_lamp(tmp_path_factory.mktemp("lamp"), MIRRORED)


def _make_lamp(folder: Path, text: str) -> MadeKit:
    layout = folder / "lamp.yaml"
    layout.write_text(text, encoding="utf-8")
    return make_kit(layout, folder / "lamp", "a4")


@pytest.fixture
def lamp(lamp_kit: MadeKit, tmp_path: Path) -> Copy:
    return Copy(lamp_kit.folder, tmp_path)


def test_a_mirrored_page(lamp: Copy) -> None:
    (entry,) = lamp.sheets(hole=True)
    width, _ = entry["paper_mm"]
    # The hole and the outline fall on themselves: 2 x (margin left + half the room) is the page's width.
    assert entry["origin_mm"][0] + 60 == pytest.approx(width / 2)
    lamp.transform(entry["page"], -1, 0, 0, 1, width, 0)
    assert the_fault(lamp) == f"{page_of(entry)}it is mirrored"


def test_a_page_with_its_y_axis_turned(lamp: Copy) -> None:
    (entry,) = lamp.sheets(hole=True)
    lamp.transform(entry["page"], 1, 0, 0, -1, 0, entry["paper_mm"][1])
    assert the_fault(lamp) == f"{page_of(entry)}it is upside down as in a mirror: its y axis is turned"


def test_a_page_turned_about(lamp: Copy) -> None:
    (entry,) = lamp.sheets(hole=True)
    width, height = entry["paper_mm"]
    lamp.transform(entry["page"], -1, 0, 0, -1, width, height)
    assert the_fault(lamp) == f"{page_of(entry)}it is turned"


def test_a_stale_sheet_of_another_revision(lamp: Copy, tmp_path: Path) -> None:
    (tmp_path / "other").mkdir()
    other = _make_lamp(tmp_path / "other", f"issue: second\n{MIRRORED}")
    (entry,) = lamp.sheets(hole=True)
    assert entry in other.manifest["pages"]
    with lamp.opened_pdf() as document, pikepdf.open(other.folder / "kit.pdf") as stale:
        document.pages[entry["page"] - 1] = stale.pages[entry["page"] - 1]
    old, new = other.manifest["revision"], lamp.manifest["revision"]
    assert the_fault(lamp) == f"{page_of(entry)}it bears the revision {old}; this kit is {new}"


def test_the_wrong_paper(copy: Copy) -> None:
    entry = copy.sheets(hole=True)[0]
    with copy.opened_pdf() as document:
        document.pages[entry["page"] - 1].MediaBox = [0, 0, 595.2756, 841.8898]
    told = re.escape(page_of(entry)) + r"its paper is 210\.00 × 297\.00 mm, not \d+\.\d\d × \d+\.\d\d mm"
    assert re.fullmatch(told, the_fault(copy))


@pytest.mark.parametrize(
    ("key", "value", "told"),
    [
        ("/Rotate", 180, "it is turned (it has a Rotate)"),
        ("/UserUnit", 1.001, "its unit is not 1/72 in (it has a UserUnit)"),
        ("/CropBox", [10, 10, 600, 700], "it is cropped"),
        ("/MediaBox", [1, 0, 613, 792], "its paper does not begin at 0, 0"),
    ],
)
def test_a_page_that_is_not_plain(copy: Copy, key: str, value: Any, told: str) -> None:
    entry = copy.sheets(hole=True)[0]
    with copy.opened_pdf() as document:
        document.pages[entry["page"] - 1].obj[key] = value
    assert the_fault(copy) == f"{page_of(entry)}{told}"
