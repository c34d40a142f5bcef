"""Names made fit for file names, addresses and spreadsheets."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable

_LONGEST = 60
_DEVICES = {"con", "prn", "aux", "nul"} | {
    f"{port}{number}" for port in ("com", "lpt") for number in range(10)
}
"""What Windows takes for a device whatever its ending; from memory."""


def list_slugs(names: Iterable[str]) -> tuple[str, ...]:
    """One slug a name, in the same order, each different: lower-case ASCII words joined by ``-``."""
    from slugify import slugify

    taken: set[str] = set()
    tries: Counter[str] = Counter()
    slugs = []
    for name in names:
        words = slugify(name, entities=False, decimal=False, hexadecimal=False)
        base = words[:_LONGEST].strip("-") or "piece"
        base = f"{base}-piece" if base in _DEVICES else base
        slug = base
        while slug in taken:
            tries[base] += 1
            ending = f"-{tries[base] + 1}"
            slug = base[: _LONGEST - len(ending)].rstrip("-") + ending
        taken.add(slug)
        slugs.append(slug)
    return tuple(slugs)
