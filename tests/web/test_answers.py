"""The desk: the same numbers on page, in the reply and in JSON; names, own words, and what is asked beside."""

import json
import re
from html import unescape

import pytest
from hypothesis import HealthCheck, given
from hypothesis import settings as often
from hypothesis import strategies as st

from engine.counting.finished import NAMED
from engine.errors import EngineError
from engine.units import count, grams, length, metres
from tests.examples import FOLDER
from webapp.pages.forms.answers import read_desk, read_grams, read_packs, read_worked
from webapp.records import MakerSettings

FILE = (FOLDER / "small-harbour.pattern.json").read_bytes()


@pytest.fixture
def made(client):
    client.post("/patterns/import", files=[("file", ("one.pattern.json", FILE))]).raise_for_status()
    return client


def words(client, **asked):
    """The text of the desk for that question."""
    answered = client.get("/answers", params=asked)
    assert answered.status_code == 200
    return unescape(re.sub(r"\s+", " ", re.sub(r"<[^>]+>", " ", answered.text)))


def api(client, **asked):
    return client.get("/api/answers", params={"pattern": 1, **asked}).raise_for_status().json()


@often(max_examples=12, suppress_health_check=[HealthCheck.function_scoped_fixture], deadline=None)
@given(mm=st.integers(120, 1200), closure=st.sampled_from(["open", "clasp", "glued", "ring"]),
       kind=st.sampled_from(["11/0 round", "8/0 round", "11/0 cylinder"]), turn=st.sampled_from(["bead", "pass", "up"]))
def test_page_reply_and_json_carry_the_same_numbers(made, mm, closure, kind, turn):
    asked = {"length": f"{mm} mm", "closure": closure, "kind": kind, "round": turn}
    answer, shown = api(made, **asked), words(made, pattern="1", **asked)
    table = answer["table"]
    for text in (answer["sentence"], count(table["beads"]), length(answer["finished_mm"]), metres(table["strung_mm"]),
                 metres(table["thread_mm"]), *(grams(colour["grams"]) for colour in table["colours"])):
        assert text in shown
    for paragraph in answer["reply"].split("\n\n"):
        assert re.sub(r"\s+", " ", paragraph) in shown
    bill = made.get("/api/patterns/1/materials", params=asked).json()
    assert bill == table


def test_a_size_is_asked_for_by_its_name_and_in_any_pattern_by_its_title(made):
    title = made.get("/api/patterns/1").json()["title"]
    named = words(made, pattern=title, length="Princess")
    assert api(made, length="46 cm", closure="clasp")["sentence"] in named
    ring = words(made, pattern=title, length="2-8")
    assert "Rings that close in colour" in ring
    assert api(made, length="199.491133503 mm", closure="ring")["sentence"] in ring


def test_without_anything_typed_the_newest_pattern_is_answered(made):
    assert api(made)["sentence"] in words(made)


def test_a_pattern_that_is_not_there_is_said_to_be_missing(made):
    assert "No pattern of that name is in the library." in words(made, pattern="zebra")
    assert "No pattern of that name is in the library." in words(made, pattern="99")
    made.post("/patterns/1/copy")
    assert "More than one pattern may be meant." in words(made, pattern="harbour sm")
    made.post("/patterns/import", files=[("file", ("one.pattern.json", FILE))]).raise_for_status()
    assert 'name="pattern" value="3"' in made.get("/answers").text


def test_the_buyers_own_measure_corrects_every_number(made):
    own = api(made, length="45 cm", pass_length="61 mm")
    beads = made.get("/api/patterns/1/stringing").json()["beads"]
    assert own["table"]["rope_mm"] == pytest.approx(own["table"]["beads"] * 61 / beads)
    assert (own["measured"], own["table"]["source"]) == (True, "your pass: 61.0 mm")
    assert own["sentence"] in words(made, pattern="1", length="45 cm", closure="open", pass_length="61 mm")


def test_the_reply_is_in_the_makers_own_words(made):
    made.post("/settings", data={"maker": "Lantern Street", "greeting": "Good day,", "longest": "1", "heaviest": "20"})
    answer = api(made, length="60 cm", threads="whole")
    assert answer["reply"].startswith("Good day,\n\n")
    assert answer["reply"].endswith("\n\nLantern Street")
    threads = made.get("/api/patterns/1/stringing?length=60+cm&threads=whole").json()["threads"]
    assert len(threads) > 1
    assert all(thread["strung_mm"] <= 1000 for thread in threads)


def test_sections_of_the_reply_are_on_or_off(made):
    short = words(made, pattern="1", length="45 cm", say="sentence")
    assert "All together" not in short
    assert "Hook: steel hook" in words(made, pattern="1", length="45 cm", say="findings")


