"""Drawings become pages: clipped, numbered, and with what a PDF reader may jump to."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import replace

from templater.drawing import Anchor, Item, Words
from templater.geometry import Box, Point
from templater.lettering import shorten, text_width
from templater.placement.model import PlacedPiece
from templater.printing.model import PrintSetup, Tile, Tiling
from templater.scene.lines import FINE, LARGE, SMALL, short_dash
from templater.scene.marks import draw_box
from templater.scene.model import Form, PageDrawing
from templater.scene.template.draw import TemplateDrawing
from templater.scene.template.sheet_block import SheetNames, draw_sheet_block
from templater.sheets.model import Bookmark, Layer, Page, PageKind, Part, Target
from templater.sheets.share import SharedPage

_FOOTER_GAP = 4.0
_LEAST_TITLE = 10.0
_BORDER = 5.0
"""Blank paper round a template that is one drawing, mm."""


def piece_target(slug: str) -> str:
    """The name of the place where a piece's sheets begin."""
    return f"piece:{slug}"


def lay_out_pages(
    drawings: Sequence[PageDrawing],
    kind: PageKind,
    form: Form,
    *,
    first_page: int,
    page_count: int,
    title: str,
    revision: str,
    issue: str | None = None,
) -> tuple[Page, ...]:
    """Pages that are read, not taped: each with the kit's title, revision and number at its foot.

    The user's own word for the issue stands beside the revision.
    """
    kit = f"issue {issue} · {title}" if issue else title
    pages = []
    for index, drawing in enumerate(drawings):
        number = f"page {first_page + index} of {page_count}"
        footer = _footer(form, kit, revision, number)
        pages.append(
            Page(
                kind=kind,
                size=drawing.size,
                layers=(Layer(drawing.items), Layer(footer)),
                label=f"{kind.value} {index + 1}",
                bookmarks=(Bookmark(drawing.title, 0),),
                links=drawing.links,
                scale=form.scale,
            )
        )
    return tuple(pages)


def _footer(form: Form, title: str, revision: str, number: str) -> tuple[Item, ...]:
    """Revision at the left, the page's number at the right, the kit's title where there is room."""
    box = form.printable
    baseline = box.y0 + 2.0
    told = f"rev {revision}"
    left = box.x0 + 2.0 + text_width(told, LARGE, bold=True) + _FOOTER_GAP
    right = box.x1 - 2.0 - text_width(number, SMALL) - _FOOTER_GAP
    between = Words(Point(left, baseline), shorten(title, SMALL, right - left), SMALL)
    return (
        Words(Point(box.x0 + 2, baseline), told, LARGE, bold=True),
        *([between] if right - left >= _LEAST_TITLE else []),
        Words(Point(box.x1 - 2, baseline), number, SMALL, Anchor.END),
    )


def lay_out_template(
    drawing: TemplateDrawing, tiling: Tiling, piece: PlacedPiece, setup: PrintSetup
) -> Iterator[Page]:
    """A piece's sheets in reading order."""
    holes = [mark.hole for mark in piece.template_marks()]
    for index, tile in enumerate(tiling.tiles):
        bookmarks = [Bookmark(f"{piece.name} {tile.name}", 1)]
        targets = list(_hole_targets(piece, holes, tile))
        if index == 0:
            bookmarks.insert(0, Bookmark(piece.name, 0))
            targets.append(Target(piece_target(piece.slug), Point(0.0, tile.page.height)))
        own = (*drawing.labels[index], *drawing.furniture[index])
        yield Page(
            kind=PageKind.TEMPLATE,
            size=tile.page,
            layers=_layers(drawing.lines, own, tile),
            label=f"{piece.slug} {tile.name}",
            bookmarks=tuple(bookmarks),
            targets=tuple(targets),
            parts=(Part(piece.slug, tile.name, tile.clip, tile.origin),),
            scale=setup.scale_of(tile.page),
        )


def _layers(lines: tuple[Item, ...], own: tuple[Item, ...], tile: Tile) -> tuple[Layer, Layer]:
    """What a sheet shows of the template, and what stands on it alone."""
    return Layer(lines, tile.origin, tile.clip.moved(*tile.origin)), Layer(own, tile.origin)


def lay_out_shared(page: SharedPage, names: SheetNames, setup: PrintSetup) -> Page:
    """A page that several templates share, each in the line on which it is cut out."""
    sheet = page.sheet
    layers, bookmarks, targets, parts = list[Layer](), list[Bookmark](), list[Target](), list[Part]()
    for cutting in page.cuttings:
        piece, tile, drawing, place = cutting.piece, cutting.tile, cutting.drawing, cutting.place
        cut = draw_box(cutting.paper, FINE, short_dash(FINE))
        layers += _layers(drawing.lines, (*drawing.labels[place], *drawing.furniture[place], cut), tile)
        if not place:
            bookmarks.append(Bookmark(piece.name, 0))
            on_page = tile.clip.moved(*tile.origin)
            targets.append(Target(piece_target(piece.slug), Point(on_page.x0, on_page.y1)))
        bookmarks.append(Bookmark(f"{piece.name} {tile.name}", 1))
        targets += _hole_targets(piece, [mark.hole for mark in piece.template_marks()], tile)
        parts.append(Part(piece.slug, tile.name, tile.clip, tile.origin))
    what = "pieces" if len(page.slugs) == len(parts) else "sheets"
    named = replace(names, piece=f"{len(parts)} {what}, cut out")
    block = draw_sheet_block(page.block, named, Tiling((sheet,), (), ()), 0, fold=False, more=False)
    return Page(
        kind=PageKind.TEMPLATE,
        size=sheet.page,
        layers=(*layers, Layer(block)),
        label=f"shared {sheet.name}",
        bookmarks=tuple(bookmarks),
        targets=tuple(targets),
        parts=tuple(parts),
        scale=setup.scale_of(sheet.page),
    )


def _hole_targets(piece: PlacedPiece, holes: Sequence[Point], tile: Tile) -> Iterable[Target]:
    """The holes that are drilled through this sheet, as places to jump to."""
    for number, hole in enumerate(holes, 1):
        if tile.keep.has(hole):
            at = hole.moved(*tile.origin)
            yield Target(f"hole:{piece.slug}:{number}", at)


def whole_template(drawing: TemplateDrawing) -> tuple[tuple[Layer, ...], Box]:
    """The template as one drawing, not cut into sheets, and the box that holds it."""
    labels = tuple(item for items in drawing.labels for item in items)
    layers = (Layer(drawing.lines), Layer((*labels, *drawing.whole)))
    return layers, drawing.area.grown(_BORDER)


def stack_pages(pages: Sequence[Page]) -> tuple[tuple[Layer, ...], Box]:
    """Pages of one size one under another as one drawing, and the box that holds it."""
    width, height = pages[0].size
    layers = tuple(
        replace(layer, origin=layer.origin.moved(0.0, height * (len(pages) - number)))
        for number, page in enumerate(pages, 1)
        for layer in page.layers
    )
    return layers, Box(0.0, 0.0, width, height * len(pages))
