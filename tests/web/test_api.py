"""The calls that other people's scripts rely on: names, meanings, statuses."""

import json
from dataclasses import replace

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from engine.counting.answers import answer
from engine.counting.questions import Question
from tests.examples import harbour
from webapp.exchange import pattern_file
from webapp.exchange.results.lists import materials_json, stringing_json
from webapp.storage import patterns


@pytest.fixture
def kept(client, document):
    return client.post("/api/patterns", json=document).json()["id"]


def error(response):
    assert response.headers["content-type"] == "application/json"
    found = response.json()
    assert set(found) == {"error"}
    assert set(found["error"]) == {"code", "message", "field"}
    return response.status_code, found["error"]["message"], found["error"]["field"]


def test_a_pattern_file_is_taken_in_and_given_back(client, document):
    made = client.post("/api/patterns", json=document)
    assert (made.status_code, made.json()) == (201, {"id": 1, "revision": 1})
    assert client.get("/api/patterns/1").json() == {**document, "id": 1, "revision": 1, "sequence": 0}


def test_the_list_is_searched_and_turned_in_pages(client, document, kept):
    client.post("/api/patterns", json={**document, "title": "Meadow", "notes": "", "tags": ["flowers"]})
    everything = client.get("/api/patterns").json()
    assert (everything["page"], everything["pages"], everything["total"]) == (1, 1, 2)
    assert [summary["title"] for summary in everything["patterns"]] == ["Meadow", "Small harbour"]
    assert [s["title"] for s in client.get("/api/patterns?search=lamps").json()["patterns"]] == ["Small harbour"]
    assert [s["title"] for s in client.get("/api/patterns?tag=flowers").json()["patterns"]] == ["Meadow"]


def test_a_save_needs_the_newest_revision(client, document, kept):
    saved = client.put(f"/api/patterns/{kept}", json={**document, "title": "Changed", "made_from": 1})
    assert (saved.status_code, saved.json()) == (200, {"id": 1, "revision": 2})
    stale = client.put(f"/api/patterns/{kept}", json={**document, "title": "Too late", "made_from": 1})
    assert error(stale) == (
        409,
        "This pattern has been saved since: revision 2 is the newest, and this was made from "
        "revision 1. Nothing was changed.",
        "made_from",
    )
    assert client.get(f"/api/patterns/{kept}").json()["title"] == "Changed"
    missing = client.put(f"/api/patterns/{kept}", json=document)
    assert error(missing) == (422, "“made_from” is nothing; expected a whole number.", "made_from")


def test_a_put_replaces_everything_and_what_it_leaves_out_takes_its_default(client, document, kept):
    least = {name: document[name] for name in ("format", "version", "title", "around", "palette", "beads")}
    client.put(f"/api/patterns/{kept}", json={**least, "made_from": 1})
    assert client.get(f"/api/patterns/{kept}").json() == {
        **least,
        "hand": "right",
        "id": 1,
        "revision": 2,
        "sequence": 1,
    }


def test_the_working_copy_is_what_stands_and_is_guarded_by_its_sequence(client, document, kept):
    drawn = {**document, "beads": "50A", "sequence": 0}
    assert client.put(f"/api/patterns/{kept}/working", json=drawn).json() == {"sequence": 1}
    assert client.get(f"/api/patterns/{kept}").json()["beads"] == "50A"
    status, message, field = error(client.put(f"/api/patterns/{kept}/working", json=drawn))
    assert (status, field) == (409, "sequence")
    assert message.startswith("Another page has written to this pattern since")


def test_a_deleted_pattern_is_in_the_bin_and_can_be_taken_back(client, kept):
    assert client.delete(f"/api/patterns/{kept}").status_code == 204
    assert client.get("/api/patterns").json()["total"] == 0
    client.post(f"/patterns/{kept}/take-back")
    assert client.get("/api/patterns").json()["total"] == 1


