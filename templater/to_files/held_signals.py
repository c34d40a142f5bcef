"""Runs that are asked to end: steps that no signal cuts in two, and what stands when they are done."""

from __future__ import annotations

import signal
import sys
import threading
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import NoReturn

ENDING_SIGNALS = tuple(
    getattr(signal, name) for name in ("SIGTERM", "SIGHUP", "SIGINT") if hasattr(signal, name)
)
"""What asks a run to end: its terminal's Ctrl-C, a supervisor, a terminal that is closed."""


_asked: list[int] = []
"""The signals that have come since the run began."""

_in_place: list[Path] = []
"""What the run has put in its place."""


def _end_run(number: int, _frame: object) -> NoReturn:
    """The handler that ends a run as Ctrl-C does, and remembers that it was asked to."""
    _asked.append(number)
    raise KeyboardInterrupt


def heed_what_was_asked() -> None:
    """End a run that was asked to end where a library has swallowed the interrupt."""
    if _asked:
        raise KeyboardInterrupt


def note_in_place(path: Path) -> None:
    """Remember what a run has put in its place, for a run that is ended afterwards must tell of it."""
    _in_place.append(path)


def list_in_place() -> tuple[Path, ...]:
    """What the run has put in its place, in that order, each once."""
    return tuple(dict.fromkeys(_in_place))


@contextmanager
def signals_heeded() -> Iterator[None]:
    """Let a supervisor, or a terminal that is closed, end the block as Ctrl-C does, unless told not to.

    Afterwards all is as it was: who calls the program as a library keeps handlers of its own, and
    what one run was asked, or has put in its place, is nothing to the next. Python cannot end anything
    in an object's last rites and the like: an interrupt there is remembered, and nothing shown of it.
    """
    show = sys.unraisablehook

    def show_others(passed: sys.UnraisableHookArgs) -> None:
        if not isinstance(passed.exc_value, KeyboardInterrupt):
            show(passed)

    before = {number: signal.getsignal(number) for number in ENDING_SIGNALS}
    heeded = [
        number
        for number, handler in before.items()
        if handler in (signal.SIG_DFL, signal.default_int_handler)
    ]
    _forget_run()
    try:
        sys.unraisablehook = show_others
        for number in heeded:
            signal.signal(number, _end_run)
        yield
    finally:
        for number in heeded:
            signal.signal(number, before[number])
        sys.unraisablehook = show
        _forget_run()


def _forget_run() -> None:
    _asked.clear()
    _in_place.clear()


@contextmanager
def signals_held() -> Iterator[None]:
    """Hold back what asks the run to end; it takes effect when the block is done.

    Python runs its handlers in the main thread alone, so elsewhere there is nothing to hold.
    """
    if threading.current_thread() is not threading.main_thread():
        yield
        return
    held: list[int] = []
    handlers = {number: signal.getsignal(number) for number in ENDING_SIGNALS}
    before = {
        number: handler for number, handler in handlers.items() if handler not in (signal.SIG_IGN, None)
    }
    try:
        for number in before:
            signal.signal(number, lambda number, _frame: held.append(number))
        yield
    finally:
        for number, handler in before.items():
            signal.signal(number, handler)
        for number in held[:1]:
            signal.raise_signal(number)
