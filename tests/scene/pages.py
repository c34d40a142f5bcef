"""Plans, forms and questions about drawn pages that several tests share."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import replace
from itertools import combinations, pairwise

from templater.drawing import Circle, Item, Line, Polyline, Words
from templater.geometry import Box, Point, Size
from templater.layout.model import Datum, Margins
from templater.lengths import Unit
from templater.lettering import words_box
from templater.mounting.model import Mark
from templater.paper import parse_paper
from templater.placement.model import PlacedFurniture, PlacedPiece, Plan
from templater.printing.model import PrintSetup, Tile, Tiling
from templater.scene.model import Form, PageDrawing

PAPERS = ("a4", "letter", "a5", "legal", "tabloid", "a3", "125 x 165 mm")

NAMES = (
    "Tide chart",
    "Kelp print",
    "Great-grandmother's oilskin coat, framed behind acrylic with its original brass buttons",
    "Seehundsbänke",
)


def print_setup(paper: str) -> PrintSetup:
    return PrintSetup(parse_paper(paper), Margins(), 10.0)


def blank_form(paper: str) -> Form:
    setup = print_setup(paper)
    return Form(setup.paper.size, setup.printable(setup.paper.size))


def placed_piece(name: str, holes: Sequence[tuple[float, float]], left: float = 0.0) -> PlacedPiece:
    """A piece of 400 x 500 mm whose bottom is 1.3 m above the floor."""
    marks = tuple(Mark(Point(x, y), Point(x, y), None) for x, y in holes)
    box = Box.of(Point(left, 1300.0), Size(400.0, 500.0))
    slug = name.lower().replace(" ", "-")
    return PlacedPiece(name, slug, box, marks, (), None, None, None, None, ())


def make_plan(pieces: Iterable[PlacedPiece], units: Unit = Unit.MILLIMETRE) -> Plan:
    wall, datum = Size(40_000.0, 2400.0), Datum(1524.0, "left of the stair post")
    people = ("the guest house", "Ines Harbour", "ines@cottage.example", None)
    title = "Keeper's cottage, stair hall"
    return Plan(title, units, wall, 1524.0, datum, (), tuple(pieces), (), *people)


def over_stairs(plan: Plan) -> Plan:
    """The same with stairs under its first piece."""
    stairs = PlacedFurniture("tower steps", Box(0.0, 0.0, 400.0, 900.0), "stairs")
    return replace(plan, furniture=(stairs,))


def plan_with(count: int, units: Unit = Unit.MILLIMETRE) -> Plan:
    """Pieces with no, one and two holes in turn, among them one of a long name."""
    pieces = []
    for number in range(count):
        left = 500.0 * number
        holes = [(left + 100.0 + 200.0 * hole, 1700.0) for hole in range((number + 1) % 3)]
        pieces.append(placed_piece(f"{NAMES[number % 4]} {number + 1}", holes, left))
    return make_plan(pieces, units)


A4 = Size(210.0, 297.0)


def grid_tiling(across: int, down: int, page: Size = A4) -> Tiling:
    tiles = tuple(
        Tile(f"{'ABCDEFGH'[row]}{column + 1}", box, box, page, Point(0.0, 0.0))
        for row in range(down)
        for column in range(across)
        for box in [Box.of(Point(180.0 * column, 260.0 * row), Size(190.0, 270.0))]
    )
    return Tiling(tiles, (), ())


def words_of(page: PageDrawing) -> list[Words]:
    return [item for item in page.items if isinstance(item, Words)]


def text_of(pages: Iterable[PageDrawing]) -> str:
    """All words in the order in which they were drawn, as one line."""
    return " ".join(words.text for page in pages for words in words_of(page))


def box_of(item: Item) -> Box:
    return words_box(item) if isinstance(item, Words) else item.box


def assert_inside(items: Iterable[Item], area: Box) -> None:
    outside = [item for item in items if not area.holds(box_of(item), slack=1e-6)]
    assert outside == []


def assert_words_apart(page: PageDrawing) -> None:
    """No two lines of words share an area."""
    boxed = [(words, words_box(words)) for words in words_of(page)]
    touching = [(a.text, b.text) for (a, p), (b, q) in combinations(boxed, 2) if p.meets(q)]
    assert touching == []


def assert_words_clear_of_lines(page: PageDrawing) -> None:
    """No straight upright or level line runs through words."""
    boxes = [(words.text, words_box(words).grown(-0.05)) for words in words_of(page)]
    crossed = [
        (text, side)
        for item in page.items
        if isinstance(item, Line | Polyline | Circle)
        for side in _sides(item)
        for text, box in boxes
        if box.meets(side.grown(0.01))
    ]
    assert crossed == []


def _sides(item: Line | Polyline | Circle) -> list[Box]:
    """The level and upright lines of a figure, each as a box without area."""
    if isinstance(item, Circle):
        return []
    if isinstance(item, Line):
        chain = [item.start, item.end]
    else:
        chain = [*item.points, *(item.points[:1] if item.closed else ())]
    return [
        Box(min(a.x, b.x), min(a.y, b.y), max(a.x, b.x), max(a.y, b.y))
        for a, b in pairwise(chain)
        if a.x == b.x or a.y == b.y
    ]
