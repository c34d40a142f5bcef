"""Pages ready to be written: drawings at their places, and what a PDF reader may jump to."""

from __future__ import annotations

from dataclasses import dataclass
from enum import Enum

from templater.drawing import Item, Link
from templater.geometry import ORIGIN, Box, Point, Size
from templater.printing.model import UNSCALED, Scale


class PageKind(Enum):
    """What a page is for; a form stands alone, all others belong to a kit."""

    COVER = "cover"
    OVERVIEW = "overview"
    TEMPLATE = "template"
    SPACER = "spacer"
    CHECKLIST = "checklist"
    FORM = "form"


@dataclass(frozen=True, slots=True)
class Layer:
    """A drawing on a page: page point = ``origin`` + drawing point; ``clip`` in page coordinates."""

    items: tuple[Item, ...]
    origin: Point = ORIGIN
    clip: Box | None = None


@dataclass(frozen=True, slots=True)
class Target:
    """A named point of the page that links and other programs can jump to."""

    name: str
    point: Point


@dataclass(frozen=True, slots=True)
class Bookmark:
    """An entry of the PDF's outline; level 0 is the outermost."""

    title: str
    level: int


@dataclass(frozen=True, slots=True)
class Part:
    """What a page shows of a piece's template: page point = ``origin`` + template point.

    ``clip``, in template coordinates, is all that is shown.
    """

    piece: str
    sheet: str
    clip: Box
    origin: Point


@dataclass(frozen=True, slots=True)
class Page:
    """One printed page; coordinates in mm from its bottom-left, as they measure after printing.

    ``scale``: by how much longer everything is in the file, across and up, the page itself included.
    """

    kind: PageKind
    size: Size
    layers: tuple[Layer, ...]
    label: str
    bookmarks: tuple[Bookmark, ...] = ()
    links: tuple[Link, ...] = ()
    targets: tuple[Target, ...] = ()
    parts: tuple[Part, ...] = ()
    scale: Scale = UNSCALED

    @property
    def paper(self) -> Size:
        """The paper that the page is printed on, mm."""
        return Size(self.size.width * self.scale[0], self.size.height * self.scale[1])
