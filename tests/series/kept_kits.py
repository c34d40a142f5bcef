"""Kits that tests make, kept on disk, so that many trials of what only reads them make each once."""

from __future__ import annotations

import os
import shutil
import sys
from hashlib import sha256
from pathlib import Path
from typing import Any

from tests import kits
from tests.conftest import PAIRS, make_shipped_kit
from tests.kits import MadeKit

_make_kit = kits.make_kit


def keep_kits(store: Path) -> None:
    """Let every test that was collected take its kits from a folder, or leave them there."""

    def make_kit(layout: Path, folder: Path, paper: str | None = None, **asked: Any) -> MadeKit:
        key = sha256(layout.read_bytes() + repr(sorted(asked.items())).encode()).hexdigest()[:12]
        kept = store / f"{layout.stem}-{paper}-{key}"
        if not kept.exists():
            _make_kit(layout, kept, paper, **asked)
        shutil.copytree(kept, folder, copy_function=os.link)
        return MadeKit(folder)

    for module in list(sys.modules.values()):
        if vars(module).get("make_kit") is _make_kit:
            vars(module)["make_kit"] = make_kit


def make_shipped_kits(store: Path) -> None:
    """Make the kits of the layouts that come with the program, if they are not there."""
    for stem, paper in PAIRS:
        folder = store / "again"
        make_shipped_kit(stem, paper, folder)
        shutil.rmtree(folder)
