"""Only this computer's own pages may talk to the app, with bodies of bounded size."""

import json
from asyncio import sleep

import pytest

from webapp.server import guard
from webapp.server.guard import HEADERS, LARGEST_BODY


@pytest.mark.parametrize("host", ["127.0.0.1:8620", "localhost:8620", "[::1]:8620", "127.0.0.1"])
def test_this_computers_own_names_are_answered(client, host):
    assert client.get("/api/patterns", headers={"host": host}).status_code == 200


@pytest.mark.parametrize(
    "host", ["beads.example", "127.0.0.1.beads.example", "beads.example:8620", "", "[", "localhost@x"]
)
def test_a_foreign_host_is_refused(client, host):
    answer = client.get("/api/patterns", headers={"host": host})
    assert (answer.status_code, answer.json()["error"]["code"]) == (403, "foreign")


@pytest.mark.parametrize(
    "origin",
    ["http://beads.example", "null", "https://127.0.0.1:8620", "http://127.0.0.1:8621", "http://localhost:8620"],
)
@pytest.mark.parametrize("method", ["GET", "POST", "PUT", "DELETE"])
def test_a_foreign_origin_is_refused_and_changes_nothing(client, document, origin, method):
    client.post("/api/patterns", json=document)
    address = {"POST": "/api/patterns", "GET": "/api/patterns"}.get(method, "/api/patterns/1")
    answer = client.request(method, address, json=document, headers={"origin": origin})
    assert answer.status_code == 403
    assert client.get("/api/patterns").json()["total"] == 1


def test_our_own_origin_and_scripts_without_one_are_let_in(client, document):
    own = client.post("/api/patterns", json=document, headers={"origin": "http://127.0.0.1:8620"})
    script = client.post("/api/patterns", json=document)
    assert (own.status_code, script.status_code) == (201, 201)


@pytest.mark.parametrize("site", ["cross-site", "same-site"])
def test_a_form_that_another_site_sends_without_an_origin_is_refused(client, document, site):
    assert client.post("/api/patterns", json=document, headers={"sec-fetch-site": site}).status_code == 403
    assert client.get("/", headers={"sec-fetch-site": site, "sec-fetch-mode": "navigate"}).status_code == 200


@pytest.mark.parametrize("site", ["cross-site", "same-site"])
@pytest.mark.parametrize("address", ["/", "/api/patterns", "/library.zip", "/static/css/layers.css"])
def test_another_site_may_send_a_person_here_but_neither_read_nor_frame_anything(client, site, address):
    answers = {
        (mode, dest): client.get(
            address, headers={"sec-fetch-site": site, "sec-fetch-mode": mode, "sec-fetch-dest": dest}
        ).status_code
        for mode, dest in (
            ("navigate", "document"),
            ("navigate", "iframe"),
            ("navigate", "embed"),
            ("no-cors", "image"),
            ("no-cors", "script"),
            ("cors", "empty"),
        )
    }
    assert answers == {pair: 200 if pair == ("navigate", "document") else 403 for pair in answers}
    own = {"sec-fetch-site": "same-origin", "sec-fetch-mode": "no-cors", "sec-fetch-dest": "image"}
    assert client.get(address, headers=own).status_code == 200


def test_an_error_that_nobody_foresaw_carries_the_policy_too(client, monkeypatch):
    monkeypatch.setattr("webapp.routes.library.finding.find", lambda *given, **more: 1 / 0)
    for address in ("/", "/api/patterns"):
        answer = client.get(address)
        assert answer.status_code == 500
        assert {name: answer.headers[name] for name in HEADERS} == dict(HEADERS)


def test_a_body_that_stops_coming_is_given_up(app, monkeypatch, portal):
    monkeypatch.setattr(guard, "SILENCE_S", 0.02)
    sent = []
    first = [{"type": "http.request", "body": b"{", "more_body": True}]

    async def receive():
        if first:
            return first.pop()
        await sleep(10)

    async def send(message):
        sent.append(message)

    headers = [(b"host", b"127.0.0.1:8620")]
    scope = {
        "type": "http",
        "method": "POST",
        "path": "/api/patterns",
        "raw_path": b"/api/patterns",
        "query_string": b"",
        "headers": headers,
        "server": ("127.0.0.1", 8620),
        "client": ("127.0.0.1", 1),
        "scheme": "http",
        "http_version": "1.1",
        "root_path": "",
    }
    portal.call(app, scope, receive, send)
    assert sent[0]["status"] == 408


def test_a_body_that_is_too_large_is_refused_by_what_it_declares_and_by_what_it_sends(client):
    declared = client.post("/api/patterns", content=b"{}", headers={"content-length": str(LARGEST_BODY + 1)})
    undeclared = client.build_request("POST", "/api/patterns", content=b" " * (LARGEST_BODY + 1))
    del undeclared.headers["content-length"]
    sent = client.send(undeclared)
    for answer in (declared, sent):
        assert answer.status_code == 413
        assert answer.json() == {
            "error": {
                "code": "too-large",
                "field": None,
                "message": "That is more than 25 MB, which is the most that is read.",
            }
        }


@pytest.mark.parametrize("address", ["/", "/api/patterns", "/api/nothing", "/nothing", "/static/css/layers.css"])
def test_every_answer_carries_the_policy(client, address):
    headers = client.get(address).headers
    assert {name: headers[name] for name in HEADERS} == dict(HEADERS)
    assert "unsafe" not in headers["content-security-policy"]
    assert "default-src 'self'" in headers["content-security-policy"]


def test_refusals_are_pages_where_pages_are_and_json_where_scripts_are(client):
    page = client.get("/", headers={"host": "beads.example"})
    assert page.status_code == 403
    assert page.headers["content-type"].startswith("text/html")
    assert "default-src 'self'" in page.headers["content-security-policy"]


def test_nothing_hostile_in_a_pattern_reaches_a_page_unescaped(client, document):
    evil = "<script>alert(1)</script>\"'><img src=x onerror=alert(1)>"
    hostile = {**document, "title": evil, "notes": evil, "designer": evil, "tags": [evil[:40]]}
    hostile["palette"] = [{**entry, "name": evil, "maker_code": evil} for entry in document["palette"]]
    number = client.post("/api/patterns", content=json.dumps(hostile)).json()["id"]
    for address in (
        "/",
        f"/patterns/{number}",
        f"/patterns/{number}/edit",
        f"/patterns/{number}/stringing",
        f"/patterns/{number}/materials",
        f"/patterns/{number}/booklet",
        f"/patterns/{number}/chart.svg",
    ):
        answer = client.get(address)
        assert answer.status_code == 200, address
        assert "<script>alert" not in answer.text
        assert "<img src=x" not in answer.text
