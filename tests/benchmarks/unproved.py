"""A kit that is written but not read back, to tell what the proof costs."""

from __future__ import annotations

import sys
from pathlib import Path

from templater.pipeline import PrintChoices, plan_kit, read_wall
from templater.to_files.kit import write_kit


def main(layout: Path, folder: Path) -> None:
    """Write a layout's kit as ``templater kit`` does, and believe it."""
    wall = read_wall(layout)
    kit, _ = plan_kit(wall, PrintChoices())
    write_kit(kit, wall.source, folder, prove=lambda _: {"holes": 0, "farthest_mm": 0.0})


if __name__ == "__main__":
    main(Path(sys.argv[1]), Path(sys.argv[2]))
