"""The smallest kit there can be: what is said of it, whole and with one thing wrong."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import pikepdf
import pytest

from templater.geometry import Point, Size
from templater.printing.model import Printer, Tiling
from templater.verify.check_pdf import check_overview_pdf, check_split_pdf
from templater.verify.model import UnreadableError
from tests.verify import gull
from tests.verify.small_kit import (
    A4,
    PAPER,
    RECORDS,
    check,
    draw_overview,
    draw_pages,
    draw_template,
    line,
    move,
    say_page,
    scale_record,
    words,
    write,
)


def _told(folder: Path, page: int, old: str, new: str) -> list[str]:
    """What is said where one instruction or word of a page is another."""
    pages = draw_pages()
    before = "\n".join(pages[page - 1])
    assert old in before
    pages[page - 1] = [before.replace(old, new)]
    return list(check(write(folder, pages)).faults)


def test_a_kit_that_holds(tmp_path: Path) -> None:
    found = check(write(tmp_path, draw_pages()))
    assert found.faults == ()
    assert found.offsets_mm == pytest.approx((0.0, 0.0), abs=1e-4)  # a cross and its ring


def test_a_kit_for_a_printer_that_draws_too_small_and_too_large(tmp_path: Path) -> None:
    scale = (1.01, 0.99)
    records = tuple(scale_record(each, scale) for each in RECORDS)
    path = write(tmp_path, draw_pages(), scale=scale)
    assert check(path, records).faults == ()
    told = check(path).faults
    assert told[1] == "page 2 (overview): its paper is 299.97 × 207.90 mm, not 297.00 × 210.00 mm"
    assert told[2] == f"{SHEET}it holds a circle that is not round"


SHEET = "page 3 (gull, sheet A1): "


@pytest.mark.parametrize(
    ("page", "old", "new", "told"),
    [
        (3, "90 80 m 110 80 l", "90 80.02 m 110 80.02 l",
         f"{SHEET}hole 1 is 0.020 mm off: +0.000 mm across, +0.020 mm up"),
        (3, "(A1)", "(A2)", f"{SHEET}it does not bear its name, A1"),
        (3, "K7M2Q4", "ABCDEF", f"{SHEET}it bears the revision ABCDEF; this kit is K7M2Q4"),
        (3, "1 0 0 1 108.0", "-1 0 0 1 108.0", f"{SHEET}it is mirrored"),
        (3, "0.35 w", "0.05 w", f"{SHEET}it holds a line too thin to be seen"),
        (3, "page 3 of 4", "page 3 of 5", "page 3 of the file is of a kit of 5 pages, not of 4"),
        (2, "49 114 m 51 114 l", "49 115 m 51 115 l",
         "page 2 (overview): gull hole 1 is not marked at its place"),
        (2, "0.7 w", "0.8 w", "page 2 (overview): the floor line of the wall is not drawn"),
        (4, "400 mm", "410 mm",
         "checklist: gull hole 1 is told to be 410 mm from the left end, not 400.0 mm"),
        (1, "120 50 l", "119 50 l", "print test: the long ruler across is not drawn"),
        (1, "up must be 120 mm", "up must be 121 mm",
         "print test: the long ruler up measures 120.000 mm, not 121 mm"),
    ],
)  # fmt: skip
def test_one_thing_wrong(tmp_path: Path, page: int, old: str, new: str, told: str) -> None:
    assert _told(tmp_path, page, old, new) == [told]


def test_a_sheet_without_rulers(tmp_path: Path) -> None:
    pages = draw_pages()
    pages[2] = [*say_page(3), *move(Point(40.0, 50.0), draw_template(has_rulers=False))]
    told = tuple(f"{SHEET}it has no ruler {way}" for way in ("across", "up"))
    assert check(write(tmp_path, pages)).faults == told


def test_a_page_without_its_number(tmp_path: Path) -> None:
    assert _told(tmp_path, 3, "page 3 of 4", "page three") == [
        "page 3 of the file does not bear its number",
        "page 3 (gull, sheet A1) is missing",
    ]


@pytest.mark.parametrize(
    ("size", "is_right"),
    [(Size(297.009, 210.0), True), (Size(297.02, 210.0), False), (Size(297.0, 209.98), False)],
)
def test_how_large_the_paper_is(tmp_path: Path, size: Size, is_right: bool) -> None:
    path = write(tmp_path, draw_pages(), (A4, PAPER, size, A4))
    told = f"{SHEET}its paper is {size.width:.2f} × {size.height:.2f} mm, not 297.00 × 210.00 mm"
    assert list(check(path).faults) == ([] if is_right else [told])


def test_a_manifest_that_does_not_tell_what_a_sheet_shows(tmp_path: Path) -> None:
    path = write(tmp_path, draw_pages())
    for change in (replace(RECORDS[2], clip=None), replace(RECORDS[2], sheet=None)):
        (told,) = check(path, (*RECORDS[:2], change, RECORDS[3])).faults
        assert told.endswith("the manifest does not tell what it shows")


def test_pages_in_another_order(tmp_path: Path) -> None:
    one, two, three, four = draw_pages()
    path = write(tmp_path, [one, three, two, four])
    assert check(path).faults == (
        "page 3 (gull, sheet A1) stands where page 2 belongs",
        "page 2 (overview) stands where page 3 belongs",
    )
    path = write(tmp_path, [one, two, four, three], (A4, PAPER, A4, PAPER))
    assert check(path).faults == (
        "page 4 (checklist) stands where page 3 belongs",
        "page 3 (gull, sheet A1) stands where page 4 belongs",
    )
    path = write(tmp_path, [*draw_pages(), four], (A4, PAPER, PAPER, A4, A4))
    assert check(path).faults == ("page 4 (checklist) is there twice",)


def test_a_second_page_of_the_overview_is_held_against_what_it_says(tmp_path: Path) -> None:
    """From 30, 20 on at 1:5: the piece's corner at 70, 80; its hole 100 / 5 to the right, 80 / 5 up."""
    part = [
        *say_page(3, 5),
        *words(
            "Part 1 of 1. 1:5. From 100 mm to 700 mm from the left end,",
            "from 1300 mm to 1700 mm above the floor.",
            x=20.0, y=180.0,
        ),
        "70 80 40 20 re S 0.25 w",
        line(89, 96, 91, 96), line(90, 95, 90, 97),
    ]  # fmt: skip
    one, two, three, four = ("\n".join(page).replace("of 4", "of 5") for page in draw_pages())
    three, four = three.replace("page 3", "page 4"), four.replace("page 4", "page 5")
    records = (*RECORDS[:2], replace(RECORDS[1], page=3), gull.page(4), replace(RECORDS[3], page=5))
    sizes = (A4, PAPER, PAPER, PAPER, A4)
    assert check(write(tmp_path, [[one], [two], part, [three], [four]], sizes), records).faults == ()
    part[-1] = line(90, 95.1, 90, 97.1)
    found = check(write(tmp_path, [[one], [two], part, [three], [four]], sizes), records)
    assert found.faults == ("page 3 (overview): gull hole 1 is not marked at its place",)


