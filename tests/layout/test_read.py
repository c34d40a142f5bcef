from pathlib import Path

import pytest

from templater.errors import Place
from templater.layout.model import (
    Align,
    Arrangement,
    Datum,
    Furniture,
    Group,
    Hanger,
    Hanging,
    Margins,
    Piece,
    Position,
    Wall,
)
from templater.layout.read import read_layout
from templater.lengths import Unit
from templater.paper import PAPERS
from tests.layout.files import FULL, SHIPPED, SMALL, check_faults, read_sound


def at(line: int, column: int) -> Place:
    return Place("hall.yaml", line, column)


def test_every_key_arrives_in_the_layout() -> None:
    layout = read_sound(FULL)
    assert (layout.title, layout.units, layout.paper) == ("Lamp room", Unit.CENTIMETRE, PAPERS["a3"])
    assert layout.margins == Margins(6.35, 6.35, 6.35, 15)
    assert (layout.lap_mm, layout.eye_line_mm, layout.datum) == (12, 1500, Datum(1400, "the door"))
    assert (layout.for_whom, layout.from_whom) == ("Inga", "Wren")
    assert (layout.contact, layout.issue) == ("at the light", "draft 2")
    assert layout.wall == Wall(layout.wall.size, at(12, 7))
    assert layout.wall.size == (6200, 2600)
    size = layout.furniture[0].size
    assert layout.furniture == (Furniture("oil cabinet", 400, size, at(14, 5), "oil cabinet"),)
    assert layout.furniture[0].size == (1200, 850)
    mirror, morning, night = layout.pieces
    assert mirror == Piece(
        name="Mirror",
        slug="mirror",
        size=mirror.size,
        weight_kg=9.5,
        hang=Hanging(Hanger.CLEAT, 45, -12, None, 10, 600, 150, at(19, 11)),
        position=Position("oil cabinet", 180, None, None, None, None, None, None, at(20, 12)),
        at=at(16, 5),
    )
    assert mirror.size == (800, 600)
    assert (morning.hang, morning.weight_kg, morning.position, morning.at) == (
        None,
        None,
        None,
        at(21, 5),
    )
    assert night.hang == Hanging(Hanger.D_RINGS, 30, None, 100, 0, None, None, at(25, 11))
    assert layout.groups == (
        Group(
            name="the watches",
            members=("Morning watch", "Night watch"),
            arrange=Arrangement.COLUMN,
            gap_mm=60,
            align=Align.LEFT,
            position=Position(None, 177.8, 4800, None, None, None, None, 2000, at(27, 5)),
            at=at(27, 5),
        ),
    )


def test_what_is_assumed_where_nothing_is_said() -> None:
    layout = read_sound(
        "title: Hall\nwall: {width: 3 m, height: 2.5 m}\npieces:\n"
        "  - {name: Gull, size: 20 x 30 cm}\n  - {name: Kelp, size: 20 x 30 cm}\n"
        "groups:\n  - {name: one, pieces: [Kelp], arrange: row}\n"
    )
    assert layout.margins == Margins(6.35, 6.35, 6.35, 12.7)
    assert (layout.lap_mm, layout.eye_line_mm) == (10, 1524)  # 60 in
    assert layout.datum == Datum(1524, None)
    assert (layout.for_whom, layout.from_whom, layout.contact, layout.issue) == (None,) * 4
    assert layout.furniture == ()
    # 7 in and 3 in; a piece without a place is known by its own.
    assert layout.pieces[0].position == Position(
        None, 177.8, None, None, None, None, None, None, at(4, 5)
    )
    assert (layout.groups[0].gap_mm, layout.groups[0].align) == (76.2, Align.CENTRE)


@pytest.mark.parametrize(
    ("width", "unit", "paper"),
    [("9 ft 10 in", Unit.INCH, "letter"), ("10'", Unit.INCH, "letter"), ("3 m", Unit.MILLIMETRE, "a4")],
)
def test_without_units_the_walls_width_tells_the_system(width: str, unit: Unit, paper: str) -> None:
    text = f"title: Hall\nwall: {{width: {width}, height: 2.5 m}}\n"
    text += "pieces: [{name: Gull, size: 2 x 3 cm}]\n"
    layout = read_sound(text)
    assert (layout.units, layout.paper) == (unit, PAPERS[paper])


def test_one_margin_serves_all_sides() -> None:
    assert read_sound(SMALL.replace("units: in", "units: in\nmargin: 1/2")).margins == Margins(
        *[12.7] * 4
    )


def test_an_alias_may_repeat_hardware() -> None:
    text = SMALL.replace("hang: {by: nail", "hang: &nail {by: nail")
    layout = read_sound(text.replace("size: 20 x 16", "size: 20 x 16, hang: *nail"))
    assert layout.pieces[2].hang == layout.pieces[0].hang


