"""``templater new``: a layout to start from."""

from __future__ import annotations

from pathlib import Path

import click

from templater.commands.telling import show
from templater.quoting import show_path


@click.command(short_help="Write an example layout, to be changed to your own wall.")
@click.argument("file", type=click.Path(path_type=Path))
def new(file: Path) -> None:
    """Write an example layout to FILE, to be changed to your own wall.

    Open it in any text editor; its notes say what to change. A file that exists already is never
    replaced.
    """
    from templater.layout.starter import starter_text
    from templater.to_files.file import write_new_file

    write_new_file(file, starter_text().encode())
    shown = show_path(file)
    show(f"{shown}: change it to your wall, then: templater kit {shown}")
