"""Whether a comment follows a value in the file: it may be the rest of what somebody wrote."""

from __future__ import annotations

from collections.abc import Sequence
from functools import cached_property

from templater.errors import Fault
from templater.layout.decoding import decode_text
from templater.layout.source import Node, Path, find_value


class Comments:
    """The comments of a file, which is looked at only when somebody asks."""

    def __init__(self, root: Node, content: bytes | str) -> None:
        self._root, self._content = root, content

    def follows(self, path: Path, value: str) -> bool:
        """Whether a comment follows the plain text at a path, on its line."""
        place = find_value(self._root, path)
        rest = self._lines[place.line - 1][place.column - 1 :]
        return rest.startswith(value) and rest[len(value) :].lstrip().startswith("#")

    @cached_property
    def _lines(self) -> Sequence[str]:
        text = decode_text(self._content, "")
        return () if isinstance(text, Fault) else text.splitlines()
