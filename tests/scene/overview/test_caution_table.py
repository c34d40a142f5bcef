from __future__ import annotations

from dataclasses import replace

import pytest

from templater.rules.model import Finding, Verdict
from templater.scene.overview.caution_table import MOST_LISTED, list_cautions

DETECTOR = "look for a cable with a detector first; if in doubt, do not drill"
PRACTICE = "common practice, no source"


def cable(piece: str, hole: int, figure: str = "plumb over hall switch") -> Finding:
    return Finding(
        "cable-zone", piece, f"hole {hole}", Verdict.CAUTION, figure, None, DETECTOR, PRACTICE
    )


def ask(piece: str) -> Finding:
    missing = "add 'studs' to 'wall'"
    return Finding("stud-edge", piece, None, Verdict.NOT_CHECKED, None, None, missing, PRACTICE)


KEPT = Finding("two-persons", "Bell", None, Verdict.KEPT, "6 lb", "up to 25 lb", None, PRACTICE)
NONE = Finding("over-heat", "Bell", None, Verdict.NOT_APPLICABLE, None, None, None)


def test_what_is_to_be_heeded_comes_first_and_what_is_clear_is_not_told() -> None:
    findings = [ask("Ebb"), KEPT, cable("Ebb", 1), ask("Flow"), NONE, cable("Ebb", 2)]
    (chapter,) = list_cautions(findings, 250.0)
    assert chapter.rows == (
        (
            "caution !",
            "cable-zone",
            "Ebb / hole 1, hole 2",
            "plumb over hall switch",
            DETECTOR,
            PRACTICE,
        ),
    )
    assert len(chapter.notes) == 1
    assert chapter.notes[0].startswith("Not checked: stud-edge (2).")
    assert chapter.heading == (
        "Cautions: likelihoods, not a survey. Use a detector; local codes and licensed trades decide"
    )


def test_on_paper_stands_what_can_be_done_at_the_wall() -> None:
    finding = replace(cable("Ebb", 1), mend="bear on it; or add 'rise'", at_wall="bear on it")
    (chapter,) = list_cautions([finding], 250.0)
    assert chapter.rows[0][4] == "bear on it"


def test_without_cautions_there_is_no_table() -> None:
    assert list_cautions([KEPT, NONE], 250.0) == []


def test_on_narrow_paper_a_caution_takes_one_cell() -> None:
    (chapter,) = list_cautions([cable("Ebb", 1)], 100.0)
    words = f"cable-zone\nEbb / hole 1\nplumb over hall switch\n{DETECTOR}\n{PRACTICE}"
    assert chapter.rows == (("caution !", words),)


def test_what_was_not_checked_is_told_where_there_is_nothing_to_heed() -> None:
    (chapter,) = list_cautions([ask("Ebb")], 250.0)
    assert chapter.rows == ()
    # Whoever reads the paper may have neither the layout nor the program.
    assert chapter.notes == (
        "Not checked: stud-edge (1). Judge these at the wall, or ask whoever made this kit.",
    )


@pytest.mark.parametrize(("count", "more"), [(MOST_LISTED, 0), (MOST_LISTED + 5, 5)])
def test_of_very_many_the_rest_is_counted(count: int, more: int) -> None:
    (chapter,) = list_cautions([cable("Ebb", 1, f"zone {number}") for number in range(count)], 250.0)
    assert len(chapter.rows) == MOST_LISTED
    assert (f"({more} more: ask whoever made this kit)" in chapter.heading) == bool(more)
