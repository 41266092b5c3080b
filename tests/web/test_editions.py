"""The road of an edition: printed for it, proofed, published, given out, corrected by a later one."""

import json
import re
import time
from dataclasses import replace
from io import BytesIO

import pytest
from PIL import Image

from engine.cabinet.bead import Bead
from engine.cabinet.colourways import Colourway
from engine.pattern.palette import Palette
from tests.conftest import flat
from tests.examples import harbour
from webapp.pages.addresses import address
from webapp.records import FreshBooklet
from webapp.storage import beads, colourways, editions, patterns, photographs, revisions

BOOKLET = FreshBooklet("Standard, A4", "{}", 12, b"%PDF-kept")


@pytest.fixture
def number(app):
    return patterns.create(app.state.services.database, harbour()).id


def printed(client, number, **sent):
    """The number of a print for the next edition, when it is over."""
    answer = client.post(f"/patterns/{number}/booklet", data={"purpose": "edition", "length": "30 cm", **sent})
    assert answer.status_code == 303, answer.text
    job = answer.headers["location"].rsplit("/", 1)[1]
    end = time.monotonic() + 60
    while "Proof</h3>" not in (shown := client.get(f"/jobs/{job}").text):
        assert time.monotonic() < end and "could not be printed" not in shown
        time.sleep(0.05)
    return job


def test_a_proofed_print_is_published_byte_for_byte_and_given_out_with_a_name(client, app, number):
    database = app.state.services.database
    assert "Nothing is printed for edition 1 yet" in client.get(f"/patterns/{number}/editions").text
    client.post(f"/patterns/{number}/words", data={"tips": "Wax the thread.", "difficulty": "2"})
    job = printed(client, number)
    shown = client.get(f"/jobs/{job}").text
    assert "agree with the chart" in shown and "Would mislead" not in shown and "No maker’s code" in shown
    pdf = client.get(f"/jobs/{job}/booklet.pdf").content
    answer = client.post(f"/patterns/{number}/editions", data={"job": job, "note": "For the fair"})
    assert answer.headers["location"] == f"/patterns/{number}/editions?said=published"
    (kept,) = editions.editions(database, number)
    assert (kept.revision, kept.note, json.loads(kept.words)) == (1, "For the fair", {"tips": "Wax the thread."})
    choices = json.loads(kept.booklets[0].choices)["choices"]
    assert (choices["published"], choices["difficulty"]) == (1, 2)
    assert client.get(address("edition_pdf", id=number, edition=1, booklet="Standard, A4")).content == pdf
    card = client.get(address("edition_card", id=number, edition=1, booklet="Standard, A4"))
    assert card.headers["content-disposition"] == (
        'attachment; filename="small-harbour-edition-1-standard-a4-card.html"'
    )
    assert card.headers["content-type"] == "text/html; charset=utf-8" and "Edition 1, " in card.text
    assert client.get(f"/patterns/{number}/editions/1/card.html").content == card.content
    assert (
        client.post(
            f"/patterns/{number}/editions/1/copies", data={"name": "Marta Lind", "booklet": "Standard, A4"}
        ).status_code
        == 303
    )
    given = editions.copies(database, number)[0]
    copy = client.get(f"/copies/{given.id}/booklet.pdf")
    assert copy.headers["content-type"] == "application/pdf" and copy.content != pdf
    assert copy.content == client.get(f"/copies/{given.id}/booklet.pdf").content


def test_an_edition_that_was_kept_without_its_size_has_no_card_and_says_why(client, app, number):
    editions.publish(app.state.services.database, number, 1, [BOOKLET])
    refused = client.get(f"/patterns/{number}/editions/1/card.html")
    assert refused.status_code == 422 and "Size and threads of this booklet were not kept" in flat(refused.text)
    assert client.get(address("edition_card", id=number, edition=1, booklet="Large")).status_code == 404


def test_the_card_of_a_size_is_asked_for_over_the_api(client, number):
    card = client.get(f"/api/patterns/{number}/card.html?length=45+cm&closure=clasp&terms=uk&hand=left")
    assert card.headers["content-disposition"] == 'attachment; filename="small-harbour-card.html"'
    assert "Left-handed, mirrored, UK terms." in card.text and "<dd>3,119</dd>" in card.text


