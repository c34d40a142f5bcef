from __future__ import annotations

import json
import os
import shutil
import signal
from collections.abc import Callable
from contextlib import AbstractContextManager, suppress
from functools import partial
from hashlib import sha256
from pathlib import Path

import pytest

import templater.to_files.folder
from templater.errors import ExitCode, WriteError
from templater.to_files.file import whole_file, write_new_file
from templater.to_files.folder import check_is_replaceable, whole_folder
from templater.to_files.held_signals import ENDING_SIGNALS, signals_heeded
from templater.to_files.manifest import SCHEMA


def _listed(folder: Path) -> dict[str, bytes]:
    """Every file below a folder with what it holds, hidden ones too."""
    return {
        path.relative_to(folder).as_posix(): path.read_bytes() if path.is_file() else b""
        for path in folder.rglob("*")
    }


def _make_kit(folder: Path, word: str) -> None:
    with whole_folder(folder) as building:
        (building / "manifest.json").write_text(json.dumps({"schema": SCHEMA, "files": {word: ""}}))
        (building / word).write_text(word)


def test_a_folder_appears_with_all_that_was_put_in(tmp_path: Path) -> None:
    _make_kit(tmp_path / "deep" / "hall-kit", "first")
    assert sorted(_listed(tmp_path / "deep")) == ["hall-kit", "hall-kit/first", "hall-kit/manifest.json"]
    assert (tmp_path / "deep" / "hall-kit").stat().st_mode & 0o777 == 0o755


def test_a_newer_kit_takes_the_place_of_an_older_one_whole(tmp_path: Path) -> None:
    for word in ("first", "second"):
        _make_kit(tmp_path / "kit", word)
    assert sorted(_listed(tmp_path)) == ["kit", "kit/manifest.json", "kit/second"]


def test_an_empty_folder_may_be_filled(tmp_path: Path) -> None:
    (tmp_path / "kit").mkdir()
    _make_kit(tmp_path / "kit", "first")
    assert (tmp_path / "kit" / "first").exists()


def _fail_to_make(folder: Path, error: BaseException) -> None:
    with whole_folder(folder) as building:
        (building / "half").write_text("half")
        raise error


@pytest.mark.parametrize("error", [KeyboardInterrupt(), RuntimeError("x"), OSError(28, "disk full")])
@pytest.mark.parametrize("kit_before", [False, True])
def test_when_it_goes_wrong_all_is_as_before(
    tmp_path: Path, error: BaseException, kit_before: bool
) -> None:
    if kit_before:
        _make_kit(tmp_path / "kit", "first")
    before = _listed(tmp_path)
    expected = WriteError if isinstance(error, OSError) else type(error)
    with pytest.raises(expected):
        _fail_to_make(tmp_path / "kit", error)
    assert _listed(tmp_path) == before


