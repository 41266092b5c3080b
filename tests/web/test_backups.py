"""Backups made, looked into, put back and undone in the browser."""

import re
from datetime import UTC, datetime
from pathlib import Path

import pytest

from tests.conftest import flat
from tests.storage.damaged import damage
from tests.web.sample_pages import FRAME
from webapp.pages.views import all as views
from webapp.pages.views.backups import MOST_LINES, size_in_words
from webapp.records import BackupContents, PatternInBackup
from webapp.server.keeping import Keeping, keep_house
from webapp.settings import VERSION
from webapp.storage import backup_folder


def went_to(response):
    assert response.status_code == 303
    return response.headers["location"]


def sent(document, title):
    return {**document, "title": title}


@pytest.fixture
def kept(client, document):
    """A library of one pattern that is backed up; the name of the backup."""
    client.post("/api/patterns", json=document)
    assert went_to(client.post("/backups/make")) == "/backups?said=backed-up"
    return re.search(r"ropewright-[\d-]+\.sqlite", client.get("/backups").text)[0]


def test_a_backup_is_listed_and_can_be_saved_elsewhere(client, kept):
    assert client.get(f"/backups/file?file={kept}").content.startswith(b"SQLite format 3")
    assert client.get("/backups/file?file=../library.sqlite").status_code == 404


def test_what_is_inside_is_shown_before_anything_is_restored(client, document, kept):
    client.post("/api/patterns", json=sent(document, "Made since"))
    shown = client.get(f"/backups/inside?file={kept}").text
    assert "Of the patterns, 1 goes; 1 stays as it is. " in flat(shown)
    assert client.get("/api/patterns").json()["total"] == 2


def test_a_restore_keeps_the_present_library_aside_and_is_undone(client, document, kept):
    client.post("/api/patterns", json=sent(document, "Made since"))
    went = went_to(client.post("/backups/restore", data={"file": kept}))
    aside = re.fullmatch(r"/backups\?said=restored&undo=(before-restore-[\d-]+\.sqlite)", went)[1]
    assert client.get("/api/patterns").json()["total"] == 1
    assert f'value="{aside}"' in client.get(went).text
    assert (
        went_to(client.post("/backups/restore", data={"file": aside, "undoing": "yes"}))
        == "/backups?said=restore-undone"
    )
    assert client.get("/api/patterns").json()["total"] == 2


@pytest.mark.parametrize("file", ["library.sqlite", "../library.sqlite", "", "/etc/passwd"])
def test_only_a_backup_of_the_list_is_restored(client, kept, file):
    assert client.post("/backups/restore", data={"file": file}).status_code == 404
    assert client.get("/api/patterns").json()["total"] == 1


def test_a_folder_is_chosen_and_a_wrong_one_refused_in_a_sentence(client, kept, tmp_path):
    refused = client.post("/backups/folder", data={"folder": str(tmp_path / "none")})
    assert (refused.status_code, "There is no folder" in refused.text) == (422, True)
    (tmp_path / "disk").mkdir()
    assert (
        went_to(client.post("/backups/folder", data={"folder": str(tmp_path / "disk")}))
        == "/backups?said=backup-folder"
    )
    client.post("/backups/make")
    assert len(list((tmp_path / "disk").glob("ropewright-*.sqlite"))) == 1


def test_a_long_backup_is_listed_in_part_and_counted_whole():
    lines = (PatternInBackup("Rope", "stays"),) * (MOST_LINES + 7)
    page = views.inside_page(FRAME, BackupContents(Path("one.sqlite"), 307, 0, None, lines))
    assert (len(page.lines), page.more, page.outcomes) == (MOST_LINES, 7, (("stay as they are", MOST_LINES + 7),))


def test_sizes_are_told_in_words():
    assert [size_in_words(size) for size in (0, 90_000, 999_400, 3_449_999, 81_398_900_000)] == [
        "0 kB",
        "90 kB",
        "999 kB",
        "3.4 MB",
        "81.4 GB",
    ]


def test_a_running_server_backs_up_once_a_day(database):
    with Keeping(database):
        pass
    keep_house(database)
    assert len(backup_folder.all_kept(database)) == 1


def test_what_fails_by_itself_is_logged_and_said_on_every_page(app, client, monkeypatch, caplog):
    def fails(database):
        raise OSError("disk full")

    database = app.state.services.database
    monkeypatch.setattr("webapp.storage.backup_folder.make_daily", fails)
    keep_house(database)
    assert [record.getMessage() for record in caplog.records] == ["fails failed"]
    for address in ("/", "/answers", "/none"):
        assert "The daily backup could not be made. OSError: disk full." in client.get(address).text
    monkeypatch.undo()
    keep_house(database)
    assert "could not be made" not in client.get("/").text


def test_a_damaged_library_is_said_on_every_page_with_the_way_to_the_last_sound_backup(app, client, document, kept):
    for _ in range(40):
        client.post("/api/patterns", json=document)
    database = app.state.services.database
    database.close()
    damage(database.path)
    keep_house(database)
    assert "is damaged" in client.get("/answers").text
    assert f'href="/backups/inside?file={kept}"' in client.get("/backups").text
    assert went_to(client.post("/backups/restore", data={"file": kept})).startswith("/backups?said=restored")
    assert "is damaged" not in client.get("/").text


def test_a_library_that_is_gone_is_said_and_comes_back_from_a_backup(app, client, document, kept):
    path = app.state.services.database.path
    client.get("/")
    path.unlink()
    answer = client.post("/api/patterns", json=document)
    assert (answer.status_code, answer.json()["error"]["code"]) == (500, "gone")
    assert answer.json()["error"]["message"].startswith(f"The library file {path} was removed or exchanged")
    assert "was removed or exchanged" in client.get("/backups").text
    assert went_to(client.post("/backups/restore", data={"file": kept})) == "/backups?said=restored"
    assert client.get("/api/patterns").json()["total"] == 1


def test_the_owner_sees_how_the_library_is_and_has_it_checked(app, client, kept):
    shown = client.get("/settings/library").text
    assert all(words in shown for words in (VERSION, str(app.state.services.settings.data), "Nothing since Ropewright"))
    assert went_to(client.post("/settings/library/check")) == "/settings/library?said=sound"
    database = app.state.services.database
    database.close()
    database.path.write_bytes(b"knots" * 5000)
    assert went_to(client.post("/settings/library/check")) == "/settings/library?said=unsound"
    shown = client.get("/settings/library?said=unsound").text
    assert "is not a library of this program." in shown and "is not sound; see below" in shown


def test_a_jump_of_the_clock_is_asked_about(app, client):
    database = app.state.services.database
    keep_house(database)
    database.now = lambda: datetime(2099, 1, 1, tzinfo=UTC)
    keep_house(database)
    assert "This computer&#39;s date is 1 January 2099" in client.get("/").text
    assert '<button class="button">The date is right</button>' in client.get("/backups").text
    assert went_to(client.post("/backups/clock")) == "/backups?said=clock"
    assert "2099, and when" not in client.get("/").text
