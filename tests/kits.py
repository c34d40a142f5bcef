"""A kit on disk, read back with the independent reader."""

from __future__ import annotations

import json
from collections.abc import Iterator
from contextlib import contextmanager, nullcontext
from dataclasses import dataclass, replace
from functools import cached_property
from pathlib import Path
from typing import Any

import pikepdf
import pytest

from templater.geometry import Box, Point
from templater.paper import parse_paper
from templater.pipeline import PrintChoices, plan_kit, read_wall
from templater.proving import write_proved_kit
from templater.to_files.png import CairoMissingError
from tests.reading import Ink, Outline, Ring, Run, Stroke, SvgReading, read_pdf_page, read_svg

LAYOUTS = Path(__file__).parent.parent / "layouts"


@dataclass(frozen=True)
class Entry:
    """A page as the manifest tells it, and the ink that the PDF has on it.

    Of a page that several pieces share, ``ink`` is what stands on one piece's part.
    """

    facts: dict[str, Any]
    ink: Ink
    page_ink: Ink

    @property
    def is_shared(self) -> bool:
        """Whether other pieces stand on the page too."""
        return self.ink is not self.page_ink

    @property
    def origin(self) -> Point:
        """Where the template's origin stands on the page."""
        return Point(*self.facts["origin_mm"])

    @property
    def clip(self) -> Box:
        """What the sheet shows of the template, in template coordinates."""
        return Box(*self.facts["clip_mm"])


class MadeKit:
    """A kit on disk, read back as needed.

    ``printed`` is what a printer makes of a millimetre across and along its paper; pages are read as
    they come out of it.
    """

    def __init__(self, folder: Path, printed: tuple[float, float] = (1.0, 1.0)) -> None:
        self.folder, self.printed = folder, printed

    @cached_property
    def manifest(self) -> dict[str, Any]:
        """The manifest as JSON tells it."""
        content: dict[str, Any] = json.loads((self.folder / "manifest.json").read_text("utf-8"))
        return content

    @cached_property
    def pieces(self) -> dict[str, dict[str, Any]]:
        """The manifest's pieces by their slugs."""
        return {piece["slug"]: piece for piece in self.manifest["pieces"]}

    @cached_property
    def pages(self) -> list[Ink]:
        """The ink of every page of the PDF."""
        with pikepdf.open(self.folder / "kit.pdf") as pdf:
            return [read_pdf_page(page, self.printed_on(page)) for page in pdf.pages]

    def printed_on(self, page: pikepdf.Page) -> tuple[float, float]:
        """What the printer makes of a millimetre across and up a page.

        It is turned where the width of the paper as it is fed lies upright.
        """
        width = parse_paper(self.manifest["paper"]).size.width
        _, _, _, height = (float(side) * 25.4 / 72 for side in page.mediabox)
        across, along = self.printed
        return (along, across) if abs(height - width) < 0.01 else (across, along)

    @cached_property
    def entries(self) -> list[Entry]:
        """Every page's facts beside its ink."""
        pages = [facts["page"] for facts in self.manifest["pages"]]
        return [
            self._read_entry(facts, is_shared=pages.count(facts["page"]) > 1)
            for facts in self.manifest["pages"]
        ]

    def _read_entry(self, facts: dict[str, Any], *, is_shared: bool) -> Entry:
        whole = self.pages[facts["page"] - 1]
        entry = Entry(facts, whole, whole)
        if not is_shared:
            return entry
        part = entry.clip.moved(*entry.origin).grown(0.01)

        def is_on_part(mark: Stroke | Ring | Outline | Run) -> bool:
            return part.holds(mark.box if mark.clip is None else mark.clip)

        return Entry(
            facts,
            Ink(
                whole.size,
                list(filter(is_on_part, whole.strokes)),
                list(filter(is_on_part, whole.rings)),
                list(filter(is_on_part, whole.outlines)),
                list(filter(is_on_part, whole.runs)),
            ),
            whole,
        )

    @property
    def sheets(self) -> list[Entry]:
        """The entries that are sheets of a template."""
        return [entry for entry in self.entries if entry.facts["kind"] == "template"]

    def template(self, slug: str) -> SvgReading:
        """A piece's template as the SVG has it, in template coordinates."""
        _, y0, _, y1 = self.pieces[slug]["rect_mm"]
        return read_svg((self.folder / "templates" / f"{slug}.svg").read_text("utf-8"), y1 - y0)

    def holes(self, slug: str) -> list[Point]:
        """A piece's holes in template coordinates."""
        x0, y0, _, _ = self.pieces[slug]["rect_mm"]
        return [Point(x - x0, y - y0) for x, y in self.pieces[slug]["holes"]]


NO_PICTURE = "no PNG: there is no cairo here"


@contextmanager
def without_picture() -> Iterator[None]:
    """Kits are made as on a machine without cairo: the picture takes most of the time of a small one."""

    def refuse(_svg: str) -> bytes:
        raise CairoMissingError(NO_PICTURE)

    with pytest.MonkeyPatch.context() as patch:
        patch.setattr("templater.to_files.kit.png_bytes", refuse)
        yield


def make_kit(
    layout: Path,
    folder: Path,
    paper: str | None = None,
    *,
    choices: PrintChoices | None = None,
    split: bool = False,
    picture: bool = False,
) -> MadeKit:
    """Write a kit without the command line; the overview's picture only where it is asked for."""
    wall = read_wall(layout)
    choices = choices or PrintChoices()
    if paper is not None:
        choices = replace(choices, paper=parse_paper(paper))
    kit, _ = plan_kit(wall, choices)
    with nullcontext() if picture else without_picture():
        write_proved_kit(kit, wall.source, folder, split=split)
    return MadeKit(folder)


STEMS = tuple(sorted(path.stem for path in LAYOUTS.glob("*.yaml")))
"""The names of the layouts that come with the program."""
