"""output_examples/ is what the program makes today, on any machine.

Compressed streams differ between zlib builds and rasters between cairo builds; so PDFs are compared
by their decompressed objects and PNGs by their pixels, everything else byte for byte.
"""

from __future__ import annotations

import json
import shutil
from pathlib import Path
from typing import Any

import numpy
import pikepdf
import pytest
from PIL import Image

from tests.conftest import ON_EVERY_PAPER, OWN, KitMaker
from tests.examples import EXAMPLES, LAYOUTS, PICTURE, draw_picture

MOST_BYTES = 5_000_000
DARKER = 48
"""Two pixels differ when one is darker than the other by more than this, of 255."""

SHARE = 0.002
"""At most this share of a picture's pixels may differ: the edges of letters."""


@pytest.fixture(scope="module")
def made(shipped_kit: KitMaker, tmp_path_factory: pytest.TempPathFactory) -> Path:
    folder = tmp_path_factory.mktemp("examples")
    for name in LAYOUTS:
        paper = "letter" if name in ON_EVERY_PAPER else OWN
        shutil.copytree(shipped_kit(name, paper).folder, folder / name)
    draw_picture(folder / LAYOUTS[0], folder / PICTURE)
    return folder


def _files(folder: Path) -> list[str]:
    return sorted(path.relative_to(folder).as_posix() for path in folder.rglob("*") if path.is_file())


def test_the_same_files_are_there_and_they_are_small(made: Path) -> None:
    assert _files(made) == _files(EXAMPLES)
    assert sum((EXAMPLES / name).stat().st_size for name in _files(EXAMPLES)) < MOST_BYTES
    assert len(LAYOUTS) >= 3


def test_tables_and_drawings_are_the_same_to_the_byte(made: Path) -> None:
    for name in _files(EXAMPLES):
        if name.endswith((".svg", ".csv", ".yaml")):
            assert (made / name).read_bytes() == (EXAMPLES / name).read_bytes(), name


def _manifest(path: Path) -> Any:
    """A manifest without the hashes of files whose bytes depend on the machine."""
    manifest = json.loads(path.read_text("utf-8"))
    for name in manifest["files"]:
        if name.endswith((".pdf", ".png")):
            manifest["files"][name] = "depends on the machine"
    return manifest


def test_manifests_are_the_same(made: Path) -> None:
    for name in LAYOUTS:
        path = f"{name}/manifest.json"
        assert _manifest(made / path) == _manifest(EXAMPLES / path), name


def _objects(path: Path) -> list[str | bytes]:
    """Every object of a PDF in order, streams decompressed and without their lengths."""
    told: list[str | bytes] = []
    with pikepdf.open(path) as document:
        for thing in document.objects:
            if isinstance(thing, pikepdf.Stream):
                keys = {key: value for key, value in thing.items() if key != "/Length"}
                told += [repr(sorted(keys)), thing.read_bytes()]
            else:
                told.append(repr(thing))
    return told


def test_pdfs_hold_the_same_objects(made: Path) -> None:
    for name in _files(EXAMPLES):
        if name.endswith(".pdf"):
            assert _objects(made / name) == _objects(EXAMPLES / name), name


def _pixels(path: Path) -> Any:
    with Image.open(path) as picture:
        return numpy.asarray(picture.convert("L"), dtype=numpy.int16)


def test_pictures_look_the_same(made: Path) -> None:
    for name in (PICTURE, *(f"{layout}/overview.png" for layout in LAYOUTS)):
        ours, theirs = _pixels(made / name), _pixels(EXAMPLES / name)
        assert ours.shape == theirs.shape, name
        assert float((abs(ours - theirs) > DARKER).mean()) < SHARE, name
