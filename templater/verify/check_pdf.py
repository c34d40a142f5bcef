"""Holds the PDFs of a kit against the Plan, page by page: paper, order, revision, every mark."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from itertools import combinations
from pathlib import Path
from typing import TypeAlias

from templater.geometry import ORIGIN, Point, Size
from templater.printing.model import Coverage
from templater.verify.check_checklist import Row, check_rows, read_rows
from templater.verify.check_overview import check_overview
from templater.verify.check_parts import check_part, read_part
from templater.verify.check_sheet import Sheet, check_reading, check_sheet
from templater.verify.check_spacers import Strips, check_strips, read_strips
from templater.verify.ink.read_pdf import OWN_PRODUCER, PdfReader, open_pdf
from templater.verify.long_rulers import LongRulers, check_long_rulers, read_long_rulers
from templater.verify.model import (
    NEAR_MM,
    Expected,
    Findings,
    Ink,
    PageRecord,
    Record,
    UnreadableError,
)
from templater.verify.own_words import check_order, check_revision, read_number
from templater.verify.rulers import check_rulers, find_rulers
from templater.verify.seams import check_joins, find_joins, must_join
from templater.verify.straight import list_straight
from templater.verify.template_marks import TemplateMarks, expect_marks

_Entries: TypeAlias = Mapping[int, Sequence[PageRecord]]
"""What the pages of a file are, by their places in it; a page that pieces share has one for each."""

_ASK = "ask for the file as it was made"


def check_kit_pdf(path: Path, record: Record, expected: Expected) -> Findings:
    """Everything that is wrong with the file to print. Raises UnreadableError where it is no PDF."""
    entries: dict[int, list[PageRecord]] = {}
    for entry in record.pages:
        entries.setdefault(entry.page, []).append(entry)
    with open_pdf(path) as document:
        return _PdfCheck(document, entries, expected, is_kit=True).check()


def check_overview_pdf(path: Path, record: Record, expected: Expected) -> Findings:
    """The overview's pages alone. Raises UnreadableError where it is no PDF."""
    pages = [entry for entry in record.pages if entry.kind == "overview"]
    return _check_part(path, pages, expected)


def check_split_pdf(path: Path, slug: str, expected: Expected) -> Findings:
    """A piece's sheets alone. Raises UnreadableError where it is no PDF."""
    pages = []
    for tile in expected.tilings[slug].tiles:
        across, up = expected.setup.scale_of(tile.page)
        pages.append(
            PageRecord(
                page=0,
                kind="template",
                paper=Size(tile.page.width * across, tile.page.height * up),
                piece=slug,
                sheet=tile.name,
                clip=tile.clip,
                origin=Point(tile.origin.x * across, tile.origin.y * up),
                scale=(across, up),
            )
        )
    return _check_part(path, pages, expected)


def _check_part(path: Path, pages: Sequence[PageRecord], expected: Expected) -> Findings:
    entries = {place: [entry] for place, entry in enumerate(pages, 1)}
    with open_pdf(path) as document:
        if document.count != len(pages):
            return Findings((f"it has {document.count} pages, not {len(pages)}",))
        return _PdfCheck(document, entries, expected, is_kit=False).check()


