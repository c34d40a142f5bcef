"""What a layout says of the wall itself, of kinds of things and of regions."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from templater.layout.kinds import FIXTURE_KINDS, FURNITURE_KINDS
from templater.layout.model import Region, Surface
from tests.layout.files import SMALL, change, check_faults, read_sound

WALL = "wall: {width: 12 ft, height: 8 ft"
BOTH = "{first: 8 in, every: 16 in}, or [8 in, 24 in, 39 1/2 in]"


def with_wall(keys: str, text: str = SMALL) -> str:
    return change(WALL, f"{WALL}, {keys}", text)


def test_every_key_of_the_wall_arrives() -> None:
    keys = "surface: plaster and lath, board: 1/2, walkway: yes, earthquake: no, outside: yes"
    layout = read_sound(with_wall(f"studs: [8, 24, 39 1/2], {keys}"))
    wall = layout.wall
    assert (wall.surface, wall.board_mm) == (Surface.PLASTER, 12.7)
    assert wall.studs == pytest.approx((203.2, 609.6, 1003.3))  # 25.4 times 8, 24, 39.5
    assert (wall.is_walkway, wall.is_earthquake, wall.is_outside) == (True, False, True)


def test_what_is_not_told_is_not_known() -> None:
    layout = read_sound(SMALL)
    wall = layout.wall
    assert (wall.surface, wall.board_mm, wall.studs, layout.region) == (None, None, (), None)
    assert (wall.is_walkway, wall.is_earthquake, wall.is_outside) == (None, None, None)


@pytest.mark.parametrize(("word", "region"), [("us", Region.US), ("uk", Region.UK), ("eu", Region.EU)])
def test_a_region(word: str, region: Region) -> None:
    assert read_sound(change("units: in", f"units: in\nregion: {word}")).region is region


@pytest.mark.parametrize(
    ("studs", "inches"),
    [
        # A wall of 144 in.
        ("{first: 0, every: 16}", [0, 16, 32, 48, 64, 80, 96, 112, 128, 144]),
        ("{first: 8, every: 24}", [8, 32, 56, 80, 104, 128]),
        ("{first: 144, every: 24}", [144]),
        ("[144]", [144]),
    ],
)
def test_studs_from_the_first_to_the_walls_end(studs: str, inches: list[float]) -> None:
    wall = read_sound(with_wall(f"studs: {studs}")).wall
    assert wall.studs == pytest.approx([each * 25.4 for each in inches])


@given(st.integers(0, 144), st.integers(4, 60))
def test_spaced_studs_are_as_those_listed(first: int, every: int) -> None:
    spaced = read_sound(with_wall(f"studs: {{first: {first}, every: {every}}}")).wall.studs
    listed = read_sound(with_wall(f"studs: {list(range(first, 145, every))}")).wall.studs
    assert spaced == pytest.approx(listed)


@pytest.mark.parametrize(
    ("keys", "fault"),
    [
        (
            "studs: ¦16",
            "'studs' needs the first and the distance of studs, or a list of their centres, but is '16'"
            f" => write for example {BOTH}",
        ),
        ("studs: ¦[]", "'studs' has no stud in its list => list their centres, or remove the key"),
        (
            "studs: ¦[8, 24, 24]",
            "'studs' has a stud 3 that is not right of stud 2"
            " => list the centres from the wall's left end to its right end",
        ),
        (
            "studs: ¦[8, 145]",
            "'studs' has a stud past the wall's right end => measure from the wall's left end",
        ),
        (
            "studs: ¦[8, -1]",
            "'studs' must not be negative, but is '-1' => check the number and its unit",
        ),
        (
            "studs: ¦{first: 145, every: 16}",
            "'studs' starts past the wall's right end => give 'first' from the wall's left end",
        ),
        (
            "studs: ¦{first: 0, every: 1 mm}",  # 144 x 25.4 = 3657.6 mm
            "'studs' gives 3658 studs, more than 1000 => check 'every' and its unit",
        ),
        ("studs: ¦{first: 8}", "'studs' needs 'every' => add for example 'every: 16 in'"),
        ("studs: ¦{every: 8}", "'studs' needs 'first' => add for example 'first: 8 in'"),
        (
            "studs: {first: 8, every: 16, ¦last: 3}",
            "'last' is not a key of 'studs' => use first or every",
        ),
        (
            "surface: ¦drywal",
            "'surface' is 'drywal', which is not what a wall is faced with (did you mean 'drywall'?)"
            " => use drywall, plaster and lath, masonry, concrete, wood or panelling",
        ),
        ("walkway: ¦maybe", "'walkway' is 'maybe', which is not yes or no => use yes or no"),
        ("board: ¦0", "'board' must be more than 0, but is '0' => check the number and its unit"),
        (
            "board: ¦5 in",
            "'board' must be at most 100 mm, but is '5 in' => check the number and its unit",
        ),
        (
            "surface: masonry, ¦studs: [8]",
            "'studs' does not apply to a 'surface' of masonry => name what stands before it as the"
            " surface, for example drywall, or remove the key",
        ),
        (
            "surface: concrete, ¦board: 1/2",
            "'board' does not apply to a 'surface' of concrete => name what stands before it as the"
            " surface, for example drywall, or remove the key",
        ),
    ],
)
def test_faults_of_the_wall(keys: str, fault: str) -> None:
    check_faults(with_wall(keys), fault)


def test_studs_of_a_wall_whose_width_is_faulty_are_not_judged() -> None:
    check_faults(
        change(WALL, "wall: {width: ¦0, studs: {first: 900, every: 16}, height: 8 ft"),
        "'width' must be more than 0, but is '0' => check the number and its unit",
    )


def test_a_region_that_is_not_known() -> None:
    check_faults(
        change("units: in", "units: in\nregion: ¦fr"),
        "'region' is 'fr', which is not a region => use us, uk or eu",
    )


def test_a_kind_is_given_or_else_the_name() -> None:
    assert read_sound(SMALL).furniture[0].kind == "window seat"
    assert read_sound(change("height: 20}", "height: 20, kind: bed}")).furniture[0].kind == "bed"


@pytest.mark.parametrize("kind", FURNITURE_KINDS)
def test_every_kind_of_furniture(kind: str) -> None:
    text = change("height: 20}", f"height: 20, kind: {kind}}}")
    assert read_sound(text).furniture[0].kind == kind


@pytest.mark.parametrize("kind", FIXTURE_KINDS)
def test_every_kind_of_fixture(kind: str) -> None:
    fixture = f"{{name: thing, kind: {kind}, left: 140, top: 20, width: 2, height: 2}}"
    text = change("pieces:\n", f"fixtures: [{fixture}]\npieces:\n")
    assert read_sound(text).fixtures[0].kind == kind


def test_kinds_that_are_misspelt() -> None:
    check_faults(
        change("height: 20}", "height: 20, kind: ¦bad}"),
        "'kind' is 'bad', which is not a kind of furniture (did you mean 'bed'?)"
        f" => use {', '.join(FURNITURE_KINDS[:-1])} or other",
    )
    fixture = "{name: thing, kind: ¦sokcet, left: 140, top: 20, width: 2, height: 2}"
    check_faults(
        change("pieces:\n", f"fixtures: [{fixture}]\npieces:\n"),
        "'kind' is 'sokcet', which is not a kind of fixture (did you mean 'socket'?)"
        f" => use {', '.join(FIXTURE_KINDS[:-1])} or other",
    )


def test_how_long_a_hooks_nail_is() -> None:
    hook = "hardware: [{name: brass hook, length: 1 3/4}]\npieces:\n"
    text = change("pieces:\n", hook).replace("drop: 1/2}", "drop: 1/2, hook: brass hook}")
    hang = read_sound(text).pieces[0].hang
    assert hang is not None
    assert hang.hook is not None
    assert hang.hook.length_mm == pytest.approx(44.45)  # 1.75 x 25.4
