"""The library in the browser: narrowed, listed, and several patterns handled at once."""

import io
import zipfile
from dataclasses import replace

import pytest

from tests.conftest import flat
from tests.web.sample_pages import FRAME, found, summary
from webapp.pages.forms import all as forms
from webapp.pages.forms.finder import read_chosen
from webapp.pages.views import all as views
from webapp.pages.views.library import undo_of
from webapp.records import Shelves, Wanted

ASKED = [
    ("search", "sea"),
    ("tag", "night"),
    ("series", "Coast"),
    ("around", "12"),
    ("beads_least", "50"),
    ("beads_most", "900"),
    ("colours_least", "2"),
    ("colours_most", "5"),
    ("kind", "11/0 round"),
    ("difficulty", "3"),
    ("published", "no"),
    ("near", "#1D3350"),
    ("by_colour", "yes"),
    ("sort", "beads"),
    ("view", "list"),
]


def went_to(response):
    assert response.status_code == 303
    return response.headers["location"]


@pytest.fixture
def two(client, document):
    for title in ("Alpha", "Beta"):
        client.post("/api/patterns", json={**document, "title": title, "tags": []})


def titles(client):
    return sorted(one["title"] for one in client.get("/api/patterns").json()["patterns"])


def test_everything_that_narrows_is_read_from_the_address_and_written_into_it_again():
    finder = forms.read_finder(ASKED)
    assert finder.wanted == Wanted("sea", "night", "Coast", 12, (50, 900), (2, 5), "11/0 round", 3, "no", "#1d3350")
    assert forms.read_finder([(name, str(value)) for name, value in finder.query.items()]) == finder
    assert forms.Finder().query == dict.fromkeys(forms.Finder().query, "")


@pytest.mark.parametrize(
    "sent",
    [
        ("around", "x"),
        ("beads_least", "-3"),
        ("difficulty", "²"),
        ("published", "maybe"),
        ("near", "#12345"),
        ("view", "map"),
    ],
)
def test_what_cannot_be_meant_narrows_nothing(sent):
    assert forms.read_finder([sent, ("by_colour", "yes")]) == forms.Finder()


def test_a_colour_narrows_only_where_that_was_ticked():
    assert forms.read_finder([("near", "#1d3350")]).wanted == Wanted()


def test_the_pages_of_a_narrowed_list_stay_narrowed():
    page = views.library_page(FRAME, found(summary(), page=2, pages=3), forms.read_finder(ASKED))
    assert "series=Coast" in page.older and "view=list" in page.older and "page=3" in page.older
    assert page.narrowed and not page.empty
    assert [chosen for _, _, chosen in page.views] == [False, True]


def test_a_card_says_series_difficulty_and_whether_it_is_published():
    (card,) = views.library_page(
        FRAME, found(summary(series="Coast", difficulty=4, published=True)), forms.Finder()
    ).cards
    assert (card.series, card.difficulty, card.published) == ("Coast", "demanding", True)


def test_what_can_be_chosen_is_what_the_library_has():
    page = views.library_page(
        FRAME, found(summary()), forms.Finder(), shelves=Shelves(("Coast",), ("11/0 round",), (6, 12))
    )
    assert page.options.series == (("", "Any"), ("Coast", "Coast"))
    assert [value for value, _ in page.options.arounds] == ["", "6", "12"]


def test_numbers_that_were_chosen_are_read_one_a_field_or_joined():
    assert read_chosen(
        [("chosen", "3"), ("chosen", "1-2"), ("chosen", "x"), ("chosen", "3"), ("do", "bin")]
    ).numbers == (3, 1, 2)


def test_only_what_can_be_undone_is_offered():
    assert undo_of("take-back", "1-2", "").words == "Take them back"
    assert undo_of("take-back", "1", "").words == "Take it back"
    assert undo_of("empty", "1", "") is None
    assert undo_of("take-back", "", "") is None


def test_chosen_patterns_are_binned_and_that_is_undone(client, two):
    went = went_to(client.post("/library/chosen", data={"chosen": ["1", "2"], "do": "bin"}))
    assert went == "/?said=binned&undo=take-back&chosen=1-2"
    assert titles(client) == []
    shown = flat(client.get(went).text)
    assert 'value="take-back"' in shown and "“Alpha” and “Beta” are in the bin." in shown
    assert went_to(client.post("/library/chosen", data={"chosen": "1-2", "do": "take-back"})) == "/?said=taken-back"
    assert titles(client) == ["Alpha", "Beta"]


def test_chosen_patterns_are_tagged_and_that_is_undone(client, two):
    went = went_to(client.post("/library/chosen", data={"chosen": ["2"], "do": "tag", "with_tag": "summer"}))
    assert went == "/?said=tag&undo=untag&chosen=2&with_tag=summer"
    assert client.get("/api/patterns?tag=summer").json()["total"] == 1
    client.post("/library/chosen", data={"chosen": "2", "do": "untag", "with_tag": "summer"})
    assert client.get("/api/patterns?tag=summer").json()["total"] == 0
    assert client.post("/library/chosen", data={"chosen": "2", "do": "tag", "with_tag": ""}).status_code == 422


def test_chosen_patterns_leave_as_a_zip(client, two):
    answer = client.post("/library/chosen", data={"chosen": ["2"], "do": "export"})
    with zipfile.ZipFile(io.BytesIO(answer.content)) as opened:
        assert [name for name in opened.namelist() if name.endswith(".pattern.json")] == [
            "patterns/00001-beta/beta.pattern.json"
        ]


def test_where_nothing_is_chosen_nothing_is_done(client, two):
    assert went_to(client.post("/library/chosen", data={"do": "bin"})) == "/?said=none-chosen"
    assert titles(client) == ["Alpha", "Beta"]


def test_series_and_difficulty_are_kept_on_the_page_of_a_pattern(client, two):
    assert (
        went_to(client.post("/patterns/1/shelf", data={"series": "Coast", "difficulty": "3"}))
        == "/patterns/1?said=shelved"
    )
    assert 'value="Coast"' in client.get("/patterns/1").text
    listed = client.get("/?series=Coast&view=list").text
    assert ("Alpha" in listed, "Beta" in listed, "middling" in listed) == (True, False, True)
    assert client.post("/patterns/1/shelf", data={"series": "x" * 121}).status_code == 422


def test_a_summary_that_is_found_is_listed_with_its_facts():
    page = views.library_page(FRAME, found(replace(summary(), beads=1500)), forms.Finder(view="list"))
    assert (page.cards[0].beads, page.cards[0].around) == (1500, 6)


def test_the_first_visit_says_how_the_work_goes(client, app):
    empty = client.get("/").text
    assert ("Your first rope" in empty, "How the work goes" in empty) == (True, True)


def test_the_booklet_asks_for_the_makers_name_until_it_is_said(client, two):
    asked = "This booklet has no maker’s name yet."
    assert asked in client.get("/patterns/1/booklet").text
    client.post(
        "/settings", data={"maker": "Lantern Street Beads", "clasp": "2.5 cm", "glued": "1.5 cm", "spare": "10"}
    )
    assert asked not in client.get("/patterns/1/booklet").text
