from __future__ import annotations

import re
from collections.abc import Iterable
from dataclasses import replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from templater.layout.model import Arrangement, Group, Layout, Piece, Position
from templater.layout.rule_codes import RULE_CODES
from templater.lengths import Unit, parse_length
from templater.rules.check import RULES, check_rules
from templater.rules.model import Finding, Verdict
from tests.builders import furniture, group, inches, layout, piece, place_layout, plan_of, position
from tests.rules.plans import box, grouped, setting
from tests.rules.plans import wall as make_wall
from tests.strategies import layouts


def over_bench(width: float, clearance: float = 7, units: Unit = Unit.INCH) -> Layout:
    """A piece so many inches wide over a bench of 80 x 34 in."""
    place = position(above="boot bench", clearance=inches(clearance))
    work = piece("Tide chart", inches(width), inches(20), place=place)
    return layout([work], furniture=[furniture("boot bench", inches(40))], units=units)


def finding(wall: Layout, rule: str) -> Finding:
    """The only finding of a rule."""
    (found,) = [each for each in check_rules(place_layout(wall).plan) if each.rule == rule]
    return found


def told(found: Finding) -> tuple[Verdict, str | None, str | None, str | None]:
    return found.verdict, found.figure, found.band, found.mend


KEPT, BROKEN = Verdict.KEPT, Verdict.BROKEN


@pytest.mark.parametrize(
    ("width", "verdict", "figure", "mend"),
    [
        # 60 % of 80 in is 48 in, 75 % is 60 in; common practice, no source.
        (48, KEPT, "60 % of 80 in", None),
        (54, KEPT, "68 % of 80 in", None),  # 67.5 %
        (60, KEPT, "75 % of 80 in", None),
        (46, BROKEN, "58 % of 80 in", "widen by 2 in (51 mm), to 48 in"),  # 57.5 %
        (47.99, BROKEN, "59 % of 80 in", "widen by 1/16 in (2 mm), to 48 1/16 in"),
        (70, BROKEN, "88 % of 80 in", "narrow by 10 in (254 mm), to 60 in"),  # 87.5 %
    ],
)
def test_width_over_furniture(width: float, verdict: Verdict, figure: str, mend: str | None) -> None:
    found = finding(over_bench(width), "width-over-furniture")
    assert told(found) == (verdict, figure, "60–75 %", mend)
    assert (found.subject, found.other) == ("Tide chart", "boot bench")


def test_width_in_metric() -> None:
    # 46 in = 1168.4 mm; 60 % of 2032 mm is 1219.2 mm; 50.8 mm more, shown as 51: 1219.4.
    found = finding(over_bench(46, units=Unit.CENTIMETRE), "width-over-furniture")
    assert told(found) == (
        BROKEN,
        "58 % of 2032 mm",
        "60–75 %",
        "widen by 51 mm (2 in), to 1220 mm",
    )


@pytest.mark.parametrize(
    ("width", "verdict", "figure", "mend"),
    [
        (60, KEPT, "10 in inside", None),
        (80, KEPT, "0 in inside", None),
        (86, BROKEN, "3 in past", "narrow by 6 in (152 mm), to 80 in"),
    ],
)
def test_past_the_ends(width: float, verdict: Verdict, figure: str, mend: str | None) -> None:
    found = finding(over_bench(width), "past-the-ends")
    assert told(found) == (verdict, figure, "0 in or more inside", mend)
    assert found.other == "boot bench"


@pytest.mark.parametrize(
    ("clearance", "verdict", "figure", "mend"),
    [
        # 6 to 8 in; common practice, no source.
        (6, KEPT, "6 in", None),
        (7, KEPT, "7 in", None),
        (8, KEPT, "8 in", None),
        (5, BROKEN, "5 in", "raise by 1 in (25 mm)"),
        (12.5, BROKEN, "12 1/2 in", "lower by 4 1/2 in (114 mm)"),
    ],
)
def test_clearance(clearance: float, verdict: Verdict, figure: str, mend: str | None) -> None:
    found = finding(over_bench(54, clearance), "clearance")
    assert told(found) == (verdict, figure, "6–8 in", mend)


