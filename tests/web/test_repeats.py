"""The page of small repeats: what is asked narrows what is shown, and each leads to a start."""

from __future__ import annotations

import re

import pytest

from webapp.pages.addresses import address


def shown(client, **asked) -> list[str]:
    found = client.get(address("repeats", **asked)).text.partition("small-ropes")[2]
    return re.findall(r"</svg><span>([^<]+)</span>", found)


def test_every_repeat_of_seven_beads_in_two_colours_is_shown(client):
    assert len(shown(client, around=6, length=7)) == 18
    assert client.get(address("repeats")).text.count("<title>Ring</title>") == 18
    assert "18 repeats of 7 beads: lines lean to the right, 22°." in client.get(address("repeats")).text


def test_counts_runs_and_reading_backwards_narrow_them(client):
    assert shown(client, length=6, count=("3", "3"), longest_run=2) == ["2A B A 2B", "2A 2B A B"]
    assert shown(client, length=6, count=("3", "3"), longest_run=2, both_ways="yes") == ["2A B A 2B"]
    assert shown(client, length=4, shorter="yes") == ["3A B", "2A 2B", "A B A B", "A 3B"]


def test_grams_in_hand_keep_out_what_would_not_last(client):
    all_of_them, few = shown(client, length=7), shown(client, length=7, have=("3", ""), rope="18 cm")
    assert 0 < len(few) < len(all_of_them)
    assert set(few) < set(all_of_them)


def test_many_are_shown_a_page_at_a_time(client):
    asked = {"length": 12, "both_ways": "yes"}
    first, second = (shown(client, number=number, **asked) for number in (1, 2))
    assert (len(first), len(second), set(first) & set(second)) == (24, 24, set())
    assert shown(client, number=999, **asked) == shown(client, number=10, **asked)


def test_a_repeat_leads_to_the_start_that_begins_with_it(client):
    text = client.get(address("repeats", around=5, length=3)).text
    link = re.search(r'href="([^"]*repeat=2A\+B[^"]*)"', text)[1].replace("&amp;", "&")
    assert 'value="2A B"' in client.get(link).text


@pytest.mark.parametrize(
    ("asked", "sentence"),
    [
        ({"around": 13}, "Small repeats are searched for 3 to 12 around, not 13."),
        ({"length": 15}, "A repeat of 15 beads is not searched; expected 1 to 14."),
        ({"count": ("9", "")}, "The colours come to 9 beads; the repeat has 7."),
        ({"have": ("much", "")}, "“much” is not of bead A in grams; write a number such as 12.5."),
        ({"have": ("3", ""), "rope": "an ell"}, "“an ell”"),
        ({"longest_run": "long"}, "“long” is not a whole number"),
    ],
)
def test_what_cannot_be_searched_is_said(client, asked, sentence):
    answer = client.get(address("repeats", **asked))
    assert answer.status_code == 200
    assert sentence in answer.text
