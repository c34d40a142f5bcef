"""Pictures drawn by hand: how large they are, and whether the arms of a cross are dark."""

from __future__ import annotations

from pathlib import Path

import pytest
from PIL import Image, ImageDraw

from templater.geometry import Point, Size
from templater.verify.check_picture import check_picture
from templater.verify.model import UnreadableError

NOT_THERE = "gull hole 1 is not marked at its place"
SIZE = Size(60.0, 40.0)
DPI = 254.0  # ten dots a millimetre


def _picture(
    tmp_path: Path,
    *lines: tuple[float, float, float, float],
    size: Size = SIZE,
    dpi: float = DPI,
) -> list[str]:
    """Lines of 0.2 mm on white, mm from the upper left corner, as a picture of 60 x 40 mm."""
    image = Image.new("L", (round(size.width * DPI / 25.4), round(size.height * DPI / 25.4)), 255)
    draw = ImageDraw.Draw(image)
    for x0, y0, x1, y1 in lines:
        ends = tuple(round(side * DPI / 25.4) for side in (x0, y0, x1, y1))
        draw.line(ends, 0, 2)
    path = tmp_path / "overview.png"
    image.save(path, dpi=(dpi, dpi))
    return list(check_picture(path, Size(60.0, 40.0), {"gull hole 1": Point(20.0, 30.0)}))


LEVEL, UPRIGHT = (19.0, 10.0, 21.0, 10.0), (20.0, 9.0, 20.0, 11.0)


@pytest.mark.parametrize(
    ("lines", "told"),
    [
        ([LEVEL, UPRIGHT], []),
        ([], [NOT_THERE]),
        ([LEVEL], [NOT_THERE]),
        ([UPRIGHT], [NOT_THERE]),
        ([(19.4, 10.0, 21.0, 10.0), UPRIGHT], [NOT_THERE]),  # an arm that is too short
        ([(19.0, 10.0, 20.6, 10.0), UPRIGHT], [NOT_THERE]),
        ([LEVEL, (20.0, 9.4, 20.0, 11.0)], [NOT_THERE]),
        ([LEVEL, (20.0, 9.0, 20.0, 10.6)], [NOT_THERE]),
        ([(19.0, 10.3, 21.0, 10.3), UPRIGHT], [NOT_THERE]),  # three dots off
        ([(19.0, 9.7, 21.0, 9.7), UPRIGHT], [NOT_THERE]),
        ([LEVEL, (20.3, 9.0, 20.3, 11.0)], [NOT_THERE]),
        ([LEVEL, (19.7, 9.0, 19.7, 11.0)], [NOT_THERE]),
        ([(19.0, 30.0, 21.0, 30.0), (20.0, 29.0, 20.0, 31.0)], [NOT_THERE]),  # upside down
    ],
)
def test_the_cross_of_a_hole_in_a_picture(
    tmp_path: Path, lines: list[tuple[float, float, float, float]], told: list[str]
) -> None:
    assert _picture(tmp_path, *lines) == told


@pytest.mark.parametrize(
    ("size", "dpi", "told"),
    [
        (Size(60.1, 40.1), DPI, []),  # a dot more
        (Size(60.2, 40.0), DPI, ["it is 60.2 × 40.0 mm large, not 60.0 × 40.0 mm"]),
        (Size(60.0, 39.8), DPI, ["it is 60.0 × 39.8 mm large, not 60.0 × 40.0 mm"]),
        (Size(60.0, 40.0), 99.0, ["it does not tell its physical size, or is too coarse"]),
        (Size(60.0, 40.0), 127.0, ["it is 120.0 × 80.0 mm large, not 60.0 × 40.0 mm"]),
    ],
)
def test_how_large_a_picture_is(tmp_path: Path, size: Size, dpi: float, told: list[str]) -> None:
    assert _picture(tmp_path, LEVEL, UPRIGHT, size=size, dpi=dpi)[:1] == told


@pytest.mark.parametrize("is_level", [True, False])
@pytest.mark.parametrize(
    ("dots", "told"), [(-2, [NOT_THERE]), (-1, []), (0, []), (1, []), (2, [NOT_THERE])]
)
def test_a_line_may_be_a_dot_off(tmp_path: Path, is_level: bool, dots: int, told: list[str]) -> None:
    """Lines as wide as a dot, which is 0.1 mm, and no longer than the arms; far to the right."""
    image = Image.new("L", (600, 400), 255)
    draw = ImageDraw.Draw(image)
    across, up = (0, dots) if is_level else (dots, 0)
    draw.line((490, 100 + up, 510, 100 + up), 150)
    draw.line((500 + across, 90, 500 + across, 110), 150)
    path = tmp_path / "overview.png"
    image.save(path, dpi=(DPI, DPI))
    assert list(check_picture(path, SIZE, {"gull hole 1": Point(50.05, 29.95)})) == told
    image.point(lambda dot: 255 if dot == 255 else 170).save(path, dpi=(DPI, DPI))  # too pale
    assert list(check_picture(path, SIZE, {"gull hole 1": Point(50.05, 29.95)})) == [NOT_THERE]


def test_a_cross_at_the_corner_of_a_picture(tmp_path: Path) -> None:
    path = tmp_path / "overview.png"
    Image.new("L", (600, 400), 0).save(path, dpi=(DPI, DPI))
    assert list(
        check_picture(path, Size(60.0, 40.0), {"one": Point(59.9, 0.0), "two": Point(0.0, 40.0)})
    ) == [
        "one is not marked at its place",
        "two is not marked at its place",
    ]


def test_what_is_no_picture(tmp_path: Path) -> None:
    path = tmp_path / "overview.png"
    path.write_text("none", "utf-8")
    with pytest.raises(UnreadableError, match="it is no picture"):
        list(check_picture(path, Size(60.0, 40.0), {}))
