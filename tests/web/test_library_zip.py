"""The library as a zip: readable by anybody, taken in again, and refused in a sentence where it is made to do harm."""

import csv
import io
import json
import zipfile
from dataclasses import replace
from datetime import UTC, datetime

import pytest

from engine.cabinet.bead import Bead
from engine.counting.kinds import KINDS, Kind
from engine.counting.questions import NamedSize, Question
from engine.counting.rope import Swatch
from engine.errors import EngineError
from webapp.exchange import pattern_file, zip_reader, zip_writer
from webapp.exchange.portable import (
    InMemory,
    PortableBead,
    PortableBooklet,
    PortableColourway,
    PortableEdition,
    PortablePattern,
    PortablePhotograph,
    PortableWorkshop,
)
from webapp.exchange.prepared import prepare
from webapp.exchange.zip_reader import LibraryZip

NOW = datetime(2026, 3, 2, 9, tzinfo=UTC)
PEBBLE = Kind("5 mm pebble", 5.0, 4.0, 1.2, 9.0, 4.8)
WORKSHOP = PortableWorkshop(
    {"maker": "Lantern Street Beads"},
    (PEBBLE,),
    (Swatch("11/0 round", 12, "single", 480, 62.0),),
    (
        NamedSize("Own", "Stall", Question(wrist_mm=171.5, ease_mm=12.0, closure="clasp")),
        NamedSize("Own", "Fair", Question(210.0, "ring", over_hand=True)),
    ),
)
WORDS = '{"introduction": "Hello"}'
FILE = "patterns/00001-small-harbour/small-harbour.pattern.json"


@pytest.fixture
def portable(pattern):
    """A pattern with everything that can belong to one."""
    document = pattern_file.write_file(pattern)
    edition = PortableEdition(
        1, NOW, document, "First", WORDS, None, "", (PortableBooklet("large print", "{}", 4, InMemory(b"%PDF-1.7 x")),)
    )
    photograph = PortablePhotograph("c", "s", 3, 2, b"\xff\xd8\xff.")
    return PortablePattern(document, NOW, NOW, "Coast", 3, 50, (("introduction", "Hi"),), (photograph,), (edition,))


@pytest.fixture
def packed(portable, tmp_path):
    """A zip of that pattern and of a plain one."""
    plain = json.loads(portable.document) | {"title": "=Plain <b>"}
    other = PortablePattern(pattern_file.write_file(pattern_file.to_pattern(plain)), NOW, NOW, beads=50)
    path = tmp_path / "library.zip"
    path.write_bytes(b"".join(zip_writer.write((portable, other), WORKSHOP, NOW)))
    return path


def test_beads_and_colourways_travel_in_a_zip_with_the_pictures_of_beads(portable, tmp_path):
    sea = Bead("Sea", "#2f7f76", pack_mg=20_000, price=350, currency="EUR", key="sea")
    beads = (
        PortableBead(sea, False, InHand((b"\xff\xd8\xff.", 3, 2))),
        PortableBead(replace(sea, key="old"), True, None),
    )
    dusk = PortableColourway("Dusk", json.dumps(json.loads(portable.document)["palette"], ensure_ascii=False))
    path = tmp_path / "cabinet.zip"
    sent = (replace(portable, colourways=(dusk,)),)
    path.write_bytes(b"".join(zip_writer.write(sent, replace(WORKSHOP, beads=beads), NOW)))
    with zipfile.ZipFile(path) as opened:
        assert opened.read("beads.csv").decode().splitlines()[1].startswith("11/0 round,Sea,#2f7f76,opaque")
    arrived = read(path)
    prepared = prepare(arrived, arrived.workshop, tmp_path / "prepared")
    assert [one.colourways for _, one in prepared] == [(dusk,)]
    for workshop in (arrived.workshop, prepared.workshop):
        assert [(bead, archived, kept and kept.read()) for bead, archived, kept in workshop.beads] == [
            (sea, False, (b"\xff\xd8\xff.", 3, 2)),
            (replace(sea, key="old"), True, None),
        ]


