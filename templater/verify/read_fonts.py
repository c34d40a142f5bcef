"""What the bytes of a PDF's words mean, by the tables that come with its fonts."""

from __future__ import annotations

import re
from typing import Any

from templater.verify.model import UnreadableError

_ESCAPES = {b"n": b"\n", b"r": b"\r", b"t": b"\t", b"b": b"\b", b"f": b"\f", b"\n": b"", b"\r": b""}


def read_letters(font: Any) -> dict[int, str]:
    """The letter of each byte of a font with one byte a letter (ISO 32000-1, 9.10.3).

    Raises UnreadableError.
    """
    if font.get("/Subtype") not in ("/TrueType", "/Type1") or "/ToUnicode" not in font:
        raise UnreadableError("a font that does not tell its letters")
    text = font.ToUnicode.read_bytes().decode("latin-1")
    letters = dict.fromkeys(range(256), "\ufffd")  # what the font has no letter for
    for body in re.findall(r"beginbfchar(.*?)endbfchar", text, re.DOTALL):
        for code, letter in re.findall(r"<(\w+)>\s*<(\w+)>", body):
            letters[int(code, 16)] = _utf16(letter)
    for body in re.findall(r"beginbfrange(.*?)endbfrange", text, re.DOTALL):
        letters.update(_read_ranges(body))
    return letters


def _read_ranges(body: str) -> dict[int, str]:
    """The letters of ranges of bytes: listed one by one, or counted on from the first."""
    letters = {}
    for low, high, listed, start in re.findall(
        r"<(\w+)>\s*<(\w+)>\s*(?:\[(.*?)\]|<(\w+)>)", body, re.DOTALL
    ):
        codes = range(int(low, 16), int(high, 16) + 1)
        if start:
            first = int(start, 16)
            letters.update({code: chr(first + at) for at, code in enumerate(codes)})
        else:
            letters.update(zip(codes, map(_utf16, re.findall(r"<(\w*)>", listed)), strict=False))
    return letters


def _utf16(digits: str) -> str:
    return bytes.fromhex(digits).decode("utf-16-be")


def read_string(token: bytes) -> bytes:
    """The bytes of a string as a page's content writes it (ISO 32000-1, 7.3.4)."""
    if token.startswith(b"<"):
        digits = re.sub(rb"\s", b"", token[1:-1])
        return bytes.fromhex((digits + b"0" * (len(digits) % 2)).decode("ascii"))
    body = token[1:-1]
    return re.sub(rb"\\([0-7]{1,3}|\r\n|.)", _unescape, body, flags=re.DOTALL) if b"\\" in body else body


def _unescape(match: re.Match[bytes]) -> bytes:
    """What one escape stands for."""
    code: bytes = match.group(1)
    if code[:1].isdigit():
        return bytes([int(code, 8) & 255])
    return b"" if code == b"\r\n" else _ESCAPES.get(code, code)
