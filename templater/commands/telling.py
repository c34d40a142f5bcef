"""What commands say: results on stdout, all other talk on stderr, names never moving a figure.

A terminal turns Hebrew and Arabic round by itself, and with them the numbers that stand beside: the
height of a hole could change places with another. So names are set apart by the Unicode Standard's
isolates (Annex 9), which take no room.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from typing import TYPE_CHECKING

import click

if TYPE_CHECKING:
    from templater.pipeline import ArrangedWall, PlannedWall
    from templater.placement.model import Plan
    from templater.reading_order import ReadingOrder
    from templater.rules.model import Finding

_QUOTED = re.compile("'([^'\n]*)'")
_STRETCH = re.compile(r"\S+(?: \S+)*")
"""Words that stand together, such as those of a table's cell."""


def show(text: str) -> None:
    """Write a result on stdout."""
    click.echo(set_apart(text))


def tell(text: str, order: ReadingOrder | None = None) -> None:
    """Write on stderr what is to be known beside the results."""
    click.echo(set_apart(text, order), err=True)


def set_apart(text: str, order: ReadingOrder | None = None) -> str:
    """The text with isolates round what runs to the left.

    ``order`` knows the names that may stand in it; without one, what stands in quotes is a name.
    """
    if text.isascii():
        return text
    from templater.reading_order import ReadingOrder

    order = order or ReadingOrder(_QUOTED.findall(text))
    return _STRETCH.sub(lambda stretch: order.isolate(stretch[0]), text)


def name_lacking_signs(error: UnicodeError) -> tuple[str, int]:
    """What takes the place of signs that a stream's encoding lacks: their names, none for isolates.

    For ``codecs.register_error``: a minus sign must not be lost on its way to a file.
    """
    from templater.reading_order import WITHOUT_ISOLATES

    if not isinstance(error, UnicodeEncodeError):
        raise error
    lacking = error.object[error.start : error.end].translate(WITHOUT_ISOLATES)
    return lacking.encode("ascii", "namereplace").decode(), error.end


def tell_idle(plan: Plan, findings: Sequence[Finding]) -> None:
    """Say which acceptances of the layout no longer apply."""
    from templater.rules.accept import find_idle_acceptances

    for remark in find_idle_acceptances(plan, findings):
        tell(str(remark))


def tell_lacking(wall: PlannedWall | ArrangedWall) -> None:
    """Say which letters of a layout would be printed as empty boxes."""
    from templater.pipeline import tell_lacking_letters

    if told := tell_lacking_letters(wall):
        tell(told)
