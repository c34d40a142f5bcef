from __future__ import annotations

from itertools import pairwise

import pytest

from templater.drawing import Line, Words
from templater.geometry import Box, Point, Size
from templater.layout.model import Hanger, Margins
from templater.lettering import words_box
from templater.paper import PAPERS
from templater.placement.model import PlacedPiece
from templater.printing.model import PrintSetup, Tiling
from templater.printing.tile import tile_template
from templater.scene.model import Form, PageDrawing
from templater.scene.template.draw import TemplateDrawing, draw_template, template_extent
from templater.scene.template.sheet_block import SheetNames
from templater.sheets.lay_out import lay_out_pages, lay_out_template, stack_pages, whole_template
from templater.sheets.model import Page, PageKind
from tests.builders import hanging, inches, layout, piece, plan_of

A4 = Size(210.0, 297.0)
FORM = Form(A4, Box(6.35, 12.7, 203.65, 290.65))
LINE = Line(Point(0, 100), Point(50, 100), 0.25)


def _pages(title: str) -> tuple[Page, ...]:
    drawings = [PageDrawing(name, A4, (LINE,)) for name in ("Cover", "Print test")]
    return lay_out_pages(
        drawings, PageKind.COVER, FORM, first_page=3, page_count=31, title=title, revision="K7WQ2F"
    )


def _words(page: Page) -> list[Words]:
    return [item for layer in page.layers for item in layer.items if isinstance(item, Words)]


def test_each_page_tells_its_number_revision_and_kit() -> None:
    pages = _pages("Keeper's cottage")
    for number, page in enumerate(pages, 3):
        told = {words.text: words.height_mm for words in _words(page)}
        assert told == {"rev K7WQ2F": 5.0, "Keeper's cottage": 2.5, f"page {number} of 31": 2.5}
    assert [page.label for page in pages] == ["cover 1", "cover 2"]
    assert [(mark.level, mark.title) for page in pages for mark in page.bookmarks] == [
        (0, "Cover"), (0, "Print test"),
    ]  # fmt: skip


def test_a_long_title_leaves_the_number_room() -> None:
    page = _pages("The keeper's cottage by the northern breakwater, upper landing, sea side" * 4)[0]
    boxes = sorted(words_box(words) for words in _words(page))
    assert all(FORM.printable.holds(box, slack=0.15) for box in boxes)
    assert all(one.x1 < other.x0 for one, other in pairwise(boxes))


def test_where_the_words_of_a_foot_stand() -> None:
    # What is printed reaches from 6.35 to 203.65 mm and down to 12.7; words stand 2 mm within.
    revision, title, number = _words(_pages("Keeper's cottage")[0])
    assert revision.at == pytest.approx((8.35, 14.7))
    assert number.at == pytest.approx((201.65, 14.7))
    assert title.at == pytest.approx((words_box(revision).x1 + 4.0, 14.7), abs=0.01)
    _, title, number = _words(_pages("The keeper's cottage by the northern breakwater" * 4)[0])
    assert words_box(number).x0 - words_box(title).x1 > 3.99


@pytest.mark.parametrize("revision", ["WWWWWW", "777777", "MQWMQW"])
@pytest.mark.parametrize("issue", [None, "for the guest house to look at, second try"])
@pytest.mark.parametrize("width", [100.0, 148.0, 215.9])
def test_a_wide_revision_and_an_issue_touch_nothing(
    revision: str, issue: str | None, width: float
) -> None:
    form = Form(Size(width, 150.0), Box(6.35, 12.7, width - 6.35, 140.0))
    drawing = PageDrawing("Cover", form.size, (LINE,))
    (page,) = lay_out_pages(
        [drawing],
        PageKind.COVER,
        form,
        first_page=128,
        page_count=131,
        title="Keeper's cottage, upper landing",
        revision=revision,
        issue=issue,
    )
    words = _words(page)
    boxes = sorted(words_box(each) for each in words)
    assert all(one.x1 + 2.0 <= other.x0 for one, other in pairwise(boxes))
    assert all(form.printable.holds(box, slack=0.15) for box in boxes)
    assert (issue is None) or width < 140.0 or words[1].text.startswith("issue for")