def trio(gap: float, arrange: Arrangement = Arrangement.ROW, place: Position | None = None) -> Layout:
    return layout(
        [piece(name, inches(12), inches(12)) for name in "ABC"],
        groups=[group("trio", "ABC", arrange=arrange, gap=inches(gap), place=place)],
        furniture=[furniture("boot bench", inches(0), inches(20))],
        height=inches(120),
    )


@pytest.mark.parametrize("arrange", [Arrangement.ROW, Arrangement.COLUMN, Arrangement.GRID])
@pytest.mark.parametrize(
    ("gap", "verdict", "figure", "mend"),
    [
        # 2 to 4 in; common practice, no source.
        (2, KEPT, "2 in", None),
        (4, KEPT, "4 in", None),
        (1.5, BROKEN, "1 1/2 in", "open the gap by 1/2 in (13 mm), to 2 in"),
        (10, BROKEN, "10 in", "close the gap by 6 in (152 mm), to 4 in"),
        (26, BROKEN, "26 in", "close the gap by 22 in (559 mm), to 4 in"),
    ],
)
def test_gap(arrange: Arrangement, gap: float, verdict: Verdict, figure: str, mend: str | None) -> None:
    found = [each for each in check_rules(place_layout(trio(gap, arrange)).plan) if each.rule == "gap"]
    assert [(each.subject, each.other) for each in found] == [("A", "B"), ("B", "C")]
    assert {told(each) for each in found} == {(verdict, figure, "2–4 in", mend)}


@pytest.mark.parametrize(
    ("height", "verdict", "figure", "mend"),
    [
        # The eye line at 60 in, within one inch; common practice, no source.
        (60, KEPT, "60 in", None),
        (61, KEPT, "61 in", None),
        (59, KEPT, "59 in", None),
        (57, BROKEN, "57 in", "raise by 2 in (51 mm)"),
        (66.25, BROKEN, "66 1/4 in", "lower by 5 1/4 in (133 mm)"),
    ],
)
def test_eye_line(height: float, verdict: Verdict, figure: str, mend: str | None) -> None:
    place = position(eye_line=inches(height))
    alone = finding(layout([piece("Fog bell", place=place)]), "eye-line")
    grouped = finding(trio(3, place=place), "eye-line")
    for found, subject in ((alone, "Fog bell"), (grouped, "trio")):
        assert told(found) == (verdict, figure, "59–61 in", mend)
        assert (found.subject, found.other) == (subject, None)


def rules_of(findings: Iterable[Finding]) -> list[tuple[str, str, str | None, str]]:
    return [(each.rule, each.subject, each.other, each.verdict.value) for each in findings]


