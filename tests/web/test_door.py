"""On a computer that several people use, only who has the secret of this start is let in."""

import pytest

from tests.conftest import client_of
from webapp.server.app import create_app
from webapp.server.door import ENTRY, FILE, HEADER
from webapp.settings import Settings


@pytest.fixture
def private(tmp_path, portal):
    app = create_app(Settings(tmp_path / "data", browser=False, private=True))
    with client_of(app, portal) as client:
        client.entry = app.state.door.new_entry()
        client.data = tmp_path / "data"
        yield client


def test_without_the_secret_nothing_is_answered(private, document):
    for method, address in (("GET", "/"), ("GET", "/api/patterns"), ("POST", "/api/patterns"), ("GET", "/?enter=x")):
        answer = private.request(method, address, json=document if method == "POST" else None)
        assert answer.status_code == 403
        assert "runs for one person" in answer.text
    assert private.get("/static/css/layers.css").status_code == 200


def test_an_address_lets_a_browser_in_once_and_a_hardened_cookie_keeps_it(private):
    entered = private.get(f"/patterns/new?written=strung&enter={private.entry}")
    assert (entered.status_code, entered.headers["location"]) == (303, "/patterns/new?written=strung")
    cookie = entered.headers["set-cookie"]
    assert cookie.startswith("ropewright-8620=")
    assert cookie.partition("; ")[2] == "HttpOnly; Path=/; SameSite=strict"
    assert private.get("/").status_code == 200
    private.cookies.clear()
    assert private.get(f"/?enter={private.entry}").status_code == 403


def test_a_script_sends_the_key_of_a_file_that_only_its_owner_can_read(private, document):
    path = private.data / FILE
    assert path.stat().st_mode & 0o777 == 0o600
    key = {HEADER: path.read_text().strip()}
    assert private.post("/api/patterns", json=document, headers=key).status_code == 201
    assert private.get("/api/patterns", headers={HEADER: "x"}).status_code == 403


def test_a_second_start_asks_for_an_address_of_its_own(private):
    key = {HEADER: (private.data / FILE).read_text().strip()}
    entry = private.post(ENTRY, headers=key).json()["enter"]
    assert entry != private.entry
    assert private.get(f"/?enter={entry}").status_code == 303


def test_the_secret_ends_with_the_server(tmp_path, portal):
    with client_of(create_app(Settings(tmp_path, private=True)), portal):
        assert (tmp_path / FILE).exists()
    assert not (tmp_path / FILE).exists()
