"""The small kit as Ghostscript saves it anew: it holds, and what is planted in it is found.

The pages are a recording of its ``pdfwrite``: words on lines that follow each other, tenths of a point,
numbers of six digits, paper of whole hundredths of a point, fonts that tell no letters.
"""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path

import pikepdf
import pytest

from tests.verify import small_kit
from tests.verify.bare_fonts import CODES, embed, make_font, plain_font

RECORDED = Path(__file__).with_name("ghostscript_pages.txt")
SHORT, LONG = 595.28, 841.89  # points; A4 has 595.276 x 841.890
SIZES = ((SHORT, LONG), (LONG, SHORT), (LONG, SHORT), (SHORT, LONG))
TENTH = 0.1 * small_kit.POINTS


def read_pages() -> list[bytes]:
    """The recorded content of the pages."""
    return RECORDED.read_bytes().split(b"% page\n")


def write(
    folder: Path,
    pages: list[bytes],
    sizes: tuple[tuple[float, float], ...] = SIZES,
    font: bytes | None = None,
) -> Path:
    """A file of these pages."""
    path = folder / "kit.pdf"
    with pikepdf.new() as document:
        fonts = pikepdf.Dictionary(R7=embed(document, font or plain_font()))
        for content, size in zip(pages, sizes, strict=True):
            page = document.add_blank_page(page_size=size)
            page.obj["/Resources"] = pikepdf.Dictionary(Font=fonts)
            page.Contents = document.make_stream(content)
        document.docinfo["/Producer"] = "GPL Ghostscript 10.00.0"
        document.save(path)
    return path


def find(path: Path) -> tuple[str, ...]:
    """What is wrong with it, after it is told who saved it."""
    told, *faults = small_kit.check(path).faults
    assert told.startswith("it was saved anew by GPL Ghostscript 10.00.0, ")
    return tuple(faults) or (told,)


def transform(content: bytes, *matrix: float) -> bytes:
    """All of a page's content elsewhere; lengths are points."""
    numbers = " ".join(f"{number:f}" for number in matrix)
    return f"q {numbers} cm\n".encode() + content + b"\nQ"


def test_it_holds(tmp_path: Path) -> None:
    found = small_kit.check(write(tmp_path, read_pages()))
    assert found.faults == ()
    # Tenths of a point with two decimals: 0.0005 pt of rounding are 0.0002 mm, across and up.
    assert 0 < max(found.offsets_mm) < 0.0003


@pytest.mark.parametrize(
    ("matrix", "told"),
    [
        ((0.999, 0, 0, 0.999, 0, 0), "its 100 mm measure 99.900 mm, its 4 in 3.9960 in"),
        ((1, 0, 0, 1, TENTH, 0), "hole 1 is 0.100 mm off: +0.100 mm across, +0.000 mm up"),
        ((1, 0, 0, 1, 0, -TENTH), "hole 1 is 0.100 mm off: +0.000 mm across, -0.100 mm up"),
        ((-1, 0, 0, 1, LONG, 0), "it is mirrored"),
        ((1, 0, 0, -1, 0, SHORT), "its y axis is turned"),
    ],
)
def test_a_sheet_that_was_moved(tmp_path: Path, matrix: tuple[float, ...], told: str) -> None:
    pages = read_pages()
    pages[2] = transform(pages[2], *matrix)
    assert any(told in fault for fault in find(write(tmp_path, pages)))


def test_two_pages_swapped(tmp_path: Path) -> None:
    first, second, third, fourth = read_pages()
    path = write(tmp_path, [first, third, second, fourth])
    assert find(path) == (
        "page 3 (gull, sheet A1) stands where page 2 belongs",
        "page 2 (overview) stands where page 3 belongs",
    )


def test_a_page_missing_and_a_page_twice(tmp_path: Path) -> None:
    first, second, third, fourth = read_pages()
    missing = find(write(tmp_path, [first, second, fourth], (*SIZES[:2], SIZES[3])))
    assert any("is missing" in fault for fault in missing)
    twice = find(write(tmp_path, [first, second, third, third], SIZES))
    assert any("is there twice" in fault for fault in twice)


def test_another_paper(tmp_path: Path) -> None:
    # Its width 0.02 mm more.
    wide = (LONG + 0.02 * small_kit.POINTS, SHORT)
    (fault,) = find(write(tmp_path, read_pages(), (*SIZES[:2], wide, SIZES[3])))
    assert "its paper is 297.02 × 210.00 mm, not 297.00 × 210.00 mm" in fault


def test_other_words(tmp_path: Path) -> None:
    pages = read_pages()
    pages[3] = pages[3].replace(b"(400 mm)", b"(410 mm)")
    assert find(write(tmp_path, pages)) == (
        "checklist: gull hole 1 is told to be 410 mm from the left end, not 400.0 mm",
    )


def _draw(letters: Mapping[str, str]) -> bytes:
    """The font with other letters drawn in the place of some."""
    return make_font({code: letters.get(letter, letter) for code, letter in CODES.items()})


def test_other_letters_drawn_for_the_same_codes(tmp_path: Path) -> None:
    faults = find(write(tmp_path, read_pages(), font=_draw({"7": "9"})))
    assert "page 3 (gull, sheet A1): it bears the revision K9M2Q4; this kit is K7M2Q4" in faults


def test_a_shape_that_is_no_letter(tmp_path: Path) -> None:
    def bend(font: object) -> None:
        glyph = font["glyf"]["seven"]  # type: ignore[index]
        x, y = glyph.coordinates[0]
        glyph.coordinates[0] = (x, y + 20)

    (told,) = find(write(tmp_path, read_pages(), font=make_font(change=bend)))
    assert f"the shape of its code {ord('7')} is no letter of the typeface" in told
