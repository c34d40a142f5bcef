"""The command line: the only room that prints and exits."""

from __future__ import annotations

import os
import signal
import sys
from collections.abc import Callable, Iterable, Iterator, Sequence
from contextlib import contextmanager
from dataclasses import replace
from io import TextIOWrapper
from pathlib import Path
from typing import TYPE_CHECKING, Any, NoReturn, TypeVar

import click

from templater import __version__
from templater.errors import ExitCode, Fault, LayoutError, TemplaterError, UsageError
from templater.quoting import show_path
from templater.to_files.held_signals import ENDING_SIGNALS

if TYPE_CHECKING:
    from templater.pipeline import ArrangedWall, PlannedWall, PrintChoices
    from templater.placement.model import Plan
    from templater.rules.model import Finding
    from templater.sheets.compose import Kit

Given = TypeVar("Given")
Made = TypeVar("Made")

_MOST_BROKEN = 10
"""How many broken rules `kit` tells one by one."""

_EXIT_CODES = """\b
Exit codes:
  0    done
  1    a fault of the program
  2    wrong usage
  3    the layout is missing, cannot be read or cannot be placed, or needs too many sheets
  4    (check) a rule is broken and not accepted
  5    cannot write
  6    the proof failed
  130  interrupted
"""


@click.group(epilog=_EXIT_CODES, context_settings={"help_option_names": ["-h", "--help"]})
@click.version_option(__version__, prog_name="templater")
def commands() -> None:
    """Turn a layout of framed pieces on a wall into paper templates that show every hole.

    A template is printed at full size, taped to the wall and drilled through.
    """


_PRINT_OPTIONS: Sequence[Callable[[Any], Any]] = (
    click.option("--paper", metavar="PAPER", help="a4, letter, 'roll 24 in', '13 x 19 in', …"),
    click.option("--margin", metavar="LENGTH", help="What the printer leaves blank at every edge."),
    click.option("--lap", metavar="LENGTH", help="How far neighbouring sheets overlap."),
)


def _print_options(command: Callable[..., Any]) -> Callable[..., Any]:
    for option in reversed(_PRINT_OPTIONS):
        command = option(command)
    return command


@commands.command(short_help="Write the kit of each layout: templates, overview, tables.")
@click.argument("layouts", metavar="LAYOUT...", nargs=-1, required=True, type=click.Path(path_type=Path))
@click.option("--out", metavar="DIR", type=click.Path(path_type=Path), help="Where the kit goes.")
@_print_options
@click.option("--printer", metavar="NAME", help="Correct for a printer that 'calibrate' has measured.")
@click.option(
    "--cover",
    type=click.Choice(["full", "band", "card"]),
    default="full",
    help="How much of each template is printed: all of it; its top edge, holes and a corner; its holes.",
)
@click.option(
    "--allow-sheets",
    "most_sheets",
    metavar="N",
    type=click.IntRange(min=1),
    help="How many sheets one piece may take; 500 if not given.",
)
@click.option("--zip", "pack", is_flag=True, help="Also pack the kit as one file, DIR.zip.")
@click.option("--split", is_flag=True, help="Also write each piece's sheets as a PDF of its own.")
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
    """Write the kit of each LAYOUT: templates to print, an overview, tables.

    The kit goes to a folder named after the layout, beside it. Several layouts with --out DIR go
    to DIR/<layout's name>; all are checked before any is written.
    """
    from templater.pipeline import plan_kit, read_wall
    from templater.to_files.archive import check_is_replaceable_archive, name_archive
    from templater.to_files.folder import check_is_replaceable

    with _faults_told():
        choices = _add_coverage(_choices(paper, margin, lap, printer), cover, most_sheets)
        folders = _folders(layouts, out)
        walls = _for_all(read_wall, layouts)
        for wall, folder in zip(walls, folders, strict=True):
            check_is_replaceable(folder, wall.source)
            if pack:
                check_is_replaceable_archive(name_archive(folder))
        plans = _for_all(lambda wall: plan_kit(wall, choices), walls)
        for wall, (planned, findings), folder in zip(walls, plans, folders, strict=True):
            _write_kit(planned, wall.source, folder, pack=pack, split=split)
            _tell_broken(findings)
            _tell_idle(wall.plan, findings)
            holes, pages = wall.plan.hole_count, planned.page_count
            counts = f"{pages} pages, {holes} hole{'' if holes == 1 else 's'}"
            click.echo(f"{show_path(folder)}: revision {planned.revision}, {counts}")


