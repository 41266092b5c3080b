"""The pattern file: JSON text to a Pattern and back; the only place that knows its format and versions."""

from __future__ import annotations

import json
import re
from collections.abc import Collection, Mapping, Sequence
from typing import Any, Literal
from unicodedata import normalize

from pydantic import BaseModel, ConfigDict, Field, StrictInt, StrictStr, TypeAdapter, ValidationError
from pydantic.json_schema import GenerateJsonSchema

from engine.drawing.symbols import SYMBOLS
from engine.errors import ChoiceError, EngineError, NotationError, shortened
from engine.pattern.notation import parse, write
from engine.pattern.palette import FINISHES, Entry, Palette
from engine.pattern.part import FILL, MOST_PARTS, Part, check_number, check_part
from engine.pattern.pattern import Pattern
from webapp.exchange.objections import objection, quoted

FORMAT, VERSION = "ropewright-pattern", 1
SUFFIX = ".pattern.json"
LARGEST_BYTES = 20_000_000
SYMBOL_NAMES = frozenset(symbol.name for symbol in SYMBOLS)
_WORD = re.compile("[a-z0-9]+")
SHORT_FIELDS = ("beads", "start", "end")
SEVERAL = {"times": f"expected a whole number, or “{FILL}”"}
KEPT_BESIDE = ("id", "revision", "made_from", "sequence")


class FileError(EngineError):
    """A pattern file that cannot be read: it is not JSON, not UTF-8, or says something else than a pattern."""

    code = "file"


class NotJson(FileError):
    """The text is not JSON or not UTF-8."""

    code = "json"


class EntryFields(BaseModel):
    """One bead of the palette."""

    model_config = ConfigDict(extra="forbid")
    code: StrictStr = Field(description="One or two letters; case does not count.", examples=["A"])
    name: StrictStr = Field(description="What the bead is called.", examples=["Sea glass"])
    colour: StrictStr = Field(description="# and six hexadecimal digits.", examples=["#2f7f76"])
    finish: StrictStr = Field("opaque", description="One of " + ", ".join(FINISHES) + ".")
    kind: StrictStr = Field("11/0 round", description="Name of a bead kind.")
    symbol: StrictStr = Field("", description="Name of a symbol; left out, its place in the palette decides.")
    maker_code: StrictStr = Field("", description="The bead maker's own code.")
    bead: StrictStr = Field("", description="Key of a bead of the cabinet; left out, the entry is linked to none.")


class PartFields(BaseModel):
    """One part of a rope of several."""

    model_config = ConfigDict(extra="forbid")
    name: StrictStr = Field(description="What the part is called, 1 to 40 characters.", examples=["Focal"])
    beads: StrictStr = Field(description="Its chart as notation in working order.", examples=["3A 2B (A B)x4 11B"])
    times: StrictInt | Literal["fill"] = Field(
        1, description="How often it is worked, 1 to 1,000; fill: as often as the length of the rope leaves room."
    )


class PatternFields(BaseModel):
    """A pattern file, version 1."""

    model_config = ConfigDict(
        extra="forbid",
        title="Ropewright pattern file",
        json_schema_extra={"oneOf": [{"required": ["beads"]}, {"required": ["parts"]}]},
    )
    format: Literal["ropewright-pattern"]
    version: Literal[1]
    title: StrictStr = Field(description="1 to 120 characters.", examples=["Harbour lights"])
    around: StrictInt = Field(description="Beads in one round, 3 to 60.", examples=[12])
    hand: StrictStr = Field("right", description="right or left.")
    stitch: StrictStr = Field("", description="slip or single; left out, the number around decides.")
    palette: list[EntryFields] = Field(description="1 to 64 beads with different codes.")
    beads: StrictStr = Field(
        "", description="The chart as notation in working order, if there are no parts.", examples=["3A 2B (A B)x4 11B"]
    )
    start: StrictStr = Field("", description="Notation of the beads worked once before the passes.")
    end: StrictStr = Field("", description="Notation of the beads worked once after the passes.")
    parts: list[PartFields] = Field(
        default_factory=list,
        description="Parts in working order in place of beads, start and end; no two that fill stand side by side.",
        json_schema_extra={"minItems": 1, "maxItems": MOST_PARTS},
    )
    designer: StrictStr = ""
    notes: StrictStr = ""
    tags: list[StrictStr] = Field(default_factory=list)


