"""A bound on the time that one layout may take, for the series that look for what hangs."""

from __future__ import annotations

import signal
from collections.abc import Iterator
from contextlib import contextmanager


class TooSlowError(BaseException):
    """A layout took too long; no ``except Exception`` on its way can hide it."""


@contextmanager
def within_seconds(seconds: float) -> Iterator[None]:
    """Interrupt what takes more time of this process's own than that."""

    def interrupt(number: int, frame: object) -> None:
        raise TooSlowError(f"more than {seconds} s")

    before = signal.signal(signal.SIGVTALRM, interrupt)
    signal.setitimer(signal.ITIMER_VIRTUAL, seconds)
    try:
        yield
    finally:
        signal.setitimer(signal.ITIMER_VIRTUAL, 0)
        signal.signal(signal.SIGVTALRM, before)
