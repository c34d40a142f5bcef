"""A seal on files that are made to be replaced, so that nothing else ever is.

It holds the hash of all that stands before it. Whoever draws on such a file, fills it in or saves it
anew breaks the seal, and the file is theirs.
"""

from __future__ import annotations

from hashlib import sha256
from pathlib import Path
from zlib import crc32

from templater.to_files.file import whole_file

_LARGEST = 100_000_000
"""Bytes. No file of ours comes near; a larger one is not read."""

_PNG_END = b"\0\0\0\0IEND\xaeB`\x82"
"""The last chunk of every PNG (PNG specification, 11.2.5)."""


def write_sealed(path: Path, content: bytes) -> None:
    """Write a PDF, PNG or SVG, sealed; only what is so itself is replaced. Raises WriteError."""
    with whole_file(path, is_sealed) as building:
        building.write_bytes(seal(content))


def seal(content: bytes) -> bytes:
    """A file's content with the seal at its end, where no program that opens it minds."""
    sealed = content.removesuffix(_PNG_END)
    return sealed + _end(sealed)


def is_sealed(path: Path) -> bool:
    """Whether a file is as this program wrote it, to the last byte. Raises OSError."""
    if path.stat().st_size > _LARGEST:
        return False
    content = path.read_bytes()
    body = content[: -len(_end(content))]
    return content == body + _end(body)


def _end(content: bytes) -> bytes:
    """The seal and all after it: always as long for one kind of file, known by how that begins."""
    mark = b"templater " + sha256(content).hexdigest().encode()
    if content.startswith(b"\x89PNG"):
        # PNG specification, 11.3.3.2: "Software" is the keyword for what made a picture.
        chunk = b"tEXtSoftware\0" + mark
        length, check = len(chunk) - 4, crc32(chunk)
        return length.to_bytes(4, "big") + chunk + check.to_bytes(4, "big") + _PNG_END
    if content.startswith(b"%PDF"):
        return b"%" + mark + b"\n"
    return b"<!-- " + mark + b" -->\n"
