"""The import rule, and how the tree is kept: arrows point from the importer to what it imports, and nothing points up."""

import ast
import sys
from collections.abc import Callable
from functools import cache
from graphlib import CycleError, TopologicalSorter
from pathlib import Path

import pytest

from webapp.paths import ROOT

TOP = {
    "README.md",
    "DEVELOPERS.md",
    "LICENSE",
    "pyproject.toml",
    "engine",
    "migrations",
    "templates",
    "tests",
    "webapp",
}
FLOOR = ("engine.errors", "engine.units", "engine.numbers", "engine.dates")
BASE = ("engine", "webapp.records", "webapp.settings", "webapp.paths", "webapp.money")
SIBLINGS = ("webapp.storage", "webapp.exchange", "webapp.pages", "webapp.pictures", "webapp.printing")
MAY_IMPORT = {
    "engine.errors": (),
    "engine.units": ("engine.errors",),
    "engine.numbers": ("engine.errors", "engine.units"),
    "engine.dates": (),
    "engine.pattern": FLOOR,
    "engine.counting": (*FLOOR, "engine.pattern"),
    "engine.drawing": (*FLOOR, "engine.pattern"),
    "engine.cabinet": (*FLOOR, "engine.pattern", "engine.counting"),
    "engine.booklet": (*FLOOR, "engine.pattern", "engine.counting", "engine.drawing", "engine.cabinet"),
    "engine.scenes": (*FLOOR, "engine.pattern", "engine.counting", "engine.drawing", "engine.cabinet"),
    "webapp.paths": (),
    "webapp.money": ("engine",),
    "webapp.settings": (),
    "webapp.records": ("engine",),
    "webapp.exchange": BASE,
    "webapp.pages": BASE,
    "webapp.pictures": BASE,
    "webapp.storage": (*BASE, "webapp.exchange.pattern_file", "webapp.exchange.portable"),
    "webapp.printing": (
        *BASE,
        "webapp.pages.rendering",
        "webapp.pictures.images",
        "webapp.machine",
        "webapp.bootstrap",
    ),
    "webapp.demo": (*BASE, "webapp.exchange.pattern_file", "webapp.exchange.bead_table"),
    "webapp.routes": (*BASE, *SIBLINGS, "webapp.demo"),
    "webapp.server": (*BASE, *SIBLINGS, "webapp.routes", "webapp.bootstrap"),
    "webapp.commands": (*BASE, *SIBLINGS, "webapp.server", "webapp.demo"),
    "webapp.__main__": ("webapp.bootstrap", "webapp.commands"),
    "webapp.bootstrap": ("webapp.machine",),
    "webapp.machine": (),
    "migrations": ("webapp.storage",),
}
SHARED_BY_ROUTES = {"webapp.routes.deps", "webapp.routes.described"}
STUDIO = ("beadform", "camera", "finishes", "fittings", "laying", "photograph", "poses", "relief", "shading", "shadow")
ONLY_IN = {
    "av": ("webapp.pictures.turning",),
    "numpy": (
        *(f"engine.drawing.{name}" for name in (*STUDIO, "telling_apart")),
        *(f"engine.scenes.{name}" for name in ("ends", "lying", "measured", "worn")),
        "engine.cabinet.nearness",
        "engine.cabinet.sampled",
        "engine.pattern.colour",
        "engine.pattern.colour_changes",
        "engine.pattern.old_charts",
        "engine.pattern.photographs",
        "engine.pattern.settled",
        "engine.counting.alignment",
        "webapp.pictures",
        "webapp.printing",
    ),
    "coloraide": ("engine.pattern.colour",),
    "babel": ("webapp.money",),
    "sqlmodel": ("webapp.storage",),
    "sqlalchemy": ("webapp.storage", "migrations"),
    "alembic": ("webapp.storage", "migrations"),
    "sqlite3": ("webapp.storage",),
    "pypdf": ("webapp.printing.copies",),
    "fontTools": ("webapp.printing.letters",),
    "pypdfium2": ("webapp.printing.proofread", "webapp.pictures.pdf_pages"),
    "weasyprint": ("webapp.printing.pdf",),
    "fastapi": ("webapp.routes", "webapp.server", "webapp.commands.serve"),
    "starlette": ("webapp.routes", "webapp.server"),
    "uvicorn": ("webapp.commands.serve", "webapp.server.connections"),
    "h11": ("webapp.server.connections",),
    "jinja2": ("webapp.pages.rendering",),
    "markupsafe": ("webapp.pages",),
    "pydantic": (
        "webapp.exchange.bead_json",
        "webapp.exchange.colourway_json",
        "webapp.exchange.frozen",
        "webapp.exchange.objections",
        "webapp.exchange.pattern_file",
        "webapp.exchange.zip_manifest",
        "webapp.exchange.results",
        "webapp.routes.described",
    ),
    "PIL": ("webapp.pictures",),
    "platformdirs": ("webapp.paths",),
}
IMPURE = {
    "asyncio",
    "datetime",
    "logging",
    "multiprocessing",
    "os",
    "pathlib",
    "random",
    "secrets",
    "shutil",
    "socket",
    "sqlite3",
    "subprocess",
    "tempfile",
    "threading",
    "time",
    "urllib",
    "open",
    "print",
    "input",
    "eval",
    "exec",
}
OURS = {".py", ".html", ".css", ".js", ".md", ".toml", ".mako"}


def files_of(*folders: str) -> list[Path]:
    found = (path for folder in folders for path in (ROOT / folder).rglob("*") if path.suffix in OURS)
    return sorted(path for path in found if not {"vendor", "results", "__pycache__"} & set(path.parts))


