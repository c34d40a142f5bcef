"""How much of a printed page is black: a kit is a lot of paper, and must not be a lot of ink."""

from __future__ import annotations

from pathlib import Path

import pypdfium2
import pytest

from templater.pipeline import PrintChoices
from templater.printing.model import Coverage
from tests.kits import LAYOUTS, MadeKit, make_kit

PIXELS_PER_MM = 6
MOST_INK = 0.04


def test_a_sheet_of_a_template_takes_little_ink(kit: MadeKit) -> None:
    _check_sheets(kit)


@pytest.mark.parametrize("paper", ["a4", "letter", "a5"])
def test_a_card_which_is_fuller_of_words_takes_little_ink_too(paper: str, tmp_path: Path) -> None:
    choices = PrintChoices(cover=Coverage.CARD)
    _check_sheets(make_kit(LAYOUTS / "salon-wall.yaml", tmp_path / "kit", paper, choices=choices))


def test_whole_templates_on_the_smallest_paper_take_little_ink_too(tmp_path: Path) -> None:
    _check_sheets(make_kit(LAYOUTS / "keepers-study.yaml", tmp_path / "kit", "a5"))


def _check_sheets(kit: MadeKit) -> None:
    with pypdfium2.PdfDocument(kit.folder / "kit.pdf") as document:
        for sheet in kit.sheets:
            coverage = _measure_ink(document[sheet.facts["page"] - 1])
            assert 0 < coverage < MOST_INK, (sheet.facts["piece"], sheet.facts["sheet"])


def test_a_black_page_would_be_found() -> None:
    document = pypdfium2.PdfDocument.new()
    page = document.new_page(100, 200)
    assert _measure_ink(page) == 0
    image = pypdfium2.PdfImage.new(document)
    image.set_bitmap(
        pypdfium2.PdfBitmap.new_native(1, 1, pypdfium2.raw.FPDFBitmap_Gray, rev_byteorder=False)
    )
    image.set_matrix(pypdfium2.PdfMatrix().scale(50, 200))
    page.insert_obj(image)
    page.gen_content()
    # Half the page is black.
    assert abs(_measure_ink(page) - 0.5) < 0.01
    document.close()


def _measure_ink(page: pypdfium2.PdfPage) -> float:
    """The part of the page that is black, grey pixels by how dark they are."""
    bitmap = page.render(scale=PIXELS_PER_MM * 25.4 / 72, grayscale=True)
    return 1 - float(bitmap.to_numpy().mean()) / 255
