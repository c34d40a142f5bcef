"""``templater arrange``: the best ways to hang what a layout leaves open."""

from __future__ import annotations

import sys
from collections.abc import Sequence
from pathlib import Path
from typing import TYPE_CHECKING

import click

from templater.commands.telling import show, tell, tell_lacking
from templater.errors import ExitCode, Fault, UsageError
from templater.quoting import show_path

if TYPE_CHECKING:
    from templater.pipeline import ArrangedWall


@click.command(short_help="Propose ways to hang what the layout leaves open.")
@click.argument("layout", type=click.Path(path_type=Path))
@click.option(
    "--picture",
    "pictures",
    metavar="FILE",
    multiple=True,
    type=click.Path(path_type=Path),
    help="Draw the proposals in a file that ends in .svg or .png; may be given twice.",
)
@click.option(
    "--save",
    metavar="FILE",
    type=click.Path(path_type=Path),
    help="Write a new layout with the chosen proposal of each group; LAYOUT stays as it is.",
)
@click.option(
    "--choose",
    "choices",
    metavar="N",
    multiple=True,
    type=click.IntRange(min=1),
    help="Choose proposal N, not the first; once for each open group, in their order.",
)
@click.option(
    "--format",
    "form",
    type=click.Choice(["table", "json"]),
    help="Tables for people, if not given, or JSON for other programs.",
)
def arrange(
    *,
    layout: Path,
    pictures: tuple[Path, ...],
    save: Path | None,
    choices: tuple[int, ...],
    form: str | None,
) -> None:
    """Propose the best ways to hang each group that leaves something open.

    A group leaves open how its pieces stand by 'arrange: any', how far apart by 'gap: any', and which
    of them hang by 'choose: {from: [...], count: any}' in place of 'pieces'. Where there are several
    such groups, each is fitted to the proposals that are chosen for those before it.
    """
    from templater.pipeline import arrange_wall, save_arrangement

    _check_pictures(pictures)
    wall = arrange_wall(layout, choices)
    _show_proposals(wall, is_json=form == "json")
    if not wall.settlements:
        (tell if form == "json" else show)(f"{show_path(layout)}: nothing is left open")
        return
    if save is not None:
        save_arrangement(wall, save)
        tell(f"{show_path(save)}: made of what was chosen; next: templater kit {show_path(save)}")
    _draw_proposals(wall, pictures)


def _check_pictures(paths: Sequence[Path]) -> None:
    """Refuse pictures that cannot be written, before the search. Raises UsageError and WriteError."""
    from templater.to_files.file import check_is_replaceable_file
    from templater.to_files.seal import is_sealed

    for path in paths:
        if path.suffix.lower() not in (".svg", ".png"):
            message = f"--picture is {show_path(path)}, which ends in neither .svg nor .png"
            raise UsageError([Fault(message, "for example: --picture ways.svg")])
        check_is_replaceable_file(path, is_sealed)


def _show_proposals(wall: ArrangedWall, *, is_json: bool) -> None:
    if is_json:
        from templater.commands.for_programs import format_proposals

        click.echo(format_proposals(wall.settlements))
    else:
        from templater.commands.proposals import print_proposals
        from templater.layout.texts import list_texts

        print_proposals(wall.settlements, list_texts(wall.layout))


def _draw_proposals(wall: ArrangedWall, pictures: Sequence[Path]) -> None:
    """Write the pictures; where cairo is missing, a PNG is refused once the others are written."""
    from templater.pipeline import write_contact_sheet
    from templater.to_files.png import CairoMissingError

    if pictures:
        tell_lacking(wall)
    missing = []
    for path in pictures:
        try:
            write_contact_sheet(wall, path)
        except CairoMissingError as error:
            missing.append(f"{show_path(path)}: {error}")
    for line in missing:
        tell(line)
    if missing:
        sys.exit(ExitCode.CANNOT_WRITE)
