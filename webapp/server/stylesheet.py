"""The stylesheets of a page as one file: a browser waits for one answer in place of thirty."""

from __future__ import annotations

import re
from functools import cache
from pathlib import Path

IMPORT = re.compile(r'@import url\("([^"]+)"\)(?: layer\((\w+)\))?;')


@cache
def joined(sheet: Path) -> str:
    """The sheet with those it imports, from its own folder, in their places and layers."""
    return IMPORT.sub(lambda found: _imported(sheet.parent / found[1], found[2]), sheet.read_text("utf-8"))


def _imported(sheet: Path, layer: str | None) -> str:
    text = joined(sheet)
    return f"@layer {layer} {{\n{text}}}" if layer else text