def test_pages_in_one_drawing_stand_one_under_another() -> None:
    # Two A4 pages: 594 mm; the first above the second, each with what is read and its foot.
    layers, box = stack_pages(_pages("Keeper's cottage"))
    assert box == (0.0, 0.0, 210.0, 594.0)
    assert [layer.origin for layer in layers] == [Point(0, 297), Point(0, 297), Point(0, 0), Point(0, 0)]
    layers, box = stack_pages(_pages("Keeper's cottage")[:1])
    assert (box, [layer.origin for layer in layers]) == ((0.0, 0.0, 210.0, 297.0), [Point(0, 0)] * 2)


def _draw_lens() -> tuple[TemplateDrawing, Tiling, PlacedPiece, PrintSetup]:
    """A piece of 30 x 40 in with two holes, on Letter."""
    hang = hanging(Hanger.D_RINGS, inches(8), apart=inches(26))
    plan = plan_of(layout([piece("Great lens", inches(30), inches(40), hang=hang)]))
    (placed,) = plan.pieces
    marks = placed.template_marks()
    holes, hangs = [mark.hole for mark in marks], [mark.hang for mark in marks]
    setup = PrintSetup(PAPERS["letter"], Margins(), 10.0)
    tiling = tile_template(template_extent(placed), holes, hangs, setup)
    names = SheetNames("Keeper's cottage", placed.name, "K7WQ2F", 5, 60)
    return draw_template(placed, plan, tiling, names), tiling, placed, setup


@pytest.fixture
def sheets() -> list[Page]:
    """The sheets of the lens."""
    return list(lay_out_template(*_draw_lens()))


def test_a_template_as_one_drawing_has_5_mm_of_blank_paper_round_it() -> None:
    drawing, *_ = _draw_lens()
    _, box = whole_template(drawing)
    assert box == drawing.area.grown(5.0)
    assert box.holds(Box(-5.0, -5.0, inches(30) + 5.0, inches(40) + 5.0))


def test_a_piece_is_found_by_its_first_sheet_and_each_hole_by_one(sheets: list[Page]) -> None:
    targets = [(page.parts[0].sheet, target.name) for page in sheets for target in page.targets]
    assert [sheet for sheet, name in targets if name == "piece:great-lens"] == ["A1"]
    assert sorted(name for _, name in targets if name.startswith("hole:")) == [
        "hole:great-lens:1",
        "hole:great-lens:2",
    ]
    bookmarks = [[(mark.level, mark.title) for mark in page.bookmarks] for page in sheets]
    assert bookmarks[0] == [(0, "Great lens"), (1, "Great lens A1")]
    assert all(len(marks) == 1 for marks in bookmarks[1:])


def test_a_hole_is_where_the_sheets_origin_puts_it(sheets: list[Page]) -> None:
    # From the frame's bottom-left: 15 - 13 = 2 in and 28 in across, 40 - 8 = 32 in up.
    holes = {1: Point(inches(2), inches(32)), 2: Point(inches(28), inches(32))}
    for page in sheets:
        (part,) = page.parts
        for target in page.targets:
            if target.name.startswith("hole:"):
                hole = holes[int(target.name[-1])]
                assert target.point == pytest.approx(hole.moved(*part.origin))
                assert part.clip.has(hole)


def test_lines_are_clipped_to_the_sheet(sheets: list[Page]) -> None:
    for page in sheets:
        (part,) = page.parts
        lines, words = page.layers
        assert lines.clip == pytest.approx(part.clip.moved(*part.origin))
        assert (lines.origin, words.origin) == (part.origin, part.origin)