_ENTRIES = TypeAdapter(list[EntryFields])


def read(data: bytes | str, kinds: Collection[str] | None = None) -> Pattern:
    """The pattern of a file's bytes or text. With `kinds`, bead kinds that are not among them are refused.

    Raises NotJson, FileError, or what the engine objects to, each naming the field.
    """
    return to_pattern(load(data), kinds)


def load(data: bytes | str) -> dict[str, Any]:
    """The JSON object of that text, not yet understood. Raises NotJson or FileError."""
    if len(data) > LARGEST_BYTES:
        raise FileError(f"The file is larger than {LARGEST_BYTES // 1_000_000} MB, which no pattern file is.")
    try:
        text = data if isinstance(data, str) else data.decode("utf-8-sig")
        document = json.loads(text)
    except UnicodeDecodeError as error:
        raise NotJson(f"The file is not UTF-8 text: byte {error.start + 1} cannot be read.") from None
    except json.JSONDecodeError as error:
        raise NotJson(f"The file is not JSON: line {error.lineno}, column {error.colno}: {error.msg}.") from None
    except (RecursionError, ValueError):
        raise NotJson("The file is not JSON that can be read: it is nested too deep or a number is too long.") from None
    if not isinstance(document, dict):
        raise FileError("The file is JSON but not a pattern file; expected an object in braces.")
    return document


def to_pattern(document: Mapping[str, Any], kinds: Collection[str] | None = None) -> Pattern:
    """The pattern of a document. Fields that are kept beside a pattern (id, revision …) are let through."""
    fields = {name: value for name, value in document.items() if name not in KEPT_BESIDE}
    _check_version(fields)
    try:
        read_fields = PatternFields.model_validate(fields)
    except ValidationError as error:
        raise FileError(*objection(error, "a pattern file", SEVERAL)) from None
    _check_form(fields)
    palette = Palette(tuple(_entry(entry, f"palette.{i}", kinds) for i, entry in enumerate(read_fields.palette)))
    return Pattern(
        title=read_fields.title,
        around=read_fields.around,
        palette=palette,
        hand=read_fields.hand,
        stitch=read_fields.stitch,
        designer=read_fields.designer,
        notes=read_fields.notes,
        tags=tuple(dict.fromkeys(read_fields.tags)),
        **_worked(read_fields, palette),
    )


def to_document(pattern: Pattern) -> dict[str, Any]:
    """The pattern as a document: every field that is not at its default, in the order of the format."""
    codes = pattern.palette.codes
    document: dict[str, Any] = {
        "format": FORMAT,
        "version": VERSION,
        "title": pattern.title,
        "around": pattern.around,
        "hand": pattern.hand,
        "stitch": pattern.stitch,
        "palette": palette_document(pattern.palette),
        "beads": write(pattern.chart, codes),
        "start": write(pattern.start, codes),
        "end": write(pattern.end, codes),
        "parts": [_part_document(part, codes) for part in pattern.in_parts],
        "designer": pattern.designer,
        "notes": pattern.notes,
        "tags": list(pattern.tags),
    }
    return {name: value for name, value in document.items() if value not in ("", [])}


def load_entries(text: str) -> object:
    """The JSON of a palette that was kept apart. Raises NotJson."""
    try:
        return json.loads(text)
    except (RecursionError, ValueError):
        raise NotJson("The palette is not JSON that can be read.") from None


def palette_document(palette: Palette) -> list[dict[str, str]]:
    """The entries of a palette as they stand in a document."""
    return [_entry_document(entry) for entry in palette]


def to_palette(entries: object, field: str = "palette", kinds: Collection[str] | None = None) -> Palette:
    """The palette of entries of a document. Raises FileError, or what the engine objects to, naming the field."""
    try:
        read_entries = _ENTRIES.validate_python(entries)
    except ValidationError as error:
        raise FileError(*objection(error, "a pattern file", SEVERAL)) from None
    return Palette(tuple(_entry(entry, f"{field}.{place}", kinds) for place, entry in enumerate(read_entries)))


def write_file(pattern: Pattern) -> str:
    """The text of a pattern file, ready to be saved: indented, one line end at its end."""
    return json.dumps(to_document(pattern), ensure_ascii=False, indent=2) + "\n"


def file_name(title: str) -> str:
    """A name for the file of a pattern: plain letters and digits, joined by hyphens."""
    plain = normalize("NFKD", title).encode("ascii", "ignore").decode().lower()
    return ("-".join(_WORD.findall(plain))[:60] or "pattern") + SUFFIX


