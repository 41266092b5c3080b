"""The cabinet as JSON."""

from __future__ import annotations

from string import ascii_uppercase
from typing import Annotated, Any

from fastapi import APIRouter, Depends, Query

from engine.cabinet.finding import find_beads
from engine.pattern.colour import TOO_NEAR, look_alikes
from engine.pattern.palette import MOST_ENTRIES, Entry, Palette, check_colour
from webapp.exchange.bead_json import (
    BeadFields,
    BeadList,
    KeptBeadFields,
    KeptKey,
    LookAlikes,
    bead_json,
    read_bead_json,
)
from webapp.pages.addresses import PATHS
from webapp.pages.forms.beads import read_bead_finder
from webapp.routes.deps import Body, TheDatabase
from webapp.routes.described import answers
from webapp.storage import beads, workshop

router = APIRouter(tags=["beads"])
PER_PAGE = 100
BODY = {"requestBody": {"required": True, "content": {"application/json": {"schema": BeadFields.model_json_schema()}}}}


class BeadQuery:
    """What the cabinet is narrowed to, as at `/beads`."""

    def __init__(
        self,
        search: str = "",
        kind: str = "",
        stock: str = "",
        near: str = "",
        sort: str = "",
        archived: bool = False,
        page: int = 1,
    ) -> None:
        said = {"search": search, "kind": kind, "stock": stock, "near": near, "sort": sort, "page": str(page)}
        pairs = [*said.items(), *((("by_colour", "yes"),) if near else ()), ("archived", "yes" if archived else "")]
        self.finder = read_bead_finder(pairs)


@router.get("/api/beads", responses=answers(BeadList))
def list_beads(database: TheDatabase, asked: Annotated[BeadQuery, Depends()]) -> dict[str, Any]:
    """The beads that were found, 100 at a time; `stock` is in or out, `near` a colour such as #2f7f76."""
    finder = asked.finder
    listed = find_beads(beads.shelf(database, finder.archived), finder.wanted, finder.sort)
    pages = max(1, -(-len(listed) // PER_PAGE))
    page = min(finder.page, pages)
    shown = listed[(page - 1) * PER_PAGE :][:PER_PAGE]
    return {
        "beads": [bead_json(bead, finder.archived) for bead in shown],
        "page": page,
        "pages": pages,
        "total": len(listed),
    }


@router.get(PATHS["api_look_alikes"], responses=answers(LookAlikes))
def get_look_alikes(colour: Annotated[list[str], Query(min_length=2, max_length=MOST_ENTRIES)]) -> dict[str, Any]:
    """Which of two to 64 colours look alike, and to whose eyes; CIEDE2000 differences, places as they were sent."""
    for place, one in enumerate(colour):
        check_colour(one, f"colour.{place}")
    codes = (first + second for first in ascii_uppercase for second in ascii_uppercase)
    entries = tuple(Entry(code, code, one) for code, one in zip(codes, colour, strict=False))
    return {"threshold": TOO_NEAR, "pairs": [pair._asdict() for pair in look_alikes(Palette(entries))]}


@router.get("/api/beads/{bead}", responses=answers(KeptBeadFields))
def get_bead(bead: str, database: TheDatabase) -> dict[str, Any]:
    """A bead of the cabinet."""
    kept = beads.load(database, bead)
    return bead_json(kept.bead, kept.archived)


@router.post("/api/beads", status_code=201, openapi_extra=BODY, responses=answers(KeptKey, 201))
def post_bead(body: Body, database: TheDatabase) -> dict[str, Any]:
    """Takes a bead into the cabinet."""
    return {"bead": beads.add(database, read_bead_json(body, workshop.kinds(database))), "followed": 0}


@router.put("/api/beads/{bead}", openapi_extra=BODY, responses=answers(KeptKey))
def put_bead(bead: str, body: Body, database: TheDatabase) -> dict[str, Any]:
    """Replaces all that is said of a bead; unpublished patterns that point at it follow."""
    kept = beads.load(database, bead)
    given = read_bead_json(body, {*workshop.kinds(database), kept.bead.kind}, bead)
    return {"bead": bead, "followed": beads.save(database, given)}
