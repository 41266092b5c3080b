"""The editor of words, palette and beads: for a new pattern, and for one that is changed as text."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, fields, replace
from string import ascii_uppercase
from typing import Any

from engine.errors import EngineError
from engine.pattern.notation import parse, parse_rows, write
from engine.pattern.palette import MOST_ENTRIES, Entry, Palette
from engine.pattern.pattern import Pattern, read_around
from webapp.pages.forms.parts import PRESSED, TypedPart, pressed_parts, read_parts, sent_parts, typed_parts
from webapp.pages.forms.sent import Objections, Sent
from webapp.records import StoredPattern

WRITINGS = ("working", "strung", "rows")
NEW_COLOURS = ("#2f7f76", "#f3ecdd", "#d9932b", "#a83a2c", "#3d4f7d", "#8a9a5b", "#6b4a6e", "#c9b8a0")
ROWS_AT_FIRST = 3
ROWS = ("palette", "parts")  # of which there are several


@dataclass(frozen=True)
class TypedBead:
    """One row of the palette as typed."""

    code: str = ""
    name: str = ""
    colour: str = "#2f7f76"
    finish: str = "opaque"
    kind: str = "11/0 round"
    symbol: str = ""
    maker_code: str = ""
    bead: str = ""


@dataclass(frozen=True)
class TypedPattern:
    """The whole editor as typed. `written` says how to read beads: working, strung or rows.

    A pattern in parts has rows of `parts`; then `beads`, `start` and `end` do not count.
    """

    title: str = ""
    around: str = ""
    hand: str = "right"
    stitch: str = ""
    written: str = "working"
    beads: str = ""
    start: str = ""
    end: str = ""
    designer: str = ""
    notes: str = ""
    tags: str = ""
    palette: tuple[TypedBead, ...] = ()
    parts: tuple[TypedPart, ...] = ()

    @property
    def written_beads(self) -> str:
        """The beads as typed, part by part where there are parts."""
        rows = (f"{part.name}, {part.times}: {part.beads}" for part in self.parts if part.beads)
        return "\n".join(rows) if self.parts else self.beads


@dataclass(frozen=True)
class EditorForm:
    """What was typed, what is wrong by field, and the pattern when nothing is.

    `made_from` is the revision that was edited, nought for a new pattern. `asked` is what was pressed: "save", "copy"
    (keep as a copy), or "rows" when a row of the palette was added or taken away.
    """

    typed: TypedPattern
    errors: Mapping[str, str]
    pattern: Pattern | None = None
    made_from: int = 0
    asked: str = "save"


def blank_editor(designer: str = "", written: str = "working") -> EditorForm:
    """The editor of a new pattern, with a few beads in the palette to begin with; `written` is one of WRITINGS."""
    palette: tuple[TypedBead, ...] = ()
    while len(palette) < ROWS_AT_FIRST:
        palette = (*palette, _new_bead(palette))
    known = written if written in WRITINGS else "working"
    return EditorForm(TypedPattern(designer=designer, written=known, palette=palette), {})


def blank_row() -> TypedBead:
    """A row of the palette to be filled."""
    return TypedBead()


def editor_of(stored: StoredPattern) -> EditorForm:
    """The editor filled with a pattern as it stands."""
    pattern = stored.pattern
    codes = pattern.palette.codes
    rows = tuple(
        TypedBead(
            code=e.code,
            name=e.name,
            colour=e.colour,
            finish=e.finish,
            kind=e.kind,
            symbol=e.symbol,
            maker_code=e.maker_code,
            bead=e.bead,
        )
        for e in pattern.palette
    )
    typed = TypedPattern(
        title=pattern.title,
        around=str(pattern.around),
        hand=pattern.hand,
        stitch=pattern.stitch,
        beads=write(pattern.chart, codes),
        start=write(pattern.start, codes),
        end=write(pattern.end, codes),
        designer=pattern.designer,
        notes=pattern.notes,
        tags=", ".join(pattern.tags),
        palette=rows,
        parts=typed_parts(pattern),
    )
    return EditorForm(typed, {}, pattern, stored.revision)


def read_check(pairs: Iterable[tuple[str, object]]) -> EditorForm:
    """The editor as it stands while one types, when a title may still be to come."""
    named = [pair for pair in pairs if pair[0] != "title"]
    return read_editor([*named, ("title", "New pattern")])


def read_editor(pairs: Iterable[tuple[str, object]]) -> EditorForm:
    """The editor as it was sent: a row added or removed where that was pressed, else the pattern or what is wrong."""
    sent = Sent(pairs)
    made_from = sent.one("made_from")
    number = int(made_from) if made_from.isascii() and made_from.isdigit() and len(made_from) < 10 else 0
    typed = _typed(sent)
    if sent.has("add") or sent.has("remove"):
        return EditorForm(typed=_with_other_rows(typed, sent), errors={}, pattern=None, made_from=number, asked="rows")
    if any(map(sent.has, PRESSED)):
        parts = pressed_parts(sent, typed.parts, (typed.beads, typed.start, typed.end))
        return EditorForm(typed=replace(typed, parts=parts), errors={}, pattern=None, made_from=number, asked="rows")
    wrong = Objections()
    pattern = _pattern(typed, wrong)
    return EditorForm(
        typed=typed,
        errors=wrong.by_field,
        pattern=pattern,
        made_from=number,
        asked="copy" if sent.has("copy") else "save",
    )


def _typed(sent: Sent) -> TypedPattern:
    words = {field.name: sent.one(field.name) for field in fields(TypedPattern) if field.name not in ROWS}
    written = words["written"] if words["written"] in WRITINGS else "working"
    return replace(
        TypedPattern(),
        **{**words, "written": written, "hand": words["hand"] or "right"},
        palette=_palette_rows(sent),
        parts=sent_parts(sent),
    )


def _palette_rows(sent: Sent) -> tuple[TypedBead, ...]:
    """The rows as sent; a choice that is not said takes its usual value."""
    usual = TypedBead()
    columns = [(sent.all(f"bead_{field.name}"), getattr(usual, field.name)) for field in fields(TypedBead)]
    rows = min(max(len(column) for column, _ in columns), 2 * MOST_ENTRIES)
    filled = [[told or otherwise for told in (*column, *[""] * rows)[:rows]] for column, otherwise in columns]
    return tuple(TypedBead(*row) for row in zip(*filled, strict=True))


def _with_other_rows(typed: TypedPattern, sent: Sent) -> TypedPattern:
    rows = list(typed.palette)
    if sent.has("add"):
        rows.append(_new_bead(rows))
    for place in sent.places("remove", len(rows))[:1]:
        del rows[place]
    return replace(typed, palette=tuple(rows))


def _new_bead(before: Sequence[TypedBead]) -> TypedBead:
    """A row to follow those before: the first letter that is free, and a colour of its own."""
    taken = {row.code.upper() for row in before}
    code = next((letter for letter in ascii_uppercase if letter not in taken), "")
    return TypedBead(code, "", NEW_COLOURS[len(before) % len(NEW_COLOURS)])


def _pattern(typed: TypedPattern, wrong: Objections) -> Pattern | None:
    around = wrong.read("around", lambda: read_around(typed.around), 0)
    rows = [(place, row) for place, row in enumerate(typed.palette) if row.code or row.name]
    if not typed.title:
        wrong.add("title", "A pattern needs a title.")
    codes = [row.code.upper() for _, row in rows]
    if typed.parts:
        worked = {"in_parts": read_parts(typed.parts, lambda text: _beads(typed, text, around, codes), wrong)}
    else:
        worked = _short_form(typed, around, codes, wrong)
    if wrong.by_field.keys() - {"title"}:
        return None
    return _made(typed, around, rows, worked, wrong)


def _short_form(typed: TypedPattern, around: int, codes: list[str], wrong: Objections) -> dict[str, Any]:
    """Chart, start and end; those of the latter that are empty are none."""
    list_of = replace(typed, written="working" if typed.written == "rows" else typed.written)
    readings = {"chart": (typed, typed.beads), "start": (list_of, typed.start), "end": (list_of, typed.end)}
    return {
        name: wrong.read(
            "beads" if name == "chart" else name,
            lambda form=form, text=text: _beads(form, text, around, codes),  # type: ignore[misc]
            b"",
        )
        for name, (form, text) in readings.items()
        if text or name == "chart"
    }


def _beads(typed: TypedPattern, text: str, around: int, codes: list[str]) -> bytes:
    if typed.written == "rows":
        return parse_rows(text, around, codes) if around else b""
    return parse(text, codes, strung=typed.written == "strung")


def _made(
    typed: TypedPattern,
    around: int,
    rows: list[tuple[int, TypedBead]],
    worked: Mapping[str, Any],
    wrong: Objections,
) -> Pattern | None:
    """The pattern; a row without a name counts only where its code is used, and is then called after it."""
    stretches = [part.beads for part in worked["in_parts"]] if typed.parts else worked.values()
    used = set().union(*stretches)
    kept = [number for number, (_, row) in enumerate(rows) if row.name or number in used]
    table = bytes(kept.index(old) if old in kept else 0 for old in range(256))
    try:
        return Pattern(
            title=typed.title,
            around=around,
            palette=Palette(tuple(_entry(rows[number][1]) for number in kept)),
            hand=typed.hand,
            stitch=typed.stitch,
            designer=typed.designer,
            notes=typed.notes,
            tags=_tags(typed.tags),
            **_renumbered(worked, table),
        )
    except EngineError as error:
        wrong.add(_place_of(error.field or "", [rows[number][0] for number in kept]), error.message)
        return None


def _renumbered(worked: Mapping[str, Any], table: bytes) -> dict[str, Any]:
    """The beads as places in the palette that is kept."""
    if "in_parts" in worked:
        return {"in_parts": tuple(replace(part, beads=part.beads.translate(table)) for part in worked["in_parts"])}
    return {name: beads.translate(table) for name, beads in worked.items()}


def _entry(row: TypedBead) -> Entry:
    code = row.code.upper()
    return Entry(
        code=code,
        name=row.name or f"Bead {code}",
        colour=row.colour.lower(),
        finish=row.finish or "opaque",
        kind=row.kind or "11/0 round",
        symbol=row.symbol,
        maker_code=row.maker_code,
        bead=row.bead,
    )


def _tags(text: str) -> tuple[str, ...]:
    return tuple(dict.fromkeys(tag.strip() for tag in text.split(",") if tag.strip()))


def _place_of(field: str, places: list[int]) -> str:
    """The engine counts the entries it was given; the page counts its rows."""
    steps = field.split(".")
    if steps[0] == "palette" and len(steps) > 1:
        steps[1] = str(places[int(steps[1])])
    return ".".join(steps)
