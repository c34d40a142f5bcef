from __future__ import annotations

import json
from pathlib import Path

import pytest

from templater.errors import ExitCode, WriteError
from templater.to_files.folder import check_is_replaceable, whole_file, whole_folder, write_new_file
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


@pytest.mark.parametrize("error", [KeyboardInterrupt(), OSError(5, "input/output error")])
def test_the_older_kit_comes_back_when_the_newer_cannot_take_its_place(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, error: BaseException
) -> None:
    _make_kit(tmp_path / "kit", "first")
    before = _listed(tmp_path)
    rename, calls = Path.rename, []

    def fail_second(self: Path, target: Path) -> Path:
        calls.append(target)
        if len(calls) == 2:
            raise error
        return rename(self, target)

    monkeypatch.setattr(Path, "rename", fail_second)
    with pytest.raises((WriteError, KeyboardInterrupt)):
        _make_kit(tmp_path / "kit", "second")
    assert _listed(tmp_path) == before


def test_a_folder_that_cannot_be_moved_is_left_without_rubbish_beside_it(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.chdir(tmp_path)
    with pytest.raises(WriteError), whole_folder(Path()) as building:
        (building / "half").write_text("half")
    assert _listed(tmp_path) == {}


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


@pytest.mark.parametrize("name", ["notes.txt", "templates/my-own.svg"])
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
    (tmp_path / name).write_text("mine")
    with pytest.raises(WriteError) as caught:
        check_is_replaceable(tmp_path)
    assert str(caught.value).splitlines() == [
        f"{tmp_path} holds {name}, which is not part of the kit",
        "  move it away, or give another place with --out",
    ]
    assert (tmp_path / name).read_text() == "mine"


def test_files_and_links_are_not_taken_for_folders(tmp_path: Path) -> None:
    (tmp_path / "file").write_text("dear")
    (tmp_path / "link").symlink_to(tmp_path / "nowhere")
    for name in ("file", "link"):
        with pytest.raises(WriteError, match="is not a folder"):
            check_is_replaceable(tmp_path / name)
    with pytest.raises(WriteError, match="cannot write"), whole_folder(tmp_path / "file" / "kit"):
        raise AssertionError("never reached")


def test_a_new_file_never_replaces_another(tmp_path: Path) -> None:
    path = tmp_path / "hall.yaml"
    write_new_file(path, b"first")
    with pytest.raises(WriteError) as caught:
        write_new_file(path, b"second")
    assert str(caught.value) == f"{path} exists already\n  give another name, or move it away"
    assert path.read_bytes() == b"first"


def test_a_new_file_in_no_folder_is_refused(tmp_path: Path) -> None:
    path = tmp_path / "nowhere" / "hall.yaml"
    with pytest.raises(WriteError) as caught:
        write_new_file(path, b"first")
    assert str(caught.value) == (
        f"cannot write {path}: No such file or directory\n  name a place that can be written"
    )


def _write(path: Path, content: bytes) -> None:
    with whole_file(path, b"PK") as building:
        building.write_bytes(content)


def _fail_to_write(path: Path) -> None:
    with whole_file(path, b"PK") as building:
        building.write_bytes(b"PK ha")
        raise RuntimeError


def test_a_file_is_replaced_only_by_a_whole_one_of_its_kind(tmp_path: Path) -> None:
    path = tmp_path / "deep" / "kit.zip"
    _write(path, b"PK first")
    _write(path, b"PK second")
    assert path.read_bytes() == b"PK second"
    with pytest.raises(RuntimeError):
        _fail_to_write(path)
    assert path.read_bytes() == b"PK second"
    assert _listed(path.parent) == {"kit.zip": b"PK second"}


def test_a_file_of_another_kind_is_left_alone(tmp_path: Path) -> None:
    path = tmp_path / "hall.yaml"
    path.write_bytes(b"title: hall")
    with pytest.raises(WriteError, match="is another kind of file, so it is left as it is"):
        _write(path, b"PK")
    assert _listed(tmp_path) == {"hall.yaml": b"title: hall"}
