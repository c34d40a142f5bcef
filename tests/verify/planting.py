"""Kits with one thing wrong: copies of a sound kit, changed by libraries that did not write it."""

from __future__ import annotations

import json
import shutil
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from hashlib import sha256
from pathlib import Path
from typing import Any

import pikepdf

POINTS_PER_MM = 72 / 25.4  # a point is 1/72 in (ISO 32000-1, 8.3.2.3)

Act = Callable[[list[Any], str], tuple[list[Any], str]]
"""What becomes of one instruction of a page: its operands and its operator."""

DRAWS_NOTHING = pikepdf.ContentStreamInstruction([], pikepdf.Operator("n"))
"""Ends a path that is then not drawn."""


class Copy:
    """A copy of a kit to do damage to; what the manifest says of the files is made to fit again."""

    def __init__(self, kit: Path, place: Path) -> None:
        self.folder = place / kit.name
        shutil.copytree(kit, self.folder)

    @property
    def manifest(self) -> dict[str, Any]:
        """The manifest as JSON tells it."""
        content: dict[str, Any] = json.loads((self.folder / "manifest.json").read_text("utf-8"))
        return content

    def renew_hashes(self) -> None:
        """Make the manifest tell the files as they are now."""
        content = self.manifest
        for name in content["files"]:
            content["files"][name] = sha256((self.folder / name).read_bytes()).hexdigest()
        self.write_manifest(content)

    def write_manifest(self, content: dict[str, Any]) -> None:
        """Put another manifest in the place of the one there is."""
        (self.folder / "manifest.json").write_text(json.dumps(content), encoding="utf-8")

    def change_text(self, name: str, change: Callable[[str], str]) -> None:
        """Change a file of text, which must make a difference."""
        path = self.folder / name
        before = path.read_text("utf-8")
        after = change(before)
        assert after != before
        path.write_text(after, encoding="utf-8")
        self.renew_hashes()

    @contextmanager
    def opened_pdf(self, name: str = "kit.pdf") -> Iterator[pikepdf.Pdf]:
        """A PDF of the kit, saved when it has been changed."""
        path = self.folder / name
        with pikepdf.open(path, allow_overwriting_input=True) as document:
            yield document
            document.save(path)
        self.renew_hashes()

    def transform(self, page: int, *matrix: float, name: str = "kit.pdf") -> None:
        """Move all that is drawn on a page, counted from 1, by a matrix in mm."""
        a, b, c, d, e, f = matrix
        numbers = (a, b, c, d, e * POINTS_PER_MM, f * POINTS_PER_MM)
        with self.opened_pdf(name) as document:
            sheet = document.pages[page - 1]
            content = sheet.Contents.read_bytes()
            before = "q " + " ".join(f"{number:.6f}" for number in numbers) + " cm\n"
            sheet.Contents = document.make_stream(before.encode() + content + b"\nQ")

    @contextmanager
    def opened_page(self, page: int, name: str = "kit.pdf") -> Iterator[tuple[pikepdf.Page, list[Any]]]:
        """A page, counted from 1, and the list of its instructions, which must come to differ."""
        with self.opened_pdf(name) as document:
            sheet = document.pages[page - 1]
            instructions = list(pikepdf.parse_content_stream(sheet))
            before = pikepdf.unparse_content_stream(instructions)
            yield sheet, instructions
            after = pikepdf.unparse_content_stream(instructions)
            assert after != before
            sheet.Contents = document.make_stream(after)

    def rewrite(self, page: int, act: Act) -> None:
        """Change the instructions of a page one by one, which must make a difference."""
        with self.opened_page(page) as (_, instructions):
            for at, each in enumerate(instructions):
                operands, operator = act(list(each.operands), str(each.operator))
                instructions[at] = pikepdf.ContentStreamInstruction(operands, pikepdf.Operator(operator))

    def sheets(self, *, hole: bool) -> list[dict[str, Any]]:
        """The manifest's sheets that show a hole, or those that show none."""
        content = self.manifest
        pieces = {piece["slug"]: piece for piece in content["pieces"]}
        found = []
        for entry in content["pages"]:
            if entry["piece"] is not None:
                x0, y0, x1, y1 = entry["clip_mm"]
                left, low, _, _ = pieces[entry["piece"]]["rect_mm"]
                seen = [
                    (x, y)
                    for x, y in pieces[entry["piece"]]["holes"]
                    if x0 < x - left < x1 and y0 < y - low < y1
                ]
                if bool(seen) == hole:
                    found.append(entry)
        return found


def is_level(start: list[float], end: list[float], length_mm: float) -> bool:
    """Whether a line is level and so long; its ends in points."""
    is_long = abs(abs(end[0] - start[0]) - length_mm * POINTS_PER_MM) < 0.01
    return is_long and abs(end[1] - start[1]) < 0.001


def list_half_diamonds(instructions: list[Any]) -> list[int]:
    """Where each half of a join mark begins: two straight lines in one path."""
    names = [str(each.operator) for each in instructions]
    return [at for at in range(len(names)) if names[at : at + 4] == ["m", "l", "l", "S"]]
