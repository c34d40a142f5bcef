import re

import pytest

from templater.drawing import Words
from templater.geometry import Box
from templater.scene.guide import cautions
from templater.scene.guide.step_pictures import PICTURE
from templater.scene.guide.steps import PaperWork, draw_steps, list_steps
from tests.scene.pages import (
    PAPERS,
    assert_inside,
    assert_words_apart,
    assert_words_clear_of_lines,
    blank_form,
    over_stairs,
    plan_with,
    text_of,
)

ORDER = (
    "Print",
    "Check the ruler",
    "Trim and tape the sheets",
    "Check the diagonals",
    "Set the datum",
    "Tape the templates up",
    "Step back and look",
    "Check the heights",
    "Level across the crosses",
    "Drill through the marks",
    "Level again after the first hole",
    "Tear the paper away",
    "Hang",
)


@pytest.mark.parametrize("paper", PAPERS)
def test_steps_come_in_order_on_clean_pages(paper: str) -> None:
    form = blank_form(paper)
    pages = draw_steps(plan_with(9), form, revision="QK7M2P")
    for page in pages:
        assert_inside(page.items, form.inner)
        assert_words_apart(page)
        assert_words_clear_of_lines(page)
    text = text_of(pages)
    places = [text.index(f"{number}. {title}") for number, title in enumerate(ORDER, 1)]
    assert places == sorted(places)
    assert len(re.findall(r"\b\d+\. [A-Z]", text)) == len(ORDER)


ALL_WORK = PaperWork(is_shared=True, has_spacers=True, has_corners=True, has_cards=True)


@pytest.mark.parametrize("paper", PAPERS)
def test_a_kit_that_asks_for_more_says_how_in_its_place(paper: str) -> None:
    form = blank_form(paper)
    pages = draw_steps(plan_with(9), form, revision="QK7M2P", work=ALL_WORK)
    for page in pages:
        assert_inside(page.items, form.inner)
        assert_words_apart(page)
        assert_words_clear_of_lines(page)
    text = text_of(pages)
    for title, before, after in (
        ("Cut shared sheets apart", "Check the ruler", "Trim and tape"),
        ("Set each card by measure", "Tape the templates up", "Step back"),
        ("Set the bottom corner by measure", "Tape the templates up", "Step back"),
        ("Hold a spacer between neighbours", "Tape the templates up", "Step back"),
    ):
        heads = [
            found.start()
            for head in (before, title, after)
            for found in re.finditer(rf"\b\d+\. {head}", text)
        ]
        assert heads == sorted(heads)
        assert len(heads) == 3


@pytest.mark.parametrize(
    ("work", "word"),
    [
        (PaperWork(is_shared=True), "S1"),
        (PaperWork(has_spacers=True), "spacer"),
        (PaperWork(has_corners=True), "bottom corner"),
        (PaperWork(has_cards=True), "card by measure"),
    ],
)
def test_nothing_is_said_of_what_a_kit_does_not_have(work: PaperWork, word: str) -> None:
    titles = [" ".join((step.title, step.text)) for step in list_steps(plan_with(1), "QK7M2P", work)]
    plain = [" ".join((step.title, step.text)) for step in list_steps(plan_with(1), "QK7M2P")]
    assert any(word in title for title in titles)
    assert not any(word in title for title in plain)
    assert len(titles) == len(plain) + 1


def test_where_no_sheets_join_none_are_to_be_taped_together() -> None:
    titles = [step.title for step in list_steps(plan_with(1), "QK7M2P", PaperWork(is_joined=False))]
    assert titles[2:4] == ["Measure and cut out", "Set the datum"]
    told = _words(PaperWork(is_joined=False))
    assert not any(word in told for word in ("Trim", "Take it apart", "taped-up"))


