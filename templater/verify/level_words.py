"""Holds what a sheet says of its level lines, and where to set them, against the Plan."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from functools import lru_cache

from templater.verify.hole_words import list_blocks
from templater.verify.model import Run
from templater.verify.read_lengths import LENGTH, plain, tells
from templater.verify.template_marks import TemplateMarks

_SAYING = re.compile(
    r"LEVEL LINE(?:, (?:all )?holes? ?(?P<numbers>[\d, ]*\d)?)?(?: \(unbroken\))?"
    rf" set it (?:(?P<away>{LENGTH} (?:above|below)) the datum|on the datum)"
)
_HEADING = "LEVEL LINE"
_ZERO = "0 mm"


def check_level_words(runs: Sequence[Run], marks: TemplateMarks) -> Iterator[str]:
    """Whether each level line that is explained is told to be set where its holes need it.

    Where holes have hang points at several heights, each line must be told by its holes. What a name
    in the layout says too cannot be told from it, and is not judged.
    """
    if _is_said(marks.given) or not any(plain(run.text).startswith(_HEADING) for run in runs):
        return
    for block in list_blocks(runs):
        if match := _SAYING.match(" ".join(block)):
            yield from _check_saying(match, marks)


@lru_cache(maxsize=8)
def _is_said(given: str) -> bool:
    """Whether the layout's own texts say the same as sheets do."""
    return _SAYING.search(" ".join(given.split())) is not None


def _check_saying(match: re.Match[str], marks: TemplateMarks) -> Iterator[str]:
    """What is wrong with one explanation."""
    if match["numbers"] is None and len(marks.levels) > 1:
        yield "a level line is not told by its holes, though there are several"
        return
    count = len(marks.measures)
    named = [int(each) for each in (match["numbers"] or "").split(",") if each.strip()]
    for number in named or range(1, count + 1):
        if number > count:
            yield f"it tells of hole {number}, which the plan does not have"
            continue
        away = marks.measures[number - 1].from_datum + marks.measures[number - 1].rise
        told = match["away"] or _ZERO
        if not tells(told, -away if told.endswith("below") else away):
            place = f"set {match['away'] or 'on the datum'}, the plan has {away:.1f} mm"
            yield f"the level line of hole {number} is told to be {place}"
            return
