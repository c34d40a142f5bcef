"""What every caution is made of: its code, its check and its page of documentation."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from dataclasses import dataclass
from typing import TypeAlias

from templater.placement.model import PlacedPiece, Plan
from templater.rules.model import Finding, Verdict

Check: TypeAlias = Callable[[PlacedPiece, Plan], Iterable[Finding]]
"""A caution held against one piece; no finding where it has nothing to say of it."""


@dataclass(frozen=True, slots=True)
class Caution:
    """One caution; ``page`` is its module's docstring.

    ``is_of_holes``: whether it is about single holes, which then stand in ``other``; where nothing
    does, it is about all holes of the piece.
    """

    code: str
    check: Check
    page: str
    is_of_holes: bool = False


@dataclass(frozen=True, slots=True)
class Teller:
    """Makes the findings of one caution, each with its source."""

    code: str
    source: str

    def warn(
        self,
        piece: PlacedPiece,
        figure: str | None,
        mend: str,
        *,
        band: str | None = None,
        other: str | None = None,
        at_wall: str | None = None,
    ) -> Finding:
        """It is to be heeded; ``mend`` says how, ``at_wall`` how where only the paper is at hand."""
        verdict = Verdict.CAUTION
        return Finding(self.code, piece.name, other, verdict, figure, band, mend, self.source, at_wall)

    def clear(self, piece: PlacedPiece, figure: str, band: str, *, other: str | None = None) -> Finding:
        """What can be measured is within its limit."""
        return Finding(self.code, piece.name, other, Verdict.KEPT, figure, band, None, self.source)

    def ask(self, piece: PlacedPiece, missing: str, *, other: str | None = None) -> Finding:
        """It cannot be judged; ``missing`` is the act that tells what must be known."""
        return Finding(
            self.code, piece.name, other, Verdict.NOT_CHECKED, None, None, missing, self.source
        )


def name_hole(number: int) -> str:
    """A hole as a finding names it."""
    return f"hole {number}"
