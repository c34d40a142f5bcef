"""A drawing of the wall to scale: where its points lie on the page, and what is seen in it."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from typing import Generic, NamedTuple, Protocol, TypeVar

from templater.geometry import Box, Point
from templater.layout.model import Obstacle
from templater.placement.model import PlacedFurniture, PlacedPiece, Plan
from templater.scene.overview.scales import Scale


@dataclass(frozen=True, slots=True)
class View:
    """Where the wall stands on the page: ``origin`` is its left end at the floor, in page mm.

    ``window`` is the part of the wall that is shown, in wall mm.
    """

    scale: Scale
    origin: Point
    window: Box

    @property
    def frame(self) -> Box:
        """The window on the page."""
        return self.box_on_page(self.window)

    def on_page(self, point: Point) -> Point:
        """A point of the wall on the page."""
        return Point(
            self.origin.x + point.x / self.scale.ratio, self.origin.y + point.y / self.scale.ratio
        )

    def on_wall(self, point: Point) -> Point:
        """A point of the page on the wall."""
        return Point(
            (point.x - self.origin.x) * self.scale.ratio, (point.y - self.origin.y) * self.scale.ratio
        )

    def box_on_page(self, box: Box) -> Box:
        """A box of the wall on the page."""
        return Box(*self.on_page(Point(box.x0, box.y0)), *self.on_page(Point(box.x1, box.y1)))


class _Boxed(Protocol):
    """What takes a box of the wall."""

    @property
    def box(self) -> Box: ...


_Thing = TypeVar("_Thing", bound=_Boxed)


class Seen(NamedTuple, Generic[_Thing]):
    """A thing that a view shows: its number in the plan, and what is seen of it on the page."""

    number: int
    thing: _Thing
    box: Box


@dataclass(frozen=True, slots=True)
class Sight:
    """All that a view shows of a plan; ``ceiling`` is a sloping one's line on the page."""

    plan: Plan
    view: View
    frame: Box
    pieces: tuple[Seen[PlacedPiece], ...]
    furniture: tuple[Seen[PlacedFurniture], ...]
    obstacles: tuple[Seen[Obstacle], ...]
    solids: tuple[Box, ...]
    ceiling: tuple[Point, ...]

    @classmethod
    def of(cls, plan: Plan, view: View) -> Sight:
        """What is seen of a plan in a view."""
        pieces = tuple(_see(plan.pieces, view))
        furniture = tuple(_see(plan.furniture, view))
        obstacles = tuple(_see(plan.obstacles, view))
        solids = tuple(box for _, _, box in (*pieces, *furniture, *obstacles))
        ceiling = tuple(view.on_page(point) for point in plan.ceiling)
        return cls(plan, view, view.frame, pieces, furniture, obstacles, solids, ceiling)


def _see(things: Iterable[_Thing], view: View) -> Iterator[Seen[_Thing]]:
    """The things that a view shows, numbered as they are in the plan."""
    for number, thing in enumerate(things, start=1):
        if thing.box.meets(view.window):
            yield Seen(number, thing, view.box_on_page(thing.box.common(view.window)))
