"""How many adhesive strips a piece needs."""

from __future__ import annotations

from math import ceil

STRIP_FACTOR = 2.0
"""By how much the strips' rating must pass the weight.

Common practice, no source: a wall is seldom as smooth, clean and dry as the plate on which strips
are rated.
"""


def count_strips(weight_kg: float, rating_kg: float) -> int:
    """How many strips, or pairs, of a maker's rating hold a weight: rounded up, never none."""
    return max(ceil(weight_kg * STRIP_FACTOR / rating_kg - 1e-9), 1)