def test_list_bill_and_answer_are_those_of_the_engine(client, kept):
    options = {"length": "45 cm", "closure": "clasp", "threads": "whole", "spare": "12"}
    found = answer(harbour(), Question(450.0, "clasp"), plan="whole", spare=12)
    assert client.get(f"/api/patterns/{kept}/stringing", params=options).json() == json.loads(
        json.dumps(stringing_json(found.stringing))
    )
    assert client.get(f"/api/patterns/{kept}/materials", params=options).json() == materials_json(found.materials)
    said = client.get("/api/answers", params={"pattern": kept, **options}).json()
    assert (said["sentence"], said["table"], said["joins"]) == (found.sentence, materials_json(found.materials), 0)


@pytest.fixture
def in_parts(document):
    """A pattern file in parts: a motif that hangs between two parts that fill."""
    parts = [
        {"name": "Rope", "beads": "2A B", "times": "fill"},
        {"name": "Focal", "beads": "100C", "times": 2},
        {"name": "Rope", "beads": "2A B", "times": "fill"},
    ]
    return {name: value for name, value in document.items() if name not in ("beads", "start", "end")} | {"parts": parts}


def test_a_rope_of_parts_is_kept_counted_and_answered_by_part(client, in_parts):
    kept = client.post("/api/patterns", json=in_parts).json()["id"]
    given = client.get(f"/api/patterns/{kept}").json()
    assert [part["times"] for part in given["parts"]] == ["fill", 2, "fill"] and "beads" not in given
    asked = {"length": "40 cm", "threads": "0.6"}
    bill = client.get(f"/api/patterns/{kept}/materials", params=asked).json()
    told = [(part["name"], part["beads"], part["times"]) for part in bill["parts"]]
    assert told[1] == ("Focal", 200, 2) and told[0][1] - told[2][1] in (0, 1)
    assert sum(part["beads"] for part in bill["parts"]) == bill["beads"]
    assert bill["parts"][1]["seam"]["more"] == 2 * told[0][1] % 25
    listed = client.get(f"/api/patterns/{kept}/stringing", params=asked).json()
    assert listed["parts"] == bill["parts"]
    assert {name for thread in listed["threads"] for name in thread["parts"]} == {"Rope", "Focal"}
    said = client.get("/api/answers", params={"pattern": kept, **asked}).json()
    assert said["parts"] == said["table"]["parts"] == bill["parts"]
    assert said["middle"] == "The middle of the rope lies in “Focal”, which stands right in the middle."
    assert client.get("/api/patterns").json()["patterns"][0]["parts"] == 3


def test_parts_that_make_no_rope_are_refused_by_their_field(client, in_parts):
    in_parts["parts"][1]["times"] = 0
    refused = client.post("/api/patterns", json=in_parts)
    assert (refused.status_code, refused.json()["error"]["field"]) == (422, "parts.1.times")
    assert refused.json()["error"]["message"] == "Part 2 “Focal” is worked 0 times; expected 1 to 1,000, or “fill”."
    beside = client.post("/api/patterns", json={**in_parts, "beads": "3A"})
    assert beside.json()["error"]["field"] == "beads"


def test_a_length_without_room_for_the_fixed_parts_names_them(client, in_parts):
    kept = client.post("/api/patterns", json=in_parts).json()["id"]
    refused = client.get(f"/api/patterns/{kept}/materials", params={"length": "2 cm"})
    assert refused.status_code == 422
    assert refused.json()["error"]["message"] == "“Focal” alone makes 2.7 cm of rope; ask for a longer piece."


def test_the_list_has_the_fields_that_scripts_read(client, kept):
    found = client.get(f"/api/patterns/{kept}/stringing").json()
    assert list(found) == ["beads", "repeat", "runs", "threads"]
    assert found["runs"] == [["A", 13], ["B", 2], ["A", 7], ["C", 2], ["B", 1], ["A", 10], ["B", 2], ["A", 13]]
    assert found["threads"] == [{"beads": 50, "strung_mm": pytest.approx(70), "runs": found["runs"]}]