def test_an_edition_in_a_colourway_stays_as_it_was_when_beads_and_colourway_change(client, app, number):
    database = app.state.services.database
    dusk = Bead("Dusk", "#4a4466", key="dusk")
    beads.add(database, dusk)
    palette = Palette((dusk.entry("A"), *list(harbour().palette)[1:]))
    way = colourways.add(database, number, Colourway("Evening", palette))
    job = printed(client, number, colourway=str(way))
    pdf = client.get(f"/jobs/{job}/booklet.pdf").content
    client.post(f"/patterns/{number}/editions", data={"job": job})
    (booklet,) = editions.editions(database, number)[0].booklets
    kept = json.loads(booklet.choices)
    assert (booklet.name, kept["choices"]["colourway"]) == ("Standard, A4, in Evening", "Evening")
    assert [entry["name"] for entry in kept["palette"]] == ["Dusk", "Foam", "Lamp gold"]
    assert beads.save(database, replace(dusk, colour="#000000")) == 0
    colourways.remove(database, number, way)
    assert editions.pdf(database, number, 1, booklet.name) == pdf
    assert colourways.load(database, number, way).colourway.palette == palette


def test_a_colourway_that_is_not_there_is_not_printed(client, number):
    refused = client.post(f"/patterns/{number}/booklet", data={"length": "30 cm", "colourway": "9"})
    assert refused.status_code == 404
    assert client.get(f"/api/patterns/{number}/booklet.pdf?colourway=9").status_code == 404


def test_a_print_of_an_earlier_state_is_not_published(client, app, number):
    job = printed(client, number, paper="A5")
    revisions.save(app.state.services.database, number, replace(harbour(), notes="Changed."), 1)
    assert "the pattern has changed since" in client.get(f"/patterns/{number}/editions").text
    answer = client.post(f"/patterns/{number}/editions", data={"job": job})
    assert answer.status_code == 422 and "Print them again." in answer.text
    assert editions.editions(app.state.services.database, number) == ()


def test_one_edition_does_not_hold_one_booklet_in_two_sizes(client, app, number):
    short, long = printed(client, number, length="45 cm"), printed(client, number, length="60 cm")
    assert "for another size and says the same line" in client.get(f"/jobs/{long}").text
    answer = client.post(f"/patterns/{number}/editions", data={"job": [short, long]})
    assert answer.status_code == 422 and "the same booklet for different sizes" in answer.text
    assert editions.editions(app.state.services.database, number) == ()


def test_nothing_chosen_is_nothing_published(client, number):
    answer = client.post(f"/patterns/{number}/editions", data={"note": "x"})
    assert answer.status_code == 422 and "Choose at least one booklet" in answer.text


@pytest.fixture
def two(app, number):
    """A pattern with two editions between which a bead has changed, the first given to somebody."""
    database = app.state.services.database
    editions.publish(database, number, 1, [BOOKLET])
    chart = bytearray(harbour().chart)
    chart[0] = 1 - chart[0]
    revisions.save(database, number, replace(harbour(), chart=bytes(chart)), 1)
    editions.publish(database, number, 2, [BOOKLET])
    editions.give(database, number, 1, "Standard, A4", "Marta Lind")
    return number


def test_one_press_gives_the_errata_as_text_and_as_a_sheet(client, two):
    shown = client.get(f"/patterns/{two}/errata?old=1&new=2").text
    assert "Round 1, bead 1: " in shown and "Marta Lind" in shown
    text = client.get(f"/patterns/{two}/errata.txt?old=1&new=2")
    assert text.headers["content-type"].startswith("text/plain") and "Beads\n- Round 1, bead 1: " in text.text
    assert client.get(f"/patterns/{two}/errata.pdf?old=1&new=2").content.startswith(b"%PDF")


def test_who_needs_the_errata_is_seen_until_they_were_sent_it(client, app, two):
    assert "needs the errata to edition 2" in client.get(f"/patterns/{two}/editions").text
    copy = editions.copies(app.state.services.database, two)[0].id
    answer = client.post(f"/patterns/{two}/errata/told?old=1&new=2", data={"copy": str(copy)})
    assert answer.status_code == 303
    assert "was sent the errata up to edition 2" in client.get(f"/patterns/{two}/editions").text
    assert "Who needs it" not in client.get(f"/patterns/{two}/errata?old=1&new=2").text


def test_a_withdrawn_edition_is_given_to_nobody(client, app, two):
    assert client.post(f"/patterns/{two}/editions/1/withdraw", data={"why": "A wrong run"}).status_code == 303
    assert "A wrong run" in client.get(f"/patterns/{two}/editions").text
    assert (
        client.post(f"/patterns/{two}/editions/1/copies", data={"name": "Ole", "booklet": "Standard, A4"}).status_code
        == 422
    )
    assert [copy.name for copy in editions.copies(app.state.services.database, two)] == ["Marta Lind"]
    assert client.get(address("edition_pdf", id=two, edition=1, booklet="Standard, A4")).content == BOOKLET.pdf


