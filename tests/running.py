"""The command line as a test runs it."""

from __future__ import annotations

import sys
from collections.abc import Callable
from typing import NamedTuple, TypeAlias

import pytest

from templater.cli import main


class Ended(NamedTuple):
    """How a run ended: its exit code, and what it said."""

    code: int
    out: str
    err: str


Run: TypeAlias = Callable[..., Ended]


def make_run(capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch) -> Run:
    """Runs the command line with the words given."""

    def run(*words: str) -> Ended:
        monkeypatch.setattr(sys, "argv", ["templater", *words])
        code = 0
        try:
            main()
        except SystemExit as end:
            code = int(end.code or 0)
        ended = Ended(code, *capsys.readouterr())
        assert "Traceback" not in ended.out + ended.err
        return ended

    return run
