from __future__ import annotations

import json
import re
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pikepdf
import pytest
from click.testing import CliRunner

from templater.cli import commands
from templater.proving import prove_kit
from tests.conftest import KitMaker
from tests.kits import LAYOUTS, MadeKit, make_kit
from tests.verify.faults import faults, page_of, the_fault
from tests.verify.planting import POINTS_PER_MM, Copy

LAYOUT = LAYOUTS / "stair-hall.yaml"


@pytest.fixture
def hall(shipped_kit: KitMaker) -> MadeKit:
    return shipped_kit("stair-hall", "letter")


@pytest.fixture
def copy(hall: MadeKit, tmp_path: Path) -> Copy:
    """A copy of the stair hall's kit on Letter: 27 pages or so, four pieces, five holes."""
    return Copy(hall.folder, tmp_path)


# --- what is planted on a page --------------------------------------------------------------------


@pytest.mark.parametrize("hole", [True, False])
def test_a_page_scaled_to_99_9_per_cent(copy: Copy, hole: bool) -> None:
    entry = copy.sheets(hole=hole)[0]
    copy.transform(entry["page"], 0.999, 0, 0, 0.999, 0, 0)
    for message in faults(copy):
        assert message.startswith(f"{page_of(entry)}the ruler")
        # 100 mm x 0.999; 4 in x 0.999.
        assert "100 mm measure 99.900 mm, its 4 in 3.9960 in" in message


@pytest.mark.parametrize(("across", "up"), [(0.1, 0.0), (-0.1, 0.0), (0.0, 0.1), (0.0, -0.1)])
def test_a_sheet_with_a_hole_shifted_by_a_tenth(copy: Copy, across: float, up: float) -> None:
    entry = copy.sheets(hole=True)[0]
    copy.transform(entry["page"], 1, 0, 0, 1, across, up)
    told = rf"hole \d is 0\.100 mm off: \{across:+.3f} mm across, \{up:+.3f} mm up"
    for message in faults(copy):
        assert re.fullmatch(re.escape(page_of(entry)) + told, message)


@pytest.mark.parametrize(("across", "up"), [(0.1, 0.0), (0.0, 0.1)])
def test_a_sheet_without_a_hole_shifted_by_a_tenth(copy: Copy, across: float, up: float) -> None:
    entries = copy.sheets(hole=False)
    assert len(entries) > 3
    for entry in entries[:4]:
        copy.transform(entry["page"], 1, 0, 0, 1, across, up)
        told = faults(copy)
        assert any(
            message.startswith(page_of(entry)) and message.endswith("is 0.100 mm off")
            for message in told
        )
        copy.transform(entry["page"], 1, 0, 0, 1, -across, -up)
    prove_kit(copy.folder)


def test_two_sheets_swapped(copy: Copy) -> None:
    one, other = (entry["page"] for entry in copy.sheets(hole=True)[:2])
    with copy.opened_pdf() as document:
        pages = list(document.pages)
        document.pages[one - 1] = pages[other - 1]
        document.pages[other - 1] = pages[one - 1]
    assert [message.split(" stands ")[1] for message in faults(copy)] == [
        f"where page {one} belongs",
        f"where page {other} belongs",
    ]


def test_a_sheet_missing(copy: Copy) -> None:
    entry = copy.sheets(hole=False)[0]
    with copy.opened_pdf() as document:
        del document.pages[entry["page"] - 1]
    name = f"{entry['piece']}, sheet {entry['sheet']}"
    assert the_fault(copy) == f"kit.pdf: page {entry['page']} ({name}) is missing"


def test_a_sheet_twice(copy: Copy) -> None:
    entry = copy.sheets(hole=True)[0]
    with copy.opened_pdf() as document:
        document.pages.insert(entry["page"], document.pages[entry["page"] - 1])
    name = f"{entry['piece']}, sheet {entry['sheet']}"
    assert the_fault(copy) == f"kit.pdf: page {entry['page']} ({name}) is there twice"


