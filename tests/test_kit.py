"""Whole kits of the shipped layouts: their manifest, and the table that says the same."""

from __future__ import annotations

import csv
import re
from hashlib import sha256

import pytest

from tests.conftest import ON_EVERY_PAPER, KitMaker
from tests.kits import LAYOUTS, MadeKit

ORDER = ("cover", "overview", "template", "spacer", "checklist")


def test_the_manifest_lists_the_pages_of_the_pdf_in_order(kit: MadeKit) -> None:
    facts = [entry.facts for entry in kit.entries]
    assert list(dict.fromkeys(page["page"] for page in facts)) == list(range(1, len(kit.pages) + 1))
    for entry in kit.entries:
        assert entry.page_ink.size == pytest.approx(entry.facts["paper_mm"], abs=0.001)
    kinds = [ORDER.index(page["kind"]) for page in facts]
    assert kinds == sorted(kinds)
    assert set(kinds) - {3} == {0, 1, 2, 4}  # there are spacers only where a group has a gap
    for page in facts:
        is_sheet = page["kind"] == "template"
        assert all(
            (page[key] is not None) == is_sheet for key in ("piece", "sheet", "clip_mm", "origin_mm")
        )
        assert page["scale"] == ([1, 1] if is_sheet else None)


def test_the_pieces_sheets_come_in_the_order_of_the_layout(kit: MadeKit) -> None:
    slugs = list(dict.fromkeys(entry.facts["piece"] for entry in kit.sheets))
    # Pages that pieces share come last.
    shared = {entry.facts["piece"] for entry in kit.sheets if entry.is_shared}
    assert [slug for slug in slugs if slug not in shared] == [s for s in kit.pieces if s not in shared]
    assert set(slugs[len(slugs) - len(shared) :]) == shared
    assert set(slugs) == set(kit.pieces)


def test_the_manifest_hashes_every_other_file(kit: MadeKit) -> None:
    files = {
        path.relative_to(kit.folder).as_posix(): sha256(path.read_bytes()).hexdigest()
        for path in kit.folder.rglob("*")
        if path.is_file() and path.name != "manifest.json"
    }
    assert kit.manifest["files"] == files
    slugs = [piece["slug"] for piece in kit.manifest["pieces"]]
    assert set(files) == {
        "kit.pdf",
        "overview.svg",
        "overview.pdf",
        *({"overview.png"} - set(kit.manifest["missing"])),
        "hooks.csv",
        "layout.yaml",
        *(f"templates/{slug}.svg" for slug in slugs),
    }
    assert (kit.folder / "layout.yaml").read_bytes() == (
        LAYOUTS / f"{kit.folder.name}.yaml"
    ).read_bytes()


def test_the_table_of_hooks_says_what_the_manifest_says(kit: MadeKit) -> None:
    with (kit.folder / "hooks.csv").open(encoding="utf-8", newline="") as stream:
        rows = list(csv.reader(stream))
    assert rows[0] == ["piece", "hole", "x_mm", "y_mm", "hang_x_mm", "hang_y_mm", "drop_mm", "load_n"]
    expected = []
    for piece in kit.manifest["pieces"]:
        top = piece["rect_mm"][3]
        for number, (hole, hang) in enumerate(zip(piece["holes"], piece["hang_points"], strict=True), 1):
            lengths = (f"{length:.3f}" for length in (*hole, *hang, top - hang[1]))
            expected.append([piece["slug"], str(number), *lengths])
    assert [row[:7] for row in rows[1:]] == expected
    assert all(re.fullmatch(r"|\d+\.\d{3}", row[7]) for row in rows[1:])


def test_the_revision_differs_with_paper_and_layout(shipped_kit: KitMaker) -> None:
    names = [
        shipped_kit(stem, paper).manifest["revision"]
        for stem in ON_EVERY_PAPER
        for paper in ("a4", "letter")
    ]
    assert len(set(names)) == len(names)
    # Letters and digits that nobody misreads: no I, O, S, Z, 0 and 1.
    assert all(re.fullmatch("[A-HJ-NP-RT-Y2-9]{6}", name) for name in names)
