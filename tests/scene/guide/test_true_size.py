import pytest

from templater.drawing import Circle, Item, Line, Words
from templater.geometry import Point
from templater.lettering import words_box
from templater.scene.guide.true_size import (
    draw_edge_rulers,
    draw_long_rulers,
    draw_print_test,
    fit_rulers,
)
from tests.scene.pages import (
    PAPERS,
    assert_inside,
    assert_words_apart,
    assert_words_clear_of_lines,
    blank_form,
    text_of,
    words_of,
)


@pytest.mark.parametrize(
    ("paper", "lengths", "inches"),
    [
        # 3 : 4 : 5; whole inches: 180 / 25.4 = 7.09; (240 - 10) / 25.4 = 9.06
        ("a4", (180.0, 240.0, 300.0), (7, 9)),
        ("letter", (180.0, 240.0, 300.0), (7, 9)),
        ("legal", (180.0, 240.0, 300.0), (7, 9)),
        ("a5", (120.0, 160.0, 200.0), (4, 5)),  # 120 / 25.4 = 4.72; 150 / 25.4 = 5.91
        ("a3", (240.0, 320.0, 400.0), (9, 12)),  # 240 / 25.4 = 9.45; 310 / 25.4 = 12.20
    ],
)
def test_rulers_are_as_long_as_the_paper_allows(
    paper: str, lengths: tuple[float, float, float], inches: tuple[int, int]
) -> None:
    rulers = fit_rulers(blank_form(paper))
    assert (rulers.across_mm, rulers.up_mm, rulers.corner_mm) == pytest.approx(lengths)
    assert (rulers.inches_across, rulers.inches_up) == inches


def test_small_paper_has_no_page_of_one_section() -> None:
    # A5 has no room beside its rulers for the last sections; they go on together.
    first, second = (text_of([page]) for page in draw_print_test(blank_form("a5")))
    assert "All three right to 0.5 mm" in first
    assert "If one is off" not in first
    assert "If one is off" in second
    assert "The edges" in second
    (only,) = draw_print_test(blank_form("a4"))
    assert "The edges" in text_of([only])


def test_millimetre_ticks_stand_on_whole_millimetres() -> None:
    rulers = fit_rulers(blank_form("a4"))
    lines = [item for item in draw_long_rulers(rulers) if isinstance(item, Line)]
    across = sorted(
        line.start.x - rulers.zero.x
        for line in lines
        if line.start.x == line.end.x and line.start.y == rulers.zero.y < line.end.y
        if line.end.y - line.start.y < 10
    )
    assert across == pytest.approx([float(mm) for mm in range(181)])
    tenths = [line for line in lines if line.end.x == line.start.x and line.box.height == 3.0]
    assert max(line.start.x for line in tenths) - rulers.zero.x == pytest.approx(180.0)


def test_inch_ticks_stand_on_whole_eighths() -> None:
    rulers = fit_rulers(blank_form("letter"))
    below = sorted(
        item.start.x - rulers.zero.x
        for item in draw_long_rulers(rulers)
        if isinstance(item, Line) and item.end.y < rulers.zero.y
    )
    # 7 in by eighths of 3.175 mm: 57 ticks, the last at 177.8 mm
    assert below == pytest.approx([3.175 * eighth for eighth in range(57)])
    assert below[-1] == pytest.approx(177.8)


def test_upward_inches_span_nine_inches() -> None:
    items = draw_long_rulers(fit_rulers(blank_form("a4")))
    heights = [item.box.height for item in items if isinstance(item, Line) and not item.box.width]
    # 240 mm, and 9 in = 228.6 mm
    assert sorted(heights)[-2:] == pytest.approx([228.6, 240.0])


def test_rings_stand_three_hundred_millimetres_apart() -> None:
    rings = [item for item in draw_long_rulers(fit_rulers(blank_form("a4"))) if isinstance(item, Circle)]
    (a, b) = (ring.centre for ring in rings)
    assert ((a.x - b.x) ** 2 + (a.y - b.y) ** 2) ** 0.5 == pytest.approx(300.0)


@pytest.mark.parametrize("paper", PAPERS)
def test_edge_lines_stand_at_their_number_from_the_edge(paper: str) -> None:
    form = blank_form(paper)
    items = draw_edge_rulers(form, fit_rulers(form))
    width, height = form.size
    seen: dict[str, list[int]] = {"left": [], "right": [], "top": [], "bottom": []}
    for line, figure in _pairs(items):
        number = int(figure.text)
        x, y = line.start
        if line.box.width:
            side, distance = ("top", height - y) if y > height / 2 else ("bottom", y)
        else:
            side, distance = ("right", width - x) if x > width / 2 else ("left", x)
        assert distance == pytest.approx(number)
        seen[side].append(number)
    assert seen["left"] == seen["right"] == list(range(1, 16))
    assert seen["bottom"][:9] == list(range(1, 10))
    assert seen["top"][:5] == list(range(1, 6))


def _pairs(items: tuple[Item, ...]) -> list[tuple[Line, Words]]:
    lines = [item for item in items if isinstance(item, Line)]
    figures = [item for item in items if isinstance(item, Words)]
    return list(zip(lines, figures, strict=True))


@pytest.mark.parametrize("paper", ["a4", "letter", "a5", "legal", "tabloid", "a3"])
def test_edge_rulers_on_usual_papers_are_whole(paper: str) -> None:
    form = blank_form(paper)
    lines = [item for item in draw_edge_rulers(form, fit_rulers(form)) if isinstance(item, Line)]
    # 15 at three edges; at the foot 12, for the page's own line of words begins at 12.7 mm
    assert len(lines) == 15 + 15 + 15 + 12


@pytest.mark.parametrize("paper", PAPERS)
def test_everything_else_prints(paper: str) -> None:
    form = blank_form(paper)
    pages = draw_print_test(form)
    edges = set(draw_edge_rulers(form, fit_rulers(form)))
    assert edges <= set(pages[0].items)
    for page in pages:
        assert_inside([item for item in page.items if item not in edges], form.inner)
        assert_words_apart(page)
        assert_words_clear_of_lines(page)


@pytest.mark.parametrize("paper", PAPERS)
def test_edge_rulers_leave_the_foot_line_free(paper: str) -> None:
    form = blank_form(paper)
    foot = form.printable._replace(y1=form.inner.y0)
    for item in draw_edge_rulers(form, fit_rulers(form)):
        box = words_box(item) if isinstance(item, Words) else item.box
        assert not box.meets(foot)


def test_the_page_says_what_it_must_measure_and_what_to_do() -> None:
    text = text_of(draw_print_test(blank_form("a4")))
    for words in ("180 mm", "240 mm", "300 mm (11 13/16 in)", "100 %", "Do not drill by these sheets"):
        assert words in text
    assert "from 7 on at the left, the right and the top" in text


@pytest.mark.parametrize("paper", ["a5", "5.5 x 8.5 in"])
def test_small_paper_moves_what_finds_no_room_to_a_second_page(paper: str) -> None:
    form = blank_form(paper)
    rulers = fit_rulers(form)
    first, second = draw_print_test(form)[:2]
    # What each ruler must measure stands beside it.
    for way, length in (("across", rulers.across_mm), ("up", rulers.up_mm)):
        assert f"The long ruler {way} must be {length:.0f} mm" in text_of([first])
    assert "No printer reaches the edge" not in text_of([first])
    assert "No printer reaches the edge" in text_of([second])
    assert "long ruler" not in text_of([second])
    assert max(words.at.y for words in words_of(second)) < Point(*second.size).y