@pytest.mark.parametrize(
    ("bead", "sentence"),
    [
        ({"colour": "red"}, "The bead “Sea” in the zip: “red” is not a colour"),
        ({"key": ""}, "beads.0.key"),
        ({"stock_mg": "lots"}, "beads.0.stock_mg"),
        ({"file": "beads/1.jpg"}, "The zip names “beads/1.jpg”, which is not in it as a .jpg file"),
    ],
)
def test_a_bead_that_cannot_be_kept_is_refused_by_its_name(packed, bead, sentence):
    sound = {"name": "Sea", "colour": "#2f7f76", "kind": "11/0 round", "finish": "matte", "key": "sea"}
    with pytest.raises(EngineError, match=sentence):
        read(rewritten(packed, lambda told: told.update(beads=[{**sound, **bead}])))
    with pytest.raises(EngineError, match="Two beads in the zip have one key"):
        read(rewritten(packed, lambda told: told.update(beads=[sound, sound])))


class InHand:
    """A photograph that is read already."""

    def __init__(self, picture):
        self.picture = picture

    def read(self):
        return self.picture


def rewritten(packed, change, drop=()):
    """The zip with its manifest changed and files dropped."""
    with zipfile.ZipFile(packed) as old:
        files = {name: old.read(name) for name in old.namelist() if name not in drop}
    told = json.loads(files["library.json"])
    change(told)
    files["library.json"] = json.dumps(told).encode()
    return made(packed.with_name("changed.zip"), files)


def made(path, files):
    with zipfile.ZipFile(path, "w", zipfile.ZIP_DEFLATED) as new:
        for name, data in files.items():
            new.writestr(name, data)
    return path


def read(path, kinds=KINDS):
    """A zip as it arrives; photographs are let through as they are."""
    return LibraryZip(path, kinds, lambda name, jpeg: (jpeg, 3, 2))


def in_memory(portable):
    """A pattern whose booklets are read."""
    editions = tuple(
        replace(
            edition,
            booklets=tuple(of._replace(pdf=InMemory(of.pdf.read())) for of in edition.booklets),
        )
        for edition in portable.editions
    )
    return replace(portable, editions=editions)


def refused(path, kinds=KINDS):
    with pytest.raises(EngineError) as error:
        list(read(path, kinds))
    return error.value.message


def test_what_was_packed_arrives_whole(packed, portable, pattern):
    found = read(packed)
    for _ in range(2):
        assert [of.title for of, _ in found] == ["Small harbour", "=Plain <b>"]
    arrived, brought = next(iter(found))
    assert (arrived, in_memory(brought)) == (pattern, portable)
    assert (len(found), found.workshop) == (2, WORKSHOP)


