"""The command line: exit codes, all of stderr, and what is written."""

from __future__ import annotations

import os
import shutil
import signal
import subprocess
import sys
from contextlib import suppress
from pathlib import Path

import pikepdf
import pytest

import templater.commands.check
import templater.commands.kit
import templater.pipeline
from templater.errors import Fault, WriteError
from tests.conftest import KitMaker
from tests.kits import LAYOUTS
from tests.running import Run

SOUND = """\
title: Keeper's cottage, stair hall
units: in
wall: {width: 12 ft, height: 8 ft}
furniture:
  - {name: boot bench, left: 30, width: 60, height: 34}
pieces:
  - name: Tide chart
    size: 40 x 20
    hang: {by: wire, drop: 2 1/4, rise: 1/2}
    place: {above: boot bench}
"""
KIT_FILES = [
    "hooks.csv",
    "kit.pdf",
    "layout.yaml",
    "manifest.json",
    "overview.pdf",
    "overview.png",
    "overview.svg",
    "templates",
]
NO_SUCH = (
    "cannot read {}: No such file or directory\n  name a layout file; 'templater new FILE' writes one\n"
)

REFUSED = (
    "{} was not made by this program, or was changed since, so it is left as it is\n"
    "  give another name or place, or move that file away\n"
)


@pytest.fixture
def hall(tmp_path: Path) -> Path:
    """A sound layout in the folder, and one whose name for the bench is wrong beside it."""
    (tmp_path / "hall.yaml").write_text(SOUND, "utf-8")
    (tmp_path / "wrong.yaml").write_text(SOUND.replace("above: boot bench", "above: boot bnch"), "utf-8")
    return tmp_path / "hall.yaml"


def _listed(folder: Path) -> list[str]:
    return sorted(path.name for path in folder.iterdir())


WRONG = (
    "wrong.yaml:10:20: 'above' names 'boot bnch', which is not in this layout"
    " (did you mean 'boot bench'?)\n"
    "  mend the name, or add it under 'furniture'\n"
)


# --- kit ------------------------------------------------------------------------------------------


def test_kit_goes_beside_the_layout(run: Run, hall: Path) -> None:
    (hall.parent / "deep").mkdir()
    shutil.move(hall, hall.parent / "deep" / "hall.yaml")
    ended = run("kit", "deep/hall.yaml")
    assert (ended.code, ended.err) == (0, "")
    assert ended.out.startswith("deep/hall-kit: revision ")
    assert ended.out.endswith(" pages, 1 hole\n")
    assert _listed(hall.parent / "deep" / "hall-kit") == KIT_FILES
    assert _listed(hall.parent / "deep") == ["hall-kit", "hall.yaml"]


def test_kit_packs_and_splits_when_asked(run: Run, no_picture: str, hall: Path) -> None:
    ended = run("kit", "hall.yaml", "--out", "out", "--zip", "--split", "--paper", "a3")
    assert ended.code == 0
    assert _listed(hall.parent) == ["hall.yaml", "out", "out.zip", "wrong.yaml"]
    assert _listed(hall.parent / "out" / "templates") == ["tide-chart.pdf", "tide-chart.svg"]
    revision = ended.out.removeprefix("out: revision ")[:6]
    packed = (hall.parent / "out.zip").read_bytes()
    ended = run("kit", "hall.yaml", "--out", "out", "--paper", "a2")
    assert ended.code == 0
    older = f"out.zip is of an older kit, revision {revision}: pack it anew with --zip, or delete it\n"
    assert ended.err == f"{no_picture}{older}"
    assert (hall.parent / "out.zip").read_bytes() == packed
    # Where the newer kit cannot be packed, the kit itself is there, and the older archive is told of.
    Path(".out.zip.unfinished").touch()  # a file where packing needs a folder
    ended = run("kit", "hall.yaml", "--out", "out", "--zip", "--paper", "a2")
    assert ended.code == 5
    assert ended.out.startswith("out: revision ")
    assert ended.err == (
        f"{no_picture}{older}cannot write out.zip: Not a directory\n"
        "  name a place that can be written; .out.zip.unfinished is left behind: delete it\n"
    )
    assert (hall.parent / "out.zip").read_bytes() == packed


