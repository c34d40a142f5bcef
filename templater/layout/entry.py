"""What all mappings of a layout file have in common."""

from __future__ import annotations

from collections.abc import Sequence
from functools import cache

from pydantic import BaseModel, ConfigDict


class Entry(BaseModel):
    """A mapping of the file; a key that it does not know is a fault."""

    model_config = ConfigDict(extra="forbid", frozen=True)


@cache
def list_keys(entry: type[Entry]) -> Sequence[str]:
    """The keys of a kind of mapping, as they stand in a file."""
    return [field.alias or name for name, field in entry.model_fields.items()]
