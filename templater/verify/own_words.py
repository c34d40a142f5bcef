"""What pages say of themselves: whether each is in the file once, in its place, and of this revision."""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Iterator, Mapping, Sequence

from templater.verify.model import Ink

_NUMBER = re.compile(r"page (\d+) of (\d+)")
_REVISION = re.compile(r"rev ([A-Z0-9]{6})")


def read_number(ink: Ink, given: str) -> tuple[int, int] | None:
    """The page's number and how many there are, as it says itself; None unless it says so once.

    ``given`` are the layout's own texts: a piece may be called ``page 3 of 9``.
    """
    numbers = {match.groups() for run in ink.runs if (match := _NUMBER.fullmatch(run.text))}
    if len(numbers) > 1:
        numbers = {(page, count) for page, count in numbers if f"page {page} of {count}" not in given}
    if len(numbers) != 1:
        return None
    ((number, count),) = numbers
    return int(number), int(count)


def check_revision(ink: Ink, revision: str, given: str) -> Iterator[str]:
    """Whether a page or a drawing bears the kit's revision, and none that the layout has not given."""
    found = {match[1] for run in ink.runs if (match := _REVISION.fullmatch(run.text))}
    found = {one for one in found if one == revision or f"rev {one}" not in given}
    if found != {revision}:
        yield f"it bears the revision {' and '.join(sorted(found)) or 'none'}; this kit is {revision}"


def check_order(found: Sequence[tuple[int, int] | None], names: Mapping[int, str]) -> Iterator[str]:
    """What is wrong with the pages' order; ``names`` are all pages there must be, by their numbers."""
    for place, number in enumerate(found, 1):
        if number is None:
            yield f"page {place} of the file does not bear its number"
        elif number[1] != len(names):
            yield f"page {place} of the file is of a kit of {number[1]} pages, not of {len(names)}"
    own = [number[0] for number in found if number is not None]
    present = Counter(own)
    missing = [page for page in names if page not in present]
    twice = [page for page, times in present.items() if times > 1]
    for page in missing:
        yield f"page {page} ({names[page]}) is missing"
    for page in twice:
        yield f"page {page} ({names.get(page, 'unknown')}) is there twice"
    if not missing and not twice:
        for place, page in enumerate(own, 1):
            if page != place:
                yield f"page {page} ({names.get(page, 'unknown')}) stands where page {place} belongs"
