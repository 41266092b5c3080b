"""The pattern file: to a pattern and back, and one sentence for every file that is none."""

import json
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from engine.counting.kinds import KINDS
from engine.errors import EngineError
from tests.examples import FOLDER, harbour
from webapp.exchange import pattern_file

SMALL = json.loads((FOLDER / "small-harbour.pattern.json").read_text(encoding="utf-8"))
json_values = st.recursive(
    st.none() | st.booleans() | st.integers() | st.floats() | st.text(max_size=20),
    lambda inner: st.lists(inner, max_size=4) | st.dictionaries(st.text(max_size=8), inner, max_size=4),
    max_leaves=12,
)


def test_a_file_is_written_as_it_was_read():
    assert pattern_file.write_file(harbour()) == (FOLDER / "small-harbour.pattern.json").read_text(encoding="utf-8")


def test_what_is_left_out_takes_its_default():
    least = {
        "format": "ropewright-pattern",
        "version": 1,
        "title": "Least",
        "around": 3,
        "palette": [{"code": "a", "name": "One", "colour": "#ABCDEF"}],
        "beads": "5a",
    }
    pattern = pattern_file.to_pattern(least)
    entry = pattern.palette[0]
    assert (entry.code, entry.colour, entry.finish, entry.kind, entry.symbol) == (
        "A",
        "#abcdef",
        "opaque",
        "11/0 round",
        "",
    )
    assert (pattern.hand, pattern.stitch, pattern.start, pattern.tags, pattern.beads) == ("right", "", b"", (), 5)


def test_fields_kept_beside_a_pattern_are_let_through():
    beside = {"id": 7, "revision": 3, "made_from": 2, "sequence": 9}
    assert pattern_file.to_pattern({**SMALL, **beside}) == harbour()


@pytest.mark.parametrize(
    ("change", "sentence"),
    [
        ({"around": "12"}, "“around”: expected a whole number, found “12”."),
        ({"around": 2.5}, "“around”: expected a whole number, found “2.5”."),
        ({"around": True}, "“around”: expected a whole number, found true."),
        ({"around": 61}, "61 around does not work; a rope has 3 to 60 beads around."),
        ({"size": 12}, "“size” is not a field of a pattern file."),
        ({"palette": {}}, "“palette”: expected a list, found an object."),
        ({"palette": []}, "A palette has 1 to 64 beads; this one has 0."),
        ({"palette": ["A"]}, "“palette.0”: expected an object in braces, found “A”."),
        ({"palette": [{"code": "A", "name": "One"}]}, "“palette.0.colour” is missing."),
        (
            {"palette": [{"code": "A", "name": "One", "colour": "#000000", "kind": "12/0 square"}]},
            "Kind of bead A: “12/0 square” is not known here; expected one of 15/0 round, 11/0 round, 10/0 round, 8/0 round, "
            "6/0 round, 11/0 cylinder.",
        ),
        (
            {"palette": [{"code": "A", "name": "One", "colour": "#000000", "symbol": "teapot"}]},
            "“teapot” is not the name of a symbol; leave it out to have one chosen.",
        ),
        ({"beads": "3Q"}, "Line 1, column 2: “Q” is not a code of the palette; expected one of A, B, C."),
        ({"beads": ""}, "Line 1, column 1: there are no beads; write counts and codes, such as 3A 2B."),
        ({"beads": None}, "“beads”: expected text, found nothing."),
        ({"version": 2}, "“version” is “2”; this program reads version 1."),
        ({"version": True}, "“version” is true; this program reads version 1."),
        ({"format": "other"}, "This is not a pattern file: “format” is “other”, expected “ropewright-pattern”."),
        ({"title": "x\u0000y"}, "A character in the title cannot be printed; please type it anew."),
        ({"tags": "sea"}, "“tags”: expected a list, found “sea”."),
        ({"hand": "both"}, "Hand: “both” is not known here; expected one of right, left."),
        ({"start": "0A"}, "Line 1, column 1: a count is nought; expected 1 or more."),
    ],
)
def test_a_document_that_is_no_pattern_is_refused_in_one_sentence(change, sentence):
    with pytest.raises(EngineError) as refused:
        pattern_file.to_pattern({**SMALL, **change}, KINDS)
    assert refused.value.message == sentence
    assert refused.value.field.split(".")[0] == next(iter(change))


IN_PARTS = {name: value for name, value in SMALL.items() if name not in ("beads", "start", "end")} | {
    "parts": [
        {"name": "Rope", "beads": "2A B", "times": "fill"},
        {"name": "Focal", "beads": "2C (A B)x2", "times": 3},
        {"name": "Rope", "beads": "2A B", "times": "fill"},
    ]
}


def test_parts_are_read_and_written_again_as_parts():
    pattern = pattern_file.to_pattern(IN_PARTS)
    assert [(part.name, part.beads, part.times) for part in pattern.parts] == [
        ("Rope", b"\0\0\1", None),
        ("Focal", b"\2\2\0\1\0\1", 3),
        ("Rope", b"\0\0\1", None),
    ]
    written = pattern_file.to_document(pattern)
    assert written["parts"][1] == {"name": "Focal", "beads": "2C A B A B", "times": 3}
    assert not {"beads", "start", "end"} & written.keys()
    assert pattern_file.read(pattern_file.write_file(pattern)) == pattern


def test_the_short_form_and_the_same_in_parts_are_each_written_in_their_own_form():
    parts = [{"name": "Chart", "beads": SMALL["beads"], "times": "fill"}, {"name": "End", "beads": "2A"}]
    short, long = ({**SMALL, "end": "2A"}, dict(IN_PARTS.items()) | {"parts": parts})
    one, other = pattern_file.to_pattern(short), pattern_file.to_pattern(long)
    assert one.parts == other.parts
    assert pattern_file.to_document(one)["end"] == "2A"
    assert [part["name"] for part in pattern_file.to_document(other)["parts"]] == ["Chart", "End"]