def test_the_bill_has_the_fields_that_scripts_read(client, kept):
    found = client.get(f"/api/patterns/{kept}/materials").json()
    assert list(found) == [
        "length_mm",
        "rope_mm",
        "rounds_per_cm",
        "beads",
        "passes",
        "strung_mm",
        "strung_rule_mm",
        "thread_mm",
        "thickness_mm",
        "source",
        "colours",
        "spare",
        "buy_thread_mm",
    ]
    assert isinstance(found["passes"], float)
    assert found["colours"][0] == {
        "code": "A",
        "name": "Night water",
        "beads": 43,
        "grams": pytest.approx(43 / 110),
        "buy_grams": 1,
    }


def test_the_left_hand_works_the_same_list_unless_the_picture_is_kept(client, document):
    number = client.post("/api/patterns", json={**document, "beads": "3A 10B 37C"}).json()["id"]

    def runs(**options):
        return client.get(f"/api/patterns/{number}/stringing", params=options).json()["runs"]

    assert runs(hand="left") == runs()
    assert runs(hand="left", keep_picture=True) != runs()


@pytest.mark.parametrize(
    ("query", "sentence", "field"),
    [
        ("length=45", "“45” has no unit; write mm, cm, m or in behind it, such as 45 cm.", "length"),
        ("length=45 ells", "“ells” is not a unit of length here; use mm, cm, m, in, ft or yd.", "length"),
        ("length=1mm", "That leaves 0.1 cm of rope, less than one round (0.2 cm); ask for a longer piece.", "length"),
        (
            "closure=knot",
            "Closure: “knot” is not known here; expected one of open, clasp, glued, ring, magnet, cone, button, tie.",
            "closure",
        ),
        (
            "threads=some",
            "“some” is not a plan for threads; expected balanced, whole, chart or metres such as 4, or the beads after which a thread is joined: joins 480, 960.",
            "threads",
        ),
        ("hand=both", "Hand: “both” is not known here; expected one of right, left.", "hand"),
        (
            "kind=12/0",
            "Bead kind: “12/0” is not known here; expected one of 15/0 round, 11/0 round, 10/0 round, 8/0 round, 6/0 round, 11/0 cylinder.",
            "kind",
        ),
    ],
)
def test_a_question_that_cannot_be_meant_is_refused_by_field(client, kept, query, sentence, field):
    assert error(client.get(f"/api/patterns/{kept}/stringing?{query}")) == (422, sentence, field)


@pytest.mark.parametrize(
    ("content", "status", "start"),
    [
        (b"{", 400, "The file is not JSON"),
        (b"\xff", 400, "The file is not UTF-8 text"),
        (b"[]", 422, "The file is JSON but"),
        (b'{"format": "ropewright-pattern", "version": 9}', 422, "“version” is “9”"),
    ],
)
def test_what_is_no_pattern_file_is_refused_with_its_status(client, content, status, start):
    found, message, _ = error(client.post("/api/patterns", content=content))
    assert found == status
    assert message.startswith(start)


@pytest.mark.parametrize(
    "address",
    [
        "/api/patterns/99",
        "/api/patterns/0/stringing",
        "/api/patterns/99999999999999999999",
        "/api/answers?pattern=99",
        "/api/nothing",
    ],
)
def test_what_is_not_there_is_404_in_one_sentence(client, address):
    status, message, _ = error(client.get(address))
    assert status == 404
    assert message.endswith(".")


def test_pictures_are_png_of_the_width_asked_for(client, kept):
    for view in ("rope", "ring", "necklace"):
        answer = client.get(f"/api/patterns/{kept}/picture.png", params={"view": view, "width": 120})
        assert answer.headers["content-type"] == "image/png"
        assert int.from_bytes(answer.content[16:20], "big") == 120
    assert error(client.get(f"/api/patterns/{kept}/picture.png?view=front"))[0] == 422
    assert error(client.get(f"/api/patterns/{kept}/picture.png?width=9999999"))[0] == 422


