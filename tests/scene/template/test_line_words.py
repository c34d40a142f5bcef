from __future__ import annotations

from collections.abc import Sequence

import pytest

from templater.geometry import Box, Point, Size
from templater.lengths import Unit
from templater.mounting.model import Mark
from templater.placement.model import PlacedPiece
from templater.printing.error import Errors
from templater.scene.template.blocks import Block
from templater.scene.template.guide_lines import TemplateLines
from templater.scene.template.hole_words import HoleWords
from templater.scene.template.labels import Note
from templater.scene.template.line_words import LineWords, TemplateWords
from tests.scene.templates import INCH, NEIGHBOURS, placed, plan_for, tide_chart


def text_of(block: Block) -> str:
    return " ".join(row.text for row in block.rows)


def words_for(piece: PlacedPiece, units: Unit = Unit.INCH, datum_mm: float = 60 * INCH) -> TemplateWords:
    plan = plan_for(piece, units, datum_mm)
    return TemplateWords(piece, plan, TemplateLines.of(piece, plan))


def holes_of(piece: PlacedPiece, units: Unit = Unit.INCH, near_seam: tuple[int, ...] = ()) -> HoleWords:
    return HoleWords(piece, plan_for(piece, units), piece.template_marks(), near_seam)


def line_named(words: TemplateWords, name: str) -> LineWords:
    (line,) = [line for line in words.write_lines() if line.name.startswith(name)]
    return line


def say(notes: Sequence[Note]) -> str:
    return text_of(notes[0].blocks[0])


def test_a_hole_tells_everything_in_both_systems() -> None:
    # Left edge 38 in, half of 16: 46 in = 1168.4 mm; the bench's middle is at 70 in: 24 in left.
    # Top 41 + 20 = 61 in; drop 2 1/4: 58 3/4; rise 1/2: 59 1/4 in = 1504.95 mm; datum 60.
    text = text_of(holes_of(tide_chart()).write_hole(0, full=True).blocks[0])
    assert text == (
        "HOLE 1 of 1"
        " from the wall's left end: 46 in (1168 mm)"
        " from the middle of boot bench: 24 in (610 mm) left"
        " from the datum: −3/4 in (−19 mm)"
        " above the floor at the datum's place: 59 1/4 in (1505 mm)"
        " drop, frame's top edge to hang point: 2 1/4 in (57 mm)"
        " hang point: 1/2 in (13 mm) below the hole"
    )


def test_metric_layouts_read_millimetres_first() -> None:
    text = text_of(holes_of(tide_chart(), Unit.MILLIMETRE).write_hole(0, full=True).blocks[0])
    assert "from the wall's left end: 1168 mm (46 in)" in text
    assert "from the datum: −19 mm (−3/4 in)" in text


def test_a_hole_on_the_hang_point_says_nothing_of_it() -> None:
    text = text_of(holes_of(tide_chart(rise=0.0)).write_hole(0, full=True).blocks[0])
    assert "the hole" not in text


def test_a_hole_near_a_seam_says_so_even_in_short() -> None:
    note = holes_of(tide_chart(), near_seam=(1,)).write_hole(0, full=False)
    assert all("clear of a seam" in text_of(block) for block in note.blocks)


def test_every_short_note_keeps_the_distances() -> None:
    for block in holes_of(tide_chart()).write_hole(0, full=False).blocks:
        assert "from the wall's left end: 46 in" in text_of(block)
        assert "from the middle of boot bench: 24 in" in text_of(block)


def test_holes_of_one_height_tell_what_they_share_once() -> None:
    # 300 + 1300 = 1600 mm; 1524 + 76 = 3 in above the datum.
    piece = placed(Size(600, 400), [(100.0, 300.0), (300.0, 300.0), (500.0, 200.0)])
    notes = list(holes_of(piece, Unit.MILLIMETRE).write_shared([0, 1, 2]))
    assert [note.blocks[0].rows[0].text for note in notes] == ["HOLES 1, 2", "HOLE 3"]
    assert "from the datum: +76 mm (+3 in)" in text_of(notes[0].blocks[0])
    assert "above the floor at the datum's place: 1600 mm (63 in)" in text_of(notes[0].blocks[0])


