"""An SVG page rasterised as PNG with its physical size, where the system has cairo."""

from __future__ import annotations

import re
from io import BytesIO

from templater.to_files.held_signals import signals_held

CAIRO_HINT = (
    "no PNG: the system's cairo library was not found; install it with 'apt install libcairo2' "
    "(Debian), 'brew install cairo' (macOS) or the GTK runtime (Windows)"
)

DOTS_PER_INCH = 150

_OUTLINE = re.compile(r'<path id="([^"]*)" d="([^"]*)" />')
_LETTER = re.compile(r'<use xlink:href="#([^"]*)" x="([^"]*)" />')


class CairoMissingError(Exception):
    """The system's cairo library cannot be loaded."""


def png_bytes(svg: str) -> bytes:
    """The drawing in greys at 150 dots an inch, its physical size noted. Raises CairoMissingError."""
    try:
        import cairosvg
    except OSError as error:  # cairocffi says so when it finds no library
        raise CairoMissingError(CAIRO_HINT) from error
    from PIL import Image

    with signals_held():  # cairo's callbacks would swallow Ctrl-C and take it for a disk that refuses
        picture = cairosvg.svg2png(
            bytestring=_write_letters_out(svg).encode(),
            dpi=96,
            scale=DOTS_PER_INCH / 96,
            background_color="white",
        )
    grey = BytesIO()
    with Image.open(BytesIO(picture)) as image:
        image.convert("L").save(grey, "PNG", dpi=(DOTS_PER_INCH, DOTS_PER_INCH))
    return grey.getvalue()


def _write_letters_out(svg: str) -> str:
    """The drawing with each letter's outline in its place: a quick file for a slow reader.

    cairosvg looks through the whole of a drawing for every reference.
    """
    outlines = dict(_OUTLINE.findall(svg))
    return _LETTER.sub(
        lambda letter: f'<path transform="translate({letter[2]})" d="{outlines[letter[1]]}" />', svg
    )
