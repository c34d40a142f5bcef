"""Files that no careful person writes: each ends in one clear answer, whatever it holds."""

from __future__ import annotations

import json
import os
import subprocess
import sys
from collections.abc import Sequence
from pathlib import Path

import pytest

from templater.errors import ExitCode, LayoutError
from templater.layout import source
from templater.layout.extent import MOST_CLUSTERED, MOST_THINGS
from templater.layout.read import MAX_FAULTS, read_layout
from templater.layout.slugs import list_slugs
from templater.pipeline import plan_wall, read_source
from tests.layout.files import SMALL, list_faults, read_sound
from tests.layout.journeys import Reached, travel

HEAD = "title: Hall\nunits: mm\nwall: {width: 9999 m, height: 3 m}\n"
DIVIDE = "check that it is the layout of one wall; divide a very long wall into several layouts"


def name_piece(name: str) -> str:
    """A sound layout of one piece whose name, quoted as YAML wants it, is this."""
    return f"{HEAD}pieces: [{{name: {json.dumps(name, ensure_ascii=False)}, size: 200 x 300}}]\n"


def write_pieces(count: int) -> str:
    """So many pieces, all on one spot."""
    return f"{HEAD}pieces:\n" + "".join(f"- {{name: p{n}, size: 9 x 9}}\n" for n in range(count))


@pytest.mark.parametrize(
    "tag", ["!!python/object/apply:os.system [ls]", "!!binary aGFsbA==", "!custom x"]
)
def test_a_tag_runs_nothing_and_is_refused(tag: str) -> None:
    reached = travel(f"{SMALL}title2: {tag}\n".encode(), far=False)
    assert reached is Reached.UNREAD
    assert any("has no meaning in a layout" in fault for fault in list_faults(f"x: {tag}"))


@pytest.mark.parametrize(
    "text",
    [
        "a: &a [*a]\n",
        "a: &a {b: *a}\n",
        "- &a [x, *a]\n",
        "a: &a [" + "x," * 9000 + "]\nb: [" + "*a," * 900 + "]\n",
        "a: &a {x: y}\nb:\n  <<: *a\n",
        "<<: [1, 2]\n",
        "a: &a b\n*a : c\n",
        "? [a, b]\n: c\n",
        "? {a: b}\n: c\n",
        "1: a\n~: b\n1.5: c\ntrue: d\n",
        "a: 1\n---\nb: 2\n---\nc: 3\n",
        "%YAML 9.9\n---\na: 1\n",
        "%TAG ! tag:x,2000:\n---\na: !b c\n",
        "...\n",
        "a: |\n  b\n c\n",
        "a: >9\n b\n",
        "\ta: b\n",
        "a:\n\t- b\n",
        "'" + "k" * 1_000_000 + "': 1\n",
        "? " + "k" * 1_000_000 + "\n: 1\n",
        "title: " + "k" * 1_000_000 + "\n",
        "? &a a\n: *a\n",
        "[" * 100_000,
        "{a: " * 100_000,
        "- " * 100_000,
        "\n".join(" " * depth + "a:" for depth in range(1000)),
        "\n".join(" " * depth + "-" for depth in range(1000)),
        SMALL.replace("\n", "\r"),
        SMALL.replace("\n", "\x85"),
        SMALL.replace("\n", "\u2028"),
        SMALL.replace(": ", ":\t"),
        SMALL.replace("  -", "\t-"),
        SMALL.replace("title", "\u200btitle"),
        SMALL.replace("Front", "\u202eFront"),
        SMALL.replace("Front room", '"\\ud800"'),
        SMALL.replace("Front room", '"\\x1b[31m\\x00"'),
        SMALL.replace("Front room", "\U0001f5fc" * 200),
        SMALL + "\ufeff",
        SMALL + "\x00",
        SMALL + "\ud800",
    ],
    ids=range(40),
)
def test_odd_yaml_ends_in_faults_or_a_layout(text: str) -> None:
    travel(text.encode("utf-8", "surrogatepass"), far=False)
    travel(text.replace("\n", "\r\n").encode("utf-8-sig", "surrogatepass"), far=False)


@pytest.mark.parametrize("scalar", ["no", "1:30", "0x1F", "1_000", "nan", ".inf", "1e308", "1e-300"])
def test_a_scalar_of_another_type_in_yaml_is_no_length(scalar: str) -> None:
    (fault,) = list_faults(SMALL.replace("left: 100", f"left: {scalar}"))
    # Line 8 is `  - {name: Tide clock, size: 10 x 10, place: {left: 100}}`: the value is at column 53.
    assert fault.startswith(f"hall.yaml:8:53: 'left' needs a length, but '{scalar}' ")


def test_a_leading_zero_makes_no_number_octal() -> None:
    reading = read_layout(SMALL.replace("left: 100", "left: 077"), "hall.yaml")
    assert reading.layout is not None
    position = reading.layout.pieces[1].position
    assert position is not None
    assert position.left_mm == 1955.8  # 77 × 25.4