def test_a_sheet_twice_and_its_neighbour_missing(copy: Copy) -> None:
    page = copy.sheets(hole=True)[0]["page"]
    with copy.opened_pdf() as document:
        document.pages[page] = document.pages[page - 1]
    assert [message.rsplit(") ", 1)[1] for message in faults(copy)] == ["is missing", "is there twice"]


MIRRORED = """
title: A mirror
wall: {width: 2 m, height: 2.4 m}
units: mm
datum: {height: 1500}
pieces:
  - {name: Signal lamp, size: 120 x 200, hang: {by: nail, drop: 20}, place: {centre: 1000, top: 1600}}
"""


@pytest.fixture
def lamp(tmp_path: Path) -> Copy:
    """A kit whose one sheet with a hole is the same on its left and on its right, but for the words."""
    layout = tmp_path / "lamp.yaml"
    layout.write_text(MIRRORED, encoding="utf-8")
    return Copy(make_kit(layout, tmp_path / "made" / "lamp", "a4").folder, tmp_path)


def test_a_mirrored_page(lamp: Copy) -> None:
    (entry,) = lamp.sheets(hole=True)
    width, _ = entry["paper_mm"]
    # The hole and the outline fall on themselves: 2 x (margin left + half the room) is the page's width.
    assert entry["origin_mm"][0] + 60 == pytest.approx(width / 2)
    lamp.transform(entry["page"], -1, 0, 0, 1, width, 0)
    assert the_fault(lamp) == f"{page_of(entry)}it is mirrored"


def test_a_page_with_its_y_axis_turned(lamp: Copy) -> None:
    (entry,) = lamp.sheets(hole=True)
    lamp.transform(entry["page"], 1, 0, 0, -1, 0, entry["paper_mm"][1])
    assert the_fault(lamp) == f"{page_of(entry)}it is upside down as in a mirror: its y axis is turned"


def test_a_page_turned_about(lamp: Copy) -> None:
    (entry,) = lamp.sheets(hole=True)
    width, height = entry["paper_mm"]
    lamp.transform(entry["page"], -1, 0, 0, -1, width, height)
    assert the_fault(lamp) == f"{page_of(entry)}it is turned"


def test_the_wrong_paper(copy: Copy) -> None:
    entry = copy.sheets(hole=True)[0]
    with copy.opened_pdf() as document:
        document.pages[entry["page"] - 1].MediaBox = [0, 0, 595.2756, 841.8898]
    told = re.escape(page_of(entry)) + r"its paper is 210\.00 × 297\.00 mm, not \d+\.\d\d × \d+\.\d\d mm"
    assert re.fullmatch(told, the_fault(copy))


@pytest.mark.parametrize(
    ("key", "value", "told"),
    [
        ("/Rotate", 180, "it is turned (it has a Rotate)"),
        ("/UserUnit", 1.001, "its unit is not 1/72 in (it has a UserUnit)"),
        ("/CropBox", [10, 10, 600, 700], "it is cropped"),
        ("/MediaBox", [1, 0, 613, 792], "its paper does not begin at 0, 0"),
    ],
)
def test_a_page_that_is_not_plain(copy: Copy, key: str, value: Any, told: str) -> None:
    entry = copy.sheets(hole=True)[0]
    with copy.opened_pdf() as document:
        document.pages[entry["page"] - 1].obj[key] = value
    assert the_fault(copy) == f"{page_of(entry)}{told}"


def _without(is_meant: Callable[[list[float], list[float]], bool]) -> Callable[..., Any]:
    """Leave out the straight lines that are meant, by their ends in points."""
    start: list[float] = []
    end: list[float] = []

    def act(operands: list[Any], operator: str) -> tuple[list[Any], str]:
        if operator == "m":
            start[:] = map(float, operands)
            end.clear()
        elif operator == "l":
            end[:] = map(float, operands)
        elif operator == "S" and len(end) == 2 and is_meant(start, end):
            return [], "n"
        return operands, operator

    return act


