"""Holds the overview's picture against its drawing: how large it is, and the crosses of the holes."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path
from typing import Any

from templater.geometry import Point, Size
from templater.verify.model import UnreadableError

_MM_PER_INCH = 25.4
_LEAST_DOTS = 100.0
"""An inch must have so many dots, or a cross cannot be told."""

_DARK = 160
"""A dot of a line is at least so dark, of 255."""

_SAMPLES = tuple(
    (along * sign, 0.0) if level else (0.0, along * sign)
    for along in (0.5, 0.8)
    for sign in (-1, 1)
    for level in (True, False)
)
"""Places on the arms of a cross, mm from its middle."""


def check_picture(path: Path, size: Size, crosses: dict[str, Point]) -> Iterator[str]:
    """Whether a picture is as large as the drawing, and dark within a dot of the arms of each cross.

    ``crosses`` are where the drawing has them by their names, mm from its lower left corner. Raises
    UnreadableError.
    """
    from PIL import Image

    try:
        with Image.open(path) as image:
            across, up = image.info.get("dpi", (0.0, 0.0))
            grey = image.convert("L")
    except (OSError, SyntaxError, ValueError) as error:
        raise UnreadableError(f"it is no picture that can be read ({error})") from error
    if min(across, up) < _LEAST_DOTS:
        yield "it does not tell its physical size, or is too coarse"
        return
    dots = Size(across / _MM_PER_INCH, up / _MM_PER_INCH)
    wanted = size.width * dots.width, size.height * dots.height
    if max(abs(side - told) for side, told in zip(grey.size, wanted, strict=True)) > 1.5:
        width, height = grey.width / dots.width, grey.height / dots.height
        yield f"it is {width:.1f} × {height:.1f} mm large, not {size.width:.1f} × {size.height:.1f} mm"
        return
    pixels = grey.load()
    for name, (x, y) in crosses.items():
        for dx, dy in _SAMPLES:
            column, row = (x + dx) * dots.width, (size.height - y - dy) * dots.height
            if not _is_dark(pixels, grey.size, column, row, is_level=dy == 0.0):
                yield f"{name} is not marked at its place"
                break


def _is_dark(pixels: Any, size: tuple[int, int], column: float, row: float, *, is_level: bool) -> bool:
    """Whether a dot is dark, or the one beside it across its line."""
    for aside in (0, -1, 1):
        at = (int(column), int(row) + aside) if is_level else (int(column) + aside, int(row))
        if 0 <= at[0] < size[0] and 0 <= at[1] < size[1] and pixels[at] < _DARK:
            return True
    return False
