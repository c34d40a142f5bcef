"""Where the values of a sound YAML text start and end, for a change that leaves the rest alone."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass
from itertools import pairwise
from typing import Any

import yaml

_COMMENT = re.compile(r"#[^\r\n]*")


@dataclass(frozen=True, slots=True)
class Span:
    """A value from its first character to just after its last.

    ``text`` is that of a scalar, ``parts`` the items of a list or the keys and values of a mapping,
    by turns; an alias has neither.
    """

    start: int
    end: int
    text: str | None = None
    parts: tuple[Span, ...] = ()
    is_flow: bool = False

    @property
    def pairs(self) -> tuple[tuple[Span, Span], ...]:
        """The keys and values of a mapping."""
        return tuple(zip(self.parts[::2], self.parts[1::2], strict=True))

    def find(self, key: str) -> Span | None:
        """The value of a mapping's key."""
        return next((value for name, value in self.pairs if name.text == key), None)


def read_spans(text: str) -> Span:
    """The spans of a text's only document; the text must be known to be readable."""
    events = yaml.parse(text, Loader=yaml.CSafeLoader)
    first: Any = next(event for event in events if isinstance(event, yaml.NodeEvent))
    return _read(first, events, text)


def _read(event: Any, events: Iterator[Any], text: str) -> Span:
    """The value that starts with an event, and all that is in it."""
    start, end = event.start_mark.index, event.end_mark.index
    if isinstance(event, yaml.ScalarEvent):
        return Span(start, len(text[:end].rstrip()), event.value)
    if not isinstance(event, yaml.CollectionStartEvent):
        return Span(start, end)
    parts = []
    while not isinstance(inner := next(events), yaml.CollectionEndEvent):
        parts.append(_read(inner, events, text))
    closing: Any = inner.end_mark
    end = closing.index if event.flow_style else parts[-1].end
    return Span(start, end, None, tuple(parts), bool(event.flow_style))


def find_comments(text: str) -> tuple[tuple[int, str], ...]:
    """Every comment with its place: what starts with ``#`` between two tokens."""
    tokens: Any = yaml.scan(text, Loader=yaml.CSafeLoader)
    marks = ((token.start_mark.index, token.end_mark.index) for token in tokens)
    return tuple(
        (match.start(), match.group())
        for (_, start), (end, _) in pairwise(marks)
        for match in _COMMENT.finditer(text, start, end)
    )