def test_an_edition_withdrawn_by_mistake_is_given_out_again(client, app, two):
    client.post(f"/patterns/{two}/editions/1/withdraw", data={"why": "The wrong one"})
    assert "Give edition 1 out again" in client.get(f"/patterns/{two}/editions").text
    assert client.post(address("bring_back_edition", id=two, edition=1)).status_code == 303
    assert editions.edition(app.state.services.database, two, 1).withdrawn is None
    assert "Give edition 1 out again" not in client.get(f"/patterns/{two}/editions").text


def test_a_copy_needs_a_name_and_what_was_typed_stays(client, two):
    answer = client.post(
        f"/patterns/{two}/editions/2/copies", data={"name": " ", "booklet": "Standard, A4", "test": "yes"}
    )
    assert answer.status_code == 422 and "Whose copy is it?" in answer.text
    assert re.search(r'name="test" value="yes" checked', flat(answer.text))


def test_one_edition_has_no_errata_and_that_is_said(client, app, number):
    editions.publish(app.state.services.database, number, 1, [BOOKLET])
    answer = client.get(f"/patterns/{number}/errata")
    assert answer.status_code == 404 and "no second edition" in answer.text


def test_paper_too_narrow_for_the_chart_is_said_beside_the_paper(client, app):
    wide = patterns.create(app.state.services.database, replace(harbour(), around=60)).id
    answer = client.post(f"/patterns/{wide}/booklet", data={"paper": "A5"})
    assert answer.status_code == 422 and "A5 is too narrow for a chart of 60 around" in answer.text


def test_photographs_are_taken_in_shown_and_refused_in_a_sentence(client, number):
    out = BytesIO()
    Image.new("RGB", (900, 600), "#2f7f76").save(out, "JPEG")
    answer = client.post(
        f"/patterns/{number}/photographs", files={"photographs": ("rope.jpg", out.getvalue(), "image/jpeg")}
    )
    assert answer.status_code == 303
    assert client.get(f"/patterns/{number}/photographs/1").headers["content-type"] == "image/jpeg"
    assert (
        client.post(f"/patterns/{number}/photographs/1/words", data={"caption": "Closed", "seen": "A ring"}).status_code
        == 303
    )
    assert 'value="Closed"' in client.get(f"/patterns/{number}/words").text
    refused = client.post(
        f"/patterns/{number}/photographs", files={"photographs": ("rope.gif", b"GIF89a", "image/gif")}
    )
    assert refused.status_code == 422 and "“rope.gif” cannot be read as a picture" in refused.text
    assert client.post(f"/patterns/{number}/photographs/1/move", data={"way": "up"}).status_code == 303


def test_a_removed_photograph_is_taken_back_with_one_press_as_it_was(client, app, number):
    database = app.state.services.database
    photographs.add_all(database, number, [(b"first", 900, 600), (b"second", 600, 900)])
    photographs.describe(database, number, 1, "Closed", "A ring")
    before = photographs.of(database, number)
    gone = client.post(f"/patterns/{number}/photographs/1/remove", follow_redirects=True)
    assert photographs.of(database, number) == before[1:]
    assert "The photograph is removed from the booklets to come." in gone.text
    (press,) = set(re.findall(r'action="(/patterns/\d+/photographs/1/take-back)#photographs"', gone.text))
    back = client.post(press)
    assert back.headers["location"] == f"/patterns/{number}/words?said=photograph-back&at=1#photograph-1"
    assert photographs.of(database, number) == before


def test_a_photograph_that_finds_no_room_stays_removed_and_that_is_said(client, app, number):
    database = app.state.services.database
    photographs.add_all(database, number, [(b"jpeg", 900, 600)] * 10)
    client.post(f"/patterns/{number}/photographs/1/remove")
    photographs.add_all(database, number, [(b"more", 900, 600)])
    refused = client.post(f"/patterns/{number}/photographs/1/take-back")
    assert (refused.status_code, "10 are there already; this one stays removed." in refused.text) == (422, True)
    client.post(f"/patterns/{number}/photographs/removed/forget")
    assert client.get(f"/patterns/{number}/photographs/1").status_code == 404


def test_a_text_too_long_is_refused_and_stays_as_typed(client, number):
    answer = client.post(f"/patterns/{number}/words", data={"tips": "x" * 20_001})
    assert answer.status_code == 422 and "This text has 20,001 letters" in answer.text and "x" * 20_001 in answer.text


def test_skill_and_hours_are_asked_once_and_stay_beside_the_series(client, number):
    client.post(f"/patterns/{number}/shelf", data={"series": "Coast", "difficulty": "0"})
    client.post(f"/patterns/{number}/words", data={"difficulty": "4", "hours": "8 to 10"})
    client.post(f"/patterns/{number}/words", data={"hours": "9"})
    page = client.get(f"/patterns/{number}/words").text
    assert '<option value="4" selected>Demanding</option>' in page and 'value="9"' in page
    assert "Coast" in client.get(f"/patterns/{number}").text