def test_all_faults_are_found_in_one_go() -> None:
    check_faults(
        """\
¦units: in
¦colour: red
lap: ¦60 mm
wall: {width: 12 ft, height: 8 ft, ¦width: 13 ft}
furniture:
  - {name: boot bench, left: ¦-30 in, width: 80 in, ¦heigth: 34 in}
pieces:
  - name: Tide chart
    size: ¦16 in
    hang: ¦{by: d-rings, drop: ¦3 furlongs}
  - {name: Kelp print, size: 16 x 20 in, hang: {by: ¦wires, drop: 3 in}}
  - {name: ¦kelp PRINT, size: 16 x 20 in, place: {left: 3, ¦right: 5}}
groups:
  - name: bench trio
    pieces: [Tide chart, ¦Kelp prnt]
    arrange: row
    align: ¦left
    above: ¦boot bnch
""",
        "the layout needs 'title' => add for example 'title: Lamp room corridor'",
        "'colour' is not a key of the layout => use title, units, paper, margin, lap, eye_line, datum,"
        " for, from, contact, issue, region, font, wall, furniture, openings, fixtures, hardware,"
        " pieces, groups, rules or accept",
        "'lap' must be at most 50 mm, but is '60 mm' => check the number and its unit",
        "'width' is given twice, first in line 4 => keep one of the two",
        "'left' must not be negative, but is '-30 in' => check the number and its unit",
        "'heigth' is not a key of furniture 'boot bench' (did you mean 'height'?)"
        " => use name, left, width, height or kind",
        "'size' needs a width and a height, but '16 in' is not a width and a height"
        " => write for example 16 x 20 in",
        "'hang' by d-rings needs 'apart' => add for example 'apart: 12 in'",
        "'drop' needs a length, but '3 furlongs' has the unknown unit 'furlongs'"
        " => use in, ft, cm, mm or m",
        "'by' is 'wires', which is not a way to hang (did you mean 'wire'?)"
        " => use wire, d-rings, keyholes, sawtooth, nail, cleat, rail or strips",
        "'name' is 'kelp PRINT', but another piece is called 'Kelp print' already"
        " => give each a name of its own",
        "'right' does not apply beside 'left', which decides the same direction"
        " => keep one of left, centre and right",
        "'pieces' names 'Kelp prnt', which is not in this layout (did you mean 'Kelp print'?)"
        " => mend the name, or add the piece",
        "'align' is 'left', which does not suit a row => use top, centre or bottom",
        "'above' names 'boot bnch', which is not in this layout (did you mean 'boot bench'?)"
        " => mend the name, or add it under 'furniture'",
    )


ALL = ["Cliff path", "Tide clock", "Harbour"]


@pytest.mark.parametrize(
    ("old", "new", "furniture", "pieces", "groups"),
    [
        ("units: in", "units: in\nlap: -1", 1, ALL, 1),
        ("title: Front room\n", "", 1, ALL, 1),
        ("size: 10 x 10", "size: 0", 1, ["Cliff path", "Harbour"], 1),
        # A group goes with any of its pieces or the furniture below, and its other pieces go too.
        ("size: 16 x 16", "size: 0", 1, ["Tide clock"], 0),
        ("drop: 1/2", "drop: -1", 1, ["Tide clock"], 0),
        ("width: 60", "width: 0", 0, ["Tide clock"], 0),
        ("left: 100", "above: lamp", 1, ["Cliff path", "Harbour"], 1),
        ("arrange: row", "arrange: heap", 1, ["Tide clock"], 0),
        ("  - {name: Tide clock", "  - oops\n  - {name: Tide clock", 1, ALL, 1),
    ],
)
def test_with_faults_the_sound_part_is_kept(
    old: str, new: str, furniture: int, pieces: list[str], groups: int
) -> None:
    assert SMALL.count(old) == 1
    reading = read_layout(SMALL.replace(old, new), "hall.yaml")
    assert reading.faults
    assert reading.layout is not None
    assert [piece.name for piece in reading.layout.pieces] == pieces
    assert (len(reading.layout.furniture), len(reading.layout.groups)) == (furniture, groups)


def test_places_in_the_sound_part_are_those_of_the_file() -> None:
    layout = read_layout(SMALL.replace("size: 16 x 16", "size: 0"), "hall.yaml").layout
    assert layout is not None
    (clock,) = layout.pieces
    assert clock.at == at(8, 5)
    assert clock.position is not None
    assert clock.position.left_mm == 2540
    assert SMALL.splitlines()[7][clock.position.at.column - 1 :].startswith("{left")


@pytest.mark.parametrize(
    ("old", "new"),
    [
        ("width: 12 ft", "width: 0"),
        ("wall: {width: 12 ft, height: 8 ft}\n", ""),
        ("units: in", "units: ell"),
        ("units: in", "units: in\neye_line: high"),
    ],
)
def test_without_the_core_there_is_no_layout(old: str, new: str) -> None:
    assert SMALL.count(old) == 1
    reading = read_layout(SMALL.replace(old, new), "hall.yaml")
    assert reading.layout is None
    assert len(reading.faults) == 1


def test_a_thousand_faults_are_all_shown() -> None:
    pieces = "".join(
        f"  - {{name: Shell {number}, size: 1 x 1, wieght: 1 lb}}\n" for number in range(1000)
    )
    names = ", ".join(f"Shall {number}" for number in range(1000))
    text = f"title: Hall\nunits: in\nwall: {{width: 9 ft, height: 8 ft}}\npieces:\n{pieces}"
    text += f"groups: [{{name: all, arrange: row, pieces: [{names}]}}]\n"
    assert len(read_layout(text, "hall.yaml").faults) == 2000


@pytest.mark.parametrize("path", SHIPPED, ids=lambda path: path.stem)
def test_shipped_layouts_are_sound(path: Path) -> None:
    assert read_sound(path.read_bytes()).title.startswith("Keeper's cottage, ")


def test_shipped_layouts_show_both_systems_and_every_hanger() -> None:
    layouts = [read_sound(path.read_bytes()) for path in SHIPPED]
    assert {layout.units.is_imperial for layout in layouts} == {True, False}
    assert max(len(layout.pieces) for layout in layouts) >= 9
    hangers = {piece.hang.by if piece.hang else None for layout in layouts for piece in layout.pieces}
    assert hangers == {*Hanger, None}