SOURCE = {
    ".".join(path.relative_to(ROOT).with_suffix("").parts).removesuffix(".__init__"): path
    for path in files_of("engine", "webapp", "migrations")
    if path.suffix == ".py"
}


@cache
def parsed(path: Path) -> ast.Module:
    return ast.parse(path.read_text(encoding="utf-8"))


@cache
def imports(module: str) -> frozenset[str]:
    """Every module that this one imports, also inside a function."""
    found: set[str] = set()
    for node in ast.walk(parsed(SOURCE[module])):
        if isinstance(node, ast.Import):
            found |= {name.name for name in node.names}
        elif isinstance(node, ast.ImportFrom):
            assert node.level == 0, f"{module} imports from a neighbour without its full name"
            found |= {full if (full := f"{node.module}.{name.name}") in SOURCE else node.module for name in node.names}
    return frozenset(found)


def calls(tree: ast.Module) -> list[ast.Call]:
    return [node for node in ast.walk(tree) if isinstance(node, ast.Call)]


def within(module: str, rooms: tuple[str, ...]) -> bool:
    return any(module == room or module.startswith(f"{room}.") for room in rooms)


def room_of(module: str) -> str:
    return next((room for room in MAY_IMPORT if within(module, (room,))), module)


def found(wrong: Callable[[str], set[str]]) -> dict[str, set[str]]:
    """What is wrong, by module."""
    return {module: names for module in SOURCE if (names := wrong(module))}


def test_modules_import_only_what_stands_below_them():
    def wrong(module):
        own = {name for name in imports(module) if name.split(".")[0] in ("engine", "webapp")}
        return {
            name
            for name in own
            if room_of(name) != room_of(module) and not within(name, MAY_IMPORT.get(room_of(module), ()))
        }

    assert found(wrong) == {}


def test_routes_do_not_import_one_another():
    def wrong(module):
        return {
            name for name in imports(module) if within(module, ("webapp.routes",)) and within(name, ("webapp.routes",))
        }

    others = {
        module: names - SHARED_BY_ROUTES for module, names in found(wrong).items() if module != "webapp.routes.all"
    }
    assert {module: names for module, names in others.items() if names} == {}


def test_a_library_is_known_only_where_it_belongs():
    def wrong(module):
        others = {name.split(".")[0] for name in imports(module)} - {"engine", "webapp", "migrations"}
        foreign = {name for name in others if name in ONLY_IN or name not in sys.stdlib_module_names}
        return {name for name in foreign if not within(module, ONLY_IN.get(name, ()))}

    assert found(wrong) == {}


def test_the_engine_has_no_files_no_clock_and_no_chance():
    def wrong(module):
        if not within(module, ("engine",)):
            return set()
        called = {node.func.id for node in calls(parsed(SOURCE[module])) if isinstance(node.func, ast.Name)}
        reached = {name.split(".")[0] for name in imports(module)} | called
        return reached & IMPURE

    assert found(wrong) == {}


def test_values_of_more_than_four_fields_are_made_by_keyword():
    modules = [module for module in SOURCE if within(module, ("engine", "webapp"))]
    trees = [parsed(SOURCE[module]) for module in modules]
    classes = {node.name for tree in trees for node in ast.walk(tree) if isinstance(node, ast.ClassDef)}

    def wrong(module):
        long = (node for node in calls(parsed(SOURCE[module])) if len(node.args) > 4)
        made = ((node, ast.unparse(node.func).rpartition(".")[2]) for node in long)
        return {f"{name}, line {node.lineno}" for node, name in made if name in classes}

    assert {module: names for module in modules if (names := wrong(module))} == {}


def test_modules_form_no_rings():
    try:
        TopologicalSorter({module: imports(module) & set(SOURCE) for module in SOURCE}).prepare()
    except CycleError as error:
        pytest.fail(f"a ring: {' → '.join(error.args[1])}")


def test_one_script_alone_talks_to_the_server():
    scripts = [path for path in files_of("webapp/static/js") if path.suffix == ".js"]
    talking = [
        path.name
        for path in scripts
        if any(
            word in path.read_text(encoding="utf-8")
            for word in ("fetch(", "XMLHttpRequest", "WebSocket", "EventSource", "sendBeacon")
        )
    ]
    assert talking == ["server.js"]


def test_every_module_says_what_it_is_for():
    modules = [path for path in files_of("engine", "webapp", "migrations", "tests") if path.suffix == ".py"]
    said = {str(path.relative_to(ROOT)): ast.get_docstring(parsed(path)) or "" for path in modules}
    assert [name for name, words in said.items() if not words.split("\n\n")[0].endswith((".", "?"))] == []


def test_no_file_is_too_long_to_hold_in_the_head():
    ours = [
        *files_of("engine", "webapp", "migrations", "templates", "tests"),
        *(ROOT / name for name in TOP if (ROOT / name).is_file()),
    ]
    lines = {str(path.relative_to(ROOT)): path.read_text(encoding="utf-8").count("\n") for path in ours}
    assert {name: number for name, number in lines.items() if number > 600} == {}


def test_the_top_holds_nothing_else():
    assert {path.name for path in ROOT.iterdir() if not path.name.startswith(".")} == TOP


def test_lines_of_page_templates_can_be_read_without_turning_them():
    pages = [path for kind in ("html", "css") for path in (ROOT / "templates").rglob(f"*.{kind}")]
    assert len(pages) > 70
    assert {
        path.name: len(line) for path in pages for line in path.read_text("utf-8").splitlines() if len(line) > 160
    } == {}
