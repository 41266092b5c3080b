"""Pages taken as forms send them: made, edited, copied, binned, imported, settled and backed up."""

import json
import sqlite3
from contextlib import closing
from html import escape

import pytest

from tests.conftest import flat
from tests.examples import FOLDER

SENT = {
    "title": "Typed rope",
    "around": "6",
    "hand": "right",
    "stitch": "",
    "written": "working",
    "beads": "(2A B)x6",
    "start": "",
    "end": "",
    "designer": "",
    "notes": "",
    "tags": "bracelet, typed",
    "bead_code": ["A", "B"],
    "bead_name": ["Plum", "Ivory"],
    "bead_colour": ["#5b2a4c", "#f2e8d5"],
    "bead_finish": ["matte", "pearl"],
    "bead_kind": ["11/0 round"] * 2,
    "bead_symbol": ["", ""],
    "bead_maker_code": ["", ""],
}
FILE = (FOLDER / "small-harbour.pattern.json").read_bytes()


def went_to(response):
    assert response.status_code == 303
    return response.headers["location"]


@pytest.fixture
def made(client):
    assert went_to(client.post("/patterns/new", data=SENT)) == "/patterns/1?said=made"
    return 1


def test_a_typed_pattern_is_made_and_shown(client, made):
    kept = client.get("/api/patterns/1").json()
    assert (kept["title"], kept["beads"], kept["tags"]) == (
        "Typed rope",
        "2A B 2A B 2A B 2A B 2A B 2A B",
        ["bracelet", "typed"],
    )
    assert "Typed rope" in client.get("/patterns/1").text


def test_what_is_typed_wrong_stays_in_the_form_with_the_sentence_beside_it(client):
    shown = client.post("/patterns/new", data={**SENT, "beads": "3A\n2Q"})
    assert shown.status_code == 422
    assert "Line 2, column 2: “Q” is not a code of the palette; expected one of A, B." in shown.text
    assert "3A\n2Q</textarea>" in shown.text
    assert client.get("/api/patterns").json()["total"] == 0


def test_a_row_is_added_to_the_palette_without_script(client):
    shown = client.post("/patterns/new", data={**SENT, "add": "1"})
    assert shown.status_code == 200
    assert shown.text.count('name="bead_code"') >= 3
    assert client.get("/api/patterns").json()["total"] == 0


def test_the_check_answers_with_a_sentence_and_a_chart(client):
    said = client.post("/patterns/check", data={**SENT, "title": ""})
    assert said.status_code == 200
    assert "18 beads, 3 rounds" in said.text
    assert "<svg" in said.text


def test_an_edit_is_a_new_revision_and_none_where_nothing_changed(client, made):
    assert went_to(client.post("/patterns/1/edit", data={**SENT, "made_from": "1"})) == "/patterns/1?said=unchanged"
    changed = {**SENT, "title": "Retitled rope", "made_from": "1"}
    assert went_to(client.post("/patterns/1/edit", data=changed)) == "/patterns/1?said=saved"
    assert client.get("/api/patterns/1").json()["revision"] == 2


def test_a_stale_edit_is_refused_with_a_choice_and_kept_as_a_copy(client, made):
    client.post("/patterns/1/edit", data={**SENT, "title": "Theirs", "made_from": "1"})
    mine = {**SENT, "title": "Mine", "made_from": "1"}
    refused = client.post("/patterns/1/edit", data=mine)
    assert refused.status_code == 409
    assert "Mine" in refused.text
    assert went_to(client.post("/patterns/1/edit", data={**mine, "copy": "1"})) == "/patterns/2?said=kept"
    assert client.get("/api/patterns/1").json()["title"] == "Theirs"
    assert client.get("/api/patterns/2").json()["title"] == "Copy of Mine"


def test_a_copy_a_binned_pattern_and_one_taken_back(client, made):
    assert went_to(client.post("/patterns/1/copy")) == "/patterns/2?said=copied"
    assert went_to(client.post("/patterns/1/bin")) == "/?said=binned&undo=take-back&chosen=1"
    assert "Typed rope" in client.get("/bin").text
    assert "is in the bin" in flat(client.get("/patterns/1").text)
    assert went_to(client.post("/patterns/1/take-back")) == "/patterns/1?said=back"
    client.post("/patterns/1/bin")
    assert client.get("/bin?asked=1").status_code == 200
    assert went_to(client.post("/bin/empty")) == "/bin?said=emptied"
    assert client.get("/patterns/1").status_code == 404


