from __future__ import annotations

import pytest

from tests.rules.plans import box, findings_of, hung, told, wall

CODE = "near-corner"


@pytest.mark.parametrize(
    ("left", "verdict", "figure", "mend", "end"),
    [
        # A wall of 200 in, a piece of 16 in: at least 3 in; common practice, no source.
        (3, "kept", "3 in", None, "left end"),
        (1, "broken", "1 in", "move right by 2 in (51 mm)", "left end"),
        (92, "kept", "92 in", None, "left end"),
        (181, "kept", "3 in", None, "right end"),
        (182, "broken", "2 in", "move left by 1 in (25 mm)", "right end"),
    ],
)
def test_both_ends(left: float, verdict: str, figure: str, mend: str | None, end: str) -> None:
    (found,) = findings_of(wall([hung("A", box(left, 50, 16, 20))]), CODE)
    assert told(found) == ("A", verdict, figure, mend)
    assert (found.other, found.band) == (end, "3 in or more")


def test_what_is_too_wide_to_be_moved_is_narrowed() -> None:
    # 200 - 195 = 5 in are free, 6 in are asked for.
    (found,) = findings_of(wall([hung("Chart", box(1, 50, 195, 20))]), CODE)
    assert told(found)[1:] == (
        "broken",
        "1 in",
        "narrow by 1 in (25 mm), to 194 in, in the middle of the wall",
    )


def test_a_wall_without_room_between_its_corners() -> None:
    assert findings_of(wall([hung("A", box(1, 50, 4, 4))], width=6), CODE) == []
