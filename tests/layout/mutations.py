"""Layout files made wrong on purpose: steps that change the tree of a sound one, or its text.

A step is four numbers, so that hypothesis can shrink it and a fuzzer can draw it from a seed.
"""

from __future__ import annotations

import json
import re
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass, field
from typing import NamedTuple, TypeAlias

import yaml

from tests.layout.files import SHIPPED, SMALL, WIDE


@dataclass
class Pairs:
    """A mapping in which a key may stand twice."""

    items: list[tuple[str, Tree]] = field(default_factory=list)


@dataclass
class Items:
    """A list."""

    items: list[Tree] = field(default_factory=list)


Tree: TypeAlias = "str | Pairs | Items"
"""A YAML file without its comments and style."""


class Step(NamedTuple):
    """One change: what is done, where, with what; each number is taken modulo what there is."""

    act: int
    where: int
    other: int
    value: int


LENGTHS = (
    *(
        "0",
        "-1",
        "1",
        "3",
        "5 in",
        "12",
        "16",
        "30",
        "48 in",
        "60",
        "66 in",
        "80",
        "100",
        "2 1/2",
        "9 ft",
    ),
    *("5' 7 1/2\"", "400 mm", "23⅝″", "1.5 m", "25 cm", "-3 in", "0.001 mm", "1/1000000 in", "100 m"),
    *("99.99 m", "10 km", "1e5", "1e308", "1e-300", "nan", ".nan", "inf", "-.inf", "1/0", "0/0", "0/5"),
    *("9" * 400, "0." + "0" * 50 + "1", "1" + "0" * 58, "1:30", "0777", "0x1F", "1_000", "1,5", "1,000"),
    *("-0", "+5", "−5", "5 in in", "5 ells", "5in", "½", "٣", "三", "²", "1e3 mm", "5 '", "' 5", "in"),
)
TEXTS = (
    *("", " ", "~", "null", "no", "off", "yes", "on", "true", "x", "any", "Tide chart", "left end"),
    *("right end", "../../etc/passwd", "..", "con", "lpt9", "aux.txt", "<b>&amp;</svg>", ")(\\", "]]>"),
    *("\u202egnp.exe", "\u200b", "\ufeff", "\ud800", "\x00", "\x1b[31m", "a\nb", "a\r\nb", "🗼", "灯台"),
    *(
        "مرحبا",
        "é" * 150,
        "e\u0301",
        "'",
        '"',
        "[bold]",
        "a" * 119,
        "ﷺ" * 60,
        "ß",
        "İ",
        "\u2028",
        "%s{}",
    ),
)
SIZES = (
    *(
        "16 x 20 in",
        "16 x 20",
        "0 x 5",
        "-1 x 5",
        "5",
        "5 x",
        "x 5",
        "5 x 5 x 5",
        "1e308 x 1",
        "nan x nan",
    ),
    *("99 m x 99 m", "0.1 mm x 99 m", "1/64 x 1/64", "100 cm × 2 ft", "8.5 x 11 in", "60 x 40", "4 x 4"),
)
WORDS = (
    *("wire", "d-rings", "keyholes", "sawtooth", "nail", "cleat", "rail", "strips", "row", "column"),
    *(
        "grid",
        "cluster",
        "stair",
        "ledge",
        "placed",
        "equal",
        "top",
        "centre",
        "bottom",
        "left",
        "right",
    ),
    *("studs", "pair", "strip", "drywall", "masonry", "us", "uk", "a4", "letter", "a0", "roll 24 in"),
    *(
        "card",
        "2 x 2 in",
        "glass 2 mm",
        "4-ply",
        "mdf 3 mm",
        "pine",
        "red oak",
        "none",
        "window",
        "door",
    ),
    *("in", "ft", "cm", "mm", "m", "50 %", "1000 %", "1e9 %", "6 lb", "2 lb 3 oz", "0 kg", "9999 kg"),
    *("999999999 kg", "1000", "1001", "2", "eye-line", "gap", "spacing", "balance", "12.5 %"),
)
VALUES = (*LENGTHS, *TEXTS, *SIZES, *WORDS)
"""What is put in place of a value."""

