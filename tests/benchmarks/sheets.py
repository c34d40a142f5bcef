"""How many sheets common frames take, beside what no cover can do without.

Run by hand: ``python -m tests.benchmarks.sheets``.

Two bounds hold for every cover with laps of full width, in courses or not, wherever its holes are.

Area: leave a strip as wide as the lap off the right and the lower side of the frame. Of the rest,
let each sheet have what is seen of it when all are taped. Where that ends at a neighbour on the
right, the sheet shows a lap more; where it ends at the strip, the sheet shows the strip, a lap more,
too; the same below. So no sheet has more than (its reach across - lap) x (its reach down - lap).

Points: set ceil(width / r) points in a row along the frame, from edge to edge, where r is the longer
reach of a page, and as many rows as ceil(height / r). Neighbours are further apart than r, so no
sheet shows two of these points.
"""

from __future__ import annotations

from math import ceil

from templater.geometry import Box, Point
from templater.layout.model import Margins
from templater.paper import parse_paper
from templater.printing.model import PrintSetup
from templater.printing.tile import tile_template

FRAMES = (
    *((8, 10), (11, 14), (12, 16), (16, 20), (18, 24), (20, 24), (20, 30), (24, 30)),
    *((24, 36), (27, 40), (30, 40), (36, 48), (40, 60)),
)
"""Common frames upright, in inches."""

PAPERS = ("letter", "a4")

_MARGIN_MM = 6.35
_LAP_MM = 10.0
_ROUNDING = 1e-9


def count_sheets(width_in: float, height_in: float, paper: str) -> int:
    """The sheets of a frame with one hole on the centre line, 2 1/4 in below the top."""
    margins = Margins(_MARGIN_MM, _MARGIN_MM, _MARGIN_MM, _MARGIN_MM)
    setup = PrintSetup(parse_paper(paper), margins, _LAP_MM)
    width, height = width_in * 25.4, height_in * 25.4
    hole = Point(width / 2, height - 57.15)
    return len(tile_template(Box(0, 0, width, height), [hole], [], setup).tiles)


def bound_by_area(width_in: float, height_in: float, paper: str) -> int:
    """Fewer sheets than this have not the area."""
    short, long = _reaches(paper)
    area = (width_in * 25.4 - _LAP_MM) * (height_in * 25.4 - _LAP_MM)
    return ceil(area / ((short - _LAP_MM) * (long - _LAP_MM)) - _ROUNDING)


def bound_by_points(width_in: float, height_in: float, paper: str) -> int:
    """Fewer sheets than this cannot show points that are far apart."""
    _, long = _reaches(paper)
    return ceil(width_in * 25.4 / long - _ROUNDING) * ceil(height_in * 25.4 / long - _ROUNDING)


def _reaches(paper: str) -> tuple[float, float]:
    """What a printer reaches on a page, the shorter side first, mm."""
    short, long = parse_paper(paper).size
    return short - 2 * _MARGIN_MM, long - 2 * _MARGIN_MM


def print_table() -> None:
    """Print every case, then the sums."""
    print("frame in  paper   sheets  area  points  gap")  # noqa: T201
    sums = [0, 0, 0, 0]
    for paper in PAPERS:
        for width, height in FRAMES:
            found = count_sheets(width, height, paper)
            area = bound_by_area(width, height, paper)
            points = bound_by_points(width, height, paper)
            row = [found, area, points, found - max(area, points)]
            sums = [total + number for total, number in zip(sums, row, strict=True)]
            print(f"{width:>3} x {height:<3} {paper:<7}", "{:>6}{:>6}{:>8}{:>5}".format(*row))  # noqa: T201
    print(f"{'all':<17}", "{:>6}{:>6}{:>8}{:>5}".format(*sums))  # noqa: T201


if __name__ == "__main__":
    print_table()
