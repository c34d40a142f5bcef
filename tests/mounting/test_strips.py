import pytest

from templater.mounting.strips import count_strips


@pytest.mark.parametrize(
    ("weight", "rating", "count"),
    [
        # Twice the weight over the rating, rounded up (common practice, no source).
        (1.0, 2.0, 1),  # 1
        (1.01, 2.0, 2),  # 1.01
        (3.0, 1.8, 4),  # 3.33
        (0.1, 2.0, 1),
        (1e-10, 2.0, 1),  # never none
        (0.3, 0.1, 6),  # exactly 6, though 0.6 / 0.1 is a little less as floats
    ],
)
def test_how_many_strips_hold_a_weight(weight: float, rating: float, count: int) -> None:
    assert count_strips(weight, rating) == count