def _is_level(start: list[float], end: list[float], length_mm: float) -> bool:
    is_long = abs(abs(end[0] - start[0]) - length_mm * POINTS_PER_MM) < 0.01
    return is_long and abs(end[1] - start[1]) < 0.001


def test_a_ring_without_its_cross(copy: Copy) -> None:
    entry = copy.sheets(hole=True)[0]
    copy.rewrite(entry["page"], _without(lambda start, end: _is_level(start, end, 20)))
    messages = faults(copy)
    assert all(
        re.fullmatch(re.escape(page_of(entry)) + r"hole \d has a ring and no cross", message)
        for message in messages
    )


def test_a_cross_without_its_ring(copy: Copy) -> None:
    entry = copy.sheets(hole=True)[0]
    is_ring: list[bool] = [False]

    def act(operands: list[Any], operator: str) -> tuple[list[Any], str]:
        is_ring[0] = operator == "c" or (is_ring[0] and operator == "h")
        return (operands, operator) if operator != "S" or not was_ring() else ([], "n")

    last: list[str] = []

    def was_ring() -> bool:
        return "c" in last[-2:]

    def remember(operands: list[Any], operator: str) -> tuple[list[Any], str]:
        done = act(operands, operator)
        last.append(operator)
        return done

    copy.rewrite(entry["page"], remember)
    assert all("has a cross and no ring" in message for message in faults(copy))


def test_a_hole_too_many(copy: Copy) -> None:
    entry = copy.sheets(hole=True)[0]
    (x, y), (x0, y0, _, _) = entry["origin_mm"], entry["clip_mm"]
    at = [(x + x0 + 30) * POINTS_PER_MM, (y + y0 + 40) * POINTS_PER_MM]
    arm = 10 * POINTS_PER_MM
    lines = (
        f"q 0.7 w {at[0] - arm} {at[1]} m {at[0] + arm} {at[1]} l S"
        f" {at[0]} {at[1] - arm} m {at[0]} {at[1] + arm} l S Q"
    )
    with copy.opened_pdf() as document:
        document.pages[entry["page"] - 1].contents_add(document.make_stream(lines.encode()))
    assert "a hole is marked where the plan has none" in the_fault(copy)


def test_a_stale_sheet_of_another_revision(copy: Copy, tmp_path: Path) -> None:
    layout = tmp_path / "stair-hall.yaml"
    layout.write_text(f"issue: second\n{LAYOUT.read_text('utf-8')}", encoding="utf-8")
    other = make_kit(layout, tmp_path / "other", "letter")
    entry = copy.sheets(hole=True)[0]
    assert (
        other.manifest["pages"][entry["page"]]["clip_mm"]
        == (copy.manifest["pages"][entry["page"]]["clip_mm"])
    )
    with copy.opened_pdf() as document, pikepdf.open(other.folder / "kit.pdf") as stale:
        document.pages[entry["page"] - 1] = stale.pages[entry["page"] - 1]
    old, new = other.manifest["revision"], copy.manifest["revision"]
    assert the_fault(copy) == f"{page_of(entry)}it bears the revision {old}; this kit is {new}"


def test_a_line_of_the_outline_missing(copy: Copy) -> None:
    slug = copy.sheets(hole=True)[0]["piece"]
    _, y0, _, y1 = next(p["rect_mm"] for p in copy.manifest["pieces"] if p["slug"] == slug)
    entry = copy.sheets(hole=True)[0]
    upper = (entry["origin_mm"][1] + y1 - y0) * POINTS_PER_MM
    act = _without(lambda start, end: abs(start[1] - upper) + abs(end[1] - upper) < 0.01)
    copy.rewrite(entry["page"], act)
    assert re.match(
        re.escape(page_of(entry)) + r"the outline's upper edge is not drawn from \d+\.\d mm on",
        the_fault(copy),
    )


def _seam_sheet(copy: Copy) -> dict[str, Any]:
    """A sheet that joins others."""
    names = [entry["piece"] for entry in copy.manifest["pages"]]
    return next(entry for entry in copy.sheets(hole=False) if names.count(entry["piece"]) > 1)


