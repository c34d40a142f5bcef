"""Holes and loads of the shipped layouts, held against sums worked by hand."""

from __future__ import annotations

import pytest

from tests.conftest import KitMaker

INCH = 25.4


def _inches(*places: tuple[float, float]) -> list[tuple[float, float]]:
    return [(x * INCH, y * INCH) for x, y in places]


# Every hole, worked from the layout by hand: hole height = top edge - drop + rise.
HOLES: dict[str, dict[str, list[tuple[float, float]]]] = {
    "stair-hall": {
        # Bench trio: 16 x 3 + 3 x 2 = 54 in wide over a bench from 30 to 110, middle 70: left edges
        # 43, 62 and 81, middles 51, 70 and 89. Bottoms 34 + 7 = 41, tops 61.
        "tide-chart": _inches((51, 61 - 2.25 + 0.5)),
        "kelp-print": _inches((70 - 6, 61 - 3), (70 + 6, 61 - 3)),
        "gull-study": _inches((89, 61 - 0.625)),
        # Centre on the eye line, 60: top 60 + 4.5.
        "fog-bell": _inches((150, 64.5 - 0.5)),
    },
    "gallery-landing": {
        # Four seasons: 12 x 4 + 2.5 x 3 = 55.5 in over a chest from 40 to 124, middle 82: left edges
        # 54.25, 68.75, 83.25 and 97.75. Bottoms 36 + 7 = 43, tops 59.
        "harbour-in-winter": _inches((60.25, 59 - 2 + 0.375)),
        "harbour-in-spring": _inches((74.75, 59 - 2.125 + 0.375)),
        "harbour-in-summer": _inches((89.25, 59 - 1.875 + 0.375)),
        "harbour-in-autumn": _inches((103.75, 59 - 2 + 0.375)),
        # Signal flags: 16 x 3 + 3 x 2 = 54 in about 82: middles 63, 82 and 101; tops 62 + 12.
        "signal-flags-a-to-h": _inches((63 - 5.5, 74 - 2.5), (63 + 5.5, 74 - 2.5)),
        "signal-flags-i-to-r": _inches((82 - 5.5, 74 - 2.5), (82 + 5.5, 74 - 2.5)),
        "signal-flags-s-to-z": _inches((101 - 5.5, 74 - 2.5), (101 + 5.5, 74 - 2.5)),
        # The log: 8 x 3 + 3 x 2 = 30 in about the eye line: tops 75, 64 and 53.
        "keeper-s-log-page-1": _inches((150, 75 - 0.5)),
        "keeper-s-log-page-2": _inches((150, 64 - 0.5)),
        "keeper-s-log-page-3": _inches((150 + 0.125, 53 - 0.375)),
        "the-great-lens": _inches((190 - 13, 80 - 8 + 0.25), (190 + 13, 80 - 8 + 0.25)),
        "foghorn-section": _inches((221 - 7, 72 - 0.625), (221 + 7, 72 - 0.625)),
        "boat-bell": [],
    },
    "lamp-room-corridor": {
        # Over a cabinet from 400 to 1600 mm: bottom 850 + 180, top 1630; 600 / 150 + 1 = 5 screws.
        "brass-mirror": [(x, 1630 - 45 - 12) for x in (700, 850, 1000, 1150, 1300)],
        "shelf-print": [(2300 - 100, 1700 - 12), (2300 + 100, 1700 - 12)],
        "chart-of-the-sound": [(3700 - 550, 1850 - 90 + 8), (3700 + 550, 1850 - 90 + 8)],
        # A column of 200 + 60 + 200 = 460 mm about 1500: tops 1730 and 1470; middle 4800 + 125.
        "morning-watch": [(4925, 1730 - 14)],
        "night-watch": [(4925 - 5, 1470 - 14)],
        # Right edge 6200 - 400 = 5800, middle 5550.
        "storm-flag": [(5550, 1850 - 60 + 10)],
    },
}


@pytest.mark.parametrize("paper", ["a4", "letter", "roll 24 in"])
@pytest.mark.parametrize("stem", HOLES)
def test_every_hole_is_where_the_sums_put_it(shipped_kit: KitMaker, stem: str, paper: str) -> None:
    kit, expected = shipped_kit(stem, paper), HOLES[stem]
    told = {piece["slug"]: piece["holes"] for piece in kit.manifest["pieces"]}
    assert list(told) == list(expected)
    for slug, holes in expected.items():
        assert told[slug] == [pytest.approx(hole, abs=0.001) for hole in holes], slug


# Weight x 9.80665 / holes, worked by hand; 1 lb is 0.45359237 kg (international, exact).
@pytest.mark.parametrize(
    ("stem", "slug", "load"),
    [
        ("stair-hall", "tide-chart", "26.689"),  # 6 lb = 2.72155422 kg
        ("stair-hall", "kelp-print", ""),
        ("gallery-landing", "the-great-lens", "62.275"),  # 28 lb = 12.70058636 kg, two holes
        ("lamp-room-corridor", "brass-mirror", "18.633"),  # 9.5 kg, five screws
        ("lamp-room-corridor", "storm-flag", "31.381"),  # 3.2 kg
    ],
)
def test_a_hole_bears_its_share_of_the_weight(
    shipped_kit: KitMaker, stem: str, slug: str, load: str
) -> None:
    lines = (shipped_kit(stem, "a4").folder / "hooks.csv").read_text("utf-8").splitlines()
    rows = [line.split(",") for line in lines if line.startswith(f"{slug},")]
    assert {row[7] for row in rows} == {load}
