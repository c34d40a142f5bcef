"""A kit packed as one file beside its folder, and what is said of one that is left from an older kit."""

from __future__ import annotations

import json
import zipfile
import zlib
from pathlib import Path
from typing import Any

from templater.quoting import show_path
from templater.to_files.file import whole_file
from templater.to_files.manifest import SCHEMA

_LARGEST_MANIFEST = 100_000_000
"""Bytes. A wall of 5,000 pieces takes about a tenth of it."""


def name_archive(folder: Path) -> Path:
    """Where a kit is packed: beside its folder."""
    return folder.with_name(folder.name + ".zip")


def is_packed_kit(path: Path) -> bool:
    """Whether a file is a packed kit of ours, and nothing beside it. Raises OSError."""
    manifest = _read_manifest(path)
    if manifest is None:
        return False
    with zipfile.ZipFile(path) as packed:
        return {name.partition("/")[2] for name in packed.namelist()} <= _list_files(manifest)


def write_archive(folder: Path, archive: Path) -> None:
    """Pack what a kit is made of as one file; the same kit gives the same bytes. Raises WriteError."""
    with whole_file(archive, is_packed_kit) as building, zipfile.ZipFile(building, "w") as packed:
        for name in sorted(_list_files(json.loads((folder / "manifest.json").read_text("utf-8")))):
            entry = zipfile.ZipInfo(f"{folder.name}/{name}", date_time=(1980, 1, 1, 0, 0, 0))
            entry.external_attr = 0o644 << 16
            packed.writestr(entry, (folder / name).read_bytes(), zipfile.ZIP_DEFLATED)


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


def _list_files(manifest: dict[str, Any]) -> set[str]:
    """The files of a kit, by names from its folder."""
    files = manifest.get("files")
    return {"manifest.json", *(files if isinstance(files, dict) else ())}


def _read_manifest(archive: Path) -> dict[str, Any] | None:
    """The manifest in a packed kit; None where the file is none. Raises OSError."""
    try:
        with zipfile.ZipFile(archive) as packed:
            name = next(name for name in packed.namelist() if name.endswith("/manifest.json"))
            if packed.getinfo(name).file_size > _LARGEST_MANIFEST:
                return None
            content = json.loads(packed.read(name))
    except (zipfile.BadZipFile, zlib.error, EOFError, StopIteration, ValueError, RuntimeError):
        # Damaged, of something else, with a password, or packed in a way that Python does not know.
        return None
    is_ours = isinstance(content, dict) and content.get("schema") == SCHEMA
    return content if is_ours else None
