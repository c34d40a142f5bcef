"""Whole runs of ``templater kit`` beside a bare writer of the same files.

``python -m tests.benchmarks.kits [PIECES …]``: for each number of pieces, the median of five runs
of each in turn (user + system time of the process, peak memory), and the ratio.
"""

from __future__ import annotations

import json
import os
import statistics
import subprocess
import sys
import tempfile
from pathlib import Path
from typing import NamedTuple
from xml.etree import ElementTree as ET

import pikepdf

from tests.benchmarks.layouts import layout_text

RUNS = 5
SIZES = (1, 9, 100, 1000)


class Cost(NamedTuple):
    """What one run took: processor seconds and peak memory in MiB."""

    seconds: float
    mebibytes: float


def measure(command: list[str]) -> Cost:
    """Run a command to its end and read the system's own account of it."""
    process = subprocess.Popen(command, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)
    _, status, usage = os.wait4(process.pid, 0)
    process.returncode = os.waitstatus_to_exitcode(status)
    if process.returncode:
        raise SystemExit(f"{command} ended with {process.returncode}")
    return Cost(usage.ru_utime + usage.ru_stime, usage.ru_maxrss / 1024)


def count_ink(kit: Path) -> dict[str, list[list[float]]]:
    """How many lines and words stand on each page, and how many lines and letters in each SVG."""
    pages: list[list[float]] = []
    with pikepdf.open(kit / "kit.pdf") as document:
        for page in document.pages:
            operators = [str(op.operator) for op in pikepdf.parse_content_stream(page)]
            box = [float(value) for value in page.mediabox]
            pages.append([box[2], box[3], float(operators.count("S")), float(operators.count("Tj"))])
    drawings: list[list[float]] = []
    for path in [kit / "overview.svg", *sorted((kit / "templates").glob("*.svg"))]:
        tags = [element.tag.rsplit("}", 1)[-1] for element in ET.parse(path).iter()]
        drawings.append([tags.count("line") + tags.count("polyline"), tags.count("use")])
    return {"pages": pages, "drawings": drawings}


def compare(pieces: int, folder: Path) -> str:
    """One row of the table."""
    layout, kit, tally = folder / f"{pieces}.yaml", folder / f"kit{pieces}", folder / f"{pieces}.json"
    layout.write_text(layout_text(pieces), encoding="utf-8")
    make = [sys.executable, "-m", "templater", "kit", str(layout), "--out", str(kit)]
    bare = [sys.executable, "-m", "tests.benchmarks.floor", str(tally), str(folder / f"bare{pieces}")]
    measure(make)
    tally.write_text(json.dumps(count_ink(kit)), encoding="utf-8")
    measure(bare)
    pairs = [(measure(make), measure(bare)) for _ in range(RUNS)]
    seconds = [statistics.median(pair[side].seconds for pair in pairs) for side in (0, 1)]
    memory = [statistics.median(pair[side].mebibytes for pair in pairs) for side in (0, 1)]
    ratio = statistics.median(kit_cost.seconds / bare_cost.seconds for kit_cost, bare_cost in pairs)
    return (
        f"{pieces:6d} {seconds[0]:9.2f} {seconds[1]:9.2f} {ratio:7.2f} {memory[0]:9.0f} {memory[1]:9.0f}"
    )


def main() -> None:
    """Print the table."""
    sizes = [int(text) for text in sys.argv[1:]] or SIZES
    sys.stdout.write("pieces     kit s    bare s   ratio   kit MiB  bare MiB\n")
    with tempfile.TemporaryDirectory() as name:
        for pieces in sizes:
            sys.stdout.write(compare(pieces, Path(name)) + "\n")
            sys.stdout.flush()


if __name__ == "__main__":
    main()
