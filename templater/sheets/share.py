"""Small templates side by side on pages that are cut apart; on a roll all that need one sheet."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from itertools import product

from templater.geometry import ORIGIN, Box, Point, Size
from templater.placement.model import PlacedPiece, Plan
from templater.printing.cut import count_sheets
from templater.printing.error import Errors, estimate_errors
from templater.printing.model import Coverage, PrintSetup, SheetCounts, Tile, Tiling
from templater.printing.nest import nest
from templater.scene.template.board import Board
from templater.scene.template.draw import TemplateDrawing, draw_template, template_extent, template_shape
from templater.scene.template.room import Regions
from templater.scene.template.sheet_block import SheetBlock, SheetNames, place_sheet_block

_BORDER_MM = 3.0
"""Between the outline and the line on which templates are cut apart."""

_BESIDE_MM = (0.0, 62.0, 92.0, 122.0)
_BELOW_MM = (0.0, 32.0, 62.0, 92.0, 122.0)
"""How much is added on the right and below until all words of a template find room."""

_FOOTS_MM = (0.0, 20.0, 50.0, 110.0)
"""How much longer than its templates a roll's page is, until its block and rulers find room."""


@dataclass(frozen=True, slots=True)
class Cutting:
    """A template to be cut out of a page: ``tile`` is the paper it needs, ``tile.clip`` all it shows."""

    piece: PlacedPiece
    tile: Tile
    drawing: TemplateDrawing

    @property
    def size(self) -> Size:
        """The paper it needs."""
        return self.tile.clip.size


@dataclass(frozen=True, slots=True)
class SharedPage:
    """Several templates on one page; each tile's origin tells where its template stands."""

    sheet: Tile
    cuttings: tuple[Cutting, ...]
    block: SheetBlock

    def has(self, piece: PlacedPiece) -> bool:
        """Whether a piece's template stands on the page."""
        return any(cutting.piece.slug == piece.slug for cutting in self.cuttings)


def share_pages(
    plan: Plan,
    tilings: Mapping[str, Tiling],
    setup: PrintSetup,
    revision: str = "",
) -> tuple[SharedPage, ...]:
    """The pages that templates share; those that would have a page for themselves are left out.

    Largest first: a page takes as many of the next largest templates as fit, then whichever smaller
    ones still do. The ``revision`` may be left out where they are only counted.
    """
    names = name_sheets(plan, setup, revision)
    alone = [piece for piece in plan.pieces if _is_one_sheet(tilings.get(piece.slug))]
    if len(alone) < 2:
        return ()
    found = (_cut_out(piece, plan, setup, names, tilings[piece.slug]) for piece in alone)
    left = sorted(filter(None, found), key=_area, reverse=True)
    pages: list[SharedPage] = []
    while left:
        page = _fill_page(left, setup, f"S{len(pages) + 1}")
        if page is not None and len(page.cuttings) > 1:
            pages.append(page)
        taken = left[:1] if page is None else page.cuttings
        slugs = {cutting.piece.slug for cutting in taken}
        left = [cutting for cutting in left if cutting.piece.slug not in slugs]
    return tuple(pages)


def _area(cutting: Cutting) -> int:
    """The paper that a template needs, mm² without the rounding of floats: equals keep their order."""
    return round(cutting.size.width * cutting.size.height)


def count_all_sheets(
    plan: Plan, tilings: Mapping[str, Tiling], setup: PrintSetup, shared: Sequence[SharedPage]
) -> SheetCounts:
    """How many sheets the templates take as they are cut, and with the other covers.

    Of a template that is in no tiling, since it takes too many, at least how many.
    """
    counts: dict[Coverage, dict[str, int]] = {cover: {} for cover in Coverage}
    for piece in plan.pieces:
        for cover, count in count_sheets(template_shape(piece), setup).items():
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


def expect_errors(piece: PlacedPiece, tiling: Tiling, setup: PrintSetup) -> Errors:
    """How far off a template's holes may be on paper."""
    shape = template_shape(piece)
    return estimate_errors(tiling, shape.holes, shape.hang_points, shape.outline, setup.printer)


def _is_one_sheet(tiling: Tiling | None) -> bool:
    return tiling is not None and len(tiling.tiles) == 1 and tiling.cover is Coverage.FULL


