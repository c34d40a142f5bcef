"""A folder that appears whole or not at all, and files that replace others only when complete."""

from __future__ import annotations

import json
import os
import shutil
import tempfile
from collections.abc import Iterator
from contextlib import contextmanager, suppress
from pathlib import Path

from templater.errors import Fault, WriteError
from templater.to_files.manifest import SCHEMA


def check_is_replaceable(folder: Path) -> None:
    """Refuse a place that holds something other than a kit of ours. Raises WriteError."""
    if not folder.exists() and not folder.is_symlink():
        return
    if folder.is_symlink() or not folder.is_dir():
        raise WriteError([Fault(f"{folder} is not a folder", "give another place with --out")])
    if not any(folder.iterdir()):
        return
    files = _read_kit_files(folder)
    if files is None:
        message = f"{folder} is not a kit, so it is left as it is"
        raise WriteError([Fault(message, "give another place with --out, or move that folder away")])
    for stranger in sorted(_list_files(folder) - files):
        message = f"{folder} holds {stranger}, which is not part of the kit"
        raise WriteError([Fault(message, "move it away, or give another place with --out")])


def _read_kit_files(folder: Path) -> set[str] | None:
    """The files that a kit of ours says it is made of; None where the folder is none."""
    try:
        content = json.loads((folder / "manifest.json").read_text("utf-8"))
    except (OSError, ValueError):
        return None
    if not isinstance(content, dict) or content.get("schema") != SCHEMA:
        return None
    files = content.get("files")
    return {"manifest.json", *(files if isinstance(files, dict) else ())}


def _list_files(folder: Path) -> set[str]:
    """The files below a folder by their names from it; those that begin with a dot do not count."""
    paths = (path for path in folder.rglob("*") if not path.is_dir() and not path.name.startswith("."))
    return {path.relative_to(folder).as_posix() for path in paths}


@contextmanager
def whole_folder(folder: Path) -> Iterator[Path]:
    """A new folder beside ``folder`` to fill; it takes that name when all went well.

    Raises WriteError where the disk refuses; then, and on any other error, nothing is left behind
    and what stood there stands there still.
    """
    check_is_replaceable(folder)
    try:
        folder.parent.mkdir(parents=True, exist_ok=True)
        building = Path(tempfile.mkdtemp(prefix=f".{folder.name}-", dir=folder.parent))
        try:
            yield building
            building.chmod(0o755)
            _replace(building, folder)
        finally:
            shutil.rmtree(building, ignore_errors=True)
    except OSError as error:
        raise _cannot_write(folder, error) from error


def _replace(building: Path, folder: Path) -> None:
    """Put the new folder in the old one's place; the old one goes back if that fails."""
    if not folder.exists():
        building.rename(folder)
        return
    old = Path(tempfile.mkdtemp(prefix=f".{folder.name}-old-", dir=folder.parent))
    kept = old / "kit"
    try:
        folder.rename(kept)
        building.rename(folder)
    except BaseException:  # also when interrupted: whatever happens, one kit stands there
        if kept.exists() and not folder.exists():
            kept.rename(folder)
        with suppress(OSError):
            old.rmdir()
        raise
    shutil.rmtree(old, ignore_errors=True)


def write_new_file(path: Path, content: bytes) -> None:
    """Write a file that must not exist yet. Raises WriteError."""
    try:
        with path.open("xb") as stream:
            stream.write(content)
    except FileExistsError as error:
        raise WriteError(
            [Fault(f"{path} exists already", "give another name, or move it away")]
        ) from error
    except OSError as error:
        with suppress(OSError):
            path.unlink()
        raise WriteError([Fault(_refusal(path, error), "name a place that can be written")]) from error


@contextmanager
def whole_file(path: Path, signature: bytes) -> Iterator[Path]:
    """A new file beside ``path`` to fill; it takes that name when all went well.

    What stands there is replaced only if it is a file of the same kind, known by the bytes it begins
    with. Raises WriteError.
    """
    _check_is_same_kind(path, signature)
    try:
        path.parent.mkdir(parents=True, exist_ok=True)
        handle, name = tempfile.mkstemp(prefix=f".{path.name}-", dir=path.parent)
        os.close(handle)
        building = Path(name)
        try:
            yield building
            building.chmod(0o644)
            building.replace(path)
        finally:
            building.unlink(missing_ok=True)
    except OSError as error:
        raise _cannot_write(path, error) from error


def _check_is_same_kind(path: Path, signature: bytes) -> None:
    """Refuse to replace a file of another kind, such as a layout named by mistake."""
    try:
        with path.open("rb") as stream:
            beginning = stream.read(len(signature))
    except FileNotFoundError:
        return
    except OSError as error:
        raise _cannot_write(path, error) from error
    if beginning != signature:
        message = f"{path} is another kind of file, so it is left as it is"
        raise WriteError([Fault(message, "give another place with --out, or move that file away")])


def _cannot_write(path: Path, error: OSError) -> WriteError:
    return WriteError([Fault(_refusal(path, error), "give a place that can be written with --out")])


def _refusal(path: Path, error: OSError) -> str:
    return f"cannot write {path}: {error.strerror or error}"
