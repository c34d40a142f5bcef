"""Two folders that change places in one step, where the system has such a step."""

from __future__ import annotations

import ctypes
import errno
import os
import sys
from pathlib import Path

_HERE = -100
"""``AT_FDCWD`` of Linux: a path that does not begin at the root begins at the working folder."""

_EXCHANGE = 2
"""``RENAME_EXCHANGE`` of Linux's renameat2(2), and ``RENAME_SWAP`` of renamex_np(2) of macOS."""

_NOT_HERE = frozenset({errno.EINVAL, errno.ENOSYS, errno.ENOTSUP, errno.EOPNOTSUPP})
"""What a system or a file system answers that has no such step."""


def exchange(one: Path, other: Path) -> bool:
    """Let two paths change places, so that at no moment either is missing; tells whether it was done.

    False: this system, or this file system, has no such step, and nothing was changed. Raises OSError.
    """
    paths = os.fsencode(one), os.fsencode(other)
    try:
        if sys.platform == "linux":
            library = ctypes.CDLL(None, use_errno=True)
            refused = library.renameat2(_HERE, paths[0], _HERE, paths[1], _EXCHANGE)
        elif sys.platform == "darwin":
            library = ctypes.CDLL(None, use_errno=True)
            refused = library.renamex_np(*paths, _EXCHANGE)
        else:
            return False
    except AttributeError:  # an older C library
        return False
    if not refused:
        return True
    number = ctypes.get_errno()
    if number in _NOT_HERE:
        return False
    raise OSError(number, os.strerror(number), str(one), None, str(other))
