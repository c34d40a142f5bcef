"""Holds what a sheet says of its holes, their numbers and their measures, against the Plan."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Sequence
from functools import lru_cache

from templater.geometry import Box
from templater.verify.model import Run
from templater.verify.read_lengths import LENGTH, plain, tells
from templater.verify.template_marks import ARM_MM, TemplateMarks

_HEADING = re.compile(r"(?:HOLE (\d+)(?: of (\d+))?|HOLES ([\d, ]+)|(ALL HOLES))")
_KEY = "HOLES, from the wall's left end"
_KEY_ROW = re.compile(rf"(\d+): ({LENGTH})")
_SAYINGS = {
    "across": re.compile(rf"from the wall's left end: ({LENGTH})"),
    "from_datum": re.compile(rf"from the datum: ({LENGTH})"),
    "height": re.compile(rf"above the floor at the datum's place: ({LENGTH})"),
    "drop": re.compile(rf"drop, frame's top edge to hang point: ({LENGTH})"),
    "rise": re.compile(rf"(?<!to )hang point: ({LENGTH} (?:above|below)) the hole"),
    "aside": re.compile(rf"from the middle of .+?: ({LENGTH} (?:left|right))"),
}
_NEAR_MM = ARM_MM + 1.0
"""Nothing but its number stands so near a hole."""

_COLUMN_MM = 0.01
_PITCH_MM = 5.0
"""Rows of a block stand 4.75 mm apart, 1.9 times their capitals of 2.5 mm; blocks are farther apart."""


def check_hole_words(runs: Sequence[Run], marks: TemplateMarks) -> Iterator[str]:
    """Whether numbers beside holes and measures under their headings are those of the plan.

    What a name in the layout says too cannot be told from it, and is not judged.
    """
    yield from _check_numbers(runs, marks)
    if _KEY in _list_given(marks.given):
        return
    for block in list_blocks(runs):
        heading, text = block[0], " ".join(block[1:])
        if match := _HEADING.fullmatch(heading):
            numbers = _list_numbers(match, len(marks.measures))
            if not numbers or max(numbers) > len(marks.measures):
                yield f"it tells of {heading}, which the plan does not have"
                continue
            for number in numbers:
                yield from _check_sayings(text, marks, number)
        elif heading.startswith(_KEY):
            yield from _check_key(text, marks)


@lru_cache(maxsize=8)
def _list_given(given: str) -> frozenset[str]:
    """What a layout's own texts say as sheets do: keys of sayings; for any heading, that of the key."""
    headings = (_HEADING.fullmatch(text) or text.startswith(_KEY) for text in given.splitlines())
    said = {key for key, saying in _SAYINGS.items() if saying.search(given)}
    return frozenset(said | ({_KEY} if any(headings) else set()))


def _check_numbers(runs: Iterable[Run], marks: TemplateMarks) -> Iterator[str]:
    """Whether a number that stands beside a hole is that hole's."""
    for text, at, *_ in runs:
        if text.isdecimal():
            near = [
                number
                for number, hole in enumerate(marks.holes, 1)
                if Box(*hole, *hole).grown(_NEAR_MM).has(at)
            ]
            if near and int(text) not in near:
                yield f"hole {near[0]} bears the number {text}"


def list_blocks(runs: Iterable[Run]) -> Iterator[list[str]]:
    """Rows of words that stand one under the other, as they were drawn."""
    block: list[str] = []
    last: Run | None = None
    for run in runs:
        goes_on = (
            last is not None
            and abs(run.at.x - last.at.x) <= _COLUMN_MM
            and 0 < last.at.y - run.at.y <= _PITCH_MM
            and not _HEADING.fullmatch(plain(run.text))
        )
        if not goes_on and block:
            yield block
            block = []
        block.append(plain(run.text))
        last = run
    if block:
        yield block


def _list_numbers(match: re.Match[str], count: int) -> list[int]:
    """The holes that a heading names."""
    one, of, several, _ = match.groups()
    if several:
        return [int(number) for number in several.split(",")]
    if one:
        return [int(one)] if of is None or int(of) == count else []
    return list(range(1, count + 1))


def _check_sayings(text: str, marks: TemplateMarks, number: int) -> Iterator[str]:
    """Which measures of one hole are not the plan's."""
    for key, saying in _SAYINGS.items():
        wanted = getattr(marks.measures[number - 1], key)
        for told in () if key in _list_given(marks.given) else saying.findall(text):
            signed = -wanted if told.endswith(("left", "below")) else wanted
            if not tells(told, signed):
                yield f"hole {number} is told to be {told} {_MEANING[key]}, the plan has {wanted:.1f} mm"


_MEANING = {
    "across": "from the wall's left end",
    "from_datum": "from the datum",
    "height": "above the floor",
    "drop": "below the frame's top edge with its hang point",
    "rise": "from its hang point",
    "aside": "from the furniture's middle",
}


def _check_key(text: str, marks: TemplateMarks) -> Iterator[str]:
    """Whether the rows of a key are the plan's."""
    for number, told in _KEY_ROW.findall(text):
        if int(number) > len(marks.measures):
            yield f"it tells of hole {number}, which the plan does not have"
        else:
            yield from _check_sayings(f"from the wall's left end: {told}", marks, int(number))
