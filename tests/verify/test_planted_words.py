from __future__ import annotations

import re
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import Any

import pikepdf
import pytest

from templater.proving import prove_kit
from tests.conftest import KitMaker
from tests.verify.faults import faults, page_of, the_fault
from tests.verify.planting import DRAWS_NOTHING, Copy

# Words are planted as they would be by a writer that errs: the same letters in another order, or the
# letters of other words, in a font whose table of letters stays as it is.


def _letters(page: pikepdf.Page) -> dict[str, dict[str, int]]:
    """The code of each letter of each font of a page, by its table of letters."""
    found: dict[str, dict[str, int]] = {}
    for name, font in page.resources.Font.items():
        table = font.ToUnicode.read_bytes().decode("latin-1")
        body = table[table.index("beginbfchar") :]
        found[name] = {
            bytes.fromhex(digits).decode("utf-16-be"): int(code, 16)
            for code, digits in re.findall(r"<(\w\w)>\s*<(\w{4})>", body)
        }
    return found


def _change_words(copy: Copy, page: int, change: Callable[[list[str]], list[str]]) -> None:
    """Change the words of a page, told all together; font and place stay those of the old ones."""
    with copy.opened_page(page) as (sheet, instructions):
        codes = _letters(sheet)
        font, shown, words = "", [], []
        for at, each in enumerate(instructions):
            if str(each.operator) == "Tf":
                font = str(each.operands[0])
            elif str(each.operator) == "Tj":
                by_code = {code: letter for letter, code in codes[font].items()}
                shown.append((at, font))
                words.append("".join(by_code.get(code, "\ufffd") for code in bytes(each.operands[0])))
        after = change(list(words))
        for (at, name), old, new in zip(shown, words, after, strict=True):
            if new != old:
                string = pikepdf.String(bytes(codes[name][letter] for letter in new))
                instructions[at] = pikepdf.ContentStreamInstruction([string], pikepdf.Operator("Tj"))


def _replace(old: str, new: str) -> Callable[[list[str]], list[str]]:
    """Other words in the place of those that match, once."""

    def change(words: list[str]) -> list[str]:
        at = next(at for at, text in enumerate(words) if re.search(old, text))
        words[at] = re.sub(old, new, words[at])
        return words

    return change


def _checklist(copy: Copy) -> int:
    return int(next(e["page"] for e in copy.manifest["pages"] if e["kind"] == "checklist"))


def _rows(words: list[str]) -> list[int]:
    """Where the hole's number stands in each row of the checklist: after it come its two measures."""
    return [at for at in range(len(words) - 2) if words[at].isdecimal() and words[at + 2].endswith(")")]


def test_two_rows_of_the_checklist_swapped(copy: Copy) -> None:
    def swap(words: list[str]) -> list[str]:
        first, second, *_ = _rows(words)
        for step in (1, 2):
            one, other = first + step, second + step
            words[one], words[other] = words[other], words[one]
        return words

    _change_words(copy, _checklist(copy), swap)
    told = faults(copy)
    assert len(told) == 2
    assert all(re.search(r"checklist: .* hole 1 is told to be", message) for message in told), told


def test_a_row_of_the_checklist_with_another_number(copy: Copy) -> None:
    def change(words: list[str]) -> list[str]:
        words[_rows(words)[0]] = "2"
        return words

    _change_words(copy, _checklist(copy), change)
    assert re.fullmatch(r"kit\.pdf: checklist: row 1 is not that of .* hole 1", the_fault(copy))


def test_a_row_of_the_checklist_with_another_height(copy: Copy) -> None:
    _change_words(copy, _checklist(copy), _replace(r"^\+(\d)(.*) in \(", r"−\1\2 in ("))
    assert " is told to be −" in the_fault(copy)


def _hole_page(copy: Copy) -> dict[str, Any]:
    return copy.sheets(hole=True)[0]


