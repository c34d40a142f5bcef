from __future__ import annotations

import json
import os
import re
import resource
import shutil
import signal
import subprocess
import sys
import zipfile
from contextlib import suppress
from pathlib import Path

import pikepdf
import pytest

from templater.pipeline import PrintChoices, plan_kit, read_wall
from templater.proving import write_proved_kit
from templater.to_files.archive import write_archive
from templater.to_files.held_signals import signals_heeded
from tests.conftest import KitMaker
from tests.kits import LAYOUTS, MadeKit, make_kit
from tests.reading import read_pdf_page

LAYOUT = LAYOUTS / "stair-hall.yaml"


def _files(folder: Path) -> dict[str, bytes]:
    return {
        path.relative_to(folder).as_posix(): path.read_bytes()
        for path in folder.rglob("*")
        if path.is_file()
    }


def test_the_same_layout_gives_the_same_bytes(hall: MadeKit, tmp_path: Path) -> None:
    again = make_kit(LAYOUT, tmp_path / "elsewhere", "letter", picture=True)
    assert _files(again.folder) == _files(hall.folder)


def test_each_pieces_sheets_can_be_had_alone(hall: MadeKit, tmp_path: Path) -> None:
    kit = make_kit(LAYOUT, tmp_path / "kit", "letter", split=True)
    for slug in kit.pieces:
        with pikepdf.open(kit.folder / "templates" / f"{slug}.pdf") as pdf:
            alone = [read_pdf_page(page) for page in pdf.pages]
        together = [sheet.ink for sheet in kit.sheets if sheet.facts["piece"] == slug]
        assert [ink.text for ink in alone] == [ink.text for ink in together]
        for one, other in zip(alone, together, strict=True):
            assert [(ring.centre, ring.radius_mm) for ring in one.rings] == [
                (ring.centre, ring.radius_mm) for ring in other.rings
            ]
            assert [(line.start, line.end) for line in one.strokes] == [
                (line.start, line.end) for line in other.strokes
            ]
        assert f"templates/{slug}.pdf" in kit.manifest["files"]
    assert set(_files(kit.folder)) ^ set(_files(hall.folder)) == {
        "overview.png",
        *(f"templates/{slug}.pdf" for slug in kit.pieces),
    }


def test_a_packed_kit_holds_every_file_and_is_the_same_each_time(hall: MadeKit, tmp_path: Path) -> None:
    archives = [tmp_path / "one.zip", tmp_path / "two.zip"]
    for archive in archives:
        write_archive(hall.folder, archive)
    assert archives[0].read_bytes() == archives[1].read_bytes()
    with zipfile.ZipFile(archives[0]) as packed:
        assert packed.testzip() is None
        held = {name.removeprefix("stair-hall/"): packed.read(name) for name in packed.namelist()}
        assert all(entry.external_attr >> 16 == 0o644 for entry in packed.infolist())
    assert held == _files(hall.folder)


def _run(
    folder: Path, *, limit: int | None = None, **environment: str
) -> subprocess.CompletedProcess[str]:
    """Make a kit as a whole process, perhaps with a largest file size in bytes."""

    def set_limit() -> None:
        if limit is not None:
            resource.setrlimit(resource.RLIMIT_FSIZE, (limit, limit))

    return subprocess.run(
        [sys.executable, "-m", "templater", "kit", str(LAYOUT), "--out", str(folder)],
        env={**os.environ, "PYTHONDONTWRITEBYTECODE": "1", **environment},
        cwd=LAYOUTS.parent,
        capture_output=True,
        text=True,
        check=False,
        preexec_fn=set_limit,
    )


@pytest.mark.parametrize("limit", [200, 60_000])
def test_a_disk_that_refuses_leaves_the_older_kit_as_it_was(
    shipped_kit: KitMaker, tmp_path: Path, limit: int
) -> None:
    # The limits strike in the first file and among the last.
    folder = tmp_path / "hall-kit"
    shutil.copytree(shipped_kit("lamp-room-corridor", "a4").folder, folder)
    before = _files(tmp_path)
    ended = _run(folder, limit=limit)
    assert ended.returncode == 5
    assert ended.stderr.splitlines() == [
        f"cannot write {folder}: File too large",
        "  give a place that can be written with --out",
    ]
    assert _files(tmp_path) == before
    assert [path.name for path in tmp_path.iterdir()] == ["hall-kit"]


def test_a_kit_whose_interrupt_a_library_swallowed_ends_before_the_next_template(tmp_path: Path) -> None:
    wall = read_wall(LAYOUT)
    planned, _ = plan_kit(wall, PrintChoices())
    told = []

    def swallow(step: str, done: int, _of: int) -> None:
        told.append((step, done))
        with suppress(KeyboardInterrupt):  # as a bare except does
            signal.raise_signal(signal.SIGINT)

    with pytest.raises(KeyboardInterrupt), signals_heeded():
        write_proved_kit(planned, wall.source, tmp_path / "kit", report=swallow)
    assert told == [("templates", 1)]
    assert list(tmp_path.iterdir()) == []


def test_without_cairo_everything_but_the_picture_is_made(hall: MadeKit, tmp_path: Path) -> None:
    # cairocffi raises an OSError when the system has no cairo.
    stub = tmp_path / "stub" / "cairocffi"
    stub.mkdir(parents=True)
    (stub / "__init__.py").write_text("raise OSError('no library called cairo was found')\n")
    folder = tmp_path / "hall-kit"
    ended = _run(folder, PYTHONPATH=str(stub.parent))
    assert ended.returncode == 0
    (told,) = ended.stderr.splitlines()
    assert told.startswith("no PNG: the system's cairo library was not found; install it with")
    assert all(system in told for system in ("Debian", "macOS", "Windows"))
    made, whole = _files(folder), _files(hall.folder)
    manifest = json.loads(made.pop("manifest.json"))
    assert manifest["missing"] == {"overview.png": told}
    assert "overview.png" not in manifest["files"]
    assert made == {name: content for name, content in whole.items() if name in made}
    assert set(whole) - set(made) == {"manifest.json", "overview.png"}


def test_letters_that_cannot_be_printed_are_told(no_picture: str, tmp_path: Path) -> None:
    layout = tmp_path / "hall.yaml"
    layout.write_text(
        "title: Κήπος 絵\nunits: in\nwall: {width: 100, height: 90}\n"
        "pieces:\n  - {name: مر, size: 10 x 10}\n",
        encoding="utf-8",
    )
    wall = read_wall(layout)
    kit, _ = plan_kit(wall, PrintChoices())
    remarks = write_proved_kit(kit, wall.source, tmp_path / "kit")
    # In the order of their numbers in Unicode: U+0631, U+0645, U+7D75. The Greek is in the typeface.
    assert remarks == (
        no_picture.rstrip(),
        "empty boxes on paper for letters that the typeface does not have:"
        " U+0631 ر, U+0645 م, U+7D75 絵; add to the layout 'font:'"
        " with the file of a font that has them",
    )


def test_nothing_in_a_kit_tells_the_day_it_was_made(hall: MadeKit) -> None:
    with pikepdf.open(hall.folder / "kit.pdf") as pdf:
        dates = [str(value) for key, value in pdf.docinfo.items() if "Date" in key]
        text = str(pdf.docinfo)
    assert all(re.match("D:20000101", date) for date in dates)  # reportlab's own constant
    assert "anonymous" not in text
    assert "unspecified" not in text
