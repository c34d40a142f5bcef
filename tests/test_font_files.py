from __future__ import annotations

import os
from pathlib import Path

import pytest

from templater.errors import LayoutError, Place
from templater.font_files import LARGEST_BYTES, read_fonts
from templater.layout.model import FontFile
from templater.pipeline import plan_wall, read_wall
from tests.made_fonts import HEBREW, make_font, write_hall

PUT_THERE = "put the font file into the folder of the layout, and name it without a folder before it"


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    """A layout's folder with one font, and another font beside the folder."""
    home = tmp_path / "walls"
    home.mkdir()
    (home / "hebrew.ttf").write_bytes(make_font(HEBREW))
    (tmp_path / "outside.ttf").write_bytes(make_font(HEBREW))
    return home


def _refusal(folder: Path, path: str) -> tuple[str, str]:
    """What is said of one font, and the act that mends it."""
    at = Place("hall.yaml", 3, 7)
    fonts, (fault,) = read_fonts([FontFile(path, at)], folder)
    assert fonts == ()
    assert fault.place == at
    return fault.message, fault.hint


def test_fonts_are_read_from_the_folder_of_the_layout(folder: Path) -> None:
    (folder / "inner").mkdir()
    (folder / "inner" / "kanji.otf").write_bytes(make_font({"絵": 900}, kind="CFF"))
    (folder / "link.ttf").symlink_to("hebrew.ttf")
    files = [FontFile(path, Place("")) for path in ("link.ttf", "inner/kanji.otf", "./hebrew.ttf")]
    fonts, faults = read_fonts(files, folder)
    assert faults == []
    assert [font.draws("א") for font in fonts] == [True, False, True]


@pytest.mark.parametrize(
    "path", ["../outside.ttf", "inner/../../outside.ttf", "link.ttf", "linked/outside.ttf"]
)
def test_nothing_outside_the_folder_is_read(folder: Path, path: str) -> None:
    (folder / "link.ttf").symlink_to("../outside.ttf")
    (folder / "linked").symlink_to("..")
    assert _refusal(folder, path) == (
        f"'font' names '{path}', which lies outside the folder of the layout",
        PUT_THERE,
    )


def test_a_layouts_folder_may_itself_be_a_link(folder: Path, tmp_path: Path) -> None:
    (tmp_path / "door").symlink_to(folder)
    fonts, faults = read_fonts([FontFile("hebrew.ttf", Place(""))], tmp_path / "door")
    assert (len(fonts), faults) == (1, [])


def test_what_is_no_file_is_refused(folder: Path) -> None:
    os.mkfifo(folder / "pipe.ttf")
    (folder / "round.ttf").symlink_to("round.ttf")
    (folder / "folder.ttf").mkdir()
    for path, told in (
        ("none.ttf", "but there is no such file beside the layout"),
        ("folder.ttf", "which is not a file"),
        ("pipe.ttf", "which is not a file"),
        ("hebrew.ttf/none.ttf", "which cannot be read: Not a directory"),
    ):
        assert _refusal(folder, path) == (f"'font' names '{path}', {told}", PUT_THERE)
    message, hint = _refusal(folder, "round.ttf")
    assert message.startswith("'font' names 'round.ttf', which cannot be read: ")
    assert hint == PUT_THERE


def test_a_file_that_is_too_large_is_refused_unread(folder: Path) -> None:
    with (folder / "large.ttf").open("wb") as stream:
        stream.truncate(LARGEST_BYTES + (1 << 20))
    assert _refusal(folder, "large.ttf") == (
        "'font' names 'large.ttf', which has 65 MB, more than 64 MB",
        "name a smaller font",
    )


def test_a_font_that_cannot_be_used_is_told_with_its_place_beside_other_faults(tmp_path: Path) -> None:
    layout = write_hall(tmp_path, "font: [none.ttf, torn.ttf]\n", "Fog bell", "Fog horn")
    text = layout.read_text("utf-8").replace("centre: 50", "centre: 22")  # two pieces in one place
    layout.write_text(text, encoding="utf-8")
    (tmp_path / "torn.ttf").write_bytes(make_font(HEBREW)[:300])
    with pytest.raises(LayoutError) as refused:
        read_wall(layout)
    none, torn, overlap = refused.value.faults
    assert str(none).startswith(f"{layout}:3:8: 'font' names 'none.ttf', but there is no such file")
    assert str(torn) == (
        f"{layout}:3:18: 'font' names 'torn.ttf', which is damaged\n"
        "  fetch the font file again, or name another"
    )
    assert "Fog horn" in overlap.message


def test_without_its_folder_a_plan_needs_no_font(tmp_path: Path) -> None:
    layout = write_hall(tmp_path, "font: none.ttf\n", "שלום")
    assert plan_wall(layout.read_bytes(), "hall.yaml").plan.hole_count == 1