def test_a_file_that_is_no_packed_kit_is_refused_before_the_kit_is_made(run: Run, hall: Path) -> None:
    (hall.parent / "out.zip").write_bytes(b"PK photographs")
    before = _listed(hall.parent)
    ended = run("kit", "hall.yaml", "--out", "out", "--zip")
    assert (ended.code, ended.out) == (5, "")
    assert ended.err == REFUSED.format("out.zip")
    assert _listed(hall.parent) == before


def test_several_layouts_go_to_folders_of_their_own(run: Run, no_picture: str, hall: Path) -> None:
    shutil.copy(hall, hall.parent / "hall two.yaml")
    ended = run("kit", "hall.yaml", "hall two.yaml", "--out", "kits", "--paper", "a3")
    assert (ended.code, ended.err) == (0, 2 * no_picture)
    assert _listed(hall.parent / "kits") == ["hall", "hall two"]
    assert [line.split(":")[0] for line in ended.out.splitlines()] == ["kits/hall", "kits/hall two"]


def test_of_several_layouts_none_is_written_if_one_is_wrong(run: Run, hall: Path) -> None:
    before = _listed(hall.parent)
    ended = run("kit", "hall.yaml", "wrong.yaml", "gone.yaml", "--out", "kits")
    assert (ended.code, ended.out) == (3, "")
    assert ended.err == WRONG + NO_SUCH.format("gone.yaml")
    assert _listed(hall.parent) == before


def test_of_several_layouts_none_is_written_if_one_needs_too_many_sheets(run: Run, hall: Path) -> None:
    # 10 m by 8 m on Letter is far more than anybody tapes together.
    (hall.parent / "huge.yaml").write_text(
        "title: Sea wall\nunits: m\nwall: {width: 30, height: 12}\npieces:\n"
        "  - {name: Great chart, size: 10 x 8, place: {right: 1, bottom: 1}}\n"
        "  - {name: Long chart, size: 12 x 9, place: {left: 1, bottom: 1}}\n"
    )
    before = _listed(hall.parent)
    ended = run("kit", "hall.yaml", "huge.yaml", "--paper", "letter")
    assert (ended.code, ended.out) == (3, "")
    first, hint, second, _ = ended.err.splitlines()
    assert first.startswith("huge.yaml:5:5: 'Great chart' needs ")
    assert first.endswith(" sheets of letter")
    assert hint.startswith(
        "  print on larger paper: --paper a1, or --paper 'roll 36 in' at a copy shop;"
    )
    assert second.startswith("huge.yaml:6:5: 'Long chart' needs ")
    assert _listed(hall.parent) == before


@pytest.mark.parametrize("twin", ["hall.yml", "sub/../hall.yaml", "hall.yaml"])
def test_two_kits_never_go_to_one_folder(run: Run, hall: Path, twin: str) -> None:
    (hall.parent / "sub").mkdir()
    shutil.copy(hall, hall.parent / "hall.yml")
    ended = run("kit", "hall.yaml", twin)
    assert ended.code == 2
    assert ended.err == (
        "two layouts would go to the same folder\n  make them one at a time with --out\n"
    )


def test_a_folder_that_is_not_a_kit_is_refused(run: Run, hall: Path) -> None:
    (hall.parent / "letters").mkdir()
    (hall.parent / "letters" / "dear").write_text("dear")
    ended = run("kit", "hall.yaml", "--out", "letters")
    assert ended.code == 5
    assert ended.err == (
        "letters is not a kit, so it is left as it is\n"
        "  give another place with --out, or move that folder away\n"
    )
    assert _listed(hall.parent / "letters") == ["dear"]


def test_a_broken_rule_is_told_and_the_kit_is_made(run: Run, no_picture: str, tmp_path: Path) -> None:
    ended = run("kit", str(LAYOUTS / "gallery-landing.yaml"), "--out", "out", "--paper", "a3")
    assert ended.code == 0
    # The flags' centre is at 62 + 12 / 2 = 68 in; 68 - 61 = 7.
    assert ended.err.startswith(
        f"{no_picture}rule broken: eye-line: signal flags: 68 in, asked for 59–61 in; lower by 7 in"
    )
    assert len(ended.err.splitlines()) == 2
    assert _listed(tmp_path / "out") == [name for name in KIT_FILES if name != "overview.png"]


# --- what cannot be read --------------------------------------------------------------------------


@pytest.mark.parametrize("command", ["kit", "check", "measure"])
def test_a_missing_layout_is_told(run: Run, tmp_path: Path, command: str) -> None:
    ended = run(command, "gone.yaml")
    assert (ended.code, ended.out, ended.err) == (3, "", NO_SUCH.format("gone.yaml"))
    assert _listed(tmp_path) == []