def test_the_line_of_a_seam_missing(copy: Copy) -> None:
    entry = _seam_sheet(copy)
    x, y = (place * POINTS_PER_MM for place in entry["origin_mm"])
    sides = [side * POINTS_PER_MM for side in entry["clip_mm"]]

    def is_seam(start: list[float], end: list[float]) -> bool:
        across = abs(start[0] - end[0]) < 0.001 and abs(start[0] - x - sides[0]) < 0.01
        up = abs(start[1] - end[1]) < 0.001 and abs(start[1] - y - sides[3]) < 0.01
        return across or up

    copy.rewrite(entry["page"], _without(is_seam))
    told = the_fault(copy)
    assert re.fullmatch(
        re.escape(page_of(entry)) + r"the line of its seam with [A-Z]\d is not drawn", told
    ), told


def test_half_a_join_mark_out_of_place(copy: Copy) -> None:
    entry = _seam_sheet(copy)
    with copy.opened_pdf() as document:
        sheet = document.pages[entry["page"] - 1]
        drawn: list[tuple[list[Any], str]] = [
            (list(each.operands), str(each.operator)) for each in pikepdf.parse_content_stream(sheet)
        ]
        for at in range(len(drawn) - 4):  # half a diamond: two straight lines
            if [operator for _, operator in drawn[at : at + 4]] == ["m", "l", "l", "S"]:
                for operands, _ in drawn[at : at + 3]:
                    operands[:] = [float(each) + 0.1 * POINTS_PER_MM for each in operands]
        sheet.Contents = document.make_stream(
            pikepdf.unparse_content_stream(
                [pikepdf.ContentStreamInstruction(each, pikepdf.Operator(name)) for each, name in drawn]
            )
        )
    # Half a diamond that has left its line is no join mark any more.
    pattern = (
        rf"kit\.pdf: {entry['piece']}: the join marks of [A-Z]\d and [A-Z]\d"
        r" differ in number: (\d and 0|0 and \d)"
    )
    messages = faults(copy)
    assert all(re.fullmatch(pattern, message) for message in messages), messages


def test_the_datum_out_of_place(copy: Copy) -> None:
    entry = copy.sheets(hole=True)[0]
    dashes: list[int] = [0]

    def act(operands: list[Any], operator: str) -> tuple[list[Any], str]:
        if operator == "d":
            dashes[0] = len(operands[0])
        elif operator in ("q", "Q"):
            dashes[0] = 0
        if operator in ("m", "l") and dashes[0] == 6:
            return [operands[0], float(operands[1]) + 0.1 * POINTS_PER_MM], operator
        return operands, operator

    copy.rewrite(entry["page"], act)
    assert the_fault(copy) == f"{page_of(entry)}the datum is 0.100 mm off"


def test_the_rulers_of_the_print_test_too_short(copy: Copy, hall: MadeKit) -> None:
    (page,) = (
        number for number, ink in enumerate(hall.pages, 1) if "Print test" in [r.text for r in ink.runs]
    )
    copy.transform(page, 0.999, 0, 0, 0.999, 0, 0)
    for message in faults(copy):
        # 180 mm and 240 mm x 0.999, which stand on the page of a Letter kit.
        assert re.search(r"the long ruler (across|up) measures (179\.820|239\.760) mm", message)


@pytest.mark.parametrize("drawn", ["/Im1 Do", "0 0 m 9 9 9 9 9 9 c S", "(never ended"])
def test_what_cannot_be_followed_is_not_let_through(copy: Copy, drawn: str) -> None:
    entry = copy.sheets(hole=True)[0]
    with copy.opened_pdf() as document:
        document.pages[entry["page"] - 1].contents_add(document.make_stream(drawn.encode()))
    assert the_fault(copy).startswith(f"{page_of(entry)}it holds what cannot be followed")


# --- what is planted in another file --------------------------------------------------------------


