"""``templater calibrate``: measure a printer, so that kits come out true on it."""

from __future__ import annotations

from pathlib import Path

import click

from templater.commands.telling import show
from templater.errors import Fault, UsageError


@click.command(short_help="Measure a printer, so that kits come out true on it.")
@click.option("--paper", metavar="PAPER", help="What is printed on: a4, letter, …; letter if not given.")
@click.option(
    "--out",
    metavar="FILE",
    type=click.Path(path_type=Path),
    help="The PDF to write, if not calibrate.pdf or calibrate-proof.pdf.",
)
@click.option(
    "--printer",
    metavar="NAME",
    help="With --measured, a name for the printer; alone, the printer to prove.",
)
@click.option(
    "--measured",
    metavar="ACROSS DOWN",
    nargs=2,
    help="How long the two long rulers are, such as 178.9mm 239.1mm.",
)
@click.option(
    "--margin",
    "margins",
    metavar="LENGTH",
    multiple=True,
    help="With --measured, what the printer leaves blank: 6mm at every edge, or 'left=4mm,"
    " bottom=12mm' for some of left, right, top and bottom.",
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

    \b
    1. Write a page of rulers, and print it at actual size (100 %):
         templater calibrate
    2. Measure its two long rulers, and keep the printer by a name:
         templater calibrate --measured 178.9mm 239.1mm --printer "study inkjet"
    3. Write the page corrected, print it, and measure it again:
         templater calibrate --printer "study inkjet"
    4. Make kits for that printer:
         templater kit hall.yaml --printer "study inkjet"

    Printers are kept in a file in your configuration folder, which --list names; where it is damaged,
    the exit code is 2.
    """  # noqa: D301  # click's mark for lines that stay as they are
    from templater.calibrating import describe_printers, keep_measured, write_page

    if is_list:
        _refuse_with("--list", paper, out, printer, measured, margins)
        show(describe_printers())
    elif measured is not None:
        _refuse_with("--measured", out)
        show(keep_measured(printer, measured, paper, margins))
    else:
        _refuse_with("a page of rulers", margins)
        show(write_page(paper, printer, out))


def _refuse_with(main: str, *others: object) -> None:
    """Refuse options that mean nothing beside another. Raises UsageError."""
    if any(others):
        message = f"{main} cannot be given together with these other options"
        raise UsageError([Fault(message, "see 'templater calibrate --help'")])
