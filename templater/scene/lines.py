"""Line widths and dashes of ISO 128, lettering heights of ISO 3098, all in mm.

Widths come from the series 0.13 0.18 0.25 0.35 0.5 0.7; thick to thin is 2 : 1. Dashes are
multiples of the line's width (ISO 128-20: long dash 24, gap 3, dash 12). Capitals come from
the series 2.5 3.5 5 7 10; nothing on paper is lettered smaller than 2.5.
"""

from __future__ import annotations

from templater.drawing import Dash

FINE = 0.18
THIN = 0.25
MEDIUM = 0.35
THICK = 0.5
HEAVY = 0.7

SMALL = 2.5
NORMAL = 3.5
LARGE = 5.0
TITLE = 7.0
HUGE = 10.0


_DOT = 0.6
_SPACE = 1.2
"""ISO's dot of half a line's width, and gap of three, are lost on a home printer."""


def centre_dash(width_mm: float) -> Dash:
    """Long dash and dot: centre lines (ISO 128 line 04)."""
    return (24 * width_mm, _SPACE, _DOT, _SPACE)


def datum_dash(width_mm: float) -> Dash:
    """Long dash and two dots: the datum (ISO 128 line 05)."""
    return (24 * width_mm, _SPACE, _DOT, _SPACE, _DOT, _SPACE)


def short_dash(width_mm: float) -> Dash:
    """Dashes: hidden edges, laps (ISO 128 line 02)."""
    return (12 * width_mm, 3 * width_mm)


def spaced_dash(width_mm: float) -> Dash:
    """Dashes far apart: what is hidden in the wall, unlike any line that is cut (ISO 128 line 03)."""
    return (12 * width_mm, 18 * width_mm)
