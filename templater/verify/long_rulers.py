"""Measures the long rulers of the print test, by which a printer is judged."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from math import dist
from typing import NamedTuple

from templater.geometry import Point
from templater.verify.model import NEAR_MM, Ink

_LENGTH = re.compile(r"The long ruler (across|up) must be (\d+) mm")
_RING_MM = 1.0
_RING_OFF = 0.1
_OFF = 0.05


class LongRulers(NamedTuple):
    """What a page says of long rulers (the way, how many mm), and the lines on it that may be one."""

    told: list[tuple[str, float]]
    lengths: dict[str, list[float]]


def read_long_rulers(ink: Ink, given: str) -> LongRulers:
    """The long rulers of a page: lines that end in a small ring; ``given`` are the layout's texts."""
    words = " ".join(run.text for run in ink.runs)
    ends = [ring.centre for ring in ink.rings if abs(ring.radius_mm - _RING_MM) <= _RING_OFF]
    lengths = {
        way: [
            dist(start, end)
            for start, end in _list_lines(ink, is_across=way == "across")
            if min((dist(ring, end) for ring in ends), default=1.0) <= NEAR_MM
        ]
        for way in (("across", "up") if ends else ())
    }
    told = [(one[1], float(one[2])) for one in _LENGTH.finditer(words) if one[0] not in given]
    return LongRulers(told, lengths)


def check_long_rulers(pages: Sequence[LongRulers]) -> Iterator[str]:
    """Whether each long ruler is as long as is told; on small paper that stands on the next page."""
    told = dict.fromkeys(saying for page in pages for saying in page.told)
    if {way for way, _ in told} != {"across", "up"}:
        yield "it does not tell how long its rulers must be"
    for way, wanted in told:
        lengths = [length for page in pages for length in page.lengths.get(way, ())]
        near = [length for length in lengths if abs(length - wanted) <= _OFF * wanted]
        found = min(near, key=lambda length: abs(length - wanted), default=None)
        if found is None or abs(found - wanted) > NEAR_MM:
            measured = (
                "is not drawn" if found is None else f"measures {found:.3f} mm, not {wanted:.0f} mm"
            )
            yield f"the long ruler {way} {measured}"


def _list_lines(ink: Ink, *, is_across: bool) -> Iterator[tuple[Point, Point]]:
    """Every line that runs across or up, from its left or its foot."""
    for stroke in ink.strokes:
        start, end = sorted((stroke.start, stroke.end))
        aside = end.y - start.y if is_across else end.x - start.x
        if abs(aside) <= NEAR_MM:
            yield start, end
