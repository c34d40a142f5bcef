"""Which keys of a wall have nothing to say beside another."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from templater.layout.flaws import Flaw
from templater.layout.model import Surface
from templater.quoting import quote

_SOLID = {surface.value for surface in Surface if surface.is_solid}


def check_wall(data: dict[str, Any]) -> Iterator[Flaw]:
    """A wall of masonry or concrete has neither board nor studs, unless these stand before it."""
    wall = data.get("wall")
    if not isinstance(wall, dict):
        return
    surface = str(wall.get("surface")).strip()
    for key in ("board", "studs"):
        if key in wall and surface in _SOLID:
            message = f"{quote(key)} does not apply to a 'surface' of {surface}"
            hint = "name what stands before it as the surface, for example drywall, or remove the key"
            yield Flaw(("wall", key), message, hint, at_key=True)
