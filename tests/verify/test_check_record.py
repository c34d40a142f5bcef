"""Manifests made by hand, held against the plan of one piece."""

from __future__ import annotations

from dataclasses import replace

import pytest

from templater.geometry import Box, Point
from templater.verify.check_record import check_record, list_shared
from templater.verify.model import PageRecord, PieceRecord, Record
from tests.verify import gull
from tests.verify.gull import BOX, CLIP, HANG, HOLE, page, record

PIECE = PieceRecord("gull", "Gull", BOX, (HANG,), (HOLE,))


def _told(told: Record) -> list[str]:
    return list(check_record(told, gull.expected()))


def test_a_manifest_that_is_right() -> None:
    cover = PageRecord(1, "cover", gull.PAPER, None, None, None, None, (1.0, 1.0))
    assert _told(record(cover, page())) == []
    near = replace(PIECE, box=BOX.moved(0.0005, 0.0), holes=(HOLE.moved(0.0005, 0.0),))
    assert _told(record(page(clip=CLIP.moved(0.0005, 0.0)), piece=near)) == []


@pytest.mark.parametrize(
    ("piece", "told"),
    [
        (replace(PIECE, slug="tern"), "its pieces are not those of the plan"),
        (replace(PIECE, slug="auk"), "its pieces are not those of the plan"),
        (replace(PIECE, name="Auk"), "gull: its name or its place is not that of the plan"),
        (replace(PIECE, name="Tern"), "gull: its name or its place is not that of the plan"),
        (
            replace(PIECE, box=BOX._replace(y1=1500.001)),
            "gull: its name or its place is not that of the plan",
        ),
        (
            replace(PIECE, box=BOX._replace(x0=299.999)),
            "gull: its name or its place is not that of the plan",
        ),
        (
            replace(PIECE, holes=(HOLE.moved(0.003, 0.004),)),
            "gull: a hole is not that of the plan (0.005 mm off)",
        ),
        (replace(PIECE, holes=()), "gull: a hole is not that of the plan (another number)"),
        (
            replace(PIECE, hang_points=(HANG.moved(0.0, 0.001),)),
            "gull: a hang point is not that of the plan (0.001 mm off)",
        ),
        (
            replace(PIECE, hang_points=(HANG, HANG)),
            "gull: a hang point is not that of the plan (another number)",
        ),
    ],
)
def test_a_piece_that_is_told_wrongly(piece: PieceRecord, told: str) -> None:
    assert _told(record(page(), piece=piece)) == [told]


NOT_THE_PART = "gull sheet A1: it does not show the part that the cut gives it"


@pytest.mark.parametrize(
    ("pages", "told"),
    [
        ([], ["gull: its sheets are not those of the cut"]),
        ([page(sheet="A2")], ["gull: its sheets are not those of the cut"]),
        ([page(), page(4)], ["gull: its sheets are not those of the cut"]),
        ([page(clip=None)], [NOT_THE_PART, "gull hole 1 is on no sheet"]),
        ([page(clip=CLIP._replace(x1=210.001))], [NOT_THE_PART]),
        ([page(clip=CLIP._replace(y0=-10.001))], [NOT_THE_PART]),
        # The hole lies at 100, 80 mm of the template.
        ([page(clip=CLIP._replace(y1=79.0))], [NOT_THE_PART, "gull hole 1 is on no sheet"]),
        ([page(clip=CLIP._replace(y1=81.0))], [NOT_THE_PART]),
    ],
)
def test_sheets_that_are_told_wrongly(pages: list[PageRecord], told: list[str]) -> None:
    assert _told(record(*pages)) == told


def test_what_is_cut_out_of_a_page_that_it_shares_shows_all_of_the_piece() -> None:
    other = page(piece="tern")
    less = Box(0.0, 0.0, 200.0, 100.0)
    assert _told(record(page(clip=less), other)) == []
    assert _told(record(page(clip=less))) == [NOT_THE_PART]
    assert _told(record(page(clip=less._replace(x1=199.0)), other)) == [NOT_THE_PART]
    assert _told(record(page(clip=less._replace(y0=0.5)), other)) == [NOT_THE_PART]
    assert _told(record(page(clip=less._replace(x0=0.5)), other)) == [NOT_THE_PART]
    assert list_shared(record(page(), other)) == {"gull", "tern"}
    assert list_shared(record(page(), page(4, piece="tern"))) == set()


def test_the_hole_is_where_the_sum_says() -> None:
    (piece,) = gull.plan().pieces
    assert (piece.box, piece.marks[0].hang, piece.marks[0].hole) == (BOX, HANG, HOLE)
    assert piece.template_marks()[0].hole == Point(100.0, 80.0)


def test_a_piece_without_a_hole() -> None:
    expected = gull.expected()
    (piece,) = expected.plan.pieces
    bare = replace(expected, plan=replace(expected.plan, pieces=(replace(piece, marks=()),)))
    told = replace(PIECE, holes=(), hang_points=())
    assert list(check_record(record(page(), piece=told), bare)) == []
