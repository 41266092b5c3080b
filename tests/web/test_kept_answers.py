"""Answers of the desk that are kept with who asked: found again, and asked again after something changed."""

from __future__ import annotations

import re
from dataclasses import replace
from html import unescape

import pytest

from engine.counting.rope import Swatch
from tests.conftest import flat
from tests.examples import harbour
from webapp.pages.addresses import address
from webapp.storage import given_answers, patterns, revisions, workshop


@pytest.fixture
def database(app):
    return app.state.services.database


@pytest.fixture
def number(database):
    return patterns.create(database, harbour()).id


@pytest.fixture
def given(client, number):
    """An answer that was kept from the form under it."""
    desk = client.get(address("answers", pattern=number, length="45 cm", closure="clasp", say="beads")).text
    question = unescape(re.search(r'name="question"\s+value="([^"]*)"', desk).group(1))
    kept = client.post(address("kept_answers"), data={"name": "Marta Lind", "question": question})
    assert kept.headers["location"] == "/answers/kept/1?said=answer-kept"
    return 1


def asked_again(client, given):
    return flat(client.get(address("kept_answer", answer=given)).text)


def test_what_was_sent_is_kept_and_found_by_name_or_pattern(client, database, given):
    kept = given_answers.load(database, given)
    assert (kept.name, kept.title, kept.beads) == ("Marta Lind", "Small harbour", 3119)
    assert "3,119 beads" in kept.sent and "threads" not in kept.question.partition("say=")[2]
    for search, there in (("lind", True), ("harbour marta", True), ("Ole", False)):
        assert ("Marta Lind" in client.get(address("kept_answers", search=search)).text) == there
    assert "Today the answer is the same in every figure." in asked_again(client, given)


def test_after_a_swatch_the_old_figure_stands_beside_the_new_one_with_the_reason(client, database, given):
    workshop.add_swatch(database, Swatch("11/0 round", 12, "single", 480, 62.0, "2026-03-01"))
    shown = asked_again(client, given)
    assert "The rope is measured otherwise. Then: 11/0 single crochet, wide: estimate ±10 %. Now: your swatch" in shown
    assert re.search(r"Beads, changed</th><td data-column=\"Then\">3,119</td><td data-column=\"Now\">3,290</td>", shown)
    assert "171 beads more than for 45.0 cm before" in shown


def test_a_figure_of_other_sums_is_never_called_the_same(client, database, given):
    kept = given_answers.load(database, given)
    other = given_answers.keep(database, kept.of, "Ole", kept.counted, kept.question, kept.sent, 1)
    shown = asked_again(client, other)
    assert "the way of counting has changed: 1 bead was the answer then, and it is 3,119 today." in shown
    assert "the same in every figure" not in shown and shown.count("1 bead was the answer") == 1


def test_after_an_erratum_the_two_revisions_are_named(client, database, number, given):
    revisions.save(database, number, replace(harbour(), chart=bytes([1]) + harbour().chart[1:]), 1)
    shown = asked_again(client, given)
    assert "The pattern has changed: revision 1 then, revision 2 now." in shown
    assert "As many beads as before; other figures differ: bead A, bead B." in shown


def test_of_a_pattern_that_is_gone_what_was_sent_stays(client, database, number, given):
    patterns.put_into_bin(database, number)
    patterns.empty_bin(database)
    shown = asked_again(client, given)
    assert "The pattern is no longer in the library" in shown and "3,119 beads" in shown


def test_an_answer_is_not_kept_without_a_name_or_without_an_answer(client, database, number):
    for sent, sentence in (
        ({"name": "", "question": f"pattern={number}"}, "The name of who asked is empty"),
        ({"name": "Ole", "question": f"pattern={number}&length=45+ells"}, "“ells” is not a unit of length"),
        ({"name": "Ole", "question": "pattern=Nowhere"}, "No pattern is called “Nowhere”"),
    ):
        refused = client.post(address("kept_answers"), data=sent)
        assert refused.status_code == 422 and sentence in flat(refused.text)
    assert given_answers.find(database) == ()


def test_a_kept_answer_is_forgotten_and_leaves_in_no_export(client, database, given):
    assert b"Marta" not in client.get(address("library_zip")).content
    assert (
        client.post(address("forget_answer", answer=given)).headers["location"] == "/answers/kept?said=answer-removed"
    )
    assert client.get(address("kept_answer", answer=given)).status_code == 404
