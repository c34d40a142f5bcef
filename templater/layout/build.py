"""The checked entries of a file as the Layout that the program works with."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from templater.errors import Place
from templater.geometry import Size
from templater.layout.flaws import list_mappings
from templater.layout.model import (
    Datum,
    Furniture,
    Group,
    Hanging,
    Layout,
    Margins,
    Piece,
    Position,
    Wall,
)
from templater.layout.names import fold_name, list_members
from templater.layout.schema import GroupEntry, HangEntry, LayoutEntry, PieceEntry, PlaceEntry
from templater.layout.slugs import list_slugs
from templater.layout.source import Node, Path, find_value
from templater.lengths import Unit, find_unit
from templater.paper import default_paper


def build_layout(
    entry: LayoutEntry, root: Node, kept: Mapping[str, Sequence[int]] | None = None
) -> Layout:
    """The layout; whatever refers to an entry that is not there is left out without a word.

    ``kept`` says where the entries of a list stood in the file, if some of them were left out.
    """
    builder = _Builder(entry, root, kept or {})
    units = entry.units or _infer_units(root)
    datum_mm = entry.datum.height if entry.datum.height is not None else entry.eye_line
    groups = builder.build_groups()
    return Layout(
        title=entry.title,
        units=units,
        paper=entry.paper or default_paper(units),
        margins=Margins(**entry.margin.model_dump()),
        lap_mm=entry.lap,
        wall=Wall(Size(entry.wall.width, entry.wall.height), find_value(root, ("wall",))),
        eye_line_mm=entry.eye_line,
        datum=Datum(datum_mm, entry.datum.at),
        furniture=tuple(builder.furniture.values()),
        pieces=builder.build_pieces(groups),
        groups=groups,
        for_whom=entry.for_whom,
        from_whom=entry.from_whom,
        contact=entry.contact,
        issue=entry.issue,
    )


def _infer_units(root: Node) -> Unit:
    """Without 'units': inches if the wall's width is given in inches or feet, else millimetres."""
    unit = find_unit(root.data["wall"]["width"])
    return Unit.INCH if unit and unit.is_imperial else Unit.MILLIMETRE


class _Builder:
    """Resolves the names of one layout while its entries are turned into the model."""

    def __init__(self, entry: LayoutEntry, root: Node, kept: Mapping[str, Sequence[int]]) -> None:
        self._entry = entry
        self._root = root
        self._kept = kept
        self._piece_names = {fold_name(piece.name): piece.name for piece in entry.pieces}
        self.furniture = {
            fold_name(each.name): Furniture(
                each.name, each.left, Size(each.width, each.height), self._place("furniture", number)
            )
            for number, each in enumerate(entry.furniture)
        }

    def build_groups(self) -> tuple[Group, ...]:
        """The groups all of whose pieces, and the furniture below, are there."""
        groups = enumerate(self._entry.groups)
        return tuple(self._group(number, group) for number, group in groups if self._is_whole(group))

    def build_pieces(self, groups: Sequence[Group]) -> tuple[Piece, ...]:
        """The pieces whose group, if they are meant for one, or whose furniture is there."""
        in_group = {fold_name(name) for group in groups for name in group.members}
        meant = {
            fold_name(name)
            for _, group in list_mappings(self._root.data, "groups")
            for _, name in list_members(group)
        }
        slugs = list_slugs(piece.name for piece in self._entry.pieces)
        pieces = []
        for number, (piece, slug) in enumerate(zip(self._entry.pieces, slugs, strict=True)):
            folded = fold_name(piece.name)
            if folded in in_group or (folded not in meant and self._stands(piece.place)):
                pieces.append(self._piece(number, piece, slug, alone=folded not in in_group))
        return tuple(pieces)

    def _is_whole(self, group: GroupEntry) -> bool:
        return self._stands(group) and all(fold_name(name) in self._piece_names for name in group.pieces)

    def _stands(self, place: PlaceEntry | None) -> bool:
        """Whether the furniture below, if any is asked for, is there."""
        return place is None or place.above is None or fold_name(place.above) in self.furniture

    def _group(self, number: int, group: GroupEntry) -> Group:
        at = self._place("groups", number)
        return Group(
            name=group.name,
            members=tuple(self._piece_names[fold_name(name)] for name in group.pieces),
            arrange=group.arrange,
            gap_mm=group.gap,
            align=group.align,
            position=self._position(group, at),
            at=at,
        )

    def _piece(self, number: int, piece: PieceEntry, slug: str, *, alone: bool) -> Piece:
        position = None
        if alone:
            place = piece.place or PlaceEntry()
            position = self._position(place, self._place("pieces", number, "place"))
        return Piece(
            name=piece.name,
            slug=slug,
            size=piece.size,
            weight_kg=piece.weight,
            hang=self._hanging(piece.hang, self._place("pieces", number, "hang")),
            position=position,
            at=self._place("pieces", number),
        )

    def _position(self, place: PlaceEntry, at: Place) -> Position:
        return Position(
            above=None if place.above is None else self.furniture[fold_name(place.above)].name,
            clearance_mm=place.clearance,
            left_mm=place.left,
            centre_mm=place.centre,
            right_mm=place.right,
            eye_line_mm=place.eye_line,
            bottom_mm=place.bottom,
            top_mm=place.top,
            at=at,
        )

    def _hanging(self, hang: HangEntry | None, at: Place) -> Hanging | None:
        if hang is None:
            return None
        return Hanging(
            by=hang.by,
            drop_mm=hang.drop,
            rise_mm=hang.rise,
            apart_mm=hang.apart,
            offset_mm=hang.offset,
            width_mm=hang.width,
            every_mm=hang.every,
            at=at,
        )

    def _place(self, section: str, number: int, *rest: str) -> Place:
        """Where an entry, or a part of it, stands in the file."""
        kept = self._kept.get(section)
        path: Path = (section, kept[number] if kept is not None else number, *rest)
        return find_value(self._root, path)
