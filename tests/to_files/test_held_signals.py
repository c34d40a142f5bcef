"""Runs that are asked to end, at any line; tests/series/interrupt_lines.py strikes whole commands."""

from __future__ import annotations

import json
import os
import signal
import subprocess
import sys
from collections.abc import Callable
from pathlib import Path

import pytest

from templater.errors import ExitCode
from templater.to_files.file import whole_file, write_new_file
from templater.to_files.folder import whole_folder
from templater.to_files.held_signals import (
    ENDING_SIGNALS,
    heed_what_was_asked,
    list_in_place,
    note_in_place,
    signals_heeded,
    signals_held,
)
from templater.to_files.manifest import SCHEMA
from tests.interrupting import Passing
from tests.kits import LAYOUTS


def _make_kit(path: Path, word: str) -> None:
    with whole_folder(path) as building:
        (building / "manifest.json").write_text(json.dumps({"schema": SCHEMA, "files": {"page": ""}}))
        (building / "page").write_text(word)


def _make_file(path: Path, word: str) -> None:
    with whole_file(path, Path.is_file) as building:
        building.write_text(word)


def _make_new_file(path: Path, word: str) -> None:
    write_new_file(path.with_name(word), word.encode())


def _listed(folder: Path) -> dict[str, str]:
    """Every file and folder below a folder, hidden ones too, with what it holds."""
    return {
        path.relative_to(folder).as_posix(): path.read_text() if path.is_file() else ""
        for path in folder.rglob("*")
    }


def _interrupt_at(moment: int) -> Passing:
    """For ``sys.settrace``: Ctrl-C at one of the lines that are passed."""

    def act(number: int, _line: str) -> None:
        if number == moment:
            signal.raise_signal(signal.SIGINT)

    return Passing(act)


def _make_interrupted(make: Callable[[Path, str], None], path: Path, moment: int) -> tuple[bool, int]:
    """Make something, interrupted at one line; whether there was such a line, and how much is told."""
    passing, before = _interrupt_at(moment), sys.gettrace()
    with signals_heeded():
        try:
            sys.settrace(passing)
            make(path, "newer")
        except KeyboardInterrupt:
            pass
        finally:
            sys.settrace(before)
        return passing.number >= moment, len(list_in_place())


@pytest.mark.filterwarnings("ignore::ResourceWarning")  # Python itself closes what was cut short
@pytest.mark.parametrize("make", [_make_kit, _make_file, _make_new_file])
def test_an_interrupt_at_any_line_leaves_the_older_or_the_newer_whole_and_tells_the_newer(
    tmp_path: Path, make: Callable[[Path, str], None], monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(os, "fsync", lambda _: None)  # hundreds of waits for the disk prove no more
    (tmp_path / "0").mkdir()
    make(tmp_path / "0" / "model", "newer")
    newer = _listed(tmp_path / "0")
    is_struck, moment, ends = True, 0, set()
    while is_struck:
        moment += 1
        folder = tmp_path / str(moment)
        folder.mkdir()
        make(folder / "model", "older")
        older = _listed(folder)
        is_struck, told = _make_interrupted(make, folder / "model", moment)
        now = _listed(folder)
        assert now in (older, {**older, **newer}), moment
        assert told == (now != older), moment
        ends.add(told)
    assert (ends, moment > 100) == ({0, 1}, True)


def test_a_signal_that_comes_as_others_are_being_held_leaves_no_handler_behind() -> None:
    before, watching, struck = [signal.getsignal(number) for number in ENDING_SIGNALS], sys.gettrace(), 0
    for moment in range(1, 40):
        try:
            sys.settrace(_interrupt_at(moment))
            with signals_held():
                pass
        except KeyboardInterrupt:
            struck += 1
        finally:
            sys.settrace(watching)
        assert [signal.getsignal(number) for number in ENDING_SIGNALS] == before, moment
    assert 5 < struck < 39


def test_what_one_run_has_put_in_its_place_is_nothing_to_the_next() -> None:
    with signals_heeded():
        for name in ("hall-kit", "hall-kit.zip", "hall-kit"):
            note_in_place(Path(name))
        assert list_in_place() == (Path("hall-kit"), Path("hall-kit.zip"))
    with signals_heeded():
        assert list_in_place() == ()


class _LastRites:
    """An object in whose removal Python can end nothing, and shows what happens there."""

    def __del__(self) -> None:
        signal.raise_signal(signal.SIGINT)


def test_an_interrupt_that_python_itself_passes_over_is_heeded_and_nothing_is_shown_of_it(
    capsys: pytest.CaptureFixture[str],
) -> None:
    before = sys.unraisablehook
    with signals_heeded():
        _LastRites()
        with pytest.raises(KeyboardInterrupt):
            heed_what_was_asked()
    assert capsys.readouterr().err == ""
    assert sys.unraisablehook is before


def test_what_else_python_passes_over_is_shown(monkeypatch: pytest.MonkeyPatch) -> None:
    class Broken:
        def __del__(self) -> None:
            raise ValueError

    shown = []
    monkeypatch.setattr(sys, "unraisablehook", lambda passed: shown.append(passed.exc_type))
    with signals_heeded():
        Broken()
    assert shown == [ValueError]


_STRIKER = """
import signal, sys

class Striker:
    def find_spec(self, name, path=None, target=None):
        if name == "templater.commands.kit":
            {act}

sys.meta_path.insert(0, Striker())
"""


@pytest.mark.parametrize("asked", ["SIGINT", "SIGTERM"])
@pytest.mark.parametrize("act", ["{}", "exec('{}')"])
def test_a_run_that_has_just_begun_is_ended_as_any_other(tmp_path: Path, asked: str, act: str) -> None:
    # Of a signal that strikes code run from text Python's own "-m" would make an end by SIGINT.
    strike = act.format(f"signal.raise_signal(signal.{asked})")
    (tmp_path / "sitecustomize.py").write_text(_STRIKER.format(act=strike))
    ended = subprocess.run(
        [sys.executable, "-B", "-m", "templater", "--help"],
        cwd=LAYOUTS.parent,
        env={**os.environ, "PYTHONPATH": os.pathsep.join([str(tmp_path), str(LAYOUTS.parent)])},
        capture_output=True,
        text=True,
        check=False,
    )
    assert (ended.returncode, ended.stdout, ended.stderr) == (ExitCode.INTERRUPTED, "", "interrupted\n")
