import re

from templater.layout.group_schema import GroupEntry, PlaceEntry
from templater.layout.hang_schema import HangEntry
from templater.layout.schema import LayoutEntry, PieceEntry
from templater.layout.starter import starter_text
from tests.layout.files import read_sound


def test_the_starter_is_a_sound_layout() -> None:
    layout = read_sound(starter_text())
    assert [piece.name for piece in layout.pieces] == [
        "Harbour at dusk",
        "Cliff path",
        "Tide clock",
        "Hall mirror",
    ]
    assert [group.members for group in layout.groups] == [("Harbour at dusk", "Cliff path")]


def test_the_starter_tells_of_every_key() -> None:
    text = starter_text()
    for entry in (LayoutEntry, PieceEntry, HangEntry, PlaceEntry, GroupEntry):
        for name, field in entry.model_fields.items():
            assert re.search(rf"\b{field.alias or name}\b", text), name


def test_its_lines_that_are_commented_out_are_sound_too() -> None:
    text = re.sub(r"^( *)# ([a-z_]+: .*)$", r"\1\2", starter_text(), flags=re.MULTILINE)
    layout = read_sound(text)
    assert (layout.issue, layout.from_whom, layout.lap_mm) == ("first hanging", "Wren Tolland", 10)
    assert layout.pieces[3].hang is not None
    assert layout.margins.bottom == 12.7  # 1/2 in
