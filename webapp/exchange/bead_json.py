"""A bead of the cabinet as JSON, out and in."""

from __future__ import annotations

import json
from collections.abc import Collection
from math import isfinite
from typing import Any

from pydantic import BaseModel, ConfigDict, Field, StrictFloat, StrictInt, StrictStr, ValidationError

from engine.cabinet.bead import Bead
from engine.errors import ChoiceError, EngineError
from engine.pattern.palette import FINISHES
from webapp.exchange.objections import objection
from webapp.exchange.pattern_file import NotJson
from webapp.money import read_currency

OF_FIELD = {"pack_mg": "pack_grams", "stock_mg": "stock_grams"}
GRAMS = dict.fromkeys(OF_FIELD.values(), "expected a number")


class BeadError(EngineError):
    """JSON that says something else than a bead."""

    code = "bead"


class BeadFields(BaseModel):
    """A bead of the cabinet."""

    model_config = ConfigDict(extra="forbid")
    name: StrictStr = Field(description="1 to 120 characters.", examples=["Sea glass"])
    colour: StrictStr = Field(description="# and six hexadecimal digits.", examples=["#2f7f76"])
    kind: StrictStr = Field("11/0 round", description="Name of a bead kind.")
    finish: StrictStr = Field("opaque", description="One of " + ", ".join(FINISHES) + ".")
    maker_code: StrictStr = ""
    supplier: StrictStr = ""
    pack_grams: StrictInt | StrictFloat = Field(0, description="What a pack holds; nought: not known.")
    price: StrictInt = Field(0, description="Of a pack, in whole smallest coins of the currency; nought: not known.")
    currency: StrictStr = Field("", description="A code of ISO 4217; needed where there is a price.", examples=["EUR"])
    stock_grams: StrictInt | StrictFloat = 0
    note: StrictStr = ""


class KeptBeadFields(BeadFields):
    """A bead with what it is kept under."""

    bead: str = Field(description="Its key, at which palette entries point.")
    archived: bool


class BeadList(BaseModel):
    """A page of the cabinet; pages count from one."""

    beads: list[KeptBeadFields]
    page: int
    pages: int
    total: int


class KeptKey(BaseModel):
    """What a bead is kept under, and how many unpublished patterns followed a change of it."""

    bead: str
    followed: int


class AlikePair(BaseModel):
    """Two colours that look alike, by their places, to which eyes most, and how far apart they are to those."""

    first: int
    second: int
    sight: str = Field(description="plain, protan, deutan or tritan.")
    difference: float


class LookAlikes(BaseModel):
    """The pairs nearer than the threshold, the nearest first."""

    threshold: float
    pairs: list[AlikePair]


def bead_json(bead: Bead, archived: bool) -> dict[str, Any]:
    """The bead with its key."""
    return {
        "bead": bead.key,
        "name": bead.name,
        "colour": bead.colour,
        "kind": bead.kind,
        "finish": bead.finish,
        "maker_code": bead.maker_code,
        "supplier": bead.supplier,
        "pack_grams": bead.pack_mg / 1000,
        "price": bead.price,
        "currency": bead.currency,
        "stock_grams": bead.stock_mg / 1000,
        "note": bead.note,
        "archived": archived,
    }


def read_bead_json(data: bytes, kinds: Collection[str], key: str = "") -> Bead:
    """The bead of that JSON, under that key; `bead` and `archived` beside it are let through.

    Raises NotJson, BeadError, or what the engine objects to, each naming the field.
    """
    given = _loaded(data)
    try:
        fields = BeadFields.model_validate(
            {name: value for name, value in given.items() if name not in ("bead", "archived")}
        )
    except ValidationError as error:
        raise BeadError(*objection(error, "a bead", GRAMS)) from None
    if fields.kind not in kinds:
        raise ChoiceError("Bead kind", fields.kind, kinds, "kind")
    said = fields.model_dump(exclude={"pack_grams", "stock_grams", "currency", "colour"})
    currency = _currency(fields.currency)
    try:
        return Bead(
            **said,
            colour=fields.colour.lower(),
            currency=currency,
            pack_mg=_milligrams(fields.pack_grams, "pack_grams"),
            stock_mg=_milligrams(fields.stock_grams, "stock_grams"),
            key=key,
        )
    except EngineError as error:
        raise error.at(OF_FIELD.get(error.field or "", error.field or "")) from None


def _loaded(data: bytes) -> dict[str, Any]:
    try:
        given = json.loads(data)
        json.dumps(given, ensure_ascii=False).encode()  # half a letter cannot be kept
    except (UnicodeError, ValueError, RecursionError):
        raise NotJson("This is not JSON in UTF-8.") from None
    if not isinstance(given, dict):
        raise BeadError("This is JSON but not a bead; expected an object in braces.")
    return given


def _milligrams(grams: float, field: str) -> int:
    if not (isfinite(grams) and 0 <= grams <= 1e6):
        raise BeadError(f"“{field}” is nought or more grams, and not beyond all measure.", field)
    return round(grams * 1000)


def _currency(code: str) -> str:
    try:
        return read_currency(code) if code else ""
    except EngineError as error:
        raise error.at("currency") from None
