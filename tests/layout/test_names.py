import pytest

from templater.layout.names import fold_name
from tests.layout.files import SMALL, change, check_faults, list_faults, read_sound

OWN_NAME = "give each a name of its own"
MEND_PIECE = "mend the name, or add the piece"
NO_PLACE = (
    "'place' does not apply to a piece of a group, here 'seat pair'"
    " => remove it, or take the piece out of the group"
)


@pytest.mark.parametrize(
    ("old", "new", "faults"),
    [
        (
            "Tide clock",
            "¦CLIFF Path",
            [f"'name' is 'CLIFF Path', but another piece is called 'Cliff path' already => {OWN_NAME}"],
        ),
        (
            "height: 20}",
            "height: 20}\n  - {name: ¦Window Seat, left: 1, width: 2, height: 3}",
            [
                "'name' is 'Window Seat', but other furniture is called 'window seat' already"
                f" => {OWN_NAME}"
            ],
        ),
        (
            "name: seat pair",
            "name: ¦Tide Clock",
            [f"'name' is 'Tide Clock', but a piece is called 'Tide clock' already => {OWN_NAME}"],
        ),
        (
            "Cliff path, Harbour",
            "¦Cliff pth, Harbour, ¦Lamp",
            [
                "'pieces' names 'Cliff pth', which is not in this layout (did you mean 'Cliff path'?)"
                f" => {MEND_PIECE}",
                f"'pieces' names 'Lamp', which is not in this layout => {MEND_PIECE}",
            ],
        ),
        (
            "Cliff path, Harbour",
            "Cliff path, Harbour, ¦cliff path",
            ["'pieces' names 'cliff path', which is in the group 'seat pair' already => name it once"],
        ),
        (
            "above: window seat",
            "above: ¦window sat",
            [
                "'above' names 'window sat', which is not in this layout (did you mean 'window seat'?)"
                " => mend the name, or add it under 'furniture'"
            ],
        ),
        (
            "left: 100",
            "above: ¦Harbour",
            ["'above' names 'Harbour', which is a piece, not furniture => name what it hangs above"],
        ),
    ],
)
def test_names_that_are_faulty(old: str, new: str, faults: list[str]) -> None:
    check_faults(change(old, new), *faults)


def test_a_place_of_its_own_does_not_apply_to_a_piece_of_a_group() -> None:
    marked = change("place: {left: 100}", "¦place: {left: 100}")
    check_faults(marked.replace("Cliff path, Harbour", "Cliff path, Harbour, Tide clock"), NO_PLACE)


def test_a_name_that_a_comment_cut_short_is_told() -> None:
    both = "- name: Print #3\n    size: 20 x 16\n  - name: ¦Print #4\n    size: 20 x 16\n"
    told = f"{OWN_NAME}; from ' #' on a line is a comment: put a name with ' #' in it in quotes"
    fault = "'name' is 'Print', but another piece is called 'Print' already"
    old = "- {name: Tide clock, size: 10 x 10, place: {left: 100}}\n"
    check_faults(change(old, both), f"{fault} => {told}")
    first = both.replace("Print #4", "Print")
    check_faults(change(old, first), f"{fault} => {told}")
    plain = both.replace("Print #4", "Print").replace("Print #3", "'Print'  # it hangs #3")
    check_faults(change(old, plain), f"{fault} => {OWN_NAME}")
    quoted = both.replace("Print #4", "'Print #4'").replace("Print #3", '"Print #3"').replace("¦", "")
    assert list_faults(change(old, quoted)) == []


def test_groups_with_one_name() -> None:
    check_faults(
        change("place: {left: 100}", "weight: 1 lb")
        + "  - {name: ¦Seat Pair, pieces: [Tide clock], arrange: row}\n",
        f"'name' is 'Seat Pair', but another group is called 'seat pair' already => {OWN_NAME}",
    )


def test_a_piece_in_two_groups_is_faulty_in_the_second() -> None:
    check_faults(
        SMALL + "  - {name: two, pieces: [¦Harbour], arrange: column}\n",
        "'pieces' names 'Harbour', which is in the group 'seat pair' already => name it once",
    )


def test_names_are_the_same_after_composing_and_folding() -> None:
    assert fold_name(" STRASSE ") == fold_name("straße")
    assert fold_name("Cafe\u0301") == fold_name("CAF\u00c9")
    text = SMALL.replace("window seat", "Fenste\u0301r", 1)
    text = text.replace("above: window seat", "above: FENST\u00c9R")
    layout = read_sound(text.replace("[Cliff path", "[cliff PATH"))
    assert layout.groups[0].members == ("Cliff path", "Harbour")
    position = layout.groups[0].position
    assert position is not None
    assert position.above == layout.furniture[0].name == "Fenst\u00e9r"


def test_an_entry_with_another_fault_still_counts_as_known() -> None:
    text = SMALL.replace("size: 16 x 16", "size: big").replace("width: 60", "width: wide")
    assert [fault.split(":")[1] for fault in list_faults(text)] == ["5", "7"]
