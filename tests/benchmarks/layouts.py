"""Layouts of any size for the benchmarks: a long wall of mixed frames in columns of five."""

from __future__ import annotations

_SIZES = ((406, 508), (279, 356), (508, 610), (203, 254), (305, 406))
_HANGS = (
    "{by: wire, drop: 55 mm, rise: 12 mm}",
    "{by: d-rings, drop: 70 mm, apart: 150 mm}",
    "{by: sawtooth, drop: 16 mm}",
    "{by: nail, drop: 20 mm}",
)
_PITCH_MM = 600
_ROW_MM = 700


def layout_text(pieces: int) -> str:
    """A layout with so many pieces, all with holes, none near another."""
    rows = 5
    columns = -(-pieces // rows)
    lines = [
        "title: Lighthouse store room",
        "units: mm",
        "paper: a4",
        f"wall: {{width: {columns * _PITCH_MM + _PITCH_MM} mm, height: {rows * _ROW_MM + _ROW_MM} mm}}",
        "pieces:",
    ]
    for number in range(pieces):
        column, row = divmod(number, rows)
        width, height = _SIZES[number % len(_SIZES)]
        place = f"{{left: {column * _PITCH_MM + 50} mm, bottom: {row * _ROW_MM + 200} mm}}"
        lines.append(
            f"  - {{name: Chart {number + 1}, size: {width} x {height} mm, weight: 2 kg,"
            f" hang: {_HANGS[number % len(_HANGS)]}, place: {place}}}"
        )
    return "\n".join(lines) + "\n"