def test_the_table_of_holes_edited(copy: Copy) -> None:
    lines = (copy.folder / "hooks.csv").read_text("utf-8").splitlines()
    cells = lines[1].split(",")
    cells[2] = f"{float(cells[2]) + 0.01:.3f}"
    lines[1] = ",".join(cells)
    copy.change_text("hooks.csv", lambda _: "\n".join(lines) + "\n")
    told = rf"hooks\.csv: {cells[0]} hole 1: x_mm is {cells[2]}, the plan has \d+\.\d+"
    assert re.fullmatch(told, the_fault(copy))


@pytest.mark.parametrize(
    ("change", "told"),
    [
        (lambda text: text.rsplit("\n", 2)[0] + "\n", "is missing"),
        (lambda text: text + text.splitlines()[1] + "\n", "is of a hole that the plan does not have"),
        (lambda text: text.replace("x_mm", "y_mm", 1), "its first line does not name the columns"),
        (lambda text: re.sub(r"\n([a-z-]+),1,", r"\n\1,2,", text, count=1), "line 2 is not that of"),
    ],
)
def test_the_table_of_holes_with_other_rows(copy: Copy, change: Callable[[str], str], told: str) -> None:
    copy.change_text("hooks.csv", change)
    assert told in the_fault(copy)


def _drawing(copy: Copy) -> str:
    """The template of a piece with a hole, as SVG."""
    return f"templates/{copy.sheets(hole=True)[0]['piece']}.svg"


@pytest.mark.parametrize("name", ["template", "overview.svg"])
def test_a_drawing_without_a_physical_size(copy: Copy, name: str) -> None:
    drawing = _drawing(copy) if name == "template" else name
    copy.change_text(
        drawing, lambda text: re.sub(r'(<svg[^>]*?) (?:width|height)="[\d.]+mm"', r"\1", text, count=1)
    )
    assert the_fault(copy) == f"{drawing}: it has no physical size (width and height in mm)"


def test_a_drawing_of_another_size(copy: Copy) -> None:
    drawing = _drawing(copy)

    def change(text: str) -> str:
        return re.sub(
            r'width="([\d.]+)mm"', lambda size: f'width="{float(size[1]) * 0.999:.4f}mm"', text
        )

    copy.change_text(drawing, change)
    assert re.fullmatch(r".*: its .* units are drawn .* mm large", the_fault(copy))


def test_a_drawing_with_its_y_axis_turned(copy: Copy) -> None:
    drawing = _drawing(copy)
    copy.change_text(drawing, lambda text: text.replace("<g fill", '<g transform="scale(1 -1)" fill'))
    assert the_fault(copy) == f"{drawing}: it is upside down as in a mirror: its y axis is turned"


def test_a_drawing_whose_points_are_turned_but_not_its_words(copy: Copy) -> None:
    drawing = _drawing(copy)

    def turn(match: re.Match[str]) -> str:
        return f'{match[1]}="{508 - float(match[2])}"'

    copy.change_text(drawing, lambda text: re.sub(r'\b(y1|y2|cy)="(-?[\d.]+)"', turn, text))
    # The ruler up now counts downward; that is found before the holes are looked at.
    assert the_fault(copy) == f"{drawing}: the ticks of the ruler up are not where they must be"


def test_a_hole_in_a_drawing_out_of_place(copy: Copy) -> None:
    drawing = _drawing(copy)

    def change(text: str) -> str:
        return re.sub(r'cx="([\d.]+)"', lambda at: f'cx="{float(at[1]) + 0.05}"', text, count=1)

    copy.change_text(drawing, change)
    assert re.search(r"hole \d's ring is 0\.050 mm off", the_fault(copy))


