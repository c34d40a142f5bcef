"""``templater arrange``: whole outputs, exit codes, and what is written."""

from __future__ import annotations

import json
from pathlib import Path
from xml.etree import ElementTree as ET

import pytest
from PIL import Image

from templater.to_files import png
from tests.made_fonts import HEBREW, make_font
from tests.running import Run
from tests.search.walls import wall_text

TRIO = wall_text(["16 x 20"] * 3, "name: trio, pieces: [A, B, C], arrange: row, gap: any, above: bench")


@pytest.fixture
def run(run: Run) -> Run:
    """Run the command line in a folder with one open layout."""
    Path("trio.yaml").write_text(TRIO, "utf-8")
    return run


def _lines(out: str) -> list[str]:
    """The lines of a table, their runs of spaces made one."""
    return [" ".join(line.split()) for line in out.splitlines() if line.strip(" ─")]


def test_the_proposals_stand_side_by_side(run: Run) -> None:
    # 48 in and two gaps beside 80 in; the centre is 34 + 7 + 20 / 2 = 51 in above the floor.
    code, out, err = run("arrange", "trio.yaml")
    assert (code, err) == (0, "")
    assert _lines(out) == [
        "trio",
        "1 row of 3 2 row of 3 3 row of 3",
        "pieces A; B; C A; B; C A; B; C",
        "width 53 1/2 in (1359 mm), 67 % of the 52 1/2 in (1334 mm), 66 % of the"
        " 54 1/2 in (1384 mm), 68 % of",
        "furniture furniture the furniture",
        "clearance 7 in (178 mm) 7 in (178 mm) 7 in (178 mm)",
        "gap 2 3/4 in (70 mm) 2 1/4 in (57 mm) 3 1/4 in (83 mm)",
        "centre 51 in (1295 mm) above the floor 51 in (1295 mm) above the floor"
        " 51 in (1295 mm) above the floor",
        "balance even even even",
        "rules broken none none none",
    ]
    assert sorted(path.name for path in Path.cwd().iterdir()) == ["trio.yaml"]


def test_a_layout_with_nothing_open_says_so(run: Run) -> None:
    Path("done.yaml").write_text(TRIO.replace("gap: any", "gap: 3"), "utf-8")
    assert run("arrange", "done.yaml") == (0, "done.yaml: nothing is left open\n", "")
    assert run("arrange", "done.yaml", "--format", "json") == (
        0,
        "[]\n",
        "done.yaml: nothing is left open\n",
    )


def test_json_has_the_figures_in_millimetres(run: Run) -> None:
    code, out, err = run("arrange", "trio.yaml", "--format", "json")
    (group,) = json.loads(out)
    assert (code, err) == (0, "")
    assert (group["group"], group["taken"], group["advice"]) == ("trio", 1, None)
    assert group["proposals"][0] == {
        "arrange": "row",
        "columns": None,
        "pieces": ["A", "B", "C"],
        "width_mm": 1358.9,  # 53.5 x 25.4
        "furniture_mm": 2032.0,
        "clearance_mm": 177.8,
        "gap_mm": 69.85,  # 2.75 x 25.4
        "centre_mm": 1295.4,  # 51 x 25.4
        "balance_mm": [0.0, 0.0],
        "broken": [],
    }


@pytest.mark.usefixtures("no_picture")
def test_the_chosen_proposal_is_saved_and_is_a_layout(run: Run) -> None:
    code, _, err = run("arrange", "trio.yaml", "--save", "new.yaml", "--choose", "3")
    assert (code, err) == (0, "new.yaml: made of what was chosen; next: templater kit new.yaml\n")
    assert Path("new.yaml").read_text("utf-8") == TRIO.replace("gap: any", "gap: 3 1/4 in")
    assert run("check", "new.yaml")[0] == 0
    assert run("kit", "new.yaml", "--paper", "a0")[0] == 0


def test_a_file_that_exists_is_not_replaced(run: Run) -> None:
    code, _, err = run("arrange", "trio.yaml", "--save", "trio.yaml")
    assert (code, err) == (5, "trio.yaml exists already\n  give another name, or move it away\n")
    assert Path("trio.yaml").read_text("utf-8") == TRIO


