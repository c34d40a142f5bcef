"""The bytes of a layout file as text that is fit for the YAML reader, or what is wrong with them."""

from __future__ import annotations

import re

from templater.errors import Fault, Place
from templater.quoting import quote

MAX_BYTES = 4_000_000
"""The largest file read; a wall of 5,000 pieces takes about 700,000 bytes."""

_FORBIDDEN = re.compile("[^\t\n\r\x20-\x7e\xa0-\u2027\u202a-\ud7ff\ue000-\ufffd\U00010000-\U0010ffff]")
"""What YAML 1.1 (chapter 5.1) does not count among the printable characters, and its odd line ends.

U+0085, U+2028 and U+2029 would end a line for the YAML reader, but not in an editor, whose count of
lines a place must agree with.
"""

_WIDE_START = 4
"""Among so many bytes at the start, UTF-16 and UTF-32 have a zero if they have no byte order mark."""

_OTHER_BYTE_ORDER_MARKS = (b"\xff\xfe", b"\xfe\xff", b"\x00\x00\xfe\xff")


def decode_text(content: bytes | str, file: str) -> str | Fault:
    """The text without its byte order mark; line and column of the first character that is amiss."""
    if len(content) > MAX_BYTES:
        message = f"the file has more than {MAX_BYTES:,} bytes"
        return Fault(message, "check that it is the layout: one wall needs far less", Place(file))
    text = _decode_utf_8(content, file) if isinstance(content, bytes) else content
    if isinstance(text, Fault):
        return text
    text = text.removeprefix("\ufeff")
    if found := _FORBIDDEN.search(text):
        message = f"the character {quote(found.group())} cannot stand in a layout"
        return Fault(message, "remove it", end_of(text[: found.start()], file))
    return text


def _decode_utf_8(content: bytes, file: str) -> str | Fault:
    if content.startswith(_OTHER_BYTE_ORDER_MARKS) or b"\0" in content[:_WIDE_START]:
        return Fault("the file is UTF-16 or UTF-32, not UTF-8", "save it as UTF-8", Place(file))
    try:
        return content.decode("utf-8")
    except UnicodeDecodeError as error:
        good = content[: error.start].decode("utf-8").removeprefix("\ufeff")
        message = f"the byte 0x{content[error.start]:02x} is not UTF-8"
        return Fault(message, "save the file as UTF-8", end_of(good, file))


def end_of(text: str, file: str) -> Place:
    """The place just after a text that a file starts with."""
    lines = re.split(r"\r\n|\r|\n", text)
    return Place(file, len(lines), len(lines[-1]) + 1)
