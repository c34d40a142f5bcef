"""Covers and shared pages from the command line to the files, which are proved as they are written."""

from __future__ import annotations

import json
import re
from math import dist
from pathlib import Path
from typing import Any

import pikepdf
import pytest

from templater.geometry import Point
from templater.pipeline import PrintChoices, plan_kit, plan_wall
from tests.kits import MadeKit
from tests.running import Run

MIRROR = """\
title: Keeper's cottage, lamp room
units: in
wall: {width: 12 ft, height: 9 ft}
pieces:
  - {name: Great mirror, size: 40 x 60, hang: {by: wire, drop: 4, rise: 1/2}, place: {centre: 60}}
"""
CARDS = """\
title: Keeper's cottage, kitchen
units: in
wall: {width: 20 ft, height: 9 ft}
pieces:
  - {name: Knot card 1, size: 4 x 6, hang: {by: sawtooth, drop: 1/2}}
  - {name: Knot card 2, size: 4 x 6, hang: {by: sawtooth, drop: 1/2}}
  - {name: Great chart, size: 20 x 30, hang: {by: wire, drop: 3}, place: {centre: 150}}
groups:
  - {name: knots, pieces: [Knot card 1, Knot card 2], arrange: row, gap: 2, centre: 60}
"""


def _read(folder: Path) -> dict[str, Any]:
    content: dict[str, Any] = json.loads((folder / "manifest.json").read_text("utf-8"))
    return content


def _sheets(folder: Path) -> list[dict[str, Any]]:
    return [page for page in _read(folder)["pages"] if page["kind"] == "template"]


def test_each_cover_is_proved_and_has_its_own_revision(
    run: Run, no_picture: str, tmp_path: Path
) -> None:
    (tmp_path / "mirror.yaml").write_text(MIRROR, "utf-8")
    counts, revisions = {}, set()
    for cover in ("full", "band", "card"):
        code, _, err = run("kit", "mirror.yaml", "--out", cover, "--cover", cover)
        assert (code, err) == (0, no_picture)
        manifest = _read(tmp_path / cover)
        assert manifest["options"]["cover"] == cover
        revisions.add(manifest["revision"])
        counts[cover] = len(_sheets(tmp_path / cover))
        names = [sheet["sheet"] for sheet in _sheets(tmp_path / cover)]
        assert len(set(names)) == len(names)
    # Worked in the tests of the cut: a band of 5 and a corner; one sheet with the hole.
    assert (counts["band"], counts["card"]) == (6, 1)
    assert counts["full"] > 30
    assert len(revisions) == 3
    assert run("proof", "band")[0] == 0


@pytest.mark.usefixtures("no_picture")
def test_the_svg_template_shows_all_of_a_piece_whatever_the_cover(run: Run, tmp_path: Path) -> None:
    (tmp_path / "mirror.yaml").write_text(MIRROR, "utf-8")
    run("kit", "mirror.yaml", "--out", "kit", "--cover", "card")
    reading = MadeKit(tmp_path / "kit").template("great-mirror")
    corners = [Point(0, 0), Point(1016, 0), Point(1016, 1524), Point(0, 1524)]
    ends = [end for stroke in reading.ink.strokes for end in (stroke.start, stroke.end)]
    assert all(any(dist(corner, end) < 0.01 for end in ends) for corner in corners)
    assert "left out" not in reading.ink.text
    assert "TAPED UP" in reading.ink.text


def test_check_counts_the_sheets_of_every_cover(run: Run, tmp_path: Path) -> None:
    (tmp_path / "cards.yaml").write_text(CARDS, "utf-8")
    _, out, _ = run("check", "cards.yaml")
    table = out[out.index("sheets of letter") :]
    for number in (1, 2):
        assert re.search(rf"Knot card {number} +1 +1 +1 +shares S1", table)
    ((whole, band, card),) = re.findall(r"Great chart +(\d+) +(\d+) +(\d+)", table)
    assert int(whole) > int(band) > int(card) == 1
    # Two cards share one sheet.
    assert re.search(rf"all pieces +{int(whole) + 1} +{int(band) + 1} +2", table)


@pytest.mark.usefixtures("no_picture")
def test_pieces_that_share_a_page_have_an_entry_each_and_files_of_their_own(
    run: Run, tmp_path: Path
) -> None:
    (tmp_path / "cards.yaml").write_text(CARDS, "utf-8")
    assert run("kit", "cards.yaml", "--out", "kit", "--split")[0] == 0
    kit = MadeKit(tmp_path / "kit")
    one, other = (entry for entry in kit.sheets if entry.is_shared)
    assert [one.facts["piece"], other.facts["piece"]] == ["knot-card-1", "knot-card-2"]
    assert one.facts["page"] == other.facts["page"]
    for entry in (one, other):
        (hole,) = kit.holes(entry.facts["piece"])
        (ring,) = entry.ink.rings
        assert dist(ring.centre, hole.moved(*entry.origin)) < 0.01
        with pikepdf.open(tmp_path / "kit" / "templates" / f"{entry.facts['piece']}.pdf") as alone:
            assert len(alone.pages) == 1
    assert run("proof", "kit")[0] == 0


