"""Kits of the shipped layouts, each made once a session, and the command line in an empty folder."""

from __future__ import annotations

import signal
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import TypeAlias

import pytest
from hypothesis import settings

from templater.to_files.held_signals import ENDING_SIGNALS
from tests.kits import LAYOUTS, NO_PICTURE, STEMS, MadeKit, make_kit, without_picture
from tests.running import Run, make_run

# No test is timed: a loaded machine would fail it.
settings.register_profile("any machine", deadline=None)
settings.load_profile("any machine")

KitMaker: TypeAlias = Callable[[str, str], MadeKit]
OWN = "own paper"
PAPERS = ("a4", "letter", "roll 24 in")
ON_EVERY_PAPER = ("gallery-landing", "lamp-room-corridor", "stair-hall")
PAIRS = tuple(
    (stem, paper) for stem in STEMS for paper in (PAPERS if stem in ON_EVERY_PAPER else (OWN,))
)


@pytest.fixture(scope="session", autouse=True)
def _signals_are_heeded() -> Iterator[None]:
    """Signals end a run here too where a shell that starts the tests in the background ignores them."""
    before = {number: signal.getsignal(number) for number in ENDING_SIGNALS}
    for number in before:
        signal.signal(number, signal.SIG_DFL)
    signal.signal(signal.SIGINT, signal.default_int_handler)
    yield
    for number, handler in before.items():
        signal.signal(number, handler)


def make_shipped_kit(stem: str, paper: str, folder: Path) -> MadeKit:
    """The kit of a shipped layout on a paper; on one paper of each with the overview's picture."""
    layout = LAYOUTS / f"{stem}.yaml"
    picture = paper in (OWN, "letter")
    return make_kit(layout, folder, None if paper == OWN else paper, picture=picture)


@pytest.fixture(scope="session")
def shipped_kit(tmp_path_factory: pytest.TempPathFactory) -> KitMaker:
    """The kit of a shipped layout on a paper, made when first asked for."""
    made: dict[tuple[str, str], MadeKit] = {}

    def make(stem: str, paper: str) -> MadeKit:
        if (stem, paper) not in made:
            folder = tmp_path_factory.mktemp("kits") / stem
            made[stem, paper] = make_shipped_kit(stem, paper, folder)
        return made[stem, paper]

    return make


@pytest.fixture
def hall(shipped_kit: KitMaker) -> MadeKit:
    """The stair hall's kit on Letter: 27 pages or so, four pieces, five holes."""
    return shipped_kit("stair-hall", "letter")


@pytest.fixture(params=PAIRS, ids=lambda pair: "-on-".join(pair).replace(" ", "-"))
def kit(request: pytest.FixtureRequest, shipped_kit: KitMaker) -> MadeKit:
    """Each shipped layout, some on A4, on Letter and on a roll, the others on their own paper."""
    return shipped_kit(*request.param)


@pytest.fixture
def no_picture() -> Iterator[str]:
    """Kits come without the overview's picture; gives the line that says so."""
    with without_picture():
        yield f"{NO_PICTURE}\n"


@pytest.fixture
def run(capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> Run:
    """Run the command line in an empty folder."""
    monkeypatch.chdir(tmp_path)
    return make_run(capsys, monkeypatch)
