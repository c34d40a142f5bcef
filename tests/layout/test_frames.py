"""What a piece is made of, and its outside size from the picture in it."""

from __future__ import annotations

import pytest

from templater.geometry import Size
from templater.layout.model import MadeOf, Material, Moulding, Piece, Sheet, Wood
from templater.layout.outside_size import find_outside_size
from tests.layout.files import change, check_faults, read_sound

SIZE = "size: 16 x 16"
PICTURE = "picture: 8 x 10, mat: 2, moulding: 1, rabbet: 1/4"
INCH = 25.4
NONE = Sheet(Material.NONE)


def piece_of(new: str) -> Piece:
    """The first piece, with other keys in place of its size."""
    return read_sound(change(SIZE, new)).pieces[0]


def test_the_outside_follows_from_the_picture() -> None:
    # 8 x 10 in, 2 in of mat on each side: 12 x 14; the moulding adds 1 in and covers 1/4 in of that
    # on each side: 13 1/2 x 15 1/2 in.
    assert piece_of(PICTURE).size == pytest.approx((13.5 * INCH, 15.5 * INCH))


def test_a_picture_without_a_mat() -> None:
    # 300 + 2 x (20 - 6), 400 + 2 x (20 - 6).
    assert find_outside_size(Size(300, 400), 0, 20, 6) == (328, 428)


def test_what_a_piece_is_made_of() -> None:
    made_of = (
        "{glazing: glass 2 mm, mat: 4-ply, backing: mdf 3 mm, moulding: {wood: red oak, width: 3 cm,"
    )
    piece = piece_of(f"{SIZE}, stands_out: 1 1/2, made_of: {made_of} depth: 20 mm}}}}")
    assert piece.made_of == MadeOf(
        Sheet(Material.GLASS, 2),
        Sheet(Material.MAT, plies=4),
        Sheet(Material.MDF, 3),
        Moulding(Wood.RED_OAK, 30, 20),
    )
    assert piece.stands_out_mm == pytest.approx(1.5 * INCH)
    assert piece.weight_kg is None


@pytest.mark.parametrize(
    ("written", "made_of"),
    [
        ("{glazing: glass}", MadeOf(Sheet(Material.GLASS))),
        ("{glazing: none, mat: none, backing: none}", MadeOf(NONE, NONE, NONE)),
        ("{glazing: acrylic 3 mm}", MadeOf(Sheet(Material.ACRYLIC, 3))),
        ("{backing: foam 3/16 in}", MadeOf(backing=Sheet(Material.FOAM, 4.7625))),
        ("{backing: foam 1/4}", MadeOf(backing=Sheet(Material.FOAM, INCH / 4))),
        ("{mat: 8 ply}", MadeOf(mat=Sheet(Material.MAT, plies=8))),
    ],
)
def test_every_sheet(written: str, made_of: MadeOf) -> None:
    assert piece_of(f"{SIZE}, made_of: {written}").made_of == made_of


def test_the_width_of_the_moulding_is_told_once() -> None:
    piece = piece_of(f"{PICTURE}, made_of: {{moulding: {{wood: pine, depth: 1}}}}")
    assert piece.made_of == MadeOf(moulding=Moulding(Wood.PINE, INCH, INCH))


WITHOUT = "remove it, or give the picture's own size as 'picture' in place of 'size'"


@pytest.mark.parametrize(
    ("new", "faults"),
    [
        (
            f"{SIZE}, ¦{PICTURE}",
            ["'picture' does not apply beside 'size' => keep one of the two"],
        ),
        (
            f"{SIZE}, ¦mat: 2, ¦rabbet: 1",
            [
                f"'mat' does not apply without 'picture' => {WITHOUT}",
                f"'rabbet' does not apply without 'picture' => {WITHOUT}",
            ],
        ),
        (
            "picture: 8 x 10, moulding: 1, rabbet: ¦2",
            ["'rabbet' must not be wider than the 'moulding' it is cut into => measure both again"],
        ),
        (
            f"{SIZE}, made_of: {{glazing: ¦glas 2 mm}}",
            [
                "'glazing' is 'glas', which is not a glazing (did you mean 'glass'?)"
                " => use glass, acrylic or none"
            ],
        ),
        (
            f"{SIZE}, made_of: {{glazing: ¦acrylic}}",
            ["'glazing' has no thickness after 'acrylic' => write for example acrylic 3 mm"],
        ),
        (
            f"{SIZE}, made_of: {{glazing: ¦none 2 mm}}",
            ["'glazing' is none, but has a thickness => write none alone"],
        ),
        (
            f"{SIZE}, made_of: {{backing: ¦mdf 0}}",
            ["'backing' must be more than 0, but is '0' => check the number and its unit"],
        ),
        (
            f"{SIZE}, made_of: {{mat: ¦thick}}",
            ["'mat' is 'thick', which is not a mat board => write for example 4-ply, or none"],
        ),
        (
            f"{SIZE}, made_of: {{moulding: {{wood: ¦oak, width: 1, depth: 1}}}}",
            [
                "'wood' is 'oak', which is not a wood whose weight is known (did you mean 'red oak'?)"
                " => use obeche, ramin, pine,"
                " radiata, spruce, basswood, poplar, beech, red oak, white oak or walnut"
            ],
        ),
        (
            f"{SIZE}, made_of: {{moulding: ¦{{wood: pine, depth: 1}}}}",
            ["'moulding' needs 'width' => add for example 'width: 30 mm'"],
        ),
        (
            f"{PICTURE}, made_of: {{moulding: {{wood: pine, ¦width: 1, depth: 1}}}}",
            ["'width' does not apply beside the piece's own 'moulding' => keep one of the two"],
        ),
        (
            f"{SIZE}, made_of: ¦glass",
            [
                "'made_of' needs keys and values, but is 'glass' => write for example 'made_of:"
                " {glazing: glass 2 mm, moulding: {wood: pine, width: 30 mm, depth: 20 mm}}'"
            ],
        ),
        (
            f"{SIZE}, made_of: {{¦glas: 2 mm}}",
            ["'glas' is not a key of 'made_of' => use glazing, mat, backing or moulding"],
        ),
    ],
)
def test_faults_of_frames(new: str, faults: list[str]) -> None:
    check_faults(change(SIZE, new), *faults)


def test_a_picture_needs_its_moulding_and_rabbet() -> None:
    check_faults(
        change("{name: Cliff path, size: 16 x 16", "¦¦{name: Cliff path, picture: 8 x 10"),
        "piece 'Cliff path' needs 'moulding' beside 'picture' => add for example 'moulding: 1 in'",
        "piece 'Cliff path' needs 'rabbet' beside 'picture' => add for example 'rabbet: 1/4 in'",
    )


def test_a_piece_needs_a_size() -> None:
    check_faults(
        change("{name: Cliff path, size: 16 x 16, ", "¦{name: Cliff path, "),
        "piece 'Cliff path' needs 'size' => add for example 'size: 16 x 20 in'",
    )
