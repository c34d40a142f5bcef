"""Layouts grown by a coverage-guided fuzzer, for as long as asked; run by hand with ``python -m``.

``python -m tests.series.fuzz_coverage FOLDER -max_total_time=1800`` grows its layouts in FOLDER and
takes libFuzzer's options. It needs atheris, which is not among the libraries for tests:
``pip install atheris`` (wheels for Linux, Python 3.11 to 3.13).
"""

from __future__ import annotations

import sys
from collections import Counter
from pathlib import Path
from random import Random

import atheris

with atheris.instrument_imports(include=["templater"]):
    import templater.commands.check_report
    import templater.layout.build
    import templater.layout.phrasing
    import templater.mounting.mount
    import templater.pipeline
    import templater.placement.place
    import templater.rules.check
    import templater.search.saved
    import templater.search.settle  # noqa: F401

from tests.layout.files import SHIPPED, SMALL, WIDE
from tests.layout.journeys import travel
from tests.layout.mutations import SOUND, VALUES, Step, mutate_bytes, mutate_tree, parse_tree, write_tree
from tests.series.fuzz_limits import TooSlowError, within_seconds
from tests.series.fuzz_mutations import describe

KEYS = (
    "title: ",
    "wall: ",
    "pieces: ",
    "groups: ",
    "hang: ",
    "place: ",
    "size: ",
    "name: ",
    "arrange: ",
)
_SMALL = 1500
"""Bytes up to which a layout is taken as far as its pages now and then."""

_counts: Counter[str] = Counter()
_broken: set[str] = set()


def judge(folder: Path, content: bytes) -> None:
    """Take one layout through; what breaks the promise is kept in a folder, one of a kind."""
    count = sum(_counts.values())
    try:
        with within_seconds(5):
            _counts[travel(content, far=len(content) < _SMALL and count % 50 == 0).value] += 1
    except (Exception, TooSlowError) as error:  # whatever it is, it is what is looked for
        _counts["promise broken"] += 1
        kind = describe(error)
        if kind not in _broken:
            _broken.add(kind)
            (folder / f"broken-{len(_broken)}.yaml").write_bytes(content)
            print(f"broken-{len(_broken)}.yaml: {kind}", flush=True)  # noqa: T201
    if count % 2000 == 0:
        print(f"{count} layouts: {dict(_counts)}", flush=True)  # noqa: T201


def mutate(content: bytes, longest: int, seed: int) -> bytes:
    """One layout made of another: by libFuzzer's own means, by its tree, or by its text."""
    chance = Random(seed)
    steps = [Step(*(chance.randrange(2**16) for _ in range(4))) for _ in range(chance.randint(1, 3))]
    way = chance.random()
    if way < 0.3:
        return bytes(atheris.Mutate(content, len(content)))
    if way < 0.45:
        return mutate_bytes(content, steps)[:longest]
    try:
        tree = parse_tree(content.decode())
    except Exception:  # whatever keeps it from being a tree, another one takes its place
        tree = chance.choice(SOUND)
    return write_tree(mutate_tree(tree, steps), is_flow=way > 0.9).encode("utf-8", "replace")[:longest]


def _write_word(word: str) -> str:
    """A word as libFuzzer's dictionaries have it, cut where it is long."""
    encoded = word[:30].encode("utf-8", "backslashreplace")
    return '"' + "".join(f"\\x{byte:02x}" for byte in encoded) + '"\n'


def main() -> None:
    """Sow the shipped layouts into the folder and let the fuzzer run."""
    folder = Path(sys.argv[1])
    found = folder.with_name(f"{folder.name}-found")
    for each in (folder, found):
        each.mkdir(parents=True, exist_ok=True)
    seeds = [SMALL, WIDE, *(path.read_text("utf-8") for path in SHIPPED)]
    for number, text in enumerate(seeds):
        (folder / f"seed-{number}").write_bytes(text.encode())
    words = found / "words.txt"
    words.write_text("".join(map(_write_word, filter(None, (*KEYS, *VALUES)))))
    options = [
        f"-dict={words}",
        f"-artifact_prefix={found}/",
        "-max_len=6000",
        "-timeout=900",
        "-rss_limit_mb=3000",
    ]
    atheris.Setup([*sys.argv, *options], lambda content: judge(found, content), custom_mutator=mutate)
    atheris.Fuzz()


if __name__ == "__main__":
    main()
