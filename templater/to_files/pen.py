"""What a writer must be able to do, and the one function that replays a layer onto it."""

from __future__ import annotations

from collections.abc import Iterable
from typing import Protocol, assert_never

from templater.drawing import Circle, Item, Line, Polyline, Words
from templater.geometry import Box
from templater.lettering import words_box
from templater.sheets.model import Layer


class Pen(Protocol):
    """Draws primitives in the coordinates of the layer that is open."""

    def open_layer(self, layer: Layer) -> None:
        """Move the origin to the layer's and clip to its clip box."""

    def close_layer(self) -> None:
        """Back to the page's own origin."""

    def line(self, item: Line) -> None:
        """Draw a straight line."""

    def polyline(self, item: Polyline) -> None:
        """Draw a chain of lines."""

    def circle(self, item: Circle) -> None:
        """Draw a circle."""

    def words(self, item: Words) -> None:
        """Draw one line of lettering."""


def replay(layers: Iterable[Layer], pen: Pen) -> None:
    """Draw every layer, leaving out what its clip box would hide."""
    for layer in layers:
        pen.open_layer(layer)
        for item in _visible(layer):
            match item:
                case Line():
                    pen.line(item)
                case Polyline():
                    pen.polyline(item)
                case Circle():
                    pen.circle(item)
                case Words():
                    pen.words(item)
                case _:
                    assert_never(item)
        pen.close_layer()


def _visible(layer: Layer) -> Iterable[Item]:
    if layer.clip is None:
        return layer.items
    seen = layer.clip.moved(-layer.origin.x, -layer.origin.y).grown(1.0)
    return (item for item in layer.items if seen.meets(_reach(item)))


def _reach(item: Item) -> Box:
    """The box that an item's ink may touch, never empty."""
    box = words_box(item) if isinstance(item, Words) else item.box
    return box.grown(0.5)
