"""Makes output_examples/ anew: ``python -m tests.examples``."""

from __future__ import annotations

import shutil
import sys
from pathlib import Path

ROOT = Path(__file__).parent.parent
EXAMPLES = ROOT / "output_examples"
LAYOUTS = ("stair-hall", "bedroom-pair", "salon-wall")
PICTURE = "template-sheet.png"
"""One sheet of a template as it comes out of the printer, for the README."""

_PICTURE_DOTS_PER_INCH = 80


def make_examples(folder: Path) -> None:
    """Write the kit of each shipped layout, and the README's picture, into a folder."""
    from templater.pipeline import PrintChoices, plan_kit, read_wall
    from templater.proving import write_proved_kit

    for name in LAYOUTS:
        wall = read_wall(ROOT / "layouts" / f"{name}.yaml")
        kit, _ = plan_kit(wall, PrintChoices())
        write_proved_kit(kit, wall.source, folder / name)
    draw_picture(folder / LAYOUTS[0], folder / PICTURE)


def draw_picture(kit: Path, picture: Path) -> None:
    """The sheet with the first hole of a kit, as a raster."""
    import json

    import pypdfium2

    manifest = json.loads((kit / "manifest.json").read_text("utf-8"))
    first = next(page["page"] for page in manifest["pages"] if page["kind"] == "template")
    with pypdfium2.PdfDocument(kit / "kit.pdf") as document:
        bitmap = document[first - 1].render(scale=_PICTURE_DOTS_PER_INCH / 72)
        bitmap.to_pil().convert("L").save(picture)


if __name__ == "__main__":
    shutil.rmtree(EXAMPLES, ignore_errors=True)
    EXAMPLES.mkdir()
    make_examples(EXAMPLES)
    sys.exit(0)
