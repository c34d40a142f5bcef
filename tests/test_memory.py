"""What was worked out last is given again for the same objects, and for no others."""

from __future__ import annotations

from templater.memory import remember_last


def test_only_the_very_same_objects_are_remembered() -> None:
    asked: list[tuple[object, ...]] = []

    @remember_last
    def count(*things: list[int]) -> int:
        asked.append(things)
        return sum(map(sum, things))

    first, second, like_the_first = [1, 2], [3], [1, 2]
    assert [count(first, second), count(first, second), count(first, second)] == [6, 6, 6]
    assert len(asked) == 1
    assert count(like_the_first, second) == 6
    assert count(first, second) == 6
    assert len(asked) == 3
