"""Reads a kit again, every file of it, and holds it against the Plan."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from functools import partial
from hashlib import sha256
from pathlib import Path

from templater.verify.check_hooks import check_hooks
from templater.verify.check_pdf import check_kit_pdf, check_overview_pdf, check_split_pdf
from templater.verify.check_record import check_record, list_shared
from templater.verify.check_svg import OverviewReading, check_template
from templater.verify.model import (
    Expected,
    Findings,
    Proof,
    ProofError,
    Record,
    UnreadableError,
)

_MOST_TOLD = 10


def prove_files(folder: Path, record: Record, expected: Expected, *, hint: str) -> Proof:
    """Read every file of a kit and hold it against the Plan. Raises ProofError, with that hint."""
    plan, overview = expected.plan, OverviewReading(folder / "overview.svg", expected)
    checks: list[tuple[str, Callable[[], Findings]]] = [
        ("manifest.json", partial(_of_words, lambda: check_record(record, expected))),
        ("hooks.csv", partial(_of_words, lambda: check_hooks(folder / "hooks.csv", plan))),
        ("kit.pdf", partial(check_kit_pdf, folder / "kit.pdf", record, expected)),
        ("overview.pdf", partial(check_overview_pdf, folder / "overview.pdf", record, expected)),
        ("overview.svg", overview.check_drawing),
    ]
    if (picture := folder / "overview.png").exists():
        checks.append((picture.name, partial(overview.check_picture, picture)))
    shared = list_shared(record)
    for piece in plan.pieces:
        drawing, split = (f"templates/{piece.slug}.{ending}" for ending in ("svg", "pdf"))
        is_shared = piece.slug in shared
        checks.append(
            (
                drawing,
                partial(check_template, folder / drawing, piece.slug, expected, is_shared=is_shared),
            )
        )
        if split in record.files:
            checks.append((split, partial(check_split_pdf, folder / split, piece.slug, expected)))
    found = Findings.gather(_say_where(name, check) for name, check in checks)
    if found.faults:
        raise ProofError(_shorten(found.faults), hint)
    return Proof(
        plan.hole_count, max(found.offsets_mm, default=0.0), tuple(_compare_hashes(folder, record))
    )


def _of_words(check: Callable[[], Iterator[str]]) -> Findings:
    return Findings(tuple(check()))


def _say_where(name: str, check: Callable[[], Findings]) -> Findings:
    """What a check found, each fault with the file that it is in."""
    try:
        found = check()
    except UnreadableError as error:
        found = Findings((str(error),))
    except OSError as error:
        found = Findings((f"it cannot be read: {error.strerror or error}",))
    return Findings(tuple(f"{name}: {fault}" for fault in found.faults), found.offsets_mm)


def _shorten(faults: tuple[str, ...]) -> list[str]:
    more = len(faults) - _MOST_TOLD
    return [*faults[:_MOST_TOLD], *([f"and {more} more"] if more > 0 else [])]


def _compare_hashes(folder: Path, record: Record) -> Iterator[str]:
    """Which files are not as they were when the kit was made."""
    present = {
        path.relative_to(folder).as_posix(): path
        for path in sorted(folder.rglob("*"))
        if path.is_file() and not path.is_symlink()
    }
    for name, path in present.items():
        if name == "manifest.json":
            continue
        if name not in record.files:
            yield f"{name} does not belong to the kit"
        elif sha256(path.read_bytes()).hexdigest() != record.files[name]:
            yield f"{name} was changed after the kit was made"
    for name in sorted(set(record.files) - set(present)):
        yield f"{name} is missing"