class _PdfCheck:
    """Goes through a file once, one page in memory at a time; of a seam, its join marks."""

    def __init__(
        self, document: PdfReader, entries: _Entries, expected: Expected, *, is_kit: bool
    ) -> None:
        self._document, self._entries, self._expected = document, entries, expected
        self._is_kit = is_kit
        self._overview = next((at for at, (one, *_) in entries.items() if one.kind == "overview"), 0)
        self._marks: dict[str, TemplateMarks] = {}
        self._numbers: list[tuple[int, int] | None] = []
        self._joins: dict[tuple[str, str, str, str], list[Point]] = {}
        self._rows: list[Row] = []
        self._strips: list[Strips] = []
        self._print_test: list[LongRulers] = []
        self._unreadable: list[str] = []

    def check(self) -> Findings:
        """All pages, then what only all of them together tell."""
        pages = [self._check_page(place) for place in range(1, self._document.count + 1)]
        names = {place: _name(entries) for place, entries in self._entries.items()}
        order = tuple(check_order(self._numbers, names)) if self._is_kit else ()
        found = Findings.gather([Findings(order), *pages])
        if not order and not self._unreadable:
            found = Findings.gather([found, Findings(tuple(self._check_together()))])
        return self._tell_who_saved(found)

    def _tell_who_saved(self, found: Findings) -> Findings:
        """Before the faults of a file that another program has saved anew, which may be their cause."""
        if not found.faults or self._document.producer == OWN_PRODUCER:
            return found
        if not any(self._numbers):
            self._unreadable.append("its pages hold no words, they may be drawn as outlines")
        told = f"it was saved anew by {self._document.producer}"
        if self._unreadable:
            return Findings((f"{told}, and cannot be read: {self._unreadable[0]}; {_ASK}",))
        return Findings((f"{told}, which may have changed it; {_ASK}", *found.faults), found.offsets_mm)

    def _check_together(self) -> Iterator[str]:
        """What is told on several pages: join marks, and in the kit checklist and spacers."""
        yield from self._check_joins()
        if self._is_kit:
            plan, tilings = self._expected.plan, self._expected.tilings
            cards = {one.name for one in plan.pieces if tilings[one.slug].cover is Coverage.CARD}
            yield from (f"print test: {fault}" for fault in check_long_rulers(self._print_test))
            yield from (f"checklist: {fault}" for fault in check_rows(self._rows, plan))
            yield from (f"spacers: {fault}" for fault in check_strips(self._strips, plan, cards))

    def _check_page(self, place: int) -> Findings:
        """A page of the file; one that is not the page it should be is told of elsewhere, as a whole."""
        entries = self._entries.get(place, ())
        try:
            ink = self._read_ink(place, entries)
        except UnreadableError as error:
            self._numbers.append((place, len(self._entries)))
            self._unreadable.append(f"page {place}: {error}")
            found = Findings((str(error),))
        else:
            self._numbers.append(read_number(ink, self._expected.given))
            if self._is_kit and self._numbers[-1] != (place, len(self._entries)):
                return Findings()
            found = Findings.gather(self._judge(place, entries, ink))
        said = f"page {place} ({_name(entries)})"
        return Findings(tuple(f"{said}: {fault}" for fault in found.faults), found.offsets_mm)

    def _read_ink(self, place: int, entries: Sequence[PageRecord]) -> Ink:
        """The ink of a page: of one piece's sheet, in template coordinates."""
        if not entries:
            return self._document.read_ink(place)
        own = entries[0].origin if len(entries) == 1 else None
        return self._document.read_ink(place, entries[0].scale, own or ORIGIN)

    def _judge(self, place: int, entries: Sequence[PageRecord], ink: Ink) -> Iterator[Findings]:
        """What is wrong with a page that bears the right number; the first kind of fault alone."""
        faults = (
            *self._check_paper(place, entries[0]),
            *check_revision(ink, self._expected.revision, self._expected.given),
            *check_reading(ink),
        )
        if faults:
            yield Findings(faults)
        elif len(entries) > 1:
            yield Findings(tuple(_check_sharing(entries, ink)))
            for entry in entries:
                yield self._check_sheet(entry, _part_of(ink, entry), is_shared=True)
        elif entries[0].piece is not None:
            yield self._check_sheet(entries[0], ink, is_shared=False)
        else:
            yield Findings(tuple(self._judge_text_page(place, entries[0].kind, ink)))

    def _judge_text_page(self, place: int, kind: str, ink: Ink) -> Iterator[str]:
        """What is wrong with a page that shows no template; rows and strips are gathered for later."""
        plan = self._expected.plan
        if kind == "cover":
            self._print_test.append(read_long_rulers(ink, self._expected.given))
        elif kind == "checklist":
            self._rows += read_rows(ink.runs)
        elif kind == "spacer":
            self._strips.append(read_strips(ink, self._expected.given))
        elif place == self._overview:
            yield from check_overview(ink, plan)
        elif kind == "overview" and (part := read_part(ink)) is not None:
            yield from check_part(ink, part, plan)

    def _check_paper(self, place: int, entry: PageRecord) -> Iterator[str]:
        """Whether the paper is plain, and as large as it should be."""
        try:
            paper = self._document.read_paper(place)
        except UnreadableError as error:
            yield str(error)
            return
        off = max(abs(one - other) for one, other in zip(paper, entry.paper, strict=True))
        if off > NEAR_MM:
            yield (
                f"its paper is {paper.width:.2f} × {paper.height:.2f} mm,"
                f" not {entry.paper.width:.2f} × {entry.paper.height:.2f} mm"
            )

    def _check_sheet(self, entry: PageRecord, ink: Ink, *, is_shared: bool) -> Findings:
        """One piece's sheet, its ink in template coordinates."""
        if entry.clip is None or entry.sheet is None or entry.piece is None:
            return Findings(("the manifest does not tell what it shows",))
        if entry.sheet not in {run.text for run in ink.runs}:
            return Findings((f"it does not bear its name, {entry.sheet}",))
        marks, tiling = self._expect_marks(entry.piece), self._expected.tilings[entry.piece]
        own = [tile.keep for tile in tiling.tiles if tile.name == entry.sheet and not is_shared]
        keep = own[0] if own else entry.clip
        others = tuple(tile.clip for tile in tiling.tiles if tile.name != entry.sheet)
        sheet = Sheet(entry.sheet, ink, entry.clip, keep, is_shared, others)
        found = check_sheet(sheet, marks)
        for seam in () if found.faults else marks.seams:
            if entry.sheet in (seam.under, seam.over):
                key = (entry.piece, entry.sheet, seam.under, seam.over)
                self._joins[key] = find_joins(seam, entry.sheet, ink.chains, ink.strokes)
        return found

    def _expect_marks(self, slug: str) -> TemplateMarks:
        """What a piece's paper must show."""
        if slug not in self._marks:
            self._marks[slug] = expect_marks(self._expected, slug)
        return self._marks[slug]

    def _check_joins(self) -> Iterator[str]:
        """Whether the join marks of every two sheets meet, as far as both sheets hold."""
        for slug, marks in self._marks.items():
            for seam in marks.seams:
                under, over = (
                    self._joins.get((slug, sheet, seam.under, seam.over))
                    for sheet in (seam.under, seam.over)
                )
                if under is None or over is None:
                    continue
                if not under and not over and must_join(seam, marks):
                    yield f"{slug}: the join marks of {seam.under} and {seam.over} are missing"
                yield from (f"{slug}: {fault}" for fault in check_joins(seam, under, over))


