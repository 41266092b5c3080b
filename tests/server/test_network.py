"""Nothing that the program prints, draws or counts asks the network for anything."""

from __future__ import annotations

import subprocess
import sys

from webapp.paths import ROOT

LISTENED = """
import sys
heard = []
sys.addaudithook(lambda event, given: heard.append((event, given)) if event in ASKING else None)
ASKING = {"socket.connect", "socket.getaddrinfo", "socket.gethostbyname", "socket.sendto"}
from dataclasses import replace
from engine.booklet.choices import Choices, Imprint
from engine.booklet.own import OwnWords
from engine.counting.questions import Question
from engine.counting.workshop import Workshop
from tests.examples import harbour
from webapp.pictures.images import pattern_png
from webapp.printing.orders import CopyOrder, Order, proofed
own = OwnWords((("introduction", "See https://lantern-street.example/a.png <img src=http://127.0.0.1:9/b.png>"),))
order = Order(replace(harbour(), notes="<link href=http://127.0.0.1:9/c.css>"), Choices(
    Question(300.0, "clasp"), imprint=Imprint("Lantern Street", "http://lantern-street.example"), own=own), Workshop(), True)
made = order.carry_out()
assert made.pages > 5 and not proofed(order, made.pdf).blocks
CopyOrder(made.pdf, "Personal copy for http://127.0.0.1:9/").carry_out()
pattern_png(harbour(), "ring", 300)
print(heard)
"""


def test_printing_proofing_copying_and_drawing_open_no_connection() -> None:
    ran = subprocess.run((sys.executable, "-c", LISTENED), cwd=ROOT, capture_output=True, text=True, check=True)
    assert ran.stdout.strip() == "[]"


def test_a_connection_would_be_heard() -> None:
    asked = (
        LISTENED.split("from dataclasses")[0]
        + "import socket\ntry: socket.create_connection(('127.0.0.1', 9), 1)\nexcept OSError: pass\nprint(len(heard))"
    )
    ran = subprocess.run((sys.executable, "-c", asked), cwd=ROOT, capture_output=True, text=True, check=True)
    assert int(ran.stdout) > 0
