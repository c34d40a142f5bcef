"""``calibrate`` on the command line: all of what it says, and what it keeps."""

from __future__ import annotations

import json
from pathlib import Path

import pikepdf
import pytest

from tests.kits import LAYOUTS
from tests.running import Run


@pytest.fixture
def store(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """Where printers are kept, in a configuration folder of the test's own."""
    monkeypatch.setenv("XDG_CONFIG_HOME", str(tmp_path / "config"))
    return tmp_path / "config" / "templater" / "printers.json"


@pytest.fixture
def run(store: Path, run: Run, monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> Run:
    """Run the command line in an empty folder, beside that of the printers."""
    assert not store.exists()
    (tmp_path / "here").mkdir()
    monkeypatch.chdir(tmp_path / "here")
    return run


MEASURED = ("calibrate", "--measured", "178.9mm", "239.1mm", "--printer", "study inkjet")
# 180 / 178.9 = 1.00615; 240 / 239.1 = 1.00376; margins are 1/4 in, at the foot 1/2 in, if not given.
INKJET = "study inkjet: across 1.0061, along 1.0038; margins left {}, right {}, top {}, bottom {} mm\n"


def test_a_page_of_rulers_is_written(run: Run) -> None:
    assert run("calibrate") == (
        0,
        "calibrate.pdf: print it at 100 %, measure its rulers; it says what to type then\n",
        "",
    )
    code, _, _ = run("calibrate", "--paper", "a4", "--out", "deep/rulers.pdf")
    assert code == 0
    with pikepdf.open("deep/rulers.pdf") as pdf:
        sizes = [[round(float(side) * 25.4 / 72) for side in page.mediabox[2:]] for page in pdf.pages]
    assert sizes == [[210, 297], [297, 210]]


def test_somebodys_own_pdf_is_not_replaced(run: Run) -> None:
    pikepdf.new().save("calibrate.pdf")
    before = Path("calibrate.pdf").read_bytes()
    assert run("calibrate") == (
        5,
        "",
        "calibrate.pdf was not made by this program, or was changed since, so it is left as it is\n"
        "  give another name or place, or move that file away\n",
    )
    assert Path("calibrate.pdf").read_bytes() == before
    assert run("calibrate", "--out", "rulers.pdf")[0] == 0
    assert run("calibrate", "--out", "rulers.pdf", "--paper", "a4")[0] == 0


def test_what_was_measured_is_kept_and_listed(run: Run, store: Path) -> None:
    assert run("calibrate", "--list") == (0, f"no printer is kept in {store} yet\n", "")
    told = INKJET.format(6.35, 6.35, 6.35, 12.7)
    assert run(*MEASURED) == (
        0,
        f"{told}kept in {store}\nnext: templater calibrate --printer 'study inkjet', to prove it\n",
        "",
    )
    assert run("calibrate", "--list") == (0, f"{told}kept in {store}\n", "")
    content = json.loads(store.read_text("utf-8"))
    assert content["printers"][0]["measured_mm"] == {"across": 178.9, "down": 239.1}


def test_measured_again_it_takes_the_old_ones_place(run: Run, store: Path) -> None:
    run(*MEASURED)
    code, out, err = run(*MEASURED, "--margin", "6mm", "--margin", "bottom=1/2 in")
    assert (code, err) == (0, "")
    told = INKJET.format(6, 6, 6, 12.7)
    assert out.startswith(f"{told}measured anew in {store}\n")
    assert run("calibrate", "--list") == (0, f"{told}kept in {store}\n", "")


@pytest.mark.parametrize(
    ("text", "margins"),
    [
        ("left=4mm, bottom=1/2 in", (4, 6.35, 6.35, 12.7)),
        ("right=3mm", (6.35, 3, 6.35, 12.7)),
    ],
)
def test_some_edges_are_given_between_commas(
    run: Run, text: str, margins: tuple[float, ...], store: Path
) -> None:
    code, out, err = run(*MEASURED, "--margin", text)
    assert (code, err) == (0, "")
    assert out.startswith(INKJET.format(*margins)), store


def test_larger_paper_has_longer_rulers(run: Run) -> None:
    # On A3 they are 240 and 320 mm: 240 / 239 = 1.00418; 320 / 319 = 1.00313
    code, out, _ = run(
        "calibrate", "--paper", "a3", "--measured", "239mm", "319mm", "--printer", "shop laser"
    )
    assert code == 0
    assert out.startswith("shop laser: across 1.0042, along 1.0031; ")


def test_a_proof_comes_corrected(run: Run) -> None:
    run(*MEASURED)
    assert run("calibrate", "--printer", "study inkjet", "--paper", "a4") == (
        0,
        "calibrate-proof.pdf: print it on 'study inkjet' at 100 %; every ruler must measure true\n",
        "",
    )


WRONG_WAY = "give the length across first, then the one down"
WRONG_SCALE = (
    "was it printed at 'Actual size' (100 %)? for other paper than A4 or Letter give its --paper"
)


@pytest.mark.parametrize(
    ("words", "told"),
    [
        (
            ("--measured", "239.1mm", "178.9mm", "--printer", "study inkjet"),
            "--measured, across: 239.1 mm where the page has 180 mm is 32.8 % off; no printer is off by"
            f" more than 5 %\n  {WRONG_WAY}\n--measured, down: 178.9 mm where the page has 240 mm is"
            f" 25.5 % off; no printer is off by more than 5 %\n  {WRONG_WAY}\n",
        ),
        (
            ("--measured", "180mm", "226mm", "--printer", "study inkjet"),
            "--measured, down: 226 mm where the page has 240 mm is 5.8 % off; no printer is off by"
            f" more than 5 %\n  {WRONG_SCALE}\n",
        ),
        (
            ("--measured", "180mm", "240mm"),
            '--measured needs a name for the printer\n  for example: --printer "study inkjet"\n',
        ),
        (
            ("--measured", "180mm", "240mm", "--printer", "x" * 31),
            f"--printer: the name '{'x' * 31}' has 31 letters, at most 30 stand on a sheet\n"
            '  give a short one, for example "study inkjet"\n',
        ),
        (
            ("--measured", "180", "240mm", "--printer", "study inkjet"),
            "--measured: '180' has no unit\n"
            "  write the unit, for example 180 in, or set 'units:' for the whole layout\n",
        ),
        (
            (*MEASURED[1:], "--margin", "botom=4mm"),
            "--margin: 'botom' is no edge (did you mean 'bottom'?)\n"
            "  use left, right, top or bottom, for example left=4mm\n",
        ),
        (
            (*MEASURED[1:], "--margin", "left=60mm"),
            "--margin: the length must be from 0 to 50 mm\n  give for example 10 mm or 3/8 in\n",
        ),
        (
            ("--paper", "5 x 7 in"),
            "--paper is 5 x 7 in, too small for rulers by which a printer can be measured\n"
            "  measure it on larger paper: --paper a4 or --paper letter\n",
        ),
        (
            ("--list", "--paper", "a4"),
            "--list cannot be given together with these other options\n"
            "  see 'templater calibrate --help'\n",
        ),
        (
            (*MEASURED[1:], "--out", "x.pdf"),
            "--measured cannot be given together with these other options\n"
            "  see 'templater calibrate --help'\n",
        ),
        (
            ("--margin", "4mm"),
            "a page of rulers cannot be given together with these other options\n"
            "  see 'templater calibrate --help'\n",
        ),
        (
            ("--printer", "study inkjet"),
            "--printer is 'study inkjet', which has not been measured\n"
            "  measure it first: templater calibrate\n",
        ),
    ],
)
def test_what_cannot_be_is_refused_and_nothing_is_kept(
    run: Run, store: Path, words: tuple[str, ...], told: str
) -> None:
    assert run("calibrate", *words) == (2, "", told)
    assert not store.exists()
    assert list(Path.cwd().iterdir()) == []


def test_a_damaged_store_stops_every_command_that_needs_it(run: Run, store: Path) -> None:
    store.parent.mkdir(parents=True)
    store.write_text("{")
    told = (
        f"{store} is damaged: it is not JSON (Expecting property name enclosed in double quotes:"
        " line 1 column 2 (char 1))\n"
        "  mend that file, or move it away and measure again: templater calibrate\n"
    )
    kit = ("kit", str(LAYOUTS / "stair-hall.yaml"), "--out", "kit")
    for words in (("calibrate", "--list"), MEASURED, (*kit, "--printer", "study inkjet")):
        assert run(*words) == (2, "", told)
    assert store.read_text() == "{"


def test_a_kit_is_corrected_for_a_printer_by_its_name(run: Run, no_picture: str) -> None:
    run(*MEASURED, "--margin", "5mm")
    layout = str(LAYOUTS / "stair-hall.yaml")
    code, out, err = run("kit", layout, "--out", "kit", "--printer", "study inkjet")
    assert (code, err) == (0, no_picture)
    assert out.startswith("kit: revision ")
    options = json.loads(Path("kit/manifest.json").read_text("utf-8"))["options"]
    told = options["printer"]
    assert (told["name"], told["across"], told["along"]) == ("study inkjet", 1.006149, 1.003764)
    assert set(options["margin_mm"].values()) == {5.0}
    assert run("kit", layout, "--out", "kit", "--printer", "study inkjett") == (
        2,
        "",
        "--printer is 'study inkjett', which has not been measured (did you mean 'study inkjet'?)\n"
        "  known are 'study inkjet'; measure it first: templater calibrate\n",
    )


def test_a_kit_without_a_printer_needs_no_store(run: Run, no_picture: str, store: Path) -> None:
    store.parent.mkdir(parents=True)
    store.write_text("{")
    code, _, err = run("kit", str(LAYOUTS / "stair-hall.yaml"), "--out", "kit")
    assert (code, err) == (0, no_picture)
