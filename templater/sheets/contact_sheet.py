"""The contact sheet's pages: every proposal of the search, drawn and described."""

from __future__ import annotations

from collections.abc import Sequence

from templater.scene.model import Form
from templater.scene.overview.contact_sheet import Entry, draw_contact_sheet
from templater.search.model import Proposal, Settlement
from templater.search.wording import list_figures, name_way
from templater.sheets.model import Layer, Page, PageKind


def compose_contact_sheet(settlements: Sequence[Settlement], form: Form) -> tuple[Page, ...]:
    """The proposals of all groups, three a page."""
    entries = [
        _describe(number, proposal)
        for settlement in settlements
        for number, proposal in enumerate(settlement.proposals, 1)
    ]
    return tuple(
        Page(PageKind.FORM, drawing.size, (Layer(drawing.items),), label=str(number))
        for number, drawing in enumerate(draw_contact_sheet(entries, form), 1)
    )


def _describe(number: int, proposal: Proposal) -> Entry:
    """A proposal as an entry of the sheet."""
    captions = tuple(f"{name}: {figure}" for name, figure in list_figures(proposal).items())
    return Entry(f"{number}  {name_way(proposal)}", proposal.plan, proposal.group.name, captions)
