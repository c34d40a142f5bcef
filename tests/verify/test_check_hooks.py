"""Tables of holes written by hand, held against the plan of one piece."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import pytest

from templater.verify.check_hooks import check_hooks
from templater.verify.model import UnreadableError
from tests.verify import gull

HEADER = "piece,hole,x_mm,y_mm,hang_x_mm,hang_y_mm,drop_mm,load_n"
# 2 kg on one hole: 2 x 9.80665 N = 19.613 N.
ROW = "gull,1,400.000,1480.000,400.000,1470.000,30.000,19.613"


def _table(tmp_path: Path, *lines: str) -> list[str]:
    path = tmp_path / "hooks.csv"
    path.write_text("".join(f"{line}\n" for line in lines), "utf-8")
    return list(check_hooks(path, gull.plan()))


@pytest.mark.parametrize(
    ("lines", "told"),
    [
        ([HEADER, ROW], []),
        ([HEADER, ROW.replace("400.000,1480", "400.0005,1480")], []),
        ([], ["its first line does not name the columns"]),
        ([ROW], ["its first line does not name the columns"]),
        ([HEADER], ["gull hole 1 is missing"]),
        ([HEADER, ROW, ROW], ["line 3 is of a hole that the plan does not have"]),
        ([HEADER.replace("piece", "a"), ROW], ["its first line does not name the columns"]),
        ([HEADER.replace("piece", "z"), ROW], ["its first line does not name the columns"]),
        ([HEADER, ROW.replace("gull", "auk")], ["line 2 is not that of gull hole 1"]),
        ([HEADER, ROW.replace("gull", "tern")], ["line 2 is not that of gull hole 1"]),
        ([HEADER, ROW.replace(",1,", ",2,")], ["line 2 is not that of gull hole 1"]),
        ([HEADER, f"{ROW},"], ["line 2 is not that of gull hole 1"]),
        ([HEADER, ROW.removesuffix(",19.613")], ["line 2 is not that of gull hole 1"]),
        (
            [HEADER, ROW.replace("30.000", "30.001")],
            ["gull hole 1: drop_mm is 30.001, the plan has 30.000"],
        ),
        (
            [HEADER, ROW.replace("400.000,1480.000", "399.999,1480.001")],
            [
                "gull hole 1: x_mm is 399.999, the plan has 400.000",
                "gull hole 1: y_mm is 1480.001, the plan has 1480.000",
            ],
        ),
        (
            [HEADER, ROW.replace("400.000,1470.000", "400.001,1469.999")],
            [
                "gull hole 1: hang_x_mm is 400.001, the plan has 400.000",
                "gull hole 1: hang_y_mm is 1469.999, the plan has 1470.000",
            ],
        ),
        (
            [HEADER, ROW.replace("19.613", "")],
            ["gull hole 1: load_n is nothing, the plan has 19.613"],
        ),
        (
            [HEADER, ROW.replace("30.000", "thirty")],
            ["gull hole 1: drop_mm is thirty, the plan has 30.000"],
        ),
    ],
)
def test_tables_of_holes(tmp_path: Path, lines: list[str], told: list[str]) -> None:
    assert _table(tmp_path, *lines) == told


def test_a_table_without_a_weight(tmp_path: Path) -> None:
    plan = gull.plan()
    (piece,) = plan.pieces
    marks = (replace(piece.marks[0], load_n=None),)
    light = replace(plan, pieces=(replace(piece, marks=marks),))
    path = tmp_path / "hooks.csv"
    for load, told in (("", []), ("0.000", ["gull hole 1: load_n is 0.000, the plan has nothing"])):
        path.write_text(f"{HEADER}\n{ROW.replace('19.613', load)}\n", "utf-8")
        assert list(check_hooks(path, light)) == told


def test_what_is_no_table(tmp_path: Path) -> None:
    path = tmp_path / "hooks.csv"
    path.write_bytes(b"\xff\xfe")
    with pytest.raises(UnreadableError, match="it is no table"):
        list(check_hooks(path, gull.plan()))