@pytest.mark.parametrize("folder", [".", "..", "/"])
def test_a_folder_is_not_a_layout(run: Run, tmp_path: Path, folder: str) -> None:
    ended = run("kit", folder)
    assert ended.code == 3
    assert ended.err == (
        f"cannot read {folder}: a folder\n  name a layout file; 'templater new FILE' writes one\n"
    )
    assert _listed(tmp_path) == []


@pytest.mark.parametrize(
    ("content", "told"),
    [
        (b"", "hall.yaml:1:1: the file is empty\n"),
        (b"title: \xff\n", "hall.yaml:1:8: the byte 0xff is not UTF-8\n"),
        (b"title: hall\nwall: [", "hall.yaml:2:8: "),
    ],
)
def test_a_layout_that_cannot_be_read_is_told_by_its_place(
    run: Run, tmp_path: Path, content: bytes, told: str
) -> None:
    (tmp_path / "hall.yaml").write_bytes(content)
    for command in ("kit", "check"):
        ended = run(command, "hall.yaml")
        assert (ended.code, ended.out) == (3, "")
        assert ended.err.startswith(told)
        assert all(line.startswith("  ") for line in ended.err.splitlines()[1::2])
    assert _listed(tmp_path) == ["hall.yaml"]


# --- wrong usage ----------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("words", "told"),
    [
        (
            ("--margin", "80 mm"),
            "--margin: the length must be from 0 to 50 mm\n  give for example 10 mm or 3/8 in\n",
        ),
        (
            ("--lap", "-3 mm"),
            "--lap: the length must be from 0 to 50 mm\n  give for example 10 mm or 3/8 in\n",
        ),
        (("--margin", "4"), "--margin: '4' has no unit\n"),
        (("--paper", "a9"), "--paper: 'a9' is too small for a template\n  the least paper is a5\n"),
        (("--paper", "roll 1 in"), "--paper: 'roll 1 in' is too small or too large for a paper\n"),
        (("--lap", "1,5 cm"), "--lap: '1,5 cm' has a decimal comma\n  write a point: 1.5 cm\n"),
    ],
)
def test_a_bad_option_is_told(run: Run, hall: Path, words: tuple[str, str], told: str) -> None:
    before = _listed(hall.parent)
    ended = run("kit", "hall.yaml", *words)
    assert (ended.code, ended.out) == (2, "")
    assert ended.err.startswith(told)
    assert len(ended.err.splitlines()) == 2
    assert _listed(hall.parent) == before


@pytest.mark.parametrize(
    "words",
    [("kit",), ("kit", "hall.yaml", "--colour"), ("new",), ("hang",), ("check", "a", "b")],
)
def test_wrong_words_show_the_usage(run: Run, tmp_path: Path, words: tuple[str, ...]) -> None:
    ended = run(*words)
    assert (ended.code, ended.out) == (2, "")
    assert ended.err.startswith("Usage: templater ")
    assert "Error: " in ended.err
    assert _listed(tmp_path) == []


# --- check ----------------------------------------------------------------------------------------


def test_check_shows_places_and_rules_and_writes_nothing(run: Run, hall: Path) -> None:
    before = _listed(hall.parent)
    ended = run("check", "hall.yaml")
    assert (ended.code, ended.err) == (0, "")
    # The bench's middle is at 30 + 60 / 2 = 60 in; 34 + 7 + 20 - 2 1/4 + 1/2 = 59 1/4 in up.
    line = next(line for line in ended.out.splitlines() if "Tide chart" in line)
    assert "60 in (1524 mm)" in line
    assert "59 1/4 in (1505 mm)" in line
    assert _listed(hall.parent) == before


def test_check_ends_4_when_a_rule_is_broken(run: Run) -> None:
    ended = run("check", str(LAYOUTS / "gallery-landing.yaml"))
    assert (ended.code, ended.err) == (4, "")
    assert "broken" in ended.out


def test_check_tells_what_is_wrong_with_the_layout(run: Run, hall: Path) -> None:
    ended = run("check", "wrong.yaml")
    assert (ended.code, ended.out, ended.err) == (3, "", WRONG)


# --- new ------------------------------------------------------------------------------------------