def test_booklets_of_one_pattern_are_packed_one_at_a_time(portable):
    seen = []

    class Watched(InMemory):
        def read(self):
            seen.append(sum(map(len, sent)))
            return self.data

    booklets = tuple(PortableBooklet(f"{number}", "{}", 4, Watched(b"%PDF-" + bytes(10**6))) for number in range(3))
    edition, sent = replace(portable.editions[0], booklets=booklets), []
    for piece in zip_writer.write([replace(portable, editions=(edition,))], WORKSHOP, NOW):
        sent.append(piece)
    assert [after // 10**6 for after in seen] == [0, 1, 2]


def test_any_tool_can_open_it(packed):
    with zipfile.ZipFile(packed) as opened:
        assert opened.testzip() is None
        names = opened.namelist()
        rows = list(csv.DictReader(io.StringIO(opened.read("index.csv").decode())))
        page = opened.read("index.html").decode()
    assert names == [
        FILE,
        "patterns/00001-small-harbour/photographs/1.jpg",
        "patterns/00001-small-harbour/editions/1/edition-1.pattern.json",
        "patterns/00001-small-harbour/editions/1/1-large-print.pdf",
        "patterns/00002-plain-b/plain-b.pattern.json",
        "library.json",
        "index.csv",
        "index.html",
    ]
    assert rows[0] == {
        "title": "Small harbour",
        "series": "Coast",
        "tags": "bracelet, trial",
        "around": "12",
        "beads": "50",
        "difficulty": "3",
        "made": "2026-03-02",
        "changed": "2026-03-02",
        "editions": "1",
        "file": FILE,
    }
    assert rows[1]["title"] == "'=Plain <b>"
    assert "<td>=Plain &lt;b&gt;</td>" in page and f'href="{FILE}"' in page


def test_a_zip_of_pattern_files_alone_is_read_too(tmp_path, pattern):
    path = made(tmp_path / "plain.zip", {"rope.pattern.json": pattern_file.write_file(pattern), "readme.txt": "hello"})
    ((found, portable),) = read(path)
    assert (found, portable.photographs, portable.series) == (pattern, (), "")


def test_bead_kinds_that_come_along_are_known_to_its_patterns(packed, pattern, portable, tmp_path):
    entries = tuple(replace(entry, kind=PEBBLE.name) for entry in pattern.palette)
    own = replace(pattern, palette=replace(pattern.palette, entries=entries))
    path = tmp_path / "own.zip"
    path.write_bytes(b"".join(zip_writer.write([PortablePattern(pattern_file.write_file(own))], WORKSHOP, NOW)))
    assert [found for found, _ in read(path)] == [own]
    path.write_bytes(
        b"".join(zip_writer.write([PortablePattern(pattern_file.write_file(own))], PortableWorkshop(), NOW))
    )
    assert "is not known here" in refused(path)


@pytest.mark.parametrize("name", ["../out.pattern.json", "a/../../out.txt", "/etc/out", "C:/out", "..\\out", "~/out"])
def test_a_name_that_leads_out_of_the_zip_is_refused(tmp_path, name):
    assert "a name that leads out of it" in refused(made(tmp_path / "x.zip", {name: b"x"}))


def test_a_zip_that_unpacks_to_far_too_much_is_refused_before_it_is_unpacked(tmp_path, monkeypatch):
    path = made(tmp_path / "bomb.zip", {"big.pattern.json": bytes(30_000_000)})
    assert path.stat().st_size < 100_000
    assert refused(path) == "“big.pattern.json” in the zip unpacks to more than 20 MB."
    monkeypatch.setattr(zip_reader, "MOST_BYTES", 10_000_000)
    assert "unpacks to more than" in refused(path)


def test_one_booklet_that_is_named_many_times_counts_as_often(packed, monkeypatch):
    def many(told):
        edition = told["patterns"][0]["editions"][0]
        told["patterns"][0]["editions"] = [{**edition, "number": number} for number in range(1, 26)]

    monkeypatch.setattr(zip_reader, "MOST_BYTES", 20_000)
    assert refused(rewritten(packed, many)) == "What the zip names unpacks to more than 0 GB, which no library needs."


def test_booklets_are_gone_through_and_read_when_they_are_wanted(packed, tmp_path):
    (_, portable), _ = read(packed)
    pdf = portable.editions[0].booklets[0].pdf
    assert pdf.read() == b"%PDF-1.7 x"
    packed.write_bytes(b"")
    with pytest.raises(EngineError, match="The zip cannot be read"):
        pdf.read()


def test_a_zip_of_far_too_many_files_is_refused(tmp_path, monkeypatch):
    path = made(tmp_path / "many.zip", {f"{number}.pattern.json": b"" for number in range(40)})
    monkeypatch.setattr(zip_reader, "MOST_FILES", 30)
    assert refused(path) == "The zip holds 40 files; at most 30 are read."
    monkeypatch.setattr(zip_reader, "MOST_FILES", 50)
    monkeypatch.setattr(zip_reader, "MOST_PATTERNS", 30)
    assert refused(path) == "The zip holds 40 pattern files; at most 30 are imported."


@pytest.mark.filterwarnings("ignore:Duplicate name")
def test_two_files_of_one_name_are_refused(tmp_path):
    with zipfile.ZipFile(tmp_path / "two.zip", "w") as new:
        new.writestr("a.pattern.json", "{}")
        new.writestr("a.pattern.json", "{}")
    assert refused(tmp_path / "two.zip") == "The zip holds “a.pattern.json” twice."


@pytest.mark.parametrize(
    ("change", "sentence"),
    [
        (
            lambda told: told.update(version=2),
            "library.json is not as this program writes it: “version”: input should be 1.",
        ),
        (lambda told: told.update(more=1), "“more”: extra inputs are not permitted."),
        (
            lambda told: told["patterns"][0].update(difficulty=9),
            "“patterns.0.difficulty”: input should be less than or equal to 5.",
        ),
        (
            lambda told: told["patterns"][0].update(file="none.pattern.json"),
            "The zip names “none.pattern.json”, which is not in it",
        ),
        (
            lambda told: told["patterns"][0].update(file="index.html"),
            "The zip names “index.html”, which is not in it as a .pattern.json file.",
        ),
        (lambda told: told["patterns"][0]["photographs"][0].update(file=FILE), "which is not in it as a .jpg file."),
        (lambda told: told["patterns"][0].update(made="yesterday"), "The zip cannot be read: Invalid isoformat string"),
        (lambda told: told["patterns"][0].update(made="2026-01-01"), "is a date without its zone."),
        (
            lambda told: told["patterns"][0]["editions"].append(told["patterns"][0]["editions"][0]),
            "has two editions of one number.",
        ),
        (lambda told: told["kinds"][0].update(hole_mm="wide"), "has no sound measures."),
        (lambda told: told["kinds"][0].update(unknown=1), "library.json cannot be read"),
        (lambda told: told["swatches"][0].update(around=900), "900 around does not work"),
        (lambda told: told["sizes"][0].update(length_mm=3.0), "Give a length or a wrist, not both."),
        (
            lambda told: told["sizes"][1].update(length_mm=-3.0),
            "The finished size “Fair” in the zip has no sound measures.",
        ),
        (lambda told: told["sizes"][1].update(more=1), "library.json cannot be read"),
        (lambda told: told["swatches"][0].update(date=["x"]), "A swatch in the zip has no sound measures"),
        (
            lambda told: told["swatches"][0].update(length_mm=5e-324),
            "Beads and length of this swatch do not go together",
        ),
        (lambda told: told["kinds"][0].update(hole_mm=5e-324), "has no sound measures."),
        (lambda told: told["kinds"][0].update(fewest_per_gram=["x"]), "has no sound measures."),
        (lambda told: told["patterns"][0].update(made="9999-12-31T23:59:59-12:00"), "is no date that a calendar"),
        (lambda told: told["patterns"][0].update(changed="0001-01-01T00:00:00+12:00"), "is no date that a calendar"),
        (lambda told: told["patterns"][0]["editions"][0].update(words='["x"]'), "is kept with a text that is not as"),
        (lambda told: told["patterns"][0]["editions"][0].update(words='{"tips": 3}'), "has words that are no text."),
        (lambda told: told["patterns"][0].update(own_words={"tips": "x" * 30_000}), "This text has 30,000 letters"),
        (lambda told: told["patterns"][0].update(own_words={"roof": "x"}), "There is no place “roof” in a booklet."),
        (lambda told: told["patterns"][0].update(series="\ud800"), "library.json cannot be read"),
    ],
)
def test_a_manifest_that_is_wrong_is_refused_in_a_sentence(packed, change, sentence):
    assert sentence in refused(rewritten(packed, change))


def test_what_is_no_picture_and_no_booklet_is_refused(packed):
    jpeg = "patterns/00001-small-harbour/photographs/1.jpg"
    with zipfile.ZipFile(packed) as old:
        files = {name: old.read(name) for name in old.namelist()}
    assert refused(made(packed, {**files, jpeg: b"<svg onload=x>"})) == f"“{jpeg[:39]}…” in the zip is not a .jpg file."


@pytest.mark.parametrize("data", [b"", b"knots" * 100, b"PK\x05\x06" + bytes(18), b"PK\x03\x04" + bytes(60)])
def test_what_is_no_zip_is_refused_in_a_sentence(tmp_path, data):
    (tmp_path / "x.zip").write_bytes(data)
    assert refused(tmp_path / "x.zip").startswith("The zip ")


def test_a_zip_that_was_cut_or_damaged_is_refused(packed):
    data = packed.read_bytes()
    for damaged in (data[:-40], data[:200] + bytes(50) + data[250:]):
        packed.write_bytes(damaged)
        assert refused(packed).startswith(("The zip cannot be read", f"{FILE}"))