def test_pictures_keep_to_their_room() -> None:
    for step in list_steps(plan_with(1), "QK7M2P", ALL_WORK):
        assert_inside(step.picture, Box(0.0, 0.0, *PICTURE))
        assert all(item.height_mm >= 2.5 for item in step.picture if isinstance(item, Words))


def test_taping_does_not_say_how_the_sheets_lie() -> None:
    # Courses may be rows or columns: only the map and the names at the marks tell.
    (taping,) = [step for step in list_steps(plan_with(1), "QK7M2P") if step.title.startswith("Trim")]
    assert "A1" not in taping.text
    assert "side by side" not in taping.text
    assert "small map" in taping.text
    drawn = [item.text for item in taping.picture if isinstance(item, Words)]
    assert not {"A1", "A2", "B1"} & set(drawn)


def test_the_datum_step_names_height_and_place() -> None:
    text = text_of(draw_steps(plan_with(1), blank_form("a4"), revision="QK7M2P"))
    assert "At this place: left of the stair post, measure 1524 mm (60 in) up from the floor" in text
    assert "revision QK7M2P" in text


@pytest.mark.parametrize(
    "caution",
    [
        cautions.LADDER,
        cautions.CABLES,
        cautions.DUST,
        cautions.RATING,
        cautions.BEDS,
        cautions.HEAT,
        cautions.EARTHQUAKE,
        cautions.HEAVY,
    ],
)
@pytest.mark.parametrize("paper", ["a4", "125 x 165 mm"])
def test_each_caution_is_printed(caution: cautions.Caution, paper: str) -> None:
    text = text_of(draw_steps(plan_with(1), blank_form(paper), revision="QK7M2P"))
    assert f"Caution: {caution.title} {caution.text}" in text


OVER_STAIRS = (
    "Over the stairs set no common ladder on the steps: take a platform or a ladder made for stairs, as"
    " its maker says, or a scaffold, and a second person."
)


@pytest.mark.parametrize("paper", PAPERS)
def test_over_stairs_the_ladder_caution_says_so(paper: str) -> None:
    form = blank_form(paper)
    pages = draw_steps(over_stairs(plan_with(4)), form, revision="QK7M2P")
    for page in pages:
        assert_inside(page.items, form.inner)
        assert_words_apart(page)
        assert_words_clear_of_lines(page)
    assert f"Do not climb on furniture. {OVER_STAIRS}" in text_of(pages)
    assert "stairs" not in text_of(draw_steps(plan_with(4), form, revision="QK7M2P"))


def _words(work: PaperWork = ALL_WORK) -> str:
    return " ".join(f"{step.title} {step.text}" for step in list_steps(plan_with(1), "QK7M2P", work))


def test_the_datum_and_the_level_line_are_two_lines() -> None:
    # A template calls the line through its hang points LEVEL LINE; the line on the wall is the datum.
    words = _words()
    assert "level line" not in words
    assert "this line is the datum" in words
    assert "Its line DATUM lies on the datum that you drew" in words
    assert "set its LEVEL LINE as far above or below the datum as is printed beside it" in words
    assert "measure the distance from the datum and from the wall's left end" in words


def test_three_and_more_holes_are_told_too() -> None:
    # Three screws of a ledge; three of a lock, the third at another height.
    words = _words()
    assert "two crosses" not in words
    assert not re.search(r"two holes(?! at)", words)
    assert words.count("two or more holes") == 4
    assert "a cross at another height moves as far" in words


def test_who_must_measure_from_hole_to_hole_is_sent_where_it_stands() -> None:
    assert "from hole to hole before you drill: the checklist tells how far" in _words()
    assert "also from hole to hole. The checklist" in _words(PaperWork())


def test_cautions_about_drilling_stand_with_the_drilling() -> None:
    (drilling,) = [
        step for step in list_steps(plan_with(1), "QK7M2P") if step.title == "Drill through the marks"
    ]
    assert {cautions.CABLES, cautions.DUST, cautions.RATING} <= set(drilling.cautions)
