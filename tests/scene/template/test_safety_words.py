from __future__ import annotations

from dataclasses import replace

from templater.layout.model import Hanger, Hanging, Piece, Surface
from templater.placement.model import Plan
from templater.rules.hole_notes import describe_holes
from templater.scene.template.blocks import Block
from templater.scene.template.labels import Note
from templater.scene.template.safety_words import SafetyWords
from tests.builders import inches
from tests.rules.fasteners.walls import POUND, by, hook, hung_at, only, wall_of

AT = 1000.0


def rows(block: Block) -> list[str]:
    return [row.text for row in block.rows]


def told(note: Note) -> str:
    """The widest block of a note as one line."""
    return " ".join(rows(note.blocks[0]))


def words(plan: Plan, width: float = 1e6) -> SafetyWords:
    """The words of the one piece, on sheets so many mm wide."""
    return SafetyWords(only(plan), plan, lambda point: int(point.x // width))


def holes(plan: Plan) -> list[str]:
    return [told(note) for note in words(plan).write_holes()]


def on_drywall(piece: Piece, *studs: float) -> Plan:
    return wall_of(piece, studs=studs, surface=Surface.DRYWALL)


def rail(cords: int, kg: float | None) -> Plan:
    """Hung from a rail at 90 in; the cord is tied 2 in below the top edge at 70 in: 22 in = 559 mm."""
    apart = inches(10) if cords == 2 else None
    hang = replace(by(Hanger.RAIL, apart=apart), rail_mm=inches(90), cords=cords)
    return wall_of(hung_at(inches(50), hang, kg))


def test_a_hole_tells_load_hook_and_wall() -> None:
    # 15 lb = 6.804 kg = 66.72 N, rounded up; twice that 30 lb.
    plan = on_drywall(hung_at(AT, by(Hanger.NAIL, hook=hook(30 * POUND)), 15 * POUND), AT)
    assert holes(plan) == [
        "HOLE 1: hook and load load 15.0 lb (66.8 N) brass hook, rated 30 lb: enough behind it: stud"
    ]


def test_without_a_hook_a_kind_is_named() -> None:
    # 25 lb is over 9 kg; four times that 100 lb; 200 mm from the stud.
    plan = on_drywall(hung_at(AT, by(Hanger.NAIL), 25 * POUND), AT + 200)
    (text,) = holes(plan)
    assert "hollow-wall anchor, rated 100 lb or more" in text
    assert text.endswith("behind it: hollow")


def test_a_weight_that_is_not_given_is_never_passed() -> None:
    (text,) = holes(wall_of(hung_at(AT, by(Hanger.NAIL), None)))
    assert text == ("HOLE 1: hook and load weight not given: not checked behind it: not checked")


def test_holes_that_are_alike_are_told_once() -> None:
    pair = by(Hanger.D_RINGS, apart=400.0)
    assert len(holes(on_drywall(hung_at(AT, pair, 4.0), 800.0, 1200.0))) == 1
    apart = holes(on_drywall(hung_at(AT, pair, 4.0), 800.0))
    assert [text.split(":")[0] for text in apart] == ["HOLE 1", "HOLE 2"]


def test_cautions_are_told_in_full_or_counted() -> None:
    # 20 mm from the stud's centre: doubtful.
    plan = on_drywall(hung_at(AT, by(Hanger.NAIL), 4.0), AT + 20)
    (note,) = words(plan).write_holes()
    (caution,) = describe_holes(plan)[only(plan).slug, 1].cautions
    assert f"! {caution}" in told(note)
    assert "! 1 caution: see the overview" in " ".join(rows(note.blocks[-1]))


def test_a_weak_hook_is_a_caution_said_once() -> None:
    plan = on_drywall(hung_at(AT, by(Hanger.NAIL, hook=hook(10 * POUND)), 8 * POUND), AT)
    (text,) = holes(plan)
    assert text.count("asked for") == 1
    assert "! rated 10 lb, 16.0 lb asked for: use a stronger hook, or two" in text


def test_a_rail_tells_where_its_hooks_are_and_how_long_the_cords() -> None:
    plan = rail(2, 9 * POUND)
    (note,) = words(plan).write_supports()
    # Tied 10 in apart about 50 in: 45 and 55 in = 1143 and 1397 mm; 4.5 lb = 20.02 N each, up.
    assert told(note) == (
        "NO HOLE"
        " rail hook 1, from the wall's left end: 45 in (1143 mm)"
        " rail hook 2, from the wall's left end: 55 in (1397 mm)"
        " rail hook, above the floor: 90 in (2286 mm)"
        " each cord, from its hook down to the piece: 22 in (559 mm)"
        " load on a hook: 4.5 lb (20.1 N)"
    )


def test_a_rail_without_a_weight_says_so() -> None:
    plan = rail(1, None)
    (note,) = words(plan).write_supports()
    assert "rail hook, from the wall's left end: 50 in (1270 mm)" in told(note)
    assert told(note).endswith("weight not given: not checked")


def strips(kg: float | None, rating_kg: float = 4 * POUND) -> str:
    hang: Hanging = replace(by(Hanger.STRIPS), drop_mm=None, strip_rating_kg=rating_kg)
    plan = wall_of(hung_at(AT, hang, kg))
    (note,) = words(plan).write_supports()
    return told(note)


def test_strips_are_told_by_their_number() -> None:
    # 6 lb x 2 / 4 lb = 3; 2 lb x 2 / 4 lb = 1.
    assert strips(6 * POUND) == "NO HOLE 3 pairs of adhesive strips, each rated 4 lb"
    assert strips(2 * POUND) == "NO HOLE 1 pair of adhesive strips, each rated 4 lb"
    # 12 oz are 3/4 lb: 3 lb x 2 / 0.75 lb = 8.
    assert strips(3 * POUND, 12 / 16 * POUND) == "NO HOLE 8 pairs of adhesive strips, each rated 0.75 lb"
    assert strips(None) == "NO HOLE adhesive strips: weight not given: not checked"


def test_a_heavy_piece_is_to_be_minded() -> None:
    plan = on_drywall(hung_at(AT, by(Hanger.NAIL), 30.0), AT)
    (note,) = words(plan).write_cautions()
    assert "get a licensed installer" in told(note)
    assert " ".join(rows(note.blocks[-1])) == "! MIND 2 cautions: see the overview"


def test_a_light_piece_has_nothing_to_mind() -> None:
    plan = on_drywall(hung_at(AT, by(Hanger.NAIL), 2.0), AT)
    assert list(words(plan).write_cautions()) == []
    assert list(words(plan).write_supports()) == []


def test_a_caution_is_told_on_every_sheet_with_a_hole_that_it_concerns() -> None:
    # Rings at 800 and 1200 mm, each 20 mm beside a stud.
    plan = on_drywall(hung_at(AT, by(Hanger.D_RINGS, apart=400.0), 4.0), 820.0, 1220.0)
    assert len(list(words(plan).write_holes())) == 1
    headings = [rows(note.blocks[0])[0] for note in words(plan, 203.0).write_holes()]
    assert headings == ["HOLE 1: hook and load", "HOLE 2: hook and load"]
