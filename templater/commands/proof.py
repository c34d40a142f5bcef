"""``templater proof``: a kit's ink read again and held against its plan."""

from __future__ import annotations

from pathlib import Path

import click

from templater.commands.telling import show, tell
from templater.quoting import show_path


@click.command(short_help="Read a kit again and hold every mark against its plan.")
@click.argument("kit_folder", metavar="DIR", type=click.Path(path_type=Path))
def proof(kit_folder: Path) -> None:
    """Read the kit in DIR again and hold every mark on its paper against the plan.

    Use it for a kit that somebody sent you. The plan is worked out from the layout and the options in
    DIR. A file that was changed after the kit was made is told; what is drawn in it decides. Where a
    mark is not at its place, the exit code is 6.
    """
    from templater.proving import prove_kit

    record, proved = prove_kit(kit_folder)
    for note in proved.notes:
        tell(f"note: {note}")
    holes = f"{proved.holes} hole{'' if proved.holes == 1 else 's'} re-read from its files"
    far = proved.farthest_mm
    farthest = f"{far:.3f} mm" if far >= 0.001 else "less than 0.001 mm"
    revision = f"revision {record.revision}"
    show(f"{show_path(kit_folder)}: {revision}, {holes}; farthest {farthest} from plan")
