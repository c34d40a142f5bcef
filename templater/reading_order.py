"""The order in which a line is drawn, where words in it run to the left (Hebrew, Arabic).

A line runs from left to right, in English: words that run to the left are turned round within it, by
the Unicode Standard's Annex 9. What stands beside them, above all a measure, is never moved by them.
"""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Iterable, Iterator

UNSEEN = re.compile("[\u034f\u180b-\u180d\u180f\u200c\u200d\ufe00-\ufe0f\U000e0100-\U000e01ef]")
"""Characters that only choose or join shapes, and are nothing by themselves."""

_TO_LEFT = {"R", "AL"}
_MOVED = {*_TO_LEFT, "AN"}
"""Kinds of characters (Unicode, Bidi_Class) of words that run to the left, and of their numbers."""

_ISOLATE, _ISOLATE_TO_LEFT, _END = "\u2068", "\u2067", "\u2069"
WITHOUT_ISOLATES = dict.fromkeys(map(ord, _ISOLATE + _ISOLATE_TO_LEFT + _END))
"""For ``str.translate``: takes away the characters that only keep words apart in the order."""

_MARK = "\U000e01ef"
"""A mark that no text has: set after a bracket, it stands before it where that runs to the left."""


def is_joined(character: str) -> bool:
    """Whether a character belongs to the letter before it: a mark, or a chooser of its shape."""
    return unicodedata.category(character)[0] == "M" or bool(UNSEEN.match(character))


class ReadingOrder:
    """Puts lines in the order in which they are drawn, or marks them for others that do.

    Each of the names is ordered by itself, in its own direction, with the numbers in it.
    """

    def __init__(self, names: Iterable[str] = ()) -> None:
        self._names = {name for name in names if any(map(_runs_to_left, name))}
        self._lengths = sorted({len(name) for name in self._names}, reverse=True)

    def order(self, text: str) -> Iterator[tuple[str, bool]]:
        """Stretches of a line from left to right as they are drawn, each in the order of reading.

        True: the stretch runs to the left.
        """
        if not any(unicodedata.bidirectional(each) in _MOVED for each in text):
            yield text, False
            return
        from bidi import get_display

        drawn = _mirror(str(get_display(_mark_mirrored(self.isolate(text)), base_dir="L")))
        drawn = drawn.translate(WITHOUT_ISOLATES)
        kinds = "".join(map(_direction, drawn))
        for match in re.finditer("[m<]*<|[m>]+?(?=[m<]*<|$)", kinds):
            stretch = drawn[match.start() : match.end()]
            to_left = match[0].endswith("<")
            yield stretch[::-1] if to_left else stretch, to_left

    def isolate(self, text: str) -> str:
        """The line with isolates round every name, and round words to the left that are in none.

        Whoever puts such a line in order, such as a terminal, moves nothing that stands beside them.
        """
        if not any(map(_runs_to_left, text)):
            return text
        isolated, done, at = "", 0, 0
        while at < len(text):
            name = self._find_name(text, at)
            if name:
                isolated += f"{_isolate_words(text[done:at])}{_ISOLATE}{name}{_END}"
                done = at + len(name)
            at += len(name) or 1
        return isolated + _isolate_words(text[done:])

    def _find_name(self, text: str, at: int) -> str:
        """The longest name that starts at a place, if no word goes on there before or after it."""
        if _goes_on(text[at - 1 : at]):
            return ""
        for length in self._lengths:
            name, after = text[at : at + length], text[at + length : at + length + 1]
            if name in self._names and not _goes_on(after):
                return name
        return ""


def _goes_on(beside: str) -> bool:
    """Whether a character belongs to a word to the left; no character does not."""
    return beside != "" and (_runs_to_left(beside) or is_joined(beside))


def _isolate_words(text: str) -> str:
    """The text with marks round all words to the left, so that no number beside them is moved."""
    kinds = "".join("L" if unicodedata.bidirectional(each) == "L" else _direction(each) for each in text)
    isolated, done = "", 0
    for match in re.finditer("<(?:[^L]*[<m])?", kinds):
        end = match.end() + (text[match.end() : match.end() + 1] == "…")
        isolated += f"{text[done : match.start()]}{_ISOLATE_TO_LEFT}{text[match.start() : end]}{_END}"
        done = end
    return isolated + text[done:]


def _mark_mirrored(text: str) -> str:
    """The text with a mark after all that looks the other way where it runs to the left."""
    plain = text.replace(_MARK, "")
    return "".join(each + _MARK if unicodedata.mirrored(each) else each for each in plain)


def _mirror(drawn: str) -> str:
    """Turn round what is marked and runs to the left, and take the marks away."""
    from bidi.mirror import MIRRORED

    turned = ""
    characters = iter(drawn)
    for each in characters:
        if each == _MARK:
            bracket = next(characters, "")
            turned += MIRRORED.get(bracket, bracket)
        else:
            turned += each
            if unicodedata.mirrored(each):
                next(characters, "")  # its mark
    return turned


def _runs_to_left(character: str) -> bool:
    return unicodedata.bidirectional(character) in _TO_LEFT


def _direction(character: str) -> str:
    """``<`` and ``>`` for characters that run to the left and right, ``m`` for marks of either."""
    if _runs_to_left(character):
        return "<"
    return "m" if is_joined(character) else ">"
