from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from templater.lengths import Unit, parse_length
from templater.mounting.amounts import SLACK_MM, format_at_least, round_down, round_up


@pytest.mark.parametrize(
    ("mm", "units", "shown"),
    [
        (25.4, Unit.INCH, "1 in (25 mm)"),
        (76.2, Unit.INCH, "3 in (76 mm)"),
        (76.2 + 1e-9, Unit.INCH, "3 in (76 mm)"),  # the arithmetic of floats adds no sixteenth
        (76.3, Unit.INCH, "3 1/16 in (78 mm)"),  # 77.79 mm
        (0.01, Unit.INCH, "1/16 in (2 mm)"),  # 1.59 mm
        (50.0, Unit.MILLIMETRE, "50 mm (1 15/16 in)"),  # 1.969 in
        (50.2, Unit.CENTIMETRE, "51 mm (2 in)"),  # 2.008 in
    ],
)
def test_amounts_are_rounded_up_in_the_layouts_units(mm: float, units: Unit, shown: str) -> None:
    assert format_at_least(mm, units) == shown


@given(st.floats(0.001, 100_000), st.sampled_from(Unit))
def test_an_amount_shown_is_enough_and_hardly_more(mm: float, units: Unit) -> None:
    shown = float(parse_length(format_at_least(mm, units).split(" (")[0]))
    step = 25.4 / 16 if units.is_imperial else 1.0
    assert mm - SLACK_MM <= shown < mm + step


def test_rounding_keeps_to_its_side() -> None:
    assert round_up(7.1, 1.0) == 8.0
    assert round_down(7.9, 1.0) == 7.0
    assert round_down(-7.1, 1.0) == -8.0
    assert round_up(7.0, 1.0) == round_down(7.0, 1.0) == 7.0
    assert (round_up(9.0, 4.0), round_down(11.0, 4.0)) == (12.0, 8.0)
