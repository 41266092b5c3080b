"""Colourways as rows keep them: the entries of their palettes as the text of a pattern file."""

from __future__ import annotations

import json

from engine.cabinet.colourways import Colourway
from engine.pattern.palette import Palette
from webapp.exchange import pattern_file
from webapp.storage.tables import ColourwayRow


def colourway_of(row: ColourwayRow) -> Colourway:
    """The colourway of a row."""
    return Colourway(row.name, palette_of(row.palette))


def palette_of(text: str) -> Palette:
    """A palette as it was kept. Raises FileError for a text that is none."""
    return pattern_file.to_palette(pattern_file.load_entries(text))


def palette_text(palette: Palette) -> str:
    """The text under which a palette is kept."""
    return json.dumps(pattern_file.palette_document(palette), ensure_ascii=False)
