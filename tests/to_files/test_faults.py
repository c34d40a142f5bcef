"""Real faults: killed runs, runs at once, signals, closed pipes; tests/series/ has the long ones."""

from __future__ import annotations

import os
import shutil
import signal
import subprocess
import sys
import time
from collections.abc import Iterator
from concurrent.futures import ThreadPoolExecutor
from contextlib import contextmanager
from dataclasses import replace
from pathlib import Path

import pytest

from templater.errors import ExitCode, WriteError
from templater.geometry import Size
from templater.layout.model import Margins
from templater.printing.calibration import Calibration
from templater.to_files.folder import whole_folder
from templater.to_files.held_signals import signals_held
from templater.to_files.printer_store import keep_printer, read_printers
from templater.to_files.swap import exchange
from templater.to_files.workplace import workplace
from tests.conftest import KitMaker
from tests.kits import LAYOUTS

ROOT = LAYOUTS.parent
LAYOUT = LAYOUTS / "lamp-room-corridor.yaml"

_HOLD = """
import sys, time
from pathlib import Path
from templater.to_files.folder import whole_folder
with whole_folder(Path(sys.argv[1])) as building:
    (building / "half").write_text("half")
    print("begun", flush=True)
    time.sleep(60)
"""


def _files(folder: Path) -> dict[str, bytes]:
    return {
        path.relative_to(folder).as_posix(): path.read_bytes()
        for path in folder.rglob("*")
        if path.is_file()
    }


def _names(folder: Path) -> list[str]:
    """What stands in a folder, hidden or not."""
    return sorted(path.name for path in folder.iterdir())


def _start(*words: str | Path, stdout: int | None = None) -> subprocess.Popen[str]:
    """Start Python from the program's root folder."""
    return subprocess.Popen(
        [sys.executable, "-B", *map(str, words)],
        cwd=ROOT,
        stdout=stdout,
        stderr=subprocess.PIPE,
        text=True,
    )


@contextmanager
def _half_made(folder: Path) -> Iterator[subprocess.Popen[str]]:
    """Another run, in the middle of making a folder."""
    running = _start("-c", _HOLD, folder, stdout=subprocess.PIPE)
    with running:
        assert running.stdout is not None
        assert running.stdout.readline() == "begun\n"
        yield running
        running.kill()


@pytest.fixture
def kit(shipped_kit: KitMaker, tmp_path: Path) -> Path:
    """A kit that stands where another is to be made."""
    folder = tmp_path / "kit"
    shutil.copytree(shipped_kit("lamp-room-corridor", "a4").folder, folder)
    return folder


def test_what_a_killed_run_leaves_is_removed_by_the_next(kit: Path) -> None:
    before = _files(kit)
    with _half_made(kit) as running:
        running.kill()
        running.wait()
        assert _files(kit) == before
        assert _names(kit.parent) == [".kit.unfinished", "kit"]
    with whole_folder(kit) as building:
        (building / "new").write_text("new")
    assert _files(kit.parent) == {"kit/new": b"new"}


def test_two_runs_never_write_to_one_place_at_once(kit: Path) -> None:
    before = _files(kit)
    with _half_made(kit):
        with pytest.raises(WriteError) as caught, whole_folder(kit):
            raise AssertionError("never reached")
        assert _files(kit) == before
    assert str(caught.value).splitlines() == [
        f"another run is writing {kit}",
        "  wait until it has ended, or give another place",
    ]


def test_a_workplace_that_leads_elsewhere_is_not_followed(tmp_path: Path) -> None:
    (tmp_path / "elsewhere" / "new").mkdir(parents=True)
    (tmp_path / ".kit.unfinished").symlink_to("elsewhere")
    with pytest.raises(WriteError, match="cannot write"), whole_folder(tmp_path / "kit"):
        raise AssertionError("never reached")
    assert (tmp_path / "elsewhere" / "new").is_dir()


@pytest.mark.skipif(sys.platform not in ("linux", "darwin"), reason="no such step on this system")
def test_two_folders_change_places_in_one_step(tmp_path: Path) -> None:
    for name in ("one", "other"):
        (tmp_path / name).mkdir()
        (tmp_path / name / name).touch()
    assert exchange(tmp_path / "one", tmp_path / "other")
    assert _files(tmp_path) == {"one/other": b"", "other/one": b""}
    with pytest.raises(FileNotFoundError):
        exchange(tmp_path / "one", tmp_path / "nowhere")


def test_a_signal_waits_until_the_step_is_done() -> None:
    done = []

    def interrupt_step() -> None:
        with signals_held():
            signal.raise_signal(signal.SIGINT)
            done.append("the step")
        done.append("what comes after")

    with pytest.raises(KeyboardInterrupt):
        interrupt_step()
    assert done == ["the step"]
    with pytest.raises(KeyboardInterrupt):
        signal.raise_signal(signal.SIGINT)


def test_whoever_is_patient_comes_after_the_other_run(tmp_path: Path) -> None:
    order = []

    def wait_for_it() -> None:
        with workplace(tmp_path / "file", patience_s=30):
            order.append("second")

    with ThreadPoolExecutor() as pool, workplace(tmp_path / "file"):
        waiting = pool.submit(wait_for_it)
        time.sleep(0.1)
        order.append("first")
    waiting.result()
    assert order == ["first", "second"]
    assert _files(tmp_path) == {}


