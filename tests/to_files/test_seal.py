"""Files with a seal: known as the program's own to the last byte, and as readable as before."""

from __future__ import annotations

from hashlib import sha256
from io import BytesIO
from pathlib import Path
from xml.etree import ElementTree as ET
from zlib import crc32

import pikepdf
import pytest
from hypothesis import given
from hypothesis import strategies as st
from PIL import Image

from templater.errors import WriteError
from templater.to_files.seal import is_sealed, seal, write_sealed

SVG = b'<svg xmlns="http://www.w3.org/2000/svg" width="9mm" height="9mm"/>\n'


def _make_pdf() -> bytes:
    written = BytesIO()
    with pikepdf.new() as pdf:
        pdf.add_blank_page()
        pdf.save(written)
    return written.getvalue()


def _make_png() -> bytes:
    written = BytesIO()
    Image.new("L", (3, 2), 200).save(written, "PNG")
    return written.getvalue()


PLAIN = {"pdf": _make_pdf(), "png": _make_png(), "svg": SVG}


def _is_sealed(folder: Path, content: bytes) -> bool:
    (folder / "file").write_bytes(content)
    return is_sealed(folder / "file")


@pytest.mark.parametrize("kind", PLAIN)
def test_a_sealed_file_is_known_and_no_other(tmp_path: Path, kind: str) -> None:
    plain = PLAIN[kind]
    assert not _is_sealed(tmp_path, plain)
    assert _is_sealed(tmp_path, seal(plain))
    # What a viewer adds where somebody fills a form in, and what is sealed twice.
    assert not _is_sealed(tmp_path, seal(plain) + b"more")
    assert not _is_sealed(tmp_path, seal(plain)[:-1])


def test_the_seal_is_the_hash_of_all_before_it() -> None:
    told = b"<!-- templater " + sha256(SVG).hexdigest().encode() + b" -->\n"
    assert seal(SVG) == SVG + told
    pdf = PLAIN["pdf"]
    assert seal(pdf) == pdf + b"%templater " + sha256(pdf).hexdigest().encode() + b"\n"
    # PNG specification, 5.3: length, type, data, CRC of type and data; IEND is the last, 12 bytes long.
    png, end = PLAIN["png"][:-12], PLAIN["png"][-12:]
    text = b"tEXtSoftware\0templater " + sha256(png).hexdigest().encode()
    chunk = (len(text) - 4).to_bytes(4, "big") + text + crc32(text).to_bytes(4, "big")
    assert seal(PLAIN["png"]) == png + chunk + end


@pytest.mark.parametrize("kind", PLAIN)
@given(st.data())
def test_whatever_is_changed_breaks_the_seal(
    tmp_path_factory: pytest.TempPathFactory, kind: str, data: st.DataObject
) -> None:
    content = bytearray(seal(PLAIN[kind]))
    at = data.draw(st.integers(0, len(content) - 1))
    content[at] ^= data.draw(st.integers(1, 255))
    assert not _is_sealed(tmp_path_factory.getbasetemp(), bytes(content))


@pytest.mark.parametrize("content", [b"", b"%PDF", b"letters"])
def test_what_is_none_of_ours_is_not_sealed(tmp_path: Path, content: bytes) -> None:
    assert not _is_sealed(tmp_path, content)


def test_a_file_far_too_large_to_be_ours_is_not_read(tmp_path: Path) -> None:
    with (tmp_path / "film.pdf").open("wb") as stream:
        stream.truncate(1 << 40)  # a TB, and none of it on the disk
    assert not is_sealed(tmp_path / "film.pdf")


def test_programs_that_read_the_file_do_not_mind() -> None:
    with pikepdf.open(BytesIO(seal(PLAIN["pdf"]))) as pdf:
        assert len(pdf.pages) == 1
        assert pdf.get_warnings() == []
    with Image.open(BytesIO(seal(PLAIN["png"]))) as picture:
        picture.load()
        assert picture.getpixel((2, 1)) == 200
        assert picture.info["Software"].startswith("templater ")
    assert ET.fromstring(seal(SVG)).get("width") == "9mm"


def test_only_what_is_sealed_is_replaced(tmp_path: Path) -> None:
    path = tmp_path / "invoice.pdf"
    write_sealed(path, PLAIN["pdf"])
    write_sealed(path, PLAIN["pdf"])
    with pikepdf.open(path, allow_overwriting_input=True) as pdf:  # somebody saves it anew
        pdf.save(path)
    before = path.read_bytes()
    with pytest.raises(WriteError, match="was not made by this program, or was changed since"):
        write_sealed(path, PLAIN["pdf"])
    assert path.read_bytes() == before
