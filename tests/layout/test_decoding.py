import pytest

from tests.layout.files import SMALL, list_faults, read_sound


def test_a_byte_order_mark_of_utf_8_changes_nothing() -> None:
    assert (
        read_sound(b"\xef\xbb\xbf" + SMALL.encode()) == read_sound("\ufeff" + SMALL) == read_sound(SMALL)
    )


def test_line_ends_of_any_system_change_nothing() -> None:
    assert (
        read_sound(SMALL.replace("\n", "\r\n"))
        == read_sound(SMALL.replace("\n", "\r"))
        == read_sound(SMALL)
    )


@pytest.mark.parametrize("encoding", ["utf-16", "utf-16-be", "utf-32", "utf-32-be"])
def test_other_encodings_are_refused(encoding: str) -> None:
    faults = list_faults(
        ("\ufeff" if encoding.endswith("be") else "").encode(encoding) + SMALL.encode(encoding)
    )
    assert faults == ["hall.yaml:1:1: the file is UTF-16 or UTF-32, not UTF-8\n  save it as UTF-8"]


def test_a_byte_that_is_not_utf_8_is_shown_at_its_place() -> None:
    faults = list_faults("title: Küche\nwall: T".encode() + b"\xfcr")
    assert faults == ["hall.yaml:2:8: the byte 0xfc is not UTF-8\n  save the file as UTF-8"]


@pytest.mark.parametrize(
    ("character", "shown"),
    [("\x00", r"'\x00'"), ("\x1b", r"'\x1b'"), ("\x7f", r"'\x7f'"), ("\ud800", r"'\ud800'")],
)
def test_a_control_character_is_shown_at_its_place(character: str, shown: str) -> None:
    faults = list_faults(f"title: Hall\r\npaper: a{character}4")
    assert faults == [f"hall.yaml:2:9: the character {shown} cannot stand in a layout\n  remove it"]


def test_a_huge_file_is_refused_unread() -> None:
    assert list_faults(b"#" * 4_000_001) == [
        "hall.yaml:1:1: the file has more than 4,000,000 bytes\n"
        "  check that it is the layout: one wall needs far less"
    ]
    assert read_sound(SMALL + "#" * (4_000_000 - len(SMALL)))