def test_the_key_holds_every_hole_once() -> None:
    piece = placed(Size(600, 400), [(50.0 * n, 300.0) for n in range(1, 11)])
    notes = list(holes_of(piece, Unit.MILLIMETRE).write_key(range(10)))
    rows = [row.text for note in notes for row in note.blocks[0].rows if row.text[0].isdigit()]
    assert len(notes) == 2
    assert [row.split(":")[0] for row in rows] == [str(number) for number in range(1, 11)]
    # Left edge 500 mm; hole 3 is 150 mm from it: 650 mm = 25.59 in, nearest sixteenth 25 9/16 (25.5625).
    assert rows[2] == "3:  650 mm (25 9/16 in)"


def test_a_number_stands_outside_the_ring() -> None:
    mark = Mark(Point(100, 100), Point(100, 100), None)
    piece = placed(Size(200, 200), [mark.hole])
    block, corners = holes_of(piece).number(0)
    ring = Box(95, 95, 105, 105)
    assert text_of(block) == "1"
    assert len(corners) == 8
    assert not [corner for corner in corners if Box.of(corner, block.size).meets(ring)]


@pytest.mark.parametrize(
    ("datum_mm", "said"),
    [
        (1600.0, "set it on the datum"),
        (1700.0, "set it 100 mm (3 15/16 in) below the datum"),
        (1500.0, "set it 100 mm (3 15/16 in) above the datum"),
        # 0.5 mm below, which every table tells as 0 mm.
        (1600.5, "set it on the datum"),
        (1599.5, "set it 1 mm (0 in) above the datum"),
    ],
)
def test_the_level_line_says_what_to_do(datum_mm: float, said: str) -> None:
    # The hang point is 1300 + 300 = 1600 mm up; 100 mm = 3.937 in, nearest sixteenth 3 15/16.
    piece = placed(Size(600, 400), [(300.0, 300.0)])
    line = line_named(words_for(piece, Unit.MILLIMETRE, datum_mm), "LEVEL LINE")
    assert all(said in text_of(block) for note in line.notes for block in note.blocks)


def test_each_level_line_is_told_by_the_holes_on_it_and_by_its_own_height() -> None:
    # Holes 1 and 2 at 1300 + 500 = 1800 mm, a lock's hole at 1300 + 100 = 1400; the datum at 1600.
    piece = placed(Size(400, 600), [(100.0, 500.0), (300.0, 500.0), (200.0, 100.0)])
    words = words_for(piece, Unit.MILLIMETRE, 1600.0)
    told = {
        line.line.start.y: (line.name, say(line.notes)) for line in words.write_lines() if line.notes
    }
    assert told[500.0] == (
        "LEVEL LINE, holes 1, 2",
        "LEVEL LINE, holes 1, 2 set it 200 mm (7 7/8 in) above the datum",
    )
    assert told[100.0] == (
        "LEVEL LINE, hole 3",
        "LEVEL LINE, hole 3 set it 200 mm (7 7/8 in) below the datum",
    )


def test_a_line_is_explained_beside_it_or_told_by_its_look() -> None:
    line = line_named(words_for(tide_chart()), "LEVEL LINE")
    *beside, apart = line.notes
    assert all(note.within is not None for note in beside)
    assert apart.within is None
    assert all("(unbroken)" in text_of(block) for block in apart.blocks)


def test_the_level_line_is_not_the_hole_where_the_hook_rises() -> None:
    line = line_named(words_for(tide_chart()), "LEVEL LINE")
    assert "through the hang point, not the hole" in text_of(line.notes[0].blocks[0])
    level = line_named(words_for(tide_chart(rise=0.0)), "LEVEL LINE")
    assert "not the hole" not in text_of(level.notes[0].blocks[0])


def test_the_centre_line_is_told_from_studs_which_are_upright_too() -> None:
    line = line_named(words_for(tide_chart()), "CENTRE LINE")
    assert "(upright, dash and dot)" in text_of(line.notes[-1].blocks[0])


def test_the_centre_line_is_plumb_and_has_its_distances() -> None:
    line = line_named(words_for(tide_chart()), "CENTRE LINE")
    text = text_of(line.notes[0].blocks[0])
    assert text.startswith("CENTRE LINE, plumb")
    assert "46 in (1168 mm)" in text
    assert "24 in (610 mm) left" in text


def test_a_piece_without_holes_has_no_level_line() -> None:
    names = [line.name for line in words_for(placed(Size(300, 200))).write_lines()]
    assert names == ["CENTRE LINE, plumb", "half height"]


