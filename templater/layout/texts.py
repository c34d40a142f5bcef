"""Every text that somebody wrote into a layout, for what must be known of their letters."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import fields, is_dataclass

from templater.errors import Place
from templater.layout.model import FontFile


def list_texts(value: object) -> Iterator[str]:
    """The texts in a layout or a part of it; where things stand in files is left out."""
    if isinstance(value, str):
        yield value
    elif isinstance(value, tuple):
        for part in value:
            yield from list_texts(part)
    elif is_dataclass(value) and not isinstance(value, (Place, FontFile)):
        for field in fields(value):
            yield from list_texts(getattr(value, field.name))
