"""What the proof says of kits with something wrong."""

from __future__ import annotations

from typing import Any

import pytest

from templater.proving import prove_kit
from templater.verify.model import ProofError
from tests.verify.planting import Copy


def faults(copy: Copy) -> list[str]:
    """What the proof says of a kit that does not hold."""
    with pytest.raises(ProofError) as raised:
        prove_kit(copy.folder)
    assert raised.value.exit_code == 6
    return [fault.message for fault in raised.value.faults]


def the_fault(copy: Copy) -> str:
    """What the proof says of a kit with one thing wrong."""
    (message,) = faults(copy)
    return message


def page_of(entry: dict[str, Any]) -> str:
    """How a sheet is named in a fault."""
    return f"kit.pdf: page {entry['page']} ({entry['piece']}, sheet {entry['sheet']}): "
