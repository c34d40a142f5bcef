"""``templater measure``: a form on which somebody far away enters what must be measured."""

from __future__ import annotations

from pathlib import Path

import click

from templater.commands.telling import show, tell_lacking
from templater.errors import Fault, UsageError
from templater.quoting import show_path


@click.command(short_help="Write a form for somebody far away, who measures the wall.")
@click.argument("layout", required=False, type=click.Path(path_type=Path))
@click.option("--blank", is_flag=True, help="A form for a wall that has no layout yet.")
@click.option(
    "--out",
    metavar="FILE",
    type=click.Path(path_type=Path),
    help="The PDF to write, if not <layout's name>-measure.pdf.",
)
@click.option("--paper", metavar="PAPER", help="What to print it on: a4, letter, …")
def measure(layout: Path | None, blank: bool, out: Path | None, paper: str | None) -> None:
    """Write a form on which somebody far away enters what must be measured.

    It is a PDF to print. What LAYOUT says already stands on it.
    """
    from templater.options import read_option
    from templater.paper import parse_paper
    from templater.pipeline import read_wall, write_measure_form

    if blank == (layout is not None):
        raise UsageError([Fault("give a LAYOUT or --blank", "for example: templater measure --blank")])
    asked = read_option("--paper", paper, parse_paper)
    wall = None if layout is None else read_wall(layout)
    path = out or (
        Path("measure.pdf") if layout is None else layout.with_name(f"{layout.stem}-measure.pdf")
    )
    write_measure_form(wall, asked, path)
    if wall is not None:
        tell_lacking(wall)
    show(f"{show_path(path)}: print it, fill it in, send it back")
