"""Whole runs asked to end, early and late: ``python -m tests.series.interrupt_moments [N]``.

Of each command N runs (20 if not told) are struck as they begin, N at any moment and N as they end, by
Ctrl-C, a supervisor or a closed terminal; and kits on a terminal, where a bar shows how far they are,
by the key itself.
"""

from __future__ import annotations

import errno
import os
import pty
import signal
import sys
import time
from collections.abc import Iterator
from pathlib import Path
from random import Random

from templater.errors import ExitCode
from tests.series.fault_kits import count, make_scratch, start
from tests.series.interrupted import COMMANDS, Ended, Files, Place

SIGNALS = (signal.SIGINT, signal.SIGINT, signal.SIGTERM, signal.SIGHUP)
SHARES = {"early": (0.0, 0.15), "at any moment": (0.0, 1.0), "late": (0.85, 1.1)}
"""Of the time that a whole run takes."""


def strike(command: str, place: Place, times: int) -> Iterator[str]:
    """One command, at random moments of each part of its run."""
    random, words = Random(11), COMMANDS[command]
    out, whole, duration = _run_whole(words, place)
    for part, (least, most) in SHARES.items():
        for number in range(times):
            asked = SIGNALS[number % len(SIGNALS)]
            place.lay_out()
            running = start(*words, folder=place.folder)
            time.sleep(random.uniform(least, most) * duration)
            running.send_signal(asked)
            said, complained = running.communicate(timeout=300)
            ended = Ended(running.returncode, said, complained)
            yield _judge(ended, asked, place, out, whole) + f", {part}"


def _run_whole(words: tuple[str, ...], place: Place) -> tuple[str, Files, float]:
    """What an undisturbed run says, what it leaves, and how many seconds it takes."""
    place.lay_out()
    begin = time.perf_counter()
    running = start(*words, folder=place.folder)
    out, complained = running.communicate(timeout=300)
    if running.returncode not in (ExitCode.DONE, ExitCode.RULE_BROKEN):
        raise RuntimeError(complained)
    return out, place.list_files(), time.perf_counter() - begin


def _judge(ended: Ended, asked: signal.Signals, place: Place, out: str, whole: Files) -> str:
    """What came of it; before the program's own first line Python ends as it always does."""
    has_begun = ended.code != -asked and "init_import_site" not in ended.err
    if not has_begun and "in _run" not in ended.err and place.list_files() == place.before:
        return "ended while Python began"
    judged = place.judge(ended, out, whole)
    return f"{judged} by {asked.name}" if judged.startswith("WRONG") else judged


def press_the_key(place: Place, times: int) -> Iterator[str]:
    """Ctrl-C on a terminal, while the bar is shown or not; the cursor must be there afterwards."""
    random, words = Random(12), COMMANDS["kit"]
    _, whole, duration = _run_whole(words, place)
    for _ in range(times):
        place.lay_out()
        child, terminal = pty.fork()
        if not child:
            os.chdir(place.folder)
            os.execv(sys.executable, [sys.executable, "-B", "-m", "templater", *words])
        time.sleep(random.uniform(0.1, 1.0) * duration)
        os.write(terminal, b"\x03")
        shown = _read_all(terminal)
        code = os.waitstatus_to_exitcode(os.waitpid(child, 0)[1])
        judged = place.judge(Ended(code, shown if code == 0 else "", shown), shown, whole)
        is_hidden = shown.rfind("\x1b[?25l") > shown.rfind("\x1b[?25h")
        yield f"{'WRONG: the cursor is hidden: ' if is_hidden else ''}{judged}, on a terminal"


def _read_all(terminal: int) -> str:
    """All that a terminal shows until nobody writes on it any more."""
    shown = b""
    try:
        while part := os.read(terminal, 65536):
            shown += part
    except OSError as error:
        if error.errno != errno.EIO:
            raise
    os.close(terminal)
    return shown.decode(errors="replace")  # the key empties what the terminal has not shown yet


def main() -> None:
    """Strike each command, then a kit on a terminal."""
    signal.signal(signal.SIGINT, signal.default_int_handler)  # a shell's "&" has it ignored
    times = int(sys.argv[1]) if sys.argv[1:] else 20
    with make_scratch() as name:
        place = Place(Path(name))
        os.environ["XDG_CONFIG_HOME"] = str(place.folder / "kept")
        for command in COMMANDS:
            print(command, flush=True)  # noqa: T201
            for result, came in count(strike(command, place, times)).items():
                print(f"  {came:4d} x {result}", flush=True)  # noqa: T201
        for result, came in count(press_the_key(place, times)).items():
            print(f"  {came:4d} x {result}", flush=True)  # noqa: T201


if __name__ == "__main__":
    main()