# --- who saved it ---------------------------------------------------------------------------------


def test_a_file_that_another_program_has_saved(tmp_path: Path) -> None:
    assert check(write(tmp_path, draw_pages(), producer="Gullwriter")).faults == ()
    pages = draw_pages()
    pages[2] = [row.replace("(A1)", "(A2)") for row in pages[2]]
    for name in ("Gullwriter", "ternwriter"):
        assert check(write(tmp_path, pages, producer=name)).faults == (
            f"it was saved anew by {name}, which may have changed it; ask for the file as it was made",
            f"{SHEET}it does not bear its name, A1",
        )
    pages[2] = ["(words"]
    assert check(write(tmp_path, pages, producer="Gullwriter")).faults == (
        "it was saved anew by Gullwriter, and cannot be read: page 3: it holds what cannot be followed:"
        " its content is damaged; ask for the file as it was made",
    )
    outlines = [["0 0 9 9 re S"]] * 4
    (told,) = check(write(tmp_path, outlines, producer="Gullwriter")).faults
    assert told == (
        "it was saved anew by Gullwriter, and cannot be read: its pages hold no words, they may be drawn"
        " as outlines; ask for the file as it was made"
    )


# --- parts of a kit -------------------------------------------------------------------------------


def test_the_overview_alone(tmp_path: Path) -> None:
    record = gull.record(*RECORDS)
    path = write(tmp_path, [list(draw_overview())], (PAPER,))
    assert check_overview_pdf(path, record, gull.expected()).faults == ()
    for count in (0, 2):
        path = write(tmp_path, [list(draw_overview())] * count, (PAPER,) * count)
        assert check_overview_pdf(path, record, gull.expected()).faults == (
            f"it has {count} pages, not 1",
        )
    path = write(tmp_path, [[row for row in draw_overview() if "114" not in row]], (PAPER,))
    assert check_overview_pdf(path, record, gull.expected()).faults == (
        "page 1 (overview): gull hole 1 is not marked at its place",
    )


