"""Names of a template's sheets, as map squares are named: A1 is the first of the first course."""

from __future__ import annotations

_LETTERS = "ABCDEFGHJKLMNPQRSTUVWXYZ"
"""The alphabet without I and O, which are read as 1 and 0."""


def name_course(course: int) -> str:
    """The letters of a course counted from 0: A, B, C ... Z, then AA, AB ..."""
    letters = ""
    while course >= 0:
        course, last = divmod(course, len(_LETTERS))
        letters = _LETTERS[last] + letters
        course -= 1
    return letters


def name_sheet(course: int, place: int) -> str:
    """The name of a sheet from its course and its place along it, both counted from 0."""
    return f"{name_course(course)}{place + 1}"
