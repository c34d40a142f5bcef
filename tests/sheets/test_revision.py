from __future__ import annotations

import re
from dataclasses import replace
from typing import Any

import pytest

from templater.geometry import Size
from templater.layout.model import Margins
from templater.paper import PAPERS
from templater.placement.model import Plan
from templater.printing.model import Printer, PrintSetup
from templater.sheets.revision import name_revision
from tests.builders import hanging, layout, piece, plan_of

SETUP = PrintSetup(PAPERS["a4"], Margins(), 10.0)
PRINTER = Printer("study inkjet", 1.01, 1.02, Margins(), Size(180.0, 240.0))
MEASURED = replace(SETUP, printer=PRINTER)


def _plan(drop: float = 50.0) -> Plan:
    return plan_of(layout([piece("Kelp print", hang=hanging(drop=drop))]))


def test_the_same_plan_setup_and_version_give_the_same_word() -> None:
    word = name_revision(_plan(), SETUP, "1.0")
    assert name_revision(_plan(), SETUP, "1.0") == word
    # No I, O, S, Z, 0 or 1, which are taken for one another.
    assert re.fullmatch("[A-HJ-NP-RT-Y2-9]{6}", word)


@pytest.mark.parametrize(
    ("plan", "setup", "version"),
    [
        (_plan(50.001), SETUP, "1.0"),
        (replace(_plan(), issue="second try"), SETUP, "1.0"),
        (replace(_plan(), title="Keeper's cottage, attic"), SETUP, "1.0"),
        (_plan(), replace(SETUP, lap_mm=12.0), "1.0"),
        (_plan(), replace(SETUP, paper=PAPERS["letter"]), "1.0"),
        (_plan(), replace(SETUP, margins=Margins(left=7.0)), "1.0"),
        (_plan(), SETUP, "1.0.1"),
        (_plan(), MEASURED, "1.0"),
    ],
)
def test_whatever_moves_ink_changes_the_word(plan: Plan, setup: PrintSetup, version: str) -> None:
    assert name_revision(plan, setup, version) != name_revision(_plan(), SETUP, "1.0")


@pytest.mark.parametrize("change", [{"across": 1.011}, {"along": 1.021}, {"name": "shop laser"}])
def test_every_printer_has_a_word_of_its_own(change: dict[str, Any]) -> None:
    other = replace(SETUP, printer=replace(PRINTER, **change))
    assert name_revision(_plan(), other, "1.0") != name_revision(_plan(), MEASURED, "1.0")


def test_whole_numbers_and_decimals_of_one_value_are_the_same_word() -> None:
    whole = replace(SETUP, printer=replace(PRINTER, rulers=Size(180, 240)))
    assert name_revision(_plan(), whole, "1.0") == name_revision(_plan(), MEASURED, "1.0")
