"""The way from a layout to a kit, step by step; every step is a function of the one before."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from functools import cache, partial
from io import BytesIO
from pathlib import Path

import templater
from templater.errors import Fault, LayoutError, Place, WriteError
from templater.font_files import read_fonts
from templater.layout.decoding import MAX_BYTES
from templater.layout.model import Layout, Margins
from templater.layout.read import read_layout
from templater.layout.texts import list_texts
from templater.lengths import Unit
from templater.mounting.mount import mount_pieces
from templater.paper import Paper, default_paper
from templater.placement.model import Plan
from templater.placement.place import place_pieces
from templater.printing.cut import cut_template
from templater.printing.model import Coverage, Printer, PrintSetup, SheetCounts, Tiling
from templater.printing.tile import MAX_SHEETS, NoRoomOnSheetError, TooManySheetsError
from templater.quoting import show_path
from templater.rules.check import check_all
from templater.rules.model import Finding
from templater.scene.template.draw import template_shape
from templater.search.model import Settlement
from templater.search.saved import save_choices
from templater.search.settle import settle_groups
from templater.sheets.calibration import compose_calibration
from templater.sheets.compose import Kit, compose_kit, compose_measure_form, overview_form
from templater.sheets.contact_sheet import compose_contact_sheet
from templater.sheets.lay_out import stack_pages
from templater.sheets.share import count_all_sheets, share_pages
from templater.typesetting import Typesetter, set_by


@dataclass(frozen=True, slots=True)
class PlannedWall:
    """A layout that holds, and where everything on it goes; ``source`` is the file as read.

    ``typesetter`` draws its words, with the fonts that it gives.
    """

    source: bytes
    layout: Layout
    plan: Plan
    typesetter: Typesetter = field(default_factory=Typesetter, compare=False)


@dataclass(frozen=True, slots=True)
class PrintChoices:
    """What the command line asks for, also in place of the layout's own print settings.

    ``most_sheets`` is how many sheets one piece may take.
    """

    paper: Paper | None = None
    margin_mm: float | None = None
    lap_mm: float | None = None
    printer: Printer | None = None
    cover: Coverage = Coverage.FULL
    most_sheets: int = MAX_SHEETS


@dataclass(frozen=True, slots=True)
class ArrangedWall:
    """A layout whose open groups are settled; ``source`` is the file as read."""

    source: bytes
    layout: Layout
    settlements: tuple[Settlement, ...]
    typesetter: Typesetter = field(default_factory=Typesetter, compare=False)


def read_wall(path: Path) -> PlannedWall:
    """Read a layout file and place everything. Raises LayoutError with every fault found."""
    return plan_wall(read_source(path), str(path), path.parent)


def read_source(path: Path) -> bytes:
    """The bytes of a layout file, and no more of them than tell that it is too large.

    What is no file is left alone, and so is one of no size: reading a pipe could block, a device
    might never end, and the kernel's own files do either. Raises LayoutError; as there is no text,
    its fault names the path and has no place.
    """
    try:
        if path.exists() and not path.is_file():
            raise _unreadable(path, "a folder" if path.is_dir() else "a pipe or a device")
        with path.open("rb") as stream:
            return stream.read(min(path.stat().st_size, MAX_BYTES + 1))
    except (OSError, ValueError) as error:
        raise _unreadable(path, getattr(error, "strerror", None) or str(error)) from error


def _unreadable(path: Path, reason: str) -> LayoutError:
    message = f"cannot read {show_path(path)}: {reason}"
    return LayoutError([Fault(message, "name a layout file; 'templater new FILE' writes one")])


def plan_wall(source: bytes, file: str, folder: Path | None = None) -> PlannedWall:
    """A layout's text, read, mounted and placed. Raises LayoutError with every fault found.

    Without the folder of the file, the fonts that it names are left unread: they move no hole.
    """
    reading = read_layout(source, file)
    faults = list(reading.faults)
    if reading.layout is None:
        raise LayoutError(faults)
    mounting = mount_pieces(reading.layout)
    placement = place_pieces(reading.layout, mounting.mounts)
    typesetter, font_faults = _engage_typesetter(reading.layout, folder)
    faults += [*mounting.faults, *placement.faults, *font_faults]
    if faults:
        raise LayoutError(sorted(faults, key=lambda fault: fault.place or Place(file)))
    return PlannedWall(source, reading.layout, placement.plan, typesetter)


def tell_lacking_letters(wall: PlannedWall | ArrangedWall) -> str | None:
    """What to tell of letters of the layout that can only be drawn as boxes; None if there are none."""
    return wall.typesetter.tell_lacking(list_texts(wall.layout))


def _engage_typesetter(layout: Layout, folder: Path | None) -> tuple[Typesetter, list[Fault]]:
    """A typesetter with the fonts of a layout, and what is wrong with these."""
    if folder is None or not layout.fonts:
        return Typesetter(), []
    fonts, faults = read_fonts(layout.fonts, folder)
    return Typesetter(fonts, list_texts(layout)), faults


def set_up_print(layout: Layout, choices: PrintChoices) -> PrintSetup:
    """The layout's print settings, where the command line does not say otherwise.

    A printer's own margins go before the layout's; a margin that is asked for goes before both.
    """
    margin = choices.margin_mm
    margins = choices.printer.margins if choices.printer else layout.margins
    if margin is not None:
        margins = Margins(margin, margin, margin, margin)
    lap_mm = layout.lap_mm if choices.lap_mm is None else choices.lap_mm
    paper = choices.paper or layout.paper
    return PrintSetup(paper, margins, lap_mm, choices.printer, choices.cover)


def cut_sheets(
    wall: PlannedWall, setup: PrintSetup, most_sheets: int = MAX_SHEETS
) -> Mapping[str, Tiling]:
    """Every template cut into sheets, by the piece's slug. Raises LayoutError."""
    tilings: dict[str, Tiling] = {}
    faults = []
    cut_once = cache(partial(cut_template, setup=setup, most=most_sheets))
    places = {piece.slug: piece.at for piece in wall.layout.pieces}
    for piece in wall.plan.pieces:
        try:
            tilings[piece.slug] = cut_once(template_shape(piece))
        except TooManySheetsError as error:
            message = f"{piece.name!r} needs {error.count} sheets of {setup.paper.name}"
            hint = (
                "print on larger paper: --paper a1, or --paper 'roll 36 in' at a copy shop;"
                f" or print less of it: --cover band; or let it through: --allow-sheets {error.count}"
            )
            faults.append(Fault(message, hint, places[piece.slug]))
        except NoRoomOnSheetError as error:
            raise _no_room(wall, setup, error) from error
    if faults:
        raise LayoutError(faults)
    return tilings


