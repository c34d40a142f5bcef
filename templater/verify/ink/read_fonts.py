"""What the bytes of a PDF's words mean, by the tables that come with its fonts."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from typing import Any

from templater.verify.ink.tell_letters import tell_letters
from templater.verify.model import UnreadableError

_ESCAPES = {b"n": b"\n", b"r": b"\r", b"t": b"\t", b"b": b"\b", b"f": b"\f", b"\n": b"", b"\r": b""}
_UNKNOWN = "\ufffd"
_PARTS = re.compile(
    rb"(\((?>[^()\\]++|\\.|\((?>[^()\\]++|\\.)*+\))*+\)|<[0-9A-Fa-f\s]*+>)|([-+.\d]++)", re.DOTALL
)
APART = 0.6
"""Words further from the last ones than this, in ems, are others."""


@dataclass(frozen=True, slots=True)
class Letters:
    """The letters of a font's codes, each of so many bytes; ``widths`` are in thousandths of an em."""

    by_code: dict[int, str]
    widths: dict[int, float]
    code_bytes: int = 1

    def spell(self, token: bytes) -> str:
        """The words of a string, as a page's content writes it."""
        content = read_string(token)
        if self.code_bytes == 1:
            return content.decode("latin-1").translate(self.by_code)
        return "".join(self.by_code.get(code, _UNKNOWN) for code in self._list_codes(content))

    def spell_list(self, token: bytes) -> Iterator[tuple[float, str]]:
        """The words of a list of strings, and how far from its start each begins, in ems.

        Strings are apart where there is more than a space between them.
        """
        at, begin, text = 0.0, 0.0, ""
        for string, shift in _PARTS.findall(token):
            if shift:
                at -= float(shift)
                if abs(float(shift)) > 1000 * APART and text:
                    yield begin / 1000, text
                    text = ""
                continue
            begin = begin if text else at
            text += self.spell(string)
            at += sum(self.widths.get(code, 0.0) for code in self._list_codes(read_string(string)))
        if text:
            yield begin / 1000, text

    def measure(self, token: bytes) -> float:
        """How far a string, or a list of strings, moves the place where words go on, in ems."""
        far = 0.0
        for string, shift in _PARTS.findall(token):
            codes = self._list_codes(read_string(string)) if string else ()
            far += sum(self.widths.get(code, 0.0) for code in codes) - float(shift or 0.0)
        return far / 1000

    def _list_codes(self, content: bytes) -> Iterable[int]:
        if self.code_bytes == 1:
            return content
        return (int.from_bytes(content[at : at + 2], "big") for at in range(0, len(content), 2))


def read_letters(font: Any) -> Letters:
    """What the codes of a font mean (ISO 32000-1, 9.10.3). Raises UnreadableError."""
    kind = font.get("/Subtype")
    if "/ToUnicode" in font:
        letters = _read_table(font.ToUnicode.read_bytes().decode("latin-1"))
    else:
        letters = tell_letters(font)
    if kind == "/Type0" and font.get("/Encoding") == "/Identity-H":
        return Letters(letters, dict(_read_wide_widths(font.DescendantFonts[0])), 2)
    if kind in ("/TrueType", "/Type1", "/Type3"):
        widths = dict(enumerate(map(float, font.get("/Widths", ())), int(font.get("/FirstChar", 0))))
        return Letters(dict.fromkeys(range(256), _UNKNOWN) | letters, widths)
    raise UnreadableError(f"its words cannot be read: a font of the kind {kind}")


def _read_wide_widths(font: Any) -> Iterator[tuple[int, float]]:
    """The widths of a font of two bytes a letter, one by one or of a range (ISO 32000-1, 9.7.4.3)."""
    told = list(font.get("/W", ()))
    while len(told) >= 2:
        first = int(told[0])
        if hasattr(told[1], "__len__"):
            yield from enumerate(map(float, told[1]), first)
            told = told[2:]
        else:
            yield from ((code, float(told[2])) for code in range(first, int(told[1]) + 1))
            told = told[3:]


def _read_table(text: str) -> dict[int, str]:
    """The letters that a table of a font names."""
    letters: dict[int, str] = {}
    for body in re.findall(r"beginbfchar(.*?)endbfchar", text, re.DOTALL):
        for code, letter in re.findall(r"<(\w+)>\s*<(\w+)>", body):
            letters[int(code, 16)] = _utf16(letter)
    for body in re.findall(r"beginbfrange(.*?)endbfrange", text, re.DOTALL):
        letters.update(_read_ranges(body))
    return letters


def _read_ranges(body: str) -> dict[int, str]:
    """The letters of ranges of codes: listed one by one, or counted on from the first."""
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
    """The letters that digits stand for; a control character is none."""
    text = bytes.fromhex(digits).decode("utf-16-be")
    return _UNKNOWN if text < " " else text


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
