"""A YAML text as a plain tree of mappings, lists and texts that knows where each of them stands.

Scalars stay text (``no``, ``1:30`` and ``08`` never change type), what a layout has no use for is
refused rather than guessed at, and no file, however made, is able to exhaust stack or memory.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, field
from typing import Any, TypeAlias

import yaml

from templater.errors import Fault, Place
from templater.layout.decoding import decode_text, end_of
from templater.layout.syntax_hints import hint_at
from templater.quoting import quote

MAX_DEPTH = 50
"""How deep lists and mappings may be nested; a layout needs five levels."""

MAX_VALUES = 300_000
"""How many keys and values a file may stand for once its aliases are followed.

Twelve a piece are usual, so a wall of 10,000 pieces needs less than half of it.
"""

MAX_ENTRIES = 10_000
"""How many entries a list or a mapping may have."""

_DIVIDE = "check that it is the layout of one wall; divide a very long wall into several layouts"

Path: TypeAlias = tuple[str | int, ...]
"""The way from the root to a value: keys of mappings and numbers (from 0) of list items."""


@dataclass(slots=True)
class Node:
    """A value and its place; ``data`` is the same value made of plain dicts, lists and strings.

    ``count`` is the number of values in it, aliases followed.
    """

    data: Any
    at: Place
    children: dict[str | int, Node] = field(default_factory=dict)
    keys_at: dict[str | int, Place] = field(default_factory=dict)
    count: int = 1


@dataclass(frozen=True, slots=True)
class Source:
    """What was read; ``root`` is None where the text is no YAML at all."""

    root: Node | None
    faults: tuple[Fault, ...]


def find_value(root: Node, path: Path) -> Place:
    """Where the value stands, or the nearest of its parents that is in the file."""
    return _follow(root, path).at


def find_key(root: Node, path: Path) -> Place:
    """Where the key that leads to the value stands."""
    parent = _follow(root, path[:-1])
    return parent.keys_at.get(path[-1], parent.at)


def _follow(node: Node, path: Path) -> Node:
    for step in path:
        if step not in node.children:
            break
        node = node.children[step]
    return node


def read_source(content: bytes | str, file: str) -> Source:
    """Read a YAML text; every fault found carries its place."""
    text = decode_text(content, file)
    if isinstance(text, Fault):
        return Source(None, (text,))
    builder = _Builder(file)
    try:
        builder.build(text)
    except _StopReadingError as stop:
        return Source(None, (*builder.faults, stop.fault))
    return Source(builder.root, tuple(builder.faults))


class _StopReadingError(Exception):
    """The text cannot be read any further; never leaves this module."""

    def __init__(self, fault: Fault) -> None:
        super().__init__(fault)
        self.fault = fault


@dataclass(slots=True)
class _Open:
    """A mapping or list that is still being read; ``key`` waits for its value."""

    node: Node
    key: str | None = None
    key_at: Place | None = None


class _Builder:
    """Builds the tree from the parser's events, with a stack of its own instead of the machine's."""

    def __init__(self, file: str) -> None:
        self.file = file
        self.root: Node | None = None
        self.faults: list[Fault] = []
        self._open: list[_Open] = []
        self._anchors: dict[str, Node] = {}
        self._values = 0

    def build(self, text: str) -> None:
        """Read all events of the text's first document."""
        for event in self._events(text):
            match event:
                case yaml.ScalarEvent():
                    self._take_scalar(event)
                case yaml.MappingStartEvent():
                    self._start({}, event)
                case yaml.SequenceStartEvent():
                    self._start([], event)
                case yaml.MappingEndEvent() | yaml.SequenceEndEvent():
                    self._put(self._open.pop().node)
                case yaml.AliasEvent():
                    self._take_alias(event)
                case yaml.DocumentStartEvent() if self.root:
                    self._blame(event, "the file has a second document", "keep one layout a file")
                    return

    def _events(self, text: str) -> Iterator[Any]:
        try:
            yield from yaml.parse(text, Loader=yaml.CSafeLoader)
        except yaml.MarkedYAMLError as error:
            # Where a text ends too early, the fault is not there but at what never ends.
            marks = [mark for mark in (error.problem_mark, error.context_mark) if mark]
            mark = next((mark for mark in marks if mark.index < len(text)), None)
            place = self._place(mark) if mark else end_of(text.rstrip(), self.file)
            reason = ", ".join(filter(None, (error.context, error.problem)))
            hint = hint_at(text, mark.index if mark else None)
            raise _StopReadingError(Fault(f"this is not YAML: {reason}", hint, place)) from None

    def _place(self, mark: Any) -> Place:
        return Place(self.file, mark.line + 1, mark.column + 1)

    def _blame(self, event: Any, message: str, hint: str) -> None:
        self.faults.append(Fault(message, hint, self._place(event.start_mark)))

    def _stop(self, event: Any, message: str, hint: str) -> _StopReadingError:
        return _StopReadingError(Fault(message, hint, self._place(event.start_mark)))

    def _awaits_key(self) -> bool:
        """Whether the next value is a key of a mapping."""
        return (
            bool(self._open)
            and self._open[-1].key is None
            and isinstance(self._open[-1].node.data, dict)
        )

    def _take_scalar(self, event: Any) -> None:
        node = self._registered(event, Node(event.value, self._place(event.start_mark)))
        if self._awaits_key():
            self._open[-1].key, self._open[-1].key_at = node.data, node.at
        else:
            self._put(node)

    def _start(self, data: Any, event: Any) -> None:
        self._refuse_as_key(event)
        if len(self._open) == MAX_DEPTH:
            message = f"lists and mappings are nested more than {MAX_DEPTH} deep"
            hint = "remove brackets or indents: a layout needs five levels"
            raise self._stop(event, message, hint)
        self._open.append(_Open(self._registered(event, Node(data, self._place(event.start_mark)))))

    def _take_alias(self, event: Any) -> None:
        self._refuse_as_key(event)
        name = quote(f"*{event.anchor}")
        node = self._anchors.get(event.anchor)
        if node is None:
            raise self._stop(event, f"{name} refers to nothing above it", "write the value out")
        if any(open_.node is node for open_ in self._open):
            raise self._stop(event, f"{name} stands within what it refers to", "write the value out")
        self._put(node)
        self._count(node.count, event, f"with {name} the file stands for", "write the values out")

    def _refuse_as_key(self, event: Any) -> None:
        if self._awaits_key():
            raise self._stop(
                event, "a key must be plain text", "quote a text that starts with {, [ or *"
            )

    def _registered(self, event: Any, node: Node) -> Node:
        """The node, counted and known by its anchor; a tag is refused, since none has a meaning."""
        self._count(1, event, "the file has", _DIVIDE)
        if event.tag is not None:
            self._blame(event, f"the tag {quote(event.tag)} has no meaning in a layout", "remove it")
        if event.anchor is not None:
            self._anchors[event.anchor] = node
        return node

    def _count(self, values: int, event: Any, subject: str, hint: str) -> None:
        """Count values and stop where they are too many for one file."""
        self._values += values
        if self._values > MAX_VALUES:
            raise self._stop(event, f"{subject} more than {MAX_VALUES:,} keys and values", hint)

    def _put(self, node: Node) -> None:
        """Put a finished value where it belongs; of a key given twice the first value counts."""
        if not self._open:
            self.root = node
            return
        parent, key, key_at = self._open[-1].node, self._open[-1].key, self._open[-1].key_at
        if len(parent.data) == MAX_ENTRIES:
            kind = "list" if isinstance(parent.data, list) else "mapping"
            message = (
                f"the {kind} that starts in line {parent.at.line} has more than {MAX_ENTRIES:,} entries"
            )
            raise _StopReadingError(Fault(message, _DIVIDE, key_at or node.at))
        parent.count += node.count
        if key is None or key_at is None:
            parent.children[len(parent.data)] = node
            parent.data.append(node.data)
            return
        self._open[-1].key = None
        if key in parent.data:
            message = f"{quote(key)} is given twice, first in line {parent.keys_at[key].line}"
            self.faults.append(Fault(message, "keep one of the two", key_at))
            return
        parent.data[key] = node.data
        parent.children[key] = node
        parent.keys_at[key] = key_at
