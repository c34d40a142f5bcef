"""A hidden folder beside a file or folder that is to be written: one run's alone, gone afterwards."""

from __future__ import annotations

import errno
import os
import shutil
import time
from collections.abc import Iterator
from contextlib import contextmanager, suppress
from hashlib import sha256
from pathlib import Path

from templater.errors import Fault, WriteError
from templater.quoting import show_path
from templater.to_files.durable import settle_folder
from templater.to_files.file_lock import lock_file
from templater.to_files.held_signals import signals_held

_LONGEST_NAME = 100
"""Bytes. What is longer is cut, for many file systems allow no more than 255, some 143."""

_LOCK, _NEW, _OLDER = "lock", "new", "older"
"""All that a workplace holds: its lock, what is being made, what that takes the place of."""

_PAUSE_S = 0.02

_NO_LOCKS = frozenset({errno.ENOLCK, errno.ENOSYS, errno.ENOTSUP, errno.EOPNOTSUPP})
"""What a file system answers that has no locks."""


class Workplace:
    """Where a run makes what is to stand at ``path``, and puts aside what stood there."""

    def __init__(self, path: Path) -> None:
        self.path = path
        self.folder = name_workplace(path)
        self.new, self.older = self.folder / _NEW, self.folder / _OLDER
        self._handle: int | None = None

    def claim(self) -> bool:
        """Take the workplace, unless another run has it; tells whether it was taken. Raises OSError.

        What a run left there that was killed is removed. If that run had just put the older folder
        aside, it is put back.
        """
        while self._handle is None:
            is_made = False
            with suppress(FileExistsError):
                self.folder.mkdir()
                is_made = True
            try:
                self._handle = self._open_lock(is_made=is_made)
            except BlockingIOError:
                return False
        if self.older.exists() and not self.path.exists():
            self.older.rename(self.path)
        self._clear()
        return True

    def _open_lock(self, *, is_made: bool) -> int | None:
        """The lock, held; None where the run that had it has just taken it away with all else.

        On a file system without locks, whoever made the folder has it.
        """
        if self.folder.is_symlink():
            raise NotADirectoryError(20, "Not a directory", str(self.folder))
        try:
            handle = os.open(self.folder / _LOCK, os.O_RDWR | os.O_CREAT, 0o600)
        except FileNotFoundError:
            return None
        try:
            lock_file(handle)
            if os.path.samestat(os.fstat(handle), (self.folder / _LOCK).stat()):
                return handle
        except FileNotFoundError:
            pass
        except OSError as error:
            if is_made and error.errno in _NO_LOCKS:
                return handle
            os.close(handle)
            raise
        os.close(handle)
        return None

    def leave(self) -> None:
        """Remove the workplace, if this run has it."""
        if self._handle is None:
            return
        with suppress(OSError):
            self._clear()
            (self.folder / _LOCK).unlink()
        os.close(self._handle)
        self._handle = None
        with suppress(OSError):
            self.folder.rmdir()

    def _clear(self) -> None:
        for path in (self.new, self.older):
            if path.is_dir() and not path.is_symlink():
                shutil.rmtree(path, ignore_errors=True)
            else:
                path.unlink(missing_ok=True)


def name_workplace(path: Path) -> Path:
    """The hidden folder's place: always the same, so that the next run finds what a killed one left."""
    name = os.fsencode(path.name)
    if len(name) <= _LONGEST_NAME:
        return path.parent / f".{path.name}.unfinished"
    return path.parent / f".{sha256(name).hexdigest()[:16]}.unfinished"


@contextmanager
def workplace(path: Path, *, patience_s: float = 0.0) -> Iterator[Workplace]:
    """A workplace for this run alone; waits so long for another run that has it.

    Folders above it are made, and removed if they are empty in the end. Raises OSError, and WriteError
    where another run writes to the same place.
    """
    made: list[Path] = []
    place = Workplace(path)
    try:
        try:
            with signals_held():
                _make_parents(path.parent, made)
            _claim_within(place, patience_s)
            yield place
        finally:
            _leave(place, made)
    except KeyboardInterrupt:  # it may have come a moment before signals were held
        _leave(place, made)
        raise


def _leave(place: Workplace, made: list[Path]) -> None:
    """Remove a workplace, and of the folders made for it those that are empty; may be done twice."""
    with signals_held():
        place.leave()
        for parent in made:
            with suppress(OSError):
                parent.rmdir()
        settle_folder(place.path.parent)


def _make_parents(folder: Path, made: list[Path]) -> None:
    """Make a folder and those above it that are missing; ``made`` is filled with them, deepest first."""
    if not folder.is_dir() and folder != folder.parent:
        _make_parents(folder.parent, made)
        with suppress(FileExistsError):
            folder.mkdir()
            made.insert(0, folder)


def _claim_within(place: Workplace, patience_s: float) -> None:
    """Claim a workplace, as soon as another run has left it. Raises WriteError when that takes long."""
    last = time.monotonic() + patience_s
    while True:
        with signals_held():
            if place.claim():
                return
        if time.monotonic() >= last:
            message = f"another run is writing {show_path(place.path)}"
            raise WriteError([Fault(message, "wait until it has ended, or give another place")])
        time.sleep(_PAUSE_S)
