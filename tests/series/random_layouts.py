"""Writes layouts at random that hold, most of them: walls, pieces, hangers and groups of every kind."""

from __future__ import annotations

import json
import random
from typing import Any

from templater.geometry import Size

NAMES = (
    "Gull",
    "Tide chart",
    "Keeper's log, page {}",
    "The long-winded account of the winter gales of the north-west, volume {}, as told by the keeper",
    "Fog signal no. {}: two long, one short",
    "Ærø lys ‹{}›",
    'Étude no. {} ("la mer")',
    "42 x 50 in. From 0 mm to {} mm",
    "A{}",
    "MMMM WWWW MMWW {}",
    "WWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWW {}",
)
SAYINGS = (
    "7",
    "12 mm",
    "page 3 of 9",
    "rev ABCDEF",
    "HOLE 1 of 2",
    "HOLES 1, 2",
    "gap 30 mm: hold it",
    "from the wall's left end: 12 mm",
    "The long ruler up must be 150 mm",
    "hang point: 3 mm above the hole",
    "HOLES, from the wall's left end 1: 3 mm",
    "Part 1 of 2. Scale 1:5. From 1 mm to 2 mm from the left end, from 1 mm to 2 mm above the floor.",
)
"""Names that are what the kit itself says."""

TITLES = (
    "Cottage",
    "Keeper's cottage, the upper landing on the seaward side, second hanging",
    "Cottage",
    *SAYINGS[:4],
)
HANGERS = (
    "wire",
    "wire",
    "d-rings",
    "d-rings",
    "keyholes",
    "sawtooth",
    "nail",
    "cleat",
    "rail",
    "strips",
)
WITH_RISE = ("wire", "d-rings", "keyholes", "sawtooth", "nail", "cleat")
ARRANGEMENTS = ("row", "row", "column", "grid", "cluster", "stair", "ledge")
HOOK = {"name": "brass hook", "rise": "12 mm", "rating": "15 kg", "needs": "a nail", "length": "40 mm"}
RAIL_MM = 2600.0


