import pytest

from templater.quoting import find_nearest, list_words, quote, suggest


@pytest.mark.parametrize(
    ("text", "shown"),
    [
        ("boot bench", "'boot bench'"),
        ("5' 7 in", '"5\' 7 in"'),
        ("a\u202eb\n", "'a\\u202eb\\n'"),
        ("x" * 61, f"'{'x' * 59}…'"),
    ],
)
def test_quote(text: str, shown: str) -> None:
    assert quote(text) == shown


def test_list_words() -> None:
    assert list_words(["wire"]) == "wire"
    assert list_words(["wire", "nail"]) == "wire or nail"
    assert list_words(["left", "centre", "right"], "and") == "left, centre and right"


def test_the_nearest_word_is_suggested_whatever_its_case() -> None:
    known = ["Boot bench", "window seat"]
    assert find_nearest("boot bnch", known) == "Boot bench"
    assert find_nearest("anchor", known) is None
    assert find_nearest("boot bench" * 100, known) is None
    assert suggest("Boot bench") == " (did you mean 'Boot bench'?)"
    assert suggest(None) == ""
