"""Holds kit.pdf against the Plan, page by page: paper, order, revision, and every mark on each sheet."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from pathlib import Path

from templater.geometry import ORIGIN, Box, Point
from templater.verify.check_overview import check_overview
from templater.verify.check_sheet import Sheet, check_reading, check_sheet
from templater.verify.long_rulers import check_long_rulers
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
from templater.verify.read_pdf import PdfReader, open_pdf
from templater.verify.seams import check_joins, find_joins
from templater.verify.template_marks import expect_marks


def check_pdf(path: Path, record: Record, expected: Expected) -> Findings:
    """Everything that is wrong with the file. Raises UnreadableError where it is no PDF at all."""
    with open_pdf(path) as document:
        return _PdfCheck(document, record, expected).check()


class _PdfCheck:
    """Goes through the file once, one page in memory at a time; of a seam, its join marks."""

    def __init__(self, document: PdfReader, record: Record, expected: Expected) -> None:
        self._document, self._expected = document, expected
        self._entries: dict[int, list[PageRecord]] = {}
        for entry in record.pages:
            self._entries.setdefault(entry.page, []).append(entry)
        self._overview = min((page.page for page in record.pages if page.kind == "overview"), default=0)
        plan, tilings = expected.plan, expected.tilings
        self._marks = {
            piece.slug: expect_marks(piece, plan, tilings[piece.slug]) for piece in plan.pieces
        }
        self._numbers: list[tuple[int, int] | None] = []
        self._joins: dict[tuple[str, str, str, str], list[Point]] = {}

    def check(self) -> Findings:
        """All pages, then what only all of them together tell."""
        pages = [self._check_page(place) for place in range(1, self._document.count + 1)]
        names = {number: _name(entries) for number, entries in self._entries.items()}
        order = Findings(tuple(check_order(self._numbers, names)))
        joins = () if order.faults else tuple(self._check_joins())
        return Findings.gather([order, *pages, Findings(joins)])

    def _check_page(self, place: int) -> Findings:
        """A page of the file; one that is not the page it should be is told of elsewhere, as a whole."""
        entries = self._entries.get(place, [])
        try:
            ink = self._read_ink(place, entries)
            number = read_number(ink)
            self._numbers.append(number)
            if number is None or number[0] != place or not entries:
                return Findings()
            found = Findings.gather(self._judge(place, entries, ink))
        except UnreadableError as error:
            found = Findings((f"{error}",))
            self._numbers += [(place, len(self._entries))] if len(self._numbers) < place else []
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
            *check_revision(ink, self._expected.revision),
            *check_reading(ink),
        )
        if faults:
            yield Findings(faults)
        elif entries[0].piece is not None:
            for entry in entries:
                yield self._check_entry(entry, ink if len(entries) == 1 else _part_of(ink, entry))
        else:
            yield Findings(tuple(check_long_rulers(ink)))
            if place == self._overview:
                yield Findings(tuple(check_overview(ink, self._expected.plan)))

    def _check_paper(self, place: int, entry: PageRecord) -> Iterator[str]:
        paper = self._document.read_paper(place)
        off = max(abs(one - other) for one, other in zip(paper, entry.paper, strict=True))
        if off > NEAR_MM:
            yield (
                f"its paper is {paper.width:.2f} × {paper.height:.2f} mm,"
                f" not {entry.paper.width:.2f} × {entry.paper.height:.2f} mm"
            )

    def _check_entry(self, entry: PageRecord, ink: Ink) -> Findings:
        """One piece's sheet on a page."""
        if entry.origin is None or entry.clip is None or entry.sheet is None:
            return Findings(("the manifest does not tell what it shows",))
        if entry.sheet not in {run.text for run in ink.runs}:
            return Findings((f"it does not bear its name, {entry.sheet}",))
        slug = str(entry.piece)
        marks = self._marks[slug]
        for seam in marks.seams:
            if entry.sheet in (seam.under, seam.over):
                key = (slug, entry.sheet, seam.under, seam.over)
                self._joins[key] = find_joins(seam, ink.chains)
        return check_sheet(Sheet(entry.sheet, ink, entry.clip), marks)

    def _check_joins(self) -> Iterator[str]:
        """Whether the join marks of every two sheets meet."""
        for slug, marks in self._marks.items():
            for seam in marks.seams:
                under, over = (
                    self._joins.get((slug, sheet, seam.under, seam.over), [])
                    for sheet in (seam.under, seam.over)
                )
                yield from (f"{slug}: {fault}" for fault in check_joins(seam, under, over))


def _name(entries: Sequence[PageRecord]) -> str:
    """What a page is, in words."""
    names = [
        entry.kind if entry.piece is None else f"{entry.piece}, sheet {entry.sheet}" for entry in entries
    ]
    return " and ".join(dict.fromkeys(names)) or "unknown"


def _part_of(ink: Ink, entry: PageRecord) -> Ink:
    """What of a page that several pieces share lies where one of them is, in template coordinates."""
    if entry.clip is None or entry.origin is None:
        return ink
    dx, dy = entry.origin.x / entry.scale[0], entry.origin.y / entry.scale[1]
    box = entry.clip.moved(dx, dy).grown(NEAR_MM)

    def lies_in(clip: Box | None, *points: Point) -> bool:
        return all(map(box.has, points)) if clip is None else box.holds(clip)

    part = Ink(
        [line for line in ink.strokes if lies_in(line.clip, line.start, line.end)],
        [ring for ring in ink.rings if lies_in(ring.clip, ring.centre)],
        [chain for chain in ink.chains if lies_in(None, *chain.points)],
        ink.runs,
    )
    return part.moved(-dx, -dy)
