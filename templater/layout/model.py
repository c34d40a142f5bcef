"""What a layout file says, in millimetres and kilograms, with the place of each thing in the file.

Every name is resolved and every value is within reason; where things go on the wall is not
decided yet.
"""

from __future__ import annotations

from dataclasses import dataclass
from enum import Enum

from templater.errors import Place
from templater.geometry import Box, Point, Size
from templater.lengths import Unit
from templater.paper import Paper


class Hanger(Enum):
    """By what a piece hangs."""

    WIRE = "wire"
    D_RINGS = "d-rings"
    KEYHOLES = "keyholes"
    SAWTOOTH = "sawtooth"
    NAIL = "nail"
    CLEAT = "cleat"
    RAIL = "rail"
    STRIPS = "strips"


class LeftRight(Enum):
    """Left or right, as seen from the front."""

    LEFT = "left"
    RIGHT = "right"


@dataclass(frozen=True, slots=True)
class Hardware:
    """A hook that pieces name: its rise, what its maker rates it for, and what fastens it.

    ``holes``: how many it needs, each drilled through the hook itself; ``needs``: by what it is
    fastened, in the layout's own words; ``length_mm``: how long the nail or screw is. What is None
    is not known.
    """

    name: str
    rise_mm: float | None
    rating_kg: float | None
    holes: int
    needs: str | None
    at: Place
    length_mm: float | None = None


@dataclass(frozen=True, slots=True)
class Ring:
    """Where one end of a wire is tied: outward from the frame's middle, and below its top edge."""

    from_middle_mm: float
    below_top_mm: float


@dataclass(frozen=True, slots=True)
class Rings:
    """Where a wire is tied, as seen from the front."""

    left: Ring
    right: Ring


@dataclass(frozen=True, slots=True)
class Hanging:
    """The hardware of a piece as measured; all as seen from the front.

    ``drop_mm`` runs from the frame's top edge down to where the hanger bears (None: worked out from
    rings and wire, or there is no such point); ``rise_mm`` from there up to where the fastener
    meets the wall (None: not given). ``apart_mm`` is the spacing of two hangers; ``offset_mm`` how
    far their middle, or the one hanger, lies right of the piece's middle. ``width_mm`` and
    ``every_mm`` belong to a cleat's rail, which is screwed to the wall's studs where ``on_studs``.

    A wire hangs on so many ``hooks``, ``spread_mm`` apart if there are two. ``wire_mm`` is its
    length from ring to ring. A drop was ``measured_at`` so many hooks (None: at as many as it hangs
    on). ``balance_mm``: how far the mass centre lies right of the frame's middle;
    ``balance_below_mm`` how far below its top edge (None: the middle).

    ``teeth_mm``: from tooth to tooth of a sawtooth. ``rail_mm``: how high the hook on a picture
    rail holds its cords, of which there are as many as ``cords``. ``strip_rating_kg``: what the
    maker says that adhesive strips hold, ``strip_each`` pair or strip. ``lock_below_mm``: how far
    below the top edge the hole of a security lock is. ``hook``: what the layout says of the hook.
    """

    by: Hanger
    drop_mm: float | None
    rise_mm: float | None
    apart_mm: float | None
    offset_mm: float
    width_mm: float | None
    every_mm: float | None
    at: Place
    hooks: int = 1
    spread_mm: float | None = None
    rings: Rings | None = None
    wire_mm: float | None = None
    measured_at: int | None = None
    balance_mm: float = 0.0
    balance_below_mm: float | None = None
    teeth_mm: float | None = None
    on_studs: bool = False
    rail_mm: float | None = None
    cords: int = 1
    strip_rating_kg: float | None = None
    strip_each: str = "pair"
    lock_below_mm: float | None = None
    hook: Hardware | None = None


class Material(Enum):
    """What a glazing, a mat or a backing is made of."""

    NONE = "none"
    GLASS = "glass"
    ACRYLIC = "acrylic"
    MAT = "ply"
    MDF = "mdf"
    FOAM = "foam"


class Wood(Enum):
    """What a moulding is made of."""

    OBECHE = "obeche"
    RAMIN = "ramin"
    PINE = "pine"
    RADIATA = "radiata"
    SPRUCE = "spruce"
    BASSWOOD = "basswood"
    POPLAR = "poplar"
    BEECH = "beech"
    RED_OAK = "red oak"
    WHITE_OAK = "white oak"
    WALNUT = "walnut"


