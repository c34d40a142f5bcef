"""Mutation testing: how many small changes of a room's code its tests notice.

``pip install cosmic-ray``, then for example ``python -m tests.series.mutants mounting --sample 350``.
Each change is tried in a fork of one pytest session, on those tests of the room that enter the
changed function, the shortest first. A test that fails has noticed, and so have tests that take more
than three times their time. With ``--kits`` a change of the proof alone is tried on kits made before it;
``--again`` without it then tries the survivors while kits are made, too.
"""

from __future__ import annotations

import argparse
import cProfile
import json
import math
import os
import resource
import sys
import tempfile
import time
import traceback
from collections import Counter
from collections.abc import Callable
from functools import partial
from pathlib import Path
from types import CodeType

import pytest
from hypothesis import HealthCheck, Phase, settings

from tests.series.kept_kits import keep_kits, make_shipped_kits
from tests.series.mutations import ROOT, Mutant, draw, find_change, find_mutants

KILLED, SURVIVED, TIMED_OUT, NOT_TRIED = "killed", "survived", "timed out", "not tried"
SPARE_S = 10
MEMORY = 4 << 30
OPTIONS = ("-q", "-s", "-p", "no:cacheprovider", "-W", "ignore::pytest.PytestAssertRewriteWarning")


class Trial:
    """A pytest plugin that tries mutants instead of running tests."""

    def __init__(self, mutants: list[Mutant], outcomes: dict[Mutant, str], kits: Path | None) -> None:
        self.mutants = mutants
        self.outcomes = outcomes
        self.kits = kits

    def pytest_runtestloop(self, session: pytest.Session) -> bool:
        """Run the tests once to see what each enters, then once a mutant those that matter."""
        if self.kits is not None:
            keep_kits(self.kits)
            _leave_no_trace(partial(make_shipped_kits, self.kits))
        entered = _watch_tests(session)
        for mutant in self.mutants:
            change = find_change(mutant)
            if change is None:
                self.outcomes[mutant] = NOT_TRIED
                continue
            path = str(ROOT / mutant.path)
            tests = sorted(
                (seconds, key)
                for key, (seconds, names) in entered.items()
                if any(path == each and change.name in (None, name) for each, name in names)
            )
            limit = 3 * sum(seconds for seconds, _ in tests) + SPARE_S
            self.tell(mutant, _try(session, [key for _, key in tests], limit, change.put_in))
        return True

    def tell(self, mutant: Mutant, outcome: str) -> None:
        """Keep an outcome and show it if nobody noticed."""
        self.outcomes[mutant] = outcome
        if outcome in (SURVIVED, TIMED_OUT):
            print(f"[{len(self.outcomes)}] {outcome}: {mutant.describe()}", flush=True)  # noqa: T201


def _run(item: pytest.Item, following: pytest.Item | None) -> bool:
    """Whether a test passes."""
    from _pytest.runner import runtestprotocol

    return not any(each.failed for each in runtestprotocol(item, log=False, nextitem=following))


def _watch_tests(session: pytest.Session) -> dict[int, tuple[float, set[tuple[str, str]]]]:
    """Each test's CPU seconds and the functions it enters, seen in a fork that leaves no trace."""
    with tempfile.NamedTemporaryFile("r+") as notes:

        def watch() -> None:
            seen = {key: _watch(session, key) for key in range(len(session.items))}
            Path(notes.name).write_text(json.dumps(seen))

        _leave_no_trace(watch)
        read = json.loads(Path(notes.name).read_text())
    return {
        int(key): (seconds, {(path, name) for path, name in names})
        for key, (seconds, names) in read.items()
    }


def _leave_no_trace(act: Callable[[], None]) -> None:
    """Do something in a fork."""
    if os.fork() == 0:
        try:
            act()
        except BaseException:
            traceback.print_exc()
        finally:
            os._exit(0)
    os.wait()


def _watch(session: pytest.Session, key: int) -> tuple[float, list[tuple[str, str]]]:
    """One test's CPU seconds and functions; none of a test that fails as it is."""
    items, started = session.items, time.process_time()
    profile = cProfile.Profile()
    passed = profile.runcall(_run, items[key], items[key + 1] if key + 1 < len(items) else None)
    if not passed:
        sys.stderr.write(f"left out, since it fails without any change: {items[key].nodeid}\n")
        return 0.0, []
    entered = [each.code for each in profile.getstats() if isinstance(each.code, CodeType)]
    names = {(code.co_filename, code.co_qualname.split(".<locals>")[0]) for code in entered}
    return time.process_time() - started, [name for name in names if "templater" in name[0]]


