"""Paper near the least that is taken: it is refused, or the kit is proved and can be measured."""

from __future__ import annotations

import re
from pathlib import Path
from tempfile import TemporaryDirectory

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from templater.drawing import Words
from templater.geometry import Size
from templater.layout.model import Margins
from templater.pipeline import PrintChoices, plan_kit, plan_wall
from templater.printing.model import Coverage, Printer
from templater.proving import write_proved_kit
from templater.sheets.compose import Kit
from tests.kits import without_picture

LAYOUT = """\
title: Keeper's cottage, signal room
units: mm
paper: {paper}
margin: {margin} mm
lap: {lap} mm
wall: {{width: 4000, height: 2600}}
pieces:
  - name: Flag chart
    size: {size}
    hang: {{by: {by}, drop: 30}}
    place: {{centre: 900, bottom: 1300}}
  - {{name: Signal lamp, size: 90 x 120, hang: {{by: nail, drop: 12}}, place: {{centre: 2400}}}}
"""


def _plan(source: str, cover: Coverage) -> Kit:
    return plan_kit(plan_wall(source.encode(), "signals.yaml"), PrintChoices(cover=cover))[0]


def _list_rulers(kit: Kit) -> list[list[tuple[str, bool]]]:
    """The ends of the rulers in mm on each page of templates, and whether they stand."""
    pages = [page for template in kit.templates() if not template.is_shared for page in template.pages]
    return [
        sorted(
            (item.text, item.turned)
            for layer in page.layers
            for item in layer.items
            if isinstance(item, Words) and re.fullmatch(r"\d+ mm", item.text)
        )
        for page in [*pages, *kit.shared_pages()]
    ]


def _prove(kit: Kit, source: str) -> None:
    with TemporaryDirectory() as folder, without_picture():
        write_proved_kit(kit, source.encode(), Path(folder) / "kit")


@st.composite
def layouts(draw: st.DrawFn) -> str:
    """Any piece on paper of which margins and lap leave the least that is taken, or some more."""
    margin, lap = draw(st.integers(0, 25)), draw(st.sampled_from((0, 5, 10, 20)))
    short, long = draw(st.integers(125, 190)), draw(st.integers(165, 260))
    used = 2 * margin + lap
    size = f"{draw(st.integers(60, 420))} x {draw(st.integers(60, 420))}"
    paper = f"{short + used} x {long + used} mm"
    by = draw(st.sampled_from(("wire", "nail", "sawtooth")))
    return LAYOUT.format(paper=paper, margin=margin, lap=lap, size=size, by=by)


@settings(max_examples=4, deadline=None)
@given(layouts(), st.sampled_from(Coverage))
def test_every_paper_that_is_taken_gives_a_proved_kit(source: str, cover: Coverage) -> None:
    kit = _plan(source, cover)
    _prove(kit, source)
    for found in _list_rulers(kit):
        # One across, one up; a sheet crowded with lines may have room for 50 mm and 2 in only.
        assert [turned for _, turned in found] in ([False, True], [True, False])
        assert {text for text, _ in found} <= {"100 mm", "50 mm"}


@pytest.mark.parametrize("cover", Coverage)
@pytest.mark.parametrize("size", ["305 x 406", "120 x 300", "400 x 150"])
def test_a_printer_that_shrinks_by_2_percent_leaves_room_on_the_least_paper(
    cover: Coverage, size: str
) -> None:
    # (147.2 - 2 x 6) / 1.02 - 10 of lap = 122.55; (187.2 - 12) / 1.02 - 10 = 161.76: hardly more than
    # 98 % of 125 x 165 mm.
    source = LAYOUT.format(paper="147.2 x 187.2 mm", margin=6, lap=10, size=size, by="wire")
    printer = Printer("study", 1.02, 1.02, Margins(6.0, 6.0, 6.0, 6.0), Size(90.0, 120.0))
    planned = plan_wall(source.encode(), "signals.yaml")
    kit, _ = plan_kit(planned, PrintChoices(cover=cover, printer=printer))
    for found in _list_rulers(kit):
        assert sorted(found) == [("100 mm", False), ("100 mm", True)]


@pytest.mark.parametrize(
    ("paper", "margin", "lap"), [("a5", 6, 10), ("5 x 7 in", 1, 0), ("letter", 6, 20)]
)
def test_small_paper_has_rulers_in_full(paper: str, margin: int, lap: int) -> None:
    source = LAYOUT.format(paper=paper, margin=margin, lap=lap, size="305 x 406", by="wire")
    kit = _plan(source, Coverage.FULL)
    for found in _list_rulers(kit):
        assert sorted(found) == [("100 mm", False), ("100 mm", True)]
