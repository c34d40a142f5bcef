"""Comments that follow a value, found in the file itself."""

import pytest

from templater.layout.comments import Comments
from templater.layout.source import read_source


@pytest.mark.parametrize(
    ("line", "value", "follows"),
    [
        ("name: Print #3", "Print", True),
        ("name: Print\t# three", "Print", True),
        ("name: Print", "Print", False),
        ("name: Print#3", "Print#3", False),
        ("name: 'Print' # three", "Print", False),
        ("name: Print\n# three", "Print", False),
        ("name: &one Print # three", "Print", False),
    ],
)
def test_a_comment_after_a_plain_text(line: str, value: str, follows: bool) -> None:
    for content in (line, line.encode(), b"\xef\xbb\xbf" + line.encode(), line.replace("\n", "\r\n")):
        root = read_source(content, "hall.yaml").root
        assert root is not None
        assert root.data == {"name": value}
        assert Comments(root, content).follows(("name",), value) is follows
