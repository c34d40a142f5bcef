"""An SVG page rasterised as PNG with its physical size, where the system has cairo."""

from __future__ import annotations

import struct
import zlib

CAIRO_HINT = (
    "no PNG: the system's cairo library was not found; install it with 'apt install libcairo2' "
    "(Debian), 'brew install cairo' (macOS) or the GTK runtime (Windows)"
)

DOTS_PER_INCH = 150


class CairoMissingError(Exception):
    """The system's cairo library cannot be loaded."""


def png_bytes(svg: str) -> bytes:
    """The drawing at 150 dots an inch. Raises CairoMissingError."""
    try:
        import cairosvg
    except OSError as error:  # cairocffi says so when it finds no library
        raise CairoMissingError(CAIRO_HINT) from error
    picture: bytes = cairosvg.svg2png(
        bytestring=svg.encode(), dpi=96, scale=DOTS_PER_INCH / 96, background_color="white"
    )
    return _with_physical_size(picture)


def _with_physical_size(picture: bytes) -> bytes:
    """The PNG with a pHYs chunk (PNG specification, 11.3.5.3) after its header."""
    dots_per_metre = round(DOTS_PER_INCH / 0.0254)
    body = b"pHYs" + struct.pack(">IIB", dots_per_metre, dots_per_metre, 1)
    chunk = struct.pack(">I", 9) + body + struct.pack(">I", zlib.crc32(body))
    after_header = 8 + 25
    return picture[:after_header] + chunk + picture[after_header:]