@pytest.mark.parametrize("name", ["overview.svg", "kit.pdf", "overview.pdf"])
def test_a_hole_of_the_overview_out_of_place(copy: Copy, name: str) -> None:
    if name == "overview.svg":

        def change(text: str) -> str:
            arms = re.finditer(r'<line x1="([\d.]+)" y1="([\d.]+)" x2="([\d.]+)" y2="([\d.]+)"', text)
            arm = next(
                arm for arm in arms if abs(float(arm[3]) - float(arm[1]) - 2) < 1e-4 and arm[2] == arm[4]
            )
            y = f"{float(arm[2]) + 0.2:.4f}"
            moved = f'<line x1="{arm[1]}" y1="{y}" x2="{arm[3]}" y2="{y}"'
            return text.replace(arm[0], moved)

        copy.change_text(name, change)
    else:
        page = next(e["page"] for e in copy.manifest["pages"] if e["kind"] == "overview")
        with copy.opened_pdf(name) as document:
            sheet = document.pages[page - 1 if name == "kit.pdf" else 0]
            instructions = list(pikepdf.parse_content_stream(sheet))
            _drop_first_arm(instructions)
            sheet.Contents = document.make_stream(pikepdf.unparse_content_stream(instructions))
    assert re.search(r"hole \d is not marked at its place", the_fault(copy))


def _drop_first_arm(instructions: list[Any]) -> None:
    """Leave out the first level line of 2 mm that another crosses: an arm of a small cross."""
    for at, (one, two, paint) in enumerate(
        zip(instructions, instructions[1:], instructions[2:], strict=False)
    ):
        if [str(each.operator) for each in (one, two, paint)] == ["m", "l", "S"]:
            start, end = ([float(x) for x in each.operands] for each in (one, two))
            if _is_level(start, end, 2):
                instructions[at + 2] = pikepdf.ContentStreamInstruction([], pikepdf.Operator("n"))
                return


def test_the_layout_edited(copy: Copy) -> None:
    copy.change_text("layout.yaml", lambda text: text.replace("2 1/4 in", "2 3/8 in", 1))
    told = r"manifest\.json: its revision is \w{6}, but layout\.yaml and the options give \w{6}"
    assert re.fullmatch(told, the_fault(copy))


@pytest.mark.parametrize(
    ("change", "told"),
    [
        (lambda m: m["pieces"][0]["holes"][0].__setitem__(0, 1.0), "a hole is not that of the plan"),
        (
            lambda m: m["pieces"][0]["hang_points"].append([1, 2]),
            "a hang point is not that of the plan (another number)",
        ),
        (lambda m: m["pieces"][0]["rect_mm"].__setitem__(2, 1.0), "its name or its place is not that"),
        (lambda m: m["pieces"].reverse(), "its pieces are not those of the plan"),
        (lambda m: m.update(revision="ABCDEF"), "its revision is ABCDEF, but layout.yaml"),
        (lambda m: m["options"].update(lap_mm=11), "its revision is"),
    ],
)
def test_the_manifest_edited(copy: Copy, change: Callable[[dict[str, Any]], None], told: str) -> None:
    content = copy.manifest
    change(content)
    copy.write_manifest(content)
    (message,) = faults(copy)
    assert message.startswith("manifest.json: ")
    assert told in message


def test_the_manifests_origin_edited(copy: Copy) -> None:
    content = copy.manifest
    entry = next(entry for entry in content["pages"] if entry["piece"] is not None)
    entry["origin_mm"][0] += 0.1
    copy.write_manifest(content)
    assert all(message.endswith(" off") or "hole" in message for message in faults(copy))


# --- what is no fault -----------------------------------------------------------------------------


def test_a_kit_that_was_only_saved_again_passes_with_a_note(copy: Copy) -> None:
    path = copy.folder / "kit.pdf"
    before = path.read_bytes()
    with pikepdf.open(path, allow_overwriting_input=True) as document:
        document.save(path, object_stream_mode=pikepdf.ObjectStreamMode.generate, linearize=True)
    assert path.read_bytes() != before
    _, proof = prove_kit(copy.folder)
    assert proof.notes == ("kit.pdf was changed after the kit was made",)
    assert proof.holes == 5


