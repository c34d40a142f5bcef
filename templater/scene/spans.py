"""Stretches of a line: where it is hidden, where it is dashed, which of many lines bunch."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from templater.drawing import Dash


def open_spans(
    taken: Iterable[tuple[float, float]], start: float, end: float
) -> list[tuple[float, float]]:
    """The parts from start to end that no taken span covers, in order."""
    spans, at = [], start
    for low, high in sorted(taken):
        if low >= end:
            break
        if low > at:
            spans.append((at, low))
        at = max(at, high)
    return [*spans, (at, end)] if end > at else spans


def dash_spans(dash: Dash, start: float, end: float) -> list[tuple[float, float]]:
    """Where a dashed line from start to end is drawn."""
    spans: list[tuple[float, float]] = []
    at = start
    while at < end:
        for index, length in enumerate(dash):
            if index % 2 == 0 and at < end:
                spans.append((at, min(at + length, end)))
            at += length
    return spans


def common_spans(
    spans: Sequence[tuple[float, float]], others: Sequence[tuple[float, float]]
) -> list[tuple[float, float]]:
    """The parts that two lists of spans share, each list in order and without overlap."""
    shared: list[tuple[float, float]] = []
    first = second = 0
    while first < len(spans) and second < len(others):
        low = max(spans[first][0], others[second][0])
        high = min(spans[first][1], others[second][1])
        if low < high:
            shared.append((low, high))
        if spans[first][1] < others[second][1]:
            first += 1
        else:
            second += 1
    return shared


def keep_apart(alongs: Sequence[float], least: float, others: Sequence[float] = ()) -> list[float]:
    """The places that do not bunch with the one before or with one of the others."""
    kept: list[float] = []
    for along in alongs:
        near = any(abs(along - other) < least for other in (*kept[-1:], *others))
        if not near:
            kept.append(along)
    return kept
