import pytest

from templater.layout.model import Align, Arrangement, Hanger
from templater.lengths import Unit
from tests.layout.files import SMALL, change, check_faults, read_sound

CHECK = "check the number and its unit"
EXAMPLES = "write for example 23 5/8 in, 5' 7 1/2\", 60 cm or 304 mm"
EMPTY = "write one after the colon, or remove the key"


@pytest.mark.parametrize(
    ("old", "new", "message", "hint"),
    [
        ("width: 12 ft", "width: ¦0", "'width' must be more than 0, but is '0'", CHECK),
        ("width: 12 ft", "width: ¦-12 ft", "'width' must be more than 0, but is '-12 ft'", CHECK),
        ("width: 12 ft", "width: ¦.nan", "'width' needs a length, but '.nan' is not a length", EXAMPLES),
        (
            "width: 12 ft",
            "width: ¦10001 m",
            "'width' must be at most 10 km, but is '10001 m'",
            CHECK,
        ),
        (
            "width: 12 ft",
            "width: ¦[12 ft]",
            "'width' needs a length, but is a list",
            "write one value, for example 23 5/8 in",
        ),
        ("width: 12 ft", "width: ¦", "'width' has no value", EMPTY),
        ("left: 24", "left: ¦-1", "'left' must not be negative, but is '-1'", CHECK),
        (
            "left: 24",
            "left: ¦11 km",
            "'left' needs a length, but '11 km' has the unknown unit 'km'",
            "use in, ft, cm, mm or m",
        ),
        ("left: 24", "left: ¦10001 m", "'left' must be at most 10 km, but is '10001 m'", CHECK),
        ("width: 60", "width: ¦101 m", "'width' must be at most 100 m, but is '101 m'", CHECK),
        (
            "size: 16 x 16",
            "size: ¦16",
            "'size' needs a width and a height, but '16' is not a width and a height",
            "write for example 16 x 20 in",
        ),
        (
            "size: 16 x 16",
            "size: ¦{width: 16, height: 16}",
            "'size' needs a width and a height, but is a mapping",
            "write one value, for example 16 x 20 in",
        ),
        ("size: 16 x 16", "size: ¦0 x 16", "'size' must be more than 0, but is '0 x 16'", CHECK),
        (
            "size: 16 x 16",
            "size: ¦16 x 101 m",
            "'size' must be at most 100 m, but is '16 x 101 m'",
            CHECK,
        ),
        ("drop: 1/2", "drop: ¦-1/2", "'drop' must not be negative, but is '-1/2'", CHECK),
        (
            "drop: 1/2",
            "drop: ¦'2,5 cm'",
            "'drop' needs a length, but '2,5 cm' has a decimal comma",
            "write a point: 2.5 cm",
        ),
        (
            "drop: 1/2",
            "drop: 2, rise: ¦-101 m",
            "'rise' must be at least −100 m, but is '-101 m'",
            CHECK,
        ),
        (
            "size: 20 x 16",
            "size: 20 x 16, weight: ¦6",
            "'weight' needs a weight, but '6' is not a number with kg, g, lb or oz",
            "write for example 6 lb, 2 lb 3 oz, 2.7 kg or 900 g",
        ),
        (
            "size: 20 x 16",
            "size: 20 x 16, weight: ¦0 kg",
            "'weight' must be more than 0 and at most 10000 kg, but is '0 kg'",
            CHECK,
        ),
        (
            "arrange: row",
            "arrange: ¦roww",
            "'arrange' is 'roww', which is not an arrangement (did you mean 'row'?)",
            "use row, column, grid, cluster, stair, ledge, placed or any",
        ),
        (
            "by: nail",
            "by: ¦glue",
            "'by' is 'glue', which is not a way to hang",
            "use wire, d-rings, keyholes, sawtooth, nail, cleat, rail or strips",
        ),
        (
            "arrange: row",
            "arrange: row, align: ¦middle",
            "'align' is 'middle', which is not a way to align",
            "use top, centre, bottom, left or right",
        ),
        (
            "arrange: row",
            "arrange: row, align: ¦center",
            "'align' is 'center', which is not a way to align (did you mean 'centre'?)",
            "use top, centre, bottom, left or right",
        ),
        (
            "units: in",
            "units: ¦inches",
            "'units' is 'inches', which is not a unit of length",
            "use in, ft, cm, mm or m",
        ),
        (
            "units: in",
            "units: in\nlap: ¦51 mm",
            "'lap' must be at most 50 mm, but is '51 mm'",
            CHECK,
        ),
        ("units: in", "units: in\nmargin: ¦2", "'margin' must be at most 50 mm, but is '2'", CHECK),
        ("units: in", "units: in\nmargin: {top: ¦-1}", "'top' must not be negative, but is '-1'", CHECK),
        (
            "units: in",
            "units: in\npaper: ¦3 x 5",
            "'paper' needs a paper, but '3 x 5' is too small or too large for a paper",
            "the least is 125 x 165 mm, the longest side 5080 mm",
        ),
        ("Front room", "¦''", "'title' has no value", EMPTY),
        (
            "Front room",
            "¦" + "x" * 121,
            "'title' has 121 characters, more than 120",
            "shorten it",
        ),
        (
            "Front room",
            '¦"Front\\nroom"',
            "'title' has the character '\\n', which cannot be printed",
            "remove it",
        ),
        (
            "Front room",
            "¦Front\u202eroom",
            "'title' has the character '\\u202e', which cannot be printed",
            "remove it",
        ),
        ("Front room", "¦\u200d́", "'title' has nothing that can be seen", "write a word"),
        (
            "Front room",
            "¦[Front, room]",
            "'title' needs a text, but is a list",
            "write one value in its place",
        ),
        (
            "units: in",
            "units: in\nissue: ¦" + "x" * 25,
            "'issue' has 25 characters, more than 24",
            "shorten it",
        ),
    ],
)
def test_a_faulty_value_is_shown_at_its_place(old: str, new: str, message: str, hint: str) -> None:
    check_faults(change(old, new), f"{message} => {hint}")


