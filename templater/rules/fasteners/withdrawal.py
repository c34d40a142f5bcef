"""What holds a fastener in wood against a pull straight out of it: design values, never ultimates.

A picture bears on its fastener sideways; only what stands out from the wall also pulls it outward.
"""

from __future__ import annotations

from dataclasses import dataclass
from math import pow as raise_to

from templater.mounting.statics import STANDARD_GRAVITY
from templater.rules.cautions.weights import POUND_KG

INCH_MM = 25.4


@dataclass(frozen=True, slots=True)
class Withdrawal:
    """A formula of the form coefficient x G ** power x diameter x depth, in lb and in.

    G is the wood's specific gravity: ovendry weight, volume at 12 % moisture. It holds across the
    grain; in end grain nothing is counted on.
    """

    coefficient: float
    power: float

    def hold_n(self, gravity: float, *, diameter_mm: float, depth_mm: float) -> float:
        """What it gives, newton, for a diameter and a depth of thread or nail in the wood, mm."""
        to_metric = POUND_KG * STANDARD_GRAVITY / INCH_MM**2
        return self.coefficient * to_metric * raise_to(gravity, self.power) * diameter_mm * depth_mm


SCREW = Withdrawal(2850.0, 2.0)
"""Wood screws, National Design Specification for Wood Construction (NDS), as restated in print."""

NAIL = Withdrawal(1380.0, 2.5)
"""Nails, NDS, as restated in print; the power is 5/2."""

SOFTEST, HARDEST = 0.35, 0.55
"""G of the woods that studs are of: Engelmann spruce (Oregon State University's table of properties)
to southern pine (NDS, from memory)."""


def find_screw_diameter(gauge: int) -> float:
    """The shank of a wood screw by its number, mm: 0.060 in + 0.013 in a number (ANSI B18.6.1)."""
    return (0.060 + 0.013 * gauge) * INCH_MM


def find_outward_pull(down_n: float, *, out_mm: float, above_mm: float) -> float:
    """What pulls a hanger out of the wall, newton.

    The frame's lower edge leans on the wall ``above_mm`` below the hanger, its mass centre is
    ``out_mm`` from the wall: the moments about that edge give down x out / above.
    """
    return down_n * out_mm / above_mm
