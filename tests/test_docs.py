"""README.md and DEVELOPERS.md name what exists, and nothing that a person needs is missing from them."""

import argparse
import ast
import re
from functools import cache
from importlib import import_module

import pytest

from webapp.commands import COMMANDS, MODULES
from webapp.paths import ROOT

PAGES = {name: (ROOT / name).read_text(encoding="utf-8") for name in ("README.md", "DEVELOPERS.md")}
SUFFIXES = (".py", ".md", ".toml", ".txt", ".json", ".html", ".css", ".js", ".mako")
MADE_WHEN_RUN = {".venv", "copies/"}
OTHER_PROGRAMS = ("uv ", "apt", "brew", "git ")


def code(page: str) -> list[str]:
    """Everything in backticks, and every line of a block of code."""
    blocks = re.findall(r"```\n(.*?)```", PAGES[page], re.S)
    return [line for block in blocks for line in block.splitlines()] + re.findall(
        r"(?<!`)`([^`\n]+)`(?!`)", PAGES[page]
    )


def options(command: str) -> set[str]:
    """Every option that a command takes."""
    parser = argparse.ArgumentParser()
    import_module(f"webapp.commands.{MODULES.get(command, command)}").add_options(parser)
    return {option for action in parser._actions for option in action.option_strings}


def paths(page: str) -> list[str]:
    """What is written as the path of a file or a folder of ours."""
    words = [word for text in code(page) if not text.startswith(OTHER_PROGRAMS) for word in [text.rstrip(".,;")]]
    plain = [word for word in words if re.fullmatch(r"[\w.-]+(/[\w.-]+)*/?", word)]
    return [word for word in plain if ("/" in word or word.endswith(SUFFIXES)) and word not in MADE_WHEN_RUN]


@pytest.mark.parametrize("page", PAGES)
def test_every_file_and_folder_that_is_named_exists(page):
    named = paths(page)
    assert named != []
    bare = {path.name for folder in ("webapp", "engine", "tests") for path in (ROOT / folder).rglob("*.py")}
    assert [path for path in named if not (ROOT / path).exists() and path not in bare] == []


@pytest.mark.parametrize("page", PAGES)
def test_every_link_and_picture_leads_somewhere(page):
    targets = [target for target in re.findall(r"\]\(([^)#]+)\)", PAGES[page]) if "://" not in target]
    assert [target for target in targets if not (ROOT / target).exists()] == []


@pytest.mark.parametrize("page", PAGES)
def test_every_command_that_is_named_exists(page):
    said = [re.findall(r"^python3 -m webapp(?: ([a-z]+))?", text) for text in code(page)]
    assert {command for found in said for command in found if command} <= set(COMMANDS)
    assert any(found for found in said)


@pytest.mark.parametrize("page", PAGES)
def test_every_option_that_is_named_is_taken(page):
    taken = set().union(*(options(command) for command in COMMANDS))
    ours = [text for text in code(page) if not text.startswith(OTHER_PROGRAMS)]
    assert {option for text in ours for option in re.findall(r"(?<!\S)--?[a-z][a-z-]*", text)} - {
        "-m",
        "-k",
    } <= taken | {"--help"}


def test_every_command_is_described():
    said = " ".join(text for page in PAGES for text in code(page))
    assert [command for command in COMMANDS if not re.search(rf"\b{command}\b", said)] == []


def test_the_benchmark_that_is_named_can_be_run():
    assert "python3 -m tests bench" in code("DEVELOPERS.md")
    assert callable(import_module("tests.bench.run").main)


def steps() -> list[list[str]]:
    """The rows of the path of one chart: number, call, what it gives, where it lives."""
    section = PAGES["DEVELOPERS.md"].split("## The path of one chart")[1].split("\n## ")[0]
    return [
        [cell.strip() for cell in line.strip("|").split("|")]
        for line in section.splitlines()
        if re.match(r"\| \d", line)
    ]


def test_the_path_of_one_chart_has_eight_steps_with_functions_that_exist():
    assert [row[0] for row in steps()] == list("12345678")
    for number, call, gives, home, *_ in steps():
        module = re.search(r"`([\w/]+)\.py`", home).group(1).replace("/", ".")
        names = re.findall(r"`(\w+)", call)
        assert names, f"step {number} names no function"
        assert [name for name in names if not callable(getattr(import_module(module), name, None))] == [], (
            f"step {number}"
        )
        for name in re.findall(r"`([A-Z]\w+)`", gives):
            assert name in classes(), f"step {number} gives {name}"


@cache
def classes() -> set[str]:
    trees = (
        ast.parse(path.read_text(encoding="utf-8"))
        for folder in ("engine", "webapp")
        for path in (ROOT / folder).rglob("*.py")
    )
    return {node.name for tree in trees for node in ast.walk(tree) if isinstance(node, ast.ClassDef)}