def test_without_units_every_bare_number_is_faulty() -> None:
    text = "title: Hall\nwall: {width: 3 m, height: ¦250}\npieces:\n- {name: Gull, size: ¦20 x 30}\n"
    hint = ", or set 'units:' for the whole layout"
    check_faults(
        text,
        f"'height' needs a length, but '250' has no unit => write the unit, for example 250 in{hint}",
        "'size' needs a width and a height, but '20 x 30' has no unit"
        f" => write the unit, for example 20 x 30 in{hint}",
    )


@pytest.mark.parametrize(
    ("unit", "width_mm"), [("in", 304.8), ("ft", 3657.6), ("cm", 120), ("mm", 12), ("m", 12000)]
)
def test_a_bare_number_is_in_the_layouts_units(unit: str, width_mm: float) -> None:
    layout = read_sound(
        SMALL.replace("units: in", f"units: {unit}").replace("width: 12 ft", "width: 12")
    )
    assert layout.wall.size.width == width_mm
    assert layout.units is Unit(unit)


def test_ends_of_the_allowed_ranges_are_sound() -> None:
    text = SMALL.replace(
        "units: in",
        "units: in\nlap: 0\nmargin: {left: 50 mm, top: 0}\neye_line: 10 km".replace("10 km", "10000 m"),
    )
    text = text.replace("width: 12 ft", "width: 10000 m").replace("left: 24", "left: 0")
    text = text.replace("drop: 1/2", "drop: 0, rise: -100 m, offset: 0").replace(
        "20 x 16", "100 m x 1/64 in"
    )
    layout = read_sound(text.replace("above: window seat", "above: window seat, clearance: 0, gap: 0"))
    assert (layout.lap_mm, layout.margins.left, layout.margins.top, layout.eye_line_mm) == (
        0,
        50,
        0,
        1e7,
    )
    assert (layout.wall.size.width, layout.furniture[0].left_mm) == (1e7, 0)
    assert layout.pieces[2].size == (100_000, 25.4 / 64)
    position = layout.groups[0].position
    assert position is not None
    assert (layout.groups[0].gap_mm, position.clearance_mm) == (0, 0)


def test_every_choice_is_read() -> None:
    for hanger, rest in {
        "wire": "",
        "d-rings": ", apart: 3",
        "keyholes": ", apart: 3",
        "sawtooth": "",
        "nail": "",
    }.items():
        layout = read_sound(SMALL.replace("by: nail", f"by: {hanger}{rest}"))
        assert layout.pieces[0].hang is not None
        assert layout.pieces[0].hang.by is Hanger(hanger)
    layout = read_sound(SMALL.replace("arrange: row", "arrange: column, align: right"))
    assert (layout.groups[0].arrange, layout.groups[0].align) == (Arrangement.COLUMN, Align.RIGHT)


def test_texts_are_kept_composed_and_without_outer_spaces() -> None:
    layout = read_sound(SMALL.replace("Front room", "'  Cafe\u0301 \u2116 5 '"))
    assert layout.title == "Caf\u00e9 \u2116 5"
