"""``templater proof``, and a kit that its own proof does not let through."""

from __future__ import annotations

import shutil
from pathlib import Path

import pytest

from tests.kits import MadeKit
from tests.running import Run
from tests.verify.planting import Copy

BELL = """\
title: Fog bell
units: mm
paper: a4
wall: {width: 2 m, height: 2.4 m}
pieces:
  - {name: Fog bell, size: 120 x 200, hang: {by: nail, drop: 20}}
"""


def test_the_command_says_what_was_proved(run: Run, hall: MadeKit) -> None:
    assert run("proof", str(hall.folder)) == (
        0,
        f"{hall.folder}: revision {hall.manifest['revision']}, 5 holes re-read from its files;"
        " farthest less than 0.001 mm from plan\n",
        "",
    )


def test_the_command_ends_with_6_and_says_what_is_wrong(run: Run, hall: MadeKit, tmp_path: Path) -> None:
    copy = Copy(hall.folder, tmp_path)
    entry = copy.sheets(hole=True)[0]
    copy.transform(entry["page"], 1, 0, 0, 1, 0.1, 0)
    code, out, err = run("proof", str(copy.folder))
    assert (code, out) == (6, "")
    assert "is 0.100 mm off" in err
    assert err.splitlines()[-1].strip().startswith("do not drill by this kit")


@pytest.mark.parametrize(
    "content",
    [
        None,
        "",
        "[]",
        "[" * 100_000,
        '{"schema": "something else"}',
        '{"schema": "templater-kit/1"}',
        '{"schema": "templater-kit/1", "revision": 1, "options": 3}',
    ],
)
def test_what_is_no_kit_is_refused(run: Run, tmp_path: Path, content: str | None) -> None:
    if content is not None:
        (tmp_path / "manifest.json").write_text(content, encoding="utf-8")
    code, out, err = run("proof", str(tmp_path))
    assert (code, out) == (6, "")
    assert "manifest" in err


def test_a_writer_that_errs_leaves_no_kit(
    run: Run, hall: MadeKit, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    (tmp_path / "bell.yaml").write_text(BELL, "utf-8")
    shutil.copytree(hall.folder, tmp_path / "kit")
    before = _read_files(tmp_path)
    monkeypatch.setattr("templater.to_files.pdf.POINTS_PER_MM", 72 / 25.4 * 0.999)
    code, out, err = run("kit", "bell.yaml", "--out", "kit")
    assert (code, out) == (6, "")
    assert "kit.pdf: page 1" in err
    assert "no kit is written" in err
    assert _read_files(tmp_path) == before


def _read_files(folder: Path) -> dict[Path, bytes]:
    return {path: path.read_bytes() for path in folder.rglob("*") if path.is_file()}
