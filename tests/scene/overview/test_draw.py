from __future__ import annotations

from collections import Counter
from itertools import combinations

import pytest

from templater.drawing import Polyline, Words
from templater.geometry import Box, Size
from templater.placement.model import Plan
from templater.rules.model import Finding
from templater.scene.model import PageDrawing
from templater.scene.overview.draw import draw_overview
from templater.typesetting import Typesetter
from tests.scene.pages import assert_inside, text_of, words_of
from tests.scene.walls import (
    FINDINGS,
    bench_wall,
    crossings,
    grid_wall,
    hung,
    ink_box,
    landscape_form,
    make_wall,
)

LONG = "The keeper's daughter watching a schooner founder on the northern reef in the year 1887"
WALLS = {
    "bench": bench_wall(),
    "forty": grid_wall(10, 4, 250, 330),
    "long": grid_wall(24, 1, 600, 1200),
    "crowd": grid_wall(40, 8, 200, 230),
    "names": make_wall(
        [
            hung(LONG, Box(300, 1200, 800, 1800), [(550, 1750)]),
            hung("Плот у маяка на закате", Box(1000, 1100, 1700, 1600), [(1200, 1550), (1500, 1550)]),
            hung("Blank", Box(1900, 1200, 2000, 1290), []),
        ],
        Size(3600, 2600),
    ),
    "one": make_wall([hung("Fog bell", Box(500, 1400, 800, 1650), [(650, 1640)])], Size(1500, 2400)),
}
PAPERS = ("letter", "a4", "a5", "a3", "125 x 165 mm")


def draw(
    plan: Plan, paper: str = "letter", findings: tuple[Finding, ...] = ()
) -> tuple[PageDrawing, ...]:
    targets = {piece.slug: f"piece:{piece.slug}" for piece in plan.pieces}
    form = landscape_form(paper)
    return draw_overview(plan, findings, form, revision="K7M3QA", piece_targets=targets)


def rows_of(pages: tuple[PageDrawing, ...]) -> list[list[str]]:
    """Words that stand on one line of a page, left to right."""
    rows = []
    for page in pages:
        lines: dict[float, list[Words]] = {}
        for words in words_of(page):
            if not words.turned:
                lines.setdefault(round(words.at.y, 3), []).append(words)
        rows += [[w.text for w in sorted(line, key=lambda w: w.at.x)] for line in lines.values()]
    return rows


@pytest.mark.parametrize("paper", PAPERS)
@pytest.mark.parametrize("name", WALLS)
def test_pages_are_clean_on_any_paper(name: str, paper: str) -> None:
    form = landscape_form(paper)
    for page in draw(WALLS[name], paper, FINDINGS):
        assert page.size == form.size
        assert_inside(page.items, form.inner.grown(0.4))  # half a wide line may pass the edge
        words = words_of(page)
        assert min(item.height_mm for item in words) >= 2.5
        assert Typesetter().lacks("".join(item.text for item in words)) == ""
        boxes = [(item.text, ink_box(item)) for item in words]
        assert [(a, b) for (a, p), (b, q) in combinations(boxes, 2) if p.meets(q)] == []


def test_the_table_gives_each_hole_in_both_systems() -> None:
    rows = rows_of(draw(bench_wall()))
    # By hand: 51 in = 1295.4 mm; the piece's middle is 43 + 8 = 51 in; the bench's middle is
    # 30 + 40 = 70 in, so 19 in (482.6 mm) left; 59 1/4 in = 1504.95 mm,
    # which is -3/4 in (19.05 mm) from 60 in.
    assert [
        "1",
        "Tide chart",
        "16 × 20 in",
        "1",
        "51 in (1295 mm)",
        "51 in (1295 mm)",
        "19 in (483 mm) left",
        "59 1/4 in (1505 mm)",
        "−3/4 in (−19 mm)",
    ] in rows
    # 76 in = 1930.4 mm; middle 62 + 8 = 70 in = 1778 mm; 6 in right of 70 in; 58 in = 1473.2 mm.
    assert [
        "2",
        "Kelp print",
        "16 × 20 in",
        "2",
        "76 in (1930 mm)",
        "70 in (1778 mm)",
        "6 in (152 mm) right",
        "58 in (1473 mm)",
        "−2 in (−51 mm)",
    ] in rows
    # Over no furniture: that cell is empty. 64 in = 1625.6 mm, 4 in over the datum.
    assert [
        "4",
        "Fog bell",
        "12 × 9 in",
        "1",
        "150 in (3810 mm)",
        "150 in (3810 mm)",
        "64 in (1626 mm)",
        "+4 in (+102 mm)",
    ] in rows


def test_a_piece_without_a_hole_is_listed_and_says_so() -> None:
    rows = rows_of(draw(WALLS["names"], "a4"))
    assert any("3 Blank 100 × 90 mm no hole" in " ".join(row) for row in rows)