def test_of_printers_kept_at_the_same_time_none_is_lost(tmp_path: Path) -> None:
    inkjet = Calibration("printer", Size(180.0, 240.0), Size(178.9, 239.1), Margins())
    names = [f"printer {number}" for number in range(12)]
    with ThreadPoolExecutor(len(names)) as pool:
        list(pool.map(lambda name: keep_printer(tmp_path / "p.json", replace(inkjet, name=name)), names))
    assert sorted(printer.name for printer in read_printers(tmp_path / "p.json")) == sorted(names)
    assert _names(tmp_path) == ["p.json"]


# --- whole runs -----------------------------------------------------------------------------------


def test_whoever_ends_a_run_finds_all_as_it_was(kit: Path) -> None:
    before = _files(kit)
    asked = (signal.SIGINT, signal.SIGTERM, signal.SIGHUP)
    places = [kit.parent / f"of {number.name}" / "kit" for number in asked]
    for place in places:
        shutil.copytree(kit, place)
    for place, number in zip(places, asked, strict=True):
        running = _start("-m", "templater", "kit", LAYOUT, "--out", place)
        while running.poll() is None and not (place.parent / ".kit.unfinished" / "new").exists():
            time.sleep(0.005)
        running.send_signal(number)
        _, said = running.communicate()
        assert (running.returncode, said.strip()) == (ExitCode.INTERRUPTED, "interrupted")
        assert _files(place) == before
        assert _names(place.parent) == ["kit"]


@pytest.mark.parametrize("words", [("--help",), ("check", str(LAYOUT)), ("new", "{}")])
def test_a_reader_that_has_seen_enough_gets_no_complaint(tmp_path: Path, words: tuple[str, ...]) -> None:
    reading, writing = os.pipe()
    os.close(reading)
    running = _start(
        "-m", "templater", *(word.format(tmp_path / "x.yaml") for word in words), stdout=writing
    )
    os.close(writing)
    _, said = running.communicate()
    assert (running.returncode, said) == (ExitCode.CANNOT_WRITE, "")


def test_closed_streams_swallow_what_is_said_and_do_no_harm(tmp_path: Path) -> None:
    script = 'exec "$@" <&- >&- 2>&-'
    command = [sys.executable, "-B", "-m", "templater", "new", str(tmp_path / "hall.yaml")]
    ended = subprocess.run(["sh", "-c", script, "sh", *command], cwd=ROOT, check=False)
    assert ended.returncode == ExitCode.DONE
    assert (tmp_path / "hall.yaml").read_text().startswith("#")


_WATCH = """
import os, sys
from templater.cli import main

readable, writable = (tuple(words.split(os.pathsep)) for words in (sys.argv.pop(1), sys.argv.pop(1)))
readable += tuple(map(os.path.realpath, (sys.prefix, sys.base_prefix, *sys.path[1:])))
readable += ("/usr/", "/lib", "/etc/", "/proc/", "/sys/", "/var/cache/fontconfig/")
changes = ("os.mkdir", "os.rename", "os.remove", "os.rmdir", "os.link", "os.symlink", "os.chmod")

def watch(event, arguments):
    first = arguments[0] if arguments else None
    if event.startswith(("socket.", "urllib.", "http.", "ftplib.", "smtplib.")):
        print(event, arguments, file=sys.__stderr__)
    elif event in (*changes, "open") and isinstance(first, (str, bytes)):
        path = os.path.realpath(os.fsdecode(first))
        to_write = event != "open" or arguments[2] & (os.O_WRONLY | os.O_RDWR | os.O_CREAT)
        is_settled = not to_write and path == os.getcwd()  # its list of names is brought to the disk
        if not (is_settled or path.startswith(writable if to_write else (*readable, *writable))):
            print(event, path, "to write" if to_write else "to read", file=sys.__stderr__)

sys.addaudithook(watch)
main()
"""
"""The program with a witness of what it reads, writes and asks the network for, by Python's own word."""


@pytest.mark.parametrize("words", [("--help",), ("check", "hall.yaml"), ("kit", "hall.yaml")])
def test_nothing_is_read_or_written_but_the_layout_and_the_kit(
    tmp_path: Path, words: tuple[str, ...]
) -> None:
    home, wall = tmp_path / "home", tmp_path / "wall"
    for folder in (home / "temporary", wall):
        folder.mkdir(parents=True)
    shutil.copy(LAYOUT, wall / "hall.yaml")
    (wall / "other.yaml").write_text("not to be read")
    # reportlab looks for settings in the home folder; a search for cairo may put files into TMPDIR.
    readable = [wall / "hall.yaml", home / ".reportlab_", ROOT / "templater"]
    writable = [home / "temporary", Path(os.devnull)]
    if words[0] == "kit":
        writable += [wall / "hall-kit", wall / ".hall-kit.unfinished"]
    lists = [os.pathsep.join(map(str, paths)) for paths in (readable, writable)]
    ended = subprocess.run(
        [sys.executable, "-B", "-c", _WATCH, *lists, *words],
        cwd=wall,
        env={**os.environ, "PYTHONPATH": str(ROOT), "HOME": str(home), "TMPDIR": str(writable[0])},
        capture_output=True,
        text=True,
        check=False,
    )
    assert (ended.returncode, ended.stderr) == (ExitCode.DONE, "")
    made = ["hall-kit"] if words[0] == "kit" else []
    assert _names(wall) == [*made, "hall.yaml", "other.yaml"]
    assert [path.name for path in home.rglob("*")] == ["temporary"]
