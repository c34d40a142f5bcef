"""The checked entries of a file as the Layout that the program works with."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from templater.geometry import Box, Point, Size
from templater.layout.build_groups import GroupBuilder, find_parents, find_whole
from templater.layout.build_piece import build_hanging, build_made_of, build_size
from templater.layout.flaws import list_mappings
from templater.layout.group_schema import PlaceEntry
from templater.layout.known import Known
from templater.layout.members import list_pool
from templater.layout.model import (
    Acceptance,
    Datum,
    FontFile,
    Furniture,
    Group,
    Hardware,
    Layout,
    Margins,
    Obstacle,
    Piece,
    RuleSetting,
    Wall,
)
from templater.layout.names import fold_name
from templater.layout.rule_codes import RULE_CODES
from templater.layout.rule_schema import Setting
from templater.layout.schema import LayoutEntry, ObstacleEntry, OpeningEntry, PieceEntry
from templater.layout.slugs import list_slugs
from templater.layout.source import Node, find_value
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
    groups, pieces = builder.build_groups(), builder.build_pieces()
    return Layout(
        title=entry.title,
        units=units,
        paper=entry.paper or default_paper(units),
        margins=Margins(**entry.margin.model_dump()),
        lap_mm=entry.lap,
        wall=_build_wall(entry, root),
        eye_line_mm=entry.eye_line,
        datum=Datum(datum_mm, entry.datum.at),
        furniture=builder.build_furniture(),
        pieces=pieces,
        groups=groups,
        for_whom=entry.for_whom,
        from_whom=entry.from_whom,
        contact=entry.contact,
        issue=entry.issue,
        openings=builder.build_obstacles("openings", entry.openings),
        fixtures=builder.build_obstacles("fixtures", entry.fixtures),
        rules=_build_rules(entry, root),
        accepted=builder.build_acceptances([*pieces, *groups]),
        region=entry.region,
        fonts=_build_fonts(entry, root),
    )


def _build_fonts(entry: LayoutEntry, root: Node) -> tuple[FontFile, ...]:
    """The fonts in their order, each with its place in the list, or that of the one that is given."""
    return tuple(
        FontFile(path, find_value(root, ("font", number))) for number, path in enumerate(entry.font)
    )


def _infer_units(root: Node) -> Unit:
    """Without 'units': inches if the wall's width is given in inches or feet, else millimetres."""
    unit = find_unit(root.data["wall"]["width"])
    return Unit.INCH if unit and unit.is_imperial else Unit.MILLIMETRE


def _build_wall(entry: LayoutEntry, root: Node) -> Wall:
    wall = entry.wall
    return Wall(
        size=Size(wall.width, wall.height),
        at=find_value(root, ("wall",)),
        ceiling=tuple(wall.ceiling or ()),
        studs=wall.studs or (),
        surface=wall.surface,
        board_mm=wall.board,
        is_walkway=wall.walkway,
        is_earthquake=wall.earthquake,
        is_outside=wall.outside,
    )


def _build_rules(entry: LayoutEntry, root: Node) -> tuple[RuleSetting, ...]:
    """The rules that the layout says something of, in the order in which findings are told."""
    settings = []
    for code in RULE_CODES:
        setting: Setting | None = getattr(entry.rules, code)
        at = find_value(root, ("rules", code))
        if isinstance(setting, bool):
            settings.append(RuleSetting(code, setting, None, None, at))
        elif setting is not None:
            settings.append(RuleSetting(code, True, setting.low, setting.high, at))
    return tuple(settings)


