"""An old chart from its picture to the chart editor, over HTTP."""

from __future__ import annotations

import re
from io import BytesIO

import pytest
from PIL import Image

from tests.photographed import Photographed, in_symbols, photographed, random_rope
from webapp.pages.addresses import address
from webapp.storage import finding, patterns

ROPE = random_rope(10, 24, 3, seed=4)


def taken() -> Photographed:
    return photographed(ROPE, long_px=900, off_px=0.5)


MARKED = {
    name: f"{100 * place:.2f}"
    for number, corner in enumerate(taken().corners, 1)
    for name, place in zip((f"x{number}", f"y{number}"), corner, strict=True)
}


def hand_in(client, name: str, data: bytes, **fields: str):
    return client.post(address("old_chart_new"), files={"picture": (name, data)}, data=fields)


@pytest.fixture
def token(client) -> str:
    sent = hand_in(client, "chart.jpg", taken().jpeg)
    assert sent.status_code == 303
    return sent.headers["location"].rpartition("/")[2]


def a_pdf(pages: int = 2) -> bytes:
    out = BytesIO()
    picture = Image.open(BytesIO(taken().jpeg))
    blank = Image.new("RGB", (100, 300), "white")
    blank.save(out, "PDF", save_all=True, append_images=[picture] * (pages - 1))
    return out.getvalue()


def test_the_ways_to_begin_lead_there_and_nothing_is_read_before_n_is_said(client, token):
    assert f'href="{address("old_chart_new")}"' in client.get(address("begin")).text
    assert "Say how many beads go around, and it is read." in client.get(address("old_chart", token=token)).text


def test_the_chart_is_read_rows_and_colours_being_found(client, token):
    text = client.get(address("old_chart", token=token, around=10, **MARKED)).text
    assert f"{len(ROPE.chart)} beads in 24 rows, 10 around" in text
    assert text.count('class="bead') >= 3


def test_what_was_read_and_put_right_becomes_a_pattern(client, app, token):
    asked = {"around": "10", "rows": "24", "many": "3", "title": "From the drawer", **MARKED}
    looked = client.post(
        address("old_chart", token=token),
        data={**asked, "fix-0": "0", "fix-1": "2", "fix-9999": "1", "fix-2": "9", "fix-x": "1"},
    )
    assert looked.status_code == 200
    made = client.post(address("old_chart", token=token), data={**asked, "fix-0": "0", "fix-1": "2", "do": "make"})
    assert (made.status_code, made.headers["location"]) == (303, address("chart", id=1))
    pattern = patterns.load(app.state.services.database, 1).pattern
    assert (pattern.title, pattern.around, pattern.chart[:2]) == ("From the drawer", 10, bytes([0, 2]))
    order = sorted(range(3), key=lambda colour: -ROPE.chart.count(colour))
    meant = bytes(order.index(colour) for colour in ROPE.chart)
    assert sum(one != other for one, other in zip(pattern.chart[2:], meant[2:], strict=True)) <= 1


def test_beads_in_doubt_are_shown_with_the_picture_round_them(client, token):
    far = {name: f"{float(place) + (3 if name[0] == 'y' else 0):.2f}" for name, place in MARKED.items()}
    text = client.get(address("old_chart", token=token, around=10, rows=24, many=3, fit="stay", **far)).text
    assert "Beads in doubt" in text
    doubts = re.findall(r'src="([^"]*bead\.webp[^"]*)"', text)
    assert 0 < len(doubts) <= 60
    seen = client.get(doubts[0].replace("&amp;", "&"))
    assert Image.open(BytesIO(seen.content)).size == (320, 320)


def test_two_corners_and_a_row_place_the_other_two(client, token):
    """On a picture that is w wide and h high: level, and along a row that falls; one that was pulled stays."""
    own = address("old_chart", token=token)

    def lies(**asked) -> dict[str, str]:
        places = re.search(r'data-places="([^"]*)"', client.get(own, params=asked).text)[1]
        return dict(place.split("=") for place in places.split())

    level = lies(x1="20", y1="30", x3="70", y3="90")
    assert (level["x2"], level["x4"]) == ("70.00,30.00", "20.00,90.00")
    falling = lies(x1="20", y1="30", x3="70", y3="90", rowx="60", rowy="32")
    (x2, y2), (x4, y4) = ([float(share) for share in falling[corner].split(",")] for corner in ("x2", "x4"))
    assert y2 > 30 and x4 < 20
    assert (round(x2 + x4, 1), round(y2 + y4, 1)) == (90, 120)
    pulled = lies(x1="20", y1="30", x3="70", y3="90", x2="72", y2="33")
    assert pulled["x4"] == "18.00,87.00"
    assert "lie on one another" in client.get(own, params={"x1": "9", "y1": "9", "rowx": "9", "rowy": "9"}).text


