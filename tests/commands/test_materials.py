"""The bill of materials as text and as JSON."""

import json
from contextlib import closing

import pytest

from engine.counting.answers import answer
from engine.counting.questions import Question
from engine.counting.rope import Swatch
from tests.examples import harbour
from webapp.exchange.results.lists import materials_json
from webapp.paths import DEMO
from webapp.records import MakerSettings
from webapp.storage import workshop
from webapp.storage.library import open_library

CLASP = ("--length", "45 cm", "--closure", "clasp")
CASES = [
    ("materials-one-pass", ()),
    ("materials-45cm-clasp", CLASP),
    (
        "materials-ring-8-spare-25",
        ("--length", "19.5 in", "--closure", "ring", "--kind", "8/0 round", "--spare", "25", "--threads", "4"),
    ),
]


@pytest.mark.parametrize(("name", "options"), CASES)
def test_whole_bills_are_as_they_were_read(run, printed, as_json, harbour_file, name, options):
    assert run("materials", harbour_file, *options) == (0, printed(f"{name}.txt"), "")
    assert as_json(run("materials", harbour_file, *options, "--json").out) == as_json(printed(f"{name}.json"))


def test_the_bill_is_the_engines(run, harbour_file):
    found = answer(harbour(), Question(450.0, "clasp"), plan="whole", spare=12).materials
    said = run("materials", harbour_file, *CLASP, "--threads", "whole", "--spare", "12 %", "--json").out
    assert json.loads(said) == materials_json(found)


def test_lengths_are_said_in_any_unit(run, harbour_file):
    said = [
        run("materials", harbour_file, "--length", length, "--json").out
        for length in ("50 cm", "500mm", "0,5 m", "19.685039370 in")
    ]
    assert said[:3] == [said[0]] * 3
    assert json.loads(said[3])["beads"] == json.loads(said[0])["beads"]


def test_the_beads_of_all_colours_are_those_of_the_rope(run, harbour_file):
    found = json.loads(run("materials", harbour_file, *CLASP, "--json").out)
    strung = json.loads(run("stringing", harbour_file, *CLASP, "--json").out)
    by_code = {colour["code"]: colour["beads"] for colour in found["colours"]}
    assert found["beads"] == sum(by_code.values()) == sum(thread["beads"] for thread in strung["threads"])
    counted = {
        code: sum(beads for thread in strung["threads"] for said, beads in thread["runs"] if said == code)
        for code in by_code
    }
    assert counted == by_code


def test_with_a_library_its_swatches_and_settings_count(run, printed, harbour_file, data):
    with closing(open_library(data)) as database:
        workshop.add_swatch(database, Swatch("11/0 round", 12, "single", 600, 100.0, "2026-03-01", ""))
        workshop.save_settings(
            database, MakerSettings(units="in", allowances={"clasp": 50.0, "glued": 15.0}, spare=50.0)
        )
    said = run("materials", harbour_file, *CLASP, "--data", data)
    assert said == (0, printed("materials-own-swatch.txt"), "")
    found = json.loads(run("materials", harbour_file, *CLASP, "--data", data, "--json").out)
    assert (found["rope_mm"], found["beads"], found["source"]) == (
        pytest.approx(400),
        2400,
        "your swatch of 2026-03-01: 11/0 round, 12 around, single crochet, 600 beads in 10.0 cm",
    )
    assert found["colours"][0]["buy_grams"] == 30


def test_the_parts_of_a_rope_are_told_with_what_lies_in_the_middle(run):
    star = DEMO / "evening-star.pattern.json"
    told = run("materials", star, *CLASP).out
    assert (
        "Rope     1,575     185.2 mm  27.16 times\n"
        "Star       464      54.6 mm  once\n"
        "Rope     1,575     185.2 mm  27.16 times\n"
        "The middle of the rope lies in “Star”, which stands right in the middle.\n"
    ) in told
    parts = json.loads(run("materials", star, *CLASP, "--json").out)["parts"]
    assert [(part["name"], part["beads"]) for part in parts] == [("Rope", 1575), ("Star", 464), ("Rope", 1575)]


def test_the_short_form_and_the_same_in_parts_have_one_bill(run, file_of, document):
    short = file_of({**document, "start": "4A", "end": "3B"})
    parts = [
        {"name": "Start", "beads": "4A", "times": 1},
        {"name": "Chart", "beads": document["beads"], "times": "fill"},
        {"name": "End", "beads": "3B"},
    ]
    long = file_of({name: value for name, value in document.items() if name != "beads"} | {"parts": parts}, "long")
    for command in ("materials", "stringing"):
        for json_ in ((), ("--json",)):
            assert run(command, short, *CLASP, *json_) == run(command, long, *CLASP, *json_)
