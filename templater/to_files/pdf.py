"""Pages written as PDF. Only this module knows points; its scale comes from 72 / 25.4 alone.

A page for a printer that has been measured bears that printer's factors as one transformation of all
that is drawn on it; what a reader jumps to and the page's size are not drawn, and multiplied here.
"""

from __future__ import annotations

from collections.abc import Iterable
from functools import cache
from typing import IO, Any

from reportlab import rl_config
from reportlab.pdfbase import pdfdoc, pdfmetrics
from reportlab.pdfbase.ttfonts import TTFont
from reportlab.pdfgen.canvas import Canvas

from templater.drawing import Anchor, Circle, Dash, Line, Polyline, Words
from templater.geometry import Box, Point, Size
from templater.printing.model import UNSCALED, Scale
from templater.sheets.model import Layer, Page
from templater.to_files.pdf_shapes import ShapeFonts
from templater.to_files.pen import replay
from templater.typeface import face
from templater.typesetting import set_line

POINTS_PER_MM = 72 / 25.4

# What reportlab's own checked dictionary does not know: Enforce (PDF 2.0) and
# PickTrayByPDFSize (1.7).
_PRINT_TRUE = (
    "<< /PrintScaling /None /Enforce [/PrintScaling] /Duplex /Simplex /PickTrayByPDFSize true >>"
)


def write_pdf(pages: Iterable[Page], stream: IO[bytes], *, title: str) -> None:
    """Write the pages as one PDF, each as it comes, so that memory holds one page's drawing."""
    _register_fonts()
    rl_config.useA85 = 0  # streams stay binary: a fifth smaller, and nothing is encoded twice
    canvas = Canvas(
        stream, pageCompression=1, invariant=1, pdfVersion=(1, 7), initialFontName=_font_name(bold=False)
    )
    canvas._pageRotation = None  # reportlab would write /Rotate 0
    canvas.setTitle(title)
    canvas.setCreator("templater")
    canvas.setProducer("templater")
    canvas.setAuthor("")
    canvas.setSubject("")
    canvas.showOutline()
    targets: dict[str, Any] = {}
    shapes = ShapeFonts(canvas, face().units_per_em)
    for index, page in enumerate(pages):
        _write_page(canvas, page, index, targets, shapes)
    shapes.close()
    catalog: Any = canvas._doc.Catalog
    catalog.ViewerPreferences = _Literal(_PRINT_TRUE)
    if targets:
        names = [part for name in sorted(targets) for part in (pdfdoc.PDFString(name), targets[name])]
        tree = pdfdoc.PDFDictionary({"Names": pdfdoc.PDFArray(names)})
        catalog.Names = pdfdoc.PDFDictionary({"Dests": tree})
    canvas.save()


class _Literal(pdfdoc.PDFObject):  # type: ignore[misc]  # reportlab ships no types
    """A PDF object given as its text."""

    def __init__(self, text: str) -> None:
        self.text = text

    def format(self, document: Any) -> bytes:  # noqa: ARG002  # reportlab's interface
        """The object's text."""
        return self.text.encode("ascii")


@cache
def _register_fonts() -> None:
    """Tell reportlab of the packaged typeface, once a process."""
    for bold in (False, True):
        pdfmetrics.registerFont(TTFont(_font_name(bold), str(face(bold).path)))


def _font_name(bold: bool) -> str:
    return "Lettering-Bold" if bold else "Lettering"


def _points(size: Size) -> tuple[float, float]:
    return size.width * POINTS_PER_MM, size.height * POINTS_PER_MM


def _write_page(
    canvas: Any, page: Page, index: int, targets: dict[str, Any], shapes: ShapeFonts
) -> None:
    """Draw one page and what a reader may jump to on it."""
    canvas.setPageSize(_points(page.paper))
    if page.scale != UNSCALED:
        canvas.scale(*page.scale)
    replay(page.layers, _PdfPen(canvas, shapes))
    canvas.addPageLabel(index, prefix=page.label)
    for number, bookmark in enumerate(page.bookmarks):
        key = f"page:{index + 1}:{number}"
        canvas.bookmarkPage(key, fit="Fit")
        canvas.addOutlineEntry(bookmark.title, key, level=bookmark.level)
    for target in page.targets:
        targets[target.name] = _destination(canvas, target.name, target.point, page.scale)
    for link in page.links:
        canvas.linkAbsolute("", link.target, Rect=_rectangle(link.box, page.scale), Border="[0 0 0]")
    canvas.showPage()


