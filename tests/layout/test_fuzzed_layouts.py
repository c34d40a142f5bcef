"""Sound layouts made wrong: whatever becomes of them, they end in success or in faults to mend.

The same for longer, and guided by coverage: ``tests/series/fuzz_mutations.py``, ``fuzz_coverage.py``.
"""

from __future__ import annotations

from collections.abc import Sequence

from hypothesis import given, settings
from hypothesis import strategies as st

from templater.layout.read import read_layout
from tests.layout.journeys import travel
from tests.layout.mutations import SOUND, Step, make_layout

NUMBERS = st.integers(0, 2**16)
STEPS = st.lists(st.builds(Step, NUMBERS, NUMBERS, NUMBERS, NUMBERS), min_size=1, max_size=3)


@settings(max_examples=30, deadline=None)
@given(NUMBERS, STEPS, st.booleans())
def test_a_changed_tree_ends_in_success_or_faults(
    origin: int, on_tree: Sequence[Step], is_flow: bool
) -> None:
    travel(make_layout(origin, on_tree, is_flow=is_flow), far=False, search=False)


@settings(max_examples=30, deadline=None)
@given(NUMBERS, STEPS)
def test_a_changed_text_ends_in_success_or_faults(origin: int, on_text: Sequence[Step]) -> None:
    travel(make_layout(origin, (), on_text), far=False, search=False)


def test_what_mutations_start_from_is_read_in_either_style() -> None:
    for origin in range(len(SOUND)):
        for is_flow in (False, True):
            content = make_layout(origin, (), is_flow=is_flow)
            assert read_layout(content, "hall.yaml").faults == (), content
