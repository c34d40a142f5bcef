"""Walls to draw an overview of, and questions about what was drawn."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from templater.drawing import Item, Line, Words
from templater.geometry import Box, Point, Size
from templater.layout.model import Datum, Margins
from templater.lengths import Unit
from templater.lettering import words_box
from templater.mounting.model import Mark
from templater.paper import parse_paper
from templater.placement.model import PlacedFurniture, PlacedPiece, Plan
from templater.printing.model import PrintSetup
from templater.rules.model import Finding, Verdict
from templater.scene.model import Form

INCH = 25.4
FINDINGS = (
    Finding(
        "width over furniture", "bench trio", "boot bench", Verdict.KEPT, "67.5 %", "60 to 75 %", None
    ),
    Finding("eye line", "Fog bell", None, Verdict.NOT_APPLICABLE, None, None, None),
    Finding(
        "clearance",
        "bench trio",
        "boot bench",
        Verdict.BROKEN,
        "9 in (229 mm)",
        "6 to 8 in",
        "set clearance: 8 in",
    ),
)
"""What might be said of the bench wall: something kept, not applicable, broken."""


def landscape_form(paper: str) -> Form:
    setup = PrintSetup(parse_paper(paper), Margins(), 10.0)
    size = Size(setup.paper.size.height, setup.paper.size.width)
    return Form(size, setup.printable(size))


def hung(
    name: str,
    box: Box,
    holes: Sequence[tuple[float, float]],
    over: PlacedFurniture | None = None,
    notes: tuple[str, ...] = (),
) -> PlacedPiece:
    """A piece with its holes in wall coordinates."""
    marks = tuple(Mark(Point(*hole), Point(*hole), None) for hole in holes)
    slug = name.lower().replace(" ", "-")
    return PlacedPiece(name, slug, box, marks, notes, None, None, None, over, ())


def make_wall(
    pieces: Iterable[PlacedPiece],
    size: Size,
    *,
    units: Unit = Unit.MILLIMETRE,
    datum: float = 1500.0,
    eye_line: float = 1500.0,
    furniture: tuple[PlacedFurniture, ...] = (),
) -> Plan:
    people = ("the guest house", "Ines Harbour", "ines@cottage.example", "B")
    title = "Keeper's cottage, stair hall"
    place = Datum(datum, "left of the stair post")
    return Plan(title, units, size, eye_line, place, furniture, tuple(pieces), (), *people)


def in_inches(x0: float, y0: float, x1: float, y1: float) -> Box:
    return Box(x0 * INCH, y0 * INCH, x1 * INCH, y1 * INCH)


def bench_wall() -> Plan:
    """16 ft 4 in x 8 ft: three pieces over a bench from 30 to 110 in, one alone; 60 in datum."""
    bench = PlacedFurniture("boot bench", in_inches(30, 0, 110, 34))

    def piece(
        name: str, left: float, *holes: tuple[float, float], notes: tuple[str, ...] = ()
    ) -> PlacedPiece:
        at = [(x * INCH, y * INCH) for x, y in holes]
        return hung(name, in_inches(left, 41, left + 16, 61), at, bench, notes)

    bell = hung("Fog bell", in_inches(144, 55.5, 156, 64.5), [(150 * INCH, 64 * INCH)])
    pieces = (
        piece("Tide chart", 43, (51, 59.25), notes=("The hook's rise is not given.",)),
        piece("Kelp print", 62, (64, 58), (76, 58)),
        piece("Gull study", 81, (89, 60.375)),
        bell,
    )
    datum, size = 60 * INCH, Size(196 * INCH, 96 * INCH)
    return make_wall(pieces, size, units=Unit.INCH, datum=datum, eye_line=datum, furniture=(bench,))


def grid_wall(columns: int, rows: int, side: float, pitch: float) -> Plan:
    """Square pieces in rows, a hole in each 30 mm below the middle of its top edge."""
    pieces = []
    for row in range(rows):
        for column in range(columns):
            box = Box.of(Point(100 + pitch * column, 200 + pitch * row), Size(side, side))
            hole = (box.centre.x, box.y1 - min(30.0, side / 4))
            pieces.append(hung(f"Print {row * columns + column + 1}", box, [hole]))
    return make_wall(pieces, Size(200 + columns * pitch, 500 + rows * pitch))


def crossings(items: Iterable[Item]) -> list[Point]:
    """Where a level and an upright line of 2 mm, the cross of a hole, share their middle."""
    lines = [item for item in items if isinstance(item, Line)]
    level = {_middle(a) for a in lines if _is_arm(a.end.x - a.start.x, a.end.y - a.start.y)}
    upright = {_middle(a) for a in lines if _is_arm(a.end.y - a.start.y, a.end.x - a.start.x)}
    return [Point(*middle) for middle in sorted(level & upright)]


def _is_arm(along: float, across: float) -> bool:
    return abs(abs(along) - 2.0) < 1e-9 and across == 0.0


def _middle(line: Line) -> tuple[float, float]:
    x, y = (line.start.x + line.end.x) / 2, (line.start.y + line.end.y) / 2
    return round(x, 7), round(y, 7)


def ink_box(words: Words) -> Box:
    """The box of the words' ink; bare figures reach neither below the baseline nor over capitals."""
    if not words.text.replace(" ", "").isdigit() or words.turned:
        return words_box(words).grown(-0.05)
    box = words_box(words)
    return Box(box.x0, words.at.y, box.x1, words.at.y + words.height_mm).grown(-0.05)
