"""Real faults at random moments: ``python -m tests.series.faults [NAME...]``, as root for the mounts.

Every series prints how often each result came; one that must not be is marked with WRONG. Interrupts
have series of their own: ``interrupt_moments`` and ``interrupt_lines``.
"""

from __future__ import annotations

import os
import shutil
import signal
import subprocess
import sys
import time
from collections.abc import Callable, Iterator
from pathlib import Path
from random import Random

from templater.geometry import Size
from templater.layout.model import Margins
from templater.printing.calibration import Calibration, format_printers
from templater.to_files.printer_store import read_printers
from tests.series.fault_kits import (
    Ended,
    count,
    end,
    list_beside,
    make_scratch,
    name_whole_kit,
    run,
    start,
    time_run,
    write_layouts,
)

KILLS, DOUBLES, CALIBRATIONS = 150, 40, 40
KEEP = ("calibrate", "--measured", "179mm", "239mm", "--printer")
RULERS = Size(180.0, 240.0), Size(178.9, 239.1)


def kill_over_an_older_kit() -> Iterator[str]:
    """SIGKILL at a random moment of a run over an older kit, again and again in one place."""
    with make_scratch() as name:
        folder, random = Path(name), Random(6)
        layouts = write_layouts(folder)
        duration = max(time_run("kit", layout, "--out", "kit", folder=folder) for layout in layouts)
        for number in range(KILLS):
            before = name_whole_kit(folder / "kit")
            wait_s = random.uniform(0, duration * 1.1)
            running = start("kit", layouts[number % 2], "--out", "kit", folder=folder)
            time.sleep(wait_s)
            running.kill()
            end(running)
            yield _judge_kit(before, name_whole_kit(folder / "kit"))
        ended = run("kit", layouts[0], "--out", "kit", folder=folder)
        yield f"at last: exit {ended.code}, left: {list_beside(folder)}"


def _judge_kit(before: str | None, now: str | None) -> str:
    if now is None:
        return "WRONG: no whole kit" if before else "nothing yet"
    return "the older kit" if now == before else "the newer kit"


def kill_in_an_empty_place() -> Iterator[str]:
    """SIGKILL at a random moment of a run where no kit stands."""
    with make_scratch() as name:
        folder, random = Path(name), Random(7)
        layout, _ = write_layouts(folder)
        duration = time_run("kit", layout, "--out", "kit", folder=folder)
        for _ in range(KILLS):
            shutil.rmtree(folder / "kit", ignore_errors=True)
            running = start("kit", layout, "--out", "kit", folder=folder)
            time.sleep(random.uniform(0, duration * 1.1))
            running.kill()
            end(running)
            stands = (folder / "kit").exists()
            whole = name_whole_kit(folder / "kit")
            yield "WRONG: a part of a kit" if stands and not whole else _judge_kit(None, whole)
        ended = run("kit", layout, "--out", "kit", folder=folder)
        yield f"at last: exit {ended.code}, left: {list_beside(folder)}"


def two_at_once() -> Iterator[str]:
    """Two runs into one place, started together or a moment apart."""
    with make_scratch() as name:
        folder, random = Path(name), Random(9)
        layouts = write_layouts(folder)
        for number in range(DOUBLES):
            if number % 2:
                shutil.rmtree(folder / "kit")
            first = start("kit", layouts[0], "--out", "kit", folder=folder)
            time.sleep(random.choice([0, 0, 0.1, 1]))
            second = start("kit", layouts[1], "--out", "kit", folder=folder)
            ends = sorted((end(first), end(second)), key=lambda ended: ended.code)
            yield _judge_two(ends, folder)


def _judge_two(ends: list[Ended], folder: Path) -> str:
    codes = [ended.code for ended in ends]
    is_whole = name_whole_kit(folder / "kit") is not None
    is_told = codes == [0, 0] or "another run is writing kit" in ends[1].said
    left = list_beside(folder)
    mark = "" if is_whole and is_told and not left and codes in ([0, 0], [0, 5]) else "WRONG: "
    return f"{mark}exits {codes}, left {left}"


def small_disks() -> Iterator[str]:
    """A disk of every small size, without and with an older kit on it, then one that is read-only."""
    with make_scratch() as name:
        folder, disk = Path(name), Path(name) / "disk"
        disk.mkdir()
        layouts = write_layouts(folder)
        run("kit", layouts[0], "--out", "older", folder=folder)
        for has_older in (False, True):
            for size in (0, 4, 16, 40, 80, 120, 160, 200, 240, 280, 320, 360, 400, 500, 600, 700, 800):
                yield _try_disk(folder, layouts[1], size, has_older=has_older)
        with _Mount(disk, "size=4m"):
            shutil.copytree(folder / "older", disk / "kit")
            subprocess.run(["mount", "-o", "remount,ro", disk], check=True)
            before = name_whole_kit(disk / "kit")
            ended = run("kit", layouts[1], "--out", disk / "kit", folder=folder)
            yield f"read-only: {_judge_disk(ended, before, disk)}: {ended.said.splitlines()[0][-23:]}"