def test_pictures_are_written_only_where_they_are_asked_for(run: Run) -> None:
    code, _, err = run("arrange", "trio.yaml", "--picture", "ways.svg", "--picture", "ways.PNG")
    assert (code, err) == (0, "")
    root = ET.parse("ways.svg").getroot()
    # Letter, landscape: 11 x 8.5 in.
    assert (root.get("width"), root.get("height")) == ("279.4mm", "215.9mm")
    with Image.open("ways.PNG") as picture:
        assert picture.size == (1650, 1275)  # 11 x 8.5 in at 150 dots an inch


@pytest.mark.parametrize("name", ["ways.svg", "ways.png"])
def test_only_a_picture_of_proposals_is_replaced(run: Run, name: str) -> None:
    for _ in range(2):
        assert run("arrange", "trio.yaml", "--picture", name)[0] == 0
    Path(name).write_bytes(Path(name).read_bytes().replace(b"templater ", b"the keeper"))
    before = Path(name).read_bytes()
    assert run(
        "arrange", "trio.yaml", "--picture", "other.svg", "--picture", name, "--save", "new.yaml"
    ) == (
        5,
        "",
        f"{name} was not made by this program, or was changed since, so it is left as it is\n"
        "  give another name or place, or move that file away\n",
    )
    assert Path(name).read_bytes() == before
    assert not Path("other.svg").exists()
    assert not Path("new.yaml").exists()


def test_a_layout_is_saved_only_where_its_fonts_are(run: Run) -> None:
    for folder in ("walls/fonts", "elsewhere"):
        Path(folder).mkdir(parents=True)
    Path("walls/trio.yaml").write_text("font: fonts/hebrew.ttf\n" + TRIO, "utf-8")
    Path("walls/fonts/hebrew.ttf").write_bytes(make_font(HEBREW))
    code, _, err = run("arrange", "walls/trio.yaml", "--save", "elsewhere/new.yaml")
    assert (code, err) == (
        5,
        "cannot save elsewhere/new.yaml: 'font' names 'fonts/hebrew.ttf', but there is no such file"
        " beside the layout\n"
        "  save it beside walls/trio.yaml, or first copy the font to where it would be looked for\n",
    )
    assert list(Path("elsewhere").iterdir()) == []
    assert run("arrange", "walls/trio.yaml", "--save", "walls/new.yaml")[0] == 0
    Path("elsewhere/fonts").mkdir()
    Path("elsewhere/fonts/hebrew.ttf").write_bytes(make_font(HEBREW))
    assert run("arrange", "walls/trio.yaml", "--save", "elsewhere/new.yaml")[0] == 0
    for path in ("walls/new.yaml", "elsewhere/new.yaml"):
        assert run("check", path)[0] == 0


def test_without_cairo_a_png_is_refused_in_one_line(run: Run, monkeypatch: pytest.MonkeyPatch) -> None:
    def refuse(_svg: str) -> bytes:
        raise png.CairoMissingError(png.CAIRO_HINT)

    monkeypatch.setattr(png, "png_bytes", refuse)
    code, _, err = run("arrange", "trio.yaml", "--picture", "ways.png", "--picture", "ways.svg")
    assert (code, err) == (5, f"ways.png: {png.CAIRO_HINT}\n")
    assert Path("ways.svg").exists()


@pytest.mark.parametrize(
    ("words", "code", "err"),
    [
        (
            ("--picture", "ways.gif"),
            2,
            "--picture is ways.gif, which ends in neither .svg nor .png\n"
            "  for example: --picture ways.svg\n",
        ),
        (
            ("--choose", "4"),
            2,
            "trio.yaml:11:5: proposal 4 of 'trio' is chosen, but it has 3 proposals\n"
            "  choose one of those that are shown\n",
        ),
        (
            ("--choose", "1", "--choose", "1"),
            2,
            "2 proposals are chosen, but 1 group leaves something open\n"
            "  choose one for each open group, in the layout's order\n",
        ),
    ],
)
def test_wrong_use_is_told(run: Run, words: tuple[str, ...], code: int, err: str) -> None:
    assert run("arrange", "trio.yaml", *words) == (code, "", err)


def test_a_layout_that_cannot_be_read_is_told(run: Run) -> None:
    assert run("arrange", "none.yaml") == (
        3,
        "",
        "cannot read none.yaml: No such file or directory\n"
        "  name a layout file; 'templater new FILE' writes one\n",
    )


def test_an_open_layout_is_no_kit(run: Run) -> None:
    for command in ("check", "kit"):
        code, _, err = run(command, "trio.yaml")
        assert code == 3
        assert "'trio'" in err
        assert "templater arrange" in err