def test_the_schema_of_the_pattern_file_is_published(client):
    assert client.get("/api/pattern-file.schema.json").json() == pattern_file.schema()


def test_every_call_is_described(client):
    described = client.get("/api/openapi.json").json()["paths"]
    assert set(described) == {
        "/api/patterns",
        "/api/patterns/{id}",
        "/api/patterns/{id}/working",
        "/api/patterns/{id}/piece",
        "/api/patterns/{id}/pieces/{piece}/place",
        "/api/patterns/{id}/scene",
        "/api/patterns/{id}/card.html",
        "/api/starts",
        "/api/starts/{start}",
        "/api/starts/photograph",
        "/api/starts/symmetric",
        "/api/starts/list",
        "/api/starts/repeats",
        "/api/starts/old-chart",
        "/api/patterns/{id}/stringing",
        "/api/patterns/{id}/mistakes",
        "/api/patterns/{id}/materials",
        "/api/patterns/{id}/booklet.pdf",
        "/api/patterns/{id}/picture.png",
        "/api/answers",
        "/api/patterns/{id}/colourways",
        "/api/beads",
        "/api/beads/{bead}",
        "/api/look-alikes",
        *(f"/api/patterns/{{id}}/chart.{suffix}" for suffix in ("txt", "csv", "svg", "png")),
        "/api/pattern-file.schema.json",
    }


@settings(max_examples=60, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(
    query=st.dictionaries(
        st.sampled_from(
            [
                "length",
                "closure",
                "kind",
                "stitch",
                "wrist",
                "ease",
                "round",
                "threads",
                "hand",
                "spare",
                "keep_picture",
            ]
        ),
        st.text(max_size=12)
        | st.sampled_from(["50 cm", "ring", "clasp", "0", "4", "left", "single", "pass", "8/0 round", "nan", "1e9 m"]),
        max_size=5,
    )
)
def test_no_question_is_answered_with_a_traceback(client, kept, query):
    for address in (f"/api/patterns/{kept}/materials", f"/patterns/{kept}/materials", f"/patterns/{kept}/stringing"):
        assert client.get(address, params=query).status_code in (200, 422)


@settings(max_examples=60, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(
    data=st.binary(max_size=100)
    | st.text(max_size=60).map(
        lambda beads: json.dumps(
            {**pattern_file.to_document(replace(harbour(), title="Trial")), "beads": beads}
        ).encode()
    )
)
def test_no_body_is_answered_with_a_traceback(client, kept, data):
    for response in (
        client.post("/api/patterns", content=data),
        client.put(f"/api/patterns/{kept}", content=data),
        client.put(f"/api/patterns/{kept}/working", content=data),
    ):
        assert response.status_code in (200, 201, 400, 422)


def test_a_pattern_of_a_bead_kind_that_is_gone_can_still_be_saved(client, app, document):
    lost = {**document, "palette": [{**document["palette"][0], "kind": "9/0 drop"}, *document["palette"][1:]]}
    number = patterns.create(app.state.services.database, pattern_file.to_pattern(lost)).id
    saved = client.put(f"/api/patterns/{number}", json={**lost, "title": "Saved", "made_from": 1})
    assert (saved.status_code, client.get(f"/api/patterns/{number}").json()["palette"][0]["kind"]) == (200, "9/0 drop")
    assert client.put(f"/api/patterns/{number}/working", json={**lost, "sequence": 1}).status_code == 200
    strange = {**lost, "palette": [{**lost["palette"][0], "kind": "8/0 drop"}, *lost["palette"][1:]], "made_from": 2}
    assert client.put(f"/api/patterns/{number}", json=strange).status_code == 422