def test_a_number_of_many_digits_is_refused_shortly() -> None:
    (fault,) = list_faults(SMALL.replace("left: 100", "left: " + "9" * 5000))
    assert fault.startswith("hall.yaml:8:53: 'left' needs a length, but '9999")
    assert len(fault) < 250


@pytest.mark.parametrize("encoding", ["utf-16-le", "utf-16-be", "utf-32-le", "utf-32-be"])
def test_wide_text_without_a_byte_order_mark_is_told_as_such(encoding: str) -> None:
    assert list_faults(SMALL.encode(encoding)) == [
        "hall.yaml:1:1: the file is UTF-16 or UTF-32, not UTF-8\n  save it as UTF-8"
    ]


@pytest.mark.parametrize("odd", ["\x85", "\u2028", "\u2029"])
def test_a_line_end_that_editors_do_not_count_is_refused_at_its_place(odd: str) -> None:
    # `title: Fro` are ten characters.
    assert list_faults(SMALL.replace("Front", f"Fro{odd}nt")) == [
        f"hall.yaml:1:11: the character {odd!r} cannot stand in a layout\n  remove it"
    ]


@pytest.mark.parametrize("end", ["\n", "\r\n", "\r"])
@pytest.mark.parametrize("mark", ["", "\ufeff"])
def test_columns_count_characters_after_a_mark_astral_ones_and_tabs(end: str, mark: str) -> None:
    text = mark + end.join(
        ["title: Hall", "# \U0001f5fc", 'x:\t"\U0001f5fc\U0001f5fc"', "\U0001f5fc: {y: 1, y: 2}"]
    )
    # Line 4: the lamp, a colon, a space, `{y: 1, ` of seven: the second y is the 11th character.
    assert any(fault.startswith("hall.yaml:4:11: 'y' is given twice") for fault in list_faults(text))


def test_more_entries_than_a_wall_has_are_refused_where_they_begin() -> None:
    # Line 4 is `pieces:`, so the piece after 10,000 is in line 4 + 10,001.
    assert list_faults(write_pieces(10_001)) == [
        f"hall.yaml:10005:3: the list that starts in line 5 has more than 10,000 entries\n  {DIVIDE}"
    ]
    keys = "".join(f"k{number}: 1\n" for number in range(330_000))
    assert list_faults(keys) == [
        f"hall.yaml:10001:1: the mapping that starts in line 1 has more than 10,000 entries\n  {DIVIDE}"
    ]


