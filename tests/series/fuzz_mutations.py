"""Sound layouts made wrong by hypothesis, for as long as asked; run by hand with ``python -m``.

``python -m tests.series.fuzz_mutations MINUTES`` tells how many layouts came how far, and writes
each one that breaks the promise of ``tests.layout.journeys`` to a folder beside the others.
"""

from __future__ import annotations

import sys
from collections import Counter
from collections.abc import Sequence
from pathlib import Path
from tempfile import mkdtemp
from time import monotonic, process_time

from hypothesis import HealthCheck, Phase, given, settings
from hypothesis import strategies as st

from tests.layout.journeys import travel
from tests.layout.mutations import Step, make_layout
from tests.series.fuzz_limits import TooSlowError, within_seconds

NUMBERS = st.integers(0, 2**16)
STEPS = st.builds(Step, NUMBERS, NUMBERS, NUMBERS, NUMBERS)
ROUND = 500
"""How many layouts hypothesis draws before it starts anew."""


class _Series:
    """What became of all layouts of a series."""

    def __init__(self) -> None:
        self.reached: Counter[str] = Counter()
        self.broken: set[str] = set()
        self.folder = Path(mkdtemp(prefix="fuzz-mutations-"))
        self.slowest = (0.0, b"")

    def judge(self, content: bytes) -> None:
        """Take one layout through; what breaks the promise is kept, one of a kind."""
        begun = process_time()
        try:
            with within_seconds(5):
                self.reached[travel(content, far=sum(self.reached.values()) % 8 == 0).value] += 1
        except (Exception, TooSlowError) as error:  # whatever it is, it is what is looked for
            self._keep(content, error)
        self.slowest = max(self.slowest, (process_time() - begun, content))

    def _keep(self, content: bytes, error: BaseException) -> None:
        self.reached["promise broken"] += 1
        kind = describe(error)
        if kind not in self.broken:
            self.broken.add(kind)
            path = self.folder / f"{len(self.broken)}.yaml"
            path.write_bytes(content)
            print(f"{path}: {kind}", flush=True)  # noqa: T201


def describe(error: BaseException) -> str:
    """An error with where it was raised, so that one of a kind is known again."""
    trace = error.__traceback__
    where = []
    while trace is not None:
        code = trace.tb_frame.f_code
        if "/templater/" in code.co_filename:
            where.append(f"{Path(code.co_filename).name}:{trace.tb_lineno}")
        trace = trace.tb_next
    shown = "" if isinstance(error, TooSlowError) else f"{error!s:.300}"
    return f"{type(error).__name__} {shown} {' '.join(where[:2] if not shown else where[-4:])}"


def main(minutes: float) -> None:
    """Draw rounds of layouts until the time is over."""
    series = _Series()
    end = monotonic() + minutes * 60

    @settings(
        max_examples=ROUND,
        deadline=None,
        database=None,
        phases=[Phase.generate],
        suppress_health_check=list(HealthCheck),
    )
    @given(
        NUMBERS,
        st.lists(STEPS, min_size=1, max_size=3),
        st.lists(STEPS, max_size=2),
        st.integers(0, 3),
        st.booleans(),
    )
    def draw(
        origin: int, on_tree: Sequence[Step], on_text: Sequence[Step], chance: int, flow: bool
    ) -> None:
        if monotonic() < end:
            series.judge(make_layout(origin, on_tree, on_text if chance == 0 else (), is_flow=flow))

    begun = monotonic()
    while monotonic() < end:
        draw()
        count = sum(series.reached.values())
        rate = count / (monotonic() - begun)
        print(f"{count} layouts, {rate:.0f} a second: {dict(series.reached)}", flush=True)  # noqa: T201
    (series.folder / "slowest.yaml").write_bytes(series.slowest[1])
    print(f"slowest {series.slowest[0]:.2f} s; kept in {series.folder}")  # noqa: T201


if __name__ == "__main__":
    main(float(sys.argv[1]))
