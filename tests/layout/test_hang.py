"""How a piece hangs, as the reader has it: every key of ``hang`` and of ``hardware``."""

from __future__ import annotations

from dataclasses import replace

import pytest

from templater.layout.model import Hanger, Hanging, Hardware, Ring, Rings
from tests.layout.files import SMALL, change, check_faults, read_sound

HANG = "{by: nail, drop: 1/2}"
INCH = 25.4
HOOKS = """\
hardware:
  - {name: brass hook, rise: 1/2, rating: 30 lb, holes: 1, needs: a nail}
  - {name: Wide hook, holes: 2}
"""


def hang_of(text: str) -> Hanging:
    """What the first piece hangs by, its place in the file aside."""
    hang = read_sound(text).pieces[0].hang
    assert hang is not None
    return hang


def plain(by: Hanger, drop: float | None, **measures: object) -> dict[str, object]:
    """What of a hanging matters here, in mm."""
    return {"by": by, "drop_mm": drop, **measures}


def rings(left: tuple[float, float], right: tuple[float, float]) -> Rings:
    """Two rings, mm."""
    return Rings(Ring(*left), Ring(*right))


@pytest.mark.parametrize(
    ("written", "measures"),
    [
        (
            "{by: wire, hooks: 2, spread: 8, rings: {apart: 300 mm, below_top: 150 mm}, wire: 14}",
            plain(
                Hanger.WIRE,
                None,
                hooks=2,
                spread_mm=8 * INCH,
                rings=rings((150, 150), (150, 150)),
                wire_mm=14 * INCH,
            ),
        ),
        (
            "{by: wire, drop: 2, rings: {apart: 300 mm, below_top: 150 mm}, measured_at: 1}",
            plain(Hanger.WIRE, 2 * INCH, rings=rings((150, 150), (150, 150)), measured_at=1, hooks=1),
        ),
        (
            "{by: wire, wire: 14, balance: -1/2, rings: {left: {from_middle: 6 cm, below_top: 5 cm},"
            " right: {from_middle: 5 cm, below_top: 4 cm}}}",
            plain(
                Hanger.WIRE,
                None,
                wire_mm=14 * INCH,
                balance_mm=-INCH / 2,
                rings=rings((60, 50), (50, 40)),
            ),
        ),
        (
            "{by: d-rings, drop: 3, apart: 12, balance: {right: 1, below_top: 9},"
            " lock: {below_top: 15}}",
            plain(
                Hanger.D_RINGS,
                3 * INCH,
                apart_mm=12 * INCH,
                balance_mm=INCH,
                balance_below_mm=9 * INCH,
                lock_below_mm=15 * INCH,
            ),
        ),
        ("{by: sawtooth, drop: 1/2, teeth: 1/8}", plain(Hanger.SAWTOOTH, INCH / 2, teeth_mm=INCH / 8)),
        (
            "{by: rail, height: 90, drop: 2, cords: 2, apart: 10}",
            plain(Hanger.RAIL, 2 * INCH, rail_mm=90 * INCH, cords=2, apart_mm=10 * INCH),
        ),
        (
            "{by: rail, height: 90, drop: 2}",
            plain(Hanger.RAIL, 2 * INCH, rail_mm=90 * INCH, cords=1, apart_mm=None),
        ),
        (
            "{by: strips, rating: 2 kg, each: strip}",
            plain(Hanger.STRIPS, None, strip_rating_kg=2.0, strip_each="strip"),
        ),
        ("{by: strips, rating: 2 kg}", plain(Hanger.STRIPS, None, strip_each="pair")),
        (
            "{by: cleat, drop: 3, width: 14, on: studs}",
            plain(Hanger.CLEAT, 3 * INCH, width_mm=14 * INCH, every_mm=None, on_studs=True),
        ),
        (
            "{by: cleat, drop: 3, width: 14, every: 4}",
            plain(Hanger.CLEAT, 3 * INCH, every_mm=4 * INCH, on_studs=False),
        ),
    ],
)
def test_every_way_to_hang(written: str, measures: dict[str, object]) -> None:
    hang = hang_of(change(HANG, written))
    for name, value in measures.items():
        found = getattr(hang, name)
        assert found == pytest.approx(value) if isinstance(value, float) else found == value, name


def test_a_hook_is_named_once() -> None:
    text = change(HANG, "{by: nail, drop: 1/2, hook: BRASS hook}", HOOKS + SMALL)
    hang = hang_of(text)
    hook = hang.hook
    assert hook is not None
    assert hook.rating_kg == pytest.approx(30 * 0.45359237)
    assert replace(hook, at=hang.at, rating_kg=None) == Hardware(
        "brass hook", 0.5 * INCH, None, 1, "a nail", hang.at
    )
    assert hook.at.line == 2
    assert hang.rise_mm == 0.5 * INCH