@pytest.mark.parametrize("paper", ["letter", "a5"])
def test_a_long_table_names_every_hole_once(paper: str) -> None:
    plan = grid_wall(40, 8, 200, 230)
    listed = Counter(
        row[1]
        for row in rows_of(draw(plan, paper))
        if len(row) >= 4 and row[1].startswith("Print ") and row[2] == "200 × 200 mm"
    )
    assert listed == Counter(piece.name for piece in plan.pieces)


def test_the_title_block_says_what_the_drawing_is() -> None:
    first = draw(bench_wall())[0]
    text = text_of([first])
    for words in (
        "Keeper's cottage, stair hall",
        "for: the guest house; from: Ines Harbour",
        "ines@cottage.example",
        "SCALE 1/2 in = 1 ft (1:24)",
        "issue B",
        "Lengths in inches (millimetres). 4 pieces, 5 holes.",
        "60 in (1524 mm) above the floor at: left of the stair post",
        "cables and pipes",
        "licensed tradesperson",
        "local codes",
    ):
        assert words in text
    revision = next(words for words in words_of(first) if "K7M3QA" in words.text)
    assert revision.height_mm >= 5.0


def test_scale_of_a_metric_wall_is_of_iso_5455() -> None:
    # 1500 x 2400 mm: A4 has 188 mm of height within its margins and footer; 2400 / 20 = 120 mm fits
    # with the distances, 2400 / 10 = 240 mm cannot.
    assert "SCALE 1:20" in text_of(draw(WALLS["one"], "a4")[:1])


def test_each_piece_leads_to_its_first_sheet() -> None:
    first = draw(bench_wall())[0]
    assert [link.target for link in first.links] == [
        "piece:tide-chart",
        "piece:kelp-print",
        "piece:gull-study",
        "piece:fog-bell",
    ]
    outlines = {item.box for item in first.items if isinstance(item, Polyline)}
    assert {link.box for link in first.links} <= outlines


def test_a_piece_without_a_target_has_no_link() -> None:
    form = landscape_form("letter")
    pages = draw_overview(bench_wall(), (), form, revision="K7M3QA", piece_targets={"fog-bell": "there"})
    assert [link.target for page in pages for link in page.links] == ["there"]


def test_on_small_paper_the_wall_has_the_first_page_and_the_block_and_key_the_next() -> None:
    # At 1:50 the wall is 76 x 50 mm, and A5 has room for that with the figures; the block beside it
    # left it 1:200, 19 mm wide. The pages of larger parts come between.
    pieces = [
        hung("Muschel", Box(885, 1332, 945, 1422), [(915, 1415)]),
        hung("Lotse", Box(1260, 1175, 1565, 1580), [(1412, 1530)]),
        hung("Panorama", Box(2505, 600, 3705, 2400), [(2655, 2082), (3555, 2082)]),
    ]
    pages = draw(make_wall(pieces, Size(3805, 2500), eye_line=1524.0), "a5", FINDINGS)
    first, *rest = [text_of((page,)) for page in pages]
    assert "SCALE 1:50. Lengths in millimetres (inches). 3 pieces, 4 holes." in first
    (told,) = [index for index, text in enumerate(rest) if "rev K7M3QA" in text]
    assert all("Part " in text for text in rest[:told])
    for words in ("SCALE 1:50", "cross: a hole", "Look for cables", "Holes"):
        assert words in rest[told]


def test_findings_are_all_told_on_the_smallest_paper() -> None:
    text = text_of(draw(bench_wall(), "125 x 165 mm", FINDINGS))
    assert "set clearance: 8 in" in text
    assert "60 to 75 %" in text


def test_notes_of_pieces_are_shown() -> None:
    assert ["1", "Tide chart", "The hook's rise is not given."] in rows_of(draw(bench_wall()))


def test_small_pieces_are_drawn_again_until_each_is_5_mm() -> None:
    plan = grid_wall(24, 1, 600, 1200)  # nearly 30 m: 600 mm at 1:200 are 3 mm
    largest: dict[str, float] = {}
    for page in draw(plan, "a4"):
        for link in page.links:
            largest[link.target] = max(largest.get(link.target, 0.0), min(link.box.size))
    assert len(largest) == 24
    assert min(largest.values()) >= 5.0


def test_parts_show_the_holes_too() -> None:
    plan = grid_wall(24, 1, 600, 1200)
    pages = draw(plan, "a4")
    shown = [len(crossings(page.items)) for page in pages]
    assert shown[0] == 24 + 1  # one in the key
    assert sum(shown[1:]) >= 24


def test_parts_are_capped_and_what_is_left_out_is_said() -> None:
    pages = draw(grid_wall(150, 8, 60, 400))
    text = text_of(pages)
    assert "Part 12 of 12." in text
    assert "Part 13" not in text
    assert "more small pieces are not drawn larger; the table has every hole." in text


def test_a_wall_with_room_to_spare_keeps_its_table_on_the_first_page() -> None:
    pages = draw(WALLS["one"], "a3")
    assert any(row[:2] == ["1", "Fog bell"] for row in rows_of(pages[:1]))


def test_the_same_plan_gives_the_same_drawing() -> None:
    assert draw(bench_wall(), "a4", FINDINGS) == draw(bench_wall(), "a4", FINDINGS)
