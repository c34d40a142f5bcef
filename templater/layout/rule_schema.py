"""The keys of ``rules:``: each rule off, on, or with a band of its own."""

from __future__ import annotations

from typing import Annotated, Any, TypeAlias

from pydantic import (
    BeforeValidator,
    Field,
    ValidatorFunctionWrapHandler,
    WrapValidator,
    create_model,
    model_validator,
)

from templater.layout.choices import Percent
from templater.layout.entry import Entry
from templater.layout.rule_codes import BAND_KINDS, LIMITS, BandKind
from templater.layout.values import Distance, fail, filled_text, show_value

_EXAMPLES = {
    BandKind.LENGTH: ("{from: 2 in, to: 5 in}", "{to: 1/2 in}"),
    BandKind.PERCENT: ("{from: 60 %, to: 75 %}", "{to: 15 %}"),
}
"""A band with both its ends, and one of which only the upper end can be set."""


class _Band(Entry):
    """The ends of a band; one of them may be left as it is."""

    @model_validator(mode="after")
    def _check_ends(self) -> _Band:
        low, high = getattr(self, "low", None), getattr(self, "high", None)
        if low is None and high is None:
            raise fail("needs 'from' or 'to'", "add one of them, or write on or off")
        if low is not None and high is not None and low > high:
            raise fail("has a 'from' that is more than its 'to'", "exchange the two")
        return self


class LengthBand(_Band):
    """A band of lengths, mm."""

    low: Distance | None = Field(None, alias="from")
    high: Distance | None = Field(None, alias="to")


class PercentBand(_Band):
    """A band of percentages."""

    low: Percent | None = Field(None, alias="from")
    high: Percent | None = Field(None, alias="to")


def _refuse_from(kind: BandKind) -> BeforeValidator:
    """Refuses the lower end of a band that starts at nothing."""

    def refuse(_raw: object) -> None:
        raise fail(
            "does not apply to a rule that asks for equality: its band always starts at nothing",
            f"write 'to' alone, for example {_EXAMPLES[kind][1]}",
        )

    return BeforeValidator(refuse)


class LengthLimit(LengthBand):
    """A band of lengths from nothing up, mm."""

    low: Annotated[None, _refuse_from(BandKind.LENGTH)] = Field(None, alias="from")


class PercentLimit(PercentBand):
    """A band of percentages from nothing up."""

    low: Annotated[None, _refuse_from(BandKind.PERCENT)] = Field(None, alias="from")


_BANDS = {
    BandKind.LENGTH: (LengthBand, LengthLimit),
    BandKind.PERCENT: (PercentBand, PercentLimit),
    BandKind.NONE: (LengthBand, LengthBand),
}

Setting: TypeAlias = bool | LengthBand | PercentBand
"""Whether a rule is on, or the band that it is on with."""


def _setting(kind: BandKind, *, is_limit: bool) -> Any:
    """How a rule with such a band is set; ``is_limit``: only its upper end can be."""
    demand = f"on, off or a band, {_EXAMPLES[kind][is_limit]}" if kind in _EXAMPLES else "on or off"

    def read(raw: object, read_band: ValidatorFunctionWrapHandler) -> Setting:
        if isinstance(raw, dict) and kind in _EXAMPLES:
            band: Setting = read_band(raw)
            return band
        word = filled_text(raw, demand).strip() if isinstance(raw, str) else None
        if word in ("on", "off"):
            return word == "on"
        raise fail(f"needs to be on or off, but is {show_value(raw)}", f"write {demand}")

    return Annotated[_BANDS[kind][is_limit], WrapValidator(read)]


_FIELDS: dict[str, Any] = {
    code: (_setting(kind, is_limit=code in LIMITS) | None, None) for code, kind in BAND_KINDS.items()
}

RulesEntry: Any = create_model("RulesEntry", __base__=Entry, **_FIELDS)
"""``rules:``, a field a rule by its code; a rule that is not given is as ever."""