def test_a_hook_without_a_rise_leaves_it_to_the_piece() -> None:
    hang = hang_of(change(HANG, "{by: nail, drop: 1/2, hook: wide hook}", HOOKS + SMALL))
    assert hang.rise_mm is None
    hang = hang_of(change(HANG, "{by: nail, drop: 1/2, hook: wide hook, rise: 1}", HOOKS + SMALL))
    assert hang.rise_mm == INCH


NEEDS_DROP = "needs 'drop' => add for example 'drop: 2 1/4 in'"
RINGS = "{apart: 12, below_top: 6}"


@pytest.mark.parametrize(
    ("written", "faults"),
    [
        ("¦{by: wire}", [f"'hang' by wire {NEEDS_DROP}"]),
        ("¦{by: sawtooth}", [f"'hang' by sawtooth {NEEDS_DROP}"]),
        (
            "{by: wire, ¦wire: 14}",
            [
                "'wire' does not apply without 'rings'"
                " => add for example 'rings: {apart: 12 in, below_top: 6 in}'"
            ],
        ),
        (
            f"¦{{by: wire, rings: {RINGS}}}",
            [
                "'hang' by wire with 'rings' needs 'drop' or 'wire'"
                " => add for example 'wire: 14 in', its length from ring to ring"
            ],
        ),
        (
            f"{{by: wire, rings: {RINGS}, drop: 2, ¦wire: 14}}",
            [
                "'wire' does not apply beside 'drop', from which its length follows"
                " => keep the one that you measured"
            ],
        ),
        (
            f"{{by: wire, rings: {RINGS}, drop: 2, ¦offset: 1}}",
            [
                "'offset' does not apply beside 'rings' => say where each ring is:"
                " 'left: {from_middle: 10 in, below_top: 6 in}', and 'right'"
            ],
        ),
        (
            "¦{by: wire, drop: 2, hooks: 2}",
            ["'hooks: 2' needs 'spread' => add for example 'spread: 8 in'"],
        ),
        (
            "{by: wire, drop: 2, ¦spread: 8}",
            ["'spread' does not apply without 'hooks: 2' => add 'hooks: 2', or remove it"],
        ),
        (
            "{by: wire, drop: 2, hooks: ¦3}",
            ["'hooks' is '3', which is not one or two => use 1 or 2"],
        ),
        (
            f"{{by: wire, drop: 2, rings: {RINGS}, measured_at: ¦2}}",
            ["'measured_at' is 2, but it hangs on one hook => add 'hooks: 2', or measure at one hook"],
        ),
        (
            f"{{by: wire, wire: 14, rings: {RINGS}, ¦measured_at: 1}}",
            ["'measured_at' does not apply without 'drop' => remove it"],
        ),
        (
            "{by: wire, drop: 2, ¦measured_at: 1, ¦balance: 1}",
            [
                "'measured_at' does not apply without 'rings'"
                " => add for example 'rings: {apart: 12 in, below_top: 6 in}'",
                "'balance' does not apply without 'rings'"
                " => add for example 'rings: {apart: 12 in, below_top: 6 in}'",
            ],
        ),
        (
            "{by: wire, wire: 14, rings: ¦{apart: 12}}",
            ["'rings' needs 'below_top' => add for example 'below_top: 6 in'"],
        ),
        (
            "{by: wire, wire: 14, rings: ¦{left: {from_middle: 6, below_top: 5}, ¦apart: 12}}",
            [
                "'rings' needs 'right'"
                " => add for example 'right: {from_middle: 10 in, below_top: 6 in}'",
                "'apart' does not apply beside 'left' and 'right' => remove it",
            ],
        ),
        (
            "{by: wire, wire: 14, rings: {left: ¦{from_middle: 6},"
            " right: {from_middle: 5, ¦belowtop: 5}}}",
            [
                "'left' needs 'below_top' => add for example 'below_top: 6 in'",
                "'belowtop' is not a key of 'right' (did you mean 'below_top'?)"
                " => use from_middle or below_top",
            ],
        ),
        (
            "{by: wire, wire: 14, rings: ¦12}",
            [
                "'rings' needs keys and values, but is '12'"
                " => write for example 'rings: {apart: 12 in, below_top: 6 in}'"
            ],
        ),
        (
            f"{{by: wire, wire: 14, rings: {RINGS}, balance: ¦heavy}}",
            ["'balance' needs a length, but 'heavy' is not a length => LENGTHS"],
        ),
        (
            "{by: d-rings, drop: 3, apart: 12, ¦hooks: 2, ¦each: pair}",
            [
                "'hooks' does not apply to 'hang' by d-rings => remove it: it belongs to wire",
                "'each' does not apply to 'hang' by d-rings => remove it: it belongs to strips",
            ],
        ),
        (
            "{by: cleat, drop: 3, width: 14, on: studs, ¦every: 4}",
            [
                "'every' does not apply beside 'on', which says where the screws go"
                " => keep one of the two"
            ],
        ),
        (
            "{by: cleat, drop: 3, width: 14, on: ¦stud}",
            [
                "'on' is 'stud', which is not what a cleat can be screwed to (did you mean 'studs'?)"
                " => use studs"
            ],
        ),
        (
            "¦{by: rail, drop: 3, cords: 2, height: 90}",
            ["'cords: 2' needs 'apart' => add for example 'apart: 12 in'"],
        ),
        (
            "{by: rail, drop: 3, ¦apart: 9, height: 90}",
            ["'apart' does not apply without 'cords: 2' => add 'cords: 2', or remove it"],
        ),
        (
            "¦{by: rail}",
            [
                "'hang' by rail needs 'drop' => add for example 'drop: 2 1/4 in'",
            ],
        ),
        (
            "¦{by: strips, ¦drop: 3, ¦rise: 1}",
            [
                "'hang' by strips needs 'rating' => add for example 'rating: 4 lb'",
                "'drop' does not apply to 'hang' by strips => remove it: it belongs to wire, d-rings,"
                " keyholes, sawtooth, nail, cleat and rail",
                "'rise' does not apply to 'hang' by strips => remove it: it belongs to wire, d-rings,"
                " keyholes, sawtooth, nail and cleat",
            ],
        ),
        (
            "{by: nail, ¦dorp: 1/2}",
            ["'dorp' is not a key of 'hang' (did you mean 'drop'?) => KEYS"],
        ),
        (
            "{by: nail, drop: 1/2, hook: ¦bras hook}",
            [
                "'hook' names 'bras hook', which is not in this layout"
                " => mend the name, or add it under 'hardware'"
            ],
        ),
    ],
)
def test_keys_of_a_hanger_that_do_not_go_together(written: str, faults: list[str]) -> None:
    keys = (
        "use by, drop, rise, apart, offset, width, every, on, hooks, spread, rings, wire, measured_at,"
        " balance, teeth, height, cords, rating, each, lock or hook"
    )
    lengths = "write for example 23 5/8 in, 5' 7 1/2\", 60 cm or 304 mm"
    told = [fault.replace("KEYS", keys).replace("LENGTHS", lengths) for fault in faults]
    if written == "¦{by: rail}":
        told.append("'hang' by rail needs 'height' => add for example 'height: 90 in'")
        written = "¦¦{by: rail}"
    check_faults(change(HANG, written), *told)


