"""What an answer costs at the limits of a layout: ``python -m tests.benchmarks.limits``.

Processor seconds of whole runs that write nothing, start of the process included.
"""

from __future__ import annotations

import os
import subprocess
import sys
import tempfile
from collections.abc import Iterable, Iterator
from pathlib import Path
from random import Random
from resource import RUSAGE_CHILDREN, getrusage
from typing import NamedTuple

_ROOT = Path(__file__).parents[2]
_SMALL = ((100, 150), (130, 180), (203, 254), (120, 90), (150, 150))
_LARGE = ((406, 508), (279, 356), (508, 610), (203, 254), (305, 406))
_HANGS = (
    "{by: wire, drop: 55 mm, rise: 12 mm}",
    "{by: d-rings, drop: 70 mm, apart: 70 mm}",
    "{by: sawtooth, drop: 16 mm}",
    "{by: nail, drop: 20 mm}",
)


class Case(NamedTuple):
    """A command and the layout that it is to answer for."""

    name: str
    command: str
    layout: str


def list_cases() -> Iterator[Case]:
    """Each limit by itself."""
    for count, pieces in ((12, 5), (6, 10), (3, 20), (1, 60)):
        name = f"{count} clusters of {pieces} pieces"
        yield Case(name, "check", _write_groups(count, pieces, "arrange: cluster, gap: 50 mm"))
    yield Case("24 open pieces", "arrange", _write_groups(1, 24, "arrange: any, gap: any"))
    yield Case("500 pieces, 300 things", "check", _write_wall(500, _LARGE, things=100))
    yield Case("500 small pieces, 300 things", "check", _write_wall(500, _SMALL, things=100))
    yield Case("150 small pieces, no two alike", "check", _write_wall(150, _SMALL, spread=9.0))
    yield Case("1,000 pieces", "check", _write_wall(1000, _LARGE))
    yield Case("80 pieces on a roll", "check", _write_wall(80, _LARGE, spread=9.0, paper="roll 24 in"))


def _write_groups(count: int, pieces: int, how: str) -> str:
    """Groups of pieces of any sizes beside each other."""
    chances, listed, groups = Random(1), list[str](), list[str]()
    for number in range(count):
        names = [f"Chart {number * pieces + place + 1}" for place in range(pieces)]
        for name in names:
            size = f"{chances.randint(180, 420)} x {chances.randint(180, 420)} mm"
            listed.append(f"  - {{name: {name}, size: {size}, hang: {_HANGS[len(listed) % 4]}}}")
        group = f"name: salon {number + 1}, {how}, centre: {number * 2600 + 6000} mm"
        groups.append(f"  - {{{group}, pieces: [{', '.join(names)}]}}")
    return _join(count * 2600 + 12000, [*listed, "groups:", *groups])


def _write_wall(
    count: int,
    sizes: Iterable[tuple[int, int]],
    *,
    things: int = 0,
    spread: float = 0.0,
    paper: str = "a4",
) -> str:
    """Pieces in columns of five, wider and higher by chance, and as many things of each kind."""
    chances, kinds = Random(5), list(sizes)
    width = max(count // 5 * 600 + 1200, things * 700)
    lines = []
    for number in range(count):
        column, row = divmod(number, 5)
        across, up = (round(side + chances.uniform(0, spread), 1) for side in kinds[number % 5])
        place = f"{{left: {column * 600 + 50} mm, bottom: {row * 700 + 800} mm}}"
        piece = f"name: Chart {number + 1}, size: {across} x {up} mm, weight: 2 kg"
        lines.append(f"  - {{{piece}, hang: {_HANGS[number % 4]}, place: {place}}}")
    for section, size in (
        ("furniture", "width: 500 mm, height: 600 mm, kind: bed"),
        ("openings", "kind: window, bottom: 4800 mm, width: 400 mm, height: 900 mm"),
        ("fixtures", "kind: socket, bottom: 650 mm, width: 80 mm, height: 80 mm"),
    ):
        lines += [f"{section}:"] if things else []
        lines += [
            f"  - {{name: {section} {place}, left: {place * 700 + 30} mm, {size}}}"
            for place in range(things)
        ]
    return _join(width, lines, paper)


def _join(width: int, lines: Iterable[str], paper: str = "a4") -> str:
    """A layout of a wall so wide; the lines begin with its pieces."""
    wall = f"wall: {{width: {width} mm, height: 6000 mm}}"
    return "\n".join(["title: Lamp store", "units: mm", f"paper: {paper}", wall, "pieces:", *lines, ""])


def measure(case: Case) -> float:
    """The processor seconds of a run. Raises RuntimeError where the layout is not answered."""
    with tempfile.TemporaryDirectory() as folder:
        (Path(folder) / "wall.yaml").write_text(case.layout)
        before = getrusage(RUSAGE_CHILDREN)
        run = subprocess.run(
            [sys.executable, "-m", "templater", case.command, "wall.yaml"],
            cwd=folder,
            env={**os.environ, "PYTHONPATH": str(_ROOT)},
            capture_output=True,
            check=False,  # a broken rule is an answer too
        )
    if run.returncode not in {0, 4}:
        raise RuntimeError(run.stderr.decode())
    after = getrusage(RUSAGE_CHILDREN)
    return after.ru_utime + after.ru_stime - before.ru_utime - before.ru_stime


def main() -> None:
    """Print the table."""
    print("| layout | command | seconds |\n|---|---|---|")  # noqa: T201
    for case in list_cases():
        print(f"| {case.name} | {case.command} | {measure(case):.1f} |", flush=True)  # noqa: T201


if __name__ == "__main__":
    main()
