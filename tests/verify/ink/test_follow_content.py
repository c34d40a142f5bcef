"""Content of pages written by hand, a unit a millimetre, followed by both of the proof's readers."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

import pikepdf
import pytest

from templater.geometry import Box, Point
from templater.verify.ink.follow_content import Follower
from templater.verify.ink.matrices import PLAIN
from templater.verify.ink.resources import Resources
from templater.verify.model import Chain, Ink, Ring, Run, Stroke, UnreadableError
from tests.verify.near import near

Array, Dictionary, Name = pikepdf.Array, pikepdf.Dictionary, pikepdf.Name

# Codes 65 to 67 are A to C, 0.5, 0.6 and 0.7 em wide; the capital sharp s of 68 is none of them.
TABLE = b"1 beginbfrange <41> <43> <0041> endbfrange 1 beginbfchar <44> <1E9E> endbfchar"


@pytest.fixture(params=[True, False], ids=["quick", "any"])
def is_plain(request: pytest.FixtureRequest) -> bool:
    """Whether the content is followed by the quick reader."""
    return bool(request.param)


@pytest.fixture
def document() -> Iterator[pikepdf.Pdf]:
    with pikepdf.new() as made:
        made.add_blank_page()
        made.pages[0].obj["/Resources"] = Dictionary(
            Font=Dictionary(
                F1=Dictionary(
                    Subtype=Name.TrueType, FirstChar=65, Widths=Array([500, 600, 700]),
                    ToUnicode=made.make_stream(TABLE),
                )
            ),
            ColorSpace=Dictionary(
                Grey=Array([Name.ICCBased, made.make_stream(b"", N=1)]),
                Colours=Array([Name.ICCBased, made.make_stream(b"", N=3)]),
                Inks=Array([Name.ICCBased, made.make_stream(b"", N=4)]),
                Plain=Name.DeviceGray,
                Calibrated=Array([Name.CalRGB, Dictionary()]),
                Spot=Array([Name.Separation, Name.Red]),
            ),
            ExtGState=Dictionary(
                Wide=Dictionary(
                    LW=0.7, D=Array([Array([3, 1]), 0]), CA=1, ca=1, BM=Name.Normal,
                    SMask=Name("/None"), SA=True,
                ),
                Later=Dictionary(D=Array([Array([3, 1]), 2])),
                Faint=Dictionary(CA=0.5), Filled=Dictionary(ca=0.99), Lit=Dictionary(BM=Name.Screen),
                Masked=Dictionary(SMask=Dictionary()), Odd=Dictionary(HT=Name.Default),
            ),
        )  # fmt: skip
        yield made


def _form(document: pikepdf.Pdf, content: bytes, **keys: Any) -> None:
    form = document.make_stream(content, Subtype=Name.Form, BBox=Array([1, 2, 50, 60]), **keys)
    document.pages[0].resources["/XObject"] = Dictionary(Fm=form)


def _follow(document: pikepdf.Pdf, content: str, *, is_plain: bool) -> Ink:
    page = document.pages[0]
    page.Contents = document.make_stream(content.encode("latin-1"))
    reader = Follower(Resources(page.resources, {}), PLAIN, is_plain=is_plain)
    reader.follow(page, content.encode("latin-1") if is_plain else b"")
    return reader.ink


def _stroke(x0: float, y0: float, x1: float, y1: float, width: float = 1.0) -> Stroke:
    return Stroke(Point(x0, y0), Point(x1, y1), near(width), (), None)


def _dashed(stroke: Stroke, *dash: float) -> Stroke:
    return stroke._replace(dash=near(dash))


@pytest.mark.parametrize(
    ("content", "strokes"),
    [
        ("1 2 m 3 4 l S", [_stroke(1, 2, 3, 4)]),
        ("1 2 m 3 4 l h S", [_stroke(1, 2, 3, 4)]),
        ("1 2 m 3 4 l s", [_stroke(1, 2, 3, 4)]),
        ("1 2 m 3 4 l 5 6 m 7 8 l S", [_stroke(1, 2, 3, 4), _stroke(5, 6, 7, 8)]),
        ("1 2 m n 5 6 m 7 8 l S", [_stroke(5, 6, 7, 8)]),
        ("1 2 m 3 4 l n 5 6 m 7 8 l n", []),
        # Moved and doubled; the width and the dashes grow too.
        (
            "q 2 0 0 2 10 20 cm 0.3 w [1 2] 0 d 1 2 m 3 2 l S Q 0.3 w 1 2 m 3 2 l S",
            [_dashed(_stroke(12, 24, 16, 24, 0.6), 2, 4), _stroke(1, 2, 3, 2, 0.3)],
        ),
        ("0.3 w [1 2] 0 d 2 0 0 2 0 0 cm 1 2 m 3 2 l S", [_dashed(_stroke(2, 4, 6, 4, 0.6), 2, 4)]),
        ("1 J 1 j 4 M 1 i /Saturation ri 1 2 m 3 2 l S", [_stroke(1, 2, 3, 2)]),
        ("/Span MP /Span BMC 1 2 m 3 2 l S EMC", [_stroke(1, 2, 3, 2)]),
        ("0.3 w [1 2] 1 d 2 0 0 2 0 0 cm 1 2 m 3 2 l S", [
            _dashed(_stroke(2, 4, 6, 4, 0.6), 2, 4)._replace(phase=2.0),
        ]),
        ("/Later gs 1 2 m 3 2 l S", [_dashed(_stroke(1, 2, 3, 2), 3, 1)._replace(phase=2.0)]),
        ("/Wide gs 1 2 m 3 2 l S", [_dashed(_stroke(1, 2, 3, 2, 0.7), 3, 1)]),
        ("2 0 0 2 0 0 cm /Wide gs 1 2 m 3 2 l S", [_dashed(_stroke(2, 4, 6, 4, 1.4), 6, 2)]),
        ("0.1 w 1 2 m 3 2 l S 2 w 1 2 m 3 2 l S", [_stroke(1, 2, 3, 2, 0.1), _stroke(1, 2, 3, 2, 2.0)]),
        ("% 5 6 m 7 8 l S\n1 2 m 3 2 l S", [_stroke(1, 2, 3, 2)]),
    ],
)  # fmt: skip
def test_straight_lines(
    document: pikepdf.Pdf, is_plain: bool, content: str, strokes: list[Stroke]
) -> None:
    ink = _follow(document, content, is_plain=is_plain)
    assert ink == Ink(strokes=strokes)


OPEN, CLOSED = (Point(0, 0), Point(10, 0), Point(10, 5)), (
    Point(0, 0), Point(10, 0), Point(10, 5), Point(0, 0),
)  # fmt: skip
AREA = Box(0, 0, 10, 5)


@pytest.mark.parametrize(
    ("paint", "chains", "areas"),
    [
        ("S", [OPEN], []),
        ("s", [CLOSED], []),
        ("h S", [CLOSED], []),
        ("f", [], [AREA]),
        ("F", [], [AREA]),
        ("f*", [], [AREA]),
        ("B", [OPEN], [AREA]),
        ("B*", [OPEN], [AREA]),
        ("b", [CLOSED], [AREA]),
        ("b*", [CLOSED], [AREA]),
        ("n", [], []),
    ],
)
def test_a_path_that_is_painted(
    document: pikepdf.Pdf, is_plain: bool, paint: str, chains: list[Any], areas: list[Box]
) -> None:
    ink = _follow(document, f"0 0 m 10 0 l 10 5 l {paint} 9 9 m S", is_plain=is_plain)
    assert ink == Ink(chains=list(map(Chain, chains)), areas=areas)


def test_the_path_that_is_closed_is_the_last(document: pikepdf.Pdf, is_plain: bool) -> None:
    ink = _follow(document, "1 2 m 3 4 l 0 0 m 10 0 l 10 5 l h S", is_plain=is_plain)
    assert ink == Ink([_stroke(1, 2, 3, 4)], chains=[Chain(CLOSED)])


@pytest.mark.parametrize(
    ("content", "areas"),
    [
        ("1 2 3 4 re f", [Box(1, 2, 4, 6)]),
        ("0 0 5 5 re W n 3 3 9 9 re f", [Box(3, 3, 5, 5)]),
        ("0 0 5 5 re W n 6 6 9 9 re f", []),
        ("0 0 5 5 re W* n 1 1 9 9 re W n 0 0 9 9 re f", [Box(1, 1, 5, 5)]),
        ("5 5 m 0 5 l 0 0 l 5 0 l h W n 3 3 9 9 re f", [Box(3, 3, 5, 5)]),
        ("5 5 m 5 0 l 0 0 l 0 5 l 5 5 l W n 3 3 9 9 re f", [Box(3, 3, 5, 5)]),
        ("0 0 m 4 8 8 0 v f", [Box(0, 0, 8, 8)]),
        ("0 0 m 4 8 8 0 y f", [Box(0, 0, 8, 8)]),
        ("0 0 m 1 1 7 9 8 0 c f", [Box(0, 0, 8, 9)]),
        ("1 1 1 1 re 0 0 m 4 8 8 0 v f", [Box(1, 1, 2, 2), Box(0, 0, 8, 8)]),
        ("1 1 1 1 re 0 0 m 4 8 8 0 y f", [Box(1, 1, 2, 2), Box(0, 0, 8, 8)]),
        ("2 0 0 2 1 1 cm 0 0 m 4 8 8 0 v f 0 0 m 4 8 9 0 y f", [Box(1, 1, 17, 17), Box(1, 1, 19, 17)]),
    ],
)
def test_what_is_filled_is_told_by_its_box_as_far_as_it_is_seen(
    document: pikepdf.Pdf, is_plain: bool, content: str, areas: list[Box]
) -> None:
    assert _follow(document, content, is_plain=is_plain).areas == areas


CIRCLE = (  # 0.5523 of the radius of 10
    "20 10 m 20 15.523 15.523 20 10 20 c 4.477 20 0 15.523 0 10 c"
    " 0 4.477 4.477 0 10 0 c 15.523 0 20 4.477 20 10 c"
)


@pytest.mark.parametrize("end", ["S", "h S", "s"])
def test_four_curves_that_make_a_circle(document: pikepdf.Pdf, is_plain: bool, end: str) -> None:
    content = f"0 0 15 30 re W n {CIRCLE} {end}"
    assert _follow(document, content, is_plain=is_plain) == Ink(
        rings=[Ring(Point(10, 10), 10.0, Box(0, 0, 15, 30))]
    )


@pytest.mark.parametrize(
    "content",
    [
        f"{CIRCLE} 30 30 l S",  # it goes on
        CIRCLE.replace("15.523 20 10 20", "15.523 20.1 10 20.1") + " S",
        CIRCLE.replace("20 15.523 15.523 20", "20 15.9 15.9 20") + " S",
        CIRCLE.replace("0 10 c 0 4.477", "-0.1 10 c 0 4.477") + " S",
        CIRCLE.replace("15.523 0 20 4.477 20 10", "15.523 0 20 4.477 20 10.1") + " S",
        CIRCLE.rsplit("15.523 0", 1)[0] + "S",  # three of them
        "0 0 m 1 1 l h 5 5 l S",  # on after it was closed
        "0 0 m 9 0 l q 0 5 m 9 5 l S Q",  # readers forget a path that is not painted before aught else
        "0 0 m 9 0 l 2 w 0 5 m 9 5 l S",
        "0 0 m 9 0 l BT /F1 10 Tf 1 0 0 1 5 6 Tm (A) Tj ET 0 5 m 9 5 l S",
        "0 0 m 9 0 l BT 1 0 0 1 0 0 Tm 1 0 0 1 5 6 Tm /F1 10 Tf 12 TL (A) Tj ET S",
        "0 0 m 9 0 9 9 0 9 c W n",  # a clip that is round
        "0 0 m 9 0 l 9 9 l 1 9 l W n",
        "0 0 m 9 0 l 9 9 l 0 9 l 1 9 l W n",
        "0 0 9 9 re 0 0 9 9 re W n",
        "0 0 9 9 re W n 0 0 m 5 0 l 5 5 l W n",
    ],
)
def test_curves_and_clips_that_are_refused(document: pikepdf.Pdf, is_plain: bool, content: str) -> None:
    with pytest.raises(UnreadableError, match=r"cannot be followed|that is not round"):
        _follow(document, content, is_plain=is_plain)


NOT_BLACK = "it holds ink that is not black"


@pytest.mark.parametrize(
    ("colour", "is_black"),
    [
        ("0 g", True), ("0.01 g", False), ("0 0 0 rg", True), ("0 0 0.01 rg", False),
        ("0.01 0 0 rg", False),
        ("0 0 0 1 k", True), ("0 0 0 0.99 k", False), ("1 1 1 1 k", True), ("1 1 1 0 k", False),
        ("/DeviceGray cs", True), ("/DeviceRGB cs 0 0 0 sc", True), ("/DeviceRGB cs 0 0 1 scn", False),
        ("/DeviceCMYK cs 0 0 0 0 sc", False), ("/Grey cs 0 sc", True), ("/Grey cs 1 scn", False),
        ("/Colours cs", True), ("/Inks cs 0 0 0 0 sc", False), ("/Plain cs 0 sc", True),
        ("/Calibrated cs 0 0 0 sc", True), ("/Spot cs 0 scn", False), ("/Spot cs", False),
        ("/Spot cs 0 g 0 sc", True), ("/DeviceGray cs 1 sc 0 sc", True), ("1 g q 0 g Q", False),
        ("q 1 g Q", True), ("1 g 0 g", True),
    ],
)  # fmt: skip
def test_which_colours_are_black(
    document: pikepdf.Pdf, is_plain: bool, colour: str, is_black: bool
) -> None:
    words = "BT /F1 9 Tf (A) Tj ET"
    # The same in capital letters is the colour of lines.
    lines = " ".join(
        part if part.startswith("/") or part in "qQ" else part.upper() for part in colour.split()
    )
    for content in (f"{colour} 0 0 9 9 re f", f"{lines} 0 0 m 9 9 l S", f"{lines} 0 0 9 9 re S",
                    f"{colour} {words}", f"{lines} {words}"):  # fmt: skip
        if is_black:
            _follow(document, content, is_plain=is_plain)
        else:
            with pytest.raises(UnreadableError, match=NOT_BLACK):
                _follow(document, content, is_plain=is_plain)
    _follow(document, f"{colour} 0 0 m 9 9 l S", is_plain=is_plain)
    _follow(document, f"{lines} 0 0 9 9 re f", is_plain=is_plain)


@pytest.mark.parametrize(
    ("content", "told"),
    [
        ("0.09 w {} S", "it holds a line too thin to be seen"),
        ("2.1 w {} S", "it holds a line so wide that it may hide others"),
        ("0.05 0 0 0.05 0 0 cm {} S", "it holds a line too thin to be seen"),
        ("/Faint gs {} S", "it holds ink that can be seen through"),
        ("/Filled gs {} S", "it holds ink that can be seen through"),
        ("/Lit gs {} S", "it holds ink that can be seen through"),
        ("/Masked gs {} S", "it holds ink that can be seen through"),
        ("/Odd gs {} S", "it holds what cannot be followed: '/Odd gs'"),
        ("/OC /Layer BDC {} S EMC", "it holds a layer that can be hidden"),
        ("/OC BMC {} S EMC", "it holds a layer that can be hidden"),
        ("q {} S", "its content is cut off"),
        ("{} S Q", "it holds what cannot be followed: 'Q'"),
        ("{} S 1.5 25 X", "it holds what cannot be followed: '1.5 25 X'"),
        ("/Missing gs", "it holds what cannot be followed: '/Missing gs'"),
    ],
)
def test_what_is_refused(document: pikepdf.Pdf, is_plain: bool, content: str, told: str) -> None:
    for path in ("0 0 m 9 9 l", "0 0 9 9 re"):
        with pytest.raises(UnreadableError) as raised:
            _follow(document, content.format(path), is_plain=is_plain)
        # The quick reader's own words are not shown: the other reads again what it refuses.
        assert is_plain or str(raised.value) == told


# --- words ----------------------------------------------------------------------------------------


def _run(text: str, x: float, y: float, em: float = 10.0) -> Run:
    return Run(text, near(Point(x, y)), Point(1, 0), Point(0, 1), near(em))


@pytest.mark.parametrize(
    ("content", "runs"),
    [
        ("1 0 0 1 5 6 Tm (AB) Tj", [_run("AB", 5, 6)]),
        ("1 0 0 1 5 6 Tm <4142> Tj", [_run("AB", 5, 6)]),
        ("1 0 0 1 5 6 Tm (A) Tj (BC) Tj", [_run("ABC", 5, 6)]),
        ("1 0 0 1 5 6 Tm (A) Tj 1 0 0 1 5 6 Tm (BC) Tj", [_run("A", 5, 6), _run("BC", 5, 6)]),
        (
            "1 0 0 1 5 6 Tm (A) Tj 7 8 Td (B) Tj 1 1 Td (C) Tj",
            [_run("A", 5, 6), _run("B", 12, 14), _run("C", 13, 15)],
        ),
        ("1 0 0 1 5 6 Tm 1 -4 TD (A) Tj T* (B) Tj", [_run("A", 6, 2), _run("B", 6, -2)]),
        ("3 TL 1 0 0 1 5 6 Tm (A) ' (B) '", [_run("A", 5, 3), _run("B", 5, 0)]),
        ("1 0 0 1 5 6 Tm (D) Tj (E) Tj", [_run("\u1e9e\ufffd", 5, 6)]),
        ("2 Tc 2 Tw 90 Tz 2 Ts 0 Tr 1 0 0 1 5 6 Tm (A) Tj", [_run("A", 5, 6)]),
        ("1 Tr 1 0 0 1 5 6 Tm (A) Tj 2 Tr (A) Tj", [_run("AA", 5, 6)]),
        ("3 Tr 1 0 0 1 5 6 Tm (A) Tj", []),
        ("1 0 0 1 5 6 Tm (A) Tj ET BT (B) Tj", [_run("A", 5, 6), _run("B", 0, 0)]),
        ("2 0 0 2 5 6 Tm (A) Tj", [Run("A", Point(5, 6), Point(2, 0), Point(0, 2), 20.0)]),
        ("2.5 0 0 2.5 5 6 Tm (A) Tj", [Run("A", Point(5, 6), Point(2.5, 0), Point(0, 2.5), 25.0)]),
    ],
)  # fmt: skip
def test_words(document: pikepdf.Pdf, is_plain: bool, content: str, runs: list[Run]) -> None:
    assert _follow(document, f"BT /F1 10 Tf {content} ET", is_plain=is_plain) == Ink(runs=runs)


# The quick reader leaves to the other what few writers write.


@pytest.mark.parametrize(
    ("content", "runs"),
    [
        # 0.5 em of A and 0.7 em more, which is more than the 0.6 that may be a space: 5 + 12.
        ("1 0 0 1 5 6 Tm [(A) -700 (B)] TJ", [_run("A", 5, 6), _run("B", 17, 6)]),
        ("1 0 0 1 5 6 Tm [(A) -600 (B) 600 (C)] TJ", [_run("ABC", 5, 6)]),
        ("1 0 0 1 5 6 Tm [-1000 (A) 100 (B)] TJ", [_run("AB", 15, 6)]),
        ("1 0 0 1 5 6 Tm [(B) 700 (A)] TJ (C) Tj", [_run("B", 5, 6), _run("AC", 4, 6)]),  # 0.6 - 0.7 em
        ("0 1 -1 0 5 6 Tm [(A) -700 (B)] TJ", [
            Run("A", Point(5, 6), Point(0, 1), Point(-1, 0), 10.0),
            Run("B", near(Point(5, 18)), Point(0, 1), Point(-1, 0), 10.0),
        ]),
        # Where words go on: A is 0.5 em wide, B 0.6 em, and em is 10.
        ("1 0 0 1 5 6 Tm (A) Tj [-600 (B)] TJ", [_run("AB", 5, 6)]),
        ("1 0 0 1 5 6 Tm (A) Tj [-700 (B)] TJ", [_run("A", 5, 6), _run("B", 17, 6)]),
        ("1 0 0 1 5 6 Tm [(A) -700 (B)] TJ [-700 (A)] TJ", [
            _run("A", 5, 6), _run("B", 17, 6), _run("A", 17 + 6 + 7, 6),
        ]),
        ("1 0 0 1 5 6 Tm (A) Tj /F1 20 Tf [-700 (B)] TJ", [
            _run("A", 5, 6), _run("B", 5 + 5 + 14, 6, 20.0),
        ]),
        ("1 0 0 1 5 6 Tm (AB) Tj [-100] TJ [-700 (C)] TJ", [
            _run("AB", 5, 6), _run("C", 5 + 11 + 1 + 7, 6),
        ]),
        ("1 0 0 1 5 6 Tm (A) Tj 0 -3 Td [-700 (B)] TJ", [_run("A", 5, 6), _run("B", 12, 3)]),
        ('3 TL 1 0 0 1 5 6 Tm 9 8 (A) "', [_run("A", 5, 3)]),
    ],
)  # fmt: skip
def test_words_in_lists(document: pikepdf.Pdf, content: str, runs: list[Run]) -> None:
    content = f"BT /F1 10 Tf {content} ET"
    assert _follow(document, content, is_plain=False) == Ink(runs=runs)
    with pytest.raises(UnreadableError):
        _follow(document, content, is_plain=True)


def test_notes_with_properties(document: pikepdf.Pdf) -> None:
    content = "/Note /Mark DP /Note /Mark BDC 1 2 m 3 2 l S EMC"
    assert _follow(document, content, is_plain=False) == Ink([_stroke(1, 2, 3, 2)])


def test_a_row_of_words_as_it_is_mostly_written(document: pikepdf.Pdf, is_plain: bool) -> None:
    row = "BT 1 0 0 1 0 0 Tm 1 0 0 1 {} Tm /F1 {} Tf {} TL ({}) Tj ET "
    content = row.format("5 6", 10, 12, "AB") + row.format("5 26", 8, 3, "C") + "BT T* (A) Tj ET"
    assert _follow(document, content, is_plain=is_plain).runs == [
        _run("AB", 5, 6), _run("C", 5, 26, 8.0), _run("A", 0, -3, 8.0),
    ]  # fmt: skip


@pytest.mark.parametrize(
    ("content", "told"),
    [
        ("BT (A) Tj ET", r"cannot be followed: '\(A\) Tj'"),
        ("BT [(A)] TJ ET", "cannot be followed: '.*TJ'"),
        ("BT /F1 10 Tf 7 Tr (A) Tj ET", "cannot be followed: '7 Tr'"),
        ("BT /F2 10 Tf (A) Tj ET", "cannot be followed: '/F2 10 Tf'"),
        ("BT /F1 25.1 Tf (A) Tj ET", "letters so large that they may hide marks"),
        ("BT /F1 10 Tf 2 2 -2 2 0 0 Tm (A) Tj ET", "letters so large that they may hide marks"),
        ("BT /F1 10 Tf 2.52 0 0 2.52 0 0 Tm (A) Tj ET", "letters so large that they may hide marks"),
        ("2.52 0 0 2.52 0 0 cm BT /F1 10 Tf (A) Tj ET", "letters so large that they may hide marks"),
    ],
)
def test_words_that_are_refused(document: pikepdf.Pdf, is_plain: bool, content: str, told: str) -> None:
    with pytest.raises(UnreadableError, match=None if is_plain else told):
        _follow(document, content, is_plain=is_plain)


# --- drawings within the page ---------------------------------------------------------------------


def test_a_drawing_within_the_page(document: pikepdf.Pdf, is_plain: bool) -> None:
    _form(document, b"0.5 w 1 2 m 3 2 l S BT /F1 1 Tf (A) Tj ET", Matrix=Array([2, 0, 0, 2, 10, 20]))
    ink = _follow(document, "q /Fm Do Q 1 2 m 3 2 l S", is_plain=is_plain)
    # Its box is doubled and moved as its lines are.
    inner = Stroke(Point(12, 24), Point(16, 24), 1.0, (), Box(12, 24, 110, 140))
    assert ink.strokes == [inner, _stroke(1, 2, 3, 2)]
    assert ink.runs == [Run("A", Point(10, 20), Point(2, 0), Point(0, 2), 2.0)]


def test_a_drawing_within_the_page_has_its_own_names(document: pikepdf.Pdf, is_plain: bool) -> None:
    _form(
        document,
        b"/Wide gs 1 2 m 3 2 l S",
        Resources=Dictionary(ExtGState=Dictionary(Wide=Dictionary(LW=0.3))),
    )
    ink = _follow(document, "/Fm Do /Wide gs 1 2 m 3 2 l S", is_plain=is_plain)
    assert [stroke.width_mm for stroke in ink.strokes] == [0.3, 0.7]


@pytest.mark.parametrize(
    ("keys", "told"),
    [
        ({"OC": Dictionary()}, "it holds a layer that can be hidden"),
        ({"Group": Dictionary(S=Name.Odd)}, "it holds a group of drawings that is not known"),
        ({"Subtype": Name.Image}, "it holds a picture"),
    ],
)
def test_drawings_within_the_page_that_are_refused(
    document: pikepdf.Pdf, is_plain: bool, keys: dict[str, Any], told: str
) -> None:
    _form(document, b"")
    for key, value in keys.items():
        document.pages[0].resources.XObject.Fm[f"/{key}"] = value
    with pytest.raises(UnreadableError, match=told):
        _follow(document, "/Fm Do", is_plain=is_plain)


@pytest.mark.parametrize(("within", "around"), [("Q", "q /Fm Do Q"), ("q", "/Fm Do"), ("q", "/Fm Do Q")])
def test_a_drawing_within_the_page_leaves_its_state_as_it_was(
    document: pikepdf.Pdf, is_plain: bool, within: str, around: str
) -> None:
    _form(document, within.encode())
    with pytest.raises(UnreadableError, match="its content is cut off"):
        _follow(document, around, is_plain=is_plain)


@pytest.mark.parametrize(("depth", "is_followed"), [(8, True), (9, False)])
def test_how_deep_drawings_are_followed(
    document: pikepdf.Pdf, is_plain: bool, depth: int, is_followed: bool
) -> None:
    inner = document.make_stream(b"1 2 m 3 2 l S", Subtype=Name.Form, BBox=Array([0, 0, 9, 9]))
    for _ in range(depth - 1):
        names = Dictionary(XObject=Dictionary(Fm=inner))
        inner = document.make_stream(
            b"/Fm Do", Subtype=Name.Form, BBox=Array([0, 0, 9, 9]), Resources=names
        )
    document.pages[0].resources["/XObject"] = Dictionary(Fm=inner)
    if is_followed:
        assert len(_follow(document, "/Fm Do " * 9, is_plain=is_plain).strokes) == 9
    else:
        with pytest.raises(UnreadableError, match="cannot be followed"):
            _follow(document, "/Fm Do", is_plain=is_plain)