class _Builder:
    """Resolves the names of one layout while its entries are turned into the model."""

    def __init__(self, entry: LayoutEntry, root: Node, kept: Mapping[str, Sequence[int]]) -> None:
        self._entry = entry
        self._known = Known(entry, root, kept)
        self._parents = find_parents(root.data)
        self._whole = find_whole(entry.groups, self._known, self._parents)
        self._hardware = self._build_hardware()
        self._groups = GroupBuilder(self._known, self._whole, self._parents)
        self._chosen = {
            fold_name(name)
            for _, group in list_mappings(root.data, "groups")
            for _, name in list_pool(group)
        }

    def _build_hardware(self) -> dict[str, Hardware]:
        """What the layout says of hooks, by their folded names."""
        return {
            fold_name(each.name): Hardware(
                each.name,
                each.rise,
                each.rating,
                each.holes,
                each.needs,
                self._known.find_place("hardware", number),
                each.length,
            )
            for number, each in enumerate(self._entry.hardware)
        }

    def build_furniture(self) -> tuple[Furniture, ...]:
        """The furniture."""
        return tuple(
            Furniture(
                each.name,
                each.left,
                Size(each.width, each.height),
                self._known.find_place("furniture", number),
                each.kind or each.name,
            )
            for number, each in enumerate(self._entry.furniture)
        )

    def build_obstacles(self, section: str, entries: Sequence[ObstacleEntry]) -> tuple[Obstacle, ...]:
        """The openings or the fixtures."""
        wall_mm = self._entry.wall.width
        return tuple(
            Obstacle(
                name=each.name,
                kind=each.kind or each.name,
                box=Box.of(
                    Point(_left_of(each, wall_mm), _bottom_of(each)), Size(each.width, each.height)
                ),
                swing=each.swing if isinstance(each, OpeningEntry) else None,
                at=self._known.find_place(section, number),
            )
            for number, each in enumerate(entries)
        )

    def build_groups(self) -> tuple[Group, ...]:
        """The groups of which nothing is missing."""
        return tuple(
            self._groups.build_group(group, self._known.find_place("groups", number))
            for number, group in enumerate(self._entry.groups)
            if fold_name(group.name) in self._whole
        )

    def build_pieces(self) -> tuple[Piece, ...]:
        """The pieces of groups and pools, those whose place is there, and the groups' ledges."""
        entries = self._entry.pieces
        slugs = list_slugs([*(piece.name for piece in entries), *self._groups.ledges])
        pieces = [
            self._piece(number, piece, slug)
            for number, (piece, slug) in enumerate(zip(entries, slugs, strict=False))
            if self._is_there(piece)
        ]
        ledges = (
            (number, group)
            for number, group in enumerate(self._entry.groups)
            if group.ledge and fold_name(group.name) in self._whole
        )
        for (number, group), slug in zip(ledges, slugs[len(entries) :], strict=True):
            at = self._known.find_place("groups", number, "ledge")
            pieces.append(self._groups.build_ledge(group, slug, at))
        return tuple(pieces)

    def build_acceptances(self, hung: Sequence[Piece | Group]) -> tuple[Acceptance, ...]:
        """The acceptances for what is there."""
        names = {fold_name(each.name): each.name for each in hung}
        return tuple(
            Acceptance(
                each.rule,
                names[fold_name(each.subject)],
                each.because,
                self._known.find_place("accept", number),
            )
            for number, each in enumerate(self._entry.accept)
            if fold_name(each.subject) in names
        )

    def _is_there(self, piece: PieceEntry) -> bool:
        """Whether the group that a piece is meant for is there, or else what its place names."""
        folded = fold_name(piece.name)
        if folded in self._parents:
            return self._parents[folded] in self._whole
        return folded in self._chosen or self._known.stands(piece.place)

    def _piece(self, number: int, piece: PieceEntry, slug: str) -> Piece:
        position = None
        folded = fold_name(piece.name)
        if folded not in self._parents and folded not in self._chosen:
            at = self._known.find_place("pieces", number, "place")
            position = self._known.resolve_position(piece.place or PlaceEntry(), at)
        return Piece(
            name=piece.name,
            slug=slug,
            size=build_size(piece),
            weight_kg=piece.weight,
            hang=build_hanging(
                piece.hang, self._hardware, self._known.find_place("pieces", number, "hang")
            ),
            position=position,
            at=self._known.find_place("pieces", number),
            made_of=build_made_of(piece.made_of, piece.moulding),
            stands_out_mm=piece.stands_out,
        )


def _left_of(entry: ObstacleEntry, wall_mm: float) -> float:
    """The left edge of an opening or a fixture, from the wall's left end."""
    if entry.right is not None:
        return wall_mm - entry.right - entry.width
    return (entry.left or 0.0) if entry.centre is None else entry.centre - entry.width / 2


def _bottom_of(entry: ObstacleEntry) -> float:
    """The bottom edge of an opening or a fixture; on the floor unless it is given."""
    if entry.top is not None:
        return entry.top - entry.height
    return (entry.bottom or 0.0) if entry.middle is None else entry.middle - entry.height / 2
