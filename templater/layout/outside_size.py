"""The outside of a frame, from the picture in it."""

from __future__ import annotations

from templater.geometry import Size


def find_outside_size(picture: Size, mat_mm: float, moulding_mm: float, rabbet_mm: float) -> Size:
    """The frame's outside: the picture, its mat and the moulding all round, mm.

    The mat's outer edge, or the picture's without a mat, lies in the rabbet, which the moulding
    covers; so each side adds mat + moulding - rabbet. ``mat_mm`` is the mat board's whole border;
    the play that a framer leaves in the rabbet is not counted.
    """
    border = 2 * (mat_mm + moulding_mm - rabbet_mm)
    return Size(picture.width + border, picture.height + border)
