"""Holds the manifest against the Plan and the cut."""

from __future__ import annotations

from collections import Counter
from collections.abc import Container, Iterator, Sequence
from math import dist, inf

from templater.geometry import Box, Point
from templater.placement.model import PlacedPiece
from templater.verify.model import Expected, PageRecord, Record

_NOTHING = Box(inf, inf, inf, inf)
_DECIMALS_MM = 0.0006
"""The manifest is told with more decimals than this needs."""


def list_shared(record: Record) -> set[str]:
    """The pieces whose sheet is cut out of a page that others stand on too."""
    shared = _list_shared_pages(record)
    return {page.piece for page in record.pages if page.piece is not None and page.page in shared}


def _list_shared_pages(record: Record) -> set[int]:
    """The pages that the manifest tells more than once: each time of what else stands on them."""
    counts = Counter(page.page for page in record.pages)
    return {number for number, count in counts.items() if count > 1}


def check_record(record: Record, expected: Expected) -> Iterator[str]:
    """What the manifest says of pieces and sheets that the Plan and the cut do not."""
    slugs = [piece.slug for piece in expected.plan.pieces]
    if [piece.slug for piece in record.pieces] != slugs:
        yield "its pieces are not those of the plan"
        return
    pages: dict[str | None, list[PageRecord]] = {}
    for page in record.pages:
        pages.setdefault(page.piece, []).append(page)
    shared = _list_shared_pages(record)
    for told, piece in zip(record.pieces, expected.plan.pieces, strict=True):
        boxes = zip(told.box, piece.box, strict=True)
        if max(abs(one - other) for one, other in boxes) > _DECIMALS_MM or told.name != piece.name:
            yield f"{piece.slug}: its name or its place is not that of the plan"
        for what, points, wanted in (
            ("hole", told.holes, [mark.hole for mark in piece.marks]),
            ("hang point", told.hang_points, [mark.hang for mark in piece.marks]),
        ):
            if (off := _farthest(points, wanted)) > _DECIMALS_MM:
                amount = "another number" if off == inf else f"{off:.3f} mm off"
                yield f"{piece.slug}: a {what} is not that of the plan ({amount})"
        yield from _check_sheets(pages.get(piece.slug, ()), piece, expected, shared)


def _farthest(points: Sequence[Point], wanted: Sequence[Point]) -> float:
    if len(points) != len(wanted):
        return inf
    return max((dist(one, other) for one, other in zip(points, wanted, strict=True)), default=0.0)


def _check_sheets(
    pages: Sequence[PageRecord], piece: PlacedPiece, expected: Expected, shared: Container[int]
) -> Iterator[str]:
    """Whether the manifest lists every sheet of a piece once and rightly, and each hole is on one.

    On a page that it shares, a piece has the part that is cut out: all of it, and its words.
    """
    tiles = expected.tilings[piece.slug].tiles
    if [page.sheet for page in pages] != [tile.name for tile in tiles]:
        yield f"{piece.slug}: its sheets are not those of the cut"
        return
    clips = [page.clip or _NOTHING for page in pages]
    for page, clip, tile in zip(pages, clips, tiles, strict=True):
        off = max(abs(one - other) for one, other in zip(clip, tile.clip, strict=True))
        is_cut_out = page.page in shared and clip.holds(Box(0.0, 0.0, *piece.size))
        if off > _DECIMALS_MM and not is_cut_out:
            yield f"{piece.slug} sheet {tile.name}: it does not show the part that the cut gives it"
    for number, mark in enumerate(piece.template_marks(), 1):
        if not any(clip.has(mark.hole) for clip in clips):
            yield f"{piece.slug} hole {number} is on no sheet"