def _write_kit(planned: Kit, source: bytes, folder: Path, *, pack: bool, split: bool) -> None:
    """Write one kit, and say what could not be made."""
    from templater.proving import write_proved_kit
    from templater.to_files.archive import name_archive, tell_older_archive, write_archive
    from templater.to_files.refusal import tell_left_behind

    with _progress() as report:
        remarks = write_proved_kit(planned, source, folder, split=split, report=report)
    if pack:
        write_archive(folder, name_archive(folder))
    for remark in (*remarks, *tell_older_archive(folder), *tell_left_behind(folder)):
        click.echo(remark, err=True)


def _tell_broken(findings: Sequence[Finding]) -> None:
    """Say which rules are broken, a line each, on stderr; of very many, the first."""
    from templater.rules.model import Verdict

    broken = [finding for finding in findings if finding.verdict is Verdict.BROKEN]
    for finding in broken[:_MOST_BROKEN]:
        other = f" / {finding.other}" if finding.other else ""
        click.echo(
            f"rule broken: {finding.rule}: {finding.subject}{other}: {finding.figure},"
            f" asked for {finding.band}; {finding.mend}",
            err=True,
        )
    if len(broken) > _MOST_BROKEN:
        more = len(broken) - _MOST_BROKEN
        click.echo(f"rule broken: {more} more; 'templater check' shows all", err=True)


def _tell_lacking(wall: PlannedWall | ArrangedWall) -> None:
    """Say which letters of a layout would be printed as empty boxes, on stderr."""
    from templater.pipeline import tell_lacking_letters

    if told := tell_lacking_letters(wall):
        click.echo(told, err=True)


def _tell_idle(plan: Plan, findings: Sequence[Finding]) -> None:
    """Say which acceptances of the layout no longer apply, on stderr."""
    from templater.rules.accept import find_idle_acceptances

    for remark in find_idle_acceptances(plan, findings):
        click.echo(str(remark), err=True)


@commands.command(short_help="Show where each piece goes, and whether the rules hold.")
@click.argument("layout", required=False, type=click.Path(path_type=Path))
@click.option("--format", "form", type=click.Choice(["table", "json"]), help="The default is table.")
@click.option("--all", "show_all", is_flag=True, help="Also list every rule that does not apply.")
@click.option("--explain", "rule", metavar="RULE", help="Show a rule's page; 'all' lists the rules.")
def check(layout: Path | None, form: str | None, show_all: bool, rule: str | None) -> None:
    """Show where each piece goes, and whether the rules of the trade hold."""
    with _faults_told():
        if layout is not None and rule is None and not (show_all and form == "json"):
            _check_layout(layout, is_json=form == "json", show_all=show_all)
        elif rule is not None and layout is None and not (form or show_all):
            _explain(rule)
        else:
            message = "give a LAYOUT, with --all or --format json if you like, or --explain RULE alone"
            raise UsageError([Fault(message, "for example: templater check hall.yaml --format json")])