def test_new_writes_a_layout_that_kit_accepts_as_it_is(
    run: Run, no_picture: str, tmp_path: Path
) -> None:
    ended = run("new", "mine.yaml")
    assert (ended.code, ended.err) == (0, "")
    assert ended.out == "mine.yaml: change it to your wall, then: templater kit mine.yaml\n"
    assert run("check", "mine.yaml").code == 0
    made = run("kit", "mine.yaml", "--paper", "a3")
    assert (made.code, made.err) == (0, no_picture)
    assert _listed(tmp_path) == ["mine-kit", "mine.yaml"]


def test_new_never_replaces_a_file(run: Run, tmp_path: Path) -> None:
    (tmp_path / "mine.yaml").write_text("title: mine")
    ended = run("new", "mine.yaml")
    assert (ended.code, ended.out) == (5, "")
    assert ended.err == "mine.yaml exists already\n  give another name, or move it away\n"
    assert (tmp_path / "mine.yaml").read_text() == "title: mine"


# --- measure --------------------------------------------------------------------------------------


def test_measure_writes_a_form_for_a_layout_or_a_blank_one(run: Run, hall: Path) -> None:
    for words, name in (
        (("hall.yaml",), "hall-measure.pdf"),
        (("--blank",), "measure.pdf"),
        (("--blank", "--paper", "a4", "--out", "deep/form.pdf"), "deep/form.pdf"),
    ):
        ended = run("measure", *words)
        assert (ended.code, ended.err) == (0, "")
        assert ended.out == f"{name}: print it, fill it in, send it back\n"
        assert (hall.parent / name).read_bytes().startswith(b"%PDF-")


@pytest.mark.parametrize("words", [(), ("hall.yaml", "--blank")])
def test_measure_wants_a_layout_or_blank(run: Run, hall: Path, words: tuple[str, ...]) -> None:
    ended = run("measure", *words)
    assert (ended.code, ended.out) == (2, "")
    assert ended.err == "give a LAYOUT or --blank\n  for example: templater measure --blank\n"


def test_measure_never_replaces_a_layout(run: Run, hall: Path) -> None:
    before = hall.read_bytes()
    ended = run("measure", "hall.yaml", "--out", "hall.yaml")
    assert (ended.code, ended.out) == (5, "")
    assert ended.err == REFUSED.format("hall.yaml")
    assert hall.read_bytes() == before


def test_measure_replaces_nothing_but_a_form_that_nobody_has_filled_in(run: Run, hall: Path) -> None:
    form = Path("hall-measure.pdf")
    assert run("measure", "hall.yaml").code == 0
    assert run("measure", "hall.yaml", "--paper", "a4").code == 0
    with pikepdf.open(form, allow_overwriting_input=True) as pdf:
        note = pikepdf.Object.parse(b"<< /Type /Annot /Subtype /FreeText /Contents (16 ft 4 in) >>")
        pdf.pages[0].Annots = pikepdf.Array([note])
        pdf.save(form)
    before = form.read_bytes()
    ended = run("measure", "hall.yaml")
    assert (ended.code, ended.out) == (5, "")
    assert ended.err == REFUSED.format("hall-measure.pdf")
    assert form.read_bytes() == before


def test_a_kits_own_pdf_is_not_replaced_by_a_form(run: Run, shipped_kit: KitMaker) -> None:
    shutil.copy(shipped_kit("stair-hall", "letter").folder / "kit.pdf", "kit.pdf")
    before = Path("kit.pdf").read_bytes()
    ended = run("measure", "--blank", "--out", "kit.pdf")
    assert (ended.code, ended.out, ended.err) == (5, "", REFUSED.format("kit.pdf"))
    assert Path("kit.pdf").read_bytes() == before


# --- help, faults, streams ------------------------------------------------------------------------


@pytest.mark.parametrize("words", [("--help",), ("-h",), ("kit", "-h"), ("new", "--help")])
def test_help_is_shown_and_nothing_written(run: Run, tmp_path: Path, words: tuple[str, ...]) -> None:
    ended = run(*words)
    assert (ended.code, ended.err) == (0, "")
    assert ended.out.startswith("Usage: templater ")
    assert _listed(tmp_path) == []


def test_help_lists_the_commands_in_the_order_of_their_use(run: Run) -> None:
    listed = run("--help").out.partition("Commands:\n")[2].partition("\n\n")[0]
    names = [line.split()[0] for line in listed.splitlines()]
    assert names == ["new", "check", "arrange", "kit", "calibrate", "measure", "proof"]