def test_beads_in_hand_kits_and_a_stop_stand_beside_the_answer(made):
    codes = [entry["code"] for entry in made.get("/api/patterns/1").json()["palette"]]
    shown = words(made, pattern="1", length="45 cm", have=", ".join(f"{code} 20" for code in codes), pieces="12",
                  packs="20 at 3.50", worked="2/1", compare="kinds")
    for text in ("They make a rope of at most", "To buy for 12 pieces", "a piece.", "Go on with round 2, place 2.",
                 "Side by side", "11/0 cylinder"):
        assert text in shown
    wrong = words(made, pattern="1", length="45 cm", have="?", pieces="0", worked="9999999")
    assert "“?” is not a bead and its grams" in wrong
    assert "A kit is for 1 to 10,000 pieces." in wrong
    assert "Bead 9,999,999 is not inside this rope" in wrong
    assert api(made, length="45 cm", closure="clasp")["sentence"] in wrong


def test_a_wrist_taken_for_a_length_is_asked_about(made):
    assert "If it is the wrist, ask for the wrist" in words(made, pattern="1", length="17 cm")
    assert api(made, length="17 cm", closure="clasp")["doubts"] != []
    assert "Beads of 5 mm are not “size 5”" in words(made, pattern="1", length="45 cm", kind="5 mm")


def test_kinds_of_ones_own_are_questioned_once_kept_used_and_removed(made):
    heavy = {"name": "9/0 drop", "diameter": "2.6", "length": "2", "hole": "0,9", "per_gram": "6", "working": ""}
    asked = made.post("/settings/kinds", data=heavy)
    assert asked.status_code == 422
    assert "Is one of them mistyped?" in asked.text
    assert made.post("/settings/kinds", data={**heavy, "sure": "1"}).headers["location"] == "/settings?said=kind"
    assert api(made, length="45 cm", kind="9/0 drop")["table"]["beads"] > 0
    assert made.post("/settings/kinds/remove", data={"name": "9/0 drop"}).headers["location"] == "/settings?said=kind-gone"
    assert made.post("/settings/kinds/remove", data={"name": "9/0 drop"}).status_code == 404
    for wrong in ({"name": "11/0 round"}, {"hole": "3"}, {"length": "0"}, {"per_gram": "many"}, {"name": ""}):
        assert made.post("/settings/kinds", data={**heavy, "sure": "1", **wrong}).status_code == 422


def test_sizes_of_ones_own_are_asked_for_and_picked_for_tables(made):
    sent = {"name": "Stall", "closure": "glued", "length": "42 cm", "wrist": "", "ease": ""}
    assert made.post("/settings/sizes", data=sent).headers["location"] == "/settings?said=size"
    assert "Stall" in made.get("/settings").text
    assert api(made, length="42 cm", closure="glued")["sentence"] in words(made, pattern="1", length="stall")
    picked = made.post("/patterns/1/sizes", data={"size": ["stall", "opera", "nowhere"]})
    assert picked.headers["location"] == "/patterns/1/materials?said=sizes"
    rows = re.findall(r'<tr><th scope="row"><span>(\w[^<]*)<small>', made.get("/patterns/1/materials").text)
    assert rows == ["Stall", "Opera"]
    assert made.post("/settings/sizes/remove", data={"name": "Stall"}).headers["location"] == "/settings?said=size-gone"
    for wrong in ({"name": "Opera"}, {"wrist": "16 cm"}, {"length": ""}, {"closure": "knot"}, {"length": "five"}):
        assert made.post("/settings/sizes", data={**sent, **wrong}).status_code == 422


@pytest.mark.parametrize("size", NAMED, ids=lambda size: size.key)
def test_every_named_size_is_read_as_its_question(size):
    form = read_desk([("length", size.name)], MakerSettings())
    assert not form.errors
    for name in ("length_mm", "wrist_mm", "ease_mm"):
        wanted = getattr(size.question, name)
        assert getattr(form.size.question, name) == (wanted if wanted is None else pytest.approx(wanted))
    assert form.size.question.closure == size.question.closure


def test_grams_packs_and_places_are_read_as_they_are_typed():
    assert read_grams("a 20, B 5.5 g", "AB") == {"A": 20, "B": 5.5}
    packs = read_packs("20 at 3.50, B 10", "AB")
    assert {code: (pack.grams, pack.price) for code, pack in packs.items()} == {"A": (20, 3.5), "B": (10, 0)}
    assert (read_worked("40", 6), read_worked("2/3", 6)) == (40, 9)
    for reading in (lambda: read_grams("20", "AB"), lambda: read_packs("C 20", "AB"), lambda: read_worked("x", 6)):
        with pytest.raises(EngineError):
            reading()


def test_the_answer_as_json_can_be_read_again(made):
    answer = api(made, length="20 cm", closure="ring")
    assert json.loads(json.dumps(answer)) == answer
    assert answer["table"]["beads"] in [ring["beads"] for ring in answer["rings"]]
    assert {offer["round"] for offer in answer["offers"]} <= {"bead", "down", "up"}
