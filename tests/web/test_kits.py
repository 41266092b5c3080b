"""The shop kit of an edition: chosen on its page, made with what is printed besides, refused where it would mislead."""

import zipfile
from dataclasses import replace
from hashlib import sha256
from io import BytesIO

import pytest
from sqlalchemy import text

from engine.booklet.choices import Choices
from engine.booklet.proof.proof import Proof
from engine.booklet.proof.readback import Remark
from engine.counting.kinds import KINDS
from engine.counting.questions import Question
from engine.counting.workshop import Workshop
from engine.scenes.settings import setting
from tests.conftest import flat
from tests.examples import harbour
from webapp.exchange.frozen import frozen
from webapp.pages.addresses import address
from webapp.records import FreshBooklet, PrintJob
from webapp.routes import kits
from webapp.storage import editions, patterns, revisions, workshop

CHOICES = Choices(Question(40.0), published=1)
KEPT = frozen(CHOICES, harbour(), Workshop(dict(KINDS), allowances=dict(Workshop().allowances)))
ASKED = {"chosen": "yes", "scene": ["cap"], "shape": "wide", "form": "webp", "title": "40", "description": "200"}


@pytest.fixture(autouse=True)
def small(monkeypatch):
    """Pictures of a thumb's width, which are drawn at once."""
    monkeypatch.setattr(kits, "setting", lambda shape, ground: setting(shape, ground, 96))


@pytest.fixture
def number(app):
    """A pattern with an edition of one booklet."""
    database = app.state.services.database
    made = patterns.create(database, harbour()).id
    editions.publish(database, made, 1, [FreshBooklet("Standard, A4", KEPT, 12, b"%PDF-kept")])
    return made


def page(client, number, **asked) -> str:
    return flat(client.get(address("kit", id=number, edition=1, **asked)).text)


def made(client, app, number, **asked) -> str:
    """The page after the kit was ordered and is over."""
    answer = client.post(address("kit", id=number, edition=1), data={**ASKED, **asked})
    assert answer.status_code == 303, answer.text
    for work in app.state.services.works._works.values():
        work.over(120)
    return flat(client.get(answer.headers["location"]).text)


def zip_of(client, number, **asked) -> bytes:
    return client.get(address("kit_zip", id=number, edition=1, **{**ASKED, **asked})).content


def files_of(data: bytes) -> dict[str, bytes]:
    with zipfile.ZipFile(BytesIO(data)) as opened:
        return {name.partition("/")[2]: opened.read(name) for name in opened.namelist()}


def test_a_kit_is_made_fetched_and_the_same_again_when_nothing_of_it_is_kept(client, app, number, settings):
    assert "Always in it, as they were published: Standard, A4." in page(client, number)
    assert "The kit is ready" in made(client, app, number)
    data = zip_of(client, number)
    files = files_of(data)
    assert list(files) == [
        "booklets/standard-a4.pdf",
        "stringing-card.html",
        "pictures/cap.webp",
        "listing.txt",
        "listing.html",
        "SHA256SUMS.txt",
    ]
    assert files["booklets/standard-a4.pdf"] == b"%PDF-kept"
    card = client.get(address("edition_card", id=number, edition=1, booklet="Standard, A4")).content
    assert files["stringing-card.html"] == card
    for line in files["SHA256SUMS.txt"].decode().splitlines():
        total, name = line.split("  ")
        assert sha256(files[name]).hexdigest() == total
    for kept in settings.cache.iterdir():
        kept.unlink()
    revisions.save(app.state.services.database, number, replace(harbour(), notes="Changed since."), 1)
    made(client, app, number)
    assert zip_of(client, number) == data


def test_a_booklet_that_the_edition_lacks_is_printed_proofed_and_put_in(client, app, number):
    assert 'value="standard-A5-left"' in page(client, number) and 'value="standard-A4-right"' not in page(
        client, number
    )
    assert "The kit is ready" in made(client, app, number, print="standard-A5-left", scene=[])
    files = files_of(zip_of(client, number, print="standard-A5-left", scene=[]))
    assert files["booklets/standard-a5-left-handed-mirrored.pdf"].startswith(b"%PDF-1")
    assert b"PDF booklet: Standard, A5, left-handed, mirrored, " in files["listing.txt"]
    assert b'data-hand="left"' in files["stringing-card-left-handed.html"]
    assert b'data-hand="right"' in files["stringing-card.html"]


