"""A kit to do damage to."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.kits import MadeKit
from tests.verify.planting import Copy


@pytest.fixture
def copy(hall: MadeKit, tmp_path: Path) -> Copy:
    """A copy of the stair hall's kit."""
    return Copy(hall.folder, tmp_path)
