"""What furniture and fixtures may be, as far as it matters to what hangs over or near them."""

from __future__ import annotations

from typing import Annotated

from pydantic import PlainValidator

from templater.layout.choices import word

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

FurnitureKind = Annotated[
    str, PlainValidator(word(FURNITURE_KINDS, "a kind of furniture"), json_schema_input_type=str)
]
FixtureKind = Annotated[
    str, PlainValidator(word(FIXTURE_KINDS, "a kind of fixture"), json_schema_input_type=str)
]
