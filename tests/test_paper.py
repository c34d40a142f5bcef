import pytest

from templater.geometry import Size
from templater.lengths import LengthError, Unit
from templater.paper import MAX_PAGE_MM, PAPERS, Paper, default_paper, parse_paper


def test_iso_a_papers_are_halves_of_each_other() -> None:
    """ISO 216: A0 is 841 x 1189 mm; each next one is cut across its long side, whole mm."""
    short, long = 841, 1189
    for number in range(6):
        assert PAPERS[f"a{number}"].size == Size(short, long)
        short, long = long // 2, short


@pytest.mark.parametrize(
    ("name", "width", "height"),
    [
        # ASME Y14.1, flat sizes A, B, C, D and E, inches.
        ("letter", 8.5, 11),
        ("tabloid", 11, 17),
        ("ansi c", 17, 22),
        ("ansi d", 22, 34),
        ("ansi e", 34, 44),
        # PWG 5101.1 media names: na_legal_8.5x14in.
        ("legal", 8.5, 14),
        # PWG 5101.1 media names: na_arch-a_9x12in to na_arch-e_36x48in.
        ("arch a", 9, 12),
        ("arch b", 12, 18),
        ("arch c", 18, 24),
        ("arch d", 24, 36),
        ("arch e", 36, 48),
    ],
)
def test_inch_papers(name: str, width: float, height: float) -> None:
    assert PAPERS[name].size == pytest.approx((width * 25.4, height * 25.4), abs=1e-9)


def test_every_named_paper_is_found_by_its_name() -> None:
    assert len(PAPERS) == 17
    for name, paper in PAPERS.items():
        assert parse_paper(f" {name.upper().replace(' ', '-')} ") is paper
        assert not paper.is_roll


@pytest.mark.parametrize(
    ("units", "name"),
    [
        (Unit.INCH, "letter"),
        (Unit.FOOT, "letter"),
        (Unit.CENTIMETRE, "a4"),
        (Unit.MILLIMETRE, "a4"),
        (Unit.METRE, "a4"),
        (None, "a4"),
    ],
)
def test_the_paper_of_each_unit(units: Unit | None, name: str) -> None:
    assert default_paper(units) is PAPERS[name]


@pytest.mark.parametrize(
    ("text", "units", "paper"),
    [
        ("13 x 19 in", None, Paper("13 x 19 in", Size(330.2, 482.6))),
        ("19 × 13", Unit.INCH, Paper("19 x 13 in", Size(330.2, 482.6))),
        ("32 cm x 450 mm", None, Paper("32 cm x 450 mm", Size(320, 450))),
        ("roll 24 in", None, Paper("roll 24 in", Size(609.6, MAX_PAGE_MM), is_roll=True)),
        ("Roll  610", Unit.MILLIMETRE, Paper("roll 610 mm", Size(610, MAX_PAGE_MM), is_roll=True)),
    ],
)
def test_papers_by_their_size(text: str, units: Unit | None, paper: Paper) -> None:
    assert parse_paper(text, units) == paper


@pytest.mark.parametrize(
    ("text", "message"),
    [
        ("leter", "'leter' is not a paper (did you mean 'letter'?)"),
        ("papyrus", "'papyrus' is not a paper"),
        ("a6", "'a6' is too small for a template"),
        ("124 x 165 mm", "'124 x 165 mm' is too small or too large for a paper"),
        ("125 x 164 mm", "'125 x 164 mm' is too small or too large for a paper"),
        ("", "'' is not a paper"),
        ("roll", "'roll' is not a paper"),
        ("roll wide", "'wide' is not a length"),
        ("13 x 19", "'13 x 19' has no unit"),
        ("13,5 x 19 in", "'13,5' has a decimal comma"),
        ("3 x 19 in", "'3 x 19 in' is too small or too large for a paper"),
        ("-13 x 19 in", "'-13 x 19 in' is too small or too large for a paper"),
        ("1 m x 6 m", "'1 m x 6 m' is too small or too large for a paper"),
        ("roll 3 in", "'roll 3 in' is too small or too large for a paper"),
    ],
)
def test_what_is_no_paper_is_refused(text: str, message: str) -> None:
    with pytest.raises(LengthError) as caught:
        parse_paper(text)
    assert str(caught.value) == message
    assert caught.value.hint


def test_the_longest_page_is_14400_points() -> None:
    """200 in, a portability limit of ISO 32000-1 Annex C.2."""
    assert parse_paper("1 x 5.08 m").size.height == MAX_PAGE_MM == 14400 / 72 * 25.4
