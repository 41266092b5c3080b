"""An app with something in every room, whose prints are no more than checked."""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager
from io import BytesIO
from pathlib import Path

import httpx
from fastapi import FastAPI
from PIL import Image

from engine.cabinet.bead import Bead
from engine.cabinet.colourways import Colourway
from tests.conftest import client_of
from tests.examples import harbour
from webapp.demo import examples
from webapp.pictures.photographs import bead_photograph
from webapp.printing.orders import AnyOrder, Order
from webapp.records import BeadPicture, FreshBooklet
from webapp.server.app import create_app
from webapp.settings import Settings
from webapp.storage import backup_folder, beads, colourways, editions, patterns, photographs, revisions
from webapp.storage.database import Database


@contextmanager
def asked_app(folder: Path, portal) -> Iterator[tuple[FastAPI, httpx.Client]]:
    """The app on a library with patterns, revisions, an edition, a copy, a photograph and a backup."""
    app = create_app(Settings(folder / "data", browser=False), examples())
    fill(app.state.services.database)
    jobs = app.state.services.jobs
    jobs.run = checked
    jobs._print = lambda job, order: None
    with client_of(app, portal) as client:
        yield app, client


def checked(order: AnyOrder) -> bytes:
    """Stands for the print of an order."""
    if isinstance(order, Order):
        order.check()
    return b"%PDF-1.7"


def fill(database: Database) -> None:
    revisions.save(database, 1, harbour(), 1)
    editions.publish(database, 1, 1, (FreshBooklet("Standard, A4", "{}", 4, b"%PDF-1.7"),), "", "First")
    editions.give(database, 1, 1, "Standard, A4", "Ada")
    photographs.add_all(database, 1, [(b"\xff\xd8\xff", 300, 300)])
    patterns.put_into_bin(database, 2)
    beads.add(database, Bead("Sea glass", "#2f7f76", stock_mg=20_000, key="bead"))
    beads.set_picture(database, "bead", BeadPicture(*bead_photograph("sea.png", a_picture())))
    colourways.add(database, 1, Colourway("Dusk", harbour().palette))
    backup_folder.make(database)


def a_picture() -> bytes:
    """A plain picture as a file."""
    out = BytesIO()
    Image.new("RGB", (60, 40), "#2f7f76").save(out, "PNG")
    return out.getvalue()
