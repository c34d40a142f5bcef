"""Published figures of withdrawal; the sums in pounds and inches stand beside them."""

from __future__ import annotations

from pathlib import Path

import pytest

import templater.rules
from templater.rules.fasteners.withdrawal import (
    HARDEST,
    NAIL,
    SCREW,
    SOFTEST,
    Withdrawal,
    find_outward_pull,
    find_screw_diameter,
)

INCH = 25.4
POUND_FORCE = 4.4482216  # newton, SI; from memory

# Averages of what broke in tests (Wood Handbook, chapter 8, restated; the nail's power from FPL-093).
ULTIMATE_SCREW = Withdrawal(15700.0, 2.0)
ULTIMATE_NAIL = Withdrawal(7850.0, 2.5)


def hold_lb(formula: Withdrawal, gravity: float, diameter_in: float, depth_in: float) -> float:
    held = formula.hold_n(gravity, diameter_mm=diameter_in * INCH, depth_mm=depth_in * INCH)
    return held / POUND_FORCE


@pytest.mark.parametrize(
    ("gravity", "published"),
    [
        # No. 10, 1 in deep: 2850 x 0.50² x 0.190 = 135.375 lb; published 135 (restated NDS).
        (0.50, 135.38),
        # 2850 x 0.42² x 0.190 = 95.52; published 95.5.
        (0.42, 95.52),
        # 2850 x 0.45² x 0.190 = 109.65; published 109, cut off (engineeringtoolbox.com, d_1815).
        (0.45, 109.65),
    ],
)
def test_screws_hold_their_published_design_values(gravity: float, published: float) -> None:
    assert hold_lb(SCREW, gravity, 0.190, 1.0) == pytest.approx(published, abs=0.01)


def test_depth_counts_in_proportion() -> None:
    # 95.52 lb x 1.5 x 4.44822 = 637.35 N; published 637.
    held = SCREW.hold_n(0.42, diameter_mm=0.190 * INCH, depth_mm=1.5 * INCH)
    assert held == pytest.approx(637.35, abs=0.05)


def test_nails_hold_their_published_design_value() -> None:
    # 20d, 0.203 in: 1380 x 0.45^2.5 x 0.203 = 38.05 lb an inch; published 38
    # (engineeringtoolbox.com, d_1814).
    assert hold_lb(NAIL, 0.45, 0.203, 1.0) == pytest.approx(38.05, abs=0.01)


def test_the_form_of_the_formula_gives_the_published_ultimates() -> None:
    # No. 8, 1 in, G 0.70: 15700 x 0.49 x 0.164 = 1261.65 lb; published 1262.
    assert hold_lb(ULTIMATE_SCREW, 0.70, 0.164, 1.0) == pytest.approx(1261.65, abs=0.01)
    # 0.131 in, 1.5 in, G 0.42: 7850 x 0.42^2.5 x 0.131 x 1.5 = 176.34 lb.
    assert hold_lb(ULTIMATE_NAIL, 0.42, 0.131, 1.5) == pytest.approx(176.34, abs=0.01)


def test_the_power_of_the_nail_is_five_halves_not_two() -> None:
    # One web page prints G²: 7850 x 0.42² x 0.131 x 1.5 = 272.10 lb, 1.54 times too much.
    wrong = Withdrawal(7850.0, 2.0)
    assert hold_lb(wrong, 0.42, 0.131, 1.5) == pytest.approx(272.10, abs=0.01)
    assert NAIL.power == 2.5
    of_nail = hold_lb(NAIL, 0.42, 0.131, 1.5)
    assert of_nail != pytest.approx(hold_lb(Withdrawal(1380.0, 2.0), 0.42, 0.131, 1.5), rel=0.3)


@pytest.mark.parametrize(("formula", "metric"), [(ULTIMATE_SCREW, 108.248), (ULTIMATE_NAIL, 54.124)])
def test_the_constants_in_newton_and_millimetres(formula: Withdrawal, metric: float) -> None:
    # 15700 x 4.44822 / 25.4² = 108.248; 7850 x 4.44822 / 25.4² = 54.124 (Wood Handbook, metric, from
    # memory: 108.25 and 54.12). With G, D and L at 1 the formula gives its constant.
    assert formula.hold_n(1.0, diameter_mm=1.0, depth_mm=1.0) == pytest.approx(metric, abs=0.001)


def test_design_values_are_about_a_fifth_of_what_breaks() -> None:
    # 15700 / 2850 = 5.51; 7850 / 1380 = 5.69.
    for design, ultimate, times in ((SCREW, ULTIMATE_SCREW, 5.51), (NAIL, ULTIMATE_NAIL, 5.69)):
        ratio = hold_lb(ultimate, 0.42, 0.164, 1.0) / hold_lb(design, 0.42, 0.164, 1.0)
        assert ratio == pytest.approx(times, abs=0.01)


def test_no_ultimate_is_anywhere_in_the_program() -> None:
    texts = [path.read_text("utf-8") for path in Path(templater.rules.__path__[0]).rglob("*.py")]
    for ultimate in ("15700", "15_700", "7850", "7_850", "6900", "108.2", "54.12"):
        assert not [text for text in texts if ultimate in text]


def test_the_softest_wood_is_counted_on() -> None:
    # Engelmann spruce 0.35 (Oregon State University), southern pine 0.55 (NDS, from memory).
    assert (SOFTEST, HARDEST) == (0.35, 0.55)


@pytest.mark.parametrize(("gauge", "inch"), [(6, 0.138), (8, 0.164), (10, 0.190)])
def test_a_screws_number_gives_its_shank(gauge: int, inch: float) -> None:
    # ANSI B18.6.1, restated.
    assert find_screw_diameter(gauge) == pytest.approx(inch * INCH)


def test_moments_about_the_lower_edge_give_the_pull_outward() -> None:
    # 39.2 N, its mass 100 mm from the wall, on a hanger 300 mm above the edge: 39.2 x 100 / 300.
    assert find_outward_pull(39.2, out_mm=100, above_mm=300) == pytest.approx(13.0667, abs=1e-4)
