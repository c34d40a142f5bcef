"""Templates that share a page: how many pages they take, and what must hold of every page."""

from __future__ import annotations

import operator
from collections.abc import Sequence
from itertools import combinations
from types import SimpleNamespace
from typing import cast

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from templater.drawing import Polyline, Words
from templater.geometry import Box, Size
from templater.layout.model import Hanger, Margins
from templater.lettering import words_box
from templater.paper import parse_paper
from templater.placement.model import Plan
from templater.printing import nest
from templater.printing.cut import cut_template
from templater.printing.model import Coverage, Printer, PrintSetup, Tiling
from templater.scene.template.board import Board
from templater.scene.template.draw import template_shape
from templater.sheets import share
from templater.sheets.cuttings import Cutting
from templater.sheets.lay_out import lay_out_shared
from templater.sheets.model import Page
from templater.sheets.share import count_all_sheets, name_sheets, share_pages
from tests.builders import hanging, inches, layout, piece, plan_of, position

REVISION = "QK7M2P"
STUDY = Printer("study inkjet", 1.015, 0.994, Margins(5, 6, 7, 15), Size(180.0, 240.0))


def _setup(paper: str, printer: Printer | None = None, cover: Coverage = Coverage.FULL) -> PrintSetup:
    return PrintSetup(parse_paper(paper), Margins(), 10.0, printer, cover)


def _plan(sizes: Sequence[tuple[float, float]], by: Hanger = Hanger.NAIL) -> Plan:
    """Pieces side by side, 300 mm apart; sizes in mm."""
    left, pieces = 100.0, []
    for number, (width, height) in enumerate(sizes, 1):
        hang = hanging(by, 15.0, apart=width / 2 if by is Hanger.D_RINGS else None)
        place = position(left=left, bottom=1000.0)
        pieces.append(piece(f"Knot card {number}", width, height, hang=hang, place=place))
        left += width + 300.0
    return plan_of(layout(pieces, width=left + 500.0))


def _cut(plan: Plan, setup: PrintSetup) -> dict[str, Tiling]:
    return {piece.slug: cut_template(template_shape(piece), setup) for piece in plan.pieces}


def _pages(plan: Plan, setup: PrintSetup) -> list[Page]:
    names = name_sheets(plan, setup, REVISION)
    shared = share_pages(plan, _cut(plan, setup), setup, REVISION)
    return [lay_out_shared(page, names, setup) for page in shared]


def _boxes(page: Page) -> list[Box]:
    """What is cut out of a page, in its coordinates."""
    return [part.clip.moved(*part.origin) for part in page.parts]


NINE = _plan([(inches(4), inches(6))] * 9)


def test_nine_small_frames_take_five_letter_pages() -> None:
    # Letter shows 254 x 203.2 mm lying: 2 of 101.6 x 152.4 across, 1 down; standing 203.2 x 260.35: 1 (a
    # border of 3 mm round each) across, 1 down. So 2 a page, 4 pages, and one frame has its own.
    setup = _setup("letter")
    pages = _pages(NINE, setup)
    assert [len(page.parts) for page in pages] == [2, 2, 2, 2]
    tilings = _cut(NINE, setup)
    counts = count_all_sheets(NINE, tilings, setup, share_pages(NINE, tilings, setup))
    assert [counts.total(cover) for cover in Coverage] == [5, 5, 5]
    assert set(counts.shared.values()) == {"S1", "S2", "S3", "S4"}


@pytest.mark.parametrize(("frames", "both"), [(9, True), (8, False), (1, False)])
def test_pages_that_lie_beside_pages_that_stand(frames: int, both: bool) -> None:
    # As above pages of two lie; a ninth frame, higher than wide, has a page that stands.
    setup = _setup("letter")
    plan = _plan([(inches(4), inches(6))] * frames)
    tilings = _cut(plan, setup)
    counts = count_all_sheets(plan, tilings, setup, share_pages(plan, tilings, setup))
    assert counts.lie_both_ways is both


def test_a_roll_takes_all_on_the_shortest_page() -> None:
    # Along the roll 3 columns of 107.6 and margins of 12.7 take 335.5 mm, each 3 of 158.4 down: 475.2 of
    # the 590.55 mm that are shown; the block finds room below. Rows across it, 5 of 107.6 and 4, would
    # take 2 x 158.4 and margins of 19.05: 335.85 mm.
    setup = _setup("roll 24 in")
    (page,) = _pages(NINE, setup)
    assert len(page.parts) == 9
    assert page.size == pytest.approx((335.5, 609.6), abs=0.01)


