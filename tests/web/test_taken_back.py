"""What is removed from the settings is taken back with one press, as it was."""

import re
from dataclasses import replace
from html import unescape

import pytest

from engine.counting.kinds import Kind
from engine.counting.questions import NamedSize, Question
from engine.counting.rope import Swatch
from tests.conftest import flat
from webapp.pages.forms.taken_back import read_taken_back
from webapp.storage import patterns, workshop

SWATCH = Swatch("11/0 round", 9, "slip", 481, 96.25, "2026-05-02", "First & <best>", 212.5)
KIND = Kind("Drop 3.4", 3.4, 3.0, 1.0, 60.0, 3.1)


def taken_back(client, page):
    """Presses the button of the page."""
    form = re.search(r'<form class="notice" method="post" action="(/settings/[a-z]+)">(.*?)</form>', flat(page))
    fields = re.findall(r'name="(\w+)" value="([^"]*)"', form[2])
    return client.post(form[1], data={name: unescape(value) for name, value in fields})


@pytest.mark.parametrize("units", ["cm", "in"])
def test_a_swatch_comes_back_as_it_was(client, app, units):
    database = app.state.services.database
    workshop.save_settings(database, workshop.settings(database).__class__(units=units))
    workshop.add_swatch(database, SWATCH)
    gone = client.post("/settings/swatches/1/remove", follow_redirects=True)
    assert workshop.swatches(database) == ()
    assert taken_back(client, gone.text).status_code == 303
    assert [kept.swatch for kept in workshop.swatches(database)] == [SWATCH]


def test_a_bead_kind_comes_back_as_it_was(client, app):
    database = app.state.services.database
    workshop.add_kind(database, KIND)
    gone = client.post("/settings/kinds/remove", data={"name": "Drop 3.4"}, follow_redirects=True)
    assert workshop.own_kinds(database) == ()
    assert taken_back(client, gone.text).status_code == 303
    assert workshop.own_kinds(database) == (KIND,)


def test_how_many_patterns_miss_a_removed_bead_kind_is_said(client, app, pattern):
    database = app.state.services.database
    workshop.add_kind(database, KIND)
    entries = tuple(replace(entry, kind=KIND.name) for entry in pattern.palette)
    for title in ("One", "Two", "Three"):
        patterns.create(database, replace(pattern, title=title, palette=replace(pattern.palette, entries=entries)))
    patterns.put_into_bin(database, 3)
    assert "Used by 2 patterns" in flat(client.get("/settings").text)
    gone = client.post("/settings/kinds/remove", data={"name": KIND.name}, follow_redirects=True)
    assert "2 patterns use this bead kind; until it is back" in gone.text


@pytest.mark.parametrize(
    "question",
    [
        Question(210.0, "ring", over_hand=True),
        Question(423.0, "glued"),
        Question(closure="clasp", wrist_mm=171.5, ease_mm=12.0),
    ],
)
def test_a_size_comes_back_as_it_was(client, app, question):
    database = app.state.services.database
    workshop.add_size(database, NamedSize("Own", "Stall", question))
    gone = client.post("/settings/sizes/remove", data={"name": "Stall"}, follow_redirects=True)
    assert workshop.own_sizes(database) == ()
    assert taken_back(client, gone.text).status_code == 303
    assert workshop.own_sizes(database) == (NamedSize("Own", "Stall", question),)


def test_an_address_that_names_nothing_to_take_back_offers_nothing():
    assert read_taken_back([]) is None and read_taken_back([("back", "library")]) is None
