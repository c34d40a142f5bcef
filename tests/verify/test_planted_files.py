"""Faults in a kit's other files: the table of holes, the drawings, the overview, layout and manifest."""

from __future__ import annotations

import re
from collections.abc import Callable
from typing import Any

import pytest

from tests.verify.faults import faults, the_fault
from tests.verify.planting import DRAWS_NOTHING, Copy, is_level


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
        with copy.opened_page(page if name == "kit.pdf" else 1, name) as (_, instructions):
            _drop_first_arm(instructions)
    assert re.search(r"hole \d is not marked at its place", the_fault(copy))


def _drop_first_arm(instructions: list[Any]) -> None:
    """Leave out the first level line of 2 mm that another crosses: an arm of a small cross."""
    for at, (one, two, paint) in enumerate(
        zip(instructions, instructions[1:], instructions[2:], strict=False)
    ):
        if [str(each.operator) for each in (one, two, paint)] == ["m", "l", "S"]:
            start, end = ([float(x) for x in each.operands] for each in (one, two))
            if is_level(start, end, 2):
                instructions[at + 2] = DRAWS_NOTHING
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


@pytest.mark.parametrize("name", ["kit.pdf", "hooks.csv", "overview.svg", "overview.pdf", "layout.yaml"])
def test_a_file_that_is_missing_or_spoilt_is_named(copy: Copy, name: str) -> None:
    (copy.folder / name).write_bytes(b"\xff\xfe spoilt")
    assert faults(copy)[0].startswith(f"{name}")
    (copy.folder / name).unlink()
    assert faults(copy)[0].startswith(f"{name}: it cannot be read")
