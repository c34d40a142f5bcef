"""A kit packed as one file beside its folder, and what is said of one that is left from an older kit."""

from __future__ import annotations

import json
import zipfile
from pathlib import Path
from typing import Any

from templater.quoting import show_path
from templater.to_files.file import refuse_other_kind, whole_file
from templater.to_files.manifest import SCHEMA
from templater.to_files.refusal import cannot_write

_LARGEST_MANIFEST = 100_000_000
"""Bytes. A wall of 5,000 pieces takes about a tenth of it."""


def name_archive(folder: Path) -> Path:
    """Where a kit is packed: beside its folder."""
    return folder.with_name(folder.name + ".zip")


def check_is_replaceable_archive(archive: Path) -> None:
    """Refuse a file that is not a packed kit of ours. Raises WriteError."""
    try:
        if archive.exists() and _read_manifest(archive) is None:
            raise refuse_other_kind(archive)
    except OSError as error:
        raise cannot_write(archive, error) from error


def write_archive(folder: Path, archive: Path) -> None:
    """Pack a kit as one file; the same kit gives the same bytes. Raises WriteError."""
    check_is_replaceable_archive(archive)
    with whole_file(archive, b"PK") as building, zipfile.ZipFile(building, "w") as packed:
        for path in sorted(path for path in folder.rglob("*") if path.is_file()):
            name = f"{folder.name}/{path.relative_to(folder).as_posix()}"
            entry = zipfile.ZipInfo(name, date_time=(1980, 1, 1, 0, 0, 0))
            entry.external_attr = 0o644 << 16
            packed.writestr(entry, path.read_bytes(), zipfile.ZIP_DEFLATED)


def tell_older_archive(folder: Path) -> tuple[str, ...]:
    """What the user must be told of a packed kit that is not of the kit it stands beside."""
    archive = name_archive(folder)
    try:
        packed = _read_manifest(archive)
        if packed is None or packed == json.loads((folder / "manifest.json").read_text("utf-8")):
            return ()
    except OSError:
        return ()
    of = packed.get("revision")
    return (
        f"{show_path(archive)} is of an older kit, revision {of}: pack it anew with --zip, or delete it",
    )


def _read_manifest(archive: Path) -> dict[str, Any] | None:
    """The manifest in a packed kit; None where the file is none. Raises OSError."""
    try:
        with zipfile.ZipFile(archive) as packed:
            name = next(name for name in packed.namelist() if name.endswith("/manifest.json"))
            if packed.getinfo(name).file_size > _LARGEST_MANIFEST:
                return None
            content = json.loads(packed.read(name))
    except (zipfile.BadZipFile, StopIteration, ValueError, RuntimeError, NotImplementedError):
        # Damaged, of something else, with a password, or packed in a way that Python does not know.
        return None
    is_ours = isinstance(content, dict) and content.get("schema") == SCHEMA
    return content if is_ours else None