def test_a_group_is_one_piece_and_the_order_is_fixed() -> None:
    wall = layout(
        [
            *(piece(name, inches(14), inches(12)) for name in "ABC"),
            piece("Fog bell", place=position(left=inches(160))),
        ],
        groups=[group("trio", "ABC", place=position(above="boot bench"))],
        furniture=[furniture("boot bench", inches(60))],
    )
    assert rules_of(check_rules(plan_of(wall))) == [
        ("width-over-furniture", "Fog bell", None, "n/a"),
        ("past-the-ends", "Fog bell", None, "n/a"),
        ("clearance", "Fog bell", None, "n/a"),
        ("gap", "Fog bell", None, "n/a"),
        ("eye-line", "Fog bell", None, "kept"),
        ("group-as-one", "Fog bell", None, "n/a"),
        ("uneven-gaps", "Fog bell", None, "n/a"),
        ("near-miss", "Fog bell", None, "n/a"),  # 36 in from the trio: no neighbour
        ("balance", "Fog bell", None, "n/a"),
        ("near-ceiling", "Fog bell", None, "kept"),
        ("near-corner", "Fog bell", "right end", "kept"),
        ("near-opening", "Fog bell", None, "n/a"),
        ("door-swing", "Fog bell", None, "n/a"),
        ("size-against-wall", "Fog bell", None, "kept"),
        ("width-over-furniture", "trio", "boot bench", "kept"),  # 3 x 14 + 2 x 3 = 48 in, 60 %
        ("past-the-ends", "trio", "boot bench", "kept"),
        ("clearance", "trio", "boot bench", "kept"),
        ("gap", "A", "B", "kept"),
        ("gap", "B", "C", "kept"),
        ("eye-line", "trio", None, "n/a"),
        ("group-as-one", "trio", None, "kept"),
        ("uneven-gaps", "trio", None, "kept"),
        ("near-miss", "A", "B", "kept"),
        ("balance", "trio", None, "kept"),
        ("near-ceiling", "trio", None, "kept"),
        ("near-corner", "trio", "left end", "kept"),  # 76 in to both ends
        ("near-opening", "trio", None, "n/a"),
        ("door-swing", "trio", None, "n/a"),
        ("size-against-wall", "trio", None, "n/a"),
    ]


def test_the_codes_are_those_of_the_layout_in_its_order() -> None:
    assert tuple(rule.code for rule in RULES) == RULE_CODES


def test_of_a_group_in_a_group_only_the_insides_are_judged() -> None:
    pair, members = grouped("pair", [("A", box(30, 60, 10, 10)), ("B", box(30, 40, 10, 10))])
    pair = replace(pair, arrange=Arrangement.COLUMN, within="all")
    whole, more = grouped("all", [("C", box(43, 40, 20, 30))])
    inner = replace(
        whole,
        box=box(30, 40, 33, 30),
        pieces=("A", "B", "C"),
        parts=(("pair", pair.box), *whole.parts),
    )
    findings = check_rules(make_wall(groups=[(inner, [*members, *more]), (pair, [])]))
    said = {(each.rule, each.subject, each.verdict.value) for each in findings}
    of_pair = {rule for rule, subject, verdict in said if subject == "pair" and verdict != "n/a"}
    assert of_pair == {"group-as-one", "gap", "near-miss"}
    assert ("gap", "A", "broken") in said  # 10 in, within the pair
    assert ("gap", "pair", "kept") in said  # 3 in, beside C: as one piece
    assert not any(subject == "B" for _, subject, _ in said)


def test_a_rule_that_is_turned_off_does_not_apply() -> None:
    plan = replace(plan_of(over_bench(20)), rules=(setting("width-over-furniture", is_on=False),))
    found = [each for each in check_rules(plan) if each.rule == "width-over-furniture"]
    assert [(each.subject, each.verdict) for each in found] == [("Tide chart", Verdict.NOT_APPLICABLE)]


def test_what_does_not_apply_has_nothing_to_show() -> None:
    for found in check_rules(plan_of(layout([piece("Fog bell")]))):
        if found.verdict is Verdict.NOT_APPLICABLE:
            assert (found.figure, found.band, found.mend, found.other) == (None, None, None, None)


def test_an_empty_wall_has_no_findings() -> None:
    assert check_rules(plan_of(layout([]))) == ()


def signed_change(found: Finding) -> float:
    """What a mend asks for, mm, as a reader of its own units would do it."""
    match = re.match(
        r"(raise|lower|widen|narrow|open the gap|close the gap) by (.+?) \(", str(found.mend)
    )
    assert match is not None
    sign = 1 if match.group(1) in ("raise", "widen", "open the gap") else -1
    return sign * float(parse_length(match.group(2)))


WIDTH_RULES = ("width-over-furniture", "past-the-ends")


