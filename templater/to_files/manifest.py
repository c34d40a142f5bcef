"""What a kit is made of, for programs that check it: pieces, pages, options, and a hash a file."""

from __future__ import annotations

import json
from collections.abc import Mapping, Sequence
from typing import Any

from templater.geometry import Point
from templater.layout.model import Margins
from templater.placement.model import PlacedPiece, Plan
from templater.printing.model import UNSCALED, Printer, PrintSetup, Scale
from templater.sheets.model import Page

SCHEMA = "templater-kit/1"
"""The manifest's format; a folder whose manifest does not bear it is not a kit of ours."""


def page_entries(number: int, page: Page) -> list[dict[str, Any]]:
    """A page as the manifest tells it, once for each piece on it; what does not apply is null."""
    return [
        {
            "page": number,
            "kind": page.kind.value,
            "piece": part.piece if part else None,
            "sheet": part.sheet if part else None,
            "paper_mm": _numbers(page.paper),
            "clip_mm": _numbers(part.clip) if part else None,
            "origin_mm": _numbers(_scaled(part.origin, page.scale)) if part else None,
            "scale": list(page.scale) if part or page.scale != UNSCALED else None,
        }
        for part in page.parts or (None,)
    ]


def manifest_json(
    plan: Plan,
    setup: PrintSetup,
    *,
    revision: str,
    version: str,
    pages: Sequence[Mapping[str, Any]],
    files: Mapping[str, str],
    missing: Mapping[str, str],
    proof: Mapping[str, Any] | None,
) -> str:
    """The whole manifest; ``files`` maps names to SHA-256, ``missing`` names to the reason.

    ``proof`` is what was measured when the files were read back; None before that.
    """
    content = {
        "schema": SCHEMA,
        "revision": revision,
        "version": version,
        "title": plan.title,
        "paper": setup.paper.name,
        "options": {
            "paper": setup.paper.name,
            "margin_mm": _margins_entry(setup.margins),
            "lap_mm": setup.lap_mm,
            "cover": setup.cover.value,
            "printer": _printer_entry(setup.printer) if setup.printer else None,
        },
        "files": dict(sorted(files.items())),
        "missing": dict(missing),
        "proof": None if proof is None else dict(proof),
        "pieces": [_piece_entry(piece) for piece in plan.pieces],
        "pages": list(pages),
    }
    return json.dumps(content, indent=1, ensure_ascii=False) + "\n"


def _piece_entry(piece: PlacedPiece) -> dict[str, Any]:
    return {
        "slug": piece.slug,
        "name": piece.name,
        "rect_mm": _numbers(piece.box),
        "hang_points": [_point(mark.hang) for mark in piece.marks],
        "holes": [_point(mark.hole) for mark in piece.marks],
    }


def _printer_entry(printer: Printer) -> dict[str, Any]:
    return {
        "name": printer.name,
        "across": printer.across,
        "along": printer.along,
        "margin_mm": _margins_entry(printer.margins),
        "rulers_mm": list(printer.rulers),
    }


def _margins_entry(margins: Margins) -> dict[str, float]:
    return {
        "left": margins.left,
        "right": margins.right,
        "top": margins.top,
        "bottom": margins.bottom,
    }


def _scaled(point: Point, scale: Scale) -> Point:
    return Point(point.x * scale[0], point.y * scale[1])


def _point(point: Point) -> list[float]:
    return _numbers(point)


def _numbers(values: Sequence[float]) -> list[float]:
    """Millimetres to six decimals, and no minus zero."""
    return [round(value, 6) + 0.0 for value in values]
