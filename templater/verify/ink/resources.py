"""What a page's content calls by name: fonts, graphics states, colour spaces, drawings within it."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any, TypeAlias

from templater.verify.ink.read_fonts import Letters, read_letters
from templater.verify.model import UnreadableError

_BLACK_AT_ZERO = ("/DeviceGray", "/DeviceRGB", "/CalGray", "/CalRGB", "/G", "/RGB")
_HARMLESS = {
    "/Type": ("/ExtGState",),
    "/CA": (1,),
    "/ca": (1,),
    "/BM": ("/Normal", "/Compatible"),
    "/SMask": ("/None",),
}
"""Values of a graphics state that leave black ink as black as it is."""

_NO_MATTER = {"/AIS", "/SA", "/OP", "/op", "/OPM", "/TK", "/RI", "/FL", "/SM", "/LC", "/LJ", "/ML"}

FontCache: TypeAlias = dict[tuple[int, int], Letters]
"""The letters of the fonts of a document, each read once."""


class Resources:
    """What one page, or a drawing within it, may call by name. Its methods raise UnreadableError."""

    def __init__(self, table: Any, fonts: FontCache) -> None:
        self._table, self._cache = table, fonts
        self._fonts: dict[bytes, Letters] = {}

    def letters(self, name: bytes) -> Letters:
        """What the codes of a font mean."""
        if name not in self._fonts:
            font = self._find("/Font", name)
            if font.objgen not in self._cache or font.objgen == (0, 0):
                self._cache[font.objgen] = read_letters(font)
            self._fonts[name] = self._cache[font.objgen]
        return self._fonts[name]

    def graphics_state(self, name: bytes) -> Mapping[str, Any]:
        """Those values of a graphics state that change how lines look; one that fades ink is refused."""
        changes: dict[str, Any] = {}
        for key, value in self._find("/ExtGState", name).items():
            if key in _HARMLESS:
                if value not in _HARMLESS[key]:
                    raise UnreadableError("it holds ink that can be seen through")
            elif key not in _NO_MATTER:
                changes[key] = value
        return changes

    def is_black_at_zero(self, name: bytes) -> bool:
        """Whether nothing of each of its colours is black in a colour space."""
        if (plain := name.decode("latin-1")) in _BLACK_AT_ZERO:
            return True
        space = self._table.get("/ColorSpace", {}).get(plain)
        kind = space if not _is_list(space) else space[0]
        if kind == "/ICCBased":
            return bool(space[1].get("/N") in (1, 3))
        return kind in _BLACK_AT_ZERO

    def form(self, name: bytes) -> tuple[Any, Resources]:
        """A drawing within the page, and what it may call by name; a picture is refused."""
        found = self._find("/XObject", name)
        if found.get("/Subtype") != "/Form":
            raise UnreadableError("it holds a picture")
        if "/OC" in found:
            raise UnreadableError("it holds a layer that can be hidden")
        if found.get("/Group", {}).get("/S") not in (None, "/Transparency"):
            raise UnreadableError("it holds a group of drawings that is not known")
        table = found.get("/Resources", self._table)
        return found, Resources(table, self._cache)

    def _find(self, kind: str, name: bytes) -> Any:
        """What has a name. Raises KeyError."""
        return self._table[kind][name.decode("latin-1")]


def _is_list(thing: Any) -> bool:
    import pikepdf

    return isinstance(thing, pikepdf.Array)
