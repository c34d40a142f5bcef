"""``templater kit``: everything printed for a wall, in one folder."""

from __future__ import annotations

import sys
from collections.abc import Callable, Iterable, Iterator, Sequence
from contextlib import contextmanager
from pathlib import Path
from typing import TYPE_CHECKING, TypeVar

import click

from templater.commands.telling import show, tell, tell_idle
from templater.errors import Fault, LayoutError, UsageError
from templater.quoting import show_path

if TYPE_CHECKING:
    from templater.pipeline import PlannedWall, PrintChoices
    from templater.rules.model import Finding
    from templater.sheets.compose import Kit

Given = TypeVar("Given")
Made = TypeVar("Made")

_MOST_BROKEN = 10
"""How many broken rules are told one by one."""


@click.command(short_help="Write all that is to be printed: templates, overview, checklist.")
@click.argument("layouts", metavar="LAYOUT...", nargs=-1, required=True, type=click.Path(path_type=Path))
@click.option(
    "--out",
    metavar="DIR",
    type=click.Path(path_type=Path),
    help="Where the kit goes, if not beside LAYOUT.",
)
@click.option(
    "--paper",
    metavar="PAPER",
    help="What to print on, if not on the layout's paper: a4, letter, 'roll 24 in', '13 x 19 in', …",
)
@click.option(
    "--margin", metavar="LENGTH", help="What the printer leaves blank at every edge, such as 6mm."
)
@click.option("--lap", metavar="LENGTH", help="How far neighbouring sheets overlap, such as 10mm.")
@click.option(
    "--printer", metavar="NAME", help="Correct for a printer that was measured by 'templater calibrate'."
)
@click.option(
    "--cover",
    type=click.Choice(["full", "band", "card"]),
    default="full",
    help="How much of each template is printed: all of it, if not given; its top edge, holes and one"
    " bottom corner; or its holes alone.",
)
@click.option(
    "--allow-sheets",
    "most_sheets",
    metavar="N",
    type=click.IntRange(min=1),
    help="How many sheets one piece may take, 500 if not given.",
)
@click.option("--zip", "pack", is_flag=True, help="Also pack the kit as one file, DIR.zip.")
@click.option(
    "--split",
    is_flag=True,
    help="Also write each piece's sheets as a PDF of its own, to print them again.",
)
def kit(
    *,
    layouts: tuple[Path, ...],
    out: Path | None,
    paper: str | None,
    margin: str | None,
    lap: str | None,
    printer: str | None,
    cover: str,
    most_sheets: int | None,
    pack: bool,
    split: bool,
) -> None:
    """Write the kit of each LAYOUT: all that is to be printed for its wall.

    The kit of hall.yaml goes to the folder hall-kit beside it. Print its file kit.pdf at actual
    size (100 %); it begins with what to do. An older kit in its place is replaced.

    Several layouts with --out DIR go to DIR/<layout's name>; all are checked before any is written.
    """
    from templater.pipeline import plan_kit, read_wall

    choices = _read_choices(
        paper=paper, margin=margin, lap=lap, printer=printer, cover=cover, most_sheets=most_sheets
    )
    folders = _name_folders(layouts, out)
    walls = _for_all(read_wall, layouts)
    for wall, folder in zip(walls, folders, strict=True):
        _check_place(folder, wall.source, pack=pack)
    plans = _for_all(lambda wall: plan_kit(wall, choices), walls)
    for wall, (planned, findings), folder in zip(walls, plans, folders, strict=True):
        _write(planned, wall.source, folder, split=split)
        _tell_broken(wall, findings)
        tell_idle(wall.plan, findings)
        holes, pages = wall.plan.hole_count, planned.page_count
        counts = f"{pages} pages, {holes} hole{'' if holes == 1 else 's'}"
        show(f"{show_path(folder)}: revision {planned.revision}, {counts}")
        _pack(folder, is_asked=pack)


