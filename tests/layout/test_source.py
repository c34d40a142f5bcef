import pytest

from templater.errors import Place
from templater.layout.source import Path, find_key, find_value, read_source
from tests.layout.files import list_faults

SYNTAX_HINT = "check colons, indents and brackets here and above; quote a text with ': ' or ' #' in it"

TEXT = """\
# A comment.
title: 'Hall'
wall: {width: 1:30, height: 08}

pieces:
- name: no
  size: &size 16 x 20
- {name: ~, size: *size}
"""


def test_scalars_stay_text() -> None:
    root = read_source(TEXT, "hall.yaml").root
    assert root is not None
    assert root.data == {
        "title": "Hall",
        "wall": {"width": "1:30", "height": "08"},
        "pieces": [{"name": "no", "size": "16 x 20"}, {"name": "~", "size": "16 x 20"}],
    }


@pytest.mark.parametrize(
    ("path", "line", "column"),
    [
        ((), 2, 1),
        (("title",), 2, 8),
        (("wall",), 3, 7),
        (("wall", "height"), 3, 29),
        (("wall", "depth"), 3, 7),  # not there: its parent
        (("pieces",), 6, 1),
        (("pieces", 0), 6, 3),
        (("pieces", 0, "size"), 7, 9),
        (("pieces", 1, "name"), 8, 10),
        (("pieces", 1, "size"), 7, 9),  # where the value is written, not its alias
        (("pieces", 7, "size"), 6, 1),
    ],
)
def test_every_value_knows_its_place(path: Path, line: int, column: int) -> None:
    root = read_source(TEXT, "hall.yaml").root
    assert root is not None
    assert find_value(root, path) == Place("hall.yaml", line, column)


@pytest.mark.parametrize(
    ("path", "line", "column"),
    [
        (("title",), 2, 1),
        (("wall", "height"), 3, 21),
        (("pieces", 0, "size"), 7, 3),
        (("pieces", 1, "size"), 8, 13),
    ],
)
def test_every_key_knows_its_place(path: Path, line: int, column: int) -> None:
    root = read_source(TEXT, "hall.yaml").root
    assert root is not None
    assert find_key(root, path) == Place("hall.yaml", line, column)


@pytest.mark.parametrize("text", [b"", "", "\n\n  \n", "# only a comment\n", "---\n", "--- ''\n"])
def test_an_empty_file_is_faulty_at_its_start(text: bytes | str) -> None:
    (fault,) = list_faults(text)
    hint = "start from the layout that 'templater new FILE' writes"
    assert (
        fault.removeprefix("hall.yaml:1:5").removeprefix("hall.yaml:1:1")
        == f": the file is empty\n  {hint}"
    )


@pytest.mark.parametrize(
    ("text", "shown"),
    [("- title\n- wall", "a list"), ("Keeper", "'Keeper'"), ("42", "'42'")],
)
def test_a_file_that_is_no_mapping(text: str, shown: str) -> None:
    assert list_faults(text) == [
        f"hall.yaml:1:1: the layout needs keys such as 'title', 'wall' and 'pieces', but is {shown}\n"
        "  start from the layout that 'templater new FILE' writes"
    ]


@pytest.mark.parametrize(
    ("text", "fault"),
    [
        (
            "title: 'Hall\nwall: 5",
            "1:8: this is not YAML: while scanning a quoted scalar, found unexpected end of stream\n"
            f"  {SYNTAX_HINT}",
        ),
        (
            "title: Hall\nwall: {width: 3 m",
            "2:7: this is not YAML: while parsing a flow mapping, did not find expected ',' or '}'\n"
            f"  {SYNTAX_HINT}",
        ),
        (
            "title: Hall: stairs",
            f"1:12: this is not YAML: mapping values are not allowed in this context\n  {SYNTAX_HINT}",
        ),
        (
            "wall:\n\twidth: 3 m",
            "2:1: this is not YAML: while scanning for the next token, found character that cannot start"
            " any token\n  indent with spaces instead of tabs",
        ),
        (
            "[title]: Hall",
            "1:1: a key must be plain text\n  quote a text that starts with {, [ or *",
        ),
        (
            "? {title: 1}\n: Hall",
            "1:3: a key must be plain text\n  quote a text that starts with {, [ or *",
        ),
        ("title: *hall", "1:8: '*hall' refers to nothing above it\n  write the value out"),
        ("title: &hall [*hall]", "1:15: '*hall' stands within what it refers to\n  write the value out"),
        (
            "- " * 51,
            "1:101: lists and mappings are nested more than 50 deep\n"
            "  remove brackets or indents: a layout needs five levels",
        ),
    ],
)
def test_what_cannot_be_read_further(text: str, fault: str) -> None:
    assert list_faults(text) == [f"hall.yaml:{fault}"]


@pytest.mark.parametrize("opening", ["[", "{a: ", "- ", "? ", "&a [", "!x ["])
def test_deep_nesting_is_refused_and_harms_nothing(opening: str) -> None:
    *_, last = list_faults(opening * 100_000)
    assert last.startswith("hall.yaml:1:")


def test_aliases_that_grow_without_end_are_refused() -> None:
    lines = ["a: &a [x, x, x, x, x, x, x, x, x, x]"]
    lines += [
        f"{name}: &{name} [{', '.join([f'*{before}'] * 10)}]"
        for before, name in zip("abcdefgh", "bcdefghi", strict=True)
    ]
    assert list_faults("\n".join(lines)) == [
        # Lines 1 to 5 stand for 11 + 111 + 1,111 + 11,111 + 111,111 = 123,455 values; in line 6 each
        # alias adds 111,111 and the second, 4 columns right of the first, passes 300,000.
        "hall.yaml:6:12: with '*e' the file stands for more than 300,000 keys and values\n"
        "  write the values out"
    ]


def test_of_a_key_given_twice_the_second_is_faulty() -> None:
    source = read_source("title: Hall\nwall: {width: 1, height: 2, width: 3}\ntitle: Stair", "hall.yaml")
    assert [str(fault) for fault in source.faults] == [
        "hall.yaml:2:29: 'width' is given twice, first in line 2\n  keep one of the two",
        "hall.yaml:3:1: 'title' is given twice, first in line 1\n  keep one of the two",
    ]
    assert source.root is not None
    assert source.root.data == {"title": "Hall", "wall": {"width": "1", "height": "2"}}


def test_a_second_document_is_faulty_at_its_start() -> None:
    source = read_source("---\ntitle: Hall\n---\ntitle: Stair\n", "hall.yaml")
    assert [str(fault) for fault in source.faults] == [
        "hall.yaml:3:1: the file has a second document\n  keep one layout a file"
    ]


@pytest.mark.parametrize("tag", ["!!python/object:os.system", "!!int", "!mine"])
def test_tags_are_refused(tag: str) -> None:
    source = read_source(f"title: {tag} 5", "hall.yaml")
    shown = tag.replace("!!", "tag:yaml.org,2002:")
    assert [str(fault) for fault in source.faults] == [
        f"hall.yaml:1:8: the tag '{shown}' has no meaning in a layout\n  remove it"
    ]
    assert source.root is not None
    assert source.root.data == {"title": "5"}
