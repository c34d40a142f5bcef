"""Commands that are interrupted, the folder in which they run, and what must be true afterwards."""

from __future__ import annotations

import shutil
from dataclasses import dataclass
from pathlib import Path

from templater.errors import ExitCode
from tests.series.fault_kits import name_whole_kit, run, write_layouts

Files = dict[str, bytes | None]
"""What stands in a folder, by names from it; of folders no content."""

OPEN_LAYOUT = """\
title: Keeper's cottage, stair hall
units: in
wall: {width: 12 ft, height: 8 ft}
pieces:
  - {name: Tide chart, size: 12 x 10, hang: {by: wire, drop: 2}}
  - {name: Fog bell, size: 10 x 8, hang: {by: wire, drop: 2}}
groups:
  - {name: pair, pieces: [Tide chart, Fog bell], arrange: row, gap: any, centre: 72}
"""
COMMANDS = {
    "kit": ("kit", "second.yaml", "--out", "kit"),
    "kit in no place": ("kit", "second.yaml", "--out", "deep/er/kit"),
    "kit --zip": ("kit", "second.yaml", "--out", "kit", "--zip"),
    "calibrate --measured": ("calibrate", "--measured", "179mm", "239mm", "--printer", "attic inkjet"),
    "calibrate": ("calibrate", "--out", "rulers.pdf"),
    "arrange --save": ("arrange", "open.yaml", "--save", "saved.yaml"),
    "arrange --picture": ("arrange", "open.yaml", "--picture", "ways.svg"),
    "measure --out": ("measure", "second.yaml", "--out", "form.pdf"),
    "new": ("new", "begun.yaml"),
    "check": ("check", "second.yaml"),
    "proof": ("proof", "kit"),
}


@dataclass(frozen=True)
class Ended:
    """How a run ended, and what it said."""

    code: int
    out: str
    err: str


class Place:
    """A folder with layouts and an older kit, laid out anew for each run."""

    def __init__(self, scratch: Path) -> None:
        self.model, self.folder = scratch / "model", scratch / "run"
        self.model.mkdir()
        first, _ = write_layouts(self.model)
        (self.model / "open.yaml").write_text(OPEN_LAYOUT)
        run("kit", first, "--out", "kit", folder=self.model)
        if name_whole_kit(self.model / "kit") is None:
            raise RuntimeError("no kit to begin with")
        self.lay_out()
        self.before = self.list_files()

    def lay_out(self) -> None:
        """Put all as it is before a run."""
        shutil.rmtree(self.folder, ignore_errors=True)
        shutil.copytree(self.model, self.folder)

    def list_files(self) -> Files:
        """All that stands there, but for what is kept of the program's own words."""
        return {
            path.relative_to(self.folder).as_posix(): path.read_bytes() if path.is_file() else None
            for path in sorted(self.folder.rglob("*"))
            if path.name not in (".out", ".err")
        }

    def judge(self, ended: Ended, out: str, whole: Files) -> str:
        """What came of an interrupted run that would have said ``out`` and left ``whole``.

        It must end 130 and say so, leave nothing that a whole run would not, and name what is in its
        place already; or it has done and told all, and ends as it would have.
        """
        now = self.list_files()
        changed = {name for name in now.keys() | self.before if now.get(name) != self.before.get(name)}
        strange = {name for name in changed if now.get(name) != whole.get(name)}
        is_done = ended.out == out and now == whole
        is_told = is_done or not changed or any(name.split("/")[0] in ended.err for name in changed)
        is_clean = "Traceback" not in ended.err and "Exception ignored" not in ended.err
        is_over = is_done and ended.code in (ExitCode.DONE, ExitCode.RULE_BROKEN)
        is_ended = is_over or (ended.code == ExitCode.INTERRUPTED and "interrupted" in ended.err)
        stands = "newer" if changed else "as before"
        if is_ended and is_clean and is_told and not strange:
            return f"exit {ended.code}, {stands}"
        return f"WRONG: exit {ended.code}, {stands}, strange {sorted(strange)[:3]}, {ended.err!r}"