def _read_choices(
    *,
    paper: str | None,
    margin: str | None,
    lap: str | None,
    printer: str | None,
    cover: str,
    most_sheets: int | None,
) -> PrintChoices:
    """The print options, read. Raises UsageError."""
    from templater.calibrating import find_printer
    from templater.options import parse_short, read_option
    from templater.paper import parse_paper
    from templater.pipeline import PrintChoices
    from templater.printing.model import Coverage
    from templater.printing.tile import MAX_SHEETS

    return PrintChoices(
        paper=read_option("--paper", paper, parse_paper),
        margin_mm=read_option("--margin", margin, parse_short),
        lap_mm=read_option("--lap", lap, parse_short),
        printer=None if printer is None else find_printer(printer),
        cover=Coverage(cover),
        most_sheets=most_sheets or MAX_SHEETS,
    )


def _name_folders(layouts: Sequence[Path], out: Path | None) -> list[Path]:
    """Where each kit goes. Raises UsageError where two would go to one place."""
    if out is not None:
        folders = [out] if len(layouts) == 1 else [out / layout.stem for layout in layouts]
    else:
        folders = [layout.parent / f"{layout.stem}-kit" for layout in layouts]
    if len({folder.resolve() for folder in folders}) < len(folders):
        raise UsageError(
            [Fault("two layouts would go to the same folder", "make them one at a time with --out")]
        )
    return folders


def _for_all(act: Callable[[Given], Made], things: Iterable[Given]) -> list[Made]:
    """What the act makes of every thing; the faults of all are told together. Raises LayoutError."""
    made: list[Made] = []
    faults: list[Fault] = []
    for thing in things:
        try:
            made.append(act(thing))
        except LayoutError as error:
            faults += error.faults
    if faults:
        raise LayoutError(faults)
    return made


def _check_place(folder: Path, layout: bytes, *, pack: bool) -> None:
    """Refuse places that hold something of the user's, before anything is drawn. Raises WriteError."""
    from templater.to_files.archive import is_packed_kit, name_archive
    from templater.to_files.file import check_is_replaceable_file
    from templater.to_files.folder import check_is_replaceable

    check_is_replaceable(folder, layout)
    if pack:
        check_is_replaceable_file(name_archive(folder), is_packed_kit)


def _write(planned: Kit, layout: bytes, folder: Path, *, split: bool) -> None:
    """Write one kit, and say what could not be made."""
    from templater.proving import write_proved_kit
    from templater.to_files.refusal import tell_left_behind

    with _progress() as report:
        remarks = write_proved_kit(planned, layout, folder, split=split, report=report)
    for remark in (*remarks, *tell_left_behind(folder)):
        tell(remark)


@contextmanager
def _progress() -> Iterator[Callable[[str, int, int], None] | None]:
    """A bar on stderr where somebody watches it."""
    if not sys.stderr.isatty():
        yield None
        return
    from rich.console import Console
    from rich.progress import Progress

    with Progress(console=Console(stderr=True), transient=True) as progress:
        bar = progress.add_task("templates")
        yield lambda step, done, total: progress.update(
            bar, description=step, completed=done, total=total
        )


def _tell_broken(wall: PlannedWall, findings: Sequence[Finding]) -> None:
    """Say which rules are broken, a line each; of very many, the first."""
    from templater.layout.texts import list_texts
    from templater.reading_order import ReadingOrder
    from templater.rules.model import Verdict

    order = ReadingOrder(list_texts(wall.layout))
    broken = [finding for finding in findings if finding.verdict is Verdict.BROKEN]
    for finding in broken[:_MOST_BROKEN]:
        other = f" / {finding.other}" if finding.other else ""
        line = f"rule broken: {finding.rule}: {finding.subject}{other}: {finding.figure}"
        tell(f"{line}, asked for {finding.band}; {finding.mend}", order)
    if len(broken) > _MOST_BROKEN:
        tell(f"rule broken: {len(broken) - _MOST_BROKEN} more; 'templater check' shows all")


def _pack(folder: Path, *, is_asked: bool) -> None:
    """Pack the kit beside it if asked; say so, come what may, where an older one is left there.

    Raises WriteError.
    """
    from templater.to_files.archive import name_archive, tell_older_archive, write_archive

    try:
        if is_asked:
            write_archive(folder, name_archive(folder))
    finally:
        for remark in tell_older_archive(folder):
            tell(remark)
