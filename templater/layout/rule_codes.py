"""The codes of the trade's rules, as a layout names them, and what each one's band is made of."""

from __future__ import annotations

from collections.abc import Mapping
from enum import Enum
from types import MappingProxyType


class BandKind(Enum):
    """What the ends of a rule's band are."""

    LENGTH = "a length"
    """Millimetres once read."""
    PERCENT = "a percentage"
    """The number before the percent sign: 60 % is 60.0."""
    NONE = "nothing"
    """The rule has no band: it is on or off."""


BAND_KINDS: Mapping[str, BandKind] = MappingProxyType(
    {
        "width-over-furniture": BandKind.PERCENT,
        "past-the-ends": BandKind.LENGTH,
        "clearance": BandKind.LENGTH,
        "gap": BandKind.LENGTH,
        "eye-line": BandKind.LENGTH,
        "group-as-one": BandKind.NONE,
        "uneven-gaps": BandKind.LENGTH,
        "near-miss": BandKind.LENGTH,
        "balance": BandKind.PERCENT,
        "near-ceiling": BandKind.LENGTH,
        "near-corner": BandKind.LENGTH,
        "near-opening": BandKind.LENGTH,
        "door-swing": BandKind.NONE,
        "size-against-wall": BandKind.PERCENT,
    }
)
"""Every rule, in the order in which findings are told."""

RULE_CODES = tuple(BAND_KINDS)
"""The codes alone."""

LIMITS = frozenset({"uneven-gaps", "balance"})
"""The rules that ask for equality: their bands start at nothing, and only ``to`` can be set."""