def mended(wall: Layout, found: Finding) -> Layout:
    """The layout with a finding's mend carried out by the number it shows."""
    change = signed_change(found)
    return replace(
        wall,
        groups=tuple(mend_group(each, found, change) for each in wall.groups),
        pieces=tuple(mend_piece(each, found, change) for each in wall.pieces),
    )


def mend_piece(each: Piece, found: Finding, change: float) -> Piece:
    if each.name != found.subject or each.position is None:
        return each
    if found.rule in WIDTH_RULES:
        return replace(each, size=each.size._replace(width=each.size.width + change))
    return replace(each, position=move_up(each.position, change))


def mend_group(each: Group, found: Finding, change: float) -> Group:
    if found.rule == "gap" and found.subject in each.members:
        return replace(each, gap_mm=each.gap_mm + change)
    if each.name != found.subject or each.position is None:
        return each
    if found.rule in WIDTH_RULES:
        return replace(each, gap_mm=each.gap_mm + change / (len(each.members) - 1))
    return replace(each, position=move_up(each.position, change))


def move_up(place: Position, by: float) -> Position:
    """A position that asks for a place higher by so much, whichever way it asks."""

    def higher(height: float | None) -> float | None:
        return None if height is None else height + by

    return replace(
        place,
        clearance_mm=place.clearance_mm + by,
        eye_line_mm=higher(place.eye_line_mm),
        bottom_mm=higher(place.bottom_mm),
        top_mm=higher(place.top_mm),
    )


def can_be_mended_by_number(wall: Layout, found: Finding) -> bool:
    """Only what a layout says in so many numbers; the other rules' mends are tried on plans.

    Not the width of a column, nor that of a row whose pieces alone are too wide."""
    groups = [each for each in wall.groups if each.name == found.subject]
    if found.rule not in WIDTH_RULES or not groups:
        return found.rule in ("clearance", "gap", "eye-line", *WIDTH_RULES)
    in_row = groups[0].arrange is Arrangement.ROW
    return in_row and mend_group(groups[0], found, signed_change(found)).gap_mm > 0


@settings(max_examples=120, deadline=None)
@given(layouts(is_plain=True), st.data())
def test_a_mend_mends(wall: Layout, data: st.DataObject) -> None:
    broken = [each for each in check_rules(plan_of(wall)) if each.verdict is Verdict.BROKEN]
    able = [each for each in broken if can_be_mended_by_number(wall, each)]
    if not able:
        return
    found = data.draw(st.sampled_from(able))
    after = check_rules(place_layout(mended(wall, found)).plan)
    (same,) = [
        each
        for each in after
        if (each.rule, each.subject, each.other) == (found.rule, found.subject, found.other)
    ]
    assert same.verdict is Verdict.KEPT


@settings(max_examples=60, deadline=None)
@given(layouts())
def test_each_finding_is_complete(wall: Layout) -> None:
    plan = plan_of(wall)
    names = {*(each.name for each in plan.pieces), *(each.name for each in plan.groups)}
    for found in check_rules(plan):
        assert found.subject in names
        shown = (found.figure is not None, found.band is not None, found.mend is not None)
        assert (
            shown
            == {
                Verdict.KEPT: (True, True, False),
                Verdict.BROKEN: (True, True, True),
                Verdict.NOT_APPLICABLE: (False, False, False),
            }[found.verdict]
        )


@settings(max_examples=20, deadline=None)
@given(layouts())
def test_asked_about_one_thing_it_says_all_that_is_said_of_that(wall: Layout) -> None:
    plan = plan_of(wall)
    everything = check_rules(plan)
    names = [each.name for each in plan.pieces] + [each.name for each in plan.groups]
    for name in names:
        about = check_rules(plan, {name})
        told_of_it = [found for found in everything if name in {found.subject, found.other}]
        assert [found for found in about if name in {found.subject, found.other}] == told_of_it
        assert set(about) <= set(everything)
