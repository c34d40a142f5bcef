"""Settles every group that leaves something open, one after the other."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import replace

from templater.errors import Fault, LayoutError, UsageError
from templater.layout.model import Group, Layout
from templater.mounting.model import Mount
from templater.placement.place import place_pieces
from templater.quoting import quote
from templater.search.advice import advise
from templater.search.candidates import Round, list_candidates
from templater.search.extent import Allowance, check_extent
from templater.search.judge import Judge
from templater.search.model import Proposal, Settlement
from templater.search.rank import pick_different, rank
from templater.search.target import find_target


def settle_groups(
    layout: Layout, mounts: Mapping[str, Mount], choices: Sequence[int] = ()
) -> tuple[Settlement, ...]:
    """Settle the open groups in the layout's order, a group before the one that it is part of.

    ``choices`` are the numbers (from 1) of the proposals to take, in that order; where there is
    none, the first is taken. Later groups see what was taken of the earlier ones: where it hangs,
    and which pieces of a pool are gone; in the end every proposal is told on the wall as it then
    is. Raises LayoutError where a group can be placed in no way or there is too much to search,
    and UsageError for a choice that there is not.
    """
    check_extent(layout)
    still_open = [group.name for group in _inner_first(layout) if group.open_choice]
    _check_choices(choices, still_open)
    allowance = Allowance.of(layout)
    settlements: list[Settlement] = []
    for number, name in enumerate(still_open):
        taken = choices[number] if number < len(choices) else 1
        now = _put_off(layout, still_open[number + 1 :])
        settlement = _settle(name, now, mounts, taken, allowance)
        settlements.append(settlement)
        layout = _pass_on(settlement.choice.group, layout)
    judge = Judge(layout, mounts)
    return tuple(_judge_again(settlement, layout, judge) for settlement in settlements)


def _check_choices(choices: Sequence[int], still_open: Sequence[str]) -> None:
    """Refuse more choices than there are open groups. Raises UsageError."""
    if len(choices) > len(still_open):
        groups = "group leaves" if len(still_open) == 1 else "groups leave"
        message = f"{len(choices)} proposals are chosen, but {len(still_open)} {groups} something open"
        raise UsageError([Fault(message, "choose one for each open group, in the layout's order")])


def _inner_first(layout: Layout) -> Iterator[Group]:
    """The groups in the layout's order, each after those that are part of it."""
    by_name = {group.name: group for group in layout.groups}

    def follow(name: str) -> Iterator[Group]:
        group = by_name.pop(name, None)
        if group is not None:
            for member in group.members:
                yield from follow(member)
            yield group

    for group in layout.groups:
        yield from follow(group.name)


def _put_off(layout: Layout, later: Sequence[str]) -> Layout:
    """The layout without the groups that are settled later.

    One that has other groups in it is needed for their sake, and is a row until its turn comes.
    """
    names = {group.name for group in layout.groups}
    kept = (
        replace(group, open_choice=None) if group.name in later else group
        for group in layout.groups
        if group.name not in later or names.intersection(group.members)
    )
    return replace(layout, groups=tuple(kept))


def _pass_on(settled: Group, layout: Layout) -> Layout:
    """The layout with a group settled, its pieces taken out of all pools."""
    groups = []
    for group in layout.groups:
        choice = group.open_choice
        if group.name == settled.name:
            groups.append(settled)
        elif choice and choice.pool:
            pool = tuple(name for name in choice.pool if name not in settled.members)
            groups.append(replace(group, open_choice=replace(choice, pool=pool)))
        else:
            groups.append(group)
    return replace(layout, groups=tuple(groups))


def _settle(
    name: str, layout: Layout, mounts: Mapping[str, Mount], taken: int, allowance: Allowance
) -> Settlement:
    """The best ways to settle one group on a wall on which all else is settled or left away."""
    group = next(each for each in layout.groups if each.name == name)
    _check_pool(group)
    plan = place_pieces(layout, mounts).plan
    sizes = {piece.name: piece.size for piece in layout.pieces}
    rounds = list_candidates(group, sizes, plan, allowance)
    proposals, thinned = _judge_all(group, rounds, Judge(layout, mounts))
    best = pick_different(rank(proposals, find_target(group, plan)))
    if not 1 <= taken <= len(best):
        count = "1 proposal" if len(best) == 1 else f"{len(best)} proposals"
        message = f"proposal {taken} of {quote(name)} is chosen, but it has {count}"
        raise UsageError([Fault(message, "choose one of those that are shown", group.at)])
    advice = ". ".join(filter(None, (advise(group, best[0], sizes, plan, allowance), thinned))) or None
    return Settlement(best, taken, advice)


def _judge_again(settlement: Settlement, layout: Layout, judge: Judge) -> Settlement:
    """The proposals on the wall as it is once all groups are settled, as far as they then fit."""
    others = {name for group in layout.groups if group.name != settlement.name for name in group.members}
    proposals = (
        proposal
        if others.intersection(proposal.group.members)
        else judge.judge(proposal.group)[0] or proposal
        for proposal in settlement.proposals
    )
    return replace(settlement, proposals=tuple(proposals))


def _check_pool(group: Group) -> None:
    """Refuse a pool of which earlier groups have left too little. Raises LayoutError."""
    choice = group.open_choice
    if choice is None or choice.pool is None or len(choice.pool) >= (choice.count or 1):
        return
    wanted, left = choice.count or 1, len(choice.pool)
    message = f"{quote(group.name)} is to choose {wanted}, but earlier groups leave {left} of its pool"
    raise LayoutError([Fault(message, "add pieces to choose from, or lower a 'count'", group.at)])


def _judge_all(group: Group, rounds: Iterable[Round], judge: Judge) -> tuple[list[Proposal], str | None]:
    """The candidates of the first round of which any can be placed, and what is to be said of it.

    Raises LayoutError where there is none, with the faults of one that has fewest.
    """
    least: tuple[Fault, ...] = ()
    for candidates in rounds:
        proposals: list[Proposal] = []
        for candidate in candidates.groups:
            proposal, faults = judge.judge(candidate)
            if proposal:
                proposals.append(proposal)
            elif not least or len(faults) < len(least):
                least = faults
        if proposals:
            return proposals, _tell_thinned(group, candidates)
    message = f"{quote(group.name)} can be hung in no way that fits; of the nearest one it is said:"
    raise LayoutError([Fault(message, "mend the faults that follow", group.at), *least])


def _tell_thinned(group: Group, candidates: Round) -> str | None:
    """That not every way was judged, if it is so."""
    count = len(candidates.groups)
    if count == candidates.listed:
        return None
    return (
        f"of {candidates.listed:,} ways to hang {quote(group.name)} the {count:,} likeliest were tried, "
        "because so much is open in this layout"
    )
