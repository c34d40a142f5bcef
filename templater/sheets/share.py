"""Templates side by side on pages that are cut apart: small ones; on a roll all, and their strips."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from functools import cache, partial
from typing import NamedTuple, TypeAlias

from templater.geometry import ORIGIN, Box, Point, Size
from templater.placement.model import Plan
from templater.printing.cut import count_sheets
from templater.printing.model import Coverage, PrintSetup, SheetCounts, Tile, Tiling
from templater.printing.nest import nest
from templater.scene.template.board import Board
from templater.scene.template.draw import template_shape
from templater.scene.template.room import Regions
from templater.scene.template.sheet_block import (
    LEAST_AREA,
    SheetBlock,
    SheetNames,
    may_find_room,
    place_sheet_block,
)
from templater.sheets.cuttings import Bundle, Cutting, list_bundles

_FOOTS_MM = (0.0, 20.0, 50.0, 110.0)
"""How much longer than its templates a roll's page is, until its block and rulers find room."""


@dataclass(frozen=True, slots=True)
class SharedPage:
    """Several templates on one page; each tile's origin tells where its template stands."""

    sheet: Tile
    cuttings: tuple[Cutting, ...]
    block: SheetBlock

    @property
    def slugs(self) -> set[str]:
        """The pieces that stand on it."""
        return {cutting.piece.slug for cutting in self.cuttings}


class _Sheet(NamedTuple):
    """A page, still without its name, on which papers found room: the origin of each, and the block."""

    tile: Tile
    origins: tuple[Point, ...]
    block: SheetBlock


_FindSheet: TypeAlias = Callable[[tuple[Box, ...]], _Sheet | None]


def share_pages(
    plan: Plan,
    tilings: Mapping[str, Tiling],
    setup: PrintSetup,
    revision: str = "",
) -> tuple[SharedPage, ...]:
    """The pages that templates share; those that would have a page for themselves are left out.

    Largest first: a page takes as many of the next largest templates as fit, then whichever smaller
    ones still do. Strips of one template stand on one page. Of a roll, whatever takes less of it: all
    on shared pages, all but strips, or none. The ``revision`` may be left out where they are only
    counted.
    """
    bundles = list_bundles(plan, tilings, setup, name_sheets(plan, setup, revision))
    pages = _fill_pages(bundles, setup)
    if not setup.paper.is_roll:
        return pages
    ways = [pages, ()]
    if any(len(bundle) > 1 for bundle in bundles):
        ways.append(_fill_pages([bundle for bundle in bundles if len(bundle) == 1], setup))
    return min(ways, key=lambda way: _measure_paper(way, tilings))


def _fill_pages(bundles: Sequence[Bundle], setup: PrintSetup) -> tuple[SharedPage, ...]:
    """Pages for all that can share one."""
    find_once = cache(partial(_find_sheet, setup=setup))  # many pages take papers of the same sizes
    left = sorted(bundles, key=_area, reverse=True)
    pages: list[SharedPage] = []
    while sum(map(len, left)) > 1:
        page = _fill_page(left, find_once, f"S{len(pages) + 1}")
        if page is not None and len(page.cuttings) > 1:
            pages.append(page)
        slugs = {left[0][0].piece.slug} if page is None else page.slugs
        left = [bundle for bundle in left if bundle[0].piece.slug not in slugs]
    return tuple(pages)


def _measure_paper(pages: Sequence[SharedPage], tilings: Mapping[str, Tiling]) -> float:
    """How much paper the pages take and all sheets that share none, mm²."""
    shared = {slug for page in pages for slug in page.slugs}
    sizes = [page.sheet.page for page in pages]
    sizes += [
        tile.page for slug, tiling in tilings.items() if slug not in shared for tile in tiling.tiles
    ]
    return sum(width * height for width, height in sizes)


def _area(bundle: Bundle) -> int:
    """The paper that a template needs, mm² without the rounding of floats: equals keep their order."""
    return round(sum(cutting.size.width * cutting.size.height for cutting in bundle))


