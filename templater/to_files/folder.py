"""A kit's folder that appears whole or not at all, and takes the place of an older kit alone."""

from __future__ import annotations

import json
import os
import shutil
from collections.abc import Iterator
from contextlib import contextmanager
from fnmatch import fnmatchcase
from hashlib import sha256
from pathlib import Path

from templater.errors import Fault, WriteError
from templater.quoting import show_path
from templater.to_files.durable import settle_tree
from templater.to_files.held_signals import heed_what_was_asked, note_in_place, signals_held
from templater.to_files.manifest import SCHEMA
from templater.to_files.refusal import cannot_write
from templater.to_files.swap import exchange
from templater.to_files.workplace import Workplace, workplace

_OTHER_PLACE = "give another place with --out"

_LITTER = (".DS_Store", "._*", ".directory", ".nfs*", ".fuse_hidden*", "Thumbs.db", "desktop.ini")
"""What systems strew into folders that a user looks at; it goes with the kit that it lies in."""


def check_is_replaceable(folder: Path, layout: bytes = b"") -> None:
    """Refuse a place that holds something other than a kit of ours. Raises WriteError.

    A kit's own copy of its layout counts as the user's where it was changed, except to ``layout``.
    """
    try:
        _check_place(folder)
        if folder.is_dir() and any(folder.iterdir()):
            _check_kit(folder, layout)
        if Path.cwd().is_relative_to(folder.resolve()):
            message = f"you are in {show_path(folder)}, so it is left as it is"
            raise _refuse(message, f"go up first, or {_OTHER_PLACE}")
    except OSError as error:
        raise cannot_write(folder, error) from error


def _check_place(folder: Path) -> None:
    shown = show_path(folder)
    if folder.is_symlink():
        raise _refuse(f"{shown} is a link, so it is left as it is", "name the folder itself with --out")
    if folder.exists() and not folder.is_dir():
        raise _refuse(f"{shown} is not a folder", _OTHER_PLACE)


def _check_kit(folder: Path, layout: bytes) -> None:
    shown = show_path(folder)
    files = _read_kit_files(folder)
    if files is None:
        raise _refuse(
            f"{shown} is not a kit, so it is left as it is", f"{_OTHER_PLACE}, or move that folder away"
        )
    for stranger in sorted(_list_files(folder) - files.keys()):
        message = f"{shown} holds {show_path(stranger)}, which is not part of the kit"
        raise _refuse(message, f"move it away, or {_OTHER_PLACE}")
    copy = folder / "layout.yaml"
    if copy.exists() and copy.read_bytes() != layout and _hash(copy) != files[copy.name]:
        message = f"{show_path(copy)} was changed since the kit was made"
        raise _refuse(message, f"make the kit from it, or move it away, or {_OTHER_PLACE}")


def _hash(path: Path) -> str:
    return sha256(path.read_bytes()).hexdigest()


def _refuse(message: str, hint: str) -> WriteError:
    return WriteError([Fault(message, hint)])


def _read_kit_files(folder: Path) -> dict[str, object] | None:
    """The files that a kit of ours says it is made of, with hashes; None where the folder is none."""
    try:
        content = json.loads((folder / "manifest.json").read_text("utf-8"))
    except (OSError, ValueError, RecursionError):
        return None
    if not isinstance(content, dict) or content.get("schema") != SCHEMA:
        return None
    files = content.get("files")
    return {"manifest.json": None, **(files if isinstance(files, dict) else {})}


def _list_files(folder: Path) -> set[str]:
    """All files and links below a folder, by names from it, except a system's litter."""
    found = set()
    for path, folders, files in os.walk(folder):
        links = [name for name in folders if Path(path, name).is_symlink()]
        for name in (*files, *links):
            if not any(fnmatchcase(name, pattern) for pattern in _LITTER):
                found.add(Path(path, name).relative_to(folder).as_posix())
    return found


@contextmanager
def whole_folder(folder: Path, layout: bytes = b"") -> Iterator[Path]:
    """A new folder beside ``folder`` to fill with a layout's kit; it takes that name when all went well.

    Raises WriteError where the disk refuses or another run writes there; then, and on any other error,
    nothing is left behind and what stood there stands there still. Of a run that is killed a hidden
    folder stays, which the next run with the same ``folder`` removes.
    """
    if folder.name in ("", ".."):
        folder = folder.resolve()
    check_is_replaceable(folder, layout)
    try:
        with workplace(folder) as place:
            place.new.mkdir()
            yield place.new
            settle_tree(place.new)
            check_is_replaceable(folder, layout)  # once more, for making it took a while
            heed_what_was_asked()
            with signals_held():
                _put_in_place(place)
                note_in_place(folder)
    except OSError as error:
        raise cannot_write(folder, error) from error


def _put_in_place(place: Workplace) -> None:
    """Give the new folder its name; an older one changes places with it. Raises OSError.

    Where the system cannot do that in one step, the older one is put aside first. Whoever is killed
    between the two leaves both whole in the workplace, and the next run puts the older one back.
    """
    if not place.path.exists():
        place.new.rename(place.path)
        return
    shutil.copymode(place.path, place.new)
    if exchange(place.new, place.path):
        return
    place.path.rename(place.older)
    try:
        place.new.rename(place.path)
    except OSError:
        place.older.rename(place.path)
        raise
