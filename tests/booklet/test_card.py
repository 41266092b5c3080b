"""The stringing card: its list is the engine's bead by bead, it asks for nothing, and it is small."""

from __future__ import annotations

import re
from base64 import b64encode
from dataclasses import replace
from hashlib import sha256
from html.parser import HTMLParser
from random import Random

import pytest
from hypothesis import given, reject, settings
from hypothesis import strategies as some

from engine.booklet.card import card
from engine.booklet.choices import Choices, Imprint
from engine.counting.answers import answer
from engine.counting.questions import Question
from engine.counting.stringing import Run
from engine.errors import EngineError
from engine.pattern.palette import Entry, Palette
from engine.pattern.pattern import Pattern, left_handed
from tests.booklets import clasp, palette, parted, scattered
from tests.ropes import in_parts
from webapp.printing.card import card_html

OUTSIDE = re.compile(r"//|https?:|url\(|@import|\bsrc=|<link|<iframe|<img|srcset|import\(", re.IGNORECASE)
TALKING = re.compile(r"fetch|XMLHttpRequest|WebSocket|EventSource|sendBeacon|SpeechRecognition|getUserMedia|\beval\b")


class Written(HTMLParser):
    """What stands in a card: its lists by thread number, its scripts and styles, and every tag."""

    def __init__(self, html: bytes) -> None:
        super().__init__()
        self.inside, self.threads, self.tags = "", {}, []
        self.raw = {"script": "", "style": ""}
        self.feed(html.decode())

    def handle_starttag(self, tag, attrs):
        said = dict(attrs)
        self.inside = tag
        self.tags.append((tag, said))
        if tag == "section" and said.get("class") == "list":
            self.numbers = [int(number) for number in said["data-threads"].split()]
            self.threads |= {number: [] for number in self.numbers}
        if tag == "ol" and said.get("class") == "tens":
            self.times, self.group = int(said["data-times"]), []

    def handle_endtag(self, tag):
        if tag == "ol" and self.inside == "li" and self.threads:
            for number in self.numbers:
                self.threads[number] += self.group * self.times
        self.inside = ""

    def handle_data(self, data):
        if self.inside in self.raw:
            self.raw[self.inside] += data
        if self.inside == "li" and self.threads:
            self.group += [Run(code, int(beads)) for beads, code in re.findall(r"^(\d+) ([A-Z]+)$", data, re.MULTILINE)]


def threads_of(html: bytes) -> list[tuple[Run, ...]]:
    """The list of every thread as it stands in the card, first worked first."""
    return [tuple(runs) for _, runs in sorted(Written(html).threads.items())]


def random_pattern(beads: int, colours: int) -> Pattern:
    """A chart in which no two lists are alike."""
    letters = "ABCDEFGHIJKLMNOPQRSTUVWXYZ"
    codes = [*letters, *(f"Q{letter}" for letter in letters), *(f"Z{letter}" for letter in letters)][:colours]
    entries = tuple(Entry(code, f"Bead {code}", "#2f7f76") for code in codes)
    chance = Random(beads)
    return Pattern("Large", 20, Palette(entries), bytes(chance.randrange(colours) for _ in range(beads)))


@settings(max_examples=30)
@given(in_parts(), some.one_of(some.none(), some.integers(150, 900)), some.sampled_from(["balanced", "whole", 1.0]))
def test_read_back_bead_by_bead_the_card_is_the_list_of_the_engine(pattern, length_mm, plan):
    question = Question(length_mm if pattern.fills else None)
    try:
        threads = answer(pattern, question, plan=plan).stringing.threads
    except EngineError:
        reject()
    assert threads_of(card_html(pattern, Choices(question, plan))) == [thread.runs for thread in threads]


def test_a_list_that_repeats_is_told_as_groups_with_a_total_every_ten_times():
    pattern = Pattern("Stripes", 6, palette(3), bytes([0, 0, 1, 2]))
    (listed,) = card(pattern, Choices(Question(400.0), "whole")).lists
    (group,) = (stretch for stretch in listed.stretches if stretch.times > 1)
    before = sum(ten.so_far for ten in listed.stretches[0].tens) if listed.stretches[0] != group else 0
    assert group.head == f"This group {group.times} times, 4 beads each time"
    assert [ten.text for ten in group.tens] == ["2 A\n1 C\n1 B\n= 4"]
    assert group.totals_text.split("\n")[:2] == [
        f"10 times: so far {before + 40}",
        f"20 times: so far {before + 80}",
    ]