def _check_layout(layout: Path, *, is_json: bool, show_all: bool) -> None:
    """Show the findings of one layout; ends the program where a rule is broken."""
    from templater.pipeline import count_wall, read_wall
    from templater.reports import format_findings, print_report
    from templater.rules.check import check_all
    from templater.rules.model import Verdict

    wall = read_wall(layout)
    plan = wall.plan
    findings = check_all(plan)
    if is_json:
        click.echo(format_findings(findings))
    else:
        paper = wall.layout.paper.name
        print_report(plan, findings, count_wall(wall), paper=paper, show_all=show_all)
    _tell_idle(plan, findings)
    _tell_lacking(wall)
    if any(finding.verdict is Verdict.BROKEN for finding in findings):
        sys.exit(ExitCode.RULE_BROKEN)


def _explain(rule: str) -> None:
    """Show the page of a rule, or which rules there are. Raises UsageError."""
    from templater.rules.explain import explain_rule, list_rules

    click.echo(list_rules() if rule == "all" else explain_rule(rule))


@commands.command(short_help="Propose how to hang each group that leaves something open.")
@click.argument("layout", type=click.Path(path_type=Path))
@click.option(
    "--picture",
    "pictures",
    metavar="FILE",
    multiple=True,
    type=click.Path(path_type=Path),
    help="Draw the proposals, as .svg or .png; may be given twice.",
)
@click.option(
    "--save",
    metavar="FILE",
    type=click.Path(path_type=Path),
    help="Write a new layout with the chosen proposal of each group.",
)
@click.option(
    "--choose",
    "choices",
    metavar="N",
    multiple=True,
    type=click.IntRange(min=1),
    help="Which proposal to take, 1 if not given; once for each open group, in their order.",
)
@click.option("--format", "form", type=click.Choice(["table", "json"]), help="The default is table.")
def arrange(
    *,
    layout: Path,
    pictures: tuple[Path, ...],
    save: Path | None,
    choices: tuple[int, ...],
    form: str | None,
) -> None:
    """Propose the best ways to hang each group that leaves something open.

    Open are 'arrange: any', 'gap: any' and 'choose: {from: [...], count: any}'. Later groups see the
    proposal that is taken of the earlier ones.
    """
    from templater.pipeline import arrange_wall, save_arrangement
    from templater.reports import format_proposals, print_proposals

    with _faults_told():
        for path in pictures:
            if path.suffix.lower() not in (".svg", ".png"):
                message = f"--picture is {path}, which ends in neither .svg nor .png"
                raise UsageError([Fault(message, "for example: --picture ways.svg")])
        wall = arrange_wall(layout, choices)
        if form == "json":
            click.echo(format_proposals(wall.settlements))
        else:
            print_proposals(wall.settlements)
        if not wall.settlements:
            click.echo(f"{show_path(layout)}: nothing is left open", err=form == "json")
            return
        if save is not None:
            save_arrangement(wall, save)
            shown = show_path(save)
            click.echo(f"{shown}: made of what was chosen; next: templater kit {shown}", err=True)
        _draw_proposals(wall, pictures)


def _draw_proposals(wall: ArrangedWall, pictures: Sequence[Path]) -> None:
    """Write the pictures; where cairo is missing, a PNG is refused once the others are written."""
    from templater.pipeline import write_contact_sheet
    from templater.to_files.png import CairoMissingError

    if pictures:
        _tell_lacking(wall)
    missing = []
    for path in pictures:
        try:
            write_contact_sheet(wall, path)
        except CairoMissingError as error:
            missing.append(f"{path}: {error}")
    for line in missing:
        click.echo(line, err=True)
    if missing:
        sys.exit(ExitCode.CANNOT_WRITE)


