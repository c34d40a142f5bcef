"""Plane transformations as PDF and SVG write them: six numbers that act on row vectors.

ISO 32000-1, 8.3.4, and SVG 1.1, 7.4, share the form: x' = a x + c y + e, y' = b x + d y + f.
"""

from __future__ import annotations

from typing import TypeAlias

from templater.geometry import Point

Matrix: TypeAlias = tuple[float, ...]

PLAIN: Matrix = (1.0, 0.0, 0.0, 1.0, 0.0, 0.0)
"""The one that changes nothing."""


def multiply(first: Matrix, then: Matrix) -> Matrix:
    """The one transformation that does both in turn. Raises ValueError unless both have six numbers."""
    a, b, c, d, e, f = first
    g, h, i, j, k, m = then
    return (
        a * g + b * i,
        a * h + b * j,
        c * g + d * i,
        c * h + d * j,
        e * g + f * i + k,
        e * h + f * j + m,
    )


def apply(matrix: Matrix, x: float, y: float) -> Point:
    """Where a point comes to lie."""
    a, b, c, d, e, f = matrix
    return Point(a * x + c * y + e, b * x + d * y + f)


def stretch(matrix: Matrix) -> float:
    """How much lengths grow: the square root of how much areas do."""
    a, b, c, d, _, _ = matrix
    return float(abs(a * d - b * c) ** 0.5)