@pytest.mark.parametrize(
    ("old", "new", "told"),
    [
        (r"^(\d+) (.*in \()(\d)", r"\1 \g<2>9", "from the wall's left end"),
        (r"^[+−](\S+) (.*)\([+−]", r"\1 \2(", "from the datum"),
    ],
)
def test_a_measure_beside_a_hole(copy: Copy, old: str, new: str, told: str) -> None:
    def change(words: list[str]) -> list[str]:
        start = next(at for at, text in enumerate(words) if re.match(r"HOLE \d of", text))
        for at in range(start + 1, start + 9):
            if told in " ".join(words[start : at + 1]):
                head, colon, tail = words[at].rpartition(": ")
                changed = re.sub(old, new, tail or words[at])
                if changed != (tail or words[at]):
                    words[at] = f"{head}{colon}{changed}"
                    return words
        raise AssertionError(words[start : start + 9])

    entry = _hole_page(copy)
    _change_words(copy, entry["page"], change)
    assert re.search(rf"hole \d is told to be .* {told}, the plan has", the_fault(copy))


def test_a_hole_with_anothers_number(copy: Copy) -> None:
    def change(words: list[str]) -> list[str]:
        words[words.index("1")] = "2"
        return words

    entry = _hole_page(copy)
    _change_words(copy, entry["page"], change)
    assert the_fault(copy) == f"{page_of(entry)}hole 1 bears the number 2"


def test_a_heading_of_a_hole_that_is_not_there(copy: Copy) -> None:
    entry = _hole_page(copy)
    _change_words(copy, entry["page"], _replace(r"HOLE 1 of 1", "HOLE 2 of 1"))
    assert the_fault(copy) == f"{page_of(entry)}it tells of HOLE 2 of 1, which the plan does not have"


# --- spacers and larger views ---------------------------------------------------------------------


@pytest.fixture
def salon(shipped_kit: KitMaker, tmp_path: Path) -> Copy:
    return Copy(shipped_kit("gallery-landing", "a4").folder, tmp_path)


def _spacers(copy: Copy) -> int:
    return int(next(e["page"] for e in copy.manifest["pages"] if e["kind"] == "spacer"))


def _strips(instructions: list[Any]) -> Iterator[int]:
    """Where each closed rectangle of the content begins: four corners, closed, drawn."""
    names = [str(each.operator) for each in instructions]
    return (at for at in range(len(names)) if names[at : at + 6] == ["m", "l", "l", "l", "h", "S"])


@pytest.mark.parametrize("off_mm", [0.05, -0.05])
def test_a_spacer_of_another_width(salon: Copy, off_mm: float) -> None:
    with salon.opened_page(_spacers(salon)) as (_, instructions):
        first = next(_strips(instructions))
        lowest = min(float(each.operands[1]) for each in instructions[first : first + 4])
        for at in range(first, first + 4):
            x, y = map(float, instructions[at].operands)
            y -= off_mm * 72 / 25.4 if y == lowest else 0
            instructions[at] = pikepdf.ContentStreamInstruction([x, y], instructions[at].operator)
    assert re.fullmatch(
        r"kit\.pdf: spacers: a strip is \d+\.\d+ mm wide, 0\.050 mm off the gap that is nearest",
        the_fault(salon),
    )


def test_a_spacer_that_says_another_width(salon: Copy) -> None:
    _change_words(salon, _spacers(salon), _replace(r"^gap (\d)", "gap 9"))
    assert re.search(r"spacers: a strip that is .* mm wide says that it is 9", the_fault(salon))


def test_spacers_that_are_not_drawn(salon: Copy) -> None:
    with salon.opened_page(_spacers(salon)) as (_, instructions):
        for at in _strips(instructions):
            instructions[at + 5] = DRAWS_NOTHING
    assert any(re.search(r"spacers: the gap of .* mm has no strip", told) for told in faults(salon))


def test_the_kits_themselves_hold(copy: Copy, salon: Copy) -> None:
    for each in (copy, salon):
        assert prove_kit(each.folder)[1].notes == ()
