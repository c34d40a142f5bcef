"""A hole at a stud's edge, and a fastener that goes too deep into one."""

from __future__ import annotations

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from templater.layout.model import Surface
from templater.lengths import Unit
from templater.placement.model import Plan
from templater.rules.model import Verdict
from tests.builders import inches
from tests.rules.cautions.drilled import brief, drilled, metric_wall, told


def at_stud(*xs: float, length: float | None = None, board: float | None = None) -> Plan:
    """Holes beside a stud at 1000 mm; lengths in inches."""
    piece = drilled(*((x, 1400.0) for x in xs), length=None if length is None else inches(length))
    return replace(
        metric_wall(piece), studs=(1000.0,), board_mm=None if board is None else inches(board)
    )


@pytest.mark.parametrize(
    ("x", "figure"),
    [
        (1000, None),
        (1010, None),
        (1021, "21 mm from a stud's centre"),
        (970, "30 mm from a stud's centre"),
        (969, None),
    ],
)
def test_a_hole_at_a_studs_edge(x: float, figure: str | None) -> None:
    found = told(at_stud(x), "stud-edge")
    assert [brief(each) for each in found] == ([("caution", "hole 1", figure)] if figure else [])
    assert {each.band for each in found} <= {"up to 10 mm, or 30 mm and more"}


def test_where_no_stud_is_known_it_is_asked_once_a_piece() -> None:
    plan = metric_wall(drilled((100, 1400), (200, 1400)), drilled(name="Bell"))
    (found,) = told(plan, "stud-edge")
    assert (found.subject, found.verdict.value, found.other) == ("Tide chart", "not checked", None)
    assert found.mend == "add 'studs' to 'wall'"
    masonry = replace(plan, wall_surface=Surface.MASONRY)
    assert told(masonry, "stud-edge") == told(masonry, "deep-fastener") == []


@pytest.mark.parametrize(
    ("length", "verdict", "figure"),
    [
        # NEC 300.4(A)(1) (ecmweb.com, "Last nail and turn screw"): a bored hole at least 1 1/4 in
        # from the edge; through 1/2 in of board 1 3/4 in of screw get there.
        (1.0, "kept", "13 mm deep at most"),  # 0.5 in is 12.7 mm
        (1.75, "kept", "31 mm deep at most"),  # 31.75 mm, shown within what is asked for
        (1.8125, "caution", "33 mm deep in a stud"),
        (2.0, "caution", "38 mm deep in a stud"),
    ],
)
def test_how_deep_a_fastener_goes(length: float, verdict: str, figure: str) -> None:
    (found,) = told(at_stud(1000, length=length, board=0.5), "deep-fastener")
    assert (found.verdict.value, found.band) == (verdict, "at most 31 mm")
    assert found.because == "NEC 300.4(A)(1)"
    assert found.figure == figure


def test_in_inches_the_band_is_as_published() -> None:
    plan = replace(at_stud(1000, length=2.0, board=0.5), units=Unit.INCH)
    (found,) = told(plan, "deep-fastener")
    assert brief(found) == ("caution", "hole 1", "1 1/2 in deep in a stud")
    assert (found.band, found.mend) == (
        "at most 1 1/4 in",
        "use a fastener no longer than 1 3/4 in",
    )


def test_only_holes_that_may_be_in_a_stud_are_told() -> None:
    found = told(at_stud(1000, 1025, 1200, length=3.0, board=0.5), "deep-fastener")
    assert [each.other for each in found] == ["hole 1", "hole 2"]
    assert told(at_stud(1200, length=3.0, board=0.5), "deep-fastener") == []


@pytest.mark.parametrize(
    ("length", "board", "missing"),
    [
        (None, 0.5, "add 'hook' to 'hang', and its 'length' to 'hardware'"),
        (2.0, None, "add 'board' to 'wall'"),
    ],
)
def test_what_must_be_known_is_asked(length: float | None, board: float | None, missing: str) -> None:
    (found,) = told(at_stud(1000, length=length, board=board), "deep-fastener")
    assert (found.verdict, found.mend) == (Verdict.NOT_CHECKED, missing)


def test_a_short_fastener_is_safe_whatever_is_not_known() -> None:
    plan = replace(at_stud(1000, length=1.25), studs=())
    assert [each.verdict.value for each in told(plan, "deep-fastener")] == ["kept"]
    long = replace(at_stud(1000, length=2.0, board=0.5), studs=())
    (found,) = told(long, "deep-fastener")
    assert (found.verdict.value, found.mend) == ("not checked", "add 'studs' to 'wall'")


@given(st.integers(1, 80), st.integers(0, 16))
def test_never_kept_where_it_enters_by_more_than_allowed(length: int, board: int) -> None:
    plan = at_stud(1000, length=length / 16, board=board / 16)
    (found,) = told(plan, "deep-fastener")
    assert (found.verdict is Verdict.KEPT) == (length - board <= 20)  # 20/16 = 1 1/4
