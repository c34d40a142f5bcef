"""What ``templater check`` shows of hooks, loads and what to buy."""

from __future__ import annotations

import json
import sys

import pytest

from templater.cli import main
from tests.kits import LAYOUTS

SAMPLER = str(LAYOUTS / "hardware-sampler.yaml")


@pytest.fixture
def said(capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch) -> str:
    """The report as one line, wide enough that no cell is folded."""
    monkeypatch.setattr("templater.commands.tables._WIDTH_IN_FILES", 300)
    monkeypatch.setattr(sys, "argv", ["templater", "check", SAMPLER])
    main()
    return " ".join(capsys.readouterr().out.split())


@pytest.mark.parametrize(
    "words",
    [
        "Tide chart 1 stud 8.0 lb (35.6 N) small hook, rated 10 lb: TOO WEAK 16.0 lb (2 × load)",
        "Shelf print 1 hollow 1.0 lb (4.5 N) hollow-wall anchor 5 lb (4 × load, rounded up)",
        "2 mirror hook, rated 100 lb, each with two screws",
        "3 pair of adhesive strips 4 lb Tide table",
        "1 hook or screw weight not given: not checked Lamp oil label",
    ],
)
def test_the_tables_tell_what_each_hole_takes_and_what_to_buy(said: str, words: str) -> None:
    assert words in said


def test_a_weak_hook_is_a_finding_like_any_other(
    capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(sys, "argv", ["templater", "check", SAMPLER, "--format", "json"])
    main()
    findings = json.loads(capsys.readouterr().out)
    (weak,) = [each for each in findings if (each["rule"], each["verdict"]) == ("weak-hook", "caution")]
    assert (weak["for"], weak["with"]) == ("Tide chart", "hole 1")
    assert weak["figure"] == "rated 10 lb, 16.0 lb asked for"