def test_help_lists_every_exit_code(run: Run) -> None:
    lines = [line.split() for line in run("--help").out.splitlines()]
    assert [line[0] for line in lines if line and line[0].isdigit()] == [
        *("0", "1", "2", "3", "4", "5", "6"),
        "130",
    ]


def test_the_version_is_told(run: Run) -> None:
    ended = run("--version")
    assert (ended.code, ended.err) == (0, "")
    assert ended.out == f"templater, version {templater.__version__}\n"


def test_a_fault_of_the_program_is_owned_up_to(
    run: Run, hall: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    def fail(*_: object) -> None:
        raise RuntimeError("seam of no length")

    monkeypatch.setattr(templater.pipeline, "plan_kit", fail)
    before = _listed(hall.parent)
    ended = run("kit", "hall.yaml")
    assert (ended.code, ended.out) == (1, "")
    assert ended.err == (
        "a fault of the program (RuntimeError: seam of no length)\n"
        "  no kit is left half written; please report it together with the layout\n"
    )
    assert _listed(hall.parent) == before


def test_an_interrupted_run_says_so(run: Run, hall: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    def interrupt(*_: object) -> None:
        raise KeyboardInterrupt

    monkeypatch.setattr(templater.pipeline, "plan_kit", interrupt)
    ended = run("kit", "hall.yaml")
    assert (ended.code, ended.out) == (130, "")
    assert ended.err.strip() == "interrupted"
    assert _listed(hall.parent) == ["hall.yaml", "wrong.yaml"]


@pytest.mark.parametrize(
    "error",
    [WriteError([Fault("cannot write", "mend it")]), RuntimeError("half a page"), OSError(28, "")],
)
def test_an_interrupt_is_told_as_one_whatever_a_library_makes_of_it(
    run: Run, hall: Path, monkeypatch: pytest.MonkeyPatch, error: Exception
) -> None:
    def swallow(*_: object) -> None:
        with suppress(KeyboardInterrupt):  # as a bare except does
            signal.raise_signal(signal.SIGINT)
        raise error

    monkeypatch.setattr(templater.pipeline, "plan_kit", swallow)
    ended = run("kit", "hall.yaml")
    assert (ended.code, ended.out, ended.err.strip()) == (130, "", "interrupted")


def test_a_run_whose_interrupt_was_swallowed_does_not_end_as_if_it_had_not_been_asked(
    run: Run, hall: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    def swallow(*_: object) -> None:
        with suppress(KeyboardInterrupt):
            signal.raise_signal(signal.SIGINT)

    monkeypatch.setattr(templater.commands.check, "tell_idle", swallow)
    ended = run("check", "hall.yaml")
    assert (ended.code, ended.err.strip()) == (130, "interrupted")


def test_a_run_that_is_interrupted_at_its_end_tells_what_is_in_its_place(
    run: Run, hall: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    def interrupt(*_: object) -> None:
        signal.raise_signal(signal.SIGINT)

    monkeypatch.setattr(templater.commands.kit, "tell_idle", interrupt)
    ended = run("kit", "hall.yaml")
    assert (ended.code, ended.out) == (130, "")
    assert ended.err == "\ninterrupted\n  hall-kit is whole and in its place\n"
    assert (hall.parent / "hall-kit" / "kit.pdf").exists()


def test_a_stream_that_lacks_a_sign_names_it(hall: Path) -> None:
    # A minus sign that turned into a question mark would be read as plus.
    ended = subprocess.run(
        [sys.executable, "-m", "templater", "check", str(hall)],
        env={**os.environ, "PYTHONIOENCODING": "ascii", "COLUMNS": "160"},
        cwd=LAYOUTS.parent,
        capture_output=True,
        text=True,
        check=False,
    )
    assert (ended.returncode, ended.stderr) == (0, "")
    assert r"\N{MINUS SIGN}3/4 in" in ended.stdout


@pytest.mark.skipif(not Path("/dev/full").exists(), reason="needs Linux's full device")
def test_a_report_that_cannot_be_written_says_so(hall: Path) -> None:
    command = [sys.executable, "-m", "templater", "check", str(hall)]
    with Path("/dev/full").open("w") as full:
        ended = subprocess.run(command, stdout=full, stderr=subprocess.PIPE, text=True, check=False)
    assert (ended.returncode, ended.stderr) == (5, "cannot write: No space left on device\n")
