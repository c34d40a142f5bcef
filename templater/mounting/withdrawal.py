"""What pulls a nail or a screw straight out of wood, along its length.

To be used only where something pulls outward: a hook loads its fastener sideways, and its maker's
rating comes before any formula. A design value is what may be asked of a fastener; the ultimate one
is the mean at which fasteners came out in tests, five times as much, and is never to be shown.
"""

from __future__ import annotations

from dataclasses import dataclass

_NEWTON_A_POUND = 4.4482216
_MM_AN_INCH = 25.4


@dataclass(frozen=True, slots=True)
class Withdrawal:
    """The formula p = constant x G^exponent x D x L: pounds of force, diameter and length in inches.

    G is the wood's specific gravity, ovendry weight over the volume at 12 % moisture.
    """

    constant: float
    exponent: float

    @property
    def metric(self) -> float:
        """The constant in newton and millimetres."""
        return self.constant * _NEWTON_A_POUND / _MM_AN_INCH**2

    def find_force(self, gravity: float, diameter_mm: float, length_mm: float) -> float:
        """The force, newton, along a fastener that is in the wood by a length; across the grain."""
        return float(self.metric * gravity**self.exponent * diameter_mm * length_mm)


SCREW_DESIGN = Withdrawal(2850, 2)
"""Wood screws, NDS design values (restated in public pages; the standard itself was not seen)."""

NAIL_DESIGN = Withdrawal(1380, 2.5)
"""Nails, NDS design values (restated in public pages). The exponent is 5/2, not 2."""

SCREW_ULTIMATE = Withdrawal(15700, 2)
"""Wood screws in tests, Wood Handbook (FPL), chapter 8 (restated)."""

NAIL_ULTIMATE = Withdrawal(7850, 2.5)
"""Nails in tests, Wood Handbook (FPL), chapter 8 (restated; the exponent also in FPL-093)."""


def find_screw_diameter(gauge: int) -> float:
    """The shank of a wood screw of a gauge number, mm: 0.060 + 0.013 in a number (ASME B18.6.1)."""
    return (0.060 + 0.013 * gauge) * _MM_AN_INCH
