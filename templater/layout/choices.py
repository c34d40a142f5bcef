"""What values of a layout may be where there are few: words from a list, counts, shares, pairs.

``any``, where it is allowed, is read as None: the search settles it.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Sequence
from enum import Enum
from typing import Annotated, Any, TypeVar

from pydantic import PlainValidator, ValidationInfo

from templater.layout.model import Align, Arrangement, Cells, Hanger, LeftRight, Region, Surface
from templater.layout.rule_codes import RULE_CODES
from templater.layout.values import fail, filled_text, read_distance, show_value
from templater.lengths import Unit
from templater.quoting import find_nearest, list_words, quote, suggest

ANY = "any"
"""What a layout says where it leaves a choice to the search."""

_MOST = 1000
"""The most pieces, columns or rows that a layout may speak of."""

_MOST_PERCENT = 1000
_COUNT = re.compile(r"[1-9][0-9]{0,3}", re.ASCII)
_PERCENT = re.compile(r"([0-9]{1,4}(?:\.[0-9]{1,6})?) ?%", re.ASCII)

_Choice = TypeVar("_Choice", bound=Enum)


def _word(known: Sequence[str], noun: str) -> Callable[[object], str]:
    """Reads one of the known words."""

    def read(raw: object) -> str:
        text = filled_text(raw, noun).strip()
        if text in known:
            return text
        near = suggest(find_nearest(text, known))
        raise fail(f"is {quote(text)}, which is not {noun}{near}", f"use {list_words(known)}")

    return read


def choice(choices: type[_Choice], noun: str) -> PlainValidator:
    """Reads one of the values of an enum."""
    read = _word([str(choice.value) for choice in choices], noun)
    return PlainValidator(lambda raw: choices(read(raw)), json_schema_input_type=str)


def _open_choice(choices: type[_Choice], noun: str) -> PlainValidator:
    """One of the choices, or None for ``any``."""
    read = _word([*(str(choice.value) for choice in choices), ANY], noun)

    def read_open(raw: object) -> _Choice | None:
        word = read(raw)
        return None if word == ANY else choices(word)

    return PlainValidator(read_open, json_schema_input_type=str)


def words(noun: str, *known: str) -> PlainValidator:
    """Reads one of a few words, and keeps it as it is."""
    return PlainValidator(_word(known, noun), json_schema_input_type=str)


def _read_one_or_two(raw: object) -> int:
    return int(_word(("1", "2"), "one or two")(raw))


def _read_yes_no(raw: object) -> bool:
    return _word(("yes", "no"), "yes or no")(raw) == "yes"


def _is_any(raw: object) -> bool:
    return isinstance(raw, str) and raw.strip() == ANY


def _read_open_distance(raw: object, info: ValidationInfo) -> float | None:
    return None if _is_any(raw) else read_distance(raw, info)


def find_count(raw: object) -> int | None:
    """The whole number above 0 that a raw value is; None if it is anything else."""
    text = raw.strip() if isinstance(raw, str) else ""
    return int(text) if _COUNT.fullmatch(text) and int(text) <= _MOST else None


def _read_count(raw: object) -> int:
    demand = f"a whole number from 1 to {_MOST}"
    text = filled_text(raw, demand)
    count = find_count(text)
    if count is None:
        raise fail(f"needs {demand}, but is {quote(text)}", "write for example 3")
    return count


def _read_open_count(raw: object) -> int | None:
    return None if _is_any(raw) else _read_count(raw)


def read_percent(raw: object) -> float:
    """A share, as the number before the percent sign."""
    match = _PERCENT.fullmatch(filled_text(raw, "a percentage").strip())
    if match is None or float(match.group(1)) > _MOST_PERCENT:
        message = f"needs a percentage of at most {_MOST_PERCENT} %, but is {show_value(raw)}"
        raise fail(message, "write for example 60 %")
    return float(match.group(1))


def read_pair(raw: object, demand: str, example: str) -> list[Any]:
    """The two items of a list that must have two."""
    if not isinstance(raw, list) or len(raw) != 2:
        count = f"a list of {len(raw)}" if isinstance(raw, list) else show_value(raw)
        raise fail(f"needs {demand}, but is {count}", f"write for example {example}")
    return raw


def _read_name_pair(raw: object) -> tuple[str, str]:
    first, second = read_pair(raw, "two names", "[sash window, right end]")
    return filled_text(first, "a text").strip(), filled_text(second, "a text").strip()


UnitName = Annotated[Unit, choice(Unit, "a unit of length")]
HangerName = Annotated[Hanger, choice(Hanger, "a way to hang")]
OneOrTwo = Annotated[int, PlainValidator(_read_one_or_two, json_schema_input_type=str)]
YesNo = Annotated[bool, PlainValidator(_read_yes_no, json_schema_input_type=str)]
SurfaceName = Annotated[Surface, choice(Surface, "what a wall is faced with")]
RegionName = Annotated[Region, choice(Region, "a region")]
Studs = Annotated[str, words("what a cleat can be screwed to", "studs")]
Each = Annotated[str, words("what a maker rates", "pair", "strip")]
OpenArrangement = Annotated[Arrangement | None, _open_choice(Arrangement, "an arrangement")]
AlignName = Annotated[Align, choice(Align, "a way to align")]
SideName = Annotated[LeftRight, choice(LeftRight, "a side")]
CellsName = Annotated[Cells, choice(Cells, "a way to measure cells")]
RuleCode = Annotated[str, PlainValidator(_word(RULE_CODES, "a rule"), json_schema_input_type=str)]
OpenDistance = Annotated[float | None, PlainValidator(_read_open_distance, json_schema_input_type=str)]
Count = Annotated[int, PlainValidator(_read_count, json_schema_input_type=str)]
OpenCount = Annotated[int | None, PlainValidator(_read_open_count, json_schema_input_type=str)]
Percent = Annotated[float, PlainValidator(read_percent, json_schema_input_type=str)]
NamePair = Annotated[tuple[str, str], PlainValidator(_read_name_pair, json_schema_input_type=list[str])]
