"""Templates side by side on pages that are cut apart: small ones; on a roll all, and their strips."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from functools import cache, partial

from templater.geometry import ORIGIN, Box, Point, Size
from templater.placement.model import Plan
from templater.printing.cut import count_sheets
from templater.printing.model import Coverage, PrintSetup, SheetCounts, Tile, Tiling
from templater.printing.nest import nest
from templater.scene.template.board import Board
from templater.scene.template.draw import template_shape
from templater.scene.template.room import Regions
from templater.scene.template.sheet_block import SheetBlock, SheetNames, place_sheet_block
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
    left = sorted(bundles, key=_area, reverse=True)
    pages: list[SharedPage] = []
    while sum(map(len, left)) > 1:
        page = _fill_page(left, setup, f"S{len(pages) + 1}")
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


def _fill_page(left: Sequence[Bundle], setup: PrintSetup, name: str) -> SharedPage | None:
    """A page with as many of the templates as it takes, the first of them among these."""
    count, page = _take_first(left, setup, name)
    if page is None:
        return None
    chosen, refused = [*left[:count]], set[tuple[Size, ...]]()
    for bundle in left[count:]:
        sizes = tuple(cutting.size for cutting in bundle)
        if sizes not in refused:
            more = _lay_out([*chosen, bundle], setup, name)
            if more is None:
                refused.add(sizes)
            else:
                page = more
                chosen.append(bundle)
    return page


def _take_first(left: Sequence[Bundle], setup: PrintSetup, name: str) -> tuple[int, SharedPage | None]:
    """How many of the templates, the first ones, fit a page, and the page; found by halving."""
    fits, too_many = 0, len(left) + 1
    page: SharedPage | None = None
    while too_many - fits > 1:
        count = len(left) if too_many > len(left) and not fits else (fits + too_many) // 2
        tried = _lay_out(left[:count], setup, name)
        if tried is None:
            too_many = count
        else:
            fits, page = count, tried
    return fits, page


def _lay_out(bundles: Sequence[Bundle], setup: PrintSetup, name: str) -> SharedPage | None:
    """The templates on one page with its block and rulers; None if that finds no room.

    Of a roll the shortest page that was found.
    """
    cuttings = [cutting for bundle in bundles for cutting in bundle]
    sizes = [cutting.size for cutting in cuttings]
    found = (
        page
        for size in setup.page_sizes()
        for corners in _nest(sizes, setup.printable(size).size)
        for page in _with_block(cuttings, corners, size, setup, name)
    )
    if setup.paper.is_roll:
        return min(found, key=lambda page: _area_of(page.sheet.page), default=None)
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
    cuttings: Sequence[Cutting], corners: Sequence[Point], size: Size, setup: PrintSetup, name: str
) -> Iterator[SharedPage]:
    """The page, if what the templates leave has room for the block and the rulers."""
    pairs = list(zip(cuttings, corners, strict=True))
    reach = Size(
        max(corner.x + cutting.size.width for cutting, corner in pairs),
        max(corner.y + cutting.size.height for cutting, corner in pairs),
    )
    for page in _cut_page(size, reach, setup):
        shown = setup.printable(page)
        placed = tuple(_place(cutting, shown, corner) for cutting, corner in pairs)
        board = Board(shown)
        for cutting in placed:
            board.mark(cutting.paper.moved(*cutting.tile.origin))
        sheet = Tile(name, shown, shown, page, ORIGIN)
        block = place_sheet_block(sheet, board, Regions(shown, (), shown))
        if not block.crowding:
            yield SharedPage(sheet, placed, block)
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


def _place(cutting: Cutting, shown: Box, corner: Point) -> Cutting:
    """The template with its paper's top left corner so far from that of what the printer reaches."""
    paper = cutting.paper
    origin = Point(shown.x0 + corner.x - paper.x0, shown.y1 - corner.y - paper.y1)
    return replace(cutting, tile=replace(cutting.tile, origin=origin))