def whole_number(document: Mapping[str, Any], name: str) -> int:
    """A field kept beside the pattern that must be a whole number. Raises FileError."""
    value = document.get(name)
    if not isinstance(value, int) or isinstance(value, bool):
        raise FileError(f"“{name}” is {quoted(value)}; expected a whole number.", name)
    return value


def schema() -> dict[str, Any]:
    """The JSON Schema (draft 2020-12) of the pattern file."""
    return {"$schema": GenerateJsonSchema.schema_dialect, **PatternFields.model_json_schema()}


def _check_version(fields: Mapping[str, Any]) -> None:
    if fields.get("format") != FORMAT:
        given = quoted(fields.get("format"))
        raise FileError(f"This is not a pattern file: “format” is {given}, expected “{FORMAT}”.", "format")
    version = fields.get("version")
    if version != VERSION or isinstance(version, bool):
        raise FileError(f"“version” is {quoted(version)}; this program reads version {VERSION}.", "version")


def _check_form(fields: Mapping[str, Any]) -> None:
    """A file says either `beads`, with `start` and `end`, or `parts`."""
    if "parts" not in fields:
        if "beads" not in fields:
            raise FileError("“beads” is missing.", "beads")
        return
    for name in SHORT_FIELDS:
        if name in fields:
            raise FileError(f"“{name}” stands beside “parts”; a pattern in parts has its beads in “parts” alone.", name)


def _worked(fields: PatternFields, palette: Palette) -> dict[str, Any]:
    """The beads of a pattern in the form that the file has."""
    if "parts" not in fields.model_fields_set:
        chart, start, end = (_beads(getattr(fields, name), palette, name) for name in SHORT_FIELDS)
        return {"chart": chart, "start": start, "end": end}
    check_number(len(fields.parts))
    return {"in_parts": tuple(_part(part, place, palette) for place, part in enumerate(fields.parts))}


def _part(fields: PartFields, place: int, palette: Palette) -> Part:
    """Raises what the engine objects to, naming the part and its field."""
    try:
        beads = _beads(fields.beads, palette, f"parts.{place}.beads")
    except NotationError as error:
        raise error.within(f"Part {place + 1} “{shortened(fields.name)}”") from None
    part = Part(fields.name, beads, None if fields.times == FILL else int(fields.times))
    check_part(place, part)
    return part


def _part_document(part: Part, codes: Sequence[str]) -> dict[str, Any]:
    return {"name": part.name, "beads": write(part.beads, codes), "times": FILL if part.times is None else part.times}


def _entry(fields: EntryFields, field: str, kinds: Collection[str] | None) -> Entry:
    if fields.symbol and fields.symbol not in SYMBOL_NAMES:
        raise FileError(
            f"“{shortened(fields.symbol)}” is not the name of a symbol; leave it out to have one chosen.",
            f"{field}.symbol",
        )
    if kinds is not None and fields.kind not in kinds:
        raise ChoiceError(f"Kind of bead {shortened(fields.code)}", fields.kind, kinds, f"{field}.kind")
    return Entry(
        code=fields.code.strip().upper(),
        name=fields.name,
        colour=fields.colour.lower(),
        finish=fields.finish,
        kind=fields.kind,
        symbol=fields.symbol,
        maker_code=fields.maker_code,
        bead=fields.bead,
    )


def _entry_document(entry: Entry) -> dict[str, str]:
    document = {
        "code": entry.code,
        "name": entry.name,
        "colour": entry.colour,
        "finish": entry.finish,
        "kind": entry.kind,
        "symbol": entry.symbol,
        "maker_code": entry.maker_code,
        "bead": entry.bead,
    }
    return {name: value for name, value in document.items() if value}


def _beads(text: str, palette: Palette, field: str) -> bytes:
    """A start, an end or a part without beads is none; what is none of the latter the engine says."""
    if not text.strip(" ,\t\r\n") and field != "beads":
        return b""
    try:
        return parse(text, palette.codes)
    except EngineError as error:
        raise error.at(field) from None


# for the description of the API; the body itself is read as it comes, so that its limits hold before it is understood
_CONTENT = {"application/json": {"schema": PatternFields.model_json_schema()}}
BODY = {"requestBody": {"required": True, "content": _CONTENT}}