@pytest.mark.usefixtures("no_picture")
def test_spacers_come_after_the_templates(run: Run, tmp_path: Path) -> None:
    (tmp_path / "cards.yaml").write_text(CARDS, "utf-8")
    run("kit", "cards.yaml", "--out", "kit")
    kit = MadeKit(tmp_path / "kit")
    kinds = list(dict.fromkeys(page["kind"] for page in kit.manifest["pages"]))
    assert kinds == ["cover", "overview", "template", "spacer", "checklist"]
    (spacer,) = (entry for entry in kit.entries if entry.facts["kind"] == "spacer")
    # 2 in is 50.8 mm.
    heights = [box_height(outline.points) for outline in spacer.ink.outlines if outline.closed]
    assert [height for height in heights if height > 10] == [pytest.approx(50.8, abs=0.001)] * 2


PAIR = """\
title: Keeper's cottage, watch room
units: in
wall: {width: 20 ft, height: 9 ft}
pieces:
  - {name: Fog signal, size: 20 x 30, hang: {by: wire, drop: 3}}
  - {name: Storm cone, size: 20 x 30, hang: {by: d-rings, drop: 3, apart: 16}}
groups:
  - {name: pair, pieces: [Fog signal, Storm cone], arrange: row, gap: 2, centre: 100}
"""


@pytest.mark.usefixtures("no_picture")
def test_cards_have_no_spacers_for_their_sides_are_not_on_paper(run: Run, tmp_path: Path) -> None:
    (tmp_path / "pair.yaml").write_text(PAIR, "utf-8")
    assert run("kit", "pair.yaml", "--out", "kit", "--cover", "card")[0] == 0  # it was proved
    pages = _read(tmp_path / "kit")["pages"]
    assert {page["kind"] for page in pages} == {"cover", "overview", "template", "checklist"}
    with pikepdf.open(tmp_path / "kit" / "kit.pdf") as document:
        assert len(document.pages) == max(page["page"] for page in pages)


def box_height(points: tuple[Point, ...]) -> float:
    return max(point.y for point in points) - min(point.y for point in points)


SAIL = """\
title: Sail loft
units: mm
paper: a5
margin: 5 mm
lap: 0 mm
wall: {width: 9000, height: 5000}
pieces:
  - {name: Sail, size: 2898 x 4800, place: {bottom: 100}}
"""


@pytest.mark.usefixtures("no_picture")
def test_too_many_sheets_are_refused_with_their_number_and_nothing_is_written(
    run: Run, tmp_path: Path
) -> None:
    (tmp_path / "sail.yaml").write_text(SAIL, "utf-8")
    # A5 shows 138 x 200 mm: 21 across, 24 down, and the area of 2898 x 4800 mm allows no fewer.
    for allowed in ((), ("--allow-sheets", "503")):
        code, out, err = run("kit", "sail.yaml", "--out", "kit", *allowed)
        assert (code, out) == (3, "")
        first, second = err.splitlines()
        assert first == "sail.yaml:8:5: 'Sail' needs 504 sheets of a5"
        assert second.endswith("or let it through: --allow-sheets 504")
        assert [path.name for path in tmp_path.iterdir()] == ["sail.yaml"]
    assert run("kit", "sail.yaml", "--out", "kit", "--cover", "card")[0] == 0


def test_as_many_sheets_as_are_allowed_are_let_through() -> None:
    # Writing them all takes long: that the option holds for what is written is tried below, on few.
    wall = plan_wall(SAIL.encode(), "sail.yaml")
    kit, _ = plan_kit(wall, PrintChoices(most_sheets=504))
    assert len(kit.tilings["sail"].tiles) == 504
    assert kit.page_count > 504


@pytest.mark.usefixtures("no_picture")
def test_the_number_of_sheets_that_are_allowed_holds_for_each_piece(run: Run, tmp_path: Path) -> None:
    (tmp_path / "mirror.yaml").write_text(MIRROR, "utf-8")
    assert run("kit", "mirror.yaml", "--cover", "band", "--allow-sheets", "5")[0] == 3
    assert run("kit", "mirror.yaml", "--cover", "band", "--allow-sheets", "6")[0] == 0
    assert run("kit", "mirror.yaml", "--allow-sheets", "0")[0] == 2
