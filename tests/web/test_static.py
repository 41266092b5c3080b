"""Files that come with the app: kept by browsers for good under their stamp, asked for again without it."""

from __future__ import annotations

import gzip

import pytest

from webapp.pages.static import STAMP, static
from webapp.paths import STATIC
from webapp.server.static import packed, takes_gzip


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


PACKS, PLAIN = {"accept-encoding": "br, gzip"}, {"accept-encoding": "identity"}


def test_the_stylesheet_that_pages_link_holds_every_other_and_asks_for_none(client):
    sheet, plain = (client.get(static("css/layers.css"), headers=headers) for headers in (PACKS, PLAIN))
    assert sheet.headers["content-type"].startswith("text/css")
    assert ("content-encoding" in sheet.headers, "content-encoding" in plain.headers) == (True, False)
    assert sheet.text == plain.text
    assert int(sheet.headers["content-length"]) < int(plain.headers["content-length"]) == len(plain.content)
    assert client.head(static("css/layers.css"), headers=PLAIN).headers["content-length"] == str(len(plain.content))
    assert "@import" not in sheet.text
    for other in set((STATIC / "css").glob("*.css")) - {STATIC / "css" / "layers.css"}:
        assert other.read_text("utf-8") in sheet.text, other.name


@pytest.mark.parametrize("file", ["js/chart/page.js", "css/base.css"])
def test_text_is_packed_for_who_takes_that_and_comes_out_the_same(client, file):
    packed, plain = (client.get(static(file), headers=headers) for headers in (PACKS, PLAIN))
    assert packed.content == plain.content
    assert (packed.headers["content-encoding"], "content-encoding" in plain.headers) == ("gzip", False)
    assert int(packed.headers["content-length"]) < int(plain.headers["content-length"]) == len(plain.content)
    assert packed.headers["etag"] != plain.headers["etag"]
    for header in ("vary", "content-type", "last-modified", "cache-control"):
        assert packed.headers[header] == plain.headers[header]
    assert plain.headers["vary"] == "Accept-Encoding"


@pytest.mark.parametrize("headers", [PACKS, PLAIN], ids=["packed", "plain"])
def test_what_a_browser_has_is_not_sent_again_and_a_head_is_sent_alone(client, headers):
    whole = client.get("/static/css/base.css", headers=headers)
    again = client.get("/static/css/base.css", headers={**headers, "if-none-match": whole.headers["etag"]})
    assert (again.status_code, again.content, again.headers["etag"]) == (304, b"", whole.headers["etag"])
    assert again.headers["vary"] == "Accept-Encoding"
    head = client.head("/static/css/base.css", headers=headers)
    assert head.content == b""
    for header in ("content-length", "etag", "content-type", "vary"):
        assert head.headers[header] == whole.headers[header]


def test_a_browser_that_has_the_packed_file_is_sent_the_plain_one_when_it_takes_no_other(client):
    packed = client.get("/static/css/base.css", headers=PACKS)
    assert client.get("/static/css/base.css", headers={**PLAIN, "if-none-match": packed.headers["etag"]}).is_success


def test_a_range_is_one_of_the_file_as_it_is(client):
    plain = client.get("/static/css/base.css", headers=PLAIN)
    some = client.get("/static/css/base.css", headers={**PACKS, "range": "bytes=10-19"})
    assert (some.status_code, some.content, some.headers["etag"]) == (206, plain.content[10:20], plain.headers["etag"])
    assert "content-encoding" not in some.headers


def test_what_is_packed_already_is_sent_as_it_is(client):
    font = client.get(static("fonts/source-serif-4-latin-600-normal.woff2"), headers=PACKS)
    assert ("content-encoding" in font.headers, "vary" in font.headers) == (False, False)


@pytest.mark.parametrize(
    ("accepted", "taken"),
    [
        ("gzip", True),
        ("deflate, GZIP;q=0.5", True),
        ("*", True),
        ("", False),
        ("br", False),
        ("gzip;q=0", False),
        ("*, gzip; q=0.000", False),
        ("identity;q=1, *;q=0", False),
        ("gzip;q=;;q", True),
    ],
)
def test_a_browser_says_whether_it_takes_packed_files(accepted, taken):
    assert takes_gzip(accepted) is taken


def test_a_file_is_packed_once_for_each_of_its_states(tmp_path):
    file = tmp_path / "a.css"
    file.write_text("p { color: red }")
    first = packed(file, "one")
    assert packed(file, "one") is first
    file.write_text("p { color: blue }")
    assert gzip.decompress(packed(file, "two")) == b"p { color: blue }"