class LayoutMaker:
    """Writes one layout, left to right along the wall; lengths are rounded as people measure."""

    def __init__(self, chance: random.Random) -> None:
        self._chance = chance
        self._unit = chance.choice(("mm", "in"))
        self._left, self._top = chance.uniform(0, 400), 0.0
        self._pieces: list[dict[str, Any]] = []
        self._groups: list[dict[str, Any]] = []
        self._furniture: list[dict[str, Any]] = []

    def write(self) -> str:
        """The text of the layout."""
        left = self._chance.choice((1, 1, 2, 3, 5, 8, 12))
        while left > 0:
            count = min(left, self._chance.randint(2, 5))
            if count > 1 and self._chance.random() < 0.5:
                self._add_group(count)
            else:
                self._add_single()
                count = 1
            left -= count
        openings = [self._open_window()] if self._chance.random() < 0.3 else []
        layout = {
            "title": self._chance.choice(TITLES),
            "units": self._unit,
            "wall": self._build_wall(),
            "hardware": [HOOK],
            "pieces": self._pieces,
            "groups": self._groups,
            "furniture": self._furniture,
            "openings": openings,
            **self._choose_lines(),
        }
        rows = (f"{key}: {json.dumps(value, ensure_ascii=False)}" for key, value in layout.items())
        return "\n".join(rows) + "\n"

    def _length(self, low: float, high: float) -> float:
        """A length between two, mm, as it can be written in the layout's unit."""
        return self._round(self._chance.uniform(low, max(low, high)))

    def _round(self, value: float) -> float:
        """The nearest whole mm, tenth of a mm or sixteenth of an inch."""
        if self._unit == "in":
            return round(value / 25.4 * 16) / 16 * 25.4
        return round(value, self._chance.choice((0, 0, 1)))

    def _say(self, value: float) -> str:
        """A length as a layout file has it."""
        if self._unit == "in":
            return f"{round(value / 25.4 * 16) / 16:.4f} in"
        return f"{value:.1f} mm"

    def _here(self) -> str:
        """How far along the wall what comes next may begin."""
        return self._say(self._round(self._left))

    def _go_on(self, width: float, top: float) -> None:
        """Note how far along the wall and how high it is taken."""
        self._left += width + self._chance.choice((20, 60, 200, 700))
        self._top = max(self._top, top)

    def _add_piece(self, *, most: float = 1800.0) -> tuple[dict[str, Any], Size]:
        """One more piece, hung in any way that fits its size."""
        side = min(self._chance.choice((150.0, 400.0, 400.0, 700.0, 1800.0)), most)
        size = Size(self._length(60, side), self._length(60, min(side, 1500.0)))
        number = len(self._pieces) + 1
        name = self._chance.choice(SAYINGS if self._chance.random() < 0.1 else NAMES).format(number)
        if name in {piece["name"] for piece in self._pieces}:
            name = f"{name} {number}"
        piece: dict[str, Any] = {
            "name": name,
            "size": f"{self._say(size.width)} x {self._say(size.height)}",
        }
        if self._chance.random() < 0.7:
            piece["weight"] = f"{self._chance.uniform(0.2, 20):.2f} kg"
        if self._chance.random() < 0.93:
            piece["hang"] = self._hang(size)
        self._pieces.append(piece)
        return piece, size

    def _hang(self, size: Size) -> dict[str, Any]:
        """A way to hang a piece of a size."""
        by = self._chance.choice(HANGERS)
        if by == "strips":
            return {"by": by, "rating": "2 kg", "each": "pair"}
        deep = self._chance.choice((0.2, 0.2, 0.5, 0.95)) * size.height
        hang: dict[str, Any] = {"by": by, "drop": self._say(self._length(0, deep))}
        if by in WITH_RISE and self._chance.random() < 0.6:
            is_named = self._chance.random() < 0.3
            hang |= {"hook": "brass hook"} if is_named else {"rise": self._say(self._length(0, 60))}
        return hang | self._spread_holes(by, size)

    def _spread_holes(self, by: str, size: Size) -> dict[str, Any]:
        """What else a way to hang may ask for: where its holes are across the piece."""
        chance, wide = self._chance, 0.9 * size.width
        apart = self._say(self._length(min(20, wide), wide))
        if by in ("sawtooth", "nail") and chance.random() < 0.4:
            return {"offset": self._say(self._length(-size.width / 4, size.width / 4))}
        if by in ("d-rings", "keyholes"):
            lock = {"lock": {"below_top": self._say(0.9 * size.height)}}
            return {"apart": apart, **(lock if chance.random() < 0.15 else {})}
        if by == "wire" and chance.random() < 0.4:
            return {"hooks": 2, "spread": self._say(self._length(20, size.width / 2))}
        if by == "cleat":
            every = self._say(self._length(25, 400))
            return {"width": self._say(self._length(min(40, wide), wide)), "every": every}
        if by == "rail":
            cords = {"cords": 2, "apart": apart} if chance.random() < 0.5 else {}
            return {"height": self._say(RAIL_MM), **cords}
        return {}

    def _add_single(self) -> None:
        """A piece by itself, most of them somewhere near eye level."""
        piece, size = self._add_piece()
        bottom = self._length(max(0, 1200 - size.height), 1500 - size.height / 2)
        place = {"left": self._here()}
        if self._chance.random() < 0.5:
            place["bottom"] = self._say(bottom)
        piece["place"] = place
        self._go_on(size.width, bottom + size.height)

    def _add_group(self, count: int) -> None:
        """Several pieces as one, by any arrangement; now and then a group in a group."""
        arrange = self._chance.choice(ARRANGEMENTS)
        made = [self._add_piece(most=500) for _ in range(count)]
        if arrange == "ledge":
            for piece, _ in made:
                piece.pop("hang", None)
        members = [piece["name"] for piece, _ in made]
        gap, bottom = self._length(5, 120), self._length(700, 1200)
        reach = Size(
            sum(size.width for _, size in made) + count * gap,
            sum(size.height for _, size in made) + count * gap,
        )
        group: dict[str, Any] = {
            "name": f"group {len(self._groups) + 1}",
            "pieces": members,
            "arrange": arrange,
            "gap": self._say(gap),
            **self._arrange(arrange, count, bottom, reach),
            **self._place_group(arrange, bottom, reach),
        }
        if self._chance.random() < 0.25 and count > 2 and arrange in ("row", "column"):
            inner = f"{group['name']} inner"
            column = {"arrange": "column", "gap": self._say(gap / 2 + 3)}
            self._groups.append({"name": inner, "pieces": members[:2], **column})
            group["pieces"] = [inner, *members[2:]]
        self._groups.append(group)
        is_stair = arrange == "stair"
        width = 2 * reach.width if is_stair else reach.width + 100
        self._go_on(width, 3 * reach.width if is_stair else bottom + reach.height)

    def _arrange(self, arrange: str, count: int, bottom: float, reach: Size) -> dict[str, Any]:
        """What an arrangement asks for."""
        chance = self._chance
        match arrange:
            case "grid":
                return {"columns": chance.randint(1, count), "cells": chance.choice(("equal", "true"))}
            case "row":
                return {"align": chance.choice(("top", "centre", "bottom"))}
            case "column":
                return {"align": chance.choice(("left", "centre", "right"))}
            case "ledge":
                own = {"height": self._say(bottom), "width": self._say(reach.width + 100)}
                every = self._say(self._length(100, 400))
                return {"ledge": {**own, "thick": "40 mm", "drop": "20 mm", "every": every}}
            case "stair":
                start = {"left": self._here(), "bottom": "0 mm"}
                up = chance.choice(("left", "right"))
                return {"stair": {"rise": "180 mm", "run": "260 mm", "up": up, "start": start}}
        return {}

    def _place_group(self, arrange: str, bottom: float, reach: Size) -> dict[str, Any]:
        """Where a group hangs: by itself, or over a chest."""
        if arrange == "row" and self._chance.random() < 0.4:
            name = f"chest {len(self._furniture)}"
            size = {"width": self._say(reach.width), "height": "800 mm"}
            self._furniture.append({"name": name, "left": self._here(), **size})
            return {"above": name, "clearance": self._say(self._length(60, 300))}
        if arrange == "stair":
            return {}
        return {"left": self._here()} | ({} if arrange == "ledge" else {"bottom": self._say(bottom)})

    def _open_window(self) -> dict[str, Any]:
        """A window past everything so far."""
        left = self._here()
        self._go_on(900, 2000)
        size = {"width": "900 mm", "height": "1200 mm"}
        return {"name": "sash window", "kind": "window", "left": left, "bottom": "800 mm", **size}

    def _build_wall(self) -> dict[str, Any]:
        """A wall round it all, now and then hardly larger, under a ceiling that may slope."""
        chance = self._chance
        tight = chance.random() < 0.25
        has_rail = any(piece.get("hang", {}).get("by") == "rail" for piece in self._pieces)
        width = self._say(self._left + (2 if tight else chance.uniform(100, 1500)))
        least = 1700 if tight and not has_rail else RAIL_MM + 100
        height = max(self._top + (6 if tight else 300), least)
        wall: dict[str, Any] = {"width": width}
        if chance.random() < 0.15:
            wall["ceiling"] = [["0 mm", self._say(height + 400)], [width, self._say(height)]]
        else:
            wall["height"] = self._say(height)
        if chance.random() < 0.4:
            studs = {"first": "200 mm", "every": "400 mm"}
            wall |= {"surface": "drywall", "board": "12.5 mm", "studs": studs}
        return wall

    def _choose_lines(self) -> dict[str, Any]:
        """Eye line, datum and for whom, each left out now and then."""
        chance = self._chance
        chosen: dict[str, Any] = {
            "eye_line": self._say(self._length(1300, 1600)),
            "datum": {"height": self._say(self._length(900, 1700)), "at": "the window"},
            "for": chance.choice(("the guest house", *SAYINGS)),
            "issue": chance.choice(("first hanging", "first hanging", "page 3 of 9")),
        }
        return {key: value for key, value in chosen.items() if chance.random() < 0.5}