@dataclass(frozen=True, slots=True)
class Sheet:
    """A sheet in a frame; ``thickness_mm`` is None where it follows from the material.

    Of mat board the plies are counted; there are none of anything else.
    """

    material: Material
    thickness_mm: float | None = None
    plies: int = 0


@dataclass(frozen=True, slots=True)
class Moulding:
    """A frame's moulding, seen from the front and from the side."""

    wood: Wood
    width_mm: float
    depth_mm: float


@dataclass(frozen=True, slots=True)
class MadeOf:
    """What a piece is made of; what is None is not told (a glazing of none is told)."""

    glazing: Sheet | None = None
    mat: Sheet | None = None
    backing: Sheet | None = None
    moulding: Moulding | None = None


@dataclass(frozen=True, slots=True)
class Position:
    """Where something is asked to go; what is None is not asked for.

    ``above`` names furniture. ``beside``, ``around`` and ``between`` name things in the way
    (openings, fixtures or furniture) and settle left and right: beside it on ``side``,
    ``clearance_mm`` away; half of a row's pieces on each side of it; or midway between two of
    them. Up and down then follow the other keys, as ever.

    ``left_mm`` and ``centre_mm`` run from the wall's left end to the left edge and the centre,
    ``right_mm`` from the wall's right end to the right edge; heights from the floor.
    """

    above: str | None
    clearance_mm: float
    left_mm: float | None
    centre_mm: float | None
    right_mm: float | None
    eye_line_mm: float | None
    bottom_mm: float | None
    top_mm: float | None
    at: Place
    beside: str | None = None
    side: LeftRight | None = None
    around: str | None = None
    between: tuple[str, str] | None = None


@dataclass(frozen=True, slots=True)
class Piece:
    """One framed work; ``size`` is the outside of its frame.

    ``position`` is None for a piece that belongs to a group. ``weight_kg`` is the weight given;
    without it ``made_of`` lets one be estimated. ``stands_out_mm``: from the wall to its face.
    """

    name: str
    slug: str
    size: Size
    weight_kg: float | None
    hang: Hanging | None
    position: Position | None
    at: Place
    made_of: MadeOf | None = None
    stands_out_mm: float | None = None


@dataclass(frozen=True, slots=True)
class Furniture:
    """Something that stands on the floor against the wall.

    ``kind`` is the layout's own word for what it is, else its name.
    """

    name: str
    left_mm: float
    size: Size
    at: Place
    kind: str = ""


class Arrangement(Enum):
    """How a group is composed."""

    ROW = "row"
    COLUMN = "column"
    GRID = "grid"
    CLUSTER = "cluster"
    STAIR = "stair"
    LEDGE = "ledge"
    PLACED = "placed"


class Align(Enum):
    """How the pieces of a row or column line up across its direction."""

    TOP = "top"
    CENTRE = "centre"
    BOTTOM = "bottom"
    LEFT = "left"
    RIGHT = "right"


class Cells(Enum):
    """How a grid's columns and rows are measured."""

    EQUAL = "equal"
    """Every cell is as wide as the widest piece and as tall as the tallest."""
    TRUE = "true"
    """A column is as wide as its widest piece, a row as tall as its tallest: all gaps are true."""


@dataclass(frozen=True, slots=True)
class Stair:
    """A flight of stairs: ``start`` is the edge (nosing) of one step on the wall.

    The nosing line rises by ``rise_mm`` over each ``run_mm`` toward the side ``up``.
    """

    rise_mm: float
    run_mm: float
    start: Point
    up: LeftRight


@dataclass(frozen=True, slots=True)
class Ledge:
    """A picture ledge: pieces stand on its top at ``height_mm`` above the floor.

    ``piece`` names the piece of the layout that stands for the ledge itself: its size is the
    ledge's front, its hang is that of a cleat, and only it has holes.
    """

    piece: str
    height_mm: float


@dataclass(frozen=True, slots=True)
class OpenChoice:
    """What a group leaves open for the search to settle.

    ``pool`` names the pieces to choose from (None: the group's members are settled), ``count``
    how many of them (None: any number).
    """

    arrange: bool
    gap: bool
    pool: tuple[str, ...] | None
    count: int | None


