"""The pages that measure a printer, read back from their PDF."""

from __future__ import annotations

import io
import re

import pikepdf
import pytest

from templater.geometry import Box, Size
from templater.layout.model import Margins
from templater.paper import parse_paper
from templater.printing.calibration import Calibration
from templater.printing.model import Printer
from templater.sheets.calibration import compose_calibration, list_rulers
from templater.to_files.pdf import write_pdf
from tests.reading import Ink, read_pdf_page

INKJET = Calibration("study inkjet", Size(180, 240), Size(177.3, 238.56), Margins(4.0, 5.0, 3.0, 13.0))
PRINTED = (0.985, 0.994)


def _print(paper: str, printer: Printer | None, printed: tuple[float, float]) -> list[Ink]:
    """The pages as they come out of a printer."""
    stream = io.BytesIO()
    write_pdf(compose_calibration(parse_paper(paper), printer), stream, title="Measure your printer")
    with pikepdf.open(stream) as pdf:
        return [
            read_pdf_page(page, printed[::-1] if _is_turned(page, paper) else printed)
            for page in pdf.pages
        ]


def _is_turned(page: pikepdf.Page, paper: str) -> bool:
    """Whether the width of the paper as it is fed lies upright."""
    height = float(page.mediabox[3]) * 25.4 / 72
    return abs(height - parse_paper(paper).size.width) < 0.01


def _long_lines(ink: Ink) -> list[Box]:
    """The axes of the rulers that share a zero: the one across, then the one up."""
    level = max((stroke.box for stroke in ink.strokes), key=lambda box: box.width)
    upright = max((stroke.box for stroke in ink.strokes), key=lambda box: box.height)
    assert (level.height, upright.width) == pytest.approx((0, 0))
    assert (level.x0, level.y0) == pytest.approx((upright.x0, upright.y0))
    return [level, upright]


@pytest.mark.parametrize("paper", ["a4", "letter"])
def test_rulers_are_180_and_240_mm_on_the_usual_papers(paper: str) -> None:
    portrait, landscape = _print(paper, None, (1.0, 1.0))
    across, up = _long_lines(portrait)
    assert (across.width, up.height) == pytest.approx((180, 240), abs=0.001)
    across, up = _long_lines(landscape)
    assert (across.width, up.height) == pytest.approx((240, 180), abs=0.001)
    assert list_rulers(parse_paper(paper)) == Size(180, 240)


@pytest.mark.parametrize(
    ("paper", "rulers"),
    # A5 leaves 148 - 5.5 - 1 - 20.5 = 121 mm across. A3 turned leaves, above a foot of 15 + 9 + 8,
    # 297 - 6.5 - 32 = 258 mm up, so 240 mm and 320 mm on both pages.
    [("a5", (120, 160)), ("a3", (240, 320)), ("roll 24 in", (570, 760))],
)
def test_other_papers_have_rulers_in_round_numbers(paper: str, rulers: tuple[float, float]) -> None:
    across, up = _long_lines(_print(paper, None, (1.0, 1.0))[0])
    assert (across.width, up.height) == pytest.approx(rulers, abs=0.001)


_COMPARED = re.compile(
    r"drawn (\d+) mm long, must come out as long as (DOWN on the other page|ACROSS there)"
    r"(?: from the corner to its line for (\d+) mm)?\."
)


@pytest.mark.parametrize("paper", ["a4", "letter", "legal", "a5", "a3", "ansi e", "roll 24 in"])
def test_what_the_wide_page_says_of_the_other_is_so(paper: str) -> None:
    pages = _print(paper, None, (1.0, 1.0))
    portrait, landscape = [_long_lines(ink) for ink in pages if _has_rulers(ink)]
    found = _COMPARED.findall(" ".join(run.text for ink in pages for run in ink.runs))
    assert [int(drawn) for drawn, *_ in found] == [
        pytest.approx(landscape[0].width, abs=0.001),
        pytest.approx(landscape[1].height, abs=0.001),
    ]
    for (drawn, _, end), other in zip(found, (portrait[1].height, portrait[0].width), strict=True):
        # The whole ruler of the other page, or the place on it that is told.
        assert int(end or 0) == (0 if int(drawn) == pytest.approx(other, abs=0.001) else int(drawn))
        assert int(drawn) <= other + 0.001
    assert all(end for *_, end in found) is (paper == "a5")


def _has_rulers(ink: Ink) -> bool:
    """Whether a page is more than words that found no room beside the rulers."""
    return any(stroke.box.width > 100 for stroke in ink.strokes) and any(
        stroke.box.height > 80 for stroke in ink.strokes
    )


@pytest.mark.parametrize("paper", ["a4", "letter", "a5", "roll 24 in"])
def test_the_proof_measures_true_on_its_printer(paper: str) -> None:
    pages = _print(paper, INKJET.printer, PRINTED)
    for ink in pages:
        if not any("Proof of" in run.text for run in ink.runs):
            continue
        across, up = _long_lines(ink)
        texts = {run.text for run in ink.runs}
        assert {f"{across.width:.0f} mm", f"{up.height:.0f} mm"} <= texts
        assert across.width == pytest.approx(round(across.width), abs=0.001)
        assert up.height == pytest.approx(round(up.height), abs=0.001)
    assert any(ink.size[0] > ink.size[1] for ink in pages)


@pytest.mark.parametrize("paper", ["a4", "letter", "a5", "a3", "roll 24 in"])
def test_the_page_says_what_to_type(paper: str) -> None:
    ink = _print(paper, None, (1.0, 1.0))
    words = " ".join(run.text for page in ink for run in page.runs)
    for part in (f'--paper "{paper}"', "--measured", "--printer", "ACROSS", "DOWN", "100 %"):
        assert part in words


@pytest.mark.parametrize("paper", ["a4", "letter", "a5", "a3", "roll 24 in"])
@pytest.mark.parametrize("printer", [None, INKJET.printer])
def test_words_stand_apart_and_on_the_page(paper: str, printer: Printer | None) -> None:
    for ink in _print(paper, printer, PRINTED if printer else (1.0, 1.0)):
        page = Box(0, 0, *ink.size)
        for at, run in enumerate(ink.runs):
            assert page.holds(run.box), run.text
            assert run.capital_mm >= 2.5 - 0.001
            for other in ink.runs[at + 1 :]:
                assert not run.box.grown(-0.1).meets(other.box.grown(-0.1)), (run.text, other.text)
