"""What pages say of themselves, and which way their words run."""

from __future__ import annotations

import pytest

from templater.geometry import Point
from templater.verify.check_sheet import check_reading
from templater.verify.model import Ink, Run
from templater.verify.own_words import check_order, check_revision, read_number

NAMES = {1: "cover", 2: "overview", 3: "gull, sheet A1"}


def _run(text: str, right: tuple[float, float] = (1, 0), up: tuple[float, float] = (0, 1)) -> Run:
    return Run(text, Point(10, 10), Point(*right), Point(*up), 3.5)


def test_pages_in_their_order() -> None:
    assert list(check_order([(1, 3), (2, 3), (3, 3)], NAMES)) == []


@pytest.mark.parametrize(
    ("found", "told"),
    [
        (
            [(1, 3), (3, 3), (2, 3)],
            [
                "page 3 (gull, sheet A1) stands where page 2 belongs",
                "page 2 (overview) stands where page 3 belongs",
            ],
        ),
        ([(1, 3), (3, 3)], ["page 2 (overview) is missing"]),
        ([(1, 3), (2, 3), (3, 3), (2, 3)], ["page 2 (overview) is there twice"]),
        (
            [(1, 3), (2, 3), (2, 3)],
            ["page 3 (gull, sheet A1) is missing", "page 2 (overview) is there twice"],
        ),
        (
            [(1, 3), None, (3, 3)],
            ["page 2 of the file does not bear its number", "page 2 (overview) is missing"],
        ),
        ([(1, 3), (2, 4), (3, 3)], ["page 2 of the file is of a kit of 4 pages, not of 3"]),
        ([(1, 3), (2, 3), (3, 3), (7, 3)], ["page 7 (unknown) stands where page 4 belongs"]),
        ([(1, 3), (2, 3), (3, 3), (7, 3), (7, 3)], ["page 7 (unknown) is there twice"]),
    ],
)
def test_pages_out_of_order(found: list[tuple[int, int] | None], told: list[str]) -> None:
    assert list(check_order(found, NAMES)) == told


def test_a_page_says_once_which_it_is_and_of_which_revision() -> None:
    one = Ink(runs=[_run("page 2 of 3"), _run("rev K7M2Q4"), _run("page 2 of 3")])
    assert read_number(one, "") == (2, 3)
    assert list(check_revision(one, "K7M2Q4", "")) == []
    assert read_number(Ink(runs=[_run("see page 2 of 3"), _run("page 2 of 3 or so")]), "") is None
    two = Ink(runs=[_run("page 2 of 3"), _run("page 3 of 3"), _run("rev K7M2Q4"), _run("rev ABCDEF")])
    assert read_number(two, "") is None
    told = "it bears the revision ABCDEF and K7M2Q4; this kit is K7M2Q4"
    assert list(check_revision(two, "K7M2Q4", "")) == [told]
    assert list(check_revision(Ink(), "K7M2Q4", "")) == [
        "it bears the revision none; this kit is K7M2Q4"
    ]


MIRRORED, TURNED = "it is mirrored", "it is turned"
UPSIDE_DOWN = "it is upside down as in a mirror: its y axis is turned"


@pytest.mark.parametrize(
    ("right", "up", "told"),
    [
        ((2, 0), (0, 2), []),
        ((0, 2), (-2, 0), []),  # upward
        ((-2, 0), (0, 2), [MIRRORED]),
        ((2, 0), (0, -2), [UPSIDE_DOWN]),
        ((0, 2), (2, 0), [MIRRORED]),
        ((-2, 0), (0, -2), [TURNED]),
        ((0, -2), (2, 0), [TURNED]),
        ((2, 0.01), (-0.01, 2), [TURNED]),  # a lean of 5 in 1000
        ((2, -0.01), (0.01, 2), [TURNED]),
        ((0.01, 2), (-2, 0.01), [TURNED]),
        ((-0.01, 2), (-2, -0.01), [TURNED]),
        ((0.003, 0), (0, -0.003), [UPSIDE_DOWN]),  # letters of a drawing, in thousandths of an em
        ((-0.003, 0), (0, 0.003), [MIRRORED]),
        ((2, 0.001), (-0.001, 2), []),
        ((-0.001, 2), (-2, -0.001), []),
    ],
)
def test_which_way_words_can_be_read(
    right: tuple[float, float], up: tuple[float, float], told: list[str]
) -> None:
    assert (
        list(check_reading(Ink(runs=[_run("UP"), _run("UP", right, up), _run("UP", right, up)]))) == told
    )
