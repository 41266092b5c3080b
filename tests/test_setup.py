"""The lock files against what pyproject.toml asks for, and what old Pythons have to be able to read."""

import ast
import re
import tomllib
from pathlib import Path
from typing import NamedTuple

import pytest
from packaging.requirements import Requirement
from packaging.specifiers import SpecifierSet
from packaging.utils import canonicalize_name

from tests import __main__ as checks
from webapp import bootstrap
from webapp.settings import VERSION

ROOT = Path(bootstrap.ROOT)
PROJECT = tomllib.loads((ROOT / "pyproject.toml").read_text(encoding="utf-8"))
ASKED = {"webapp": PROJECT["project"]["dependencies"], "tests": PROJECT["dependency-groups"]["test"]}
READ_BY_OLD_PYTHONS = [
    "webapp/__init__.py",
    "webapp/__main__.py",
    "webapp/bootstrap.py",
    "webapp/machine.py",
    "tests/__init__.py",
    "tests/__main__.py",
]


class Entry(NamedTuple):
    """One package of a lock file; where Pythons need different versions it stands there more than once."""

    name: str
    version: str
    hashes: tuple[str, ...]


def entries(program: str) -> tuple[Entry, ...]:
    text = (ROOT / bootstrap.LOCKS[program]).read_text(encoding="utf-8").replace("\\\n", "")
    return tuple(entry(line) for line in text.splitlines())


def entry(line: str) -> Entry:
    found = re.fullmatch(r"([\w.-]+)==([\w.]+) (?:; [^-]+)?((?: *--hash=sha256:[0-9a-f]{64})+)", line)
    assert found, f"neither comment, address nor anything else but pinned packages with hashes: {line[:80]}"
    return Entry(canonicalize_name(found[1]), found[2], tuple(found[3].split()))


def versions(program: str) -> dict[str, set[str]]:
    found: dict[str, set[str]] = {}
    for package in entries(program):
        found.setdefault(package.name, set()).add(package.version)
    return found


@pytest.mark.parametrize("program", bootstrap.LOCKS)
def test_every_package_asked_for_is_locked_at_a_version_within_its_range(program: str) -> None:
    locked = versions(program)
    for asked in map(Requirement, ASKED[program]):
        found = locked.get(canonicalize_name(asked.name), set())
        assert found and all(asked.specifier.contains(version) for version in found), asked


def test_packages_in_both_locks_have_the_same_versions() -> None:
    app, tests = versions("webapp"), versions("tests")
    shared = app.keys() & tests.keys()
    assert shared
    assert {name: app[name] for name in shared} == {name: tests[name] for name in shared}


def test_the_bounds_of_python_are_the_ones_set_up_says() -> None:
    oldest, newest = bootstrap.OLDEST, bootstrap.NEWEST
    bounds = SpecifierSet(f">={oldest[0]}.{oldest[1]},<{newest[0]}.{newest[1] + 1}")
    assert SpecifierSet(PROJECT["project"]["requires-python"]) == bounds


@pytest.mark.parametrize("name", READ_BY_OLD_PYTHONS)
def test_old_pythons_can_read_what_tells_them_that_they_are_old(name: str) -> None:
    tree = ast.parse((ROOT / name).read_text(encoding="utf-8"), name, feature_version=(3, 6))
    for node in ast.walk(tree):
        for annotation in (getattr(node, "annotation", None), getattr(node, "returns", None)):
            assert not newer_than_3_6(annotation), f"{name}:{annotation.lineno} needs quotes or typing"
        assert not (isinstance(node, ast.ImportFrom) and node.module == "__future__"), name


EVERY_CHECK = [
    "ruff check .",
    "ruff format --check .",
    "mypy",
    f"pytest -n {checks.AT_ONCE} --dist loadfile --no-loadscope-reorder",
]


def newer_than_3_6(annotation: ast.expr | None) -> bool:
    """Whether evaluating this annotation takes `list[str]` or `int | None`, which came with 3.9 and 3.10."""
    return annotation is not None and any(
        isinstance(node, ast.BinOp)
        or (isinstance(node, ast.Subscript) and getattr(node.value, "id", "") in ("dict", "list", "set", "tuple"))
        for node in ast.walk(annotation)
    )


def test_nothing_is_imported_before_the_packages_are_there() -> None:
    tree = ast.parse((ROOT / "webapp/__init__.py").read_text(encoding="utf-8"))
    assert not any(isinstance(node, (ast.Import, ast.ImportFrom)) for node in ast.walk(tree))


@pytest.mark.parametrize(
    ("arguments", "failing", "ran", "status", "last"),
    [
        ([], (), EVERY_CHECK, 0, ""),
        (
            [],
            ("mypy", "pytest"),
            EVERY_CHECK,
            1,
            "Failed: mypy, pytest.",
        ),
        (
            ["-k", "rope"],
            (),
            ["pytest -k rope"],
            0,
            "Only pytest, with these arguments; python3 -m tests alone runs ruff and mypy too.",
        ),
    ],
    ids=["all passes", "some fails", "some tests"],
)
def test_the_checks_run_in_order_and_name_what_failed(
    arguments: list[str],
    failing: tuple[str, ...],
    ran: list[str],
    status: int,
    last: str,
    monkeypatch: pytest.MonkeyPatch,
    capsys: pytest.CaptureFixture[str],
) -> None:
    seen: list[str] = []
    monkeypatch.setattr(checks, "call", lambda *check: (seen.append(" ".join(check)), int(check[0] in failing))[1])
    assert (checks.main(arguments), seen) == (status, ran)
    assert capsys.readouterr().out.strip() == last


def test_the_version_that_is_shown_is_that_of_the_project() -> None:
    assert PROJECT["project"]["version"] == VERSION
