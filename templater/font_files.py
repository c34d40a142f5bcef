"""The font files that a layout names, read where they lie: in the layout's own folder, nowhere else."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path
from stat import S_ISREG

from templater.errors import Fault
from templater.given_fonts import FontError, GivenFont
from templater.layout.model import FontFile
from templater.quoting import quote

LARGEST_BYTES = 64 << 20
"""The largest file that is read; fonts for all of Chinese, Japanese and Korean have about 20 MB."""

_PUT_THERE = "put the font file into the folder of the layout, and name it without a folder before it"


def read_fonts(files: Sequence[FontFile], folder: Path) -> tuple[tuple[GivenFont, ...], list[Fault]]:
    """The fonts that can be used, in their order, and what is wrong with the others."""
    fonts, faults = [], []
    for file in files:
        try:
            fonts.append(GivenFont(_read(file.path, folder)))
        except FontError as error:
            message = f"'font' names {quote(file.path)}, {error.message}"
            faults.append(Fault(message, error.hint, file.at))
    return tuple(fonts), faults


def _read(name: str, folder: Path) -> bytes:
    """The content of a file of the folder; links are followed, but not out of it. Raises FontError."""
    try:
        home = folder.resolve()
        path = (home / name).resolve()
        if not path.is_relative_to(home):
            raise FontError("which lies outside the folder of the layout", _PUT_THERE)
        about = path.stat()
        if not S_ISREG(about.st_mode):
            raise FontError("which is not a file", _PUT_THERE)
        if about.st_size > LARGEST_BYTES:
            size, most = (count / (1 << 20) for count in (about.st_size, LARGEST_BYTES))
            raise FontError(f"which has {size:.0f} MB, more than {most:.0f} MB", "name a smaller font")
        return path.read_bytes()
    except FileNotFoundError as error:
        raise FontError("but there is no such file beside the layout", _PUT_THERE) from error
    except (OSError, RuntimeError) as error:  # RuntimeError: links that lead round in a circle
        told = getattr(error, "strerror", None) or error
        raise FontError(f"which cannot be read: {told}", _PUT_THERE) from error
