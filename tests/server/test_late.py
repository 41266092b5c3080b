"""The first page comes before the other pages are loaded; these wait until they are, and none is ever missing."""

from __future__ import annotations

from threading import Event

from tests.conftest import client_of
from webapp.pages.addresses import PATHS, address
from webapp.server import late


def paths(app) -> set[str]:
    return {route.path for route in app.routes}


def test_the_first_page_is_answered_while_the_others_are_loaded_and_they_are_there_when_asked_for(
    app, portal, monkeypatch
):
    may_go_on, routers = Event(), late.all_routers()
    monkeypatch.setattr(late, "all_routers", lambda: may_go_on.wait(20) and routers)
    with client_of(app, portal) as client:
        assert client.get(address("library")).status_code == 200
        assert PATHS["settings"] not in paths(app)
        may_go_on.set()
        assert client.get(address("settings")).status_code == 200
    assert paths(app) >= {route.path for router in routers for route in router.routes}


def test_pages_that_could_not_be_loaded_are_loaded_for_the_next_request(app, portal, monkeypatch, caplog):
    routers = late.all_routers()

    def out_of_memory():
        raise MemoryError

    monkeypatch.setattr(late, "all_routers", out_of_memory)
    with client_of(app, portal) as client:
        assert client.get(address("settings")).status_code == 500
        monkeypatch.setattr(late, "all_routers", lambda: routers)
        assert client.get(address("settings")).status_code == 200
    assert "GET /settings failed" in caplog.text


def test_the_description_of_the_api_tells_of_every_call_from_the_start(app):
    assert {path for path in paths(app) if path.startswith("/api/patterns")} == {"/api/patterns"}
    described = app.openapi()["paths"]
    assert {"/api/patterns", "/api/patterns/{id}", "/api/answers"} <= set(described)
    assert app.openapi()["paths"] == described