@pytest.mark.parametrize(
    ("old", "new", "faults"),
    [
        (
            HANG,
            "{by: nail, drop: 1/2, hook: ¦bras hook}",
            [
                "'hook' names 'bras hook', which is not in this layout (did you mean 'brass hook'?)"
                " => mend the name, or add it under 'hardware'"
            ],
        ),
        (
            HANG,
            "{by: nail, drop: 1/2, hook: brass hook, ¦rise: 1}",
            ["'rise' does not apply beside 'hook': 'brass hook' has its own => keep one of the two"],
        ),
        (
            "name: Wide hook",
            "name: ¦Brass Hook",
            [
                "'name' is 'Brass Hook', but other hardware is called 'brass hook' already"
                " => give each a name of its own"
            ],
        ),
        (
            "rating: 30 lb",
            "rating: ¦30 in",
            ["'rating' needs a weight, but '30 in' is not a number with kg, g, lb or oz => WEIGHTS"],
        ),
        (
            "holes: 2",
            "¦hole: 2",
            [
                "'hole' is not a key of hardware 'Wide hook' (did you mean 'holes'?)"
                " => use name, rise, rating, holes, needs or length"
            ],
        ),
    ],
)
def test_faults_of_hardware(old: str, new: str, faults: list[str]) -> None:
    weights = "write for example 6 lb, 2 lb 3 oz, 2.7 kg or 900 g"
    told = [fault.replace("WEIGHTS", weights) for fault in faults]
    check_faults(change(old, new, HOOKS + SMALL), *told)
