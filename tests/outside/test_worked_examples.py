"""One worked example per closure and bead kind, the same on the command line, by the API, at the desk and in print.

Six around, 45 cm, a chart of seven beads. Worked out with a calculator: at working diameter d a bead adds 0.13093361 d
and the rope is 3.1663704 d thick (spheres on the helix [7, 6, 1], solved with 30 digits; two of its neighbours in the
same table are the Boerdijk–Coxeter helix, https://en.wikipedia.org/wiki/Boerdijk%E2%80%93Coxeter_helix). Rope wanted:
open 450 mm; clasp 450 − 25; glued ends 450 − 15; ring 450 + π × thickness, its beads whole sevens.
"""

import json
from html import unescape
from math import pi

import pytest

from engine.booklet.choices import Choices
from engine.counting.questions import Question
from engine.counting.workshop import Workshop
from tests.booklets import text_of
from webapp.commands import main
from webapp.exchange import pattern_file
from webapp.printing.orders import Order, print_booklet

THICK = {
    "15/0 round": 4.2746,
    "11/0 round": 6.2576,
    "10/0 round": 6.6494,
    "8/0 round": 8.7075,
    "6/0 round": 11.3989,
    "11/0 cylinder": 5.0662,
}
WORKED = {  # beads, and the rope in mm
    ("15/0 round", "open"): (2546, 450.0),
    ("15/0 round", "clasp"): (2404, 424.9),
    ("15/0 round", "glued"): (2461, 435.0),
    ("15/0 round", "ring"): (2625, 464.0),
    ("11/0 round", "open"): (1739, 450.0),
    ("11/0 round", "clasp"): (1642, 424.9),
    ("11/0 round", "glued"): (1681, 435.0),
    ("11/0 round", "ring"): (1813, 469.1),
    ("10/0 round", "open"): (1637, 450.1),
    ("10/0 round", "clasp"): (1546, 425.1),
    ("10/0 round", "glued"): (1582, 435.0),
    ("10/0 round", "ring"): (1715, 471.6),
    ("8/0 round", "open"): (1250, 450.1),
    ("8/0 round", "clasp"): (1180, 424.9),
    ("8/0 round", "glued"): (1208, 435.0),
    ("8/0 round", "ring"): (1323, 476.4),
    ("6/0 round", "open"): (955, 450.1),
    ("6/0 round", "clasp"): (902, 425.2),
    ("6/0 round", "glued"): (923, 435.1),
    ("6/0 round", "ring"): (1029, 485.0),
    ("11/0 cylinder", "open"): (2148, 450.0),
    ("11/0 cylinder", "clasp"): (2029, 425.1),
    ("11/0 cylinder", "glued"): (2076, 434.9),
    ("11/0 cylinder", "ring"): (2226, 466.3),
}
# Every kind and every closure once in print; in all their pairs they are counted above, and a booklet prints those counts.
IN_PRINT = (
    ("15/0 round", "open"),
    ("11/0 round", "clasp"),
    ("10/0 round", "glued"),
    ("8/0 round", "ring"),
    ("6/0 round", "clasp"),
    ("11/0 cylinder", "ring"),
)
CLOSED_MM = {"open": 0, "clasp": 25, "glued": 15}


@pytest.fixture
def document(document):
    return {**document, "around": 6, "beads": "2A 2B 3C"}


def finished_cm(kind: str, closure: str, rope_mm: float) -> float:
    return (rope_mm - pi * THICK[kind] if closure == "ring" else rope_mm + CLOSED_MM[closure]) / 10


@pytest.mark.parametrize(("kind", "closure"), WORKED)
def test_command_line_api_and_desk_give_the_worked_example(client, document, tmp_path, capsys, kind, closure):
    file = tmp_path / "trial.pattern.json"
    file.write_text(json.dumps(document), encoding="utf-8")
    assert main(["materials", str(file), "--length", "45 cm", "--closure", closure, "--kind", kind, "--json"]) == 0
    said = json.loads(capsys.readouterr().out)
    beads, rope_mm = WORKED[kind, closure]
    assert (said["beads"], said["rope_mm"]) == (beads, pytest.approx(rope_mm, abs=0.06))
    assert said["thickness_mm"] == pytest.approx(THICK[kind], abs=0.0001)
    number = client.post("/api/patterns", json=document).json()["id"]
    options = {"length": "45 cm", "closure": closure, "kind": kind}
    assert client.get(f"/api/patterns/{number}/materials", params=options).json() == said
    answered = client.get("/api/answers", params={"pattern": number, **options}).json()
    assert answered["table"] == said
    assert answered["finished_mm"] == pytest.approx(10 * finished_cm(kind, closure, rope_mm), abs=0.07)
    shown = unescape(" ".join(client.get("/answers", params={"pattern": number, **options}).text.split()))
    assert answered["sentence"] in shown
    assert f"{beads:,}</td>" in shown
    strung = client.get(f"/api/patterns/{number}/stringing", params=options).json()
    assert sum(thread["beads"] for thread in strung["threads"]) == beads


@pytest.mark.parametrize(("kind", "closure"), IN_PRINT)
def test_the_booklet_prints_the_worked_example(document, kind, closure):
    pattern = pattern_file.to_pattern(document)
    question = Question(450.0, closure, kind)
    printed = print_booklet(Order(pattern, Choices(question, ink_saving=True), Workshop()), lambda step: None)
    words = " ".join(text_of(printed).split())
    beads, rope_mm = WORKED[kind, closure]
    assert f"Beads in all {beads:,} " in words
    assert f"All beads {beads:,} " in words
    assert f"{finished_cm(kind, closure, rope_mm):.1f} cm" in words
    assert f"takes about {beads:,} beads: {beads / 7:.2f}".rstrip("0").rstrip(".") in words