def test_the_lengths_that_were_set_stand_there_the_next_time_and_survive_the_settings(client, app, number):
    made(client, app, number, scene=[])
    client.post("/settings", data={"maker": "Lantern Street"})
    kept = workshop.settings(app.state.services.database)
    assert (kept.title_most, kept.description_most, kept.maker) == (40, 200, "Lantern Street")
    assert 'value="40"' in page(client, number) and 'value="200"' in page(client, number)


class Prints:
    """A stand-in for prints, which come to what is said."""

    def __init__(self, *states: str, proof: Proof | None = None) -> None:
        self.states, self.proof, self.cancelled = list(states), proof, False

    def start(self, pattern_id, order):
        return PrintJob("p1", pattern_id, "waiting", (("Laying out", "waiting"),))

    def find(self, job_id):
        state = self.states.pop(0) if len(self.states) > 1 else self.states[0]
        steps = (("Laying out", "running"),)
        return PrintJob(job_id, 1, state, steps, "Pango is missing." * (state == "failed"), proof=self.proof)

    def cancel(self, job_id):
        self.cancelled = True


def printing(app, prints: Prints) -> None:
    app.state.services = replace(app.state.services, jobs=prints)


@pytest.mark.parametrize(
    ("prints", "sentence"),
    [
        (Prints("running", "failed"), "Pango is missing."),
        (
            Prints("done", proof=Proof((Remark(True, "List 1", "It says 3 A.", "Again."),), 1, 1, 1)),
            "its proof found something that would mislead a buyer: List 1. It says 3 A.",
        ),
    ],
)
def test_a_print_that_fails_or_would_mislead_leaves_no_kit_and_that_is_said_once(client, app, number, prints, sentence):
    jobs = app.state.services.jobs
    printing(app, prints)
    assert sentence in made(client, app, number, print="standard-A5-right")
    assert sentence not in page(client, number, **ASKED, print="standard-A5-right")
    assert client.get(address("kit_zip", id=number, edition=1, **ASKED, print="standard-A5-right")).status_code == 404
    printing(app, jobs)


def test_a_kit_that_is_stopped_stops_its_print(client, app, number):
    jobs, prints = app.state.services.jobs, Prints("running")
    printing(app, prints)
    answer = client.post(address("kit", id=number, edition=1), data={**ASKED, "print": "standard-A5-right"})
    shown = client.get(answer.headers["location"]).text
    assert "Making the kit" in shown
    steps = client.get(address("kit_steps", id=number, edition=1, **ASKED, print="standard-A5-right")).text
    assert 'data-state="running"' in steps
    stopped = client.post(address("stop_kit", id=number, edition=1, **ASKED, print="standard-A5-right"))
    assert stopped.status_code == 303 and "Making the kit" not in client.get(stopped.headers["location"]).text
    printing(app, jobs)


def test_an_edition_that_was_not_proofed_is_refused_in_one_sentence(client, app, number):
    database = app.state.services.database
    editions.publish(database, number, 1, [FreshBooklet("Standard, A4", "{}", 12, b"%PDF")])
    refused = client.post(address("kit", id=number, edition=2), data=ASKED)
    assert refused.status_code == 422
    assert "It was not kept how edition 2 was printed and proofed, so no kit can be made of it." in refused.text
    editions.publish(database, number, 1, [])
    assert "how edition 3 was printed and proofed" in client.get(address("kit", id=number, edition=3)).text


def test_a_withdrawn_edition_is_refused_and_one_that_was_tampered_with_too(client, app, number):
    database = app.state.services.database
    with database.writing() as session:
        session.connection().execute(text("update edition_booklet set pdf = x'00'"))
    assert "The kept file of “Standard, A4” is not the one that was published" in made(client, app, number)
    editions.withdraw(database, number, 1)
    refused = client.post(address("kit", id=number, edition=1), data=ASKED)
    assert refused.status_code == 422 and "Edition 1 is withdrawn" in refused.text
    assert address("kit", id=number, edition=1) not in client.get(address("editions", id=number)).text


@pytest.mark.parametrize(
    ("wrong", "sentence"),
    [
        ({"title": "many"}, "Write how many characters, 20 to 500."),
        ({"description": "9"}, "Write how many characters, 80 to 50,000."),
        ({"form": "jpeg", "ground": "clear"}, "JPEG has no clear background"),
    ],
)
def test_what_is_typed_wrong_is_said_beside_its_field(client, number, wrong, sentence):
    refused = client.post(address("kit", id=number, edition=1), data={**ASKED, **wrong})
    assert refused.status_code == 422 and sentence in refused.text