def count_wall(wall: PlannedWall) -> SheetCounts:
    """How many sheets of the layout's paper each cover takes, however many. Raises LayoutError."""
    setup = set_up_print(wall.layout, PrintChoices())
    tilings: dict[str, Tiling] = {}
    for piece in wall.plan.pieces:
        try:
            tilings[piece.slug] = cut_template(template_shape(piece), setup)
        except TooManySheetsError:
            continue
        except NoRoomOnSheetError as error:
            raise _no_room(wall, setup, error) from error
    with set_by(wall.typesetter):
        return count_all_sheets(wall.plan, tilings, setup, share_pages(wall.plan, tilings, setup))


def _no_room(wall: PlannedWall, setup: PrintSetup, error: NoRoomOnSheetError) -> LayoutError:
    """The fault of a paper on which nothing can be printed; the layout's own is told with its file."""
    hint = "choose a larger paper, or smaller margins and laps"
    own = set_up_print(wall.layout, PrintChoices(cover=setup.cover))
    place = Place(wall.layout.wall.at.file) if setup == own else None
    return LayoutError([Fault(f"{setup.paper.name}: {error}", hint, place)])


def plan_kit(wall: PlannedWall, choices: PrintChoices) -> tuple[Kit, tuple[Finding, ...]]:
    """Everything but the writing: rules and cautions held against the plan, sheets cut, pages drawn."""
    setup = set_up_print(wall.layout, choices)
    findings = check_all(wall.plan)
    tilings = cut_sheets(wall, setup, choices.most_sheets)
    with set_by(wall.typesetter):
        kit = compose_kit(wall.plan, findings, tilings, setup, version=templater.__version__)
    return kit, findings