def count_all_sheets(
    plan: Plan, tilings: Mapping[str, Tiling], setup: PrintSetup, shared: Sequence[SharedPage]
) -> SheetCounts:
    """How many sheets the templates take as they are cut, and with the other covers.

    Of a template that is in no tiling, since it takes too many, at least how many.
    """
    counts: dict[Coverage, dict[str, int]] = {cover: {} for cover in Coverage}
    count_once = cache(partial(count_sheets, setup=setup))  # frames of one kind hang in many a row
    for piece in plan.pieces:
        for cover, count in count_once(template_shape(piece)).items():
            counts[cover][piece.slug] = count
        if piece.slug in tilings:
            counts[setup.cover][piece.slug] = len(tilings[piece.slug].tiles)
    names = {cutting.piece.slug: page.sheet.name for page in shared for cutting in page.cuttings}
    own = [tile.page for slug, tiling in tilings.items() if slug not in names for tile in tiling.tiles]
    sizes = [*own, *(page.sheet.page for page in shared)]
    lies = {size.width > size.height for size in sizes}
    return SheetCounts(counts, names, lie_both_ways=len(lies) == 2)


def name_sheets(plan: Plan, setup: PrintSetup, revision: str) -> SheetNames:
    """What all sheets of a kit say alike; piece and pages are put in later."""
    title = f"issue {plan.issue} · {plan.title}" if plan.issue else plan.title
    return SheetNames(title, "", revision, 0, 0, setup.printer.name if setup.printer else None)


def _fill_page(left: Sequence[Bundle], find_sheet: _FindSheet, name: str) -> SharedPage | None:
    """A page with as many of the templates as it takes, the first of them among these."""
    count, sheet = _take_first(left, find_sheet)
    if sheet is None:
        return None
    chosen, rest = [*left[:count]], left[count:]
    while (found := _take_next(chosen, rest, find_sheet)) is not None:
        sheet, bundle, rest = found
        chosen.append(bundle)
    return _make_page(chosen, sheet, name)


def _take_next(
    chosen: Sequence[Bundle], rest: Sequence[Bundle], find_sheet: _FindSheet
) -> tuple[_Sheet, Bundle, Sequence[Bundle]] | None:
    """The sheet with the next template for which there is room, that, and those that follow it.

    Where one finds no room, none is tried that is as wide and as high: so the least are tried first,
    though the first of the rest is taken.
    """
    hopeful = rest
    for least in _list_least(rest):
        if find_sheet(_list_papers([*chosen, least])) is None:
            hopeful = [bundle for bundle in hopeful if not _covers(bundle, least)]
    for place, bundle in enumerate(hopeful, start=1):
        sheet = find_sheet(_list_papers([*chosen, bundle]))
        if sheet is not None:
            return sheet, bundle, hopeful[place:]
    return None


def _list_least(bundles: Sequence[Bundle]) -> Sequence[Bundle]:
    """Templates, largest first, without those that cover a smaller one."""
    least: list[Bundle] = []
    for bundle in reversed(bundles):
        if not any(_covers(bundle, other) for other in least):
            least.append(bundle)
    return least


def _covers(bundle: Bundle, other: Bundle) -> bool:
    """Whether a template is as wide and as high as another; those of strips cover only themselves."""
    if len(bundle) > 1 or len(other) > 1:
        return bundle is other
    (width, height), (least, low) = bundle[0].size, other[0].size
    return width >= least and height >= low


def _take_first(left: Sequence[Bundle], find_sheet: _FindSheet) -> tuple[int, _Sheet | None]:
    """How many of the templates, the first ones, fit a sheet, and the sheet; found by halving."""
    fits, too_many = 0, len(left) + 1
    sheet: _Sheet | None = None
    while too_many - fits > 1:
        count = len(left) if too_many > len(left) and not fits else (fits + too_many) // 2
        tried = find_sheet(_list_papers(left[:count]))
        if tried is None:
            too_many = count
        else:
            fits, sheet = count, tried
    return fits, sheet


