from __future__ import annotations

from itertools import islice, takewhile

from hypothesis import given
from hypothesis import strategies as st

from templater.geometry import Size
from templater.lengths import Unit
from templater.scene.overview.scales import choose_scale, choose_scale_for_detail, standard_scales

# ISO 5455:1979, 5.1: reductions 1:2 to 1:10000, after full size.
ISO_5455 = [1, 2, 5, 10, 20, 50, 100, 200, 500, 1000, 2000, 5000, 10000]

# The scales of an architect's triangular rule; no source, common practice. 12 in to the foot, so
# 1/4 in = 1 ft is 12 x 4 = 48 to 1.
ARCHITECTS = {
    "3": 4,
    "1 1/2": 8,
    "1": 12,
    "3/4": 16,
    "1/2": 24,
    "3/8": 32,
    "1/4": 48,
    "3/16": 64,
    "1/8": 96,
    "3/32": 128,
    "1/16": 192,
    "1/32": 384,
}

lengths = st.floats(1.0, 1e7)
sides = st.floats(10.0, 1200.0)
units = st.sampled_from(Unit)


def test_metric_scales_are_those_of_iso_5455() -> None:
    assert [scale.ratio for scale in islice(standard_scales(Unit.METRE), 13)] == ISO_5455


def test_no_metric_scale_is_1_to_25() -> None:
    ratios = takewhile(lambda ratio: ratio <= 1000, (s.ratio for s in standard_scales(Unit.CENTIMETRE)))
    assert 25.0 not in list(ratios)


def test_metric_scale_is_written_as_iso_5455_says() -> None:
    assert [scale.text for scale in islice(standard_scales(Unit.MILLIMETRE), 5)] == [
        "SCALE 1:1",
        "SCALE 1:2",
        "SCALE 1:5",
        "SCALE 1:10",
        "SCALE 1:20",
    ]


def test_inch_scales_are_the_architects() -> None:
    after_full_size = list(islice(standard_scales(Unit.FOOT), 1, 13))
    assert [(s.text, s.ratio) for s in after_full_size] == [
        (f"SCALE {inches} in = 1 ft (1:{ratio})", ratio) for inches, ratio in ARCHITECTS.items()
    ]


def test_inch_scales_go_on_in_feet_to_the_inch() -> None:
    # 1 in = 50 ft: 50 x 12 = 600.
    scale = list(islice(standard_scales(Unit.INCH), 14))[-1]
    assert (scale.text, scale.ratio) == ("SCALE 1 in = 50 ft (1:600)", 600)


def test_the_largest_scale_that_fits_is_chosen() -> None:
    # 4 m x 2.4 m in 250 x 150 mm: 4000 / 250 = 16 and 2400 / 150 = 16, so 1:20.
    assert choose_scale(Size(4000, 2400), Size(250, 150), Unit.MILLIMETRE).ratio == 20
    # 16 ft 4 in x 8 ft in 8.5 x 4 in: 196 / 8.5 = 23.1 and 96 / 4 = 24, so 1/2 in = 1 ft.
    chosen = choose_scale(Size(196 * 25.4, 96 * 25.4), Size(8.5 * 25.4, 4 * 25.4), Unit.INCH)
    assert chosen.text == "SCALE 1/2 in = 1 ft (1:24)"


def test_a_detail_gets_the_smallest_scale_that_shows_it() -> None:
    # 90 mm is 9 mm at 1:10, 4.5 mm at 1:20.
    assert choose_scale_for_detail(90.0, 8.0, Unit.MILLIMETRE).ratio == 10
    assert choose_scale_for_detail(90.0, 4.5, Unit.MILLIMETRE).ratio == 20


def test_a_detail_smaller_than_asked_is_shown_full_size() -> None:
    assert choose_scale_for_detail(3.0, 8.0, Unit.INCH).ratio == 1


@given(lengths, lengths, sides, sides, units)
def test_no_larger_standard_scale_would_fit(
    width: float, height: float, across: float, up: float, unit: Unit
) -> None:
    chosen = choose_scale(Size(width, height), Size(across, up), unit)
    assert width / chosen.ratio <= across * (1 + 1e-6)
    assert height / chosen.ratio <= up * (1 + 1e-6)
    larger = takewhile(lambda scale: scale.ratio < chosen.ratio, standard_scales(unit))
    assert all(width / s.ratio > across or height / s.ratio > up for s in larger)