def changed(place, **fields):
    """The parts of the file with other fields in one of them."""
    return [{**part, **(fields if at == place else {})} for at, part in enumerate(IN_PARTS["parts"])]


@pytest.mark.parametrize(
    ("change", "sentence", "field"),
    [
        ({"parts": []}, "A pattern has 1 to 12 parts; this one has none.", "parts"),
        ({"parts": IN_PARTS["parts"][1:2] * 13}, "A pattern has 1 to 12 parts; this one has 13.", "parts"),
        ({"parts": None}, "“parts”: expected a list, found nothing.", "parts"),
        ({"parts": ["A"]}, "“parts.0”: expected an object in braces, found “A”.", "parts.0"),
        ({"parts": [{"name": "Rope"}]}, "“parts.0.beads” is missing.", "parts.0.beads"),
        ({"parts": changed(0, size=3)}, "“parts.0.size” is not a field of a pattern file.", "parts.0.size"),
        (
            {"parts": IN_PARTS["parts"][1:] + IN_PARTS["parts"][:1]},
            "Part 2 “Rope” and part 3 “Rope” both fill the rope with nothing between them; say of one how often it is "
            "worked, or put such a part between them.",
            "parts.2.times",
        ),
        (
            {"parts": changed(1, times=0)},
            "Part 2 “Focal” is worked 0 times; expected 1 to 1,000, or “fill”.",
            "parts.1.times",
        ),
        (
            {"parts": changed(2, times="often")},
            "“parts.2.times”: expected a whole number, or “fill”, found “often”.",
            "parts.2.times",
        ),
        (
            {"parts": changed(2, times=True)},
            "“parts.2.times”: expected a whole number, or “fill”, found true.",
            "parts.2.times",
        ),
        ({"parts": changed(1, beads=" ")}, "Part 2 “Focal” has no beads; a part has at least one.", "parts.1.beads"),
        (
            {"parts": changed(2, beads="3A Q")},
            "Part 3 “Rope”, line 1, column 4: “Q” is not a code of the palette; expected one of A, B, C.",
            "parts.2.beads",
        ),
        (
            {"beads": "3A"},
            "“beads” stands beside “parts”; a pattern in parts has its beads in “parts” alone.",
            "beads",
        ),
        ({"end": "3A"}, "“end” stands beside “parts”; a pattern in parts has its beads in “parts” alone.", "end"),
    ],
)
def test_parts_that_are_none_are_refused_in_one_sentence(change, sentence, field):
    with pytest.raises(EngineError) as refused:
        pattern_file.to_pattern({**IN_PARTS, **change})
    assert (refused.value.message, refused.value.field) == (sentence, field)


def test_a_file_without_beads_and_without_parts_is_refused():
    with pytest.raises(EngineError, match="“beads” is missing"):
        pattern_file.to_pattern({name: value for name, value in IN_PARTS.items() if name != "parts"})


@pytest.mark.parametrize(
    ("data", "sentence"),
    [
        (b"\xff\xfe", "The file is not UTF-8 text: byte 1 cannot be read."),
        (b"{", "The file is not JSON: line 1, column 2: Expecting property name enclosed in double quotes."),
        (b"", "The file is not JSON: line 1, column 1: Expecting value."),
        (b"[" * 100_000, "The file is not JSON that can be read: it is nested too deep or a number is too long."),
        (b"1" * 5000, "The file is not JSON that can be read: it is nested too deep or a number is too long."),
        (b"[]", "The file is JSON but not a pattern file; expected an object in braces."),
        (b" " * 20_000_001, "The file is larger than 20 MB, which no pattern file is."),
    ],
)
def test_what_is_no_file_of_ours_is_refused_in_one_sentence(data, sentence):
    with pytest.raises(EngineError) as refused:
        pattern_file.read(data)
    assert refused.value.message == sentence


def test_a_byte_order_mark_does_no_harm():
    assert pattern_file.read(b"\xef\xbb\xbf" + pattern_file.write_file(harbour()).encode()) == harbour()


@given(st.binary(max_size=200) | json_values.map(lambda value: json.dumps(value).encode()))
def test_any_bytes_are_refused_in_one_line(data):
    with pytest.raises(EngineError) as refused:
        pattern_file.read(data)
    assert refused.value.message.endswith(".")
    assert "\n" not in refused.value.message


@given(
    st.sampled_from([SMALL, IN_PARTS]),
    st.sampled_from([*SMALL, "start", "end", "stitch", "parts", "other"]),
    json_values,
)
def test_any_value_in_any_field_is_a_pattern_or_one_sentence(document, name, value):
    try:
        pattern = pattern_file.to_pattern({**document, name: value}, KINDS)
    except EngineError as refused:
        assert refused.message.endswith(".")
        assert "\n" not in refused.message
    else:
        assert pattern_file.read(pattern_file.write_file(pattern)) == pattern


def test_the_name_of_a_file_is_made_of_plain_letters():
    names = [pattern_file.file_name(title) for title in ("Harbour Lights", "Příliš žluť", "///", "a" * 99)]
    assert names == [
        "harbour-lights.pattern.json",
        "prilis-zlut.pattern.json",
        "pattern.pattern.json",
        "a" * 60 + ".pattern.json",
    ]


def test_the_schema_is_the_one_that_is_kept_in_the_docs():
    kept = Path(pattern_file.__file__).with_name("pattern-file.schema.json").read_text(encoding="utf-8")
    assert json.loads(kept) == pattern_file.schema()
