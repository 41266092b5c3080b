"""The library sent out as a zip and taken in again in the browser."""

import io
import json
import time
import zipfile
from dataclasses import replace
from datetime import UTC, datetime
from threading import Event

import pytest
from PIL import Image

from tests.conftest import flat
from webapp.exchange import uploaded_zips, zip_writer
from webapp.exchange.portable import PortablePattern, PortablePhotograph, PortableWorkshop
from webapp.routes import import_export
from webapp.storage import finding, patterns, photographs, revisions
from webapp.storage.database import Database


@pytest.fixture(autouse=True)
def patient(request, monkeypatch):
    """What is looked for soon is over soon, however busy the computer is; where another work stands before it, it never is."""
    if "busy" not in request.fixturenames:
        monkeypatch.setattr(import_export, "SOON_S", 20.0)


def went_to(response):
    assert response.status_code == 303
    return response.headers["location"]


def sent(client, data, name="library.zip"):
    return client.post("/patterns/import", files=[("file", (name, data, "application/zip"))])


@pytest.fixture
def packed(client, document):
    """The zip of a library of two patterns."""
    for title in ("Alpha", "Beta"):
        client.post("/api/patterns", json={**document, "title": title})
    answer = client.get("/library.zip")
    assert (answer.status_code, answer.headers["content-type"]) == (200, "application/zip")
    return answer.content


def titles(client):
    return sorted(one["title"] for one in client.get("/api/patterns").json()["patterns"])


def test_a_zip_shows_what_it_brings_and_takes_in_nothing_yet(app, client, document, packed):
    database = app.state.services.database
    patterns.put_into_bin(database, 1)
    revisions.save(database, 2, patterns.load(database, 1).pattern, 1)
    client.post("/api/patterns", json={**document, "title": "BETA", "around": 14})
    shown = client.get(went_to(sent(client, packed)))
    assert "0 new, 1 same, 1 different. Nothing is imported yet." in flat(shown.text)
    assert finding.find(database).total == 2


def test_what_was_chosen_is_taken_in(app, client, packed):
    database = app.state.services.database
    for number in (1, 2):
        patterns.put_into_bin(database, number)
    address = went_to(sent(client, packed))
    assert (
        went_to(client.post(f"{address}/take", data={"pattern-1": "leave"}))
        == "/?said=taken-in&sort=made&undo=bin&chosen=3"
    )
    assert titles(client) == ["Alpha"]
    gone = client.get(address)
    assert (gone.status_code, "hand it in once more" in gone.text) == (422, True)


def test_what_was_taken_in_is_undone_with_one_press(app, client, document, packed):
    for number in (1, 2):
        patterns.put_into_bin(app.state.services.database, number)
    shown = client.get(went_to(client.post(f"{went_to(sent(client, packed))}/take")))
    assert all(words in shown.text for words in ("Put what is new in the bin", 'value="3-4"', 'value="bin"'))
    assert went_to(client.post("/library/chosen", data={"chosen": "3-4", "do": "bin"})).endswith(
        "&undo=take-back&chosen=3-4"
    )
    assert titles(client) == []


def test_a_revision_of_a_pattern_that_was_here_is_not_put_in_the_bin(app, client, document, packed):
    database = app.state.services.database
    patterns.put_into_bin(database, 1)
    revisions.save(database, 2, replace(patterns.load(database, 2).pattern, around=14), 1)
    address = went_to(sent(client, packed))
    assert (
        went_to(client.post(f"{address}/take", data={"pattern-1": "revise"}))
        == "/?said=taken-in&sort=made&undo=bin&chosen=3"
    )
    address = went_to(sent(client, packed))
    assert went_to(client.post(f"{address}/take", data={"pattern-0": "revise", "pattern-1": "leave"})).startswith(
        "/?said=taken-in"
    )


def test_of_very_many_nothing_is_offered_that_no_address_could_carry(app, client, packed, monkeypatch):
    monkeypatch.setattr(import_export, "MOST_UNDONE", 1)
    for number in (1, 2):
        patterns.put_into_bin(app.state.services.database, number)
    assert went_to(client.post(f"{went_to(sent(client, packed))}/take")) == "/?said=taken-in&sort=made"