def _try_disk(folder: Path, layout: Path, size_kb: int, *, has_older: bool) -> str:
    disk = folder / "disk"
    older_kb = 800 if has_older else 0
    with _Mount(disk, f"size={max(4, size_kb + older_kb)}k"):
        if has_older:
            shutil.copytree(folder / "older", disk / "kit")
        before = name_whole_kit(disk / "kit")
        ended = run("kit", layout, "--out", disk / "kit", "--zip", folder=folder)
        if before is None and (disk / "kit").exists() and name_whole_kit(disk / "kit") is None:
            return "WRONG: a part of a kit"
        return f"{'older kit' if has_older else 'empty'}: {_judge_disk(ended, before, disk)}"


def _judge_disk(ended: Ended, before: str | None, disk: Path) -> str:
    judged = _judge_kit(before, name_whole_kit(disk / "kit"))
    left = [path for path in list_beside(disk) if path != "kit.zip"]
    mark = "" if not left and ended.is_clean and ended.code in (0, 5) else "WRONG: "
    packed = ", packed" if (disk / "kit.zip").exists() else ""
    return f"{mark}exit {ended.code}, {judged}{packed}, left {left}"


class _Mount:
    """A disk in memory for as long as the block lasts."""

    def __init__(self, folder: Path, options: str) -> None:
        self.folder, self.options = folder, options

    def __enter__(self) -> None:
        subprocess.run(["mount", "-t", "tmpfs", "-o", self.options, "tmpfs", self.folder], check=True)

    def __exit__(self, *_: object) -> None:
        subprocess.run(["umount", self.folder], check=True)


def calibrate_at_once() -> Iterator[str]:
    """Two printers kept at once, again and again."""
    with make_scratch() as name:
        folder = Path(name)
        os.environ["XDG_CONFIG_HOME"] = name
        for number in range(CALIBRATIONS):
            runs = [start(*KEEP, f"printer {number} {side}", folder=folder) for side in "ab"]
            codes = [end(running).code for running in runs]
            kept = (folder / "templater" / "printers.json").read_text()
            lost = [side for side in "ab" if f"printer {number} {side}" not in kept]
            yield f"{'WRONG: ' if lost or any(codes) else ''}exits {codes}, lost {lost}"
        yield f"left: {sorted(path.name for path in (folder / 'templater').iterdir())}"


def calibrate_on_full_disks() -> Iterator[str]:
    """A printer kept where 0 to 9 pages of the disk are free, with and without others kept before."""
    with make_scratch() as name:
        folder, disk = Path(name), Path(name) / "disk"
        disk.mkdir()
        os.environ["XDG_CONFIG_HOME"] = str(disk)
        for known in (0, 1, 40):
            for free in range(10):
                with _Mount(disk, "size=128k"):
                    yield f"{known} kept before: {_try_store(folder, disk, known, free)}"


def _try_store(folder: Path, disk: Path, known: int, free: int) -> str:
    store, filler = disk / "templater" / "printers.json", disk / "filler"
    printers = [Calibration(f"printer {n}", *RULERS, Margins()) for n in range(known)]
    if known:
        store.parent.mkdir()
        store.write_text(format_printers(printers), encoding="utf-8")
    before = {path.relative_to(disk) for path in disk.rglob("*")}
    filler.touch()
    room = os.statvfs(disk).f_bavail - free
    filler.write_bytes(bytes(max(0, room) * os.statvfs(disk).f_frsize))
    ended = run(*KEEP, "attic inkjet", folder=folder)
    filler.unlink()
    kept = [printer.name for printer in read_printers(store)]
    left = sorted(str(p) for p in {path.relative_to(disk) for path in disk.rglob("*")} - before)
    older = [printer.name for printer in printers]
    is_good = kept == [*older, "attic inkjet"] if ended.code == 0 else kept == older and not left
    mark = "" if is_good and ended.is_clean and ended.code in (0, 5) else "WRONG: "
    said = "" if ended.code == 0 else f": {ended.said.splitlines()[0][-23:]}"
    return f"{mark}exit {ended.code}, {'kept' if len(kept) > known else 'as it was'}{said}"


SERIES: dict[str, Callable[[], Iterator[str]]] = {
    series.__name__: series
    for series in (
        kill_over_an_older_kit,
        kill_in_an_empty_place,
        two_at_once,
        small_disks,
        calibrate_at_once,
        calibrate_on_full_disks,
    )
}


def main() -> None:
    """Run the series that are named, or all."""
    signal.signal(signal.SIGINT, signal.default_int_handler)  # a shell's "&" has it ignored
    for name in sys.argv[1:] or SERIES:
        print(name, flush=True)  # noqa: T201
        for result, times in count(SERIES[name]()).items():
            print(f"  {times:4d} x {result}", flush=True)  # noqa: T201


if __name__ == "__main__":
    main()