def _try(session: pytest.Session, tests: list[int], limit: float, put: Callable[[], None]) -> str:
    """Run tests in a fork in which a change was put in."""
    child = os.fork()
    if child == 0:
        status = 1
        try:
            resource.setrlimit(resource.RLIMIT_CPU, (int(limit), int(limit)))
            resource.setrlimit(resource.RLIMIT_AS, (MEMORY, MEMORY))
            os.dup2(os.open(os.devnull, os.O_WRONLY), 1)
            os.dup2(1, 2)
            put()
            items = [session.items[key] for key in tests]
            after = [*items[1:], None]
            status = 0 if all(map(_run, items, after)) else 1
        finally:
            os._exit(status)
    _, ended = os.waitpid(child, 0)
    if os.WIFSIGNALED(ended):
        return TIMED_OUT
    return SURVIVED if os.WEXITSTATUS(ended) == 0 else KILLED


def give_interval(killed: int, tried: int) -> tuple[float, float]:
    """The 95 % interval of a share (E. B. Wilson, 1927)."""
    z = 1.96
    share, square = killed / tried, z * z / tried
    half = z * math.sqrt(share * (1 - share) / tried + square / (4 * tried))
    return (share + square / 2 - half) / (1 + square), (share + square / 2 + half) / (1 + square)


def load_profile() -> None:
    """Let hypothesis draw the same examples for every mutant, and stop at the first that fails."""
    settings.register_profile(
        "mutants",
        derandomize=True,
        database=None,
        deadline=None,
        phases=(Phase.explicit, Phase.generate),
        suppress_health_check=list(HealthCheck),
    )
    settings.load_profile("mutants")


def format_score(room: str, outcomes: dict[Mutant, str]) -> str:
    """How many mutants were tried and noticed, in one line."""
    count = Counter(outcomes.values())
    noticed = count[KILLED] + count[TIMED_OUT]
    tried = noticed + count[SURVIVED]
    low, high = give_interval(noticed, tried)
    return (
        f"{room}: {tried} mutants, {count[KILLED]} killed, {count[TIMED_OUT]} timed out, "
        f"{count[SURVIVED]} survived: {noticed / tried:.1%} noticed (95 %: {low:.1%} to {high:.1%}); "
        f"{count[NOT_TRIED]} more change only classes"
    )


def read_arguments() -> argparse.Namespace:
    """What is asked for on the command line."""
    reader = argparse.ArgumentParser(description=__doc__)
    reader.add_argument("room", help="a folder of templater, for example mounting")
    reader.add_argument("--modules", default="*", help="only those of such a name, for example 'wire*'")
    reader.add_argument("--sample", type=int, default=10**9, help="so many, drawn at random")
    reader.add_argument("--seed", type=int, default=6)
    reader.add_argument("--tests", nargs="+", help="the room's own unless given")
    reader.add_argument("--save", type=Path, help="write the outcomes here, JSON")
    reader.add_argument("--again", type=Path, help="outcomes saved before: try only the survivors again")
    reader.add_argument("--kits", type=Path, help="keep kits here, for changes that draw nothing")
    return reader.parse_args()


def main() -> int:
    """Try a sample of a room's mutants, show those that survive, and give the score."""
    asked = read_arguments()
    asked.kits = asked.kits and asked.kits.absolute()
    asked.save = asked.save and asked.save.absolute()
    asked.again = asked.again and asked.again.absolute()
    os.chdir(ROOT)
    outcomes: dict[Mutant, str] = {}
    if asked.again:
        outcomes = {Mutant(*row): outcome for *row, outcome in json.loads(asked.again.read_text())}
        mutants = [mutant for mutant, outcome in outcomes.items() if outcome == SURVIVED]
    else:
        every = find_mutants(f"{asked.room}/**/{asked.modules}.py")
        mutants = draw(every, asked.sample, asked.seed)
        print(f"{len(mutants)} of {len(every)} mutants", flush=True)  # noqa: T201
    load_profile()
    pytest.main(
        [*OPTIONS, *(asked.tests or [f"tests/{asked.room}"])],
        plugins=[Trial(mutants, outcomes, asked.kits)],
    )
    if asked.save:
        rows = [[m.path, m.operator, m.occurrence, m.line, told] for m, told in outcomes.items()]
        asked.save.write_text(json.dumps(rows))
    print(format_score(asked.room, outcomes))  # noqa: T201
    return 0


if __name__ == "__main__":
    sys.exit(main())
