"""Runs every test of the scripts that have no page, each in Chromium, under its own sentence."""

from __future__ import annotations

import re

import pytest

from webapp.paths import ROOT

FILES = sorted((ROOT / "tests" / "js").glob("*.test.js"))
CASES = [
    (file.name, sentence)
    for file in FILES
    for sentence in re.findall(r'^test\("([^"]+)"', file.read_text(encoding="utf-8"), re.M)
]
RUN = """async ([file, sentence]) => { await import(`/tests/${file}`); const { run } = await import("/tests/says.js"); return run(sentence); }"""


@pytest.mark.parametrize(
    ("file", "sentence"), CASES, ids=[f"{file.removesuffix('.test.js')}: {sentence}" for file, sentence in CASES]
)
def test_script(scripts, file, sentence):
    assert scripts.evaluate(RUN, [file, sentence]) == ""


def test_every_script_without_a_page_touches_none():
    folder = ROOT / "webapp" / "static" / "js" / "chart"
    pure = [path for path in folder.rglob("*.js") if "workbench" not in path.parts and path.name != "page.js"]
    touching = [
        path.name
        for path in pure
        if re.search(r"\b(document|window|localStorage|location|navigator)\b\.", path.read_text(encoding="utf-8"))
    ]
    assert len(pure) > 20
    assert touching == []
