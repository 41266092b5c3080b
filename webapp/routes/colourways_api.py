"""The colourways of a pattern as JSON."""

from __future__ import annotations

from typing import Any

from fastapi import APIRouter

from webapp.exchange.colourway_json import (
    ColourwayFields,
    ColourwayList,
    KeptNumber,
    colourway_json,
    read_colourway_json,
)
from webapp.routes.deps import Body, Stored, TheDatabase
from webapp.routes.described import answers
from webapp.storage import colourways

router = APIRouter(tags=["patterns"])
SCHEMA = ColourwayFields.model_json_schema()
BODY = {"requestBody": {"required": True, "content": {"application/json": {"schema": SCHEMA}}}}


@router.get("/api/patterns/{id}/colourways", responses=answers(ColourwayList))
def list_colourways(stored: Stored, database: TheDatabase) -> dict[str, Any]:
    """The colourways of a pattern in the order in which they were made; its own palette is none of them."""
    return {"colourways": [colourway_json(kept.id, kept.colourway) for kept in colourways.of(database, stored.id)]}


@router.post("/api/patterns/{id}/colourways", status_code=201, openapi_extra=BODY, responses=answers(KeptNumber, 201))
def post_colourway(stored: Stored, body: Body, database: TheDatabase) -> dict[str, int]:
    """Gives a pattern another colourway; its booklet can be printed in it by its number."""
    return {"id": colourways.add(database, stored.id, read_colourway_json(body))}