def _name(entries: Sequence[PageRecord]) -> str:
    """What a page is, in words."""
    names = [
        entry.kind if entry.piece is None else f"{entry.piece}, sheet {entry.sheet}" for entry in entries
    ]
    return " and ".join(dict.fromkeys(names)) or "unknown"


def _check_sharing(entries: Sequence[PageRecord], ink: Ink) -> Iterator[str]:
    """What is wrong with a page that pieces share: its rulers, and whether they lie apart."""
    level, upright = list_straight(ink.strokes)
    yield from check_rulers(find_rulers(level, upright), entries[0].paper)
    places = [(entry.piece, entry.clip.moved(*_place(entry))) for entry in entries if entry.clip]
    for (piece, one), (other, two) in combinations(places, 2):
        if one.grown(-NEAR_MM).meets(two):
            yield f"{piece} and {other} lie on each other"


def _place(entry: PageRecord) -> Point:
    """Where a template's origin stands on its page, mm after printing."""
    x, y = entry.origin or ORIGIN
    return Point(x / entry.scale[0], y / entry.scale[1])


def _part_of(ink: Ink, entry: PageRecord) -> Ink:
    """What of a page that several pieces share lies where one of them is, in template coordinates."""
    dx, dy = _place(entry)
    return ink if entry.clip is None else ink.within(entry.clip.moved(dx, dy)).moved(-dx, -dy)