def test_the_older_kit_comes_back_when_the_newer_cannot_take_its_place(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    _make_kit(tmp_path / "kit", "first")
    before = _listed(tmp_path)
    rename, calls = Path.rename, []

    def fail_second(self: Path, target: Path) -> Path:
        calls.append(target)
        if len(calls) == 2:
            raise OSError(5, "input/output error")
        return rename(self, target)

    monkeypatch.setattr(templater.to_files.folder, "exchange", _no_exchange)
    monkeypatch.setattr(Path, "rename", fail_second)
    with pytest.raises(WriteError):
        _make_kit(tmp_path / "kit", "second")
    assert _listed(tmp_path) == before


def _no_exchange(one: Path, other: Path) -> bool:
    """What a system answers that cannot let folders change places in one step."""
    return False


def test_without_an_exchange_the_newer_kit_takes_the_older_ones_place_too(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(templater.to_files.folder, "exchange", _no_exchange)
    for word in ("first", "second"):
        _make_kit(tmp_path / "kit", word)
    assert sorted(_listed(tmp_path)) == ["kit", "kit/manifest.json", "kit/second"]


def test_a_kit_that_a_killed_run_had_put_aside_is_put_back(tmp_path: Path) -> None:
    # All that a run leaves that is killed between the two steps of a system without an exchange.
    _make_kit(tmp_path / "kit", "first")
    before = _listed(tmp_path)
    workplace = tmp_path / ".kit.unfinished"
    (workplace / "new").mkdir(parents=True)
    (workplace / "lock").touch()
    (tmp_path / "kit").rename(workplace / "older")
    with pytest.raises(RuntimeError):
        _fail_to_make(tmp_path / "kit", RuntimeError())
    assert _listed(tmp_path) == before


@pytest.mark.parametrize(
    ("here", "place"),
    [("kit", "."), ("kit", "../kit"), ("kit/templates", ".."), ("kit/templates", "../../kit/")],
)
def test_the_folder_where_the_user_is_does_not_vanish_from_under_them(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, here: str, place: str
) -> None:
    _make_kit(tmp_path / "kit", "first")
    (tmp_path / "kit" / "templates").mkdir()
    before = _listed(tmp_path)
    monkeypatch.chdir(tmp_path / here)
    with pytest.raises(WriteError, match=r"^you are in .*, so it is left as it is"):
        _make_kit(Path(place), "second")
    assert _listed(tmp_path) == before


@pytest.mark.parametrize(
    "manifest", [None, "not json", "[]", '{"schema": "of another program/1"}', "{}", '{"schema": []}']
)
def test_a_folder_that_is_not_a_kit_is_left_alone(tmp_path: Path, manifest: str | None) -> None:
    (tmp_path / "letters").write_text("dear")
    if manifest is not None:
        (tmp_path / "manifest.json").write_text(manifest)
    before = _listed(tmp_path)
    with pytest.raises(WriteError) as caught:
        check_is_replaceable(tmp_path)
    assert caught.value.exit_code == ExitCode.CANNOT_WRITE
    assert str(caught.value).splitlines() == [
        f"{tmp_path} is not a kit, so it is left as it is",
        "  give another place with --out, or move that folder away",
    ]
    assert _listed(tmp_path) == before


@pytest.mark.parametrize("name", ["notes.txt", "templates/my-own.svg", ".notes", ".git/config"])
def test_a_kit_that_holds_something_of_the_users_is_left_alone(tmp_path: Path, name: str) -> None:
    (tmp_path / "templates").mkdir()
    manifest = {"schema": SCHEMA, "files": {"hooks.csv": "", "templates/a.svg": ""}}
    for path, text in (
        ("manifest.json", json.dumps(manifest)),
        ("hooks.csv", ""),
        ("templates/a.svg", ""),
        (".DS_Store", ""),
    ):
        (tmp_path / path).write_text(text)
    check_is_replaceable(tmp_path)
    (tmp_path / name).parent.mkdir(exist_ok=True)
    (tmp_path / name).write_text("mine")
    with pytest.raises(WriteError) as caught:
        check_is_replaceable(tmp_path)
    assert str(caught.value).splitlines() == [
        f"{tmp_path} holds {name}, which is not part of the kit",
        "  move it away, or give another place with --out",
    ]
    assert (tmp_path / name).read_text() == "mine"


def test_files_are_not_taken_for_folders(tmp_path: Path) -> None:
    (tmp_path / "file").write_text("dear")
    with pytest.raises(WriteError, match="file is not a folder"):
        check_is_replaceable(tmp_path / "file")
    with pytest.raises(WriteError, match="cannot write"), whole_folder(tmp_path / "file" / "kit"):
        raise AssertionError("never reached")


@pytest.mark.parametrize("target", ["kit", "nowhere", "link"])
@pytest.mark.parametrize("slash", ["", "/"])
def test_a_link_is_left_as_it_is(tmp_path: Path, target: str, slash: str) -> None:
    _make_kit(tmp_path / "kit", "first")
    (tmp_path / "link").symlink_to(target)
    before = _listed(tmp_path)
    with pytest.raises(WriteError) as caught:
        _make_kit(Path(f"{tmp_path}/link{slash}"), "second")
    assert str(caught.value) == (
        f"{tmp_path}/link is a link, so it is left as it is\n  name the folder itself with --out"
    )
    assert _listed(tmp_path) == before


@pytest.mark.parametrize("place", ["link/kit", "link/../deep/kit/", "deep/kit/../../deep/kit"])
def test_ways_round_about_lead_to_the_folder(tmp_path: Path, place: str) -> None:
    (tmp_path / "link").symlink_to("deep")
    _make_kit(tmp_path / "deep" / "kit", "first")
    _make_kit(tmp_path / place, "second")
    assert sorted(_listed(tmp_path / "deep")) == ["kit", "kit/manifest.json", "kit/second"]


@pytest.mark.parametrize("name", [b"k" * 255, b".kit", b"-", b"--out", b"kit\n\x1b[1m", b"k\xff\xfet"])
def test_any_name_that_a_folder_may_have_will_do(tmp_path: Path, name: bytes) -> None:
    folder = tmp_path / os.fsdecode(name)
    for word in ("first", "second"):
        _make_kit(folder, word)
    assert sorted(_listed(folder)) == ["manifest.json", "second"]
    assert [path.name for path in tmp_path.iterdir()] == [folder.name]


def test_a_name_that_cannot_be_printed_is_spelled_out(tmp_path: Path) -> None:
    folder = tmp_path / os.fsdecode(b"bow\n\xff")
    folder.write_text("a file")
    with pytest.raises(WriteError) as caught:
        check_is_replaceable(folder)
    assert str(caught.value).splitlines()[0] == rf"'{tmp_path}/bow\n\udcff' is not a folder"


def test_a_folder_that_vanishes_meanwhile_is_told(tmp_path: Path) -> None:
    with pytest.raises(WriteError) as caught:
        _make_kit_in_vanishing(tmp_path / "deep")
    assert str(caught.value).startswith(f"cannot write {tmp_path}/deep/kit: No such file or directory\n")
    assert _listed(tmp_path) == {}


def _make_kit_in_vanishing(parent: Path) -> None:
    with whole_folder(parent / "kit") as building:
        shutil.rmtree(parent)
        (building / "half").write_text("half")


def test_what_the_user_puts_into_an_older_kit_meanwhile_stays(tmp_path: Path) -> None:
    _make_kit(tmp_path / "kit", "first")
    with pytest.raises(WriteError, match="holds notes, which is not part of the kit"):
        _make_kit_meanwhile(tmp_path / "kit")
    assert sorted(_listed(tmp_path)) == ["kit", "kit/first", "kit/manifest.json", "kit/notes"]


def _make_kit_meanwhile(folder: Path) -> None:
    with whole_folder(folder):
        (folder / "notes").write_text("mine")


def test_folders_made_on_the_way_are_removed_when_it_goes_wrong(tmp_path: Path) -> None:
    with pytest.raises(RuntimeError):
        _fail_to_make(tmp_path / "deep" / "deeper" / "kit", RuntimeError())
    assert _listed(tmp_path) == {}


def test_a_kit_that_others_may_not_read_stays_so(tmp_path: Path) -> None:
    _make_kit(tmp_path / "kit", "first")
    (tmp_path / "kit").chmod(0o700)
    _make_kit(tmp_path / "kit", "second")
    assert (tmp_path / "kit").stat().st_mode & 0o777 == 0o700


def test_a_kits_layout_that_the_user_has_changed_is_not_lost(tmp_path: Path) -> None:
    files = {"layout.yaml": sha256(b"title: hall").hexdigest()}
    (tmp_path / "manifest.json").write_text(json.dumps({"schema": SCHEMA, "files": files}))
    (tmp_path / "layout.yaml").write_bytes(b"title: hall")
    check_is_replaceable(tmp_path, b"title: another hall")
    (tmp_path / "layout.yaml").write_bytes(b"title: stair hall")
    check_is_replaceable(tmp_path, b"title: stair hall")
    with pytest.raises(WriteError) as caught:
        check_is_replaceable(tmp_path, b"title: another hall")
    assert str(caught.value).splitlines() == [
        f"{tmp_path}/layout.yaml was changed since the kit was made",
        "  make the kit from it, or move it away, or give another place with --out",
    ]


def test_a_new_file_never_replaces_another(tmp_path: Path) -> None:
    path = tmp_path / "hall.yaml"
    write_new_file(path, b"first")
    with pytest.raises(WriteError) as caught:
        write_new_file(path, b"second")
    assert str(caught.value) == f"{path} exists already\n  give another name, or move it away"
    assert path.read_bytes() == b"first"


def test_a_new_file_does_not_follow_a_link(tmp_path: Path) -> None:
    (tmp_path / "hall.yaml").symlink_to("elsewhere")
    with pytest.raises(WriteError, match="exists already"):
        write_new_file(tmp_path / "hall.yaml", b"first")
    assert not (tmp_path / "elsewhere").exists()


def test_a_new_file_in_no_folder_is_refused(tmp_path: Path) -> None:
    path = tmp_path / "nowhere" / "hall.yaml"
    with pytest.raises(WriteError) as caught:
        write_new_file(path, b"first")
    assert str(caught.value) == (
        f"cannot write {path}: No such file or directory\n  name a place that can be written"
    )


def _is_ours(path: Path) -> bool:
    return path.read_bytes().startswith(b"PK")


def _write(path: Path, content: bytes) -> None:
    with whole_file(path, _is_ours) as building:
        building.write_bytes(content)


def _fail_to_write(path: Path) -> None:
    with whole_file(path, _is_ours) as building:
        building.write_bytes(b"PK ha")
        raise RuntimeError


def test_a_file_is_replaced_only_by_a_whole_one(tmp_path: Path) -> None:
    path = tmp_path / "deep" / "kit.zip"
    _write(path, b"PK first")
    _write(path, b"PK second")
    assert path.read_bytes() == b"PK second"
    with pytest.raises(RuntimeError):
        _fail_to_write(path)
    assert path.read_bytes() == b"PK second"
    assert _listed(path.parent) == {"kit.zip": b"PK second"}


def test_a_file_that_is_not_ours_is_left_alone(tmp_path: Path) -> None:
    path = tmp_path / "hall.yaml"
    path.write_bytes(b"title: hall")
    with pytest.raises(WriteError) as caught:
        _write(path, b"PK")
    assert str(caught.value) == (
        f"{path} was not made by this program, or was changed since, so it is left as it is\n"
        "  give another name or place, or move that file away"
    )
    assert _listed(tmp_path) == {"hall.yaml": b"title: hall"}


def test_a_file_that_comes_while_another_is_made_is_left_alone(tmp_path: Path) -> None:
    path = tmp_path / "kit.zip"

    def interfere() -> None:
        with whole_file(path, _is_ours) as building:
            building.write_bytes(b"PK")
            path.write_bytes(b"letters")

    with pytest.raises(WriteError, match="was not made by this program"):
        interfere()
    assert _listed(tmp_path) == {"kit.zip": b"letters"}


@pytest.mark.skipif(not hasattr(os, "mkfifo"), reason="needs pipes with names")
def test_a_pipe_is_left_alone_and_not_waited_for(tmp_path: Path) -> None:
    os.mkfifo(tmp_path / "kit.zip")
    with pytest.raises(WriteError, match="was not made by this program"):
        _write(tmp_path / "kit.zip", b"PK")


def test_a_file_is_written_where_its_link_leads(tmp_path: Path) -> None:
    (tmp_path / "kept").mkdir()
    _write(tmp_path / "kept" / "kit.zip", b"PK first")
    (tmp_path / "link.zip").symlink_to("kept/kit.zip")
    _write(tmp_path / "link.zip", b"PK second")
    assert (tmp_path / "link.zip").is_symlink()
    assert _listed(tmp_path / "kept") == {"kit.zip": b"PK second"}


@pytest.mark.parametrize("whole", [whole_folder, partial(whole_file, is_ours=Path.is_file)])
def test_an_interrupt_that_a_library_has_swallowed_still_keeps_what_is_made_from_its_place(
    tmp_path: Path, whole: Callable[[Path], AbstractContextManager[Path]]
) -> None:
    def make() -> None:
        with signals_heeded(), whole(tmp_path / "kit") as new:
            (new / "page" if new.is_dir() else new).touch()
            with suppress(KeyboardInterrupt):  # as a bare except does
                signal.raise_signal(signal.SIGTERM)

    with pytest.raises(KeyboardInterrupt):
        make()
    assert list(tmp_path.iterdir()) == []


def test_what_one_run_was_asked_does_not_end_the_next(tmp_path: Path) -> None:
    before = [signal.getsignal(number) for number in ENDING_SIGNALS]
    with pytest.raises(KeyboardInterrupt), signals_heeded():
        signal.raise_signal(signal.SIGINT)
    assert [signal.getsignal(number) for number in ENDING_SIGNALS] == before
    with whole_folder(tmp_path / "kit") as new:
        (new / "page").touch()
    assert _listed(tmp_path) == {"kit": b"", "kit/page": b""}