def _cut_out(
    piece: PlacedPiece, plan: Plan, setup: PrintSetup, names: SheetNames, tiling: Tiling
) -> Cutting | None:
    """The template on the least paper on which all its words find room; None if no page has that."""
    errors = expect_errors(piece, tiling, setup)
    extent = template_extent(piece).grown(_BORDER_MM)
    rooms = [setup.printable(page).size for page in _list_pages(setup)]
    boxes = [
        extent._replace(x1=extent.x1 + beside, y0=extent.y0 - below)
        for beside, below in product(_BESIDE_MM, _BELOW_MM)
    ]
    for box in sorted(boxes, key=lambda box: box.width * box.height):
        if not any(box.width <= room.width and box.height <= room.height for room in rooms):
            continue
        tile = Tile("A1", box, box, box.size, Point(-box.x0, -box.y0))
        alone = Tiling((tile,), (), (), is_shared=True)
        named = replace(names, piece=piece.name)
        drawing = draw_template(piece, plan, alone, named, errors=errors)
        if drawing.is_complete:
            return Cutting(piece, tile, drawing)
    return None


def _list_pages(setup: PrintSetup) -> Sequence[Size]:
    """The pages to share; of a roll only one as long as can be."""
    return setup.page_sizes()[:1] if setup.paper.is_roll else setup.page_sizes()


def _fill_page(left: Sequence[Cutting], setup: PrintSetup, name: str) -> SharedPage | None:
    """A page with as many of the templates as it takes, the first of them among these."""
    count, page = _take_first(left, setup, name)
    if page is None or count == len(left) or setup.paper.is_roll:
        return page
    chosen, refused = [*left[:count]], set[Size]()
    for cutting in left[count:]:
        if cutting.size not in refused:
            more = _lay_out([*chosen, cutting], setup, name)
            if more is None:
                refused.add(cutting.size)
            else:
                page = more
                chosen.append(cutting)
    return page


def _take_first(left: Sequence[Cutting], setup: PrintSetup, name: str) -> tuple[int, SharedPage | None]:
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


def _lay_out(cuttings: Sequence[Cutting], setup: PrintSetup, name: str) -> SharedPage | None:
    """The templates on one page with its block and rulers; None if that finds no room.

    Of a roll the shortest page that was found.
    """
    found = (
        page
        for size in _list_pages(setup)
        for corners in nest([cutting.size for cutting in cuttings], setup.printable(size).size)
        for page in _with_block(cuttings, corners, size, setup, name)
    )
    if setup.paper.is_roll:
        return min(found, key=lambda page: page.sheet.page.height, default=None)
    return next(found, None)


def _with_block(
    cuttings: Sequence[Cutting], corners: Sequence[Point], size: Size, setup: PrintSetup, name: str
) -> Iterator[SharedPage]:
    """The page, if what the templates leave has room for the block and the rulers."""
    pairs = list(zip(cuttings, corners, strict=True))
    depth = max(corner.y + cutting.size.height for cutting, corner in pairs)
    for page in _cut_page(size, depth, setup):
        shown = setup.printable(page)
        placed = tuple(_place(cutting, shown, corner) for cutting, corner in pairs)
        board = Board(shown)
        for cutting in placed:
            board.mark(cutting.tile.clip.moved(*cutting.tile.origin))
        sheet = Tile(name, shown, shown, page, ORIGIN)
        block = place_sheet_block(sheet, board, Regions(shown, (), shown))
        if not block.crowding:
            yield SharedPage(sheet, placed, block)
            return


def _cut_page(size: Size, depth: float, setup: PrintSetup) -> Iterator[Size]:
    """The page; of a roll as long as the templates need, then longer."""
    if not setup.paper.is_roll:
        yield size
        return
    blank = size.height - setup.printable(size).height
    for foot in _FOOTS_MM:
        if depth + blank + foot <= size.height:
            yield Size(size.width, depth + blank + foot)


def _place(cutting: Cutting, shown: Box, corner: Point) -> Cutting:
    """The template with its top left corner so far from that of what the printer reaches."""
    tile = cutting.tile
    origin = Point(shown.x0 + corner.x - tile.clip.x0, shown.y1 - corner.y - tile.clip.y1)
    return replace(cutting, tile=replace(tile, origin=origin))
