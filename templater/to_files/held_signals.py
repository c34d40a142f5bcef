"""Steps that no signal may cut in two: Ctrl-C and its like wait until they are done."""

from __future__ import annotations

import signal
import threading
from collections.abc import Iterator
from contextlib import contextmanager
from typing import NoReturn

ENDING_SIGNALS = tuple(
    getattr(signal, name) for name in ("SIGTERM", "SIGHUP", "SIGINT") if hasattr(signal, name)
)
"""What asks a run to end: its terminal's Ctrl-C, a supervisor, a terminal that is closed."""


_asked: list[int] = []
"""The signals that have come since the run began."""


def _end_run(number: int, _frame: object) -> NoReturn:
    """The handler that ends a run as Ctrl-C does, and remembers that it was asked to."""
    _asked.append(number)
    raise KeyboardInterrupt


def heed_what_was_asked() -> None:
    """End a run that was asked to end where a library has swallowed the interrupt."""
    if _asked:
        raise KeyboardInterrupt


@contextmanager
def signals_heeded() -> Iterator[None]:
    """Let a supervisor, or a terminal that is closed, end the block as Ctrl-C does, unless told not to.

    Afterwards all is as it was: who calls the program as a library keeps handlers of its own, and
    what one run was asked does not end the next.
    """
    before = {number: signal.getsignal(number) for number in ENDING_SIGNALS}
    heeded = [
        number
        for number, handler in before.items()
        if handler in (signal.SIG_DFL, signal.default_int_handler)
    ]
    _asked.clear()
    try:
        for number in heeded:
            signal.signal(number, _end_run)
        yield
    finally:
        for number in heeded:
            signal.signal(number, before[number])
        _asked.clear()


@contextmanager
def signals_held() -> Iterator[None]:
    """Hold back what asks the run to end; it takes effect when the block is done.

    Python runs its handlers in the main thread alone, so elsewhere there is nothing to hold.
    """
    if threading.current_thread() is not threading.main_thread():
        yield
        return
    held: list[int] = []
    before = {}
    try:
        for number in ENDING_SIGNALS:
            if signal.getsignal(number) not in (signal.SIG_IGN, None):
                before[number] = signal.signal(number, lambda number, _frame: held.append(number))
        yield
    finally:
        for number, handler in before.items():
            signal.signal(number, handler)
        for number in held[:1]:
            signal.raise_signal(number)
