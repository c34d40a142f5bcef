"""A run that is interrupted at a chosen line of the program."""

from __future__ import annotations

import contextlib
from collections.abc import Callable
from functools import cache
from pathlib import Path
from types import FrameType
from typing import Any

import templater

PROGRAM = Path(templater.__file__).parent
WATCHED = (
    *("cli.py", "__main__.py", "commands/"),
    *("to_files/archive.py", "to_files/durable.py", "to_files/file.py", "to_files/folder.py"),
    *("to_files/held_signals.py", "to_files/printer_store.py", "to_files/seal.py", "to_files/swap.py"),
    *("to_files/workplace.py",),
)
"""The command line, the commands, and all that puts files in their place."""


class Passing:
    """For ``sys.settrace``: calls ``act`` at each watched line, with its number and its name."""

    def __init__(self, act: Callable[[int, str], None]) -> None:
        self.act, self.number = act, 0

    def __call__(self, frame: FrameType, event: str, _argument: object) -> Any:
        if event == "call":
            return self if _is_watched(frame) else None
        if event == "line":
            self.number += 1
            path = frame.f_code.co_filename.removeprefix(f"{PROGRAM}/")
            self.act(self.number, f"{path}:{frame.f_lineno}")
        return self


def _is_watched(frame: FrameType) -> bool:
    """Whether a function is one of those watched, or opens or closes a block for one of them."""
    path = frame.f_code.co_filename
    if path == contextlib.__file__ and frame.f_back is not None:
        return _is_watched(frame.f_back)
    return _is_watched_file(path)


@cache
def _is_watched_file(path: str) -> bool:
    return path.startswith(f"{PROGRAM}/") and path.removeprefix(f"{PROGRAM}/").startswith(WATCHED)
