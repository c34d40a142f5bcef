"""The file of printers: written whole or not at all, and what is said where it cannot be used."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import pytest

from templater.errors import UsageError, WriteError
from templater.geometry import Size
from templater.layout.model import Margins
from templater.printing.calibration import Calibration
from templater.to_files.printer_store import find_store, keep_printer, read_printer, read_printers

INKJET = Calibration("study inkjet", Size(180.0, 240.0), Size(178.9, 239.1), Margins())
LASER = replace(INKJET, name="shop laser")


@pytest.fixture
def store(tmp_path: Path) -> Path:
    return tmp_path / "deep" / "printers.json"


def test_the_store_is_in_the_folder_that_the_user_names(
    monkeypatch: pytest.MonkeyPatch, tmp_path: Path
) -> None:
    monkeypatch.setenv("XDG_CONFIG_HOME", str(tmp_path))
    assert find_store() == tmp_path / "templater" / "printers.json"


def test_printers_are_kept_beside_each_other_and_replaced_by_name(store: Path) -> None:
    assert read_printers(store) == ()
    assert keep_printer(store, INKJET) is False
    assert keep_printer(store, LASER) is False
    anew = replace(INKJET, measured=Size(180.5, 240.5))
    assert keep_printer(store, anew) is True
    assert read_printers(store) == (anew, LASER)
    assert read_printer(store, "shop laser") == LASER
    assert [path.name for path in store.parent.iterdir()] == ["printers.json"]


def test_a_name_that_is_not_known_gets_the_nearest_one(store: Path) -> None:
    keep_printer(store, INKJET)
    keep_printer(store, LASER)
    with pytest.raises(UsageError) as raised:
        read_printer(store, "study inkjt")
    assert str(raised.value) == (
        "--printer is 'study inkjt', which has not been measured (did you mean 'study inkjet'?)\n"
        "  known are 'study inkjet' and 'shop laser'; measure it first: templater calibrate"
    )


@pytest.mark.parametrize("content", [b"{ not JSON", b"\xff\xfe", b""])
def test_a_damaged_file_is_told_of_and_left_as_it_is(store: Path, content: bytes) -> None:
    store.parent.mkdir()
    store.write_bytes(content)
    for act in (lambda: read_printers(store), lambda: keep_printer(store, INKJET)):
        with pytest.raises(UsageError) as raised:
            act()
        message, hint = str(raised.value).splitlines()
        assert message.startswith(f"{store} is damaged: ")
        assert hint == "  mend that file, or move it away and measure again: templater calibrate"
    assert store.read_bytes() == content


def test_a_folder_in_the_files_place_is_told_of(store: Path) -> None:
    store.mkdir(parents=True)
    with pytest.raises(UsageError, match=r"cannot read .*printers\.json: Is a directory"):
        read_printers(store)


def test_where_nothing_can_be_written_nothing_is_left(tmp_path: Path) -> None:
    (tmp_path / "templater").write_text("a file in the folder's place")
    with pytest.raises((WriteError, UsageError)) as raised:
        keep_printer(tmp_path / "templater" / "printers.json", INKJET)
    assert "--out" not in str(raised.value)
    assert (tmp_path / "templater").read_text() == "a file in the folder's place"


def test_a_disk_that_refuses_keeps_the_old_printers(
    store: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    keep_printer(store, INKJET)
    before = store.read_bytes()

    def refuse(self: Path, target: Path) -> None:
        raise OSError(28, "No space left on device")

    monkeypatch.setattr(Path, "replace", refuse)
    with pytest.raises(WriteError) as raised:
        keep_printer(store, LASER)
    assert str(raised.value) == (
        f"cannot write {store}: No space left on device\n  make that folder one that you can write to"
    )
    assert store.read_bytes() == before
    assert [path.name for path in store.parent.iterdir()] == ["printers.json"]
