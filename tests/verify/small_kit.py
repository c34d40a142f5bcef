"""The smallest kit there can be, drawn by hand: one piece, one hole, a page of each kind."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path

import pikepdf

from templater.geometry import Point, Size
from templater.verify.check_pdf import check_kit_pdf
from templater.verify.model import Expected, Findings, PageRecord
from tests.verify import gull

POINTS = 72 / 25.4  # a point is 1/72 in (ISO 32000-1, 8.3.2.3)
TABLE = b"1 beginbfrange <20> <7e> <0020> endbfrange 1 beginbfchar <80> <2212> endbfchar"
PAPER = gull.PAPER
A4 = Size(210.0, 297.0)


def line(x0: float, y0: float, x1: float, y1: float) -> str:
    """A straight line, as content draws it."""
    return f"{x0} {y0} m {x1} {y1} l S"


def ring(x: float, y: float, radius: float) -> str:
    """A circle of four curves."""
    k = 0.5522847 * radius
    return (
        f"{x + radius} {y} m {x + radius} {y + k} {x + k} {y + radius} {x} {y + radius} c"
        f" {x - k} {y + radius} {x - radius} {y + k} {x - radius} {y} c"
        f" {x - radius} {y - k} {x - k} {y - radius} {x} {y - radius} c"
        f" {x + k} {y - radius} {x + radius} {y - k} {x + radius} {y} c h S"
    )


def words(*texts: str, x: float = 150.0, y: float = 30.0) -> Iterator[str]:
    """One under the other, too far apart to be a block."""
    for number, text in enumerate(texts):
        token = text.replace("−", "\\200")
        yield f"BT /F1 3 Tf 1 0 0 1 {x} {y - 6 * number} Tm ({token}) Tj ET"


def say_page(page: int, count: int = 4, revision: str = "K7M2Q4") -> Iterator[str]:
    """What every page says of itself."""
    yield from words(f"page {page} of {count}", f"rev {revision}", y=12.0)


def draw_ruler(*, across: bool) -> Iterator[str]:
    """100 mm on one side, 4 in on the other."""

    def turned(a: float, b: float, c: float, d: float) -> str:
        return line(a, b, c, d) if across else line(b, a, d, c)

    start, place = (60.0, 20.0) if across else (-5.0, 30.0)
    yield turned(start, place, start + 101.6, place)
    yield from (turned(start + 10 * each, place, start + 10 * each, place + 2.5) for each in range(11))
    yield from (
        turned(start + 12.7 * each, place - 2.5, start + 12.7 * each, place) for each in range(9)
    )


def draw_template(*, has_rulers: bool = True) -> Iterator[str]:
    """The sheet of the piece in its own coordinates: 200 x 100 mm, a hole at 100, 80, its level 70."""
    yield from ("0.35 w", line(0, 0, 200, 0), line(0, 100, 200, 100))
    yield from (line(0, 0, 0, 100), line(200, 0, 200, 100))
    yield from ("0.25 w", line(0, 70, 200, 70))
    if has_rulers:
        yield from (*draw_ruler(across=True), *draw_ruler(across=False))
    yield from ("0.7 w", line(90, 80, 110, 80), line(100, 70, 100, 90), ring(100, 80, 5))
    yield from ("0.18 w [6 1 1 1] 0 d", line(0, 50, 200, 50), line(100, 0, 100, 100))
    yield from (*words("A1"), *words("1", x=108.0, y=86.0))


def draw_cover() -> Iterator[str]:
    """The print test: two lines that end in small rings."""
    yield from say_page(1)
    yield from words(
        "The long ruler across must be 100 mm", "The long ruler up must be 120 mm", x=20.0, y=200.0
    )
    yield from ("0.35 w", line(20, 50, 120, 50), line(20, 50, 20, 170))
    yield from (ring(120, 50, 1), ring(20, 170, 1))


def draw_overview() -> Iterator[str]:
    """The wall of 2 x 2.5 m at 1:20 from 30, 40 on: the hole lies at 30 + 20, 40 + 74."""
    yield from (*say_page(2), "0.7 w", line(30, 40, 130, 40))
    yield from ("0.25 w", line(49, 114, 51, 114), line(50, 113, 50, 115))


def draw_checklist() -> Iterator[str]:
    """The one row of the one hole: 70 mm under the datum."""
    yield from (*say_page(4), *words("Gull", "1", "−70 mm", "400 mm", x=20.0, y=200.0))


def move(origin: Point, content: Iterator[str]) -> Iterator[str]:
    """Content from another origin."""
    yield from (f"q 1 0 0 1 {origin.x} {origin.y} cm", *content, "Q")


def draw_pages() -> list[list[str]]:
    """The kit's pages."""
    return [
        list(draw_cover()),
        list(draw_overview()),
        [*say_page(3), *move(Point(40.0, 50.0), draw_template())],
        list(draw_checklist()),
    ]


SIZES = (A4, PAPER, PAPER, A4)
COVER = PageRecord(1, "cover", A4, None, None, None, None, (1.0, 1.0))
RECORDS = (
    COVER,
    replace(COVER, page=2, kind="overview", paper=PAPER),
    gull.page(3),
    replace(COVER, page=4, kind="checklist"),
)


def write(
    folder: Path,
    pages: list[list[str]],
    sizes: tuple[Size, ...] = SIZES,
    scale: tuple[float, float] = (1.0, 1.0),
    producer: str = "templater",
) -> Path:
    """A file of these pages, drawn in mm, larger by the factors."""
    path = folder / "kit.pdf"
    across, up = (factor * POINTS for factor in scale)
    with pikepdf.new() as document:
        font = document.make_indirect(
            pikepdf.Dictionary(Subtype=pikepdf.Name.TrueType, ToUnicode=document.make_stream(TABLE))
        )
        for content, size in zip(pages, sizes, strict=True):
            page = document.add_blank_page(page_size=(size.width * across, size.height * up))
            page.obj["/Resources"] = pikepdf.Dictionary(Font=pikepdf.Dictionary(F1=font))
            told = "\n".join([f"{across} 0 0 {up} 0 0 cm", *content])
            page.Contents = document.make_stream(told.encode("latin-1"))
        document.docinfo["/Producer"] = producer
        document.save(path)
    return path


def check(
    path: Path, records: tuple[PageRecord, ...] = RECORDS, expected: Expected | None = None
) -> Findings:
    """What the proof says of the file, with the manifest and the plan as they are or others."""
    return check_kit_pdf(path, gull.record(*records), expected or gull.expected())


def scale_record(record: PageRecord, scale: tuple[float, float]) -> PageRecord:
    """What the manifest says of a page that is drawn so much larger."""
    (across, up), paper, origin = scale, record.paper, record.origin
    return replace(
        record,
        scale=scale,
        paper=Size(paper.width * across, paper.height * up),
        origin=origin and Point(origin.x * across, origin.y * up),
    )
