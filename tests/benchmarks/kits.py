"""Whole runs of ``templater kit``, with and without the proof, beside a bare writer of the same files.

``python -m tests.benchmarks.kits [PIECES …]``: for each number of pieces the medians of some runs of
each, taken in turn: user + system time of the process, peak memory, the ratios to the bare writer.
Then how the time grows above 100 pieces, as the slope of the log-log line; and what ``--help`` takes.
"""

from __future__ import annotations

import json
import os
import shutil
import statistics
import subprocess
import sys
import tempfile
from math import log
from pathlib import Path
from typing import NamedTuple
from xml.etree import ElementTree as ET

import pikepdf

from tests.benchmarks.layouts import layout_text

MOST_RUNS, ENOUGH_PIECES = 5, 3000
"""So many runs of small kits; of large ones as many as come to about so many pieces, at least one."""

SIZES = (1, 9, 100, 1000, 5000)


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


def compare(pieces: int, folder: Path) -> tuple[Cost, Cost, Cost]:
    """The whole run, the run without the proof, and the bare writer."""
    layout, tally = folder / f"{pieces}.yaml", folder / f"{pieces}.json"
    layout.write_text(layout_text(pieces), encoding="utf-8")
    kits = {name: str(folder / f"{name}{pieces}") for name in ("kit", "unproved", "bare")}
    commands = (
        [sys.executable, "-m", "templater", "kit", str(layout), "--out", kits["kit"]],
        [sys.executable, "-m", "tests.benchmarks.unproved", str(layout), kits["unproved"]],
        [sys.executable, "-m", "tests.benchmarks.floor", str(tally), kits["bare"]],
    )
    runs = min(MOST_RUNS, max(1, ENOUGH_PIECES // pieces))
    rounds = []
    for _ in range(runs):
        made = []
        for command in commands:
            for kit in kits.values():
                shutil.rmtree(kit, ignore_errors=True)
            made.append(measure(command))
            if not tally.exists():
                tally.write_text(json.dumps(count_ink(Path(kits["kit"]))), encoding="utf-8")
        rounds.append(made)
    whole, unproved, bare = (
        Cost(*map(statistics.median, zip(*costs, strict=True))) for costs in zip(*rounds, strict=True)
    )
    return whole, unproved, bare


def tell_growth(seconds: dict[int, float]) -> str:
    """The slope of the line through the logarithms, from 100 pieces on."""
    points = [(log(pieces), log(spent)) for pieces, spent in seconds.items() if pieces > 100]
    if len(points) < 2:
        return ""
    slope = statistics.linear_regression(*zip(*points, strict=True)).slope
    return f"slope of the log-log line above 100 pieces: {slope:.2f}\n"


def main() -> None:
    """Print the table."""
    sizes = [int(text) for text in sys.argv[1:]] or SIZES
    sys.stdout.write(
        "pieces   kit s  unproved    bare  kit/bare  unproved/bare  MiB: kit unproved bare\n"
    )
    seconds = {}
    with tempfile.TemporaryDirectory() as name:
        for pieces in sizes:
            costs = compare(pieces, Path(name))
            whole, unproved, bare = (cost.seconds for cost in costs)
            seconds[pieces] = whole
            memory = "  ".join(f"{cost.mebibytes:6.0f}" for cost in costs)
            sys.stdout.write(
                f"{pieces:6d} {whole:7.2f} {unproved:9.2f} {bare:7.2f} {whole / bare:9.2f}"
                f" {unproved / bare:14.2f}      {memory}\n"
            )
            sys.stdout.flush()
    sys.stdout.write(tell_growth(seconds))
    helps = [measure([sys.executable, "-m", "templater", "--help"]).seconds for _ in range(MOST_RUNS)]
    sys.stdout.write(f"--help: {statistics.median(helps):.2f} s\n")


if __name__ == "__main__":
    main()
