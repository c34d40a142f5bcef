"""The table of what the rules of placing say: what comes first, what is left out and counted."""

from __future__ import annotations

from dataclasses import replace

from templater.rules.model import Finding, Verdict
from templater.scene.overview.chapters import Chapter
from templater.scene.overview.finding_table import list_findings
from tests.scene.walls import FINDINGS

KEPT, NOT_APPLICABLE, BROKEN = FINDINGS
ACCEPTED = replace(BROKEN, verdict=Verdict.ACCEPTED, because="the bench moves out in May")
WIDE = 250.0


def tabulate(*findings: Finding) -> Chapter:
    (chapter,) = list_findings(findings, WIDE)
    return chapter


def headings(chapter: Chapter) -> list[str]:
    return [column.heading.replace("\n", " ") for column in chapter.columns]


def test_broken_rules_come_first_with_what_mends_them() -> None:
    assert tabulate(*FINDINGS).rows == (
        (
            "broken ×",
            "clearance",
            "bench trio / boot bench",
            "9 in (229 mm)",
            "6 to 8 in",
            "set clearance: 8 in",
        ),
        ("kept ✓", "width over furniture", "bench trio / boot bench", "67.5 %", "60 to 75 %", ""),
    )


def test_what_does_not_apply_is_summed_up_in_one_line() -> None:
    others = [replace(NOT_APPLICABLE, subject=name) for name in ("Tide chart", "Gull study")]
    chapter = tabulate(*FINDINGS, *others, replace(NOT_APPLICABLE, rule="gap"))
    assert chapter.notes == ("Does not apply: eye line (3), gap (1).",)
    assert [row[0] for row in chapter.rows] == ["broken ×", "kept ✓"]


def test_a_rule_kept_by_all_needs_no_column_for_what_would_mend_it() -> None:
    assert "What would mend it, or why it is so" not in headings(tabulate(KEPT))
    assert "What would mend it, or why it is so" in headings(tabulate(*FINDINGS))


def test_a_rule_broken_on_purpose_is_accepted_never_kept_and_says_why() -> None:
    chapter = tabulate(ACCEPTED)
    assert chapter.heading == "Rules of placing: 1 accepted +"
    (row,) = chapter.rows
    assert (row[0], row[-1]) == ("accepted +", "the bench moves out in May")


def test_what_is_accepted_is_listed_however_much_is_kept() -> None:
    chapter = tabulate(*(KEPT,) * 31, ACCEPTED, NOT_APPLICABLE)
    assert [row[-1] for row in chapter.rows] == ["the bench moves out in May"]
    assert chapter.heading == ("Rules of placing: 1 accepted +, 31 kept ✓, 1 n/a – (31 not listed here)")


def test_more_findings_than_are_listed_are_counted() -> None:
    chapter = tabulate(*(replace(BROKEN, subject=f"group {index}") for index in range(75)))
    assert chapter.heading == "Rules of placing: 75 broken × (15 not listed here)"
    assert len(chapter.rows) == 60


def test_without_findings_there_is_no_table() -> None:
    assert list_findings([], WIDE) == []
