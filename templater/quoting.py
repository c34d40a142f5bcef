"""Texts from outside, shown safely within a message, and the nearest known word to a wrong one."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from difflib import get_close_matches

_SHOWN = 60
_LONGEST_COMPARED = 120


def quote(text: str) -> str:
    """The text in quotes, cut when long; what cannot be seen is spelled out as an escape."""
    return repr(text if len(text) <= _SHOWN else text[: _SHOWN - 1] + "…")


def list_words(words: Sequence[str], last: str = "or") -> str:
    """Words as a sentence has them: ``wire, nail or cleat``."""
    return f" {last} ".join(filter(None, (", ".join(words[:-1]), words[-1])))


def find_nearest(word: str, known: Iterable[str]) -> str | None:
    """The known word that is nearest to a wrong one, if any is near."""
    if len(word) > _LONGEST_COMPARED:
        return None
    by_folded = {name.casefold(): name for name in known}
    near = get_close_matches(word.casefold(), by_folded, n=1)
    return by_folded[near[0]] if near else None


def suggest(nearest: str | None) -> str:
    """`` (did you mean 'boot bench'?)``, or nothing."""
    return f" (did you mean {quote(nearest)}?)" if nearest else ""


def show_path(path: object) -> str:
    """A path as it is typed, in quotes and spelled out where it holds what cannot be seen or printed."""
    text = str(path)
    return text if text.isprintable() else repr(text)
