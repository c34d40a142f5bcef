from __future__ import annotations

from hypothesis import given
from hypothesis import strategies as st

from templater.scene.spans import common_spans, dash_spans, keep_apart, open_spans

spans = st.lists(st.tuples(st.integers(-5, 30), st.integers(0, 8)), max_size=8).map(
    lambda pairs: [(float(at), float(at + length)) for at, length in pairs]
)


@given(spans)
def test_open_spans_are_what_no_span_covers(taken: list[tuple[float, float]]) -> None:
    free = open_spans(taken, 0.0, 25.0)
    for step in range(100):
        at = step / 4 + 0.125
        covered = any(low < at < high for low, high in taken)
        assert any(low < at < high for low, high in free) == (not covered)


def test_dashes_and_what_they_share_with_the_open_part() -> None:
    dashes = dash_spans((4.0, 1.0), 0.0, 12.0)
    assert dashes == [(0.0, 4.0), (5.0, 9.0), (10.0, 12.0)]
    assert common_spans(dashes, [(3.0, 6.0), (11.0, 20.0)]) == [(3.0, 4.0), (5.0, 6.0), (11.0, 12.0)]


def test_places_that_bunch_with_the_last_one_kept_are_dropped() -> None:
    assert keep_apart([0.0, 0.5, 1.2, 5.0, 9.0], 1.0, [9.4]) == [0.0, 1.2, 5.0]
