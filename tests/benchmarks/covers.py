"""How much paper the shipped layouts take with each cover, shared sheets included, and on a roll.

Run by hand: ``python -m tests.benchmarks.covers``.

A bound holds for every way to lay templates side by side on a roll without turning them: their area
by the roll's width, and the heights of those wider than half of it, which nothing of their kind can
stand beside.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from templater.geometry import Size
from templater.paper import parse_paper
from templater.pipeline import PrintChoices, cut_sheets, read_wall, set_up_print
from templater.printing.model import Coverage
from templater.sheets.share import count_all_sheets, share_pages
from tests.kits import LAYOUTS, STEMS

_ROLLS = ("roll 24 in", "roll 36 in")


def bound_length(sizes: Sequence[Size], width: float) -> float:
    """No shorter piece of a roll of this width holds all sizes, mm."""
    area = sum(size.width * size.height for size in sizes) / width
    return max(area, sum(size.height for size in sizes if size.width > width / 2))


def count_by_cover(stem: str) -> tuple[str, dict[Coverage, int], int, int]:
    """A layout's paper, its sheets with each cover; how many pieces share how many sheets."""
    wall = read_wall(LAYOUTS / f"{stem}.yaml")
    setup = set_up_print(wall.layout, PrintChoices())
    tilings = cut_sheets(wall, setup)
    counts = count_all_sheets(wall.plan, tilings, setup, share_pages(wall.plan, tilings, setup))
    totals = {cover: counts.total(cover) for cover in Coverage}
    return setup.paper.name, totals, len(counts.shared), len(set(counts.shared.values()))


def measure_roll(stem: str, roll: str) -> tuple[int, int, float, float]:
    """Pieces nested and in all; how far down a roll they reach, and the bound, mm."""
    wall = read_wall(LAYOUTS / f"{stem}.yaml")
    setup = replace(set_up_print(wall.layout, PrintChoices()), paper=parse_paper(roll))
    pages = share_pages(wall.plan, cut_sheets(wall, setup), setup)
    sizes = [cutting.size for page in pages for cutting in page.cuttings]
    reach = sum(
        page.sheet.clip.y1
        - min(cutting.tile.clip.moved(*cutting.tile.origin).y0 for cutting in page.cuttings)
        for page in pages
    )
    bound = bound_length(sizes, setup.printable(setup.paper.size).width) if sizes else 0.0
    return len(sizes), len(wall.plan.pieces), reach, bound


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
    print(f"\n{'layout':<20} {'roll':<11} {'nested':>7} {'mm':>6} {'bound':>6} gap")  # noqa: T201
    for roll in _ROLLS:
        for stem in STEMS:
            nested, pieces, reach, bound = measure_roll(stem, roll)
            gap = f"{reach / bound - 1:.0%}" if bound else "-"
            told = f"{f'{nested}/{pieces}':>7} {reach:>6.0f} {bound:>6.0f} {gap}"
            print(f"{stem:<20} {roll:<11} {told}")  # noqa: T201


if __name__ == "__main__":
    print_tables()
