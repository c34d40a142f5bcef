"""The cautions about hooks, weights and the pull outward."""

from __future__ import annotations

from dataclasses import replace

import pytest

from templater.layout.model import Hanger, Piece, Surface
from templater.lengths import Unit
from templater.mounting.model import WeightEstimate
from templater.placement.model import Plan
from templater.rules.cautions import heavy_piece, outward_pull, weak_hook
from templater.rules.cautions.caution import Caution
from templater.rules.model import Finding, Verdict
from tests.rules.fasteners.walls import POUND, by, hook, hung_at, only, wall_of

AT = 1000.0


def told(caution: Caution, plan: Plan) -> list[Finding]:
    return list(caution.check(only(plan), plan))


def verdicts(caution: Caution, plan: Plan) -> list[Verdict]:
    return [finding.verdict for finding in told(caution, plan)]


def two_rings(kg: float | None, rating: float | None) -> Piece:
    return hung_at(AT, by(Hanger.D_RINGS, apart=200, hook=hook(rating)), kg)


def test_each_weak_hook_is_told_at_its_hole() -> None:
    # 40 lb on two hooks: 20 lb each, 40 lb asked for.
    found = told(weak_hook.CAUTION, wall_of(two_rings(40 * POUND, 30 * POUND)))
    assert [finding.verdict for finding in found] == [Verdict.CAUTION] * 2
    assert [finding.other for finding in found] == ["hole 1", "hole 2"]
    assert found[0].figure == "rated 30 lb, 40.0 lb asked for"
    assert found[0].mend == "use a stronger hook, or two"


def test_a_hook_rated_for_twice_its_load_is_kept() -> None:
    assert verdicts(weak_hook.CAUTION, wall_of(two_rings(20 * POUND, 20 * POUND))) == [Verdict.KEPT] * 2


@pytest.mark.parametrize(("kg", "rating"), [(None, 5.0), (5.0, None)])
def test_without_weight_or_rating_a_hook_is_not_checked(kg: float | None, rating: float | None) -> None:
    assert verdicts(weak_hook.CAUTION, wall_of(two_rings(kg, rating))) == [Verdict.NOT_CHECKED]


def test_a_piece_that_names_no_hook_has_none_that_is_weak() -> None:
    assert told(weak_hook.CAUTION, wall_of(hung_at(AT, by(Hanger.NAIL), 5.0))) == []


@pytest.mark.parametrize(
    ("kg", "stud", "surface", "verdict"),
    [
        (23.0, AT, Surface.DRYWALL, Verdict.KEPT),
        (23.1, AT, Surface.DRYWALL, Verdict.CAUTION),
        (23.0, None, Surface.CONCRETE, Verdict.KEPT),
        (14.0, 1200.0, Surface.DRYWALL, Verdict.KEPT),
        (14.1, 1200.0, Surface.DRYWALL, Verdict.CAUTION),
        (14.1, 1020.0, Surface.DRYWALL, Verdict.CAUTION),
        (14.1, None, None, Verdict.CAUTION),
        (None, AT, Surface.DRYWALL, Verdict.NOT_CHECKED),
    ],
)
def test_heavy_work_is_for_a_licensed_installer(
    kg: float | None, stud: float | None, surface: Surface | None, verdict: Verdict
) -> None:
    studs = () if stud is None else (stud,)
    plan = wall_of(hung_at(AT, by(Hanger.NAIL), kg), studs=studs, surface=surface)
    (found,) = told(heavy_piece.CAUTION, plan)
    assert found.verdict is verdict
    if verdict is Verdict.CAUTION:
        assert found.mend == "get a licensed installer"


def strips(kg: float) -> Piece:
    """A piece on adhesive strips."""
    return hung_at(AT, replace(by(Hanger.STRIPS), drop_mm=None, strip_rating_kg=2.0), kg)


def rail(kg: float) -> Piece:
    """A piece on a cord from a picture rail."""
    return hung_at(AT, replace(by(Hanger.RAIL), rail_mm=2300.0), kg)


@pytest.mark.parametrize(
    ("piece", "figure", "mend"),
    [
        # 23 kg, 14 kg without a stud behind every hole, 7 kg on strips; common practice, no source.
        (strips(7.0), None, None),
        (
            strips(22.0),
            "22.0 kg, more than 7 kg on adhesive strips",
            "hang it on screws in place of adhesive strips; their maker's limit goes first",
        ),
        (strips(24.0), "24.0 kg, more than 23 kg", "get a licensed installer"),
        (rail(14.0), None, None),
        (rail(22.0), "22.0 kg, more than 14 kg on a picture rail", "get a licensed installer"),
        (hung_at(AT, None, 14.0), None, None),
        (
            hung_at(AT, None, 14.1),
            "14.1 kg, more than 14 kg where it is not known by what it hangs",
            "get a licensed installer",
        ),
        (
            hung_at(AT, by(Hanger.NAIL), 22.0),
            "22.0 kg, more than 14 kg where not every hole is known to be in a stud",
            "get a licensed installer",
        ),
        # The limit that matters most is told.
        (hung_at(AT, by(Hanger.NAIL), 24.0), "24.0 kg, more than 23 kg", "get a licensed installer"),
    ],
)
def test_a_heavy_piece_without_a_firm_hole_is_told(
    piece: Piece, figure: str | None, mend: str | None
) -> None:
    plan = wall_of(piece, surface=Surface.DRYWALL, units=Unit.CENTIMETRE)
    (found,) = told(heavy_piece.CAUTION, plan)
    assert (found.verdict is Verdict.CAUTION) is (mend is not None)
    if mend is not None:
        assert (found.figure, found.mend) == (figure, mend)


