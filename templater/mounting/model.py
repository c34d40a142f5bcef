"""Where a piece bears and where its holes go, in the piece's own frame.

Origin: the bottom-left outside corner of the frame; x right, y up, mm.
"""

from __future__ import annotations

from dataclasses import dataclass

from templater.geometry import Point


@dataclass(frozen=True, slots=True)
class Mark:
    """One hang point and the hole that serves it.

    ``load_n`` is the static vertical share on this hole, newton, no safety factor; None when no
    weight is known.
    """

    hang: Point
    hole: Point
    load_n: float | None

    def moved(self, dx: float, dy: float) -> Mark:
        """The same mark seen from an origin that lies (-dx, -dy) away."""
        return Mark(self.hang.moved(dx, dy), self.hole.moved(dx, dy), self.load_n)


@dataclass(frozen=True, slots=True)
class Mount:
    """The marks of one piece, left to right then top down, and what the user must be told.

    ``notes`` are whole sentences for the template, the overview and ``check``.
    """

    marks: tuple[Mark, ...]
    notes: tuple[str, ...]
