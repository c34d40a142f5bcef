"""Words of level lines written by hand, held against holes whose heights are known."""

from __future__ import annotations

from dataclasses import replace

import pytest

from templater.geometry import Point, Size
from templater.verify.level_words import check_level_words
from templater.verify.model import Run
from templater.verify.template_marks import HoleMeasures, TemplateMarks

# Two holes whose hang points lie 1800 - 1600 = 200 mm above the datum, 10 mm under the holes, and the
# hole of a lock 200 mm below it.
UPPER = HoleMeasures(600.0, 1810.0, 210.0, 100.0, -10.0, 0.0)
LOCK = HoleMeasures(700.0, 1400.0, -200.0, 500.0, 0.0, 0.0)
HOLES = (Point(100.0, 510.0), Point(300.0, 510.0), Point(200.0, 100.0))
ONE = TemplateMarks(
    Size(400.0, 600.0), HOLES[:2], HOLES[:2], (UPPER, UPPER), (500.0,), None, (), "Hall\nTide chart"
)
TWO = replace(ONE, holes=HOLES, hangs=HOLES, measures=(UPPER, UPPER, LOCK), levels=(100.0, 500.0))


def _told(marks: TemplateMarks, *rows: str) -> list[str]:
    """What is told of a block of rows under each other."""
    runs = [
        Run(text, Point(20.0, 60.0 - 4.75 * number), Point(1, 0), Point(0, 1), 3.5)
        for number, text in enumerate(rows)
    ]
    return list(check_level_words(runs, marks))


@pytest.mark.parametrize(
    ("marks", "rows"),
    [
        (ONE, ("LEVEL LINE", "set it 200 mm (7 7/8 in) above the datum")),
        (ONE, ("LEVEL LINE (unbroken)", "set it 200 mm (7 7/8 in)", "above the datum")),
        (TWO, ("LEVEL LINE, holes 1,", "2 (unbroken)", "set it 200 mm (7 7/8 in) above the datum")),
        (TWO, ("LEVEL LINE, hole 3", "set it 200 mm (7 7/8 in) below the datum", "It runs")),
        (TWO, ("LEVEL LINE, hole 3",)),
        (
            replace(ONE, measures=(replace(UPPER, from_datum=10.0),) * 2),
            ("LEVEL LINE", "set it on the datum"),
        ),
        (
            replace(ONE, given="Hall\nLEVEL LINE set it on the datum"),
            ("LEVEL LINE", "set it on the datum"),
        ),
    ],
)
def test_what_is_true_passes(marks: TemplateMarks, rows: tuple[str, ...]) -> None:
    assert _told(marks, *rows) == []


@pytest.mark.parametrize(
    ("marks", "rows", "fault"),
    [
        (
            TWO,
            ("LEVEL LINE", "set it 200 mm (7 7/8 in) above the datum"),
            "a level line is not told by its holes, though there are several",
        ),
        *(  # spaced as a program that saved the file anew may have it
            (
                ONE,
                (heading, "set it 100 mm (3 15/16 in) above the datum"),
                "the level line of hole 1 is told to be set 100 mm (3 15/16 in) above,"
                " the plan has 200.0 mm",
            )
            for heading in (" LEVEL LINE", "LEVEL  LINE", "LEVEL\u00a0LINE")
        ),
        (
            TWO,
            ("LEVEL LINE, hole 3", "set it 200 mm (7 7/8 in) above the datum"),
            "the level line of hole 3 is told to be set 200 mm (7 7/8 in) above, the plan has -200.0 mm",
        ),
        (
            TWO,
            ("LEVEL LINE, holes 1, 3", "set it 200 mm (7 7/8 in) above the datum"),
            "the level line of hole 3 is told to be set 200 mm (7 7/8 in) above, the plan has -200.0 mm",
        ),
        (
            ONE,
            ("LEVEL LINE", "set it 210 mm (8 1/4 in) above the datum"),
            "the level line of hole 1 is told to be set 210 mm (8 1/4 in) above, the plan has 200.0 mm",
        ),
        (
            ONE,
            ("LEVEL LINE", "set it on the datum"),
            "the level line of hole 1 is told to be set on the datum, the plan has 200.0 mm",
        ),
        (
            TWO,
            ("LEVEL LINE, hole 4", "set it 200 mm (7 7/8 in) below the datum"),
            "it tells of hole 4, which the plan does not have",
        ),
    ],
)
def test_what_would_set_a_template_wrong_is_found(
    marks: TemplateMarks, rows: tuple[str, ...], fault: str
) -> None:
    assert _told(marks, *rows) == [fault]
