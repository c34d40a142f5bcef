"""Any layout gives a clear error, or a kit whose files agree with each other."""

from __future__ import annotations

import csv
from dataclasses import replace
from math import dist
from pathlib import Path
from tempfile import TemporaryDirectory

from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from templater.errors import LayoutError
from templater.geometry import Point, Size
from templater.layout.model import Layout
from tests.kits import make_kit
from tests.strategies import layouts, write_layout

NEAR = 0.01
"""How far ink may be from where it belongs, mm."""
RING_MM = 5.0


@given(
    layout=layouts(most_blocks=2, largest_mm=400),
    paper=st.sampled_from(["a4", "letter"]),
    wall=st.sampled_from([1.0, 1.0, 1.0, 0.8]),
)
@settings(max_examples=15, deadline=None, suppress_health_check=[HealthCheck.too_slow])
def test_any_layout_gives_a_clear_error_or_a_kit_that_agrees_with_itself(
    layout: Layout, paper: str, wall: float
) -> None:
    size = Size(layout.wall.size.width * wall, layout.wall.size.height)
    layout = replace(layout, wall=replace(layout.wall, size=size))
    with TemporaryDirectory() as place:
        path = Path(place) / "hall.yaml"
        path.write_text(write_layout(layout), encoding="utf-8")
        try:
            kit = make_kit(path, Path(place) / "kit", paper)
        except LayoutError as error:
            unclear = [fault for fault in error.faults if not (fault.place and fault.hint)]
            assert (error.exit_code, unclear) == (3, [])  # noqa: PT017  # an error is one of two ways
            return
        with (kit.folder / "hooks.csv").open(encoding="utf-8", newline="") as stream:
            rows = list(csv.DictReader(stream))
        for slug, piece in kit.pieces.items():
            holes = kit.holes(slug)
            x0, y0, *_ = piece["rect_mm"]
            by_csv = [
                Point(float(row["x_mm"]) - x0, float(row["y_mm"]) - y0)
                for row in rows
                if row["piece"] == slug
            ]
            on_sheets = [
                ring.centre.moved(-sheet.origin.x, -sheet.origin.y)
                for sheet in kit.sheets
                if sheet.facts["piece"] == slug
                for ring in sheet.ink.rings
                if abs(ring.radius_mm - RING_MM) < NEAR
            ]
            in_svg = [ring.centre for ring in kit.template(slug).ink.rings]
            assert len(by_csv) == len(in_svg) == len(holes)
            for others in (by_csv, on_sheets, in_svg):
                assert all(any(dist(hole, other) < NEAR for other in others) for hole in holes)
                assert all(any(dist(hole, other) < NEAR for hole in holes) for other in others)
