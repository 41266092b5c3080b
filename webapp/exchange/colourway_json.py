"""Colourways of a pattern as JSON, out and in."""

from __future__ import annotations

from typing import Any

from pydantic import BaseModel, ConfigDict, Field, ValidationError

from engine.cabinet.colourways import Colourway
from webapp.exchange.objections import objection
from webapp.exchange.pattern_file import EntryFields, FileError, load, palette_document, to_palette


class ColourwayFields(BaseModel):
    """A colourway: its name, and the beads that stand for the codes of the pattern."""

    model_config = ConfigDict(extra="forbid")
    name: str = Field(description="1 to 60 characters.", examples=["Dusk"])
    palette: list[EntryFields] = Field(description="As in a pattern file; codes that are left out stay as drawn.")


class KeptColourwayFields(ColourwayFields):
    """A colourway with its number."""

    id: int


class ColourwayList(BaseModel):
    """The colourways of a pattern."""

    colourways: list[KeptColourwayFields]


class KeptNumber(BaseModel):
    """The number that a colourway is kept under."""

    id: int


def colourway_json(number: int, colourway: Colourway) -> dict[str, Any]:
    """The colourway with its number."""
    return {"id": number, "name": colourway.name, "palette": palette_document(colourway.palette)}


def read_colourway_json(data: bytes) -> Colourway:
    """The colourway of that JSON. Raises NotJson, FileError, or what the engine objects to, each naming the field."""
    given = load(data)
    try:
        fields = ColourwayFields.model_validate(given, strict=True)
    except ValidationError as error:
        raise FileError(*objection(error, "a colourway")) from None
    return Colourway(fields.name, to_palette(given["palette"]))
