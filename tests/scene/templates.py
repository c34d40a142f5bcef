"""Pieces to draw templates of, and questions about what was drawn."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from hypothesis import assume
from hypothesis import strategies as st

from templater.drawing import Item, Line, Words
from templater.errors import Place
from templater.geometry import Box, Point, Size
from templater.layout.model import Datum, Hanger, Hanging, Margins
from templater.lengths import Unit
from templater.lettering import words_box
from templater.mounting.hang_points import find_hang_points
from templater.mounting.model import Mark
from templater.paper import parse_paper
from templater.placement.model import Neighbour, PlacedFurniture, PlacedPiece, Plan, Side
from templater.printing.cut import cut_template
from templater.printing.model import PrintSetup, Tile, Tiling
from templater.printing.tile import NoRoomOnSheetError, TooManySheetsError, tile_template
from templater.scene.template.draw import (
    TemplateDrawing,
    draw_template,
    template_extent,
    template_shape,
)
from templater.scene.template.sheet_block import SheetNames

INCH = 25.4
REVISION = "K7M2Q4"
TITLE = "Keeper's cottage, stair hall"
BENCH = PlacedFurniture("boot bench", Box(30 * INCH, 0, 110 * INCH, 34 * INCH))
NEIGHBOURS = (
    Neighbour("Kelp print", Side.RIGHT, 3 * INCH),
    Neighbour("The long-winded account of the winter gales of the north-west station", Side.LEFT, 50.0),
    Neighbour("Fog bell", Side.ABOVE, 51.0),
    Neighbour("Gull study", Side.BELOW, 52.0),
)
_HERE = Place("hall.yaml", 1, 1)
_CORNER = Point(500.0, 1300.0)
_MARGINS = Margins()


def placed(
    size: Size,
    holes: Sequence[tuple[float, float]] = (),
    *,
    name: str = "Tide chart",
    rise: float = 0.0,
    corner: Point = _CORNER,
    over: PlacedFurniture | None = None,
    neighbours: Sequence[Neighbour] = (),
) -> PlacedPiece:
    """A piece on a wire; ``holes`` from the frame's bottom-left corner, hang points a rise below."""
    at = [Point(x, y).moved(*corner) for x, y in holes]
    marks = tuple(Mark(hole.moved(0, -rise), hole, None) for hole in at)
    hang = Hanging(Hanger.WIRE, 50.0, rise, None, 0.0, None, None, _HERE) if holes else None
    box = Box.of(corner, size)
    slug = name.lower().replace(" ", "-")
    return PlacedPiece(name, slug, box, marks, (), hang, None, None, over, tuple(neighbours))


def tide_chart(*, rise: float = 0.5 * INCH) -> PlacedPiece:
    """16 x 20 in over the bench: left edge at 38 in, bottom at 41 in, hung 2 1/4 in below its top."""
    hole = (8 * INCH, 17.75 * INCH + rise)
    corner = Point(38 * INCH, 41 * INCH)
    return placed(Size(16 * INCH, 20 * INCH), [hole], rise=rise, corner=corner, over=BENCH)


class Drawn:
    """A template with all that it was drawn from."""

    def __init__(
        self, piece: PlacedPiece, setup: PrintSetup, tiling: Tiling, drawing: TemplateDrawing
    ) -> None:
        self.piece, self.setup, self.tiling, self.drawing = piece, setup, tiling, drawing

    def __repr__(self) -> str:
        """Short, for it is what a failing property shows."""
        marks = [(*mark.hole, *mark.hang) for mark in self.piece.template_marks()]
        return f"Drawn({self.piece.size}, {marks}, {self.setup}, {len(self.tiling.tiles)} sheets)"

    @property
    def sheets(self) -> list[Tile]:
        return list(self.tiling.tiles)

    def own(self, index: int) -> list[Item]:
        """What stands on one sheet alone."""
        return [*self.drawing.labels[index], *self.drawing.furniture[index]]

    def words(self, index: int) -> list[Words]:
        return [item for item in self.own(index) if isinstance(item, Words)]

    def boxed_words(self, index: int) -> list[tuple[str, Box]]:
        return [(words.text, words_box(words)) for words in self.words(index)]

    @property
    def lines(self) -> list[Line]:
        return [item for item in self.drawing.lines if isinstance(item, Line)]

    @property
    def holes(self) -> list[Point]:
        return [mark.hole for mark in self.piece.template_marks()]

    def label_text(self) -> str:
        """All labels of all sheets as one line, broken nowhere."""
        labels = (item for items in self.drawing.labels for item in items)
        return " ".join(item.text for item in labels if isinstance(item, Words))

    def sheets_with(self, text: str) -> list[str]:
        """The sheets on which one of the labels is just this text."""
        return [
            tile.name
            for tile, items in zip(self.sheets, self.drawing.labels, strict=True)
            if any(isinstance(item, Words) and item.text == text for item in items)
        ]