@dataclass(frozen=True, slots=True)
class Group:
    """Pieces treated as one unit; ``members`` are the names of pieces or groups, in order.

    A group that is a member of another has no ``position``. ``spread_mm``: a row or column is
    spread evenly over that length, with the same space at both ends as between pieces;
    ``columns`` and ``cells`` belong to a grid, ``target`` (the size the whole should come near)
    to a cluster, ``corners`` (each member's bottom-left corner inside the group) to placed.
    """

    name: str
    members: tuple[str, ...]
    arrange: Arrangement
    gap_mm: float
    align: Align
    position: Position | None
    at: Place
    spread_mm: float | None = None
    columns: int | None = None
    cells: Cells = Cells.EQUAL
    target: Size | None = None
    stair: Stair | None = None
    ledge: Ledge | None = None
    corners: tuple[Point, ...] | None = None
    open_choice: OpenChoice | None = None


@dataclass(frozen=True, slots=True)
class Obstacle:
    """Something in the wall or on it that nothing may cover: a window, a door, a thermostat.

    ``kind`` is the layout's own word. A door's ``swing`` is the side toward which its leaf folds
    back against the wall (None: it does not).
    """

    name: str
    kind: str
    box: Box
    swing: LeftRight | None
    at: Place


@dataclass(frozen=True, slots=True)
class RuleSetting:
    """A rule's band in this layout; ``low`` and ``high`` in the rule's own unit, None: as ever."""

    rule: str
    is_on: bool
    low: float | None
    high: float | None
    at: Place


@dataclass(frozen=True, slots=True)
class Acceptance:
    """A rule broken on purpose: which, for which piece or group, and why."""

    rule: str
    subject: str
    because: str
    at: Place


@dataclass(frozen=True, slots=True)
class Datum:
    """The one level line: its height above the floor and the place on the wall where it is set."""

    height_mm: float
    at_place: str | None


class Surface(Enum):
    """What a wall is faced with."""

    DRYWALL = "drywall"
    PLASTER = "plaster and lath"
    MASONRY = "masonry"
    CONCRETE = "concrete"
    WOOD = "wood"
    PANELLING = "panelling"

    @property
    def is_solid(self) -> bool:
        """Whether it goes on behind its face, with neither board nor studs."""
        return self in (Surface.MASONRY, Surface.CONCRETE)


class Region(Enum):
    """Where in the world the wall is, for what its builders were bound by."""

    US = "us"
    UK = "uk"
    EU = "eu"


@dataclass(frozen=True, slots=True)
class Wall:
    """The wall, from its left end and the finished floor; what is None is not told.

    ``ceiling``, if it slopes: points of its line from the left end to the right, straight between
    them; ``size.height`` is then its highest point. ``studs``: the centre of each stud that is
    known, from the wall's left end, mm. ``board_mm``: how thick what it is faced with is.
    ``is_walkway``: people walk along it; ``is_earthquake``: the ground may shake; ``is_outside``:
    the weather is on its other side.
    """

    size: Size
    at: Place
    ceiling: tuple[Point, ...] = ()
    studs: tuple[float, ...] = ()
    surface: Surface | None = None
    board_mm: float | None = None
    is_walkway: bool | None = None
    is_earthquake: bool | None = None
    is_outside: bool | None = None


@dataclass(frozen=True, slots=True)
class Margins:
    """What a printer cannot print at each edge of the paper as it is fed in portrait, mm."""

    left: float = 6.35
    right: float = 6.35
    top: float = 6.35
    bottom: float = 12.7


@dataclass(frozen=True, slots=True)
class FontFile:
    """A font for letters that the typeface lacks: a path from the layout's folder."""

    path: str
    at: Place


@dataclass(frozen=True, slots=True)
class Layout:
    """One wall and everything that is to hang on it."""

    title: str
    units: Unit
    paper: Paper
    margins: Margins
    lap_mm: float
    wall: Wall
    eye_line_mm: float
    datum: Datum
    furniture: tuple[Furniture, ...]
    pieces: tuple[Piece, ...]
    groups: tuple[Group, ...]
    for_whom: str | None
    from_whom: str | None
    contact: str | None
    issue: str | None
    openings: tuple[Obstacle, ...] = ()
    fixtures: tuple[Obstacle, ...] = ()
    rules: tuple[RuleSetting, ...] = ()
    accepted: tuple[Acceptance, ...] = ()
    region: Region | None = None
    fonts: tuple[FontFile, ...] = ()