def test_what_is_there_already_is_left(client, packed):
    address = went_to(sent(client, packed))
    assert went_to(client.post(f"{address}/take")) == "/?said=none-taken&sort=made"
    assert titles(client) == ["Alpha", "Beta"]


def test_a_zip_on_this_computer_is_named_by_its_path(client, packed, tmp_path):
    (tmp_path / "large.zip").write_bytes(packed)
    assert went_to(client.post("/patterns/import", data={"where": str(tmp_path / "large.zip")})).startswith(
        "/patterns/import/"
    )
    refused = client.post("/patterns/import", data={"where": str(tmp_path / "none.zip")})
    assert (refused.status_code, "There is no file" in refused.text) == (422, True)


def test_a_zip_that_is_none_is_refused_beside_its_name(client):
    refused = sent(client, b"knots")
    assert (refused.status_code, "The zip cannot be read: File is not a zip file." in refused.text) == (422, True)


@pytest.fixture
def busy(app):
    """Another work stands before every other until this is set."""
    release = Event()
    app.state.services.works.begin("another", lambda work: release.wait())
    yield release
    release.set()


def shown_when_over(client, address):
    """The page of the zip once its work is over, without being followed."""
    end = time.monotonic() + 20
    while 'data-state="running"' in client.get(f"{address}/steps").text:
        assert time.monotonic() < end
        time.sleep(0.01)
    return client.get(address)


def test_while_a_zip_is_looked_at_and_taken_in_the_page_says_how_far_that_is(app, client, packed, busy, monkeypatch):
    monkeypatch.setattr(import_export, "SOON_S", 0.0)
    for number in (1, 2):
        patterns.put_into_bin(app.state.services.database, number)
    address = went_to(sent(client, packed))
    shown = client.get(address)
    assert "Reading the file" in shown.text and "The file is being opened." in flat(shown.text)
    busy.set()
    assert "2 new, 0 same, 0 different" in flat(shown_when_over(client, address).text)
    again = Event()
    app.state.services.works.begin("once more", lambda work: again.wait())
    assert went_to(client.post(f"{address}/take")) == address
    assert "Importing it" in client.get(address).text and titles(client) == []
    again.set()
    assert went_to(shown_when_over(client, address)) == "/?said=taken-in&sort=made&undo=bin&chosen=3-4"
    assert titles(client) == ["Alpha", "Beta"]


def test_what_is_stopped_takes_nothing_in(app, client, packed, busy, monkeypatch):
    monkeypatch.setattr(import_export, "SOON_S", 0.0)
    address = went_to(sent(client, packed))
    assert went_to(client.post(f"{address}/take", data={"pattern-0": "take"})) == address
    assert went_to(client.post(f"{address}/stop")) == "/patterns/import?said=stopped"
    assert titles(client) == ["Alpha", "Beta"]
    assert client.get(address).status_code == 422


def test_what_was_taken_in_before_it_could_be_stopped_stays(app, client, packed):
    address = went_to(sent(client, packed))
    app.state.services.works.begin(f"take {address.rpartition('/')[2]}", lambda work: ((7,), (7,))).future.result()
    assert went_to(client.post(f"{address}/stop")) == "/?said=taken-in&sort=made&undo=bin&chosen=7"


def test_a_zip_whose_patterns_cannot_be_read_is_refused_when_it_is_looked_at(client, packed, tmp_path):
    path = tmp_path / "wrong.zip"
    with zipfile.ZipFile(path, "w") as made:
        made.writestr("wrong.pattern.json", "{")
    shown = client.get(went_to(sent(client, path.read_bytes())))
    assert (shown.status_code, "wrong.pattern.json: " in shown.text) == (422, True)


