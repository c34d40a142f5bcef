"""Holds the lines by which a template is set (level line, datum, centre lines) against the Plan."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from typing import NamedTuple

from templater.geometry import Box, Point
from templater.verify.ink.rectangles import read_rectangle
from templater.verify.model import NEAR_MM, Ink, Run
from templater.verify.rulers import Ruler
from templater.verify.straight import Straight
from templater.verify.stretches import Stretch, leave, measure
from templater.verify.template_marks import ARM_MM, TemplateMarks

_WIDTH_OFF = 0.03
_DATUM_DASHES, _CENTRE_DASHES = 6, 4
"""Dashes and gaps of the datum (two dots) and of centre lines (one dot)."""

_LEVEL_WIDTH = 0.25
_LONGER_THAN_MARKS = 25.0
_LEVEL_SEARCH = 1.0
_HOLE_GAP_MM = ARM_MM + 1.5
"""So near a hole guide lines are left out."""

_SLACK_MM = 0.5
_RULER_REACH = 9.0
"""How far to its sides a ruler reaches with its figures."""

_SAME_MM = 0.5
"""A datum so near the middle stands for the centre line."""

_WORDS_ASIDE, _ROOM = 9.0, 3.0
"""So far from a line words along it may stand for which it is left out; the room that words take."""

_LEAST_MM = 10.0
"""So long a stretch of a centre line may be wanting at most where nothing else stands."""

_LEAST_OF_STRICT, _LEAST_OF_CENTRE = 0.3, 0.01
"""The same of a template as one drawing."""

_FRAME_ROOM = 2.5


class Guide(NamedTuple):
    """A guide line as a sheet keeps it, and what of it is drawn at its place; ``is_strict``: whole."""

    name: str
    is_level: bool
    place: float
    span: Stretch
    lines: tuple[Straight, ...]
    is_strict: bool


def check_guides_lie(
    level: Sequence[Straight], upright: Sequence[Straight], marks: TemplateMarks
) -> Iterator[str]:
    """Whether the guide lines lie where they must, wherever they are drawn."""
    datum = [] if marks.datum is None else [marks.datum]
    middle = marks.size.width / 2, marks.size.height / 2
    long = [
        line
        for line in _level_lines(level)
        if line.length_mm > _LONGER_THAN_MARKS
        and any(abs(line.across - place) <= _LEVEL_SEARCH for place in marks.levels)
    ]
    for name, lines, places in (
        ("the datum", _dashed(level, _DATUM_DASHES), datum),
        ("the level centre line", _dashed(level, _CENTRE_DASHES), [middle[1]]),
        ("the upright centre line", _dashed(upright, _CENTRE_DASHES), [middle[0]]),
        ("the level line", long, marks.levels),
    ):
        for line in lines:
            off = min((abs(line.across - place) for place in places), default=None)
            if off is None or off > NEAR_MM:
                told = "is drawn where the plan has none" if off is None else f"is {off:.3f} mm off"
                yield f"{name} {told}"
                break


def list_guides(
    level: Sequence[Straight], upright: Sequence[Straight], keep: Box, marks: TemplateMarks
) -> Iterator[Guide]:
    """The guide lines that cross what is kept of a sheet."""
    width, height = marks.size
    across, up = (max(0.0, keep.x0), min(width, keep.x1)), (max(0.0, keep.y0), min(height, keep.y1))
    plain, dotted = tuple(_level_lines(level)), tuple(_dashed(level, _DATUM_DASHES))
    for place in marks.levels:
        yield from _lay("the level line", plain, place, across, up, is_strict=True)
    if marks.datum is not None:
        yield from _lay("the datum", dotted, marks.datum, across, up, is_strict=True)
    if marks.datum is None or abs(marks.datum - height / 2) >= _SAME_MM:
        lines = tuple(_dashed(level, _CENTRE_DASHES))
        yield from _lay("the level centre line", lines, height / 2, across, up, is_strict=False)
    lines = tuple(_dashed(upright, _CENTRE_DASHES))
    for guide in _lay("the upright centre line", lines, width / 2, up, across, is_strict=False):
        yield guide._replace(is_level=False)


def _lay(
    name: str,
    lines: Iterable[Straight],
    place: float,
    along: Stretch,
    shown: Stretch,
    *,
    is_strict: bool,
) -> Iterator[Guide]:
    """A guide line, if what is kept shows it."""
    if shown[0] + NEAR_MM < place < shown[1] - NEAR_MM and along[0] < along[1]:
        own = tuple(line for line in lines if abs(line.across - place) <= NEAR_MM)
        yield Guide(name, True, place, along, own, is_strict)


def check_guides_whole(
    guides: Iterable[Guide],
    holes: Sequence[Point],
    rulers: Sequence[Ruler],
    ink: Ink,
    others: Sequence[Box],
) -> Iterator[str]:
    """Which guide lines are missing: they are left out at holes, and where other things must stand.

    Where a ruler or the sheet's own block found no other room, any of them; where words did not,
    centre lines, also where the words stand on one of the other sheets that show the same.
    """
    framed = (read_rectangle(points) for (points,) in ink.chains)
    frames = [box.grown(_FRAME_ROOM) for box in framed if box is not None]
    for guide in guides:
        taken = [
            *_near_holes(guide, holes),
            *_under_rulers(guide, rulers),
            *_under_boxes(guide, frames),
        ]
        if not guide.is_strict:
            taken += [*_under_words(guide, ink.runs), *_under_boxes(guide, others)]
        wanted = list(leave(guide.span, taken, _SLACK_MM))
        drawn = [line.seen for line in guide.lines if line.seen is not None]
        missing = [part for stretch in wanted for part in leave(stretch, drawn, _SLACK_MM)]
        if guide.is_strict and missing:
            yield f"{guide.name} is not drawn from {missing[0][0]:.1f} mm on"
        elif max((high - low for low, high in missing), default=0.0) > _LEAST_MM:
            yield f"{guide.name} is not drawn"


def _near_holes(guide: Guide, holes: Iterable[Point]) -> Iterator[Stretch]:
    for hole in holes:
        along, aside = hole if guide.is_level else (hole.y, hole.x)
        if abs(aside - guide.place) < _HOLE_GAP_MM:
            half = (_HOLE_GAP_MM**2 - (aside - guide.place) ** 2) ** 0.5
            yield along - half, along + half


def _under_rulers(guide: Guide, rulers: Iterable[Ruler]) -> Iterator[Stretch]:
    """Where a ruler stands on the line, along it or across."""
    for line, _, _, is_level in rulers:
        if is_level == guide.is_level:
            if abs(line.across - guide.place) < _RULER_REACH:
                yield line.low - 2.5, line.high + 3.5
        elif line.low - 2.5 < guide.place < line.high + 3.5:
            yield line.across - _RULER_REACH, line.across + _RULER_REACH


def check_guides_drawn(guides: Iterable[Guide], holes: Sequence[Point]) -> Iterator[str]:
    """Which guide lines are missing of a template as one drawing.

    They are left out at holes, which may leave too little to tell, and for what stands on the single
    sheets, which the drawing does not show.
    """
    for guide in guides:
        drawn = [line.seen for line in guide.lines if line.seen is not None]
        wanted = list(leave(guide.span, _near_holes(guide, holes), _SLACK_MM))
        missing = measure(part for stretch in wanted for part in leave(stretch, drawn, 0.0))
        least = _LEAST_OF_STRICT if guide.is_strict else _LEAST_OF_CENTRE
        if measure(wanted) > _LEAST_MM and missing > (1 - least) * measure(wanted):
            yield f"{guide.name} is not drawn"


def _under_words(guide: Guide, runs: Iterable[Run]) -> Iterator[Stretch]:
    """Where words may stand on the line; rows of a block are taken as long as its longest."""
    own = [(run, run.at if guide.is_level else Point(run.at.y, run.at.x)) for run in runs]
    longest: dict[tuple[bool, float], float] = {}
    for run, (along, aside) in own:
        edge = (run.is_level, round(along if run.is_level == guide.is_level else aside, 1))
        longest[edge] = max(longest.get(edge, 0.0), run.longest_mm)
    for run, (along, aside) in own:
        if run.is_level == guide.is_level:
            if abs(aside - guide.place) < _WORDS_ASIDE:
                yield along - _ROOM, along + longest[run.is_level, round(along, 1)] + _ROOM
        elif aside - _ROOM < guide.place < aside + longest[run.is_level, round(aside, 1)] + _ROOM:
            yield along - run.em_mm - _ROOM, along + run.em_mm + _ROOM


def _under_boxes(guide: Guide, boxes: Iterable[Box]) -> Iterator[Stretch]:
    """Where a box lies over the line: a framed block, or what another sheet shows of a lap."""
    for x0, y0, x1, y1 in boxes:
        low, high, near, far = (x0, x1, y0, y1) if guide.is_level else (y0, y1, x0, x1)
        if near <= guide.place <= far:
            yield low, high


def _level_lines(lines: Iterable[Straight]) -> Iterator[Straight]:
    """The unbroken lines of the level line's width."""
    return (
        line for line in lines if not line.dashes and abs(line.width_mm - _LEVEL_WIDTH) <= _WIDTH_OFF
    )


def _dashed(lines: Iterable[Straight], dashes: int) -> list[Straight]:
    return [line for line in lines if line.dashes == dashes]