def plan_for(
    piece: PlacedPiece,
    units: Unit = Unit.INCH,
    datum_mm: float = 60 * INCH,
    studs: tuple[float, ...] = (),
) -> Plan:
    wall = Size(5000.0, 2600.0)
    people = (None, None, None, None)
    furniture = () if piece.over is None else (piece.over,)
    datum = Datum(datum_mm, None)
    return Plan(TITLE, units, wall, datum_mm, datum, furniture, (piece,), (), *people, studs=studs)


def draw(
    piece: PlacedPiece,
    paper: str = "letter",
    *,
    units: Unit = Unit.INCH,
    lap: float = 10.0,
    margins: Margins = _MARGINS,
    datum_mm: float = 60 * INCH,
    studs: tuple[float, ...] = (),
) -> Drawn:
    setup = PrintSetup(parse_paper(paper), margins, lap)
    marks = piece.template_marks()
    holes, hangs = [mark.hole for mark in marks], [mark.hang for mark in marks]
    tiling = tile_template(template_extent(piece), holes, hangs, setup)
    names = SheetNames(TITLE, piece.name, REVISION, 3, 99)
    drawing = draw_template(piece, plan_for(piece, units, datum_mm, studs), tiling, names)
    return Drawn(piece, setup, tiling, drawing)


def hung_by(
    by: Hanger, size: Size, *, drop: float, rise: float, span: float, every: float
) -> PlacedPiece:
    """A piece with the holes that its hardware asks for."""
    rings = by in (Hanger.D_RINGS, Hanger.KEYHOLES)
    rail = by is Hanger.CLEAT
    hang = Hanging(
        by,
        drop,
        rise,
        span if rings else None,
        0.0,
        span if rail else None,
        every if rail else None,
        _HERE,
    )
    holes = [(x, y + rise) for x, y in find_hang_points(hang, size)]
    return placed(size, holes, rise=rise, neighbours=NEIGHBOURS)


@st.composite
def pieces(draw: st.DrawFn) -> PlacedPiece:
    """Pieces from 60 mm to 2 m with any hardware, their holes from 15 mm apart."""
    side = st.floats(60, 2000) | st.floats(60, 300)
    size = Size(draw(side), draw(side))
    by = draw(st.sampled_from(Hanger))
    span = draw(st.floats(0.3, 0.95)) * size.width
    every = max(draw(st.floats(15, 400)), span / 30)
    drop = draw(st.floats(0, min(size.height, 150.0)))
    rise = draw(st.sampled_from((0.0, 4.0, 12.7, 30.0, -12.0)))
    return hung_by(by, size, drop=drop, rise=rise, span=span, every=every)


PAPERS = ("a5", "a4", "letter", "a3", "a1", "roll 24 in")


@st.composite
def templates(draw_value: st.DrawFn) -> Drawn:
    """Templates of any piece on any paper that people have, at most 30 sheets."""
    piece, paper = draw_value(pieces()), draw_value(st.sampled_from(PAPERS))
    sides = st.sampled_from((Margins(), Margins(3.0, 3.0, 3.0, 3.0), Margins(15.0, 15.0, 15.0, 15.0)))
    margins = draw_value(sides)
    lap = draw_value(st.sampled_from((0.0, 5.0, 10.0, 20.0)))
    setup = PrintSetup(parse_paper(paper), margins, lap)
    try:
        cut_template(template_shape(piece), setup)
    except (NoRoomOnSheetError, TooManySheetsError):
        assume(False)  # such a paper is refused, or nobody prints so much
    room = setup.printable(setup.paper.size).size
    size = template_extent(piece).size
    assume(size.width * size.height < 15 * (room.width - lap) * (room.height - lap))
    units = draw_value(st.sampled_from((Unit.INCH, Unit.MILLIMETRE)))
    first = draw_value(st.none() | st.floats(0, 400))
    studs = () if first is None else tuple(first + 16 * INCH * number for number in range(12))
    drawn = draw(piece, paper, units=units, lap=lap, margins=margins, studs=studs)
    assume(len(drawn.sheets) <= 30)
    return drawn


def each_sheet(drawn: Drawn) -> Iterator[tuple[int, Tile]]:
    return enumerate(drawn.tiling.tiles)