MIXED = _plan(
    [(110.0, 160.0), (130.0, 90.0), (90.0, 90.0), (140.0, 190.0), (70.0, 210.0), (110.0, 160.0)]
)


@pytest.mark.parametrize("paper", ["a4", "roll 24 in"])
def test_what_is_refused_at_a_glance_finds_no_room_when_it_is_tried(
    paper: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    setup = _setup(paper)
    pages = _pages(MIXED, setup)
    monkeypatch.setattr(share, "LEAST_AREA", 0.0)
    monkeypatch.setattr(share, "may_find_room", lambda *_: True)
    monkeypatch.setattr(nest, "_clash", lambda *_: False)
    monkeypatch.setattr(Board, "has_any", lambda *_: True)
    monkeypatch.setattr(share, "cache", lambda function: function)
    monkeypatch.setattr(share, "_covers", operator.is_)
    assert _pages(MIXED, setup) == pages
    assert pages


def test_only_what_is_as_wide_and_as_high_covers_another() -> None:
    sizes = ((110.0, 160.0), (130.0, 90.0), (90.0, 90.0), (110.0, 170.0))
    cuttings = [cast("Cutting", SimpleNamespace(size=Size(*size))) for size in sizes]
    tall, wide, small, taller = [(cutting,) for cutting in cuttings]
    covering = [
        (one, other) for one in (tall, wide, small, taller) for other in (tall, wide, small, taller)
    ]
    assert [share._covers(one, other) for one, other in covering] == [
        *(True, False, True, False),
        *(False, True, True, False),
        *(False, False, True, False),
        *(True, False, True, True),
    ]
    assert list(share._list_least([taller, tall, wide])) == [wide, tall]


# On a roll that shows 596.9 mm across, 700 x 900 mm stands in two strips, beside which small ones fit.
STRIPS = _plan([(700.0, 900.0), (180.0, 240.0), (180.0, 240.0)])


def test_strips_of_a_wide_template_and_small_ones_share_a_roll() -> None:
    setup = _setup("roll 24 in")
    tilings = _cut(STRIPS, setup)
    strips = tilings["knot-card-1"].tiles
    assert len(strips) == 2
    (page,) = _pages(STRIPS, setup)
    parts = [part for part in page.parts if part.piece == "knot-card-1"]
    # Each strip is the one that the cut gives, in its order.
    assert [(part.sheet, part.clip) for part in parts] == [(tile.name, tile.clip) for tile in strips]
    assert len(page.parts) == 4
    assert _area(page.size) < sum(_area(tile.page) for one in tilings.values() for tile in one.tiles)
    texts = {item.text for layer in page.layers for item in layer.items if isinstance(item, Words)}
    assert "4 sheets, cut out" in texts
    assert not any(text.startswith("page 0") for text in texts)
    counts = count_all_sheets(STRIPS, tilings, setup, share_pages(STRIPS, tilings, setup))
    # Whole, all stand on one page. A card of the large one has its own, the small ones share theirs.
    assert (counts.total(Coverage.FULL), counts.total(Coverage.CARD)) == (1, 2)


def test_a_band_of_as_many_strips_as_all_of_it_is_counted_as_the_page_they_share() -> None:
    # Neither side of 26 x 25 9/16 in fits the 596.9 mm that are shown: two strips whole, two as a band.
    plan = _plan([(inches(26), inches(25.5625))])
    setup = _setup("roll 24 in", cover=Coverage.BAND)
    tilings = _cut(plan, setup)
    shared = share_pages(plan, tilings, setup)
    assert [len(page.cuttings) for page in shared] == [2]
    assert count_all_sheets(plan, tilings, setup, shared).total(Coverage.BAND) == 1


def test_strips_have_a_border_of_3_mm_to_cut_in() -> None:
    setup = _setup("roll 24 in")
    (page,) = _pages(STRIPS, setup)
    printable, boxes = setup.printable(page.size), _boxes(page)
    strips = [part.piece == "knot-card-1" for part in page.parts]
    assert sum(strips) == 2
    for number, box in enumerate(boxes):
        if strips[number]:
            grown = box.grown(2.99)
            assert printable.holds(grown)
            assert not any(grown.meets(other) for other in boxes[:number] + boxes[number + 1 :])


def test_a_piece_of_a_roll_is_never_longer_for_sharing() -> None:
    # Two templates that are as wide as the roll: cut apart from one page they save nothing.
    wide = _plan([(590.0, 400.0), (590.0, 400.0)])
    setup = _setup("roll 24 in")
    tilings = _cut(wide, setup)
    pages = share_pages(wide, tilings, setup)
    shared = {slug for page in pages for slug in page.slugs}
    sizes = [page.sheet.page for page in pages]
    sizes += [tile.page for slug, one in tilings.items() if slug not in shared for tile in one.tiles]
    apart = [tile.page for one in tilings.values() for tile in one.tiles]
    assert sum(map(_area, sizes)) <= sum(map(_area, apart))


def _area(size: Size) -> float:
    return size.width * size.height


def test_one_small_frame_has_a_page_of_its_own() -> None:
    setup = _setup("letter")
    assert _pages(_plan([(101.6, 152.4), (700.0, 900.0)]), setup) == []
    assert _pages(_plan([(101.6, 152.4)]), setup) == []


def test_each_template_on_a_page_can_be_told_once_it_is_cut_out() -> None:
    for page in _pages(NINE, _setup("letter")):
        words = [item for layer in page.layers for item in layer.items if isinstance(item, Words)]
        for part in page.parts:
            own = next(
                layer
                for layer in page.layers
                if layer.origin == part.origin and layer.clip is None and layer.items
            )
            texts = [item.text for item in own.items if isinstance(item, Words)]
            assert {f"rev {REVISION}", "UP", "A1"} <= set(texts)
            assert any(text.startswith("Knot card") for text in texts)
            (cut,) = (item for item in own.items if isinstance(item, Polyline) and item.dash)
            assert cut.box == pytest.approx(part.clip)
        assert {"100 mm", "4 in", f"{len(page.parts)} pieces, cut out"} <= {item.text for item in words}


def test_a_piece_and_each_of_its_holes_are_found_on_the_page() -> None:
    names = [target.name for page in _pages(NINE, _setup("letter")) for target in page.targets]
    slugs = [part.piece for page in _pages(NINE, _setup("letter")) for part in page.parts]
    pieces, first_holes = (
        [wanted.format(slug) for slug in slugs] for wanted in ("piece:{}", "hole:{}:1")
    )
    assert sorted(names) == sorted([*pieces, *first_holes])
    holes = {piece.slug: piece.template_marks()[0].hole for piece in NINE.pieces}
    for page in _pages(NINE, _setup("letter")):
        at = {target.name: target.point for target in page.targets}
        for part in page.parts:
            assert at[f"hole:{part.piece}:1"] == pytest.approx(holes[part.piece].moved(*part.origin))


SIDES = st.integers(50, 260)


@settings(max_examples=25, deadline=None)
@given(
    st.lists(st.tuples(SIDES, SIDES), min_size=2, max_size=6),
    st.sampled_from(("a4", "letter", "a3", "roll 24 in")),
    st.sampled_from((Hanger.NAIL, Hanger.D_RINGS)),
    st.sampled_from((None, STUDY)),
)
def test_what_shares_a_page_lies_apart_within_the_margins(
    sizes: list[tuple[float, float]], paper: str, by: Hanger, printer: Printer | None
) -> None:
    plan, setup = _plan(sizes, by), _setup(paper, printer)
    pages = _pages(plan, setup)
    pieces = {piece.slug: piece for piece in plan.pieces}
    told = [part.piece for page in pages for part in page.parts]
    assert len(told) == len(set(told))
    for page in pages:
        assert len(page.parts) > 1
        printable, boxes = setup.printable(page.size), _boxes(page)
        assert all(printable.holds(box, slack=0.01) for box in boxes)
        inner = [box.grown(-0.01) for box in boxes]
        assert not any(one.meets(other) for one, other in combinations(inner, 2))
        for part in page.parts:
            size, marks = pieces[part.piece].size, pieces[part.piece].template_marks()
            assert part.clip.holds(Box(0, 0, *size))
            # The cross of every hole, 10 mm each way, is on the paper that is cut out.
            assert all(part.clip.holds(Box(*mark.hole, *mark.hole).grown(10)) for mark in marks)
        _check_words(page, printable)
    if setup.paper.is_roll:
        assert sorted(told) in ([], sorted(pieces))


def _check_words(page: Page, printable: Box) -> None:
    """No words touch others or leave what the printer reaches."""
    boxes = [
        words_box(item).moved(*layer.origin)
        for layer in page.layers
        for item in layer.items
        if isinstance(item, Words)
    ]
    assert all(printable.holds(box, slack=0.01) for box in boxes)
    assert not any(one.meets(other) for one, other in combinations(boxes, 2))


def test_the_cover_does_not_matter_to_what_shares() -> None:
    for cover in Coverage:
        setup = _setup("letter", cover=cover)
        assert [len(page.parts) for page in _pages(NINE, setup)] == [2, 2, 2, 2]


def test_a_page_is_never_wider_than_the_paper() -> None:
    for paper in ("a4", "letter"):
        for page in _pages(NINE, _setup(paper)):
            assert sorted(page.size) == pytest.approx(sorted(Size(*parse_paper(paper).size)))


def _shared(plan: Plan, setup: PrintSetup) -> list[list[str]]:
    """The pieces on each page, in the order in which they are put on it."""
    pages = share_pages(plan, _cut(plan, setup), setup, REVISION)
    return [[cutting.piece.slug[-1] for cutting in page.cuttings] for page in pages]


def test_a_page_takes_the_largest_first_whichever_way_they_lie() -> None:
    # With their borders 256 x 316 and 306 x 256 mm: the second one is the smaller and the squatter.
    assert _shared(_plan([(250.0, 310.0), (300.0, 250.0)]), _setup("roll 24 in")) == [["1", "2"]]
    assert _shared(_plan([(300.0, 250.0), (250.0, 310.0)]), _setup("roll 24 in")) == [["2", "1"]]


def test_a_page_takes_a_smaller_template_where_the_next_largest_has_no_room() -> None:
    # A2 shows 568.6 x 407.3 mm lying, 407.3 x 574.95 standing. 406 and 306 mm are too much side by side,
    # 306 and 296 mm one under another; under the first one 206 x 246 mm leave 201 mm for the block.
    plan = _plan([(400.0, 300.0), (300.0, 290.0), (200.0, 240.0)])
    assert _shared(plan, _setup("a2")) == [["1", "3"]]


def test_a_template_that_leaves_the_block_no_room_keeps_no_others_from_sharing() -> None:
    # 390 x 255 and a border are 396 x 261 mm, on an A3 that shows 394.6 x 284.3 or 284.3 x 400.95 mm.
    sizes = [(388.0, 255.0), (100.0, 150.0), (100.0, 150.0)]
    assert _shared(_plan(sizes), _setup("a3")) == [["2", "3"]]


def test_strips_that_would_take_more_of_a_roll_share_no_page_and_the_small_ones_do() -> None:
    # Beside strips 620 mm long nothing of 210 mm stands, and their page would need a foot for its block.
    plan, setup = _plan([(620.0, 690.0), (210.0, 290.0), (260.0, 340.0)]), _setup("roll 24 in")
    assert len(_cut(plan, setup)["knot-card-1"].tiles) == 2
    assert _shared(plan, setup) == [["3", "2"]]


def test_a_roll_takes_rows_across_it_where_that_is_shorter() -> None:
    # Three of 186 mm stand across 596.9 mm, 256 tall: with margins 275 mm, and the block's foot. Along
    # the roll two stand down it, in two columns: 2 x 186 + 12.7 = 384.7 mm.
    (page,) = _pages(_plan([(180.0, 250.0)] * 3), _setup("roll 24 in"))
    assert page.size.width == pytest.approx(inches(24))
    assert 275.0 < page.size.height < 384.7


def test_the_outline_of_the_file_names_pieces_and_their_sheets() -> None:
    (page,) = _pages(_plan([(180.0, 250.0)] * 2), _setup("roll 24 in"))
    assert [(mark.level, mark.title) for mark in page.bookmarks] == [
        (0, "Knot card 1"), (1, "Knot card 1 A1"), (0, "Knot card 2"), (1, "Knot card 2 A1"),
    ]  # fmt: skip
