"""Font files damaged at random, to be refused or drawn: ``python -m tests.series.damaged_fonts [N]``.

A fault of the program ends the series with its traceback; what became of the files is counted.
"""

from __future__ import annotations

import sys
from collections import Counter
from random import Random
from time import process_time

from templater.given_fonts import FontError, GivenFont
from templater.typesetting import Typesetter
from tests.made_fonts import HEBREW, make_collection, make_font, make_variable

FONTS = {
    "שלום": make_font(HEBREW),
    "絵霧": make_font({"絵": 900, "霧": 1000}, kind="CFF"),
    "絵": make_variable("絵", 400, 320),
    "אב": make_collection(make_font(HEBREW), make_font({"絵": 900})),
}
LONGEST_SECONDS = 5.0
"""No file may take longer than this to be refused or drawn."""


def damage(content: bytes, chance: Random) -> bytes:
    """Some bytes changed, left out or put in; often in the table of tables."""
    damaged = bytearray(content)
    for _ in range(chance.choice([1, 1, 2, 4, 16])):
        at = chance.randrange(len(damaged) if chance.random() < 0.6 else min(len(damaged), 400))
        how = chance.random()
        if how < 0.6:
            damaged[at] = chance.randrange(256)
        elif how < 0.8:
            damaged[at : at + 2] = chance.choice([b"\xff\xff", b"\0\0", b"\x7f\xff", b"\x80\0"])
        elif how < 0.9:
            del damaged[at : at + chance.randrange(1, 50)]
        else:
            damaged[at:at] = chance.randbytes(chance.randrange(1, 20))
    return bytes(damaged)


def try_font(content: bytes, name: str) -> str:
    """What becomes of a font and of a name in its letters."""
    try:
        typesetter = Typesetter([GivenFont(content)], [name])
    except FontError as error:
        return error.message
    for bold in (False, True):
        typesetter.set_line(f"hole 2 of {name}: 3 in", bold)
    return "letters are lacking" if typesetter.lacks(name) else "drawn"


def main(count: int) -> None:
    """Try so many damaged files, and print what became of them."""
    chance = Random(6)
    ends: Counter[str] = Counter()
    for _ in range(count):
        name = chance.choice(list(FONTS))
        content = damage(FONTS[name], chance)
        start = process_time()
        ends[try_font(content, name)] += 1
        if process_time() - start > LONGEST_SECONDS:
            ends["too slow"] += 1
    for end, times in ends.most_common():
        print(f"{times:8}  {end}")  # noqa: T201


if __name__ == "__main__":
    main(int(sys.argv[1]) if len(sys.argv) > 1 else 20_000)