_NUMBER = re.compile(r"\d+(?:\.\d+)?")
_FACTORS = (0, 0.001, 0.5, 0.9, 0.99, 1.01, 1.1, 2, 3, 10, 1000)
_ENCODINGS = ("utf-16", "utf-16-le", "utf-16-be", "utf-32", "latin-1", "utf-8-sig", "utf-7")
_LINE_ENDS = (b"\r\n", b"\r", b"\n\n", b"\xc2\x85", b"\xe2\x80\xa8", b"\n\t", b" \n")
INSERTED = (
    *("{", "}", "[", "]", ": ", "- ", "&a ", "*a", "!t ", "!!binary ", "'", '"', "#", "\n", "  "),
    *("---\n", "? ", "| ", "> ", "~", "\t", "\r", "\x85", "\u2028", "\ufeff", "\x00", "<<: "),
    *("...\n", "%YAML 9\n", ", ", "\\", '"\\ud800"', '"\\x00"', '"\\u202e"', "&a [*a]", "{<<: *a}"),
    *("🗼", "\xa0"),
)
"""What is put into a text: signs of YAML, and letters that upset readers."""


def parse_tree(text: str) -> Tree:
    """The tree of a sound layout's text."""
    return _convert(yaml.load(text, Loader=yaml.BaseLoader))


def _convert(value: object) -> Tree:
    if isinstance(value, dict):
        return Pairs([(str(key), _convert(each)) for key, each in value.items()])
    if isinstance(value, list):
        return Items([_convert(each) for each in value])
    return str(value)


SOUND = [parse_tree(text) for text in (SMALL, WIDE, *(path.read_text("utf-8") for path in SHIPPED))]
"""The layouts that mutations start from."""


def _walk(tree: Tree) -> Iterator[tuple[Pairs | Items, int]]:
    """Every value but the root, as its parent and its number in there."""
    if isinstance(tree, str):
        return
    for number, item in enumerate(tree.items):
        yield tree, number
        yield from _walk(item[1] if isinstance(item, tuple) else item)


def _get(parent: Pairs | Items, number: int) -> Tree:
    return parent.items[number][1] if isinstance(parent, Pairs) else parent.items[number]


def _set(parent: Pairs | Items, number: int, value: Tree) -> None:
    if isinstance(parent, Pairs):
        parent.items[number] = (parent.items[number][0], value)
    else:
        parent.items[number] = value


def _copy(tree: Tree) -> Tree:
    if isinstance(tree, Pairs):
        return Pairs([(key, _copy(value)) for key, value in tree.items])
    return Items([_copy(value) for value in tree.items]) if isinstance(tree, Items) else tree


Spot: TypeAlias = "tuple[Pairs | Items, int]"


def _drop(spots: Sequence[Spot], spot: Spot, step: Step) -> None:
    del spot[0].items[spot[1]]


def _replace(spots: Sequence[Spot], spot: Spot, step: Step) -> None:
    _set(*spot, VALUES[step.value % len(VALUES)])


def _scale(spots: Sequence[Spot], spot: Spot, step: Step) -> None:
    """A number within a text made larger or smaller, its unit kept."""
    texts = [each for each in spots if isinstance(text := _get(*each), str) and _NUMBER.search(text)]
    if texts:
        spot = texts[step.where % len(texts)]
        factor = _FACTORS[step.value % len(_FACTORS)]
        changed = _NUMBER.sub(lambda found: f"{float(found[0]) * factor:g}", str(_get(*spot)), count=1)
        _set(*spot, changed)


def _repeat(spots: Sequence[Spot], spot: Spot, step: Step) -> None:
    """The entry once more, also under another name."""
    parent, number = spot
    copied = _copy(_get(parent, number))
    if step.value % 3 and isinstance(copied, Pairs):
        copied.items = [(key, f"{step.value}" if key == "name" else each) for key, each in copied.items]
    if isinstance(parent, Pairs):
        parent.items.append((parent.items[number][0], copied))
    else:
        parent.items.append(copied)


def _swap(spots: Sequence[Spot], spot: Spot, step: Step) -> None:
    other = spots[step.other % len(spots)]
    first, second = _copy(_get(*spot)), _copy(_get(*other))
    _set(*spot, second)
    _set(*other, first)


def _rename(spots: Sequence[Spot], spot: Spot, step: Step) -> None:
    """The key of another value, or any text, in place of a value's own key."""
    parent, number = spot
    if isinstance(parent, Pairs):
        keys = [each[0].items[each[1]][0] for each in spots if isinstance(each[0], Pairs)]
        pool = keys if step.value % 4 else VALUES
        parent.items[number] = (str(pool[step.other % len(pool)]), parent.items[number][1])


def _retype(spots: Sequence[Spot], spot: Spot, step: Step) -> None:
    value = _get(*spot)
    shapes: Sequence[Tree] = (
        Items([value]),
        Pairs([("name", value)]),
        Items([]),
        Pairs([]),
        Items([value, _copy(value), _copy(value)]),
        Pairs([(VALUES[step.other % len(VALUES)], value)]),
    )
    _set(*spot, shapes[step.value % len(shapes)])


