"""The packed kit: it replaces nothing but packed kits, and is told of when it is old."""

from __future__ import annotations

import json
import zipfile
from pathlib import Path

import pytest

from templater.errors import WriteError
from templater.to_files.archive import (
    is_packed_kit,
    name_archive,
    tell_older_archive,
    write_archive,
)
from templater.to_files.manifest import SCHEMA


@pytest.fixture
def kit(tmp_path: Path) -> Path:
    """Something with a manifest, as far as packing looks."""
    (tmp_path / "kit").mkdir()
    _make(tmp_path / "kit", "AAAAAA")
    return tmp_path / "kit"


def _make(folder: Path, revision: str) -> None:
    (folder / "manifest.json").write_text(json.dumps({"schema": SCHEMA, "revision": revision}))


def test_an_archive_of_an_older_kit_is_told_and_left(kit: Path) -> None:
    assert tell_older_archive(kit) == ()
    write_archive(kit, name_archive(kit))
    assert tell_older_archive(kit) == ()
    _make(kit, "BBBBBB")
    before = name_archive(kit).read_bytes()
    assert tell_older_archive(kit) == (
        f"{kit}.zip is of an older kit, revision AAAAAA: pack it anew with --zip, or delete it",
    )
    assert name_archive(kit).read_bytes() == before
    write_archive(kit, name_archive(kit))
    assert tell_older_archive(kit) == ()


@pytest.mark.parametrize("content", [b"", b"PK\x03\x04 half", b"title: hall"])
def test_a_file_that_is_no_packed_kit_is_left(kit: Path, content: bytes) -> None:
    name_archive(kit).write_bytes(content)
    with pytest.raises(WriteError, match="was not made by this program, or was changed since"):
        write_archive(kit, name_archive(kit))
    assert name_archive(kit).read_bytes() == content
    assert tell_older_archive(kit) == ()


def test_an_archive_that_is_damaged_at_any_byte_is_left_and_stops_no_run(kit: Path) -> None:
    archive = name_archive(kit)
    write_archive(kit, archive)
    sound = archive.read_bytes()
    _make(kit, "BBBBBB")
    for place in range(len(sound)):
        damaged = sound[:place] + bytes([sound[place] ^ 0xFF]) + sound[place + 1 :]
        archive.write_bytes(damaged)
        tell_older_archive(kit)
        assert archive.read_bytes() == damaged


@pytest.mark.parametrize("inside", ["photo.png", "manifest.json", "kit/manifest.json"])
def test_an_archive_of_something_else_is_left(kit: Path, inside: str) -> None:
    with zipfile.ZipFile(name_archive(kit), "w") as packed:
        packed.writestr(inside, "{}")
    assert not is_packed_kit(name_archive(kit))
    assert tell_older_archive(kit) == ()


def test_a_packed_kit_into_which_somebody_put_a_photograph_is_left(kit: Path) -> None:
    archive = name_archive(kit)
    write_archive(kit, archive)
    assert is_packed_kit(archive)
    with zipfile.ZipFile(archive, "a") as packed:
        packed.writestr("kit/photo.png", "")
    before = archive.read_bytes()
    with pytest.raises(WriteError, match="or was changed since, so it is left as it is"):
        write_archive(kit, archive)
    assert archive.read_bytes() == before


def test_what_a_system_strews_into_the_folder_is_not_packed(kit: Path) -> None:
    (kit / ".DS_Store").write_bytes(b"")
    write_archive(kit, name_archive(kit))
    with zipfile.ZipFile(name_archive(kit)) as packed:
        assert packed.namelist() == ["kit/manifest.json"]


def test_a_folder_in_the_archives_place_is_left(kit: Path) -> None:
    name_archive(kit).mkdir()
    with pytest.raises(WriteError, match=r"cannot write .*kit\.zip: Is a directory"):
        write_archive(kit, name_archive(kit))
    assert tell_older_archive(kit) == ()
    assert sorted(path.name for path in kit.parent.iterdir()) == ["kit", "kit.zip"]
