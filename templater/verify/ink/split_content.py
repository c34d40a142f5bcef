"""Splits the content of a PDF page into instructions: what they are given, and their operators.

One regular expression does it for what a plain writer leaves, a straight line or a row of words at a
time; where it fails, pikepdf's own parser does, which takes about four times as long.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from decimal import Decimal
from typing import Any, TypeAlias

Operands: TypeAlias = tuple[Any, ...]
"""What an instruction is given, in order: numbers as float, all else as the file writes it."""

_NUMBER = rb"[-+.\d]++ \s++ "
_WORDS = rb"""(?: \( (?> [^()\\]++ | \\. | \( (?> [^()\\]++ | \\. )*+ \) )*+ \) | <[0-9A-Fa-f\s]*+> )"""

PLAIN_INSTRUCTIONS = re.compile(
    rb"""(?> \s++ | %[^\r\n]*+ )*+
    (?: ( (?: n \s++ )?+ """
    + _NUMBER * 2
    + rb"m \s++ "
    + _NUMBER * 2
    + rb"""l \s++ S ) (?= \s | \Z )
    | BT \s++ (?: """
    + _NUMBER * 6
    + rb"Tm \s++ )?+ ("
    + _NUMBER * 6
    + rb""") Tm \s++ (/[^\s()<>\[\]{}/%]*+) \s++ ([-+.\d]++) \s++ Tf \s++ ([-+.\d]++) \s++ TL \s++ ("""
    + _WORDS
    + rb""") \s*+ Tj \s++ ET (?= \s | \Z )
    | ( """
    + _WORDS
    + rb""" | \[ [-+.\d\s]*+ \] | /[^\s()<>\[\]{}/%]*+ )?+
      ( [-+.\d\s]*+ )
      ( [A-Za-z][A-Za-z0-9*]*+ | \S | \Z ) )""",
    re.DOTALL | re.VERBOSE,
)
"""A straight line, whole; or a row of words (where and which way, font, size, leading, words); or
words, a list or a name if any, then numbers, then the operator."""


def split_any(stream: Any) -> Iterator[tuple[Operands, bytes]]:
    """The instructions of a page or a form in turn, by pikepdf. Raises pikepdf.PdfError."""
    import pikepdf

    for instruction in pikepdf.parse_content_stream(stream):
        yield tuple(map(_plain, instruction.operands)), str(instruction.operator).encode("latin-1")


def _plain(operand: Any) -> Any:
    """A number as float, all else as a file writes it."""
    if isinstance(operand, (int, float, Decimal)):
        return float(operand)
    return bytes(operand.unparse()) if hasattr(operand, "unparse") else operand
