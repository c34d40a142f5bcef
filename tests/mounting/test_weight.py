from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from templater.geometry import Size
from templater.layout.model import MadeOf, Material, Moulding, Sheet, Wood
from templater.mounting.weight import estimate_weight, find_thickness

SIZE = Size(600, 800)


def kilograms(size: Size = SIZE, *, glazing: Sheet | None = None, backing: Sheet | None = None) -> float:
    return estimate_weight(MadeOf(glazing, None, backing), size).kg


def test_glass_and_acrylic() -> None:
    # EN 572 as restated (seen): 2.5 kg a square metre and mm: 0.48 m2 x 2 mm = 2.400 kg. Acrylic at
    # 1.19 (seen) x 0.48 x 2 = 1.142 kg, 0.476 of it.
    glass = kilograms(glazing=Sheet(Material.GLASS, 2))
    acrylic = kilograms(glazing=Sheet(Material.ACRYLIC, 2))
    assert glass == pytest.approx(2.400)
    assert acrylic == pytest.approx(1.142, abs=5e-4)
    assert acrylic / glass == pytest.approx(0.476)


def test_glass_in_inches() -> None:
    # 16 x 20 in = 0.4064 x 0.508 m, 2.5 mm: 0.2064512 x 6.25 = 1.290 kg.
    glass = kilograms(Size(406.4, 508), glazing=Sheet(Material.GLASS, 2.5))
    assert glass == pytest.approx(1.290, abs=5e-4)


def test_a_framed_picture() -> None:
    # Glass 2.400 + mat 0.9 x 0.48 = 0.432 (0.9 from memory) + MDF 3 mm at 750 (seen) x 0.48 = 1.080
    # + 2.8 m x 30 x 20 mm at 510 (Scots pine, seen) = 0.8568: together 4.769 kg.
    estimate = estimate_weight(
        MadeOf(
            Sheet(Material.GLASS, 2),
            Sheet(Material.MAT, plies=4),
            Sheet(Material.MDF, 3),
            Moulding(Wood.PINE, 30, 20),
        ),
        SIZE,
    )
    assert estimate.kg == pytest.approx(4.769, abs=5e-4)
    # Low: the sheets 540 x 740 = 0.3996 m2: glass 5 kg/m2, mat 0.9 x 0.85, MDF 3 mm at 500; two
    # thirds of the moulding at 510 x 0.85: 1.998 + 0.305694 + 0.5994 + 0.48552 = 3.388614.
    assert estimate.low_kg == pytest.approx(3.388614, abs=1e-5)
    # High: glass 2563 x 2 mm = 5.126 kg/m2, mat 0.9 x 1.15, MDF at 1000, all of the moulding at
    # 510 x 1.15: 2.46048 + 0.4968 + 1.44 + 0.98532 = 5.3826.
    assert estimate.high_kg == pytest.approx(5.3826, abs=1e-5)


def test_what_is_not_there_weighs_nothing() -> None:
    assert kilograms() == 0
    assert kilograms(glazing=Sheet(Material.NONE), backing=Sheet(Material.NONE)) == 0


def test_foam_board() -> None:
    # 5 mm weigh 0.5 to 0.7 kg a square metre (from memory): 0.6 x 0.48 = 0.288 kg.
    estimate = estimate_weight(MadeOf(backing=Sheet(Material.FOAM, 5)), SIZE)
    assert estimate.kg == pytest.approx(0.288)
    assert [estimate.low_kg, estimate.high_kg] == pytest.approx([0.24, 0.336])


def test_glass_is_2_mm_and_3_where_it_is_wider_than_a_metre() -> None:
    # A framer's page (seen): picture.gb.com/html/glazing.php.
    assert find_thickness(Sheet(Material.GLASS), Size(600, 400)) == 2
    assert find_thickness(Sheet(Material.GLASS), Size(1000, 700)) == 2
    assert find_thickness(Sheet(Material.GLASS), Size(1001, 700)) == 3
    assert find_thickness(Sheet(Material.GLASS, 4), Size(1001, 700)) == 4


def test_a_moulding_that_covers_its_sheets() -> None:
    # 60 wide on a frame of 100 x 800 leaves no glass in sight: at least it weighs as the moulding
    # alone does, two thirds of 1.8 m x 60 x 20 mm at 510 x 0.85: 0.6242 kg.
    frame = Moulding(Wood.PINE, 60, 20)
    estimate = estimate_weight(MadeOf(Sheet(Material.GLASS, 2), None, None, frame), Size(100, 800))
    assert estimate.low_kg == pytest.approx(0.62424)
    wide = estimate_weight(MadeOf(Sheet(Material.GLASS, 2), None, None, frame), Size(800, 100))
    assert wide.low_kg == pytest.approx(0.62424)


@pytest.mark.parametrize(
    ("wood", "low", "usual", "high"),
    [
        # Kilograms a cubic metre, entered a second time from the published tables; where they give
        # one value, 15 % to each side: 390 x 0.85 = 331.5, 390 x 1.15 = 448.5.
        (Wood.OBECHE, 331.5, 390, 448.5),
        (Wood.RAMIN, 569.5, 670, 770.5),
        (Wood.PINE, 433.5, 510, 586.5),
        (Wood.RADIATA, 408, 480, 552),
        (Wood.SPRUCE, 382.5, 450, 517.5),
        (Wood.BASSWOOD, 320, 455, 590),
        (Wood.POPLAR, 350, 425, 500),
        (Wood.BEECH, 700, 800, 900),
        (Wood.RED_OAK, 629, 740, 851),
        (Wood.WHITE_OAK, 654.5, 770, 885.5),
        (Wood.WALNUT, 630, 665, 700),
    ],
)
def test_the_woods(wood: Wood, low: float, usual: float, high: float) -> None:
    # 4 m of moulding, 25 mm square: 2.5 litres; two thirds of it at least.
    estimate = estimate_weight(MadeOf(moulding=Moulding(wood, 25, 25)), Size(1200, 800))
    assert estimate.kg == pytest.approx(usual * 0.0025)
    assert estimate.low_kg == pytest.approx(low * 0.0025 * 2 / 3)
    assert estimate.high_kg == pytest.approx(high * 0.0025)


def test_acrylic_lies_between_1180_and_1200_kilograms_a_cubic_metre() -> None:
    # 0.48 m2 x 5 mm = 2.4 litres.
    estimate = estimate_weight(MadeOf(Sheet(Material.ACRYLIC, 5)), SIZE)
    assert [estimate.low_kg, estimate.kg, estimate.high_kg] == pytest.approx([2.832, 2.856, 2.88])


@given(
    st.builds(Size, st.floats(50, 2000), st.floats(50, 2000)),
    st.sampled_from([Sheet(Material.GLASS), Sheet(Material.ACRYLIC, 3), Sheet(Material.NONE)]),
    st.integers(1, 8).map(lambda plies: Sheet(Material.MAT, plies=plies)),
    st.sampled_from([Sheet(Material.MDF, 3), Sheet(Material.FOAM, 5)]),
    st.builds(Moulding, st.sampled_from(Wood), st.floats(5, 100), st.floats(5, 60)),
)
def test_the_estimate_lies_within_its_range(
    size: Size, glazing: Sheet, mat: Sheet, backing: Sheet, moulding: Moulding
) -> None:
    estimate = estimate_weight(MadeOf(glazing, mat, backing, moulding), size)
    assert 0 < estimate.low_kg < estimate.kg < estimate.high_kg