def test_symbols_are_shown_once_and_given_codes_and_colours(client, app):
    rope = random_rope(8, 12, 3, seed=4)
    seen = photographed(in_symbols(rope), long_px=900, off_px=0.5)
    sent = hand_in(client, "chart.jpg", seen.jpeg)
    own = sent.headers["location"]
    corners = {f"{name}{number}": f"{100 * place:.2f}" for number, corner in enumerate(seen.corners, 1)
               for name, place in zip("xy", corner, strict=True)}  # fmt: skip
    asked = {"around": "8", "rows": "12", "many": "3", "marks": "symbols", **corners}
    text = client.get(own, params=asked).text
    assert "What each symbol means" in text
    assert all(f'name="code-{place}"' in text and f'name="colour-{place}"' in text for place in range(3))
    given = {"code-0": "q", "code-1": "R", "code-2": "Q", "colour-0": "#112233", "colour-1": "#445566"}
    made = client.post(own, data={**asked, **given, "do": "make"})
    assert made.status_code == 303
    pattern = patterns.load(app.state.services.database, 1).pattern
    assert [(entry.code, entry.colour) for entry in pattern.palette] == [("Q", "#112233"), ("R", "#445566")]
    second = sorted(range(3), key=lambda symbol: -rope.chart.count(symbol))[1]
    assert pattern.chart == bytes(int(symbol == second) for symbol in rope.chart)
    refused = client.post(own, data={**asked, "code-0": "4!", "do": "make"})
    assert refused.status_code == 422


def test_points_that_were_pulled_are_let_go_of(client, token):
    bent = {"pull5x": "40", "pull5y": "55"}
    assert 'value="40"' in client.get(address("old_chart", token=token, **MARKED, **bent)).text
    assert 'value="40"' not in client.get(address("old_chart", token=token, do="flat", **MARKED, **bent)).text


def test_what_is_wrong_is_said_and_nothing_is_made(client, app, token):
    wrong = {"around": "x", "rows": "0", "many": "99", "rowing": "round", "x1": "far"}
    sent = client.post(address("old_chart", token=token), data={**MARKED, **wrong, "do": "make"})
    assert sent.status_code == 422
    for sentence in (
        "“x” is not",
        "0 rows cannot be; expected 1 to 20,000.",
        "99 colours are too many; at most 24 are told apart.",
        "Rows hold: “round” is not known here",
        "“far” is not a number",
    ):
        assert sentence in sent.text
    crossed = {**MARKED, "x1": MARKED["x2"], "y1": MARKED["y2"]}
    assert "The four corners do not go round a chart" in client.get(address("old_chart", token=token, **crossed)).text
    assert finding.counts(app.state.services.database) == (0, 0)


def test_more_rows_than_the_picture_can_show_are_refused(client, token):
    text = client.get(address("old_chart", token=token, around=10, rows=900, **MARKED)).text
    assert "A bead has about 0.6 pixels there; at least 5 are wanted. Are there so many rows?" in text


def test_the_page_of_a_pdf_is_taken(client):
    sent = hand_in(client, "chart.pdf", a_pdf(), page="2")
    seen = client.get(f"{sent.headers['location']}/picture.webp")
    assert Image.open(BytesIO(seen.content)).height == 1600


@pytest.mark.parametrize(
    ("data", "page", "sentence"),
    [
        (a_pdf(), "3", "“chart.pdf” has 2 pages, and no page 3."),
        (a_pdf(), "two", "“two” is not a whole number; say which page of a PDF, such as 1."),
        (a_pdf()[:200], "1", "“chart.pdf” cannot be read as a PDF; one without a password is wanted."),
        (b"no chart", "1", "“chart.pdf” cannot be read as a picture; a JPEG, PNG or WebP file is wanted."),
    ],
)
def test_what_cannot_be_read_is_refused_in_a_sentence(client, data, page, sentence):
    refused = hand_in(client, "chart.pdf", data, page=page)
    assert refused.status_code == 422
    assert sentence in refused.text


def test_without_a_picture_one_is_asked_for(client):
    refused = client.post(address("old_chart_new"), data={"page": "1"})
    assert "Choose a picture first: a JPEG, PNG, WebP or PDF file." in refused.text


def test_an_old_chart_is_given_back_as_a_pattern_file(client):
    asked = {"around": "10", "rows": "24", "many": "3", "title": "Drawer", **MARKED}
    document = client.post("/api/starts/old-chart", params=asked, content=taken().jpeg).json()
    assert (document["title"], document["around"], len(document["palette"])) == ("Drawer", 10, 3)
    refused = client.post("/api/starts/old-chart", content=taken().jpeg)
    assert (refused.status_code, refused.json()["error"]["field"]) == (422, "around")
    assert client.post("/api/starts/old-chart?pdf_page=9", content=a_pdf()).json()["error"]["field"] == "page"