def test_a_pieces_sheets_alone(tmp_path: Path) -> None:
    path = write(tmp_path, [draw_pages()[2]], (PAPER,))
    assert check_split_pdf(path, "gull", gull.expected()).faults == ()
    path = write(tmp_path, [[row.replace("(A1)", "(A2)") for row in draw_pages()[2]]], (PAPER,))
    assert check_split_pdf(path, "gull", gull.expected()).faults == (
        "page 1 (gull, sheet A1): it does not bear its name, A1",
    )


def test_a_pieces_sheets_alone_for_a_printer(tmp_path: Path) -> None:
    # A lying page is 297 mm along the paper and 210 across it, in the file; less or more on paper.
    printer = Printer("desk", 1.01, 0.99, gull.SETUP.margins, Size(180.0, 240.0))
    tile = replace(gull.expected().tilings["gull"].tiles[0], page=Size(297.0 / 0.99, 210.0 / 1.01))
    expected = replace(
        gull.expected(),
        setup=replace(gull.SETUP, printer=printer),
        tilings={"gull": Tiling((tile,), (), ())},
    )
    path = write(tmp_path, [draw_pages()[2]], (tile.page,), (0.99, 1.01))
    assert check_split_pdf(path, "gull", expected).faults == ()


def test_what_is_no_file_of_pages(tmp_path: Path) -> None:
    path = tmp_path / "kit.pdf"
    path.write_bytes(b"none")
    with pytest.raises(UnreadableError, match="it is no PDF that can be read"):
        check(path)


@pytest.mark.parametrize(
    ("kind", "appearance", "is_bare"),
    [("Link", False, True), ("Link", True, False), ("Circle", False, False), ("Stamp", False, False)],
)
def test_what_may_be_laid_over_a_page(
    tmp_path: Path, kind: str, appearance: bool, is_bare: bool
) -> None:
    path = write(tmp_path, draw_pages())
    with pikepdf.open(path, allow_overwriting_input=True) as document:
        note = pikepdf.Dictionary(Subtype=pikepdf.Name(f"/{kind}"))
        if appearance:
            note["/AP"] = pikepdf.Dictionary()
        document.pages[2].obj["/Annots"] = pikepdf.Array([note])
        document.save(path)
    told = (f"{SHEET}something is laid over it (an annotation)",)
    assert check(path).faults == (() if is_bare else told)


@pytest.mark.parametrize("is_inherited", [False, True])
def test_a_page_that_is_turned_by_itself_or_by_what_it_is_part_of(
    tmp_path: Path, is_inherited: bool
) -> None:
    path = write(tmp_path, draw_pages())
    with pikepdf.open(path, allow_overwriting_input=True) as document:
        page = document.pages[2].obj
        (page.Parent if is_inherited else page)["/Rotate"] = 180
        document.save(path)
    assert f"{SHEET}it is turned (it has a Rotate)" in check(path).faults
