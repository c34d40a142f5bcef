"""Says what would be needed where no way to hang a group keeps the rule of width over furniture."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from typing import NamedTuple

from templater.geometry import Size
from templater.layout.model import Arrangement, Group, OpenChoice
from templater.lengths import format_both
from templater.placement.model import Plan
from templater.quoting import list_words, quote
from templater.rules.width_over_furniture import CODE
from templater.search.extent import Allowance
from templater.search.model import Proposal
from templater.search.pool import list_sets
from templater.search.target import find_below, find_share, list_gaps

LEAST_PIECE_MM = 100.0
"""A missing piece narrower than this is no answer: hardly any frame is."""


class _Row(NamedTuple):
    """A row that a piece of the width ``missing_mm`` would complete; ``off_mm``: without it."""

    off_mm: float
    missing_mm: float
    beside: tuple[str, ...]
    gap_mm: float


def advise(
    group: Group, best: Proposal, sizes: Mapping[str, Size], plan: Plan, allowance: Allowance
) -> str | None:
    """How wide the missing piece should be, or the furniture; None where the best keeps the rule.

    A missing piece brings the nearest row to the target: one piece more where any number may hang,
    else one in place of the row's narrowest. It is only sought where the group may be a row and
    chooses from a pool. The furniture is that of which the best proposal is two thirds wide.
    """
    below = find_below(group, plan)
    if below is None or CODE not in best.broken_rules:
        return None
    share, choice = find_share(plan), group.open_choice
    told = f"no way to hang {quote(group.name)} suits the width of {quote(below.name)}"
    suited = format_both(best.figures.width_mm / share, plan.units)
    ways = [f"the first way would suit furniture {suited} wide"]
    is_row = choice is not None and (choice.arrange or group.arrange is Arrangement.ROW)
    if is_row and choice is not None and choice.pool:
        sets = list_sets(choice, sizes, allowance.shorten_pool(is_wide=True))
        gaps, target = list_gaps(group, plan.units), below.box.width * share
        rows = _list_rows(choice, sets, sizes, gaps, target)
        if row := min(rows, key=lambda each: (round(each.off_mm, 6), len(each.beside)), default=None):
            ways.insert(0, _describe(row, plan))
    return f"{told}: {'; or '.join(ways)}"


def _list_rows(
    choice: OpenChoice,
    sets: Iterable[tuple[str, ...]],
    sizes: Mapping[str, Size],
    gaps: Sequence[float],
    target: float,
) -> Iterator[_Row]:
    """Every row of the pool that a missing piece would complete."""
    for names in sets:
        width = sum(sizes[name].width for name in names)
        beside = names if choice.count is None else _without_narrowest(names, sizes)
        kept = sum(sizes[name].width for name in beside)
        for gap in gaps:
            missing = target - kept - len(beside) * gap
            if missing >= LEAST_PIECE_MM:
                off = abs(width + (len(names) - 1) * gap - target)
                yield _Row(off, missing, beside, gap)


def _without_narrowest(names: tuple[str, ...], sizes: Mapping[str, Size]) -> tuple[str, ...]:
    narrowest = min(names, key=lambda name: sizes[name].width)
    return tuple(name for name in names if name != narrowest)


def _describe(row: _Row, plan: Plan) -> str:
    """The missing piece in words."""
    words = f"a piece {format_both(row.missing_mm, plan.units)} wide is missing"
    if not row.beside:
        return words
    names = list_words([quote(name) for name in row.beside], "and")
    return f"{words} in a row with {names}, gap {format_both(row.gap_mm, plan.units)}"
