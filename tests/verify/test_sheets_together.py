"""The smallest kit with two sheets for its piece, and with two pieces on one sheet."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import pytest

from templater.geometry import Box, Point
from templater.printing.model import Seam, Tile, Tiling
from tests.verify import gull
from tests.verify.small_kit import (
    A4,
    PAPER,
    RECORDS,
    check,
    draw_pages,
    draw_template,
    line,
    move,
    say_page,
    scale_record,
    words,
    write,
)

SEAM = Seam("A1", "A2", Point(60.0, 0.0), Point(60.0, 100.0))
TWO = (Tile("A1", Box(-10, -10, 80, 110), Box(-10, -10, 60, 110), PAPER, Point(40, 50)),
       Tile("A2", Box(60, -10, 210, 110), Box(60, -10, 210, 110), PAPER, Point(40, 50)))  # fmt: skip


def _sheet(name: str, join: float | None, *, number: int) -> list[str]:
    """A sheet with its seam, and half a join mark on its side of it."""
    tile = TWO[number]
    side, (x0, y0, x1, y1) = (-1 if name == "A1" else 1), tile.clip
    drawn = [row.replace("(A1)", f"({name})") for row in draw_template()]
    seam = [f"0.25 w [{'2 1' if name == 'A1' else ''}] 0 d", line(60, 0, 60, 100), "[] 0 d"]
    if join is not None:
        half = f"60 {join - 2.5} m {60 + 2.5 * side} {join} l 60 {join + 2.5} l S"
        seam += [half, line(60, join, 60 + 7 * side, join)]
    clipped = [f"q {x0} {y0} {x1 - x0} {y1 - y0} re W n", *drawn, "Q", *seam]
    return [*say_page(3 + number, 5), *move(Point(40.0, 50.0), iter(clipped))]


JOINS = "gull: the join marks of A1 and A2"


def _check_two(folder: Path, first: list[str], second: list[str]) -> list[str]:
    """What is said of the kit with these two sheets of the piece."""
    expected = replace(gull.expected(), tilings={"gull": Tiling(TWO, (SEAM,), ())})
    records = (
        *RECORDS[:2],
        gull.page(3, TWO[0].clip, "A1"),
        gull.page(4, TWO[1].clip, "A2"),
        replace(RECORDS[3], page=5),
    )
    one, two, _, four = (
        "\n".join(page).replace("of 4", "of 5").replace("page 4", "page 5") for page in draw_pages()
    )
    path = write(folder, [[one], [two], first, second, [four]], (A4, PAPER, PAPER, PAPER, A4))
    return list(check(path, records, expected).faults)


@pytest.mark.parametrize(
    ("first", "second", "told"),
    [
        (60.0, 60.0, []),
        (None, None, [f"{JOINS} are missing"]),
        (60.0, None, [f"{JOINS} differ in number: 1 and 0"]),
        (60.0, 60.02, [f"{JOINS} do not meet: they are 0.020 mm apart"]),
    ],
)
def test_the_join_marks_of_two_sheets(
    tmp_path: Path, first: float | None, second: float | None, told: list[str]
) -> None:
    sheets = _sheet("A1", first, number=0), _sheet("A2", second, number=1)
    assert _check_two(tmp_path, *sheets) == told


def test_of_a_sheet_that_does_not_hold_no_join_marks_are_told(tmp_path: Path) -> None:
    second = [row.replace("0 0 m 200 0 l", "0 1 m 200 1 l") for row in _sheet("A2", None, number=1)]
    assert _check_two(tmp_path, _sheet("A1", 60.0, number=0), second) == [
        "page 4 (gull, sheet A2): the outline's lower edge is 1.000 mm off"
    ]


def test_a_centre_line_may_be_left_out_where_the_other_sheet_shows_it(tmp_path: Path) -> None:
    # The first sheet shows 20 mm beyond the seam at 60 mm, the second one begins there.
    for start, told in ((80, []), (95, ["page 4 (gull, sheet A2): the level centre line is not drawn"])):
        second = [
            row.replace("0 50 m 200 50 l", f"{start} 50 m 200 50 l")
            for row in _sheet("A2", 60.0, number=1)
        ]
        assert _check_two(tmp_path, _sheet("A1", 60.0, number=0), second) == told


# --- a page that two pieces share -----------------------------------------------------------------

OUTLINE = Box(0.0, 0.0, 200.0, 100.0)


def _share(
    folder: Path, lower: str = "", *, at: float = 4.0, scale: tuple[float, float] = (1.0, 1.0)
) -> list[str]:
    """A second piece a metre to the right of the first; both stand on page 3, 102 mm apart."""
    expected = gull.expected()
    (first,) = expected.plan.pieces
    marks = tuple(mark.moved(1000.0, 0.0) for mark in first.marks)
    second = replace(first, name="Tern", slug="tern", box=first.box.moved(1000.0, 0.0), marks=marks)
    plan = replace(expected.plan, pieces=(first, second))
    tilings = {**expected.tilings, "tern": expected.tilings["gull"]}
    one, two, _, four = draw_pages()
    two += [line(99, 114, 101, 114), line(100, 113, 100, 115)]
    four += words("Tern", "1", "−70 mm", "1400 mm", x=20.0, y=150.0)
    shared = [
        *say_page(3),
        *move(Point(20.0, at), iter([lower or "\n".join(draw_template(has_rulers=False))])),
        *move(Point(20.0, 106.0), draw_template()),
    ]
    entries = (
        replace(gull.page(3, OUTLINE), origin=Point(20.0, 106.0)),
        replace(gull.page(3, OUTLINE, piece="tern"), origin=Point(20.0, at)),
    )
    path = write(folder, [one, two, shared, four], scale=scale)
    records = tuple(scale_record(each, scale) for each in (*RECORDS[:2], *entries, RECORDS[3]))
    return list(check(path, records, replace(expected, plan=plan, tilings=tilings)).faults)


def test_a_page_that_two_pieces_share(tmp_path: Path) -> None:
    page = "page 3 (gull, sheet A1 and tern, sheet A1): "
    assert _share(tmp_path) == []
    assert f"{page}gull and tern lie on each other" in _share(tmp_path, at=6.1)
    assert _share(tmp_path, at=6.0) == []
    assert _share(tmp_path, scale=(1.01, 0.99)) == []
    template = "\n".join(draw_template(has_rulers=False))
    off = template.replace("90 80 m 110 80 l", "90 80.02 m 110 80.02 l")
    told = f"{page}hole 1 is 0.020 mm off: +0.000 mm across, +0.020 mm up"
    assert _share(tmp_path, off) == [told]
    assert _share(tmp_path, template.replace("(A1)", "(A2)")) == [f"{page}it does not bear its name, A1"]
