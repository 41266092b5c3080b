"""The pages of a pattern's history: revisions listed, compared, named and brought back."""

from dataclasses import replace
from datetime import UTC, datetime

import pytest

from engine.pattern.differences import differences
from tests.conftest import flat
from tests.web.sample_kept import before, history
from tests.web.sample_pages import BUOYS, FRAME, NUMBERS, STORED
from tests.web.sample_parts import parted
from webapp.pages.views import all as views
from webapp.pages.views.compared import WINDOW_BEADS, compared_chart, window
from webapp.storage import patterns, revisions


@pytest.fixture
def number(app, pattern):
    """A pattern with three revisions."""
    database = app.state.services.database
    made = patterns.create(database, pattern).id
    revisions.save(database, made, replace(pattern, title="Second"), 1, "Wider")
    revisions.save(database, made, replace(pattern, title="Third", chart=pattern.chart[:-1]), 2)
    return made


def went_to(response):
    assert response.status_code == 303
    return response.headers["location"]


def test_a_number_that_no_revision_can_have_is_not_found(client, document):
    client.post("/api/patterns", json=document)
    for number in ("0", "-1", str(2**63), "9" * 40):
        for address in ("bring-back", "mark"):
            assert client.post(f"/patterns/1/history/{number}/{address}", data={"name": "x"}).status_code == 404
        assert client.get(f"/patterns/1/history/{number}").status_code == 404


def test_the_history_says_what_changed_from_revision_to_revision():
    page = views.history_page(FRAME, STORED, history(STORED))
    assert [(line.number, line.changed, line.before) for line in page.lines] == [
        (3, "2 beads, title", 2),
        (2, "nothing", 0),
    ]
    assert [line.editions for line in page.lines] == ["Editions 1 and 2", ""]


def test_a_chart_too_large_to_compare_in_a_list_is_compared_when_asked():
    large = replace(BUOYS, chart=bytes(20_002))
    kept = history(replace(STORED, pattern=large))
    assert [line.changed for line in views.history_page(FRAME, STORED, kept).lines] == ["", ""]


def test_two_states_are_compared_in_words():
    page = views.compare_page(FRAME, STORED, NUMBERS, (2, before(STORED)), (0, BUOYS))
    assert page.words == ("title: “Buoys”, was “Old Buoys”",)
    assert page.beads == (
        "round 1, bead 1: Sea glass (A) instead of Candle (B)",
        "round 6, bead 1: put in, 1 Sea glass (A)",
    )
    assert (page.palette, page.differing, page.shown, page.earlier, page.later) == ((), 2, "", "", "")
    assert page.choices[:2] == (("0", "As it stands, revision 3"), ("3", "Revision 3, As sampled, 4 May 2026, 09:07"))
    assert (page.old.name, page.new.name) == ("Revision 2, 4 May 2026, 09:07", "As it stands, revision 3")


def test_long_charts_are_shown_from_the_first_bead_that_differs_on():
    long = replace(BUOYS, chart=bytes(5000))
    painted = replace(long, chart=bytes(3200) + b"\1" + bytes(1799))
    assert window(long, painted, differences(long, painted), None) == 2 * WINDOW_BEADS
    assert window(long, painted, differences(long, painted), 20) == 0
    page = views.compare_page(FRAME, STORED, NUMBERS, (2, long), (0, painted))
    assert page.shown == "Beads 3,001 to 4,500 of 5,000"
    assert page.earlier == "/patterns/7/history/compare?old=2&new=0&first=1500"
    assert page.later == "/patterns/7/history/compare?old=2&new=0&first=4500"
    assert views.compare_page(FRAME, STORED, NUMBERS, (2, BUOYS), (0, painted), 3000).old.chart == ""


