"""The floor of a kit's cost: the same files with the same libraries, and nothing else.

Reads a tally (JSON: for each page its size in points and how many lines and words stand on it; for
each SVG how many lines and letters) and writes a PDF with an embedded font and a bookmark a page,
the SVGs, and one PNG, by the libraries' ordinary calls. No layout, no plan, no geometry.
"""

from __future__ import annotations

import json
import sys
from pathlib import Path
from typing import Any

import cairosvg
import font_source_sans_pro
import svgwrite
from fontTools.pens.svgPathPen import SVGPathPen
from fontTools.ttLib import TTFont as FontFile
from reportlab.pdfbase import pdfmetrics
from reportlab.pdfbase.ttfonts import TTFont
from reportlab.pdfgen.canvas import Canvas

FONT = Path(font_source_sans_pro.font_directory) / "SourceSansPro-Regular.ttf"
WORDS = "from the wall's left end: 75 in (1905 mm)"


def main(tally: Path, folder: Path) -> None:
    """Write everything the tally asks for."""
    counts = json.loads(tally.read_text("utf-8"))
    folder.mkdir(parents=True, exist_ok=True)
    pdfmetrics.registerFont(TTFont("Plain", str(FONT)))
    write_pdf(counts["pages"], folder / "kit.pdf")
    letters = read_letters()
    for number, (lines, uses) in enumerate(counts["drawings"]):
        write_svg(folder / f"{number}.svg", lines, uses, letters)
    cairosvg.svg2png(url=str(folder / "0.svg"), write_to=str(folder / "overview.png"), dpi=96, scale=1.5)


def write_pdf(pages: list[list[float]], path: Path) -> None:
    """As many pages, lines and words as asked for."""
    canvas = Canvas(str(path), invariant=1)
    for number, (width, height, lines, words) in enumerate(pages):
        canvas.setPageSize((width, height))
        for line in range(int(lines)):
            canvas.line(20 + line % 300, 20, 20 + line % 300, 300)
        canvas.setFont("Plain", 10)
        for word in range(int(words)):
            canvas.drawString(20, 20 + word * 7 % 700, WORDS)
        canvas.bookmarkPage(f"page{number}")
        canvas.addOutlineEntry(f"page {number}", f"page{number}", 0)
        canvas.showPage()
    canvas.save()


def read_letters() -> dict[str, str]:
    """The outline of each letter of the words."""
    font = FontFile(FONT, lazy=True)
    glyphs, names = font.getGlyphSet(), font.getBestCmap()
    letters = {}
    for letter in sorted(set(WORDS) - {" "}):
        pen = SVGPathPen(glyphs)
        glyphs[names[ord(letter)]].draw(pen)
        letters[letter] = pen.getCommands()
    return letters


def write_svg(path: Path, lines: int, uses: int, letters: dict[str, str]) -> None:
    """As many lines and letters as asked for, each letter's outline once."""
    drawing: Any = svgwrite.Drawing(
        str(path), size=("400mm", "500mm"), viewBox="0 0 400 500", debug=False
    )
    for letter, outline in letters.items():
        drawing.defs.add(drawing.path(d=outline, id=f"g{ord(letter)}"))
    for line in range(lines):
        drawing.add(drawing.line((line, 0), (line, 500), stroke="black", stroke_width=0.25))
    order = list(letters)
    for use in range(uses):
        name = f"#g{ord(order[use % len(order)])}"
        drawing.add(drawing.use(name, insert=(use % 400, use % 500)))
    drawing.save()


if __name__ == "__main__":
    main(Path(sys.argv[1]), Path(sys.argv[2]))
