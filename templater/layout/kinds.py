"""What furniture and fixtures may be, as far as it matters to what hangs over or near them."""

from __future__ import annotations

from typing import Annotated

from templater.layout.choices import words

FURNITURE_KINDS = (
    "bed",
    "cot",
    "seat",
    "table",
    "cabinet",
    "heater",
    "stove",
    "fireplace",
    "sink",
    "bath",
    "other",
)
"""What stands on the floor."""

FIXTURE_KINDS = (
    "switch",
    "socket",
    "thermostat",
    "light",
    "vent",
    "radiator",
    "heater",
    "stove",
    "fireplace",
    "sink",
    "bath",
    "shower",
    "tap",
    "pipe chase",
    "other",
)
"""What is fixed to the wall or in it."""

FurnitureKind = Annotated[str, words("a kind of furniture", *FURNITURE_KINDS)]
FixtureKind = Annotated[str, words("a kind of fixture", *FIXTURE_KINDS)]