def _nest(spots: Sequence[Spot], spot: Spot, step: Step) -> None:
    value = _get(*spot)
    for _ in range(step.value % 60):
        value = Items([value]) if step.other % 2 else Pairs([("pieces", value)])
    _set(*spot, value)


def _transplant(spots: Sequence[Spot], spot: Spot, step: Step) -> None:
    """A value of another sound layout, of the same key if it has that."""
    parent, number = spot
    given = [*_walk(SOUND[step.value % len(SOUND)])]
    if isinstance(parent, Pairs):
        key = parent.items[number][0]
        given = [each for each in given if _key_of(each) == key] or given
    _set(*spot, _copy(_get(*given[step.other % len(given)])))


def _key_of(spot: Spot) -> str | None:
    parent, number = spot
    return parent.items[number][0] if isinstance(parent, Pairs) else None


def _add(spots: Sequence[Spot], spot: Spot, step: Step) -> None:
    """A pair of another sound layout among the pairs here."""
    parent, _ = spot
    given = [each for each in _walk(SOUND[step.value % len(SOUND)]) if isinstance(each[0], Pairs)]
    donor = given[step.other % len(given)]
    if isinstance(parent, Pairs):
        parent.items.append((str(_key_of(donor)), _copy(_get(*donor))))
    else:
        parent.items.append(_copy(_get(*donor)))


_ACTS: Sequence[Callable[[Sequence[Spot], Spot, Step], None]] = (
    *(_drop, _replace, _scale, _scale, _scale, _repeat, _swap, _rename, _retype, _nest),
    *(_scale, _scale, _scale, _scale, _repeat, _swap, _transplant, _transplant, _transplant, _add),
)


def mutate_tree(tree: Tree, steps: Sequence[Step]) -> Tree:
    """A copy of the tree after all steps."""
    changed = _copy(tree)
    for step in steps:
        if spots := [*_walk(changed)]:
            _ACTS[step.act % len(_ACTS)](spots, spots[step.where % len(spots)], step)
    return changed


def write_tree(tree: Tree, indent: str = "", *, is_flow: bool = False) -> str:
    """The tree as YAML: in blocks, or all in brackets."""
    if isinstance(tree, str):
        return _write_scalar(tree)
    if is_flow or not tree.items:
        inner = [
            f"{_write_scalar(item[0])}: {write_tree(item[1], is_flow=True)}"
            if isinstance(item, tuple)
            else write_tree(item, is_flow=True)
            for item in tree.items
        ]
        return f"{{{', '.join(inner)}}}" if isinstance(tree, Pairs) else f"[{', '.join(inner)}]"
    lines = []
    for item in tree.items:
        head, value = (f"{_write_scalar(item[0])}:", item[1]) if isinstance(item, tuple) else ("-", item)
        written = write_tree(value, indent + "  ")
        lines.append(f"{indent}{head}{'' if written[:1] == chr(10) else ' '}{written}")
    return "\n" + "\n".join(lines)


def _write_scalar(text: str) -> str:
    """Plain where that reads back, else in quotes."""
    return text if re.fullmatch(r"[A-Za-z0-9][\w ./%'+-]*(?<! )", text) else json.dumps(text)


def mutate_bytes(content: bytes, steps: Sequence[Step]) -> bytes:
    """The file after changes that know nothing of YAML."""
    for step in steps:
        content = _mutate_once(content, step)
    return content


def _mutate_once(content: bytes, step: Step) -> bytes:
    start = step.where % (len(content) + 1)
    end = min(len(content), start + step.other % 40)
    snippet = INSERTED[step.value % len(INSERTED)].encode("utf-8", "surrogatepass")
    before, between, after = content[:start], content[start:end], content[end:]
    ways: Sequence[Callable[[], bytes]] = (
        lambda: before + snippet + between + after,
        lambda: before + after,
        lambda: before + snippet + after,
        lambda: before + bytes([step.value % 256]) + after,
        lambda: before + between * (step.value % 9) + after,
        lambda: content.replace(b"\n", _LINE_ENDS[step.value % len(_LINE_ENDS)]),
        lambda: before,
        lambda: content.decode("utf-8", "replace").encode(
            _ENCODINGS[step.value % len(_ENCODINGS)], "replace"
        ),
    )
    return ways[step.act % len(ways)]()


def make_layout(
    origin: int, on_tree: Sequence[Step], on_text: Sequence[Step] = (), *, is_flow: bool = False
) -> bytes:
    """A sound layout after steps on its tree, then on its text."""
    tree = mutate_tree(SOUND[origin % len(SOUND)], on_tree)
    text = write_tree(tree, is_flow=is_flow).lstrip("\n") + "\n"
    return mutate_bytes(text.encode("utf-8", "surrogatepass"), on_text)
