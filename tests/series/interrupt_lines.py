"""An interrupt at every line that puts files in their place: ``python -m tests.series.interrupt_lines``.

Each command is run again and again in a process of its own, and asked to end at one line of the
command line, of the commands, or of what puts files in their place: for every line that it passes, at
the first time and at the last. Random moments hardly ever strike these lines. Pictures are left out:
they take most of the time.
"""

from __future__ import annotations

import importlib
import json
import os
import signal
import sys
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import Any

from templater.errors import ExitCode
from tests.interrupting import Passing
from tests.series.fault_kits import count, make_scratch
from tests.series.interrupted import COMMANDS, Ended, Place
from tests.series.proof_random import lack_cairo

PRELOADED = (
    *("cli", "pipeline", "proving", "calibrating", "layout.starter", "commands.check_report"),
    *("commands.proposals", "to_files.archive", "to_files.kit", "to_files.seal", "to_files.refusal"),
    *("options", "rules.explain", "typesetting"),
)
"""What a run imports on its way, imported once: imports are struck at random moments."""


def run_in_child(words: tuple[str, ...], folder: Path, act: Callable[[int, str], None]) -> Ended:
    """The program in a fork of this process, every watched line shown to ``act``."""
    child = os.fork()
    if child:
        _, status = os.waitpid(child, 0)
        code = os.waitstatus_to_exitcode(status)
        return Ended(code, (folder / ".out").read_text(), (folder / ".err").read_text())
    os.chdir(folder)
    for handle, name in ((1, ".out"), (2, ".err")):
        os.dup2(os.open(name, os.O_WRONLY | os.O_CREAT | os.O_TRUNC), handle)
    sys.stdout, sys.stderr = os.fdopen(1, "w"), os.fdopen(2, "w")
    sys.argv = ["templater", *words]
    os._exit(_end_as_python_does(act))


def _end_as_python_does(act: Callable[[int, str], None]) -> int:
    """Run the program; its exit code, its streams written, what it left to be collected collected."""
    from templater.__main__ import main

    code = 0
    try:
        sys.settrace(Passing(act))
        main()
    except SystemExit as end:
        code = int(end.code or 0)
    except BaseException as error:  # Python would show it
        sys.settrace(None)
        sys.stderr.write(f"Traceback: {error!r}\n")
        code = 1
    sys.settrace(None)
    sys.stdout.flush()
    sys.stderr.flush()
    return code


def choose_moments(words: tuple[str, ...], place: Place) -> tuple[str, list[tuple[int, str]]]:
    """What a run of the command says, and the first and the last time that it passes each line.

    What comes before the command line's own first line is still the beginning of Python.
    """
    place.lay_out()
    log = place.folder.parent / "passed"
    with log.open("w") as stream:
        ended = run_in_child(words, place.folder, lambda number, line: _note(stream, number, line))
    if ended.code not in (ExitCode.DONE, ExitCode.RULE_BROKEN):
        raise RuntimeError(ended.err)
    passed = [json.loads(line) for line in log.read_text().splitlines()]
    while not passed[0][1].startswith("cli.py"):
        del passed[0]
    first = {line: number for number, line in reversed(passed)}
    last = {line: number for number, line in passed}
    return ended.out, sorted(
        {(number, line) for times in (first, last) for line, number in times.items()}
    )


def _note(stream: Any, number: int, line: str) -> None:
    stream.write(json.dumps([number, line]) + "\n")
    stream.flush()


def strike(words: tuple[str, ...], place: Place, asked: signal.Signals) -> Iterator[str]:
    """The command asked to end at each of the moments; what came of it."""
    out, moments = choose_moments(words, place)
    whole = place.list_files()
    for moment, line in moments:
        place.lay_out()

        def act(number: int, _line: str, moment: int = moment) -> None:
            if number == moment:
                signal.raise_signal(asked)

        judged = place.judge(run_in_child(words, place.folder, act), out, whole)
        yield f"{judged} at {line}" if judged.startswith("WRONG") else judged


def main() -> None:
    """Strike the commands that are named, or all; a short one by a supervisor's signal too."""
    signal.signal(signal.SIGINT, signal.default_int_handler)  # a shell's "&" has it ignored
    with make_scratch() as name:
        place = Place(Path(name))
        os.environ["XDG_CONFIG_HOME"] = str(place.folder / "kept")
        for module in PRELOADED:
            importlib.import_module(f"templater.{module}")
        sys.modules["templater.to_files.kit"].png_bytes = lack_cairo  # type: ignore[attr-defined]
        for command in sys.argv[1:] or COMMANDS:
            for asked in (signal.SIGINT, signal.SIGTERM) if command == "new" else (signal.SIGINT,):
                print(f"{command}, {asked.name}", flush=True)  # noqa: T201
                for result, times in count(strike(COMMANDS[command], place, asked)).items():
                    print(f"  {times:4d} x {result}", flush=True)  # noqa: T201


if __name__ == "__main__":
    main()
