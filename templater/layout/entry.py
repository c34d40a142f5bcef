"""What all mappings of a layout file have in common."""

from __future__ import annotations

from pydantic import BaseModel, ConfigDict


class Entry(BaseModel):
    """A mapping of the file; a key that it does not know is a fault."""

    model_config = ConfigDict(extra="forbid", frozen=True)