def test_files_that_came_or_went_are_told(copy: Copy) -> None:
    (copy.folder / "templates" / "old.svg").write_text("<svg/>", encoding="utf-8")
    (copy.folder / "overview.png").unlink()
    _, proof = prove_kit(copy.folder)
    assert proof.notes == (
        "templates/old.svg does not belong to the kit",
        "overview.png is missing",
    )


def test_a_kit_of_another_version_is_told(copy: Copy) -> None:
    content = copy.manifest
    content["version"] = "0.0.9"
    copy.write_manifest(content)
    _, proof = prove_kit(copy.folder)
    (note,) = proof.notes
    assert re.fullmatch(r"made by version 0\.0\.9, proved by version \S+, which may work out .*", note)


# --- the command ----------------------------------------------------------------------------------


def test_the_command_says_what_was_proved(hall: MadeKit) -> None:
    result = CliRunner().invoke(commands, ["proof", str(hall.folder)])
    assert result.exit_code == 0
    revision = hall.manifest["revision"]
    assert result.output == (
        f"{hall.folder}: revision {revision}, 5 holes re-read from its files;"
        " farthest less than 0.001 mm from plan\n"
    )


def test_the_command_ends_with_6_and_says_what_is_wrong(copy: Copy) -> None:
    entry = copy.sheets(hole=True)[0]
    copy.transform(entry["page"], 1, 0, 0, 1, 0.1, 0)
    result = CliRunner().invoke(commands, ["proof", str(copy.folder)])
    assert result.exit_code == 6
    assert "is 0.100 mm off" in result.output
    assert result.output.splitlines()[-1].strip().startswith("do not drill by this kit")


@pytest.mark.parametrize(
    "content",
    [
        None,
        "",
        "[]",
        "[" * 100_000,
        '{"schema": "something else"}',
        '{"schema": "templater-kit/1"}',
        '{"schema": "templater-kit/1", "revision": 1, "options": 3}',
    ],
)
def test_what_is_no_kit_is_refused(tmp_path: Path, content: str | None) -> None:
    if content is not None:
        (tmp_path / "manifest.json").write_text(content, encoding="utf-8")
    result = CliRunner().invoke(commands, ["proof", str(tmp_path)])
    assert result.exit_code == 6
    assert "manifest" in result.output


@pytest.mark.parametrize("name", ["kit.pdf", "hooks.csv", "overview.svg", "overview.pdf", "layout.yaml"])
def test_a_file_that_is_missing_or_spoilt_is_named(copy: Copy, name: str) -> None:
    (copy.folder / name).write_bytes(b"\xff\xfe spoilt")
    assert faults(copy)[0].startswith(f"{name}")
    (copy.folder / name).unlink()
    assert faults(copy)[0].startswith(f"{name}: it cannot be read")


def test_a_writer_that_errs_leaves_no_kit(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    out = tmp_path / "kit"
    make_kit(LAYOUT, out, "letter")
    before = {path: path.read_bytes() for path in out.rglob("*") if path.is_file()}
    monkeypatch.setattr("templater.to_files.pdf.POINTS_PER_MM", 72 / 25.4 * 0.999)
    monkeypatch.setattr("templater.to_files.kit.SCHEMA", None, raising=False)
    result = CliRunner().invoke(commands, ["kit", str(LAYOUT), "--out", str(out)])
    assert result.exit_code == 6
    assert "kit.pdf: page 1" in result.output
    assert "no kit is written" in result.output
    assert {path: path.read_bytes() for path in out.rglob("*") if path.is_file()} == before
    assert [path.name for path in tmp_path.iterdir()] == ["kit"]


def test_the_manifest_tells_what_was_proved(hall: MadeKit) -> None:
    proof = hall.manifest["proof"]
    assert proof["holes"] == 5
    assert 0 <= proof["farthest_mm"] < 0.001
    assert json.loads(json.dumps(proof)) == proof


def test_the_checklist_says_what_was_proved(hall: MadeKit) -> None:
    words = " ".join(run.text for run in hall.pages[-1].runs)
    assert "5 holes were re-read from this file; none is farther than 0.01 mm from the plan." in words