def test_a_pattern_file_is_downloaded_and_taken_in_again(client, made):
    downloaded = client.get("/patterns/1/file")
    assert downloaded.headers["content-disposition"] == 'attachment; filename="typed-rope.pattern.json"'
    taken = client.post("/patterns/import", files=[("file", ("typed-rope.pattern.json", downloaded.content))])
    assert taken.status_code == 200
    assert client.get("/api/patterns/2").json() == {
        **json.loads(downloaded.content),
        "id": 2,
        "revision": 1,
        "sequence": 0,
    }


def test_good_files_are_taken_in_and_bad_ones_named(client):
    shown = client.post(
        "/patterns/import", files=[("file", ("good.pattern.json", FILE)), ("file", ("bad.pattern.json", b"{"))]
    )
    assert shown.status_code == 422
    assert "bad.pattern.json" in shown.text
    assert "The file is not JSON: line 1, column 2" in shown.text
    assert client.get("/api/patterns").json()["total"] == 1


def test_an_import_without_a_file_is_answered_in_words(client):
    assert client.post("/patterns/import", files=[("file", ("", b""))]).status_code in (200, 422)


def test_settings_are_kept_and_wrong_ones_shown_with_their_sentence(client):
    sent = {
        "maker": "Lantern Street Beads",
        "contact": "",
        "licence": "",
        "units": "both",
        "terms": "uk",
        "paper": "Letter",
        "clasp": "2 cm",
        "glued": "0",
        "spare": "12",
        "look": "dark",
    }
    assert went_to(client.post("/settings", data=sent)) == "/settings?said=settings"
    shown = client.get("/settings")
    assert "Lantern Street Beads" in shown.text
    assert 'data-theme="dark"' in shown.text
    wrong = client.post("/settings", data={**sent, "maker": "Other", "clasp": "two"})
    assert wrong.status_code == 422
    assert "Lantern Street Beads" in client.get("/settings").text


def test_a_swatch_changes_every_sum_and_can_be_removed(client, made):
    before = client.get("/api/patterns/1/materials").json()
    sent = {
        "kind": "11/0 round",
        "around": "6",
        "stitch": "slip",
        "number": "200",
        "counted": "beads",
        "length": "5 cm",
        "date": "2026-10-01",
        "note": "",
    }
    assert went_to(client.post("/settings/swatches", data=sent)) == "/settings?said=swatch"
    after = client.get("/api/patterns/1/materials").json()
    assert after["source"] == "your swatch of 2026-10-01: 11/0 round, 6 around, slip stitch, 200 beads in 5.0 cm"
    assert after["rope_mm"] == pytest.approx(18 * 50 / 200)
    assert went_to(client.post("/settings/swatches/1/remove")).startswith(
        "/settings?said=swatch-gone&back=swatch&kind=11%2F0+round&"
    )
    assert client.get("/api/patterns/1/materials").json() == before
    assert client.post("/settings/swatches", data={**sent, "number": "few"}).status_code == 422


@pytest.mark.parametrize(
    "back, goes_to",
    [
        ("/patterns/1/materials?length=45+cm&said=sizes", "/patterns/1/materials?length=45+cm&said=swatch"),
        ("/answers", "/answers?said=swatch"),
        ("//elsewhere.example/", "/settings?said=swatch"),
        ("/\\elsewhere.example", "/settings?said=swatch"),
        ("https://elsewhere.example", "/settings?said=swatch"),
        ("/a b", "/settings?said=swatch"),
        ("", "/settings?said=swatch"),
    ],
)
def test_a_swatch_measured_where_it_was_missed_leads_back_there_and_nowhere_else(client, made, back, goes_to):
    sent = {"kind": "11/0 round", "around": 6, "stitch": "slip", "counted": "rows", "number": 20, "length": "3.5 cm"}
    assert went_to(client.post("/settings/swatches", data={**sent, "back": back})) == goes_to


def test_every_page_whose_lengths_are_estimates_asks_for_a_sample_until_there_is_one(client, made):
    pages = (
        "/patterns/1",
        "/patterns/1/materials?length=45+cm",
        "/patterns/1/booklet",
        "/answers?pattern=1&length=45+cm",
    )
    asks = 'name="back" value="{}"'
    assert all(asks.format(escape(page)) in client.get(page).text for page in pages)
    sent = {"kind": "11/0 round", "around": 6, "stitch": "slip", "counted": "rows", "number": 20, "length": "3.5 cm"}
    client.post("/settings/swatches", data=sent)
    assert [page for page in pages if 'name="back"' in client.get(page).text] == []