@commands.command(short_help="Read a kit again and hold every mark against its plan.")
@click.argument("kit_folder", metavar="DIR", type=click.Path(path_type=Path))
def proof(kit_folder: Path) -> None:
    """Read the kit in DIR again and hold every mark on its paper against the plan.

    The plan is worked out from the layout and the options in DIR. A file that was changed after the
    kit was made is told; what is drawn in it decides.
    """
    from templater.proving import prove_kit

    with _faults_told():
        record, proved = prove_kit(kit_folder)
        for note in proved.notes:
            click.echo(f"note: {note}", err=True)
        holes = f"{proved.holes} hole{'' if proved.holes == 1 else 's'} re-read from its files"
        far = proved.farthest_mm
        farthest = f"{far:.3f} mm" if far >= 0.001 else "less than 0.001 mm"
        revision = f"revision {record.revision}"
        click.echo(f"{show_path(kit_folder)}: {revision}, {holes}; farthest {farthest} from plan")


@commands.command()
@click.argument("file", type=click.Path(path_type=Path))
def new(file: Path) -> None:
    """Write a commented layout to start from."""
    from templater.layout.starter import starter_text
    from templater.to_files.file import write_new_file

    with _faults_told():
        write_new_file(file, starter_text().encode())
        shown = show_path(file)
        click.echo(f"{shown}: change it to your wall, then: templater kit {shown}")


@commands.command(short_help="Write a form for somebody far away to fill in.")
@click.argument("layout", required=False, type=click.Path(path_type=Path))
@click.option("--blank", is_flag=True, help="A form for a wall that has no layout yet.")
@click.option("--out", metavar="FILE", type=click.Path(path_type=Path), help="The PDF to write.")
@click.option("--paper", metavar="PAPER", help="a4, letter, …")
def measure(layout: Path | None, blank: bool, out: Path | None, paper: str | None) -> None:
    """Write a form on which somebody far away enters what must be measured."""
    from templater.pipeline import read_wall, write_measure_form

    with _faults_told():
        if blank == (layout is not None):
            raise UsageError(
                [Fault("give a LAYOUT or --blank", "for example: templater measure --blank")]
            )
        choices = _choices(paper, None, None)
        known = None if layout is None else read_wall(layout)
        path = out or (
            Path("measure.pdf") if layout is None else layout.with_name(f"{layout.stem}-measure.pdf")
        )
        write_measure_form(known, choices.paper, path)
        if known is not None:
            _tell_lacking(known)
        click.echo(f"{show_path(path)}: print it, fill it in, send it back")


@commands.command(short_help="Measure a printer, so that kits come out true on it.")
@click.option("--paper", metavar="PAPER", help="a4, letter, …; the default is letter.")
@click.option("--out", metavar="FILE", type=click.Path(path_type=Path), help="The PDF to write.")
@click.option("--printer", metavar="NAME", help="With --measured its name; alone, prove its correction.")
@click.option("--measured", metavar="ACROSS DOWN", nargs=2, help="How long the two long rulers are.")
@click.option(
    "--margin",
    "margins",
    metavar="LENGTH",
    multiple=True,
    help="What the printer leaves blank: 6mm at every edge, or left=4mm, right=…, top=…, bottom=….",
)
@click.option("--list", "is_list", is_flag=True, help="Show the printers that have been measured.")
def calibrate(
    *,
    paper: str | None,
    out: Path | None,
    printer: str | None,
    measured: tuple[str, str] | None,
    margins: tuple[str, ...],
    is_list: bool,
) -> None:
    """Measure a printer, so that kits come out true on it.

    First write the page of rulers and print it. Then keep what was measured on it, for example with
    --measured 178.9mm 239.1mm --printer "study inkjet".

    Then prove it: with --printer alone the same page comes corrected. Printers are kept in a file in
    your configuration folder; where it is damaged, the command ends with exit code 2.
    """
    from templater.calibrating import describe_printers, keep_measured, write_page

    with _faults_told():
        if is_list:
            _refuse_with("--list", paper, out, printer, measured, margins)
            click.echo(describe_printers())
        elif measured is not None:
            _refuse_with("--measured", out)
            click.echo(keep_measured(printer, measured, paper, margins))
        else:
            _refuse_with("a page of rulers", margins)
            click.echo(write_page(paper, printer, out))


