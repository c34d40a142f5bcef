"""How much paper the shipped layouts take with each cover, shared sheets included, and on a roll.

Run by hand: ``python -m tests.benchmarks.covers``.

Of a roll: its length with every template on sheets of its own, its length with all nested, and the
area of all sheets by what the roll shows across, which no nesting of these sheets goes below.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from templater.geometry import Size
from templater.paper import parse_paper
from templater.pipeline import PrintChoices, cut_sheets, read_wall, set_up_print
from templater.printing.model import Coverage, PrintSetup
from templater.sheets.share import count_all_sheets, share_pages
from tests.kits import LAYOUTS, STEMS

_ROLLS = ("roll 24 in", "roll 36 in")


def count_by_cover(stem: str) -> tuple[str, dict[Coverage, int], int, int]:
    """A layout's paper, its sheets with each cover; how many pieces share how many sheets."""
    wall = read_wall(LAYOUTS / f"{stem}.yaml")
    setup = set_up_print(wall.layout, PrintChoices())
    tilings = cut_sheets(wall, setup)
    counts = count_all_sheets(wall.plan, tilings, setup, share_pages(wall.plan, tilings, setup))
    totals = {cover: counts.total(cover) for cover in Coverage}
    return setup.paper.name, totals, len(counts.shared), len(set(counts.shared.values()))


def measure_roll(stem: str, roll: str) -> tuple[int, int, float, float, float]:
    """Sheets nested and in all; the roll's length apart, nested, and its bound, mm."""
    wall = read_wall(LAYOUTS / f"{stem}.yaml")
    setup = replace(set_up_print(wall.layout, PrintChoices()), paper=parse_paper(roll))
    tilings = cut_sheets(wall, setup)
    pages = share_pages(wall.plan, tilings, setup)
    shared = {slug for page in pages for slug in page.slugs}
    apart = {slug: [tile.page for tile in tiling.tiles] for slug, tiling in tilings.items()}
    nested = [page.sheet.page for page in pages]
    nested += [size for slug, sizes in apart.items() if slug not in shared for size in sizes]
    area = sum(
        cutting.tile.clip.width * cutting.tile.clip.height for page in pages for cutting in page.cuttings
    )
    area += sum(
        tile.clip.width * tile.clip.height
        for slug, tiling in tilings.items()
        if slug not in shared
        for tile in tiling.tiles
    )
    return (
        sum(len(page.cuttings) for page in pages),
        sum(map(len, apart.values())),
        _measure_length([size for sizes in apart.values() for size in sizes], setup),
        _measure_length(nested, setup),
        area / setup.printable(setup.paper.size).width,
    )


def _measure_length(pages: Sequence[Size], setup: PrintSetup) -> float:
    """How much of a roll pages take that are as wide as it, this way or that, mm."""
    return sum(page.width * page.height for page in pages) / setup.paper.size.width


def print_tables() -> None:
    """Print every layout, then the sums."""
    print(f"{'layout':<20} {'paper':<7} {'full':>5} {'band':>5} {'card':>5}  shared")  # noqa: T201
    sums = dict.fromkeys(Coverage, 0)
    for stem in STEMS:
        paper, totals, pieces, pages = count_by_cover(stem)
        sums = {cover: sums[cover] + count for cover, count in totals.items()}
        figures = " ".join(f"{totals[cover]:>5}" for cover in Coverage)
        print(f"{stem:<20} {paper:<7} {figures}  {pieces} on {pages}")  # noqa: T201
    print(f"{'all':<28} " + " ".join(f"{sums[cover]:>5}" for cover in Coverage))  # noqa: T201
    head = f"{'layout':<20} {'roll':<11} {'nested':>7} {'apart':>7} {'nested':>7} {'bound':>7}"
    print(f"\n{head} mm")  # noqa: T201
    for roll in _ROLLS:
        sums_mm = [0.0, 0.0, 0.0]
        for stem in STEMS:
            nested, sheets, *lengths = measure_roll(stem, roll)
            sums_mm = [total + length for total, length in zip(sums_mm, lengths, strict=True)]
            told = " ".join(f"{length:>7.0f}" for length in lengths)
            print(f"{stem:<20} {roll:<11} {f'{nested}/{sheets}':>7} {told}")  # noqa: T201
        told = " ".join(f"{length:>7.0f}" for length in sums_mm)
        print(f"{'all':<20} {roll:<11} {'':>7} {told}")  # noqa: T201


if __name__ == "__main__":
    print_tables()
