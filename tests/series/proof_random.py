"""Sound layouts at random, each made into a kit: what the proof faults, and all of it is a defect.

``python -m tests.series.proof_random [N [FIRST]]`` makes N kits (300 if not told) from the seeds FIRST
on: layouts of every kind, on papers, margins, laps and covers of every kind, for printers as they are
and corrected. A layout that cannot be placed, or takes too many sheets, is told as such and not
counted. Ends 1 if a kit was faulted.
"""

from __future__ import annotations

import random
import re
import sys
import tempfile
from collections import Counter
from contextlib import nullcontext
from pathlib import Path
from unittest.mock import patch

from templater.errors import LayoutError
from templater.geometry import Size
from templater.layout.model import Margins
from templater.paper import parse_paper
from templater.pipeline import PrintChoices, plan_kit, plan_wall
from templater.printing.model import Coverage, Printer
from templater.proving import write_proved_kit
from templater.to_files import kit as writer
from templater.to_files.png import CairoMissingError
from templater.verify.model import ProofError
from tests.series.random_layouts import LayoutMaker

MOST_SHEETS = 40
PICTURE_EVERY = 10
"""Nine tenths of a kit's time go into its picture."""

PAPERS = ("a5", "a4", "a4", "a3", "letter", "letter", "legal", "tabloid", "5 x 7 in", "roll 24 in")


def choose_print(chance: random.Random) -> PrintChoices:
    """Paper, margins, lap, cover and printer."""
    paper = parse_paper(chance.choice(PAPERS))
    across, along = (round(chance.uniform(0.985, 1.015), 4) for _ in range(2))
    rulers = Size(0.6 * paper.size.width, 0.8 * paper.size.width)
    printer = Printer("attic inkjet", across, along, Margins(), rulers)
    return PrintChoices(
        paper=paper,
        margin_mm=chance.choice((None, None, 3.0, 6.35, 10.0, 15.0)),
        lap_mm=chance.choice((None, None, 0.0, 5.0, 8.0, 15.0, 20.0)),
        printer=printer if chance.random() < 0.3 else None,
        cover=chance.choice(list(Coverage)),
        most_sheets=MOST_SHEETS,
    )


def lack_cairo(_: str) -> bytes:
    """What the program meets where the picture cannot be drawn."""
    raise CairoMissingError("left out of most kits of this series")


def make_one(seed: int, folder: Path) -> tuple[str, list[str]]:
    """What came of one layout: a word for it, and what was told."""
    chance = random.Random(seed)
    source = LayoutMaker(chance).write().encode()
    choices = choose_print(chance)
    (folder / "random.yaml").write_bytes(source)
    try:
        kit, _ = plan_kit(plan_wall(source, "random.yaml"), choices)
    except LayoutError as error:
        return "not placed", [fault.message for fault in error.faults]
    bare = patch.object(writer, "png_bytes", lack_cairo)
    try:
        with nullcontext() if seed % PICTURE_EVERY == 0 else bare:
            write_proved_kit(kit, source, folder / f"kit-{seed}", split=chance.random() < 0.2)
    except ProofError as error:
        return "faulted", [fault.message for fault in error.faults]
    return "sound", []


def kind_of(message: str) -> str:
    """A fault without its numbers and names."""
    plain = re.sub(r"^.*?\((?:[^()]*)\): |^[^:]*: ", "", message, count=1)
    return re.sub(r"-?\+?\d+(\.\d+)?", "#", plain)


def main() -> None:
    """Make kits, tell of each that is faulted, and count the faults by kind."""
    told = [int(text) for text in sys.argv[1:]]
    count, first = told[0] if told else 300, told[1] if told[1:] else 0
    outcomes, kinds = Counter[str](), Counter[str]()
    seed = first
    while outcomes["sound"] + outcomes["faulted"] < count:
        with tempfile.TemporaryDirectory() as name:
            outcome, messages = make_one(seed, Path(name))
        outcomes[outcome] += 1
        if outcome == "faulted":
            kinds.update({kind_of(message) for message in messages})
            sys.stdout.write("".join(f"{seed}: {message}\n" for message in messages))
        elif outcome == "sound" and outcomes["sound"] % 25 == 0:
            sys.stdout.write(f"{dict(outcomes)}\n")
        sys.stdout.flush()
        seed += 1
    sys.stdout.write(f"{dict(outcomes)}, seeds {first} to {seed - 1}\n")
    for kind, times in kinds.most_common():
        sys.stdout.write(f"{times:5d} kits: {kind}\n")
    sys.exit(1 if outcomes["faulted"] else 0)


if __name__ == "__main__":
    main()
