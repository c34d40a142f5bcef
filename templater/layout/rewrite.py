"""Writes what was chosen for groups into the text of a layout, and leaves all else as it is.

Keys are replaced where they stand. A comment within what is replaced moves above the line where
that began.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from typing import Any

from templater.errors import Fault, LayoutError
from templater.layout.arrangements import EXCLUSIVE, USERS
from templater.layout.names import fold_name
from templater.layout.read import read_layout
from templater.layout.source import read_source
from templater.layout.spans import Span, find_comments, read_spans
from templater.layout.written import Written, write_pair
from templater.quoting import list_words, quote

_MARK = "\ufeff"
_LINE_END = re.compile(r"\r\n|\r|\n|\Z")


def settle_groups(text: str, settled: Mapping[str, Mapping[str, Written]]) -> str:
    """The layout's text with some keys of some groups replaced or added, by the groups' names.

    ``pieces`` takes the place of ``choose``; keys that do not apply to the arrangement are removed.
    Raises LayoutError where the result would not read back, all but the groups as it was.
    """
    plain = text.removeprefix(_MARK)
    changed = plain
    for group, keys in settled.items():
        span = _find_group(read_spans(changed), group)
        if span is None:
            raise _cannot_write([group], "it is not written out under 'groups'")
        changed = _apply(changed, list(_Changes(changed, span, keys).list_edits()))
    if faults := read_layout(changed, "layout").faults:
        raise _cannot_write(settled, faults[0].message)
    if _read_others(plain, settled) != _read_others(changed, settled):
        raise _cannot_write(settled, "something else would change with it")
    return text[: len(text) - len(plain)] + changed


def _cannot_write(groups: Iterable[str], reason: str) -> LayoutError:
    named = list_words([quote(group) for group in groups], "and")
    message = f"what was chosen for {named} cannot be written into the layout: {reason}"
    return LayoutError(
        [Fault(message, "write the group out key by key, without & and *, and try again")]
    )


def _find_group(root: Span, group: str) -> Span | None:
    """The mapping of the group of that name."""
    groups = root.find("groups")
    for span in groups.parts if groups else ():
        name = span.find("name") if span.pairs else None
        if name and name.text is not None and fold_name(name.text) == fold_name(group):
            return span
    return None


def _read_others(text: str, groups: Iterable[str]) -> Any:
    """All that a text says, without some groups."""
    root = read_source(text, "layout").root
    if root is None:
        return None
    left_out = {fold_name(group) for group in groups}
    named = [each for each in root.data["groups"] if fold_name(each["name"]) not in left_out]
    return {**root.data, "groups": named}


@dataclass(frozen=True, slots=True, order=True)
class _Edit:
    """What takes the place of a stretch of the text."""

    start: int
    end: int
    text: str


def _apply(text: str, edits: list[_Edit]) -> str:
    parts, at = [], 0
    for edit in sorted(edits):
        parts += [text[at : edit.start], edit.text]
        at = edit.end
    return "".join(parts) + text[at:]


class _Changes:
    """The edits of one group, none of which overlap."""

    def __init__(self, text: str, span: Span, settled: Mapping[str, Written]) -> None:
        self._text = text
        self._span = span
        self._settled = settled
        self._keys = [str(key.text) for key, _ in span.pairs]
        old = span.find("arrange")
        self._old_arrange = old.text if old else None
        self._comments = find_comments(text)
        found = re.search(r"\r\n|\r|\n", text)
        self._newline = found.group() if found else "\n"

    def list_edits(self) -> Iterator[_Edit]:
        """Everything to be changed."""
        leaving = [not self._stays(key) for key in self._keys]
        first = leaving.index(False)
        if first:
            yield from self._replace(self._start(0), self._start(first), "")
        for number, key in enumerate(self._keys):
            new = self._new_key(key)
            if leaving[number] and number > first:
                yield self._remove(number)
            elif new in self._settled and not self._says_so(number):
                yield from self._replace(self._start(number), self._end(number), self._write(new))
        yield from self._add()

    def _says_so(self, number: int) -> bool:
        """Whether what a key is to be is what it is already."""
        key, value = self._span.pairs[number]
        settled = self._settled[self._new_key(str(key.text))]
        if key.text == "choose" or isinstance(settled, Mapping):
            return False
        if isinstance(settled, str):
            return value.text == settled
        return [part.text for part in value.parts] == list(settled)

    def _new_key(self, key: str) -> str:
        return "pieces" if key == "choose" else key

    def _stays(self, key: str) -> bool:
        """Whether a key of the group applies to the arrangement that it will have."""
        arrange = self._settled.get("arrange", self._old_arrange)
        if self._new_key(key) in self._settled:
            return True
        others = {other for pair in EXCLUSIVE if key in pair for other in pair}
        return not others & self._settled.keys() and arrange in USERS.get(key, (arrange,))

    def _start(self, number: int) -> int:
        return self._span.pairs[number][0].start

    def _end(self, number: int) -> int:
        return self._span.pairs[number][1].end

    def _write(self, key: str) -> str:
        """A key and what was chosen for it, in the group's style."""
        start = self._span.start if self._span.is_flow else self._start(0)
        column = start - self._line_start(start)
        value = self._settled[key]
        return write_pair(key, value, column=column, newline=self._newline, is_flow=self._span.is_flow)

    def _add(self) -> Iterator[_Edit]:
        """The keys that the group has not had, after its arrangement."""
        has = {self._new_key(key) for key in self._keys}
        at = self._end(self._keys.index("arrange"))
        if self._span.is_flow:
            joint = ", "
        else:
            at = self._line_end(at)
            joint = self._newline + " " * (self._start(0) - self._line_start(self._start(0)))
        added = "".join(joint + self._write(key) for key in self._settled if key not in has)
        if added:
            yield _Edit(at, at, added)

    def _remove(self, number: int) -> _Edit:
        """Take a key out that is not the first; its comments stay, on lines of their own."""
        start, end = self._end(number - 1), self._end(number)
        if not self._span.is_flow:
            start, end = self._line_end(start), self._line_end(end)
        indent = " " * (self._start(number) - self._line_start(self._start(number)))
        kept = [f"{self._newline}{indent}{comment}" for comment in self._comments_in(start, end)]
        ending = self._newline + indent if kept and self._span.is_flow else ""
        return _Edit(start, end, "".join(kept) + ending)

    def _replace(self, start: int, end: int, text: str) -> Iterator[_Edit]:
        """Put a text in place of another; comments in that one move above the group or its line."""
        yield _Edit(start, end, text)
        line = self._line_start(self._span.start if self._span.is_flow else start)
        stretch = self._text[line:start]
        indent = stretch[: len(stretch) - len(stretch.lstrip(" "))]
        if kept := self._comments_in(start, end):
            yield _Edit(line, line, "".join(f"{indent}{comment}{self._newline}" for comment in kept))

    def _comments_in(self, start: int, end: int) -> list[str]:
        return [comment for at, comment in self._comments if start <= at < end]

    def _line_start(self, at: int) -> int:
        return max(self._text.rfind("\n", 0, at), self._text.rfind("\r", 0, at)) + 1

    def _line_end(self, at: int) -> int:
        found = _LINE_END.search(self._text, at)
        return len(self._text) if found is None else found.start()
