"""A fault at every single step by which a kit takes its place: ``python -m tests.series.fault_steps``.

strace kills the run, or lets the system refuse, at the n-th call of each kind, for every n there is.
Random moments hardly ever strike these calls; together they take a few milliseconds.
"""

from __future__ import annotations

import re
import shutil
import signal
import subprocess
import sys
from collections.abc import Iterator
from pathlib import Path

from tests.series.fault_kits import (
    ROOT,
    count,
    list_beside,
    make_scratch,
    name_whole_kit,
    run,
    write_layouts,
)

CALLS = (
    *("mkdir", "rmdir", "rename", "renameat2", "unlink", "unlinkat"),
    *("fsync", "flock", "chmod", "sendfile"),
)
FAULTS = ("signal=KILL", "error=ENOSPC", "error=EIO", "error=EROFS", "signal=INT", "signal=TERM")

_WRITE = """
import shutil, sys
from pathlib import Path
from templater.errors import WriteError
from templater.to_files.folder import whole_folder
from templater.to_files.held_signals import signals_heeded
try:
    with signals_heeded(), whole_folder(Path("kit")) as building:
        shutil.copytree(sys.argv[1], building, dirs_exist_ok=True)
except WriteError as error:
    print(error, file=sys.stderr)
    sys.exit(error.exit_code)
except KeyboardInterrupt:
    sys.exit(130)
"""
"""What a run does with its folder, without the seconds of planning before."""


class _Steps:
    """Runs in one scratch folder, with or without the step that exchanges two folders."""

    def __init__(self, folder: Path, *, has_exchange: bool) -> None:
        self.folder, self.has_exchange = folder, has_exchange
        for layout in write_layouts(folder):
            run("kit", layout, "--out", layout.stem, folder=folder)
        self.kits = {stem: name_whole_kit(folder / stem) for stem in ("first", "second")}

    def write(self, *options: str, source: str = "second") -> subprocess.CompletedProcess[str]:
        """Write a kit under strace; its log of calls comes on stderr after what the run says."""
        refused = () if self.has_exchange else ("-e", "inject=renameat2:error=ENOSYS")
        command = ["strace", "-f", "-qq", *refused, *options, sys.executable, "-B", "-c", _WRITE, source]
        return subprocess.run(
            command,
            cwd=self.folder,
            env={"PYTHONPATH": str(ROOT), "PATH": "/usr/bin"},
            capture_output=True,
            text=True,
            check=False,
        )

    def lay_out(self, *, has_older: bool) -> None:
        """Put all as it is before a run."""
        for path in (self.folder / "kit", self.folder / ".kit.unfinished"):
            shutil.rmtree(path, ignore_errors=True)
        if has_older:
            shutil.copytree(self.folder / "first", self.folder / "kit")

    def count_calls(self, call: str, *, has_older: bool) -> int:
        """How often a run makes one kind of call, in the thread that makes it most often."""
        self.lay_out(has_older=has_older)
        done = self.write("-e", f"trace={call},renameat2", "-o", "calls")
        if done.returncode:
            raise RuntimeError(done.stderr)
        threads = re.findall(rf"^(\d+) +{call}\(", (self.folder / "calls").read_text(), re.MULTILINE)
        return max(map(threads.count, set(threads)), default=0)

    def judge(self, code: int, said: str, *, has_older: bool) -> str:
        """What stands in the place now, and what the next run makes of it."""
        now = name_whole_kit(self.folder / "kit")
        stands = (self.folder / "kit").exists()
        left = [name for name in list_beside(self.folder) if name.startswith(".")]
        kit = {self.kits["first"]: "older kit", self.kits["second"]: "newer kit"}.get(now, "none")
        is_bad = (stands and now is None) or (has_older and now is None and self.has_exchange)
        is_bad |= "Traceback" in said or (code > 0 and bool(left) and "left behind" not in said)
        again = self.write(source="first")
        after = list_beside(self.folder)
        is_bad |= again.returncode != 0 or name_whole_kit(self.folder / "kit") != self.kits["first"]
        is_bad |= any(name.startswith(".") for name in after)
        return f"{'WRONG: ' if is_bad else ''}exit {code}, {kit}, left {left}{said if is_bad else ''}"

    def strike(self, fault: str, *, has_older: bool) -> Iterator[str]:
        """One fault at every call of every kind."""
        for call in CALLS:
            if call == "renameat2" and not self.has_exchange:
                continue
            for number in range(1, self.count_calls(call, has_older=has_older) + 1):
                self.lay_out(has_older=has_older)
                done = self.write("-e", f"inject={call}:{fault}:when={number}", "-o", "calls")
                told = self.judge(done.returncode, done.stderr, has_older=has_older)
                yield f"{told}{f' at {call} {number}' if 'WRONG' in told else ''}"


def main() -> None:
    """Strike every step with the faults that are named, or all."""
    signal.signal(signal.SIGINT, signal.default_int_handler)  # a shell's "&" has it ignored
    for has_exchange in (True, False):
        with make_scratch() as name:
            steps = _Steps(Path(name), has_exchange=has_exchange)
            for fault in sys.argv[1:] or FAULTS:
                for has_older in (True, False):
                    way = "in one step" if has_exchange else "put aside first"
                    print(f"{fault}, {way}, {'over an older kit' if has_older else 'in no place'}")  # noqa: T201
                    for result, times in count(steps.strike(fault, has_older=has_older)).items():
                        print(f"  {times:4d} x {result}", flush=True)  # noqa: T201


if __name__ == "__main__":
    main()
