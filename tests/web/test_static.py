"""Files that come with the app: kept by browsers for good under their stamp, asked for again without it."""

from __future__ import annotations

import pytest

from webapp.pages.static import STAMP, static


def test_a_page_names_its_files_by_their_stamp(client):
    assert static("css/layers.css") == f"/static/{STAMP}/css/layers.css"
    assert static("css/layers.css") in client.get("/").text


@pytest.mark.parametrize(
    ("address", "kept"),
    [
        (static("css/base.css"), "public, max-age=31536000, immutable"),
        (static("js/chart/page.js"), "public, max-age=31536000, immutable"),
        ("/static/css/base.css", "no-cache"),
    ],
)
def test_what_has_its_stamp_is_kept_for_good(client, address, kept):
    answer = client.get(address)
    assert (answer.status_code, answer.headers["cache-control"]) == (200, kept)


@pytest.mark.parametrize(
    "address", ["/static/000000000000/css/base.css", static("css/nothing.css"), static("../paths.py")]
)
def test_another_stamp_and_a_file_that_is_not_there_lead_nowhere(client, address):
    answer = client.get(address)
    assert (answer.status_code, answer.headers["cache-control"]) == (404, "no-cache")
