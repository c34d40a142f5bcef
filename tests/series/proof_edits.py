"""Edits of a kit's pages, one at a time, and which of them the proof does not notice.

``python -m tests.series.proof_edits [KIT …]`` takes folders of kits, or makes three (one of each cover,
one for a measured printer). On each template sheet it moves single numbers of the content by 0.05 mm and
more, and leaves out single instructions that draw; an edit that does not change what pdfium sees of the
page, at 300 dots an inch, is not counted.
"""

from __future__ import annotations

import os
import random
import re
import sys
import tempfile
from collections import Counter
from collections.abc import Iterator
from dataclasses import replace
from math import dist
from pathlib import Path
from typing import Any

import numpy as np
import pikepdf
import pypdfium2

from templater.geometry import Size
from templater.layout.model import Margins
from templater.pipeline import PrintChoices, plan_kit, read_wall
from templater.printing.model import Coverage, Printer
from templater.proving import _work_out, write_proved_kit
from templater.verify.check_pdf import check_split_pdf
from templater.verify.read_record import read_record
from tests.kits import LAYOUTS

EDITS_PER_KIT = int(os.environ.get("EDITS", "700"))
PIECES_PER_KIT = 4
MOVES_PT = (0.15, -0.15, 0.6, -3.0, 30.0)
"""0.05, 0.2, 1 and 10 mm."""

PRINTER = Printer("attic inkjet", 1.004, 0.996, Margins(), Size(180.0, 240.0))
CLASSES = (
    (r"words", "words"),
    (r"w \(", "width of lines"),
    (r"d \(", "pattern of dashes"),
    (r"clip or nothing", "clips and matrices"),
    (r"area", "areas: arrow heads, map of the sheets"),
    (r"mlllh", "frames: block, map of the sheets"),
    (r"mll\)", "half diamonds"),
    (r"mcccc", "rings"),
    (r"0 dashes, [0-3]\.", "ticks, by their length"),
    (r"0 dashes, [67]\.", "lines of join marks, 7 mm"),
    (r"0 dashes, (19\.[5-9]|20\.[0-5])", "arms of crosses, 20 mm"),
    (r"0 dashes, (10|20|21)\.", "arrow UP, 21 mm"),
    (r"0 dashes", "other unbroken lines: outline, level lines, trim lines, rulers"),
    (r"2 dashes", "studs and laps"),
    (r"4 dashes", "centre lines"),
    (r"6 dashes", "datum"),
)
"""What an edit is of, by what its name tells; the first that fits."""

DRAWS = {"S", "s", "f", "f*", "Tj", "re", "W", "W*", "cm", "w", "d", "m", "l", "c"}


def make_kits(folder: Path) -> Iterator[Path]:
    """A kit of each cover; the band for a printer that was measured."""
    for stem, cover, printer in (
        ("stair-hall", Coverage.FULL, None),
        ("gallery-landing", Coverage.BAND, PRINTER),
        ("keepers-study", Coverage.CARD, None),
    ):
        wall = read_wall(LAYOUTS / f"{stem}.yaml")
        kit, _ = plan_kit(wall, PrintChoices(cover=cover, printer=printer))
        write_proved_kit(kit, wall.source, folder / stem)
        yield folder / stem


def draw(path: Path, page: int) -> Any:
    """A page as another library sees it, at 300 dots an inch."""
    document = pypdfium2.PdfDocument(path)
    picture = document[page].render(scale=300 / 72, grayscale=True).to_numpy().copy()
    document.close()
    return picture


def edit(instructions: list[Any], chance: random.Random) -> tuple[str, list[Any]]:
    """One edit of a page's instructions: a number moved, or an instruction left out."""
    changed = list(instructions)
    at = chance.choice([at for at, one in enumerate(changed) if str(one.operator) in DRAWS])
    operands, operator = list(changed[at].operands), changed[at].operator
    numbers = [place for place, value in enumerate(operands) if not isinstance(value, pikepdf.Object)]
    if numbers and chance.random() < 0.7:
        place, by = chance.choice(numbers), chance.choice(MOVES_PT)
        operands[place] = round(float(operands[place]) + by, 4)
        changed[at] = pikepdf.ContentStreamInstruction(operands, operator)
        return f"{operator} ({_role(changed, at)}) moved {abs(by) * 25.4 / 72:.2f} mm", changed
    name = f"{operator} ({_role(changed, at)}) left out"
    del changed[at]
    return name, changed


