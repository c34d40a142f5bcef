"""Wrong layouts given to the program as a whole, so many as asked; run by hand with ``python -m``.

``python -m tests.series.fuzz_processes COUNT`` runs ``kit`` on each and holds against its promise:
the exit code is 0 or 3, stderr is clean, nothing outlives the time, and nothing appears or changes
beside the one folder that was asked for.
"""

from __future__ import annotations

import subprocess
import sys
from collections import Counter
from collections.abc import Iterator
from hashlib import sha256
from pathlib import Path
from random import Random
from tempfile import TemporaryDirectory

from tests.layout.mutations import Step, make_layout

SECONDS = 60
"""How long a run may take at most; many runs share this machine with others."""


def list_files(folder: Path) -> dict[str, str]:
    """Every file and folder below a folder, with a hash of what is in it."""
    return {
        str(path.relative_to(folder)): sha256(path.read_bytes()).hexdigest() if path.is_file() else ""
        for path in folder.rglob("*")
    }


def judge_run(content: bytes) -> Iterator[str]:
    """What is wrong with a run on a layout; its exit code as the first word."""
    with TemporaryDirectory() as name:
        room = Path(name)
        (room / "home").mkdir()
        (room / "inside" / "deep").mkdir(parents=True)
        (room / "inside" / "hall.yaml").write_bytes(content)
        before = list_files(room)
        ended = subprocess.run(
            [sys.executable, "-m", "templater", "kit", "../hall.yaml", "--out", "kit"],
            capture_output=True,
            timeout=SECONDS,
            cwd=room / "inside" / "deep",
            env={"HOME": str(room / "home"), "PATH": "", "PYTHONPATH": str(Path.cwd())},
            check=False,
        )
        yield str(ended.returncode)
        after = list_files(room)
    shown = ended.stderr.decode()
    kit = str(Path("inside", "deep", "kit"))
    if ended.returncode not in (0, 3) or "Traceback" in shown:
        yield f"ended so: {shown[-2000:]}"
    if not shown.replace("\n", "").isprintable():
        yield f"is not clean: {shown[:500]!r}"
    if {path: each for path, each in after.items() if not f"{path}/".startswith(f"{kit}/")} != before:
        yield f"wrote beside its folder: {sorted(set(after) ^ set(before))}"
    if (kit in after) != (ended.returncode == 0):
        yield "left part of a kit, or none"


def main(count: int) -> None:
    """Run so many, and tell what is wrong."""
    chance = Random(6)
    codes: Counter[str] = Counter()
    for number in range(count):
        on_tree = [
            Step(*(chance.randrange(2**16) for _ in range(4))) for _ in range(chance.randint(0, 2))
        ]
        content = make_layout(chance.randrange(99), on_tree, is_flow=chance.random() < 0.5)
        try:
            code, *wrong = judge_run(content)
        except subprocess.TimeoutExpired:
            code, wrong = "none", [f"ran for more than {SECONDS} s"]
        codes[code] += 1
        for each in wrong:
            print(f"run {number} {each}\n{content!r}", flush=True)  # noqa: T201
        if number % 10 == 9 or number + 1 == count:
            print(f"{number + 1} runs, by exit code: {dict(codes)}", flush=True)  # noqa: T201


if __name__ == "__main__":
    main(int(sys.argv[1]))