def test_a_swatch_that_was_unravelled_says_how_much_thread_is_taken(client, made):
    sent = {
        "kind": "11/0 round",
        "around": "6",
        "stitch": "slip",
        "number": "200",
        "counted": "beads",
        "length": "5 cm",
        "date": "2026-10-01",
        "note": "",
        "unravelled": "22 cm",
    }
    assert went_to(client.post("/settings/swatches", data=sent)) == "/settings?said=swatch"
    bill = client.get("/api/patterns/1/materials").json()
    assert bill["thread_mm"] == pytest.approx(bill["beads"] * 11 + 300)
    said = "measured on your swatch of 2026-10-01: 20 beads took 22.0 cm, 11.0 mm a bead"
    assert said in client.get("/patterns/1/materials").text
    assert said in client.get("/answers?pattern=1").text
    assert "(as my own swatch took)" in client.get("/api/answers?pattern=1").json()["reply"]
    assert "11.0 mm</td>" in client.get("/settings").text


def test_the_backup_that_is_downloaded_is_the_library(client, made, tmp_path):
    copy = tmp_path / "copy.sqlite"
    answer = client.post("/settings/backup")
    assert client.get("/settings/backup").status_code == 405
    assert answer.headers["content-disposition"].startswith('attachment; filename="ropewright-')
    copy.write_bytes(answer.content)
    with closing(sqlite3.connect(copy)) as opened:
        assert opened.execute("SELECT title FROM pattern").fetchall() == [("Typed rope",)]
    assert "No backup has been made yet" not in client.get("/").text


def test_pictures_for_pages_are_kept_by_the_browser_only_under_a_version(client, made):
    versioned, bare = (
        client.get(f"/patterns/1/picture.webp?view=ring&width=90{more}") for more in ("&version=1-0", "")
    )
    assert versioned.headers["content-type"] == bare.headers["content-type"] == "image/webp"
    assert "immutable" in versioned.headers["cache-control"]
    assert bare.headers["cache-control"] == "no-cache"
    assert client.get("/patterns/1/chart.svg").headers["content-type"] == "image/svg+xml"


@pytest.mark.parametrize(
    "address", ["/nothing", "/patterns/99", "/patterns/99/stringing", "/static/nothing.css", "/patterns/x"]
)
def test_what_is_not_there_is_a_page_of_our_own(client, address):
    answer = client.get(address)
    assert answer.status_code == 404
    assert "Ropewright" in answer.text
    assert "Traceback" not in answer.text


def test_something_that_fails_is_a_page_of_our_own_and_a_line_in_the_log(client, monkeypatch, caplog, made):
    def broken(*args):
        raise RuntimeError("a secret of the program")

    monkeypatch.setattr("webapp.routes.patterns.pattern_page", broken)
    answer = client.get("/patterns/1")
    assert answer.status_code == 500
    assert "nothing that was saved before is lost" in answer.text
    assert "secret" not in answer.text
    assert "GET /patterns/1 failed" in caplog.text


def test_a_pattern_of_a_bead_kind_that_is_gone_still_has_all_its_pages(client, document):
    kind = {"name": "9/0 drop", "diameter": "2.6", "length": "2", "hole": "0.9", "per_gram": "60", "working": ""}
    client.post("/settings/kinds", data=kind)
    entry, *others = document["palette"]
    client.post(
        "/api/patterns", json={**document, "palette": [{**entry, "kind": "9/0 drop"}, *others]}
    ).raise_for_status()
    client.post("/settings/kinds/remove", data={"name": "9/0 drop"})
    said = "Bead A is of the kind “9/0 drop”, which is not in this library"
    for address in (
        "/patterns/1",
        "/patterns/1/stringing",
        "/patterns/1/materials",
        "/patterns/1/booklet",
        "/answers?pattern=1",
    ):
        page = client.get(address)
        assert (page.status_code, said in page.text) == (200, True)
    assert "as if of 11/0 round, because a bead kind is not in this library" in client.get("/patterns/1/chart").text
    assert said not in client.get("/patterns/1/materials?kind=8/0+round").text
    refused = client.get("/api/patterns/1/materials")
    assert (refused.status_code, refused.json()["error"]["field"]) == (422, "kind")
