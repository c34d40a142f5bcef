"""A lock that lasts no longer than the process that holds it, however it ends."""

from __future__ import annotations

import sys

if sys.platform == "win32":
    import msvcrt

    def lock_file(handle: int) -> None:
        """Lock an open file for this process. Raises BlockingIOError where another one has it."""
        try:
            msvcrt.locking(handle, msvcrt.LK_NBLCK, 1)
        except OSError as error:
            raise BlockingIOError from error

else:
    import fcntl

    def lock_file(handle: int) -> None:
        """Lock an open file for this process. Raises BlockingIOError where another one has it."""
        fcntl.flock(handle, fcntl.LOCK_EX | fcntl.LOCK_NB)
