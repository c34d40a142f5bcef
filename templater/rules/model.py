"""What a rule or a caution says of one thing on the wall."""

from __future__ import annotations

from dataclasses import dataclass
from enum import Enum


class Verdict(Enum):
    """Whether a rule of the trade holds; accepted: broken on purpose, and the layout says why.

    Of a caution: whether it is to be heeded, or cannot be judged, since the layout does not say
    what must be known for it.
    """

    KEPT = "kept"
    BROKEN = "broken"
    ACCEPTED = "accepted"
    NOT_APPLICABLE = "n/a"
    CAUTION = "caution"
    NOT_CHECKED = "not checked"


@dataclass(frozen=True, slots=True)
class Finding:
    """One rule or caution held against one piece or group.

    ``subject`` is exactly one name as in the layout; a second party stands in ``other``.
    ``figure`` is what was measured, ``band`` what is asked for, ``mend`` the smallest change that
    would mend it; None where it does not apply. All three are ready to be shown. ``because``
    is the layout's reason for a rule broken on purpose, or the source of a caution. ``at_wall`` stands
    in place of ``mend`` on paper, where nobody can change the layout any more.
    """

    rule: str
    subject: str
    other: str | None
    verdict: Verdict
    figure: str | None
    band: str | None
    mend: str | None
    because: str | None = None
    at_wall: str | None = None

    @property
    def act(self) -> str | None:
        """What whoever has only the paper can do."""
        return self.at_wall or self.mend
