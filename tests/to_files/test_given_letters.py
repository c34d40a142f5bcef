"""Names in letters that only a given font has, in every file of a kit."""

from __future__ import annotations

import io
import re
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import TypeAlias

import cairosvg
import numpy as np
import pikepdf
import pypdfium2
import pytest
from PIL import Image

from templater.drawing import Anchor, Words
from templater.geometry import Box, Point, Size
from templater.given_fonts import GivenFont
from templater.pipeline import PrintChoices, plan_kit, read_wall
from templater.proving import prove_kit
from templater.sheets.model import Layer
from templater.to_files.hooks_csv import hooks_csv
from templater.to_files.pdf import write_pdf
from templater.to_files.svg import svg_text
from templater.typesetting import Typesetter, set_by
from tests.kits import MadeKit, make_kit
from tests.made_fonts import HEBREW, hebrew_font, make_font, write_hall
from tests.to_files.drawings import page_of

Dots: TypeAlias = np.ndarray[tuple[int, ...], np.dtype[np.uint8]]
DOTS_PER_MM = 10
PAGE = Size(100.0, 60.0)
NAME = "שלום אבג"
WORDS = (
    # Capitals of 6.6 mm make an em of 10 mm: a unit of the font is 0.01 mm.
    Words(Point(10, 40), "א", 6.6),
    Words(Point(40, 40), "בא", 6.6, Anchor.MIDDLE),
    Words(Point(90, 40), "א", 6.6, Anchor.END, bold=True),
    Words(Point(30, 10), "אב", 6.6, turned=True),
)
BOXES = (
    # Each letter leaves 0.5 mm free at its sides; alef is 4 mm wide and bet 4.5.
    Box(10.5, 40, 13.5, 46.6),
    Box(40 - 4.25 + 0.5, 40, 40 - 4.25 + 3.5, 46.6),  # alef, the second letter, stands left of bet
    Box(40 - 0.25 + 0.5, 40, 40 + 4.25 - 0.5, 46.6),
    Box(86.5, 40, 89.5, 46.6),
    Box(30 - 6.6, 10.5, 30, 10 + 4.5 - 0.5),  # read upwards: bet is drawn first, so lowest
    Box(30 - 6.6, 14.5 + 0.5, 30, 18.5 - 0.5),
)


@pytest.fixture(autouse=True)
def _given_fonts() -> Iterator[None]:
    with set_by(Typesetter([hebrew_font()], [NAME])):
        yield


def _pdf(*words: Words) -> bytes:
    stream = io.BytesIO()
    write_pdf([page_of(PAGE, Layer(words))], stream, title="letters")
    return stream.getvalue()


def _svg(*words: Words) -> str:
    return svg_text((Layer(words),), Box(0, 0, *PAGE), "letters", top=PAGE.height)


def _raster_pdf() -> Dots:
    page = pypdfium2.PdfDocument(_pdf(*WORDS))[0]
    return np.asarray(page.render(scale=DOTS_PER_MM * 25.4 / 72, grayscale=True).to_pil())


def _raster_svg() -> Dots:
    scale = DOTS_PER_MM * 25.4 / 96
    png = cairosvg.svg2png(bytestring=_svg(*WORDS).encode(), scale=scale, background_color="white")
    return np.asarray(Image.open(io.BytesIO(png)).convert("L"))


@pytest.mark.parametrize("raster", [_raster_pdf, _raster_svg])
def test_letters_are_where_the_font_and_the_anchor_say(raster: Callable[[], Dots]) -> None:
    ink = raster()[:600, :1000] < 128  # a rasteriser may add a dot at the edge
    expected = np.zeros_like(ink)
    for box in BOXES:
        x0, x1 = (round(x * DOTS_PER_MM) for x in (box.x0, box.x1))
        y0, y1 = (round((PAGE.height - y) * DOTS_PER_MM) for y in (box.y1, box.y0))
        expected[y0:y1, x0:x1] = True
    # A dot is 0.1 mm: ink and boxes may differ by one dot along the edges, nowhere more.
    edges = 2 * sum((box.width + box.height) * DOTS_PER_MM for box in BOXES)
    assert np.count_nonzero(ink != expected) < 1.1 * edges
    core = [np.all(ink[_inside(box)]) for box in BOXES]
    assert all(core)


def _inside(box: Box) -> tuple[slice, slice]:
    """The dots of a box but those at its edges."""
    across = slice(round(box.x0 * DOTS_PER_MM) + 1, round(box.x1 * DOTS_PER_MM) - 1)
    top, foot = (round((PAGE.height - y) * DOTS_PER_MM) for y in (box.y1, box.y0))
    return slice(top + 1, foot - 1), across


@pytest.mark.parametrize("kind", ["glyf", "CFF"])
def test_a_name_is_read_back_in_the_order_of_reading(kind: str) -> None:
    font = GivenFont(make_font({**HEBREW, "絵": 900, "霧": 900}, kind=kind))
    with set_by(Typesetter([font], [NAME])):
        content = _pdf(Words(Point(5, 40), NAME, 5), Words(Point(5, 20), "絵霧 3", 5))
    text = pypdfium2.PdfDocument(content)[0].get_textpage().get_text_range()
    assert text.split("\r\n") == [NAME, "絵霧 3"]


