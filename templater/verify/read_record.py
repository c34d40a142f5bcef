"""Reads a kit's manifest; what is not as it must be is told, never trusted."""

from __future__ import annotations

import json
from collections.abc import Mapping, Sequence
from pathlib import Path
from typing import Any

from templater.geometry import Box, Point, Size
from templater.layout.model import Margins
from templater.paper import parse_paper
from templater.printing.model import UNSCALED, Coverage, Printer, PrintSetup
from templater.verify.model import PageRecord, PieceRecord, Record, UnreadableError

SCHEMA = "templater-kit/1"
"""The only form of manifest that is understood."""

_NO_KIT = "its manifest.json is missing or not one of ours"


def read_record(folder: Path) -> Record:
    """The manifest of a kit. Raises UnreadableError."""
    try:
        content = json.loads((folder / "manifest.json").read_text("utf-8"))
    except (OSError, ValueError, RecursionError) as error:
        raise UnreadableError(_NO_KIT) from error
    if not isinstance(content, dict) or content.get("schema") != SCHEMA:
        raise UnreadableError(_NO_KIT)
    try:
        return _make_record(content)
    except (ArithmeticError, AttributeError, LookupError, TypeError, ValueError) as error:
        raise UnreadableError(f"its manifest cannot be understood ({error})") from error


def _make_record(content: Mapping[str, Any]) -> Record:
    return Record(
        revision=str(content["revision"]),
        version=str(content.get("version", "")),
        setup=_read_setup(content["options"]),
        files={str(name): str(digest) for name, digest in content["files"].items()},
        pieces=tuple(map(_read_piece, content["pieces"])),
        pages=tuple(map(_read_page, content["pages"])),
    )


def _read_setup(options: Mapping[str, Any]) -> PrintSetup:
    """The print options, as they were when the kit was made."""
    printer = options.get("printer")
    return PrintSetup(
        parse_paper(options["paper"]),
        _read_margins(options["margin_mm"]),
        float(options["lap_mm"]),
        None if printer is None else _read_printer(printer),
        Coverage(options["cover"]),
    )


def _read_printer(told: Mapping[str, Any]) -> Printer:
    return Printer(
        name=str(told["name"]),
        across=float(told["across"]),
        along=float(told["along"]),
        margins=_read_margins(told["margin_mm"]),
        rulers=Size(*_numbers(told["rulers_mm"], 2)),
    )


def _read_margins(told: Mapping[str, Any]) -> Margins:
    return Margins(*(float(told[side]) for side in ("left", "right", "top", "bottom")))


def _read_piece(told: Mapping[str, Any]) -> PieceRecord:
    return PieceRecord(
        slug=str(told["slug"]),
        name=str(told["name"]),
        box=Box(*_numbers(told["rect_mm"], 4)),
        hang_points=tuple(Point(*_numbers(point, 2)) for point in told["hang_points"]),
        holes=tuple(Point(*_numbers(point, 2)) for point in told["holes"]),
    )


def _read_page(told: Mapping[str, Any]) -> PageRecord:
    clip, origin, scale = told["clip_mm"], told["origin_mm"], told["scale"]
    return PageRecord(
        page=int(told["page"]),
        kind=str(told["kind"]),
        paper=Size(*_numbers(told["paper_mm"], 2)),
        piece=None if told["piece"] is None else str(told["piece"]),
        sheet=None if told["sheet"] is None else str(told["sheet"]),
        clip=None if clip is None else Box(*_numbers(clip, 4)),
        origin=None if origin is None else Point(*_numbers(origin, 2)),
        scale=UNSCALED if scale is None else (float(scale[0]), float(scale[1])),
    )


def _numbers(told: Sequence[Any], count: int) -> list[float]:
    """So many numbers. Raises ValueError."""
    numbers = [float(number) for number in told]
    if len(numbers) != count:
        raise ValueError(f"{count} numbers were expected, not {len(numbers)}")
    return numbers
