"""A kit written to a folder: PDF, SVG, PNG, tables and the manifest, in one pass over the pages."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Mapping
from dataclasses import replace
from hashlib import sha256
from pathlib import Path
from typing import Any

from templater.drawing import Words
from templater.sheets.compose import Kit, TemplatePages
from templater.sheets.lay_out import stack_pages
from templater.sheets.model import Page
from templater.to_files.folder import whole_folder
from templater.to_files.held_signals import heed_what_was_asked
from templater.to_files.hooks_csv import hooks_csv
from templater.to_files.manifest import manifest_json, page_entries
from templater.to_files.pdf import write_pdf
from templater.to_files.png import CairoMissingError, png_bytes
from templater.to_files.svg import svg_text
from templater.typesetting import set_by

Report = Callable[[str, int, int], None]
"""Told a step's name, how much of it is done, and how much there is."""

_STACKED_PAGES = 3
"""How many of the overview's pages its SVG and PNG hold; a picture of more is of no use."""


Prove = Callable[[Path], Mapping[str, Any]]
"""Reads a folder's files again and tells what it measured; raises an error if they do not hold."""


def write_kit(
    kit: Kit,
    layout: bytes,
    folder: Path,
    *,
    prove: Prove,
    split: bool = False,
    report: Report | None = None,
) -> tuple[str, ...]:
    """Write the whole kit, or nothing; gives back what the user must be told.

    ``layout`` is the layout file as it was read. With ``split`` each piece's sheets also come as a
    PDF of their own. Nothing takes its place before ``prove`` has read all of it. Raises WriteError,
    and what ``prove`` raises.
    """
    with set_by(kit.typesetter), whole_folder(folder, layout) as building:
        writer = _KitWriter(kit, building, report or (lambda _step, _done, _of: None))
        writer.write("layout.yaml", layout)
        writer.write("hooks.csv", hooks_csv(kit.plan).encode())
        writer.write_overview()
        writer.write_sheets(split=split)
        writer.write_manifest(None)
        writer.report("proof", 0, 1)
        writer.write_manifest(prove(building))
    return (*writer.missing.values(), *writer.tell_boxes())


class _KitWriter:
    """Writes into one folder and remembers a hash for each file."""

    def __init__(self, kit: Kit, folder: Path, report: Report) -> None:
        self.kit, self.folder, self.report = kit, folder, report
        self.hashes: dict[str, str] = {}
        self.entries: list[dict[str, Any]] = []
        self.page_count = 0
        self.missing: dict[str, str] = {}
        self.letters: set[str] = set()

    def write(self, name: str, content: bytes) -> None:
        """Write one file and note its hash."""
        (self.folder / name).write_bytes(content)
        self.hashes[name] = sha256(content).hexdigest()

    def write_overview(self) -> None:
        """The overview as PDF, its links left out, and its first pages as one SVG and PNG."""
        title, pages = f"{self.kit.plan.title}: overview", self.kit.overview
        self.write_pdf("overview.pdf", [replace(page, links=()) for page in pages], title)
        layers, view = stack_pages(pages[:_STACKED_PAGES])
        svg = svg_text(layers, view, title, top=view.height)
        self.write("overview.svg", svg.encode())
        try:
            self.write("overview.png", png_bytes(svg))
        except CairoMissingError as error:
            self.missing["overview.png"] = str(error)

    def write_sheets(self, *, split: bool) -> None:
        """The kit's PDF; each template's SVG is written when its turn comes."""
        (self.folder / "templates").mkdir()
        self.write_pdf("kit.pdf", self.pages(split=split), self.kit.plan.title)

    def pages(self, *, split: bool) -> Iterator[Page]:
        """Every page of the kit in order, noted for the manifest."""
        yield from self.noted(self.kit.cover)
        yield from self.noted(self.kit.overview)
        count = len(self.kit.plan.pieces)
        for number, template in enumerate(self.kit.templates(), 1):
            heed_what_was_asked()
            self.write_template(template, split=split)
            if not template.is_shared:
                yield from self.noted(template.pages)
            self.report("templates", number, count)
        yield from self.noted(self.kit.shared_pages())
        yield from self.noted(self.kit.spacers)
        yield from self.noted(self.kit.checklist)

    def noted(self, pages: Iterable[Page]) -> Iterator[Page]:
        """The pages as they come, each entered in the manifest's list."""
        for page in pages:
            self.page_count += 1
            self.entries += page_entries(self.page_count, page)
            for layer in page.layers:
                self.letters.update(*(item.text for item in layer.items if isinstance(item, Words)))
            yield page

    def tell_boxes(self) -> Iterator[str]:
        """What the user must be told of letters that cannot be drawn."""
        if told := self.kit.typesetter.tell_lacking(self.letters):
            yield told

    def write_template(self, template: TemplatePages, *, split: bool) -> None:
        """One piece's template as SVG, and its sheets alone if asked."""
        piece = template.piece
        title = f"{self.kit.plan.title}: {piece.name}"
        svg = svg_text(template.layers, template.view, title, top=piece.size.height)
        self.write(f"templates/{piece.slug}.svg", svg.encode())
        if split:
            self.write_pdf(f"templates/{piece.slug}.pdf", template.pages, title)

    def write_pdf(self, name: str, pages: Iterable[Page], title: str) -> None:
        """Write a PDF and note its hash."""
        path = self.folder / name
        with path.open("wb") as stream:
            write_pdf(pages, stream, title=title)
        with path.open("rb") as stream:
            digest = sha256()
            while chunk := stream.read(1 << 20):
                digest.update(chunk)
        self.hashes[name] = digest.hexdigest()

    def write_manifest(self, proof: Mapping[str, Any] | None) -> None:
        """The manifest comes last: it names every other file."""
        text = manifest_json(
            self.kit.plan,
            self.kit.setup,
            revision=self.kit.revision,
            version=self.kit.version,
            pages=self.entries,
            files=self.hashes,
            missing=self.missing,
            proof=proof,
        )
        (self.folder / "manifest.json").write_text(text, encoding="utf-8")