def _list_papers(bundles: Iterable[Bundle]) -> tuple[Box, ...]:
    """The papers of all that is cut out."""
    return tuple(cutting.paper for bundle in bundles for cutting in bundle)


def _make_page(bundles: Iterable[Bundle], sheet: _Sheet, name: str) -> SharedPage:
    """The templates where a sheet has found room for their papers."""
    cuttings = (cutting for bundle in bundles for cutting in bundle)
    placed = tuple(
        replace(cutting, tile=replace(cutting.tile, origin=origin))
        for cutting, origin in zip(cuttings, sheet.origins, strict=True)
    )
    return SharedPage(replace(sheet.tile, name=name), placed, sheet.block)


def _find_sheet(papers: Sequence[Box], setup: PrintSetup) -> _Sheet | None:
    """A page for papers, its block and rulers; None if that finds no room.

    Of a roll the shortest page that was found.
    """
    needed = sum(paper.width * paper.height for paper in papers) + LEAST_AREA
    found = (
        sheet
        for size in setup.page_sizes()
        if needed <= Board(setup.printable(size)).size
        for corners in _nest([paper.size for paper in papers], setup.printable(size).size)
        for sheet in _with_block(papers, corners, size, setup)
    )
    if setup.paper.is_roll:
        return min(found, key=lambda sheet: _area_of(sheet.tile.page), default=None)
    return next(found, None)


def _area_of(size: Size) -> int:
    """The area of a page, mm²: of a roll's pages, which are as wide as the roll, their length tells."""
    return round(size.width * size.height)


def _nest(sizes: Sequence[Size], area: Size) -> Iterator[tuple[Point, ...]]:
    """Ways to put the sizes on an area, whichever of its sides is the long one."""
    if area.width <= area.height:
        yield from nest(sizes, area)
        return
    turned = nest([Size(size.height, size.width) for size in sizes], Size(area.height, area.width))
    for corners in turned:
        yield tuple(Point(corner.y, corner.x) for corner in corners)


def _with_block(
    papers: Sequence[Box], corners: Sequence[Point], size: Size, setup: PrintSetup
) -> Iterator[_Sheet]:
    """The sheet, if what the papers leave has room for the block and the rulers."""
    reach = Size(
        max(corner.x + paper.width for paper, corner in zip(papers, corners, strict=True)),
        max(corner.y + paper.height for paper, corner in zip(papers, corners, strict=True)),
    )
    for page in _cut_page(size, reach, setup):
        shown = setup.printable(page)
        origins = tuple(_find_origin(*pair, shown) for pair in zip(papers, corners, strict=True))
        board = Board(shown)
        for paper, origin in zip(papers, origins, strict=True):
            board.mark(paper.moved(*origin))
        tile, regions = Tile("", shown, shown, page, ORIGIN), Regions(shown, (), shown)
        if may_find_room(board, regions):
            block = place_sheet_block(tile, board, regions)
            if not block.crowding:
                yield _Sheet(tile, origins, block)
                return


def _cut_page(size: Size, reach: Size, setup: PrintSetup) -> Iterator[Size]:
    """The page; of a roll as long as the templates need, then longer."""
    if not setup.paper.is_roll:
        yield size
        return
    blank = Size(*(side - shown for side, shown in zip(size, setup.printable(size).size, strict=True)))
    for foot in _FOOTS_MM:
        page = Size(size.width, reach.height + blank.height + foot)
        if size.width > size.height:
            page = Size(reach.width + blank.width + foot, size.height)
        if page.width <= size.width and page.height <= size.height:
            yield page


def _find_origin(paper: Box, corner: Point, shown: Box) -> Point:
    """Where a template stands whose paper's top left corner is so far from that of what is shown."""
    return Point(shown.x0 + corner.x - paper.x0, shown.y1 - corner.y - paper.y1)
