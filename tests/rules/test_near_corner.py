from __future__ import annotations

import pytest

from tests.rules.plans import box, findings_of, hung, told, wall

CODE = "near-corner"


@pytest.mark.parametrize(
    ("left", "verdict", "figure", "mend", "end"),
    [
        # A wall of 200 in, a piece of 16 in: at least 4 in; common practice, no source.
        (4, "kept", "4 in", None, "left end"),
        (1, "broken", "1 in", "move right by 3 in (76 mm)", "left end"),
        (92, "kept", "92 in", None, "left end"),
        (180, "kept", "4 in", None, "right end"),
        (182, "broken", "2 in", "move left by 2 in (51 mm)", "right end"),
    ],
)
def test_both_ends(left: float, verdict: str, figure: str, mend: str | None, end: str) -> None:
    (found,) = findings_of(wall([hung("A", box(left, 50, 16, 20))]), CODE)
    assert told(found) == ("A", verdict, figure, mend)
    assert (found.other, found.band) == (end, "4 in or more")


def test_what_is_too_wide_to_be_moved_is_narrowed() -> None:
    # 200 - 195 = 5 in are free, 8 in are asked for.
    (found,) = findings_of(wall([hung("Chart", box(1, 50, 195, 20))]), CODE)
    assert told(found)[1:] == (
        "broken",
        "1 in",
        "narrow by 3 in (76 mm), to 192 in, in the middle of the wall",
    )


def test_a_wall_without_room_between_its_corners() -> None:
    assert findings_of(wall([hung("A", box(2, 50, 4, 4))], width=8), CODE) == []
