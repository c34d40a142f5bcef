"""Manifests written by hand, and what of them cannot be understood."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import pytest

from templater.geometry import Box, Point, Size
from templater.layout.model import Margins
from templater.printing.model import UNSCALED, Coverage, Printer
from templater.verify.model import PageRecord, Record, UnreadableError
from templater.verify.read_record import read_record
from tests.verify import gull

MANIFEST: dict[str, Any] = {
    "schema": "templater-kit/1",
    "revision": "K7M2Q4",
    "version": "0.1.0",
    "options": {
        "paper": "a4",
        "margin_mm": {"left": 1, "right": 2, "top": 3, "bottom": 4},
        "lap_mm": 10,
        "cover": "band",
        "printer": None,
    },
    "files": {"kit.pdf": "00ff"},
    "pieces": [
        {
            "slug": "gull", "name": "Gull", "rect_mm": [300, 1400, 500, 1500],
            "hang_points": [[400, 1470]], "holes": [[400, 1480]],
        },
    ],
    "pages": [
        {
            "page": 1, "kind": "cover", "piece": None, "sheet": None,
            "paper_mm": [210, 297], "clip_mm": None, "origin_mm": None, "scale": None,
        },
        {
            "page": 2, "kind": "template", "piece": "gull", "sheet": "A1",
            "paper_mm": [297, 210], "clip_mm": [1, 2, 3, 4], "origin_mm": [5, 6], "scale": [1.01, 0.99],
        },
    ],
}  # fmt: skip


def _read(folder: Path, changes: dict[str, Any]) -> Record:
    (folder / "manifest.json").write_text(json.dumps({**MANIFEST, **changes}), "utf-8")
    return read_record(folder)


def test_a_manifest_is_read(tmp_path: Path) -> None:
    record = _read(tmp_path, {})
    assert (record.revision, record.version, record.files) == ("K7M2Q4", "0.1.0", {"kit.pdf": "00ff"})
    assert record.pieces == (gull.record().pieces[0],)
    scale = (1.01, 0.99)
    assert record.pages == (
        PageRecord(1, "cover", Size(210, 297), None, None, None, None, UNSCALED),
        PageRecord(2, "template", Size(297, 210), "gull", "A1", Box(1, 2, 3, 4), Point(5, 6), scale),
    )
    setup = record.setup
    assert (setup.paper.size, setup.margins, setup.lap_mm) == (Size(210, 297), Margins(1, 2, 3, 4), 10)
    assert (setup.printer, setup.cover) == (None, Coverage.BAND)


def test_a_printer_is_read(tmp_path: Path) -> None:
    margins = {"left": 1, "right": 2, "top": 3, "bottom": 4}
    printer = {
        "name": "desk", "across": 1.01, "along": 0.99, "margin_mm": margins, "rulers_mm": [180, 240],
    }  # fmt: skip
    record = _read(tmp_path, {"options": {**MANIFEST["options"], "printer": printer}})
    assert record.setup.printer == Printer("desk", 1.01, 0.99, Margins(1, 2, 3, 4), Size(180, 240))


@pytest.mark.parametrize(
    "changes",
    [
        {"schema": "templater-kit/2"},
        {"pieces": [{**MANIFEST["pieces"][0], "rect_mm": [1, 2, 3]}]},
        {"pieces": [{**MANIFEST["pieces"][0], "rect_mm": [1, 2, 3, 4, 5]}]},
        {"pieces": [{**MANIFEST["pieces"][0], "holes": [[1]]}]},
        {"pages": [{**MANIFEST["pages"][1], "clip_mm": [1, 2, 3]}]},
        {"pages": [{**MANIFEST["pages"][1], "origin_mm": "5"}]},
        {"pages": [{**MANIFEST["pages"][1], "scale": [1]}]},
        {"pages": 3},
        {"files": []},
        {"options": {**MANIFEST["options"], "cover": "half"}},
    ],
)
def test_a_manifest_that_cannot_be_understood(tmp_path: Path, changes: dict[str, Any]) -> None:
    with pytest.raises(UnreadableError):
        _read(tmp_path, changes)
