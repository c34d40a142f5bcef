"""What mends a text that is no YAML: what is told of a line that somebody may well write."""

import pytest

from templater.layout.read import read_layout

INCHES = "an inch mark ends a text in double quotes: write for example 2 in, or '2\"' in single quotes"
COLONS = "check colons, indents and brackets here and above; quote a text with ': ' or ' #' in it"


@pytest.mark.parametrize(
    ("line", "hint"),
    [
        ('hang: {by: wire, drop: "2"", rise: 1/2 in}', INCHES),
        ('title: "60" wall"', INCHES),
        ('title: "60" wall', INCHES),
        ('title: "60 in" wall', COLONS),
        ('a: {size: "16", b: [}', COLONS),
        ('a: {"16": 3, b: [}', COLONS),
        ("a: b: c", COLONS),
        ("a: {b", COLONS),
        ("a:\n\tb: c", "indent with spaces instead of tabs"),
    ],
)
def test_a_line_that_is_no_yaml_is_told_what_mends_it(line: str, hint: str) -> None:
    (fault,) = read_layout(f"{line}\nunits: in\n", "hall.yaml").faults
    assert fault.message.startswith("this is not YAML: ")
    assert fault.hint == hint


@pytest.mark.parametrize("line", ["drop: '2\"'", 'drop: 2"', 'size: 16" x 20"'])
def test_what_the_hint_says_can_be_read(line: str) -> None:
    assert not any("not YAML" in fault.message for fault in read_layout(line, "hall.yaml").faults)
