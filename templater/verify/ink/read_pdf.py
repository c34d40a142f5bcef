"""Reads the pages of a PDF: their paper, and their ink with the whole stack of transformations.

pikepdf opens the file; what its pages' content says is followed here.
"""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import TYPE_CHECKING, Any

from templater.geometry import ORIGIN, Point, Size
from templater.printing.model import UNSCALED, Scale
from templater.verify.ink.follow_content import Follower
from templater.verify.ink.resources import FontCache, Resources
from templater.verify.model import NEAR_MM, Ink, UnreadableError

if TYPE_CHECKING:
    import pikepdf

MM_PER_POINT = 25.4 / 72
OWN_PRODUCER = "templater"
"""Who a kit's PDF says has written it."""


@contextmanager
def open_pdf(path: Path) -> Iterator[PdfReader]:
    """A PDF to be read page by page. Raises UnreadableError."""
    import pikepdf

    try:
        with (
            path.open("rb") as stream,
            pikepdf.open(stream) as document,
        ):  # its own way fails at odd names
            yield PdfReader(document)
    except pikepdf.PdfError as error:
        raise UnreadableError(f"it is no PDF that can be read ({error})") from error


class PdfReader:
    """Reads the pages of one document; fonts that pages share are read once."""

    def __init__(self, document: pikepdf.Pdf) -> None:
        self._document = document
        self._pages = list(document.pages)
        self._fonts: FontCache = {}

    @property
    def count(self) -> int:
        """How many pages there are."""
        return len(self._pages)

    @property
    def producer(self) -> str:
        """The program that has written the file, as it says itself."""
        return str(self._document.docinfo.get("/Producer", "another program"))

    def read_paper(self, number: int) -> Size:
        """The paper of a page counted from 1, mm. Raises UnreadableError where it is not plain."""
        page = self._pages[number - 1]
        x0, y0, x1, y1 = (float(side) * MM_PER_POINT for side in page.mediabox)
        if (x0, y0) != (0.0, 0.0):
            raise UnreadableError("its paper does not begin at 0, 0")
        sides = zip(page.cropbox, page.mediabox, strict=True)
        if max(abs(float(one) - float(other)) for one, other in sides) > NEAR_MM:
            raise UnreadableError("it is cropped")
        if page.obj.get("/UserUnit", 1) != 1:
            raise UnreadableError("its unit is not 1/72 in (it has a UserUnit)")
        if _inherited(page.obj, "/Rotate"):
            raise UnreadableError("it is turned (it has a Rotate)")
        if not all(map(_is_bare_link, page.obj.get("/Annots", ()))):
            raise UnreadableError("something is laid over it (an annotation)")
        return Size(x1, y1)

    def read_ink(self, number: int, scale: Scale = UNSCALED, origin: Point = ORIGIN) -> Ink:
        """The ink of a page counted from 1, mm after a printer with these factors has printed it.

        It is told from a point of the page, which is given in mm of the file. Raises UnreadableError.
        """
        import pikepdf

        page = self._pages[number - 1]
        (across, up), (x, y) = scale, origin
        matrix = (MM_PER_POINT / across, 0.0, 0.0, MM_PER_POINT / up, -x / across, -y / up)
        resources = Resources(page.resources, self._fonts)
        try:
            reader = Follower(resources, matrix, is_plain=True)
            reader.follow(page, _read_content(page))
        except UnreadableError:
            reader = Follower(resources, matrix, is_plain=False)
            self._document.get_warnings()
            try:
                reader.follow(page, b"")
            except pikepdf.PdfError as error:
                raise UnreadableError(f"it holds what cannot be followed ({error})") from error
            if self._document.get_warnings():
                raise UnreadableError(
                    "it holds what cannot be followed: its content is damaged"
                ) from None
        return reader.ink


def _read_content(page: pikepdf.Page) -> bytes:
    """All parts of a page's content as one."""
    import pikepdf

    content = page.obj.get("/Contents")
    parts = [] if content is None else list(content) if isinstance(content, pikepdf.Array) else [content]
    return b"\n".join(part.read_bytes() for part in parts)


def _is_bare_link(annotation: Any) -> bool:
    """Whether an annotation is a link that draws nothing."""
    return annotation.get("/Subtype") == "/Link" and "/AP" not in annotation


def _inherited(node: Any, key: str) -> Any:
    """What a page says, or the nodes above it."""
    while node is not None:
        if key in node:
            return node[key]
        node = node.get("/Parent")
    return None