def test_photographs_of_a_zip_are_decoded_and_lose_place_and_time(app, client, document, tmp_path):
    exif, out = Image.Exif(), io.BytesIO()
    exif[0x010F] = "A camera"
    Image.new("RGB", (800, 400), "#dfa63a").save(out, "JPEG", exif=exif)

    def packed_with(jpeg):
        portable = PortablePattern(json.dumps(document), photographs=(PortablePhotograph("c", "s", 1, 1, jpeg),))
        return b"".join(zip_writer.write([portable], PortableWorkshop(), datetime(2026, 3, 2, tzinfo=UTC)))

    went_to(client.post(f"{went_to(sent(client, packed_with(out.getvalue())))}/take"))
    (kept,) = photographs.of(app.state.services.database, 1)
    assert (kept.width, kept.height) == (800, 400) and b"A camera" not in photographs.jpeg(
        app.state.services.database, 1, kept.id
    )
    refused = client.get(went_to(sent(client, packed_with(b"\xff\xd8\xff<script>"))))
    assert (refused.status_code, "cannot be read as a picture" in refused.text) == (422, True)


@pytest.mark.parametrize("token", ["..", "x", "0" * 32, "%2e%2e%2flibrary"])
def test_only_a_zip_that_was_handed_in_is_looked_at(client, token):
    assert client.get(f"/patterns/import/{token}").status_code in (404, 422)


def test_zips_that_were_handed_in_are_kept_for_a_day(tmp_path):
    old = uploaded_zips.path_of(tmp_path, uploaded_zips.keep(tmp_path, io.BytesIO(b"x"), 0))
    assert old.read_bytes() == b"x"
    made = old.stat().st_mtime
    uploaded_zips.keep(tmp_path, io.BytesIO(b"y"), made + uploaded_zips.KEPT_S - 5)
    assert old.exists()
    uploaded_zips.keep(tmp_path, io.BytesIO(b"z"), made + uploaded_zips.KEPT_S + 5)
    assert not old.exists()


def test_the_zip_can_be_opened_by_any_tool(packed, tmp_path):
    (tmp_path / "x.zip").write_bytes(packed)
    with zipfile.ZipFile(tmp_path / "x.zip") as opened:
        assert opened.testzip() is None
        assert opened.namelist()[-3:] == ["library.json", "index.csv", "index.html"]


def test_others_save_while_photographs_of_a_zip_are_decoded(app, client, packed, monkeypatch):
    saved = []

    def decoding(desk, token):
        saved.append(patterns.create(desk.database, patterns.load(desk.database, 1).pattern).id)
        return opened(desk, token)

    opened = import_export._open_zip
    monkeypatch.setattr(import_export, "_open_zip", decoding)
    monkeypatch.setattr(Database, "writing", counted(Database.writing, writings := []))
    address = went_to(sent(client, packed))
    client.get(address)
    before = len(writings)
    went_to(client.post(f"{address}/take", data={"pattern-0": "take"}))
    assert (len(saved), len(writings) - before) == (2, 1)


def counted(work, calls):
    def counting(*given):
        calls.append(given)
        return work(*given)

    return counting


@pytest.mark.parametrize("where", ["x" * 300 + ".zip", "~nosuchuser/library.zip", "/" + "y" * 5000, "a\0b.zip"])
def test_a_path_that_no_file_can_have_is_refused_in_a_sentence(client, where):
    refused = client.post("/patterns/import", data={"where": where})
    assert (refused.status_code, "There is no file" in refused.text) == (422, True)


def test_a_zip_that_is_refused_does_not_stay(app, client):
    sent(client, b"knots")
    assert list((app.state.services.settings.data / "incoming").iterdir()) == []


def test_the_zip_says_neither_where_backups_lie_nor_when_the_last_was_made(client, tmp_path):
    (tmp_path / "disk").mkdir()
    client.post("/backups/folder", data={"folder": str(tmp_path / "disk")})
    client.post("/backups/make")
    with zipfile.ZipFile(io.BytesIO(client.get("/library.zip").content)) as opened:
        told = opened.read("library.json").decode()
    assert "disk" not in told and "backup" not in told and "clock" not in told