@pytest.mark.parametrize(
    ("datum_mm", "said"),
    [
        # The piece reaches from 1300 to 1500 mm.
        (1200.0, "The datum is 100 mm (3 15/16 in) below this bottom edge."),
        (1600.0, "The datum is 100 mm (3 15/16 in) above this top edge."),
        # Halves as the overview has them: its top edge −63 mm from the datum, its bottom edge +64 mm.
        (1563.5, "The datum is 63 mm (2 1/2 in) above this top edge."),
        (1236.5, "The datum is 64 mm (2 1/2 in) below this bottom edge."),
    ],
)
def test_a_datum_off_the_paper_is_measured_from_the_nearer_edge(datum_mm: float, said: str) -> None:
    words = words_for(placed(Size(300, 200)), Unit.MILLIMETRE, datum_mm)
    assert say(list(words.write_datum_off())) == said
    assert not [line for line in words.write_lines() if line.name.startswith("DATUM")]


def test_a_datum_on_the_paper_is_named() -> None:
    words = words_for(tide_chart())
    text = text_of(line_named(words, "DATUM").notes[0].blocks[0])
    assert text == "DATUM 60 in (1524 mm) above the floor"
    assert list(words.write_datum_off()) == []


def test_the_taped_up_paper_can_be_checked() -> None:
    # 16^2 + 20^2 = 656; its root 25.612 in = 650.6 mm; nearest sixteenth 25 5/8 (25.625).
    text = say([words_for(tide_chart()).write_paper()])
    assert "width 16 in (406 mm)" in text
    assert "height 20 in (508 mm)" in text
    assert "both diagonals 25 5/8 in (651 mm)" in text
    assert "Left is your left as you face the wall." in text
    assert "Cut on the outline; where words stand outside it, fold." in text


def test_the_scissors_leave_a_cross_that_passes_the_outline() -> None:
    text = say([words_for(placed(Size(300, 200), [(150.0, 195.0)])).write_paper()])
    assert "leave the paper round crosses" in text


def test_every_neighbour_is_named_with_its_gap_and_an_arrow() -> None:
    words = words_for(placed(Size(300, 200), neighbours=NEIGHBOURS))
    texts = [text_of(note.blocks[0]) for note in words.write_sides()]
    assert texts[0] == "→ Kelp print gap 3 in (76 mm)"
    assert texts[2] == "↑ Fog bell gap 2 in (51 mm)"
    assert [text[0] for text in texts] == ["→", "←", "↑", "↓"]


def test_the_triangle_is_said_to_be_no_hole() -> None:
    assert say(list(words_for(tide_chart()).write_hang_point())) == "hang point: no hole here"
    assert list(words_for(tide_chart(rise=0.0)).write_hang_point()) == []


# --- what to expect of the paper ------------------------------------------------------------------

TWO = placed(Size(600, 400), [(100.0, 300.0), (500.0, 300.0)])
EXPECTED = Errors((1.2, 0.7), 2.1, 0.4)


def _expecting(errors: Errors | None) -> HoleWords:
    return HoleWords(TWO, plan_for(TWO), TWO.template_marks(), (), errors)


def test_a_hole_tells_what_to_expect_of_the_paper() -> None:
    # 1.2, 0.7 and 2.1 mm, up to the next half millimetre
    blocks = _expecting(EXPECTED).write_hole(0, full=True).blocks
    text = text_of(blocks[0])
    assert "expected on this paper within ± 1.5 mm (an estimate)" in text
    assert "from hole to hole within ± 2.5 mm (an estimate)" in text
    assert "± 1 mm" in text_of(_expecting(EXPECTED).write_hole(1, full=False).blocks[0])


def test_where_room_is_short_the_estimate_gives_way_first() -> None:
    note, plain = (_expecting(errors).write_hole(0, full=True) for errors in (EXPECTED, None))
    assert note.blocks[-len(plain.blocks) :] == plain.blocks
    assert not any("estimate" in text_of(block) for block in plain.blocks)


def test_many_holes_tell_once_how_far_apart_they_may_be_off() -> None:
    (note,) = _expecting(EXPECTED).write_shared([0, 1])
    assert "from hole to hole within ± 2.5 mm (an estimate)" in text_of(note.blocks[0])


def test_the_paper_tells_what_its_edge_is_worth() -> None:
    plan = plan_for(TWO)
    lines = TemplateLines.of(TWO, plan)
    note = TemplateWords(TWO, plan, lines, EXPECTED).write_paper()
    told = "Set it by its lines: by its top edge alone holes lie within ± 0.5 mm (an estimate)."
    assert told in text_of(note.blocks[0])
    assert told not in text_of(note.blocks[-1])
