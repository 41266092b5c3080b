"""The desk: the same numbers on page, in the reply and in JSON; names, own words, and what is asked beside."""

import json
import re
from html import unescape
from math import pi

import pytest
from hypothesis import HealthCheck, given
from hypothesis import settings as often
from hypothesis import strategies as st

from engine.booklet.choices import Choices
from engine.booklet.compose import compose
from engine.counting.answers import answer
from engine.counting.finished import NAMED
from engine.counting.follow_up_text import (
    OnThread,
    RanOut,
    read_held,
    read_left,
    read_out,
    read_packs,
    read_place,
    read_thread_left,
    read_worked,
)
from engine.counting.questions import Question
from engine.counting.reply import SECTIONS, Words, reply, reply_rows
from engine.counting.rope import Swatch
from engine.counting.stock import InHand
from engine.counting.workshop import Workshop
from engine.errors import EngineError
from engine.units import count, fixed, grams, length, metres
from tests.conftest import flat
from tests.examples import FOLDER, harbour
from webapp.exchange.results.lists import materials_json
from webapp.pages.forms.answers import read_desk
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


@often(max_examples=12, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(
    mm=st.integers(120, 1200),
    closure=st.sampled_from(["open", "clasp", "glued", "ring"]),
    kind=st.sampled_from(["11/0 round", "8/0 round", "11/0 cylinder"]),
    turn=st.sampled_from(["bead", "pass", "up"]),
)
def test_page_reply_and_json_carry_the_same_numbers(made, mm, closure, kind, turn):
    asked = {"length": f"{mm} mm", "closure": closure, "kind": kind, "round": turn}
    answer, shown = api(made, **asked), words(made, pattern="1", **asked)
    table = answer["table"]
    for text in (
        answer["sentence"],
        count(table["beads"]),
        length(answer["finished_mm"]),
        metres(table["strung_mm"]),
        metres(table["thread_mm"]),
        *(grams(colour["grams"]) for colour in table["colours"]),
    ):
        assert text in shown
    for paragraph in answer["reply"].split("\n\n"):
        assert re.sub(r"\s+", " ", paragraph) in shown
    bill = made.get("/api/patterns/1/materials", params=asked).json()
    assert bill == table


@often(max_examples=15)
@given(
    mm=st.integers(120, 1200),
    closure=st.sampled_from(["open", "clasp", "glued", "ring"]),
    kind=st.sampled_from(["11/0 round", "8/0 round", "15/0 round"]),
    unravelled=st.sampled_from([0.0, 230.0]),
    plan=st.sampled_from(["whole", "chart", 2.0, (40, 90)]),
    spare=st.integers(0, 30),
)
def test_booklet_reply_and_json_carry_the_same_numbers_each_rounded_once(mm, closure, kind, unravelled, plan, spare):
    own = Workshop(swatches=(Swatch("11/0 round", 10, "single", 480, 80.0, unravelled_mm=unravelled),))
    question = Question(float(mm), closure, kind)
    found, pattern = answer(harbour(), question, own, plan, spare), harbour()
    needs = compose(pattern, Choices(question, plan, spare=spare), own).needs
    told, table = reply(found, Words(sections=SECTIONS)), materials_json(found.materials)
    *rows, total = reply_rows(found)
    counted = [colour for colour in table["colours"] if colour["beads"]]
    assert (
        [(line.beads, line.grams) for line in needs.beads]
        == [(row.beads, row.weight) for row in rows]
        == [(count(colour["beads"]), grams(colour["grams"])) for colour in counted]
    )
    assert all(line.buy.endswith(f", {row.buy}") for line, row in zip(needs.beads, rows, strict=True))
    assert (needs.total_beads, needs.total_grams, needs.total_buy) == total[1:]
    thread = dict(needs.things)["Thread"]
    strung_mm = table["strung_mm"]
    assert metres(table["thread_mm"]) in thread and metres(table["thread_mm"]) in told
    assert metres(table["buy_thread_mm"]) in thread and metres(table["buy_thread_mm"]) in told
    assert (metres(strung_mm) if strung_mm >= 1000 else f"{fixed(strung_mm / 10, 0)} cm") in thread
    assert metres(strung_mm) in told
    assert (
        ("unravelled beads took" in thread) == bool(unravelled and kind == "11/0 round") == found.materials.use.measured
    )


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
    assert 'name="pattern" value="Small harbour, number 3"' in made.get("/answers").text


def test_a_number_becomes_the_title_in_the_field_and_asks_for_the_same_pattern_again(made):
    assert 'name="pattern" value="Small harbour"' in made.get("/answers?pattern=1").text
    made.post("/patterns/import", files=[("file", ("one.pattern.json", FILE))]).raise_for_status()
    assert 'name="pattern" value="Small harbour, number 1"' in made.get("/answers?pattern=1").text
    named = {"pattern": "Small harbour, number 1", "length": "45 cm"}
    assert words(made, **named).replace(named["pattern"], "") == words(made, pattern="1", length="45 cm").replace(
        named["pattern"], ""
    )
    made.post("/api/patterns", json={**json.loads(FILE), "title": "2031"})
    assert 'name="pattern" value="2031, number 3"' in made.get("/answers?pattern=3").text
    assert 'name="pattern" value="2031, number 3"' in made.get("/answers?pattern=2031").text


def test_a_size_of_ones_own_by_the_girth_of_a_hand_lets_the_hand_through(made):
    made.post("/settings/sizes", data={"name": "Fair", "closure": "clasp", "hand_girth": "21 cm"})
    sentence = api(made, hand_girth="21 cm")["sentence"]
    assert sentence in words(made, pattern="1", length="Fair")
    assert "hand 21.0 cm, ring" in flat(made.get("/settings").text)
    compared = made.get(
        "/api/answers", params={"pattern": 1, "compare": "sizes", "compare_sizes": "Fair", "closure": "clasp"}
    ).json()["compared"]
    assert [row["sentence"] for row in compared] == [sentence]
    refused = made.post("/settings/sizes", data={"name": "Both", "length": "40 cm", "hand_girth": "21 cm"})
    assert (refused.status_code, "Say a length, a wrist or a hand girth, and only one of them." in refused.text) == (
        422,
        True,
    )


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
    assert "as chosen, none over 1.00 m (settings)" in words(made, pattern="1", length="60 cm", threads="whole")


def test_a_customer_is_answered_in_their_own_units(made):
    shown = words(made, pattern="1", length="18 in", units="in", closure="clasp")
    answer = api(made, length="18 in", units="in", closure="clasp")
    assert "a piece of 18.0 in with a clasp" in answer["sentence"] in shown
    assert api(made, length="18 in", units="both", closure="clasp")["sentence"] in words(
        made, pattern="1", length="18 in", units="both", closure="clasp"
    )
    refused = made.get("/api/answers?pattern=1&units=ells").json()["error"]
    assert (refused["field"], refused["message"]) == (
        "units",
        "Units: “ells” is not known here; expected one of cm, in, both.",
    )


def test_stitches_are_called_as_the_maker_calls_them(made):
    made.post("/settings", data={"terms": "uk"})
    shown = words(made, pattern="1", length="45 cm", stitch="single", say="findings")
    assert "Stitch: double crochet" in shown
    assert "single crochet," not in shown
    assert api(made)["how_sure"] == "No swatch of 11/0 round beads is kept."
    assert "No swatch of 11/0 round beads is kept." in shown


def test_sections_of_the_reply_are_on_or_off(made):
    short = words(made, pattern="1", length="45 cm", say="sentence")
    assert "All together" not in short
    assert "Hook: steel hook" in words(made, pattern="1", length="45 cm", say="findings")


def test_a_kit_is_summed_in_the_currency_of_the_maker(made):
    shown = flat(made.get("/answers?pattern=1&length=45+cm&pieces=3&packs=20+at+3.50").text)
    table = shown.partition("To buy for 3 pieces")[2].partition("</table>")[0]
    costs = [float(cost) for cost in re.findall(r'data-column="Cost">€([0-9.]+)<', table)]
    assert costs[-1] == sum(costs[:-1]) > 0
    assert f"Beads cost €{costs[-1]:.2f}, which is €{costs[-1] / 3:.2f} a piece." in shown


@pytest.mark.parametrize(
    ("typed", "sentence"),
    [("20,2 cm", "20.2 cm was asked for; it"), ("2-8", "“2-8” is taken for 19.9 cm; it")],
)
def test_a_length_that_comes_out_otherwise_is_told_as_it_was_typed(made, typed, sentence):
    assert sentence in words(made, pattern="1", length=typed, closure="ring")


def test_beads_in_hand_kits_and_a_stop_stand_beside_the_answer(made):
    codes = [entry["code"] for entry in made.get("/api/patterns/1").json()["palette"]]
    shown = words(
        made,
        pattern="1",
        length="45 cm",
        have=", ".join(f"{code} 20" for code in codes),
        pieces="12",
        packs="20 at 3.50",
        worked="2/1",
        compare="kinds",
    )
    for text in (
        "They make a rope of at most",
        "To buy for 12 pieces",
        "a piece.",
        "Go on with round 2, place 2.",
        "Side by side",
        "11/0 cylinder",
    ):
        assert text in shown
    wrong = words(made, pattern="1", length="45 cm", have="?", pieces="0", worked="9999999")
    assert "“?” is not a bead and how much of it is there" in wrong
    assert "A kit is for 1 to 10,000 pieces." in wrong
    assert "Bead 9,999,999 is not inside this rope" in wrong
    assert api(made, length="45 cm", closure="clasp")["sentence"] in wrong


def test_what_ran_out_is_told_on_the_page_and_in_json_with_the_same_numbers(made):
    asked = {
        "length": "45 cm",
        "threads": "joins 400, 800",
        "out_thread": "thread 2: 100",
        "thread_left": "3",
        "out_colour": "B 20",
        "beads_left": "A 10",
    }
    shown, found = words(made, pattern="1", closure="open", **asked), api(made, **asked)
    thread, colour = found["out_of_thread"], found["out_of_colour"]
    assert (thread["worked"], thread["thread"], thread["joins"]) == (500, 2, [400, 500, 800])
    assert thread["rest"]["beads"] == 300 == sum(beads for _, beads in thread["rest"]["runs"])
    assert thread["buy_mm"] == pytest.approx(thread["thread_mm"] - 3000)
    assert f"Go on with round {thread['next_round']}, place {thread['next_place']}, on a new thread." in shown
    assert f"on {metres(thread['rest_thread_mm'])} of thread" in shown
    assert f"work {count(thread['works'])} beads of them: buy {metres(thread['buy_mm'])} more." in shown
    assert (colour["code"], colour["had"]) == ("B", 20)
    assert f"The next B is bead {count(colour['next_bead'])}" in shown
    assert [short["code"] for short in colour["short"]] == ["A", "B"]
    for short in colour["short"]:
        assert f"{short['code']} {short['name']}: {count(short['wanted'])} still to work" in shown
        assert f"{count(short['beads'])} missing; buy {count(short['grams'])} g with spare." in shown


def test_a_list_joined_where_the_thread_ended_is_one_step_away(made):
    page = made.get(
        "/answers",
        params={"pattern": 1, "length": "45 cm", "out_thread": "500", "worked": "40", "out_colour": "A at 60"},
    ).text
    links = [unescape(link) for link in re.findall(r'href="(/patterns/1/stringing[^"]*)"', page)]
    titles = [re.findall(r"<h2[^>]*>(Thread[^<]*)", made.get(link).text) for link in links[1:]]
    assert len(titles) == 3
    assert titles[0] == ["Thread 1", "Thread 2"]
    assert all(titles)


def test_any_sizes_stand_side_by_side(made):
    asked = {"length": "45 cm", "compare_sizes": "40 cm, 18 in, Opera, 2-8"}
    found = api(made, closure="clasp", **asked)["compared"]
    assert [row["name"] for row in found] == ["40 cm", "18 in", "Opera", "2-8"]
    for row, length_asked in zip(found[:2], ("40 cm", "18 in"), strict=True):
        assert row["table"] == api(made, length=length_asked, closure="clasp")["table"]
    usual = api(made, compare_sizes="2-8, 40")["compared"]
    assert usual[0]["table"]["beads"] == api(made, length="199.491133503 mm", closure="ring")["table"]["beads"]
    assert usual[1]["table"] == api(made, length="40 cm", closure="clasp")["table"]
    shown = words(made, pattern="1", **asked, closure="clasp")
    assert all(
        f"{count(row['table']['beads'])} {grams(sum(one['grams'] for one in row['table']['colours']))}" in shown
        for row in found
    )
    refused = made.get("/api/answers", params={"pattern": 1, "compare_sizes": "40 cm, 5 ells"}).json()["error"]
    assert (refused["field"], refused["message"]) == (
        "compare_sizes",
        "“ells” is not a unit of length here; use mm, cm, m, in, ft or yd.",
    )
    assert "1 mm cannot be worked in this rope." in words(made, pattern="1", length="45 cm", compare_sizes="1 mm")


def test_asked_beside_stands_in_json_only_where_it_was_asked(made):
    names = {"compared", "longest", "kit", "remaining", "out_of_thread", "out_of_colour"}
    assert not names & set(api(made))
    asked = {
        "compare": "kinds",
        "have": "A 20, B 2 x 10 g, C 900 beads",
        "pieces": "3",
        "packs": "A 500 beads at 2",
        "worked": "12/3",
        "out_thread": "40",
        "out_colour": "C at 30",
    }
    found = api(made, length="45 cm", **asked)
    assert names < set(found)
    assert [row["name"] for row in found["compared"]][:2] == ["15/0 round", "11/0 round"]
    assert found["kit"]["lines"][0]["packs"] * 2 == found["kit"]["cost"] == found["kit"]["each"] * 3
    assert found["remaining"]["worked"] == 11 * made.get("/api/patterns/1").json()["around"] + 3
    assert found["longest"]["limit"] in "ABC"


@pytest.mark.parametrize(
    ("asked", "field", "sentence"),
    [
        ({"compare": "shops"}, "compare", "Compare: “shops” is not known here; expected one of sizes, kinds."),
        ({"thread_left": "3"}, "out_thread", "Say where the thread ran out, such as 480, 12/3 or thread 2: 40."),
        ({"beads_left": "A 3"}, "out_colour", "Say which colour ran out, such as A 120."),
        ({"out_thread": "thread 99: 1"}, "out_thread", "There is no thread 99; this rope has 1."),
        ({"out_colour": "A 99999"}, "out_colour", "This rope takes 43 beads of A: 99,999 are enough."),
        ({"have": "A 3 packs"}, "have", "Say under Packs how much a pack of A holds, or write such as A 2 x 10 g."),
        (
            {"pieces": "3", "packs": "0"},
            "packs",
            "A pack holds more than nought grams or beads, and costs nought or more.",
        ),
        (
            {"hand_girth": "20 cm", "wrist": "16 cm"},
            "hand_girth",
            "Give one size: a length, a wrist, a hand girth or an inner diameter.",
        ),
        ({"hand_girth": "20 cm", "closure": "clasp"}, "closure", "A hand girth asks for a ring that is worked shut."),
    ],
)
def test_what_cannot_be_meant_is_refused_by_its_field(made, asked, field, sentence):
    refused = made.get("/api/answers", params={"pattern": 1, **asked})
    assert (refused.status_code, refused.json()["error"]["message"], refused.json()["error"]["field"]) == (
        422,
        sentence,
        field,
    )
    assert sentence in words(made, pattern="1", **asked)


def test_a_bangle_goes_by_the_hand_or_by_its_inner_diameter_and_not_by_the_wrist(made):
    by_hand = api(made, hand_girth="20 cm")
    assert (
        by_hand["sentence"]
        == api(made, length="20 cm", closure="ring")["sentence"]
        != api(made, wrist="20 cm")["sentence"]
    )
    assert by_hand["sentence"] in words(made, pattern="1", hand_girth="20 cm")
    assert (by_hand["closure"], by_hand["ring"]["girth_mm"]) == ("ring", by_hand["finished_mm"])
    closed = api(made, inner="6.5 cm", closure="clasp")
    assert closed["table"]["rope_mm"] == pytest.approx(pi * (65 + closed["table"]["thickness_mm"]) - 25, abs=0.2)
    assert api(made, inner="6.35 cm")["sentence"] in words(made, pattern="1", length="2-8")
    assert "Was the wrist measured?" in words(made, pattern="1", hand_girth="16 cm")
    assert '<option value="ring" selected>' in made.get("/patterns/1/materials?closure=open&hand_girth=20").text


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
    assert (
        made.post("/settings/kinds/remove", data={"name": "9/0 drop"})
        .headers["location"]
        .startswith("/settings?said=kind-gone&back=kind&name=")
    )
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
    assert (
        made.post("/settings/sizes/remove", data={"name": "Stall"})
        .headers["location"]
        .startswith("/settings?said=size-gone&back=size&name=")
    )
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
    assert read_held("a 20, B 5.5 g", "AB").by_code == {"A": InHand(20), "B": InHand(5.5)}
    assert read_held("A20,B5g; c 2x10", "ABC").by_code == {"A": InHand(20), "B": InHand(5), "C": InHand(10, 2)}
    assert read_held("A 2 x 10 g, B 300 beads", "AB").by_code == {"A": InHand(10, 2), "B": InHand(300, 1, True)}
    packs = read_packs("20 at 3.50, B 10", "AB")
    assert {code: (pack.size, pack.price) for code, pack in packs.items()} == {"A": (20, 3.5), "B": (10, 0)}
    assert read_held("A 3 packs, B 2 packs", "AB", packs).by_code == {"A": InHand(20, 3), "B": InHand(10, 2)}
    assert read_held("A 20, keep 12.5 %", "AB") == ({"A": InHand(20)}, 12.5)
    assert (read_worked("40", 6), read_worked("2/3", 6)) == (40, 9)
    assert (read_worked("60 % done", 6, 500), read_worked("33%", 6, 100)) == (300, 33)
    assert (read_place("2/3", 6), read_place("thread 2: 40", 6), read_place("Thread 2 bead 40", 6)) == (
        9,
        OnThread(2, 40),
        OnThread(2, 40),
    )
    assert (read_out("b 120", "AB", 6), read_out("B at 2/3", "AB", 6)) == (RanOut("B", 120, None), RanOut("B", None, 9))
    assert read_left("A 200, b 50 beads", "AB") == {"A": 200, "B": 50}
    assert [read_thread_left(text) for text in ("", "0", "1.5", "2,5 m", "40 cm", "900")] == [
        0,
        0,
        1500,
        2500,
        400,
        900_000,
    ]
    for reading in (
        lambda: read_held("20", "AB"),
        lambda: read_packs("C 20", "AB"),
        lambda: read_worked("x", 6),
        lambda: read_held("A 3 packs", "AB"),
        lambda: read_out("B", "AB", 6),
        lambda: read_left("A", "AB"),
        lambda: read_place("thread x", 6),
        lambda: read_thread_left("much"),
    ):
        with pytest.raises(EngineError):
            reading()


def test_the_answer_as_json_can_be_read_again(made):
    answer = api(made, length="20 cm", closure="ring")
    assert json.loads(json.dumps(answer)) == answer
    assert answer["table"]["beads"] in [ring["beads"] for ring in answer["rings"]]
    assert {offer["round"] for offer in answer["offers"]} <= {"bead", "down", "up"}


def test_an_answer_says_how_it_differs_from_the_last_one(made):
    before = "length=45+cm&closure=clasp"
    change = api(made, length="44 cm", closure="clasp", last=before)["change"]
    assert change["beads"] == sum(colour["beads"] for colour in change["colours"]) < 0
    assert change["sentence"] in words(made, pattern="1", length="44 cm", last=f"pattern=1&{before}")
    assert change["sentence"] in words(made, pattern="1", length="1 cm shorter", last=f"pattern=1&{before}")
    assert "before:" not in words(made, pattern="1", length="44 cm", last=f"pattern=2&{before}")
    assert "before:" not in words(made, pattern="1", length="44 cm", last="pattern=1&length=ells")
    assert "ask for a length first" in words(made, pattern="1", length="1 cm shorter")
    refused = made.get("/api/answers", params={"pattern": 1, "last": "length=5+ells"})
    assert (refused.status_code, refused.json()["error"]["field"]) == (422, "last")


def test_asked_once_more_an_answer_still_says_what_changed_before(made):
    """The page that was answered is asked again, as a browser does when a field is left."""
    page = made.get("/answers", params={"pattern": "1", "length": "44 cm", "last": "pattern=1&length=45+cm"}).text
    sent = dict(re.findall(r'name="(last|before)" value="([^"]*)"', page))
    again = {name: unescape(value) for name, value in sent.items()}
    assert "fewer than for 45.0 cm before" in words(made, pattern="1", length="44 cm", **again)


def test_page_and_api_take_the_same_for_granted(made):
    for asked in (
        {"length": "45 cm"},
        {"wrist": "16 cm"},
        {"neck": "36 cm"},
        {"hand_girth": "20 cm"},
        {"length": "2-8"},
        {},
    ):
        answer = api(made, closure="usual", **asked)
        assert answer["sentence"] in words(made, pattern="1", **asked)
        assert answer["closure"] in ("clasp", "ring", "open")
    assert api(made, length="45 cm")["closure"] == "open"


def test_the_longest_string_is_offered_wherever_threads_are(made):
    for path in (
        "/answers?pattern=1",
        "/patterns/1/stringing",
        "/patterns/1/materials",
        "/patterns/1/booklet",
        "/settings",
    ):
        assert 'name="longest"' in made.get(path).text, path
    short = made.get("/api/patterns/1/stringing?length=60+cm&longest=1").json()["threads"]
    assert len(short) > 1 and all(thread["strung_mm"] <= 1000 for thread in short)
