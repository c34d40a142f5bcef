"""The ink of holes as two engines see it that did not write it: pdfium and cairo."""

from __future__ import annotations

import io
import re
from math import dist
from typing import Any

import numpy as np
import pypdfium2
import pytest
from PIL import Image

from templater.geometry import Point
from tests.conftest import KitMaker
from tests.kits import MadeKit

INCH = 25.4
DOTS_PER_MM = 200 / INCH


@pytest.mark.parametrize(
    ("stem", "paper"),
    [
        ("stair-hall", "a4"),
        ("stair-hall", "letter"),
        ("gallery-landing", "letter"),
        ("lamp-room-corridor", "a4"),
    ],
)
def test_two_engines_put_the_ink_of_every_hole_where_the_plan_has_it(
    shipped_kit: KitMaker, stem: str, paper: str
) -> None:
    kit = shipped_kit(stem, paper)
    document = pypdfium2.PdfDocument(kit.folder / "kit.pdf")
    for sheet in kit.sheets:
        slug = sheet.facts["piece"]
        for hole in kit.holes(slug):
            if not sheet.clip.has(hole):
                continue
            by_pdf = _ink_of_page(document[sheet.facts["page"] - 1], hole.moved(*sheet.origin))
            by_svg = _ink_of_template(kit, slug, hole)
            # Half a pixel at 200 dots an inch, each against the plan and against the other.
            assert max(map(abs, by_pdf)) < 0.5, (slug, by_pdf)
            assert max(map(abs, by_svg)) < 0.5, (slug, by_svg)
            assert dist(by_pdf, by_svg) < 0.5
    document.close()


WINDOW_MM = 16.0


def _ink_of_page(page: Any, at: Point) -> tuple[float, float]:
    """How far the cross on a PDF page is from where it belongs, pixels right and down."""
    width, height = (side * INCH / 72 for side in page.get_size())
    picture = page.render(scale=200 / 72, grayscale=True)
    darkness = 255.0 - np.asarray(picture.to_pil(), dtype=float)
    # The engine makes whole pixels of the page's size, so the scale is taken from its picture.
    across, down = darkness.shape[1] / width, darkness.shape[0] / height
    assert (across, down) == pytest.approx((DOTS_PER_MM, DOTS_PER_MM), rel=1e-3)
    return _off_centre(darkness, at.x * across, (height - at.y) * down)


def _ink_of_template(kit: MadeKit, slug: str, hole: Point) -> tuple[float, float]:
    """The same for the SVG template: a window round the hole, without the words, which take time."""
    import cairosvg

    text = (kit.folder / "templates" / f"{slug}.svg").read_text("utf-8")
    text = re.sub(r"<g aria-label.*?</g>", "", text)
    _, y0, _, y1 = kit.pieces[slug]["rect_mm"]
    left, upper = hole.x - WINDOW_MM, (y1 - y0 - hole.y) - WINDOW_MM
    side = 2 * WINDOW_MM
    text = re.sub(r'viewBox="[^"]*"', f'viewBox="{left} {upper} {side} {side}"', text, count=1)
    text = re.sub(r'(\s(?:width|height))="[\d.]+mm"', rf'\1="{side}mm"', text, count=2)
    png = cairosvg.svg2png(bytestring=text.encode(), dpi=96, scale=200 / 96, background_color="white")
    darkness = 255.0 - np.asarray(Image.open(io.BytesIO(png)).convert("L"), dtype=float)
    middle = WINDOW_MM * DOTS_PER_MM
    assert darkness.shape == (pytest.approx(2 * middle, abs=1), pytest.approx(2 * middle, abs=1))
    return _off_centre(darkness, middle, middle)


def _off_centre(darkness: Any, x: float, y: float) -> tuple[float, float]:
    """How far a cross's arms lie from the pixel (x, y), by the weight of their ink inside the ring."""
    near, far = 1.0 * DOTS_PER_MM, 4.0 * DOTS_PER_MM
    columns = np.arange(round(x - near), round(x + near) + 1)
    rows = np.arange(round(y - near), round(y + near) + 1)
    above = darkness[round(y - far) : round(y - near), columns[0] : columns[-1] + 1].sum(axis=0)
    left = darkness[rows[0] : rows[-1] + 1, round(x - far) : round(x - near)].sum(axis=1)
    assert above.sum() > 0
    assert left.sum() > 0
    centre_x = float((above * (columns + 0.5)).sum() / above.sum())
    centre_y = float((left * (rows + 0.5)).sum() / left.sum())
    return centre_x - x, centre_y - y
