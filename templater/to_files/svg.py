"""Layers written as SVG: one user unit is one millimetre, and every letter is an outline.

Only this module knows that SVG's y axis points down. Lettering is drawn from the packaged
typeface's outlines, each once in ``<defs>``, so that it looks the same wherever the file is
opened; the words themselves stand in ``aria-label``.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from itertools import chain, zip_longest
from typing import Any
from xml.etree import ElementTree as ET

import svgwrite
from svgwrite.base import BaseElement

from templater.drawing import Anchor, Circle, Dash, Line, Polyline, Words
from templater.geometry import Box
from templater.sheets.model import Layer
from templater.to_files.pen import replay
from templater.typeface import Face, face
from templater.typesetting import Glyph, set_line


def svg_text(layers: Iterable[Layer], view: Box, title: str, *, top: float) -> str:
    """A drawing as an SVG document that shows the box ``view``, its width and height in mm.

    A point (x, y) of the drawing stands at (x, ``top`` - y) in the file.
    """
    drawing = svgwrite.Drawing(
        size=(f"{number(view.width)}mm", f"{number(view.height)}mm"),
        viewBox=" ".join(number(value) for value in (view.x0, top - view.y1, *view.size)),
        profile="full",
        debug=False,
    )
    drawing.set_desc(title=title)
    pen = _SvgPen(drawing, top)
    replay(layers, pen)
    pen.close()
    return pen.put_letters(str(drawing.tostring())) + "\n"


def number(value: float) -> str:
    """A coordinate with at most five decimals (0.01 micrometre), without trailing zeros."""
    shown = f"{value:.5f}".rstrip("0").rstrip(".")
    return "0" if shown == "-0" else shown


_LEFT_OPEN = "<use />"
"""Where a run of letters will stand: a drawing holds a thousand, and they are quicker as text."""


class _Raw(BaseElement):  # type: ignore[misc]  # svgwrite ships no types
    """An element whose XML is built directly: svgwrite's own way costs ten times as much here."""

    elementname = "g"

    def __init__(self, xml: ET.Element) -> None:
        super().__init__(debug=False)
        self.xml = xml

    def get_xml(self) -> ET.Element:
        """The element as built."""
        return self.xml


class _SvgPen:
    """Draws on one SVG document."""

    def __init__(self, drawing: Any, top: float) -> None:
        self._drawing = drawing
        self._top = top
        self._layer: ET.Element = ET.Element("g")
        self._dx, self._dy = 0.0, 0.0
        self._glyphs: dict[tuple[bool, str], str] = {}
        self._shapes: dict[Glyph, str] = {}
        self._runs: list[str] = []
        self._clips = 0

    def close(self) -> None:
        """Define every letter that was used."""
        for (bold, character), name in sorted(self._glyphs.items()):
            path = ET.Element("path", {"id": name, "d": face(bold).outline(character)})
            self._drawing.defs.add(_Raw(path))
        for glyph, name in self._shapes.items():
            self._drawing.defs.add(_Raw(ET.Element("path", {"id": name, "d": _path_data(glyph)})))

    def put_letters(self, text: str) -> str:
        """Put each run of letters, kept as text until now, in the place that was left for it."""
        kept = text.split(_LEFT_OPEN)
        return "".join(chain.from_iterable(zip_longest(kept, self._runs, fillvalue="")))

    def open_layer(self, layer: Layer) -> None:
        """Start a group; its clip box, if any, becomes a clip path."""
        self._layer = ET.Element("g", {"fill": "none", "stroke": "#000"})
        self._dx, self._dy = layer.origin
        if layer.clip is not None:
            self._clips += 1
            name = f"clip{self._clips}"
            clip, box = ET.Element("clipPath", {"id": name}), layer.clip
            ET.SubElement(
                clip,
                "rect",
                {
                    "x": number(box.x0),
                    "y": number(self._top - box.y1),
                    "width": number(box.width),
                    "height": number(box.height),
                },
            )
            self._drawing.defs.add(_Raw(clip))
            self._layer.set("clip-path", f"url(#{name})")

    def close_layer(self) -> None:
        """Hand the group to the document."""
        self._drawing.add(_Raw(self._layer))

    def line(self, item: Line) -> None:
        """Draw a straight line."""
        (x0, y0), (x1, y1) = self._xy(*item.start), self._xy(*item.end)
        ends = {"x1": x0, "y1": y0, "x2": x1, "y2": y1}
        ET.SubElement(self._layer, "line", {**ends, **_stroke(item.width_mm, item.dash)})

    def polyline(self, item: Polyline) -> None:
        """Draw a chain of lines."""
        points = {"points": " ".join(",".join(self._xy(*point)) for point in item.points)}
        look = {"fill": "#000", "stroke": "none"} if item.filled else _stroke(item.width_mm, item.dash)
        shape = "polygon" if item.closed or item.filled else "polyline"
        ET.SubElement(self._layer, shape, {**points, **look})

    def circle(self, item: Circle) -> None:
        """Draw a circle."""
        x, y = self._xy(*item.centre)
        look = {"fill": "#000", "stroke": "none"} if item.filled else _stroke(item.width_mm, ())
        ET.SubElement(self._layer, "circle", {"cx": x, "cy": y, "r": number(item.radius_mm), **look})

    def words(self, item: Words) -> None:
        """Draw one line of lettering, a reference to an outline for each letter."""
        weight = face(item.bold)
        x, y = self._xy(*item.at)
        scale = item.height_mm / weight.cap_height
        group = ET.SubElement(
            self._layer,
            "g",
            {
                "aria-label": item.text,
                "role": "img",
                "transform": f"translate({x} {y}){' rotate(-90)' if item.turned else ''}"
                f" scale({scale:.9f} {-scale:.9f})",
                "fill": "#000",
                "stroke": "none",
            },
        )
        ET.SubElement(group, "use")
        self._runs.append("".join(self._letters(item, weight)))

    def _letters(self, item: Words, weight: Face) -> Iterator[str]:
        """Each letter along the baseline, in font units, as the text of an element."""
        line = set_line(item.text, item.bold)
        start = {Anchor.START: 0.0, Anchor.MIDDLE: -line.width / 2, Anchor.END: -line.width}
        for part in line.parts:
            at = start[item.anchor] + part.at
            if part.glyph is not None:
                if part.glyph.outline:
                    name = self._shapes.setdefault(part.glyph, f"given{len(self._shapes)}")
                    yield f'<use xlink:href="#{name}" x="{number(at)}" />'
                continue
            for character in part.text:
                if not character.isspace():
                    name = f"{'b' if item.bold else 'r'}{ord(character):x}"
                    self._glyphs[item.bold, character] = name
                    yield f'<use xlink:href="#{name}" x="{number(at)}" />'
                at += weight.advance(character)

    def _xy(self, x: float, y: float) -> tuple[str, str]:
        """A point of the open layer in SVG's coordinates, y down."""
        return number(x + self._dx), number(self._top - y - self._dy)


def _path_data(glyph: Glyph) -> str:
    """A shape's outline as SVG writes it, to a hundredth of the typeface's unit."""
    return "".join(
        command + " ".join(number(round(value, 2)) for value in values)
        for command, values in glyph.outline
    )


def _stroke(width_mm: float, dash: Dash) -> dict[str, str]:
    """A line's width and dashes as attributes."""
    look = {"stroke-width": number(width_mm)}
    if dash:
        look["stroke-dasharray"] = " ".join(number(length) for length in dash)
    return look
