"""An SVG page rasterised as PNG with its physical size, where the system has cairo."""

from __future__ import annotations

from io import BytesIO

from templater.to_files.held_signals import signals_held

CAIRO_HINT = (
    "no PNG: the system's cairo library was not found; install it with 'apt install libcairo2' "
    "(Debian), 'brew install cairo' (macOS) or the GTK runtime (Windows)"
)

DOTS_PER_INCH = 150


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
            bytestring=svg.encode(), dpi=96, scale=DOTS_PER_INCH / 96, background_color="white"
        )
    grey = BytesIO()
    with Image.open(BytesIO(picture)) as image:
        image.convert("L").save(grey, "PNG", dpi=(DOTS_PER_INCH, DOTS_PER_INCH))
    return grey.getvalue()