def test_a_letter_with_its_mark_or_joined_from_two_is_read_back_whole() -> None:
    features = (
        "languagesystem DFLT dflt; languagesystem arab dflt;"
        "feature rlig { sub u644 u627 by both; } rlig;"
    )
    letters = {"ل": 400, "ا": 250, "ب": 300, "ש": 500, "\u05b8": 200}
    font = GivenFont(make_font(letters, hidden={"both": 600}, features=features))
    with set_by(Typesetter([font])):
        content = _pdf(Words(Point(5, 40), "بلاب", 5), Words(Point(5, 20), "ש\u05b8ש", 5))
    with pikepdf.open(io.BytesIO(content)) as pdf:
        table = pdf.pages[0].resources.Font["/Shapes0"].ToUnicode.read_bytes().decode()
    told = [bytes.fromhex(text).decode("utf-16-be") for text in re.findall(r"<\w\w> <(\w{4,})>", table)]
    assert sorted(told) == sorted(["ب", "لا", "ש\u05b8", "ש"])


def test_more_letters_than_a_font_of_a_pdf_holds_take_another() -> None:
    letters = [chr(0x4E00 + number) for number in range(300)]
    font = GivenFont(make_font(dict.fromkeys(letters, 500)))
    rows = ["".join(letters[first : first + 30]) for first in range(0, 300, 30)]
    with set_by(Typesetter([font])):
        content = _pdf(*(Words(Point(5, 50 - 4 * row), text, 1.5) for row, text in enumerate(rows)))
    text = pypdfium2.PdfDocument(content)[0].get_textpage().get_text_range()
    assert text.split("\r\n") == rows
    with pikepdf.open(io.BytesIO(content)) as pdf:
        fonts = pdf.pages[0].resources.Font
        sizes = [len(fonts[name].CharProcs.keys()) for name in ("/Shapes0", "/Shapes1")]
    assert sizes == [256, 44]


def test_a_shape_is_defined_once_in_an_svg_and_its_words_are_told_as_they_are_read() -> None:
    svg = _svg(Words(Point(5, 40), "אבא", 5), Words(Point(5, 20), "ab א", 5))
    assert len(re.findall(r'<path[^>]* id="given\d+"', svg)) == 2
    assert re.findall(r'aria-label="([^"]+)"', svg) == ["אבא", "ab א"]
    assert len(re.findall(r'href="#given', svg)) == 4


def test_words_of_the_typeface_need_no_other_font() -> None:
    with pikepdf.open(io.BytesIO(_pdf(Words(Point(5, 40), "Kelp", 5)))) as pdf:
        assert not [name for name in pdf.pages[0].resources.Font if "Shapes" in name]


# --- whole kits -----------------------------------------------------------------------------------


@pytest.fixture(scope="module")
def hall(tmp_path_factory: pytest.TempPathFactory) -> MadeKit:
    """The kit of a wall with two names to the left; its fonts lie beside the layout alone."""
    folder = tmp_path_factory.mktemp("given")
    layout = write_hall(folder / "walls", "font: [hebrew.ttf]\n", NAME, "שלום 2", "Fog bell")
    (layout.parent / "hebrew.ttf").write_bytes(make_font(HEBREW))
    return make_kit(layout, folder / "kit")


def test_a_kit_is_proved_where_its_fonts_are_not_at_hand(hall: MadeKit) -> None:
    assert not list(hall.folder.rglob("*.ttf"))
    _, proof = prove_kit(hall.folder)
    assert (proof.holes, proof.notes) == (3, ())


def test_the_same_layout_and_font_give_the_same_bytes(hall: MadeKit, tmp_path: Path) -> None:
    again = make_kit(hall.folder.parent / "walls" / "hall.yaml", tmp_path / "kit")
    for path in hall.folder.rglob("*.*"):
        assert (again.folder / path.relative_to(hall.folder)).read_bytes() == path.read_bytes(), path


def test_no_hole_and_no_revision_hangs_on_a_font(hall: MadeKit, tmp_path: Path) -> None:
    wall = read_wall(write_hall(tmp_path, "", NAME, "שלום 2", "Fog bell"))
    plain, _ = plan_kit(wall, PrintChoices())
    assert plain.revision == hall.manifest["revision"]
    assert hooks_csv(plain.plan).encode() == (hall.folder / "hooks.csv").read_bytes()


def test_every_sheet_of_a_piece_bears_its_name(hall: MadeKit) -> None:
    document = pypdfium2.PdfDocument(hall.folder / "kit.pdf")
    for entry in hall.manifest["pages"]:
        if entry["piece"] == hall.manifest["pieces"][0]["slug"]:
            assert NAME in document[entry["page"] - 1].get_textpage().get_text_range()