def test_parts_are_compared_each_by_its_own_chart():
    now = parted(STORED).pattern
    was = replace(now, in_parts=(now.parts[0], replace(now.parts[1], beads=b"\2" + now.parts[1].beads[1:], times=3)))
    page = views.compare_page(FRAME, STORED, NUMBERS, (2, was), (0, now))
    assert [(part.name, part.differing, bool(part.address)) for part in page.parts] == [
        ("Part 1 “Rope”", 0, True),
        ("Part 2 “Buoys”", 1, False),
        ("Part 3 “Rope”", 7, True),
    ]
    assert "part 2 “Buoys”, times: 2, was 3" in page.words
    assert "1 beads that differ are ringed" in compared_chart(was, now, "new")
    assert "7 beads that differ are ringed" in compared_chart(was, now, "new", part="part 3 “Rope”")


def test_both_charts_ring_what_differs():
    old, new = compared_chart(before(STORED), BUOYS, "old"), compared_chart(before(STORED), BUOYS, "new")
    assert ("1 beads that differ are ringed" in old, "2 beads that differ are ringed" in new) == (True, True)


def test_every_page_of_the_history_can_be_opened(client, number):
    listed = client.get(f"/patterns/{number}/history")
    assert listed.status_code == 200
    assert "Changed: 1 bead, title." in listed.text
    compared = client.get(f"/patterns/{number}/history/compare?old=1&new=3")
    assert "title: “Third”, was “Small harbour”" in compared.text
    looked = client.get(f"/patterns/{number}/history/2")
    assert (looked.status_code, "Second" in looked.text, "Wider" in looked.text) == (200, True, True)
    for picture in ("2/strip.svg", "2/chart.svg", "compare.svg?old=1&new=0&side=old"):
        drawn = client.get(f"/patterns/{number}/history/{picture}")
        assert (drawn.status_code, drawn.headers["content-type"]) == (200, "image/svg+xml")


@pytest.mark.parametrize("place", ["history/9", "history/9/chart.svg", "history/compare?old=9", "history/0"])
def test_a_revision_that_never_was_is_not_found(client, number, place):
    assert client.get(f"/patterns/{number}/{place}").status_code == 404


def test_a_revision_is_named_and_the_name_taken_away(client, number):
    address = f"/patterns/{number}/history/2/mark"
    assert went_to(client.post(address, data={"name": "As sampled"})) == f"/patterns/{number}/history?said=marked"
    assert "Revision 2: As sampled" in flat(client.get(f"/patterns/{number}/history").text)
    assert went_to(client.post(address, data={"name": " "})) == f"/patterns/{number}/history?said=unmarked"
    refused = client.post(address, data={"name": "x" * 81})
    assert refused.status_code == 422
    assert "The name of a revision has 81 characters; at most 80 fit." in refused.text


def test_an_old_state_is_brought_back_and_that_is_undone(client, number):
    back = client.post(f"/patterns/{number}/history/1/bring-back")
    assert went_to(back) == f"/patterns/{number}/history?said=brought&undo=3"
    assert client.get(f"/api/patterns/{number}").json()["title"] == "Small harbour"
    assert f'action="/patterns/{number}/history/3/bring-back"' in client.get(went_to(back)).text
    undone = client.post(f"/patterns/{number}/history/3/bring-back", data={"undoing": "yes"})
    assert went_to(undone) == f"/patterns/{number}/history?said=undone"
    assert client.get(f"/api/patterns/{number}").json()["title"] == "Third"
    assert went_to(client.post(f"/patterns/{number}/history/3/bring-back")) == f"/patterns/{number}/history?said=stands"


def test_the_newest_comes_first_and_older_ones_on_further_pages(app, client, number, pattern):
    database = app.state.services.database
    database.now = lambda: datetime(2026, 3, 1, tzinfo=UTC)
    for made in range(3, 25):
        revisions.save(database, number, replace(pattern, title=f"State {made}"), made)
    first = flat(client.get(f"/patterns/{number}/history").text)
    assert ("Page 1 of 2" in first, "Revision 25" in first, "history/5/strip" in first) == (True, True, False)
    assert "history/5/strip" in client.get(f"/patterns/{number}/history?page=2").text