@pytest.mark.parametrize(
    ("kg", "limit"), [(14.01, "30.9 lb, more than 30 lb"), (24.0, "53.0 lb, more than 50 lb")]
)
def test_in_pounds_too_it_weighs_more_than_the_limit_shown(kg: float, limit: str) -> None:
    # 14 kg = 30.86 lb, 23 kg = 50.71 lb; 14.01 kg = 30.887 lb would not be more than 31 lb.
    plan = wall_of(hung_at(AT, by(Hanger.NAIL), kg), surface=Surface.DRYWALL)
    (found,) = told(heavy_piece.CAUTION, plan)
    assert (found.figure or "").startswith(limit)


def test_of_an_estimated_weight_the_most_counts() -> None:
    plan = wall_of(hung_at(AT, by(Hanger.NAIL), 20.0), studs=(AT,))
    guessed = replace(only(plan), estimate=WeightEstimate(20.0, 16.0, 24.0))
    (found,) = heavy_piece.CAUTION.check(guessed, plan)
    assert found.verdict is Verdict.CAUTION
    # 24 kg = 52.91 lb, never shown as less.
    assert (found.figure or "").startswith("53.0 lb, more than")


def deep(out: float | None, kg: float | None = 8.0, *, hanger: Hanger = Hanger.KEYHOLES) -> Piece:
    """A case of 508 mm, hung 457.2 mm above its lower edge."""
    apart = 400.0 if hanger is Hanger.KEYHOLES else None
    return hung_at(AT, by(hanger, apart=apart), kg, stands_out=out)


def test_a_deep_case_pulls_its_screws_outward() -> None:
    # 8 kg on two: 39.227 N; x 100 / 457.2 = 8.58 N = 0.875 kg = 1.93 lb. A No. 8 screw, 1 in deep in
    # G 0.35: 2850 x 0.1225 x 0.164 = 57.257 lb = 254.69 N; in G 0.55: 2850 x 0.3025 x 0.164 =
    # 141.39 lb = 628.92 N. A pull is rounded up, what withstands it down.
    plan = wall_of(deep(200.0), studs=(800.0, 1200.0), surface=Surface.DRYWALL)
    found = told(outward_pull.CAUTION, plan)
    assert [finding.verdict for finding in found] == [Verdict.KEPT] * 2
    assert found[0].figure == "pulls outward by 2.0 lb (8.6 N)"
    assert found[0].band == "up to 57.2 lb (254.6 N); 141.3 lb (628.9 N) in hard wood"
    assert "an estimate" in (found[0].because or "")


def test_what_pulls_harder_than_the_softest_wood_holds_is_told() -> None:
    # A nail of 1.5 mm, 19.05 mm deep, G 0.35: 1380 x 0.35^2.5 x 0.05906 x 0.75 = 4.43 lb = 19.7 N.
    # 4 kg = 39.227 N x out / 2 / 457.2: 19.7 N at out = 459.3 mm.
    for out, verdict in ((458.0, Verdict.KEPT), (461.0, Verdict.CAUTION)):
        plan = wall_of(deep(out, 4.0, hanger=Hanger.NAIL), studs=(AT,), surface=Surface.DRYWALL)
        assert verdicts(outward_pull.CAUTION, plan) == [verdict]


@pytest.mark.parametrize(
    ("out", "told_of"),
    [
        # Half of 90 mm beside 457.2 mm: 0.098 of the load; of 92 mm 0.1006: 39.227 N x 0.1006 = 3.95 N,
        # 0.403 kg, 0.89 lb, each rounded up.
        (90.0, [(Verdict.KEPT, "pulls outward by 0.9 lb (3.9 N)", None)] * 2),
        (
            92.0,
            [
                (
                    Verdict.NOT_CHECKED,
                    None,
                    "ask the maker of its fastener whether it holds 0.9 lb (4.0 N) straight out",
                )
            ]
            * 2,
        ),
    ],
)
def test_where_no_stud_is_a_small_pull_is_let_pass_and_another_told(
    out: float, told_of: list[tuple[Verdict, str | None, str | None]]
) -> None:
    plan = wall_of(deep(out), studs=(100.0,), surface=Surface.DRYWALL)
    found = told(outward_pull.CAUTION, plan)
    assert [(each.verdict, each.figure, each.mend) for each in found] == told_of


@pytest.mark.parametrize(
    ("out", "kg", "stud"), [(None, 8.0, 800.0), (200.0, None, 800.0), (200.0, 8.0, 600.0)]
)
def test_what_is_not_known_is_not_checked(out: float | None, kg: float | None, stud: float) -> None:
    plan = wall_of(deep(out, kg), studs=(stud,), surface=Surface.DRYWALL)
    assert Verdict.NOT_CHECKED in verdicts(outward_pull.CAUTION, plan)


def test_a_frame_that_hangs_by_its_lower_edge_tips() -> None:
    low = replace(by(Hanger.NAIL), drop_mm=508.0)
    plan = wall_of(hung_at(AT, low, 4.0, stands_out=50.0), studs=(AT,))
    assert verdicts(outward_pull.CAUTION, plan) == [Verdict.CAUTION]


def test_a_named_hook_is_counted_on_as_deep_as_its_fastener_goes() -> None:
    # A screw of 50.8 mm through 12.7 mm of board: 38.1 mm in the wood: 57.26 lb x 1.5 = 85.88 lb.
    named = hook(50.0, needs="two screws", length=50.8)
    piece = hung_at(AT, by(Hanger.NAIL, hook=named), 4.0, stands_out=50.0)
    plan = wall_of(piece, studs=(AT,), surface=Surface.DRYWALL, board=12.7)
    (found,) = told(outward_pull.CAUTION, plan)
    assert (found.band or "").startswith("up to 85.8 lb")
