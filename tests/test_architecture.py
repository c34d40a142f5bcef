"""The rooms of the program follow the data: none imports a later one, and there is no way round."""

from __future__ import annotations

import ast
from collections.abc import Iterator
from pathlib import Path

import pytest

ROOT = Path(__file__).parent.parent / "templater"
DEVELOPERS = (ROOT.parent / "DEVELOPERS.md").read_text("utf-8")
ROOMS = (
    "layout",
    "mounting",
    "placement",
    "printing",
    "rules",
    "search",
    "scene",
    "sheets",
    "to_files",
    "verify",
)
ABOVE = {"font_files", "pipeline", "calibrating", "proving", "commands", "cli", "__main__"}

# Which libraries may be imported where: a room, or a module of the root.
FENCES = {
    "click": {"commands", "cli"},
    "rich": {"commands"},
    "yaml": {"layout"},
    "pydantic": {"layout"},
    "reportlab": {"to_files"},
    "svgwrite": {"to_files"},
    "cairosvg": {"to_files"},
    "fontTools": {"typeface", "verify"},
    "uharfbuzz": {"given_fonts"},
    "bidi": {"reading_order"},
    "pikepdf": {"verify"},
    "platformdirs": {"to_files"},
    # What knows of the machine, the clock or chance.
    **{
        library: {"to_files", "cli"} if library == "os" else {"to_files"}
        for library in ("os", "tempfile", "shutil", "subprocess", "time", "datetime")
    },
    "random": {"placement"},
}


def _name(path: Path) -> str:
    parts = path.relative_to(ROOT.parent).with_suffix("").parts
    return ".".join(parts[:-1] if parts[-1] == "__init__" else parts)


MODULES = {_name(path): ast.parse(path.read_text("utf-8")) for path in sorted(ROOT.rglob("*.py"))}


def _imports(tree: ast.Module) -> Iterator[str]:
    """Every module that is imported, wherever in the file."""
    for node in ast.walk(tree):
        if isinstance(node, ast.Import):
            yield from (alias.name for alias in node.names)
        elif isinstance(node, ast.ImportFrom):
            assert node.level == 0, "a relative import"
            assert node.module is not None
            yield node.module


def _own_imports(name: str) -> set[str]:
    return {module for module in _imports(MODULES[name]) if module.split(".")[0] == "templater"}


def _room(name: str) -> str:
    """The room of a module, or its own name if it stands in the root."""
    return name.split(".")[1] if "." in name else ""


def test_the_rooms_are_the_folders_there_are() -> None:
    folders = {path.name for path in ROOT.iterdir() if (path / "__init__.py").exists()}
    assert folders == {*ROOMS, "commands"}


@pytest.mark.parametrize(("stage", "room"), list(enumerate(ROOMS, start=1)))
def test_a_room_tells_its_stage_as_the_developers_guide_counts_it(stage: int, room: str) -> None:
    told = ast.get_docstring(MODULES[f"templater.{room}"]) or ""
    assert told.startswith(f"Stage {stage}: ")
    assert f"| {stage} | `{room}/` |" in DEVELOPERS


@pytest.mark.parametrize("name", MODULES)
def test_a_module_imports_only_from_what_comes_before_it(name: str) -> None:
    room = _room(name)
    for imported in _own_imports(name):
        assert imported in MODULES, f"{name} imports {imported}"
        other = _room(imported)
        if room in ROOMS:
            earlier = ROOMS[: ROOMS.index(room) + 1]
            assert other not in ABOVE, f"{name} imports {imported}"
            assert other not in ROOMS or other in earlier, f"{name} imports {imported}"
        elif room not in ABOVE:
            assert other not in (*ROOMS, *ABOVE), f"{name} imports {imported}"


def test_only_the_version_is_imported_from_the_root() -> None:
    from_root = {name for name in MODULES if "templater" in _own_imports(name)}
    assert from_root <= {"templater.cli", "templater.pipeline", "templater.proving"}


def test_the_proof_knows_nothing_of_what_draws_and_writes() -> None:
    seen = {_room(other) for name in MODULES if _room(name) == "verify" for other in _own_imports(name)}
    assert not seen & {"scene", "sheets", "to_files"}


def test_reading_ink_knows_nothing_of_what_the_proof_makes_of_it() -> None:
    ink = "templater.verify.ink."
    for name in MODULES:
        if name.startswith(ink):
            seen = {other for other in _own_imports(name) if _room(other) == "verify"}
            assert all(each == "templater.verify.model" or each.startswith(ink) for each in seen), name


def test_of_the_proof_only_what_reads_ink_knows_how_pdf_fonts_and_svg_are_written() -> None:
    for name, tree in MODULES.items():
        if _room(name) == "verify" and not name.startswith("templater.verify.ink."):
            libraries = {module.split(".")[0] for module in _imports(tree)}
            assert not libraries & {"pikepdf", "fontTools", "xml"}, name


def test_no_imports_go_round_in_a_circle() -> None:
    done: set[str] = set()

    def follow(name: str, way: tuple[str, ...]) -> None:
        assert name not in way, " -> ".join((*way, name))
        if name not in done:
            for imported in sorted(_own_imports(name)):
                follow(imported, (*way, name))
            done.add(name)

    for name in MODULES:
        follow(name, ())
    assert done == set(MODULES)


@pytest.mark.parametrize("library", FENCES)
def test_a_library_is_imported_only_where_it_belongs(library: str) -> None:
    users = {
        _room(name)
        for name, tree in MODULES.items()
        if any(module.split(".")[0] == library for module in _imports(tree))
    }
    assert users <= FENCES[library]


@pytest.mark.parametrize("name", MODULES)
def test_only_the_command_line_prints_and_exits(name: str) -> None:
    called = {ast.unparse(node.func) for node in ast.walk(MODULES[name]) if isinstance(node, ast.Call)}
    assert "print" not in called
    if _room(name) not in ("commands", "cli"):
        assert not {"sys.exit", "exit", "input", "click.echo"} & called


def test_chance_is_drawn_from_a_seed_so_that_it_comes_out_the_same_everywhere() -> None:
    for tree in MODULES.values():
        for node in ast.walk(tree):
            if isinstance(node, ast.ImportFrom) and node.module == "random":
                assert [alias.name for alias in node.names] == ["Random"]
            if isinstance(node, ast.Call) and ast.unparse(node.func) == "Random":
                assert node.args


@pytest.mark.parametrize("name", MODULES)
def test_an_assert_only_helps_the_type_checker(name: str) -> None:
    checks = [node.test for node in ast.walk(MODULES[name]) if isinstance(node, ast.Assert)]
    assert all(ast.unparse(check).endswith(" is not None") for check in checks)


@pytest.mark.parametrize("name", MODULES)
def test_every_module_says_what_it_is_for(name: str) -> None:
    told = ast.get_docstring(MODULES[name])
    assert told is not None
    assert told.splitlines()[0].endswith(".")