def test_more_values_than_a_wall_has_are_refused(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(source, "MAX_VALUES", 8)
    # The root, `a`, its list and five values are eight; the next stands after `a: [1,2,3,4,5,`.
    assert list_faults("a: [1,2,3,4,5,6]")[-1] == (
        f"hall.yaml:1:15: the file has more than 8 keys and values\n  {DIVIDE}"
    )


def test_of_very_many_faults_the_first_are_told() -> None:
    faults = read_layout(write_pieces(3000).replace("9 x 9", "9"), "hall.yaml").faults
    assert len(faults) == MAX_FAULTS + 1
    assert faults[-1].message == "1,000 more faults are not told"


def test_more_furniture_than_can_be_judged_is_refused() -> None:
    things = "".join(
        f"- {{name: f{n}, left: {n}, width: 1, height: 1}}\n" for n in range(MOST_THINGS + 1)
    )
    assert list_faults(write_pieces(1) + "furniture:\n" + things) == [
        # Six lines come before the first, so the 101st is in line 107.
        "hall.yaml:107:3: 'furniture' has 101 entries, more than 100\n"
        "  list what matters where something hangs, or divide the wall"
    ]


def test_more_clustered_pieces_than_can_be_sought_are_refused() -> None:
    names = ", ".join(f"p{number}" for number in range(MOST_CLUSTERED + 1))
    text = (
        write_pieces(MOST_CLUSTERED + 1)
        + f"groups: [{{arrange: cluster, name: g, pieces: [{names}]}}]\n"
    )
    # Four lines, 61 pieces, then the groups; `groups: [{arrange: ` are 19 characters.
    assert list_faults(text) == [
        "hall.yaml:66:20: with this one the clusters have 61 pieces, more than 60\n"
        "  hang some of them in a grid or in rows, or make two layouts of the wall"
    ]


def test_names_that_are_no_file_names_get_slugs_that_are() -> None:
    names = [
        "..",
        "../../etc/passwd",
        "con",
        "NUL",
        "com1",
        "lpt9",
        "aux.txt",
        "a/b",
        "\U0001f5fc",
        "灯台",
    ]
    slugs = list_slugs([*names, "灯台", "a b", "A-B", "x" * 300, "x" * 301, "-", "?"])
    assert len(set(slugs)) == len(slugs)
    assert all(slug.replace("-", "").isalnum() and slug.isascii() and len(slug) <= 60 for slug in slugs)
    assert not {"con", "nul", "com1", "lpt9", "aux"} & set(slugs)


@pytest.mark.parametrize(
    "name",
    [
        "<b>&amp;</svg>",
        ")(\\",
        "]]>",
        "'\"",
        "[bold]x[/]",
        "{0} %s",
        "../..",
        "\\n",
        "-->",
        "\U0001f5fc",
        "灯台",
    ],
)
def test_a_name_with_markup_goes_through_as_text(name: str) -> None:
    assert travel(name_piece(name).encode(), far=True) is Reached.DONE
    assert read_sound(name_piece(name)).pieces[0].name == name


@pytest.mark.parametrize(
    "name", ["", " ", "\n", "a\nb", "\u202eb", "\u200b", "\x07", "\x1b[2J", "\u2069", "\x00", "x" * 121]
)
def test_a_name_that_cannot_be_printed_is_refused(name: str) -> None:
    assert travel(name_piece(name).encode(), far=True) is Reached.UNREAD
    (fault,) = list_faults(name_piece(name))
    assert fault.startswith("hall.yaml:4:17: 'name' ")


def run(*arguments: str, cwd: Path) -> subprocess.CompletedProcess[str]:
    """The program as a process of its own; what hangs fails the test."""
    return subprocess.run(
        [sys.executable, "-m", "templater", *arguments],
        capture_output=True,
        text=True,
        timeout=60,
        cwd=cwd,
        check=False,
    )


def test_what_is_no_file_is_refused_and_never_waited_for(tmp_path: Path) -> None:
    os.mkfifo(tmp_path / "pipe")
    (tmp_path / "folder").mkdir()
    (tmp_path / "link").symlink_to("link")
    hint = "name a layout file; 'templater new FILE' writes one"
    pipe = "a pipe or a device"
    for name, reason in (
        ("folder", "a folder"),
        ("pipe", pipe),
        ("/dev/zero", pipe),
        ("/dev/null", pipe),
    ):
        path = tmp_path / name
        with pytest.raises(LayoutError) as caught:
            read_source(path)
        assert str(caught.value) == f"cannot read {path}: {reason}\n  {hint}"
    for name in ("missing.yaml", "link", "a\0b", "x" * 5000):
        with pytest.raises(LayoutError, match="cannot read"):
            read_source(tmp_path / name)
    ended = run("check", "pipe", cwd=tmp_path)
    assert (ended.returncode, ended.stdout) == (ExitCode.LAYOUT, "")
    assert ended.stderr == f"cannot read pipe: {pipe}\n  {hint}\n"


@pytest.mark.skipif(not Path("/proc/self/maps").exists(), reason="there is no /proc on this system")
def test_a_file_of_the_kernel_counts_as_empty() -> None:
    assert read_source(Path("/proc/self/maps")) == b""


@pytest.mark.skipif(os.geteuid() == 0, reason="root may read every file")
def test_a_file_that_may_not_be_read_is_told(tmp_path: Path) -> None:
    path = tmp_path / "hall.yaml"
    path.touch(mode=0)
    with pytest.raises(LayoutError, match="Permission denied"):
        read_source(path)


def test_a_file_of_fifty_megabytes_is_refused_unread(tmp_path: Path) -> None:
    path = tmp_path / "hall.yaml"
    with path.open("wb") as stream:
        stream.truncate(50_000_000)
    content = read_source(path)
    assert len(content) == 4_000_001
    with pytest.raises(LayoutError, match="more than 4,000,000 bytes"):
        plan_wall(content, "hall.yaml")


def test_a_paper_without_room_is_told_with_its_file() -> None:
    tiny = name_piece("Tide chart") + "paper: 125 x 165 mm\nmargin: 50 mm\nlap: 50 mm\n"
    assert travel(tiny.encode(), far=True) is Reached.UNCUT


def test_what_stderr_is_told_of_a_hostile_file_is_clean(tmp_path: Path) -> None:
    hostile = '"\\x1b[2J\\u202e": 1\n"\\ud800": 2\n' + "k" * 200 + ": 3\ntitle: [1]\n"
    (tmp_path / "hall.yaml").write_text(HEAD + hostile)
    ended = run("kit", "hall.yaml", "--out", "kit", cwd=tmp_path)
    assert ended.returncode == ExitCode.LAYOUT
    assert ended.stderr.replace("\n", "").isprintable()
    assert max(map(len, ended.stderr.splitlines())) < 300
    assert "Traceback" not in ended.stderr
    assert [path.name for path in tmp_path.iterdir()] == ["hall.yaml"]


SHORT: Sequence[tuple[str, str]] = (
    ("", "the file is empty"),
    ("# nothing\n", "the file is empty"),
    ("--- ~\n", "the layout needs keys"),
    ("title: 'Hall", "this is not YAML"),
)


@pytest.mark.parametrize(("text", "told"), SHORT)
def test_a_file_without_a_layout_is_told_as_such(text: str, told: str) -> None:
    (fault,) = list_faults(text)
    assert fault.startswith("hall.yaml:1:")
    assert told in fault
