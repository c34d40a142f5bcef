"""Kits whose ``kit.pdf`` was saved anew by programs that make all pages again, and faults planted there.

``python -m tests.series.saved_anew [KIT …]`` takes folders of kits, or makes one of each layout that is
shipped, for A4, Letter and a roll. It runs what there is of Ghostscript (as it comes, and as tools that
make files smaller run it) and pdftocairo; tells which files hold and how long their proof takes; then
plants faults into some that hold, and tells which are not found.
"""

from __future__ import annotations

import shutil
import subprocess
import sys
import tempfile
import time
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import Any

import pikepdf

from templater.paper import parse_paper
from templater.pipeline import PrintChoices, plan_kit, read_wall
from templater.proving import prove_kit, write_proved_kit
from templater.verify.model import ProofError
from tests.kits import LAYOUTS
from tests.verify.planting import Copy

PAPERS = ("a4", "letter", "roll 24 in")
GHOSTSCRIPT = ("gs", "-q", "-o", "{to}", "-sDEVICE=pdfwrite")
PROGRAMS = {
    "Ghostscript": (*GHOSTSCRIPT, "{file}"),
    "Ghostscript /ebook": (*GHOSTSCRIPT, "-dPDFSETTINGS=/ebook", "-dCompatibilityLevel=1.4", "{file}"),
    "Ghostscript, no page turned": (*GHOSTSCRIPT, "-dAutoRotatePages=/None", "{file}"),
    "pdftocairo": ("pdftocairo", "-pdf", "{file}", "{to}"),
}


def make_kits(folder: Path) -> Iterator[Path]:
    """A kit of each layout for each paper."""
    for layout in sorted(LAYOUTS.glob("*.yaml")):
        for paper in PAPERS:
            wall = read_wall(layout)
            kit, _ = plan_kit(wall, PrintChoices(paper=parse_paper(paper)))
            made = folder / f"{layout.stem}, {paper}"
            write_proved_kit(kit, wall.source, made)
            yield made


def save_anew(kit: Path, program: str, folder: Path) -> Copy:
    """A copy of a kit whose file to print a program has saved anew; the manifest fits it."""
    copy = Copy(kit, folder)
    names = {"file": str(kit / "kit.pdf"), "to": str(copy.folder / "kit.pdf")}
    command = [part.format(**names) for part in PROGRAMS[program]]
    subprocess.run(command, check=True, capture_output=True)
    copy.renew_hashes()
    return copy


def prove(folder: Path) -> list[str]:
    """What the proof finds wrong with a kit, shortened."""
    try:
        prove_kit(folder)
    except ProofError as error:
        return [fault.message[:200] for fault in error.faults]
    return []


def _swap(copy: Copy) -> None:
    first, *_, last = (entry["page"] for entry in copy.sheets(hole=True))
    with copy.opened_pdf() as document:
        pages = list(document.pages)
        document.pages[first - 1], document.pages[last - 1] = pages[last - 1], pages[first - 1]


def _leave_out(copy: Copy) -> None:
    with copy.opened_pdf() as document:
        del document.pages[copy.sheets(hole=True)[0]["page"] - 1]


def _print_twice(copy: Copy) -> None:
    page = copy.sheets(hole=True)[0]["page"]
    with copy.opened_pdf() as document:
        document.pages.insert(page, document.pages[page - 1])


def _change_words(copy: Copy) -> None:
    """The figures in the words of a sheet: each is one more."""
    figures = bytes.maketrans(b"0123456789", b"1234567890")

    def change(thing: Any) -> Any:
        if isinstance(thing, pikepdf.Array):
            return pikepdf.Array([change(each) for each in thing])
        is_text = isinstance(thing, pikepdf.String)
        return pikepdf.String(bytes(thing).translate(figures)) if is_text else thing

    def act(operands: list[Any], operator: str) -> tuple[list[Any], str]:
        return [change(each) for each in operands], operator

    copy.rewrite(copy.sheets(hole=True)[0]["page"], act)


def _move(*matrix: float, hole: bool = True) -> Callable[[Copy], None]:
    def act(copy: Copy) -> None:
        a, b, c, d, across, up = matrix
        entry = (copy.sheets(hole=hole) or copy.sheets(hole=True))[0]
        width = entry["paper_mm"][0] if a < 0 else 0.0
        copy.transform(entry["page"], a, b, c, d, across + width, up)

    return act


FAULTS: dict[str, Callable[[Copy], None]] = {
    "a page of 99.9 %": _move(0.999, 0, 0, 0.999, 0, 0),
    "a sheet with a hole shifted by 0.1 mm": _move(1, 0, 0, 1, 0.1, 0),
    "a sheet without a hole shifted by 0.1 mm": _move(1, 0, 0, 1, 0, 0.1, hole=False),
    "a mirrored page": _move(-1, 0, 0, 1, 0, 0),
    "two sheets swapped": _swap,
    "a sheet missing": _leave_out,
    "a sheet twice": _print_twice,
    "other words": _change_words,
}


def plant(kit: Path, program: str) -> Iterator[tuple[str, list[str]]]:
    """Each fault, and what the proof says of it."""
    for name, act in FAULTS.items():
        with tempfile.TemporaryDirectory() as folder:
            copy = save_anew(kit, program, Path(folder))
            if name == "two sheets swapped" and len({e["page"] for e in copy.sheets(hole=True)}) < 2:
                continue
            act(copy)
            yield name, prove(copy.folder)


def try_kit(kit: Path, programs: list[str]) -> Iterator[str]:
    """A line for each program, and one for each fault that is not found."""
    for program in programs:
        with tempfile.TemporaryDirectory() as folder:
            copy = save_anew(kit, program, Path(folder))
            start = time.perf_counter()
            found = prove(copy.folder)
            took = time.perf_counter() - start
        first = found[1] if len(found) > 1 else found[0] if found else "holds"
        yield f"{kit.name}: {program}: {first} ({took:.2f} s)"
        if not found and program in ("Ghostscript", "pdftocairo"):
            for name, told in plant(kit, program):
                yield f"    {name}: {told[-1] if told else 'NOT FOUND'}"


def main() -> None:
    """Print what holds and what is found."""
    programs = [name for name, (program, *_) in PROGRAMS.items() if shutil.which(program)]
    with tempfile.TemporaryDirectory() as name:
        for kit in [Path(text) for text in sys.argv[1:]] or make_kits(Path(name)):
            for line in try_kit(kit, programs):
                sys.stdout.write(f"{line}\n")
                sys.stdout.flush()


if __name__ == "__main__":
    main()
