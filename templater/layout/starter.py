"""The layout that a newcomer starts from."""

from __future__ import annotations

from importlib.resources import files


def starter_text() -> str:
    """A sound layout with every option explained, for ``templater new FILE``."""
    return files("templater.layout").joinpath("starter.yaml").read_text(encoding="utf-8")