def _destination(canvas: Any, name: str, point: Point, scale: Scale) -> Any:
    left, top = point.x * POINTS_PER_MM * scale[0], point.y * POINTS_PER_MM * scale[1]
    return canvas.bookmarkPage(name, fit="XYZ", left=left, top=top, zoom=0)


def _rectangle(box: Box, scale: Scale = UNSCALED) -> tuple[float, float, float, float]:
    across, up = (POINTS_PER_MM * factor for factor in scale)
    return box.x0 * across, box.y0 * up, box.x1 * across, box.y1 * up


class _PdfPen:
    """Draws on the canvas's open page."""

    def __init__(self, canvas: Any, shapes: ShapeFonts) -> None:
        self._canvas, self._shapes = canvas, shapes
        self._dx, self._dy = 0.0, 0.0
        self._width: float | None = None
        self._dash: Dash = ()

    def open_layer(self, layer: Layer) -> None:
        """Clip to the layer's box and take its origin."""
        self._canvas.saveState()
        self._width, self._dash = None, ()
        self._dx, self._dy = layer.origin
        if layer.clip is not None:
            x0, y0, x1, y1 = _rectangle(layer.clip)
            path = self._canvas.beginPath()
            path.rect(x0, y0, x1 - x0, y1 - y0)
            self._canvas.clipPath(path, stroke=0, fill=0)

    def close_layer(self) -> None:
        """Undo the clipping."""
        self._canvas.restoreState()

    def line(self, item: Line) -> None:
        """Draw a straight line."""
        self._stroke(item.width_mm, item.dash)
        self._canvas.line(*self._xy(*item.start), *self._xy(*item.end))

    def polyline(self, item: Polyline) -> None:
        """Draw a chain of lines."""
        self._stroke(item.width_mm, item.dash)
        path = self._canvas.beginPath()
        path.moveTo(*self._xy(*item.points[0]))
        for point in item.points[1:]:
            path.lineTo(*self._xy(*point))
        if item.closed or item.filled:
            path.close()
        self._canvas.drawPath(path, stroke=int(not item.filled), fill=int(item.filled))

    def circle(self, item: Circle) -> None:
        """Draw a circle."""
        self._stroke(item.width_mm, ())
        radius = item.radius_mm * POINTS_PER_MM
        self._canvas.circle(
            *self._xy(*item.centre), radius, stroke=int(not item.filled), fill=int(item.filled)
        )

    def words(self, item: Words) -> None:
        """Draw one line of lettering."""
        weight = face(item.bold)
        size = weight.em_mm(item.height_mm) * POINTS_PER_MM
        line, unit = set_line(item.text, item.bold), size / weight.units_per_em
        back = {Anchor.START: 0.0, Anchor.MIDDLE: line.width / 2, Anchor.END: line.width}[item.anchor]
        x, y = self._xy(*item.at)
        for part in line.parts:
            along = (part.at - back) * unit
            matrix = (0, 1, -1, 0, x, y + along) if item.turned else (1, 0, 0, 1, x + along, y)
            if part.glyph is not None:
                self._shapes.show(part.glyph, size, matrix)
                continue
            text = self._canvas.beginText()
            text.setFont(_font_name(item.bold), size)
            text.setTextTransform(*matrix)
            text.textOut(part.text)
            self._canvas.drawText(text)

    def _xy(self, x: float, y: float) -> tuple[float, float]:
        """A point of the open layer in points from the page's bottom-left."""
        return (x + self._dx) * POINTS_PER_MM, (y + self._dy) * POINTS_PER_MM

    def _stroke(self, width_mm: float, dash: Dash) -> None:
        """Set the line's look where it differs from the last one's."""
        if width_mm != self._width:
            self._canvas.setLineWidth(width_mm * POINTS_PER_MM)
            self._width = width_mm
        if dash != self._dash:
            self._canvas.setDash([length * POINTS_PER_MM for length in dash])
            self._dash = dash