def _refuse_with(main: str, *others: object) -> None:
    """Refuse options that mean nothing beside another. Raises UsageError."""
    if any(others):
        message = f"{main} cannot be given together with these other options"
        raise UsageError([Fault(message, "see 'templater calibrate --help'")])


def _choices(
    paper: str | None, margin: str | None, lap: str | None, printer: str | None = None
) -> PrintChoices:
    """The print options, read. Raises UsageError."""
    from templater.calibrating import find_printer
    from templater.options import parse_short, read_option
    from templater.paper import parse_paper
    from templater.pipeline import PrintChoices

    return PrintChoices(
        paper=read_option("--paper", paper, parse_paper),
        margin_mm=read_option("--margin", margin, parse_short),
        lap_mm=read_option("--lap", lap, parse_short),
        printer=None if printer is None else find_printer(printer),
    )


def _add_coverage(choices: PrintChoices, cover: str, most_sheets: int | None) -> PrintChoices:
    """The print options with how much is printed of each template."""
    from templater.printing.model import Coverage

    most = choices.most_sheets if most_sheets is None else most_sheets
    return replace(choices, cover=Coverage(cover), most_sheets=most)


def _folders(layouts: Sequence[Path], out: Path | None) -> list[Path]:
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


@contextmanager
def _faults_told() -> Iterator[None]:
    """Turn an error that the user can mend into lines on stderr and an exit code."""
    try:
        yield
    except TemplaterError as error:
        click.echo(str(error), err=True)
        sys.exit(error.exit_code)


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


def _give_up_writing(error: OSError) -> NoReturn:
    """End where what is printed cannot be written, such as on a full disk."""
    null = os.open(os.devnull, os.O_WRONLY)
    os.dup2(null, sys.stdout.fileno())  # or Python would try once more as it ends, and complain
    if not isinstance(error, BrokenPipeError):  # whoever reads the pipe has seen enough
        click.echo(f"cannot write: {error.strerror or error}", err=True)
    sys.exit(ExitCode.CANNOT_WRITE)


def _open_closed_streams() -> None:
    """Lead a standard stream that is closed to nowhere, lest one of a kit's files takes its number."""
    while (handle := os.open(os.devnull, os.O_RDWR)) <= 2:
        pass
    os.close(handle)
    sys.stdout = sys.stdout or os.fdopen(1, "w", encoding="utf-8")
    sys.stderr = sys.stderr or os.fdopen(2, "w", encoding="utf-8")


def _heed_signals() -> None:
    """Let a supervisor, or a terminal that is closed, end a run as Ctrl-C does, unless told not to."""
    for number in ENDING_SIGNALS:
        if signal.getsignal(number) is signal.SIG_DFL:
            signal.signal(number, signal.default_int_handler)


def main() -> None:
    """Run the command line; whatever happens, no traceback."""
    _open_closed_streams()
    _heed_signals()
    for stream in (sys.stdout, sys.stderr):
        if isinstance(stream, TextIOWrapper):  # a minus sign must not be lost on its way to a file
            stream.reconfigure(errors="namereplace")
    try:
        commands(prog_name="templater", standalone_mode=False)
        sys.stdout.flush()
    except OSError as error:
        _give_up_writing(error)
    except SystemExit as end:  # 1 is what click and rich answer to a pipe that nobody reads
        sys.exit(ExitCode.CANNOT_WRITE if end.code == 1 else end.code)
    except click.exceptions.Abort:
        click.echo("interrupted", err=True)
        sys.exit(ExitCode.INTERRUPTED)
    except click.ClickException as error:
        error.show()
        sys.exit(ExitCode.USAGE)
    except Exception as error:
        kind = type(error).__name__
        click.echo(f"a fault of the program ({kind}: {error})", err=True)
        click.echo("  no kit is left half written; please report it together with the layout", err=True)
        sys.exit(ExitCode.PROGRAM_FAULT)
