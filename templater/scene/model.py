"""What the drawing stage hands on."""

from __future__ import annotations

from dataclasses import dataclass

from templater.drawing import Item, Link
from templater.geometry import Box, Size
from templater.printing.model import UNSCALED, PrintSetup, Scale

FOOTER_MM = 9.0
"""The strip at the foot of every page that belongs to the page's own title, revision and number."""


@dataclass(frozen=True, slots=True)
class Form:
    """A blank page to draw on: its size and what the printer reaches, mm from its bottom-left.

    All in mm as they measure after printing; ``scale`` is what the page is written with for that.
    """

    size: Size
    printable: Box
    scale: Scale = UNSCALED

    @classmethod
    def of(cls, setup: PrintSetup, size: Size) -> Form:
        """A page of a size on the setup's paper."""
        return cls(size, setup.printable(size), setup.scale_of(size))

    @property
    def inner(self) -> Box:
        """Where a drawing may stand: the printable area less the footer."""
        return self.printable._replace(y0=self.printable.y0 + FOOTER_MM)


@dataclass(frozen=True, slots=True)
class PageDrawing:
    """One page's drawing in page coordinates, footer left free."""

    title: str
    size: Size
    items: tuple[Item, ...]
    links: tuple[Link, ...] = ()