def _role(instructions: list[Any], at: int) -> str:
    """What an instruction is part of: words, an area, or lines of a number of dashes."""
    names = [str(one.operator) for one in instructions]
    painted = next((name for name in names[at:] if name in ("S", "s", "f", "f*", "ET", "n")), "")
    if painted in ("ET", "f", "f*", "n"):
        return {"ET": "words", "n": "clip or nothing"}.get(painted, "area")
    kept = reversed(instructions[: at + 1])
    dash = next((one for one in kept if str(one.operator) in ("d", "q")), None)
    dashes = len(dash.operands[0]) if dash is not None and str(dash.operator) == "d" else 0
    start = max(place for place in range(at + 1) if names[place] in ("m", "re", "w", "d", "q", "cm"))
    if names[start : start + 3] == ["m", "l", "S"]:
        ends = [[float(value) for value in instructions[start + step].operands] for step in (0, 1)]
        return f"line of {dashes} dashes, {dist(*ends) * 25.4 / 72:.1f} mm"
    return f"line of {dashes} dashes, {''.join(names[start : start + 7]).split('S')[0]}"


def _class_of(name: str) -> str:
    """What an edit is of."""
    return next((kind for pattern, kind in CLASSES if re.search(pattern, name)), "other")


def try_edits(kit: Path, folder: Path, chance: random.Random) -> Iterator[tuple[str, str, bool]]:
    """Each edit that another library sees: what it was, on which sheet, whether it was noticed.

    A file of a piece's own sheets alone is proved each time.
    """
    record = read_record(kit)
    expected = replace(_work_out(kit, record), revision=record.revision)
    pages: dict[str, list[int]] = {}
    counts = Counter(entry.page for entry in record.pages)
    for entry in record.pages:
        if entry.piece is not None and counts[entry.page] == 1:
            pages.setdefault(entry.piece, []).append(entry.page)
    slugs = chance.sample(sorted(pages), min(PIECES_PER_KIT, len(pages)))
    for slug in slugs:
        sound = folder / f"{slug}.pdf"
        with pikepdf.open(kit / "kit.pdf") as document, pikepdf.new() as alone:
            for page in pages[slug]:
                alone.pages.append(document.pages[page - 1])
            alone.save(sound)
        if check_split_pdf(sound, slug, expected).faults:
            raise SystemExit(f"{slug} does not hold before it is edited")
        before = [draw(sound, place) for place in range(len(pages[slug]))]
        for _ in range(EDITS_PER_KIT // len(slugs)):
            place, path = chance.randrange(len(before)), folder / "edited.pdf"
            with pikepdf.open(sound) as document:
                sheet = document.pages[place]
                name, changed = edit(list(pikepdf.parse_content_stream(sheet)), chance)
                sheet.Contents = document.make_stream(pikepdf.unparse_content_stream(changed))
                document.save(path)
            after = draw(path, place)
            if np.any(np.abs(after.astype(int) - before[place]) > 64):
                found = check_split_pdf(path, slug, expected).faults
                yield name, f"{kit.name}, {slug}, sheet {place + 1}", bool(found)


def main() -> None:
    """Print how many edits were noticed, and which kinds were not."""
    chance = random.Random(6)
    seen, missed = Counter[str](), Counter[str]()
    with tempfile.TemporaryDirectory() as name:
        folder = Path(name)
        kits = [Path(text) for text in sys.argv[1:]] or list(make_kits(folder))
        for kit in kits:
            for what, where, noticed in try_edits(kit, folder, chance):
                seen[_class_of(what)] += 1
                if not noticed:
                    missed[_class_of(what)] += 1
                    sys.stdout.write(f"missed: {what}, {where}\n")
    for what, count in sorted(seen.items()):
        sys.stdout.write(f"{what:64} {count:5d} seen {missed[what]:5d} missed\n")
    sys.stdout.write(f"{sum(seen.values())} edits, {sum(missed.values())} missed\n")


if __name__ == "__main__":
    main()