def write_measure_form(wall: PlannedWall | None, paper: Paper | None, path: Path) -> None:
    """Write the form for a far client as PDF; with a wall, what is known is filled in.

    Raises WriteError.
    """
    from templater.to_files.pdf import write_pdf
    from templater.to_files.seal import write_sealed

    layout, typesetter = (None, Typesetter()) if wall is None else (wall.layout, wall.typesetter)
    units = Unit.INCH if layout is None else layout.units
    chosen = paper or (default_paper(units) if layout is None else layout.paper)
    stream = BytesIO()
    with set_by(typesetter):
        pages = compose_measure_form(layout, PrintSetup(chosen, Margins(), 0.0), units)
        write_pdf(pages, stream, title="What to measure")
    write_sealed(path, stream.getvalue())


def write_calibration(paper: Paper, printer: Printer | None, path: Path) -> None:
    """Write the pages that measure a printer, or those that prove one, as PDF. Raises WriteError."""
    from templater.to_files.pdf import write_pdf
    from templater.to_files.seal import write_sealed

    title = f"Proof of {printer.name}" if printer else "Measure your printer"
    stream = BytesIO()
    write_pdf(compose_calibration(paper, printer), stream, title=title)
    write_sealed(path, stream.getvalue())


def arrange_wall(path: Path, choices: Sequence[int]) -> ArrangedWall:
    """Read a layout file and settle what its groups leave open; ``choices`` as in the search.

    Raises LayoutError and UsageError.
    """
    source = read_source(path)
    reading = read_layout(source, str(path))
    if reading.layout is None:
        raise LayoutError(reading.faults)
    mounting = mount_pieces(reading.layout)
    typesetter, font_faults = _engage_typesetter(reading.layout, path.parent)
    if faults := (*reading.faults, *mounting.faults, *font_faults):
        raise LayoutError(sorted(faults, key=lambda fault: fault.place or Place(str(path))))
    settlements = settle_groups(reading.layout, mounting.mounts, choices)
    return ArrangedWall(source, reading.layout, settlements, typesetter)


def save_arrangement(wall: ArrangedWall, path: Path) -> None:
    """Write a new layout in which every open group is settled. Raises LayoutError and WriteError."""
    from templater.to_files.file import write_new_file

    saved = save_choices(wall.source.decode(), wall.layout, wall.settlements).encode()
    plan_wall(saved, str(path))
    _check_fonts_are_there(wall.layout, path)
    write_new_file(path, saved)


def _check_fonts_are_there(layout: Layout, path: Path) -> None:
    """Refuse a place for a layout from which its fonts could not be read. Raises WriteError."""
    _, faults = read_fonts(layout.fonts, path.parent)
    if faults:
        read_from = show_path(layout.wall.at.file)
        hint = f"save it beside {read_from}, or first copy the font to where it would be looked for"
        raise WriteError(
            [Fault(f"cannot save {show_path(path)}: {fault.message}", hint) for fault in faults]
        )


def write_contact_sheet(wall: ArrangedWall, path: Path) -> None:
    """Write a picture of all proposals, as PNG or SVG by the path's ending.

    Raises WriteError, and CairoMissingError where a PNG cannot be made.
    """
    from templater.to_files.png import png_bytes
    from templater.to_files.seal import write_sealed
    from templater.to_files.svg import svg_text

    form = overview_form(PrintSetup(default_paper(wall.layout.units), Margins(), 0.0))
    with set_by(wall.typesetter):
        layers, view = stack_pages(compose_contact_sheet(wall.settlements, form))
        svg = svg_text(layers, view, f"{wall.layout.title}: ways to hang", top=view.height)
    is_png = path.suffix.lower() == ".png"
    write_sealed(path, png_bytes(svg) if is_png else svg.encode())