def test_runs_stand_ten_by_ten_with_the_beads_strung_so_far():
    (listed,) = card(scattered(12, 90), Choices()).lists
    (stretch,) = listed.stretches
    runs = answer(scattered(12, 90), Question()).stringing.runs
    assert [len(ten.runs) for ten in stretch.tens] == [10, 10, len(runs) - 20]
    assert [ten.so_far for ten in stretch.tens] == [sum(run.beads for run in runs[:upto]) for upto in (10, 20, 90)]


def test_nothing_in_it_leads_outside_and_its_policy_lets_in_nothing_but_its_own_style_and_script():
    hostile = "<script>alert(1)</script>\" onload=x ' --> ]]></style></title> {{ 7 * 7 }} &quot;"
    entries = tuple(replace(entry, name=hostile) for entry in palette())
    pattern = replace(scattered(12, 240), title=hostile, palette=Palette(entries))
    html = card_html(pattern, Choices(imprint=Imprint(hostile, hostile, hostile)))
    read, plain = Written(html), card_html(scattered(12, 240), Choices())
    outside = re.sub(r"^ *// .*$|/\*\*.*?\*/", "", plain.decode(), flags=re.MULTILINE | re.DOTALL)
    assert OUTSIDE.findall(outside) == [] and TALKING.findall(outside) == []
    sums = {name: b64encode(sha256(text.encode()).digest()).decode() for name, text in read.raw.items()}
    policy = next(said["content"] for tag, said in read.tags if said.get("http-equiv") == "Content-Security-Policy")
    assert " ".join(policy.split()) == (
        f"default-src 'none'; style-src 'sha256-{sums['style']}'; script-src 'sha256-{sums['script']}'; "
        "base-uri 'none'; form-action 'none'"
    )
    assert [tag for tag, _ in read.tags].count("script") == [tag for tag, _ in read.tags].count("style") == 1
    assert [name for _, said in read.tags for name in said if name == "style" or name.startswith("on")] == []


def test_no_name_turns_the_numbers_that_stand_behind_it():
    turning = "\u202ePearl\u2066"
    entries = tuple(replace(entry, name=turning) for entry in palette())
    parts = tuple(replace(part, name=turning) for part in parted().in_parts)
    pattern = replace(parted(), title=turning, palette=Palette(entries), in_parts=parts)
    html = card_html(pattern, clasp(450.0)).decode()
    assert "<h1>Pearl</h1>" in html and "<bdi>Pearl</bdi>: beads 1 to " in html
    assert not {"\u202e", "\u2066"} & set(html)


def test_the_same_edition_gives_the_same_bytes_and_another_has_a_place_of_its_own():
    pattern, choices = scattered(12, 900), clasp(380.0, published=2, date="2026-11-23")
    assert card_html(pattern, choices) == card_html(pattern, choices)
    others = (choices, replace(choices, published=3), replace(choices, plan=2.0), replace(choices, colourway="Dusk"))
    assert len({card(pattern, each).key for each in others}) == len(others)


@pytest.mark.parametrize("colours", [8, 64])
def test_a_card_of_40000_beads_without_a_repeat_is_under_300_kb(colours):
    assert len(card_html(random_pattern(40_000, colours), Choices())) < 300_000


def test_it_speaks_the_terms_of_its_edition_and_says_hand_and_parts():
    made = card(left_handed(parted()), clasp(450.0, terms="uk", picture="mirrored", published=1, date="2026-11-23"))
    assert made.edition == "Edition 1, 23 November 2026. Left-handed, mirrored, UK terms."
    assert dict(made.facts)["Worked"] == "12 around in double crochet, with the left hand"
    assert [part.name for part in made.parts] == ["Rope", "Focal", "Rope", "Tail"]
    assert sum(part.beads for part in made.parts) == made.beads
    assert "Focal" in " ".join(dict(listed.facts)["For"] for listed in made.lists)
    html = card_html(left_handed(parted()), clasp(450.0)).decode()
    assert 'data-hand="left"' in html and "from right to left" in html


def test_a_bead_that_is_not_worked_is_not_on_the_card():
    pattern = Pattern("Two of three", 6, palette(3), bytes([0, 2] * 30))
    assert [(bead.code, bead.beads) for bead in card(pattern, Choices()).palette] == [("A", 30), ("C", 30)]
