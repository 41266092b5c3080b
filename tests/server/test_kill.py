"""Whatever moment the server is killed at, every save that it has acknowledged is in the library."""

from __future__ import annotations

import itertools
import json
import random
import sqlite3
import threading
import time
from contextlib import closing
from pathlib import Path

import httpx

from tests.examples import harbour
from tests.server.nursery import Nursery
from webapp.exchange import pattern_file

ROUNDS, MAKERS = 11, 4
DOCUMENT = pattern_file.to_document(harbour())


class Maker(threading.Thread):
    """Keeps saving one pattern, by turns as a revision and as a working copy, until nobody answers.

    `revisions` and `working` are what was acknowledged; `sent` may have been on its way when the server died.
    """

    def __init__(self, address: str, name: str) -> None:
        super().__init__(daemon=True)
        self.address, self.title = address, name
        self.acknowledged = threading.Event()
        self.revisions: dict[int, str] = {}
        self.numbers = itertools.count(1)
        self.working = self.sent = ""

    def run(self) -> None:
        with httpx.Client(base_url=self.address, timeout=30) as caller:
            try:
                self.save(caller)
            except httpx.TransportError:
                return

    def save(self, caller: httpx.Client) -> None:
        made = self.send(caller, "POST", "/api/patterns", {}).json()
        self.id, revision = made["id"], made["revision"]
        self.revisions[revision] = self.sent
        while True:
            for _ in range(3):
                sequence = caller.get(f"/api/patterns/{self.id}").json()["sequence"]
                self.send(caller, "PUT", f"/api/patterns/{self.id}/working", {"sequence": sequence})
                self.working = self.sent
                self.acknowledged.set()
            revision = self.send(caller, "PUT", f"/api/patterns/{self.id}", {"made_from": revision}).json()["revision"]
            self.revisions[revision] = self.sent

    def send(self, caller: httpx.Client, method: str, address: str, beside: dict[str, int]) -> httpx.Response:
        self.sent = f"{self.title}, save {next(self.numbers)}"
        return caller.request(method, address, json={**DOCUMENT, **beside, "title": self.sent}).raise_for_status()


def test_kills_during_the_saves_of_several_makers_lose_nothing_that_was_acknowledged(
    tmp_path: Path, nursery: Nursery
) -> None:
    chance, data = random.Random(8620), tmp_path / "data"
    makers: list[Maker] = []
    for number in range(ROUNDS):
        with nursery.serving(data) as server:
            at_work = [Maker(server.address, f"Maker {number}.{place}") for place in range(MAKERS)]
            for maker in at_work:
                maker.start()
            assert all(maker.acknowledged.wait(30) for maker in at_work)
            time.sleep(0.4 * (number + chance.random()) / ROUNDS)
            server.kill()
        for maker in at_work:
            maker.join(30)
        makers += at_work
        assert_nothing_is_lost(data / "library.sqlite", makers)
    assert sum(len(maker.revisions) for maker in makers) > ROUNDS * MAKERS
    assert any(maker.sent not in (maker.working, *maker.revisions.values()) for maker in makers)


def assert_nothing_is_lost(library: Path, makers: list[Maker]) -> None:
    with closing(sqlite3.connect(library)) as connection:
        assert connection.execute("PRAGMA integrity_check").fetchall() == [("ok",)]
        assert connection.execute("PRAGMA foreign_key_check").fetchall() == []
        for maker in makers:
            kept = {
                number: whole(text)
                for number, text in connection.execute(
                    "SELECT number, document FROM revision WHERE pattern = ?", (maker.id,)
                )
            }
            working = [
                whole(text)
                for (text,) in connection.execute("SELECT document FROM working WHERE pattern = ?", (maker.id,))
            ]
            assert {number: kept.get(number) for number in maker.revisions} == maker.revisions
            assert maker.working in (*kept.values(), *working) or working == [maker.sent]


def whole(text: str) -> str:
    """The title of a kept document that is otherwise as it was sent."""
    document = json.loads(text)
    assert document == {**DOCUMENT, "title": document["title"]}
    return document["title"]
