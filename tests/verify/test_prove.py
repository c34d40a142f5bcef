"""What is no fault and passes with a note, and where it is told what was proved."""

from __future__ import annotations

import json
import re

import pikepdf

from templater.proving import prove_kit
from tests.kits import MadeKit
from tests.verify.planting import Copy


def test_a_kit_that_was_only_saved_again_passes_with_a_note(copy: Copy) -> None:
    path = copy.folder / "kit.pdf"
    before = path.read_bytes()
    with pikepdf.open(path, allow_overwriting_input=True) as document:
        document.save(path, object_stream_mode=pikepdf.ObjectStreamMode.generate, linearize=True)
    assert path.read_bytes() != before
    _, proof = prove_kit(copy.folder)
    assert proof.notes == ("kit.pdf was changed after the kit was made",)
    assert proof.holes == 5


def test_files_that_came_or_went_are_told(copy: Copy) -> None:
    (copy.folder / "templates" / "old.svg").write_text("<svg/>", encoding="utf-8")
    (copy.folder / "overview.png").unlink()
    _, proof = prove_kit(copy.folder)
    assert proof.notes == (
        "templates/old.svg does not belong to the kit",
        "overview.png is missing",
    )


def test_a_kit_of_another_version_is_told(copy: Copy) -> None:
    content = copy.manifest
    content["version"] = "0.0.9"
    copy.write_manifest(content)
    _, proof = prove_kit(copy.folder)
    (note,) = proof.notes
    assert re.fullmatch(r"made by version 0\.0\.9, proved by version \S+, which may work out .*", note)


def test_the_manifest_tells_what_was_proved(hall: MadeKit) -> None:
    proof = hall.manifest["proof"]
    assert proof["holes"] == 5
    assert 0 <= proof["farthest_mm"] < 0.001
    assert json.loads(json.dumps(proof)) == proof


def test_the_checklist_says_what_was_proved(hall: MadeKit) -> None:
    words = " ".join(run.text for run in hall.pages[-1].runs)
    assert "5 holes were re-read from this file; none is farther than 0.01 mm from the plan." in words
