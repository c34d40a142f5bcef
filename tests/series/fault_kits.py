"""Kits for the series of faults: two layouts, runs of the program, and what stands in a place."""

from __future__ import annotations

import json
import os
import subprocess
import sys
import time
from collections.abc import Iterator
from dataclasses import dataclass
from hashlib import sha256
from pathlib import Path
from tempfile import TemporaryDirectory

ROOT = Path(__file__).parent.parent.parent

_LAYOUT = """\
title: Keeper's cottage, stair hall
units: in
wall: {{width: 12 ft, height: 8 ft}}
furniture:
  - {{name: boot bench, left: 30, width: 60, height: 34}}
pieces:
  - name: Tide chart
    size: {size}
    hang: {{by: wire, drop: 2 1/4, rise: 1/2}}
    place: {{above: boot bench}}
"""


def write_layouts(folder: Path) -> tuple[Path, Path]:
    """Two layouts of one wall, whose kits have different revisions and files of the same names."""
    paths = folder / "first.yaml", folder / "second.yaml"
    for path, size in zip(paths, ("24 x 20", "26 x 20"), strict=True):
        path.write_text(_LAYOUT.format(size=size))
    return paths


def start(*words: str | Path, folder: Path) -> subprocess.Popen[str]:
    """Start the program in a folder."""
    return subprocess.Popen(
        [sys.executable, "-m", "templater", *map(str, words)],
        cwd=folder,
        env={**os.environ, "PYTHONDONTWRITEBYTECODE": "1", "PYTHONPATH": str(ROOT)},
        stdout=subprocess.PIPE,
        stderr=subprocess.PIPE,
        text=True,
    )


@dataclass(frozen=True)
class Ended:
    """How a run ended, and what it said on stderr."""

    code: int
    said: str

    @property
    def is_clean(self) -> bool:
        """Whether it showed nothing of the program's inside."""
        return "Traceback" not in self.said and "Exception ignored" not in self.said


def end(run: subprocess.Popen[str]) -> Ended:
    """Wait until a run has ended."""
    _, said = run.communicate(timeout=300)
    return Ended(run.returncode, said)


def run(*words: str | Path, folder: Path) -> Ended:
    """Run the program in a folder."""
    return end(start(*words, folder=folder))


def time_run(*words: str | Path, folder: Path) -> float:
    """How many seconds a run takes, which must end well."""
    begin = time.perf_counter()
    ended = run(*words, folder=folder)
    if ended.code:
        raise RuntimeError(ended.said)
    return time.perf_counter() - begin


def name_whole_kit(folder: Path) -> str | None:
    """The revision of a kit all of whose files are as its manifest has them; None if one is not."""
    try:
        manifest = json.loads((folder / "manifest.json").read_bytes())
    except (OSError, ValueError):
        return None
    found = {
        path.relative_to(folder).as_posix(): sha256(path.read_bytes()).hexdigest()
        for path in folder.rglob("*")
        if path.is_file()
    }
    found.pop("manifest.json")
    return str(manifest["revision"]) if found == manifest["files"] else None


def list_beside(folder: Path) -> list[str]:
    """What stands in a folder besides layouts and kits: what a run should not have left."""
    return sorted(
        path.name for path in folder.iterdir() if path.suffix != ".yaml" and path.name != "kit"
    )


def make_scratch() -> TemporaryDirectory[str]:
    """A folder for one series."""
    return TemporaryDirectory(prefix="faults-")


def count(results: Iterator[str]) -> dict[str, int]:
    """How often each result came, the most frequent first."""
    counts: dict[str, int] = {}
    for result in results:
        counts[result] = counts.get(result, 0) + 1
    return dict(sorted(counts.items(), key=lambda item: -item[1]))
