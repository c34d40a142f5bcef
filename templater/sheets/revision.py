"""A short word that tells two kits apart: the same only if the plan, the options and the program are."""

from __future__ import annotations

import json
from dataclasses import fields, is_dataclass
from enum import Enum
from hashlib import sha256
from typing import Any

from templater.errors import Place
from templater.placement.model import Plan
from templater.printing.model import PrintSetup

ALPHABET = "ABCDEFGHJKLMNPQRTUVWXY23456789"
"""Letters and digits without I, O, S and Z, which can be misread as digits."""

LENGTH = 6


def name_revision(plan: Plan, setup: PrintSetup, version: str) -> str:
    """Six characters from a hash of the plan, the print setup and the program's version."""
    told = json.dumps([_plain(plan), _plain(setup), version], sort_keys=True, ensure_ascii=True)
    number = int.from_bytes(sha256(told.encode()).digest()[:16], "big")
    letters = []
    for _ in range(LENGTH):
        number, index = divmod(number, len(ALPHABET))
        letters.append(ALPHABET[index])
    return "".join(letters)


def _plain(value: Any) -> Any:
    """The value as JSON can hold it; lengths to a millionth of a mm; places in files left out."""
    if isinstance(value, Place):
        return None
    if is_dataclass(value):
        return {field.name: _plain(getattr(value, field.name)) for field in fields(value)}
    if isinstance(value, Enum):
        return value.value
    if isinstance(value, tuple):
        return [_plain(part) for part in value]
    if isinstance(value, (int, float)) and not isinstance(value, bool):
        return round(float(value), 6) + 0.0  # 180 mm are 180.0 mm, and no sign stands before nothing
    return value
