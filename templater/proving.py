"""The proof of a kit: what its files must show is worked out again, then they are read back."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path

import templater
from templater.errors import LayoutError
from templater.pipeline import cut_sheets, plan_wall
from templater.sheets.compose import Kit
from templater.sheets.revision import name_revision
from templater.to_files.kit import Report, write_kit
from templater.verify.model import Expected, Proof, ProofError, Record, UnreadableError
from templater.verify.prove import prove_files
from templater.verify.read_record import read_record

_MAKE_AGAIN = "do not drill by this kit; make it again from its layout.yaml, or ask for it again"
_REPORT = "no kit is written; please report it together with the layout"


def write_proved_kit(
    kit: Kit, layout: bytes, folder: Path, *, split: bool = False, report: Report | None = None
) -> tuple[str, ...]:
    """Write a kit, read it back, and only then put it in its place; gives what the user must be told.

    ``layout`` is the layout file as it was read. Raises WriteError and ProofError; then nothing is
    left behind.
    """

    def prove(building: Path) -> dict[str, float]:
        return prove_new_kit(kit, layout, building)

    return write_kit(kit, layout, folder, prove=prove, split=split, report=report)


def prove_new_kit(kit: Kit, layout: bytes, folder: Path) -> dict[str, float]:
    """Prove a kit that was just written; gives what the manifest tells of it. Raises ProofError.

    The Plan is a pure function of the layout's text and the print options. As long as the folder
    holds just these, it need not be worked out once more.
    """
    record = _read_record(folder, _REPORT)
    if (folder / "layout.yaml").read_bytes() != layout:
        raise ProofError(["layout.yaml is not the layout that was read"], _REPORT)
    if (record.setup, record.revision) != (kit.setup, kit.revision):
        raise ProofError(["manifest.json does not tell the options that were used"], _REPORT)
    expected = Expected(kit.plan, kit.tilings, kit.setup, kit.revision)
    proof = prove_files(folder, record, expected, hint=_REPORT)
    return {"holes": proof.holes, "farthest_mm": round(proof.farthest_mm, 6)}


def prove_kit(folder: Path) -> tuple[Record, Proof]:
    """Prove a kit that was received, from nothing but what is in its folder. Raises ProofError."""
    record = _read_record(folder, _MAKE_AGAIN)
    expected = _work_out(folder, record)
    notes = tuple(_tell_versions(record, expected))
    expected = replace(expected, revision=record.revision)
    try:
        proof = prove_files(folder, record, expected, hint=_MAKE_AGAIN)
    except ProofError as error:
        raise ProofError([*notes, *(fault.message for fault in error.faults)], _MAKE_AGAIN) from error
    return record, replace(proof, notes=(*notes, *proof.notes))


def _read_record(folder: Path, hint: str) -> Record:
    try:
        return read_record(folder)
    except UnreadableError as error:
        raise ProofError([f"{folder}: {error}"], hint) from error


def _work_out(folder: Path, record: Record) -> Expected:
    """The Plan, the sheets and the revision, by this version of the program."""
    try:
        wall = plan_wall((folder / "layout.yaml").read_bytes(), "layout.yaml")
        tilings = cut_sheets(wall, record.setup, max(len(record.pages), 1))
    except OSError as error:
        message = f"layout.yaml: it cannot be read: {error.strerror or error}"
        raise ProofError([message], _MAKE_AGAIN) from error
    except LayoutError as error:
        told = [f"layout.yaml does not hold: {fault.message}" for fault in error.faults]
        raise ProofError([*_tell_other_version(record), *told], _MAKE_AGAIN) from error
    revision = name_revision(wall.plan, record.setup, record.version)
    return Expected(wall.plan, tilings, record.setup, revision)


def _tell_versions(record: Record, expected: Expected) -> Iterator[str]:
    """Whether this version works out the same plan. Raises ProofError where it must and does not."""
    is_same = expected.revision == record.revision
    if record.version == templater.__version__ and not is_same:
        message = (
            f"manifest.json: its revision is {record.revision}, but layout.yaml and the options give"
            f" {expected.revision}"
        )
        raise ProofError([message], _MAKE_AGAIN)
    for told in _tell_other_version(record):
        same = "works out the same plan" if is_same else "may work out another plan"
        yield f"{told}, which {same}"


def _tell_other_version(record: Record) -> Iterator[str]:
    if record.version != templater.__version__:
        made_by = record.version or "unknown"
        yield f"made by version {made_by}, proved by version {templater.__version__}"
