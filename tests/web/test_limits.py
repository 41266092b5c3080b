"""What many ask for at once is bounded: the rest is told when to come again, and pages are answered meanwhile."""

from concurrent.futures import ThreadPoolExecutor
from threading import Event

import pytest

from webapp.exchange.works import Turns
from webapp.printing.jobs import AT_ONCE, MOST_ORDERED, MOST_WAITING


@pytest.fixture
def made(client, document):
    client.post("/api/patterns", json=document)


@pytest.mark.usefixtures("made")
def test_of_sixty_booklets_asked_for_at_once_most_are_told_to_come_again(app, client, monkeypatch):
    go = Event()
    monkeypatch.setattr(app.state.services.jobs, "_run", lambda order: b"%PDF" if go.wait(30) else b"")
    with ThreadPoolExecutor(60) as pool:
        asked = [pool.submit(client.get, "/api/patterns/1/booklet.pdf") for _ in range(60)]
        while sum(one.done() for one in asked) < 60 - AT_ONCE - MOST_WAITING:
            Event().wait(0.01)
        assert client.get("/").status_code == 200
        go.set()
        answers = [one.result() for one in asked]
    statuses = [answer.status_code for answer in answers]
    assert (statuses.count(200), statuses.count(503)) == (AT_ONCE + MOST_WAITING, 60 - AT_ONCE - MOST_WAITING)
    refused = next(answer for answer in answers if answer.status_code == 503)
    assert refused.headers["retry-after"] == "10"
    assert refused.json()["error"]["code"] == "busy"


@pytest.mark.usefixtures("made")
def test_prints_that_are_ordered_without_end_are_refused_on_a_page(app, client, monkeypatch):
    monkeypatch.setattr("webapp.printing.jobs.MOST_ORDERED", 0)
    answer = client.post("/patterns/1/booklet", data={})
    assert MOST_ORDERED > 0
    assert (answer.status_code, answer.headers["retry-after"]) == (503, "10")
    assert "Too many booklets are being printed at once" in answer.text


@pytest.mark.usefixtures("made")
@pytest.mark.parametrize("address", ["chart.png", "picture.png?width=64"])
def test_large_pictures_have_their_turn(app, client, monkeypatch, address):
    none_left = Turns(0, 0)
    object.__setattr__(app.state.services, "heavy", none_left)
    answer = client.get(f"/api/patterns/1/{address}")
    assert (answer.status_code, answer.json()["error"]["code"]) == (503, "busy")


@pytest.mark.usefixtures("made")
@pytest.mark.parametrize("address", ["patterns/1/picture.webp", "patterns/1/colourways/0/picture.webp"])
def test_pictures_of_pages_have_their_turn_when_they_are_drawn_and_none_once_they_are_kept(app, client, address):
    object.__setattr__(app.state.services, "heavy", Turns(0, 0))
    assert client.get(f"/{address}?width=64").status_code == 503
    object.__setattr__(app.state.services, "heavy", Turns(1, 0))
    kept = client.get(f"/{address}?width=64")
    object.__setattr__(app.state.services, "heavy", Turns(0, 0))
    assert client.get(f"/{address}?width=64").content == kept.content


def test_pictures_of_starts_have_their_turn(app, client):
    object.__setattr__(app.state.services, "heavy", Turns(0, 0))
    assert client.get("/patterns/begin/fade/picture.webp?width=64").status_code == 503


@pytest.mark.usefixtures("made")
@pytest.mark.parametrize("address", ["/patterns/1/picture.webp", "/patterns/begin/rings/picture.webp"])
def test_pictures_of_pages_are_no_larger_than_a_page(client, address):
    assert client.get(f"{address}?width=1601").status_code == 422
    assert client.get(f"{address}?width=64").status_code == 200


@pytest.mark.usefixtures("made")
def test_looking_at_a_booklet_makes_no_revision_and_ordering_it_does(app, client, document, monkeypatch):
    orders = []

    def run(order):
        orders.append(order.choices)
        return b"%PDF"

    monkeypatch.setattr(app.state.services.jobs, "run", run)
    client.put("/api/patterns/1/working", json={**document, "sequence": 0, "notes": "At work"})
    assert client.get("/api/patterns/1/booklet.pdf").content == b"%PDF"
    assert client.get("/api/patterns/1").json()["revision"] == 1
    assert client.post("/api/patterns/1/booklet.pdf").content == b"%PDF"
    assert client.get("/api/patterns/1").json()["revision"] == 2
    client.get("/api/patterns/1/booklet.pdf")
    looked, ordered, again = orders
    assert (looked.revision, looked.date) == (0, "")
    assert ordered == again and ordered.revision == 2 and ordered.date
