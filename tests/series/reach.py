"""What runs reach outside themselves, by the system's own word: ``python -m tests.series.reach``.

strace lists every file that is opened and every socket, of Python and of the libraries in C alike.
"""

from __future__ import annotations

import os
import re
import subprocess
import sys
from pathlib import Path

from tests.series.fault_kits import ROOT, count, make_scratch, write_layouts

_OPENED = re.compile(r'open(?:at)?\((?:AT_FDCWD, )?"((?:[^"\\]|\\.)*)", ([A-Z_|]+).*= \d+')
_CHANGED = re.compile(
    r'(?:mkdir|rename|renameat2|unlink|link|symlink|rmdir|chmod)(?:at)?\(.*?"(.*?)".*= 0'
)
_SOCKET = re.compile(r"socket\((\w+)")


def find_reach(words: tuple[str, ...], folder: Path) -> list[str]:
    """Every place that a run opened, changed or connected to, those of one kind named alike."""
    log = folder / "calls.log"
    watched = ("strace", "-f", "-o", log, "-e", "trace=%file,%network")
    subprocess.run(
        [*watched, sys.executable, "-B", "-m", "templater", *words],
        cwd=folder,
        env={**os.environ, "PYTHONPATH": str(ROOT)},
        stdout=subprocess.DEVNULL,
        check=False,  # the layout breaks a rule, of which check makes an exit code
    )
    found = []
    for line in log.read_text().splitlines():
        if match := _OPENED.search(line):
            to_write = re.search("O_WRONLY|O_RDWR|O_CREAT", match[2])
            found.append(f"{'writes' if to_write else 'reads'} {_name(match[1], folder)}")
        elif match := _CHANGED.search(line):
            found.append(f"changes {_name(match[1], folder)}")
        elif match := _SOCKET.search(line):
            found.append(f"opens a socket {match[1]}")
    return found


def _name(path: str, folder: Path) -> str:
    """A path as one of its kind."""
    full = os.path.realpath(folder / path)
    for place, name in (
        (str(folder / "out"), "the kit"),
        (str(folder / ".out.unfinished"), "the kit that is being made"),
        (str(ROOT / "templater"), "the program"),
        *((os.path.realpath(prefix), "Python") for prefix in (sys.prefix, sys.base_prefix)),
        ("/usr", "the system"),
        ("/etc", "the system"),
        ("/lib", "the system"),
        ("/proc", "the system"),
        ("/sys", "the system"),
    ):
        if full.startswith(place):
            return name
    return full


def main() -> None:
    """Tell what help, a check and a kit reach."""
    with make_scratch() as name:
        folder = Path(name)
        layout, _ = write_layouts(folder)
        for words in (("--help",), ("check", layout.name), ("kit", layout.name, "--out", "out")):
            print(" ".join(words))  # noqa: T201
            for place, times in count(iter(find_reach(words, folder))).items():
                print(f"  {times:5d} x {place}")  # noqa: T201


if __name__ == "__main__":
    main()
