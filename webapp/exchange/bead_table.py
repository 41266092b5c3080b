"""The cabinet as a table for spreadsheets, out and in: bad rows are named with their column, good ones are read."""

from __future__ import annotations

import csv
from collections.abc import Callable, Collection, Iterable, Iterator, Mapping, Sequence
from typing import Any

from engine.cabinet.arrivals import Row
from engine.cabinet.bead import Bead
from engine.errors import ChoiceError, EngineError, shortened
from engine.numbers import typed_milligrams
from engine.units import plain
from webapp.exchange.table import RUN, write_table
from webapp.money import read_amount, read_currency, to_type
from webapp.records import BeadTable, WrongRow

COLUMNS = (
    "kind",
    "name",
    "colour",
    "finish",
    "maker_code",
    "supplier",
    "pack_grams",
    "price",
    "currency",
    "stock_grams",
    "note",
    "key",
)
NEEDED = ("name", "colour")
LARGEST_BYTES, MOST_ROWS = 5_000_000, 20_000
SEPARATORS = ",;\t"
OF_FIELD = {"pack_mg": "pack_grams", "stock_mg": "stock_grams"}


class TableError(EngineError):
    """A file that is no table of beads."""

    code = "table"


def write_beads(beads: Iterable[Bead]) -> str:
    """The table of those beads; no cell of it is run as a formula."""
    return write_table(COLUMNS, ([_marked(cell) for cell in _cells(bead)] for bead in beads))


def read_beads(data: bytes | str, kinds: Collection[str], currency: str) -> BeadTable:
    """The beads of a table with the names of its columns in the first row, parted by comma, semicolon or tab.

    `kinds` are the bead kinds known here, `currency` that of prices which say none. Raises TableError for a file that
    is no such table.
    """
    lines = _rows_of(_text_of(data))
    _, heads = next(lines, (1, ()))
    if isinstance(heads, str):
        raise TableError(f"The first row names the columns, and cannot be read. {heads}", "file")
    names = [_named(head) for head in heads]
    _check_heads(names)
    rows: list[Row] = []
    wrong: list[WrongRow] = []
    for number, cells in lines:
        if number > MOST_ROWS + 1:
            raise TableError(f"The table has more than {MOST_ROWS:,} rows, the most that are read.", "file")
        if isinstance(cells, str):
            wrong.append(WrongRow(number, "", cells))
        elif any(map(str.strip, cells)):
            _read_row(number, names, cells, kinds, currency, rows, wrong)
    unknown = tuple(shortened(name) for name in heads if name.strip() and _named(name) not in COLUMNS)
    return BeadTable(tuple(rows), tuple(wrong), unknown)


def _marked(cell: str) -> str:
    """A text that looks as if it were marked already is marked once more, so that it is read as it was."""
    return f"'{cell}" if _is_marked(cell) else cell


def _cells(bead: Bead) -> list[str]:
    return [
        bead.kind,
        bead.name,
        bead.colour,
        bead.finish,
        bead.maker_code,
        bead.supplier,
        plain(bead.pack_mg / 1000, 3).replace(",", "") if bead.pack_mg else "",
        to_type(bead.price, bead.currency) if bead.price else "",
        bead.currency,
        plain(bead.stock_mg / 1000, 3).replace(",", ""),
        bead.note,
        bead.key,
    ]


def _text_of(data: bytes | str) -> str:
    if len(data) > LARGEST_BYTES:
        raise TableError(f"The table is larger than {LARGEST_BYTES // 1_000_000} MB, the most that is read.", "file")
    try:
        text = data if isinstance(data, str) else data.decode("utf-8-sig")
    except UnicodeDecodeError as error:
        raise TableError(
            f"The table is not UTF-8 text: byte {error.start + 1} cannot be read. Save it as “CSV UTF-8”.", "file"
        ) from None
    if "\0" in text:
        raise TableError("The file is not text; save the table as “CSV UTF-8”.", "file")
    return text


def _rows_of(text: str) -> Iterator[tuple[int, Sequence[str] | str]]:
    """Rows by their numbers; a sentence stands for one that cannot be read, such as a last one with open quotes."""
    head = text.split("\n", 1)[0]
    separator = max(SEPARATORS, key=head.count)
    reader = csv.reader(text.splitlines(keepends=True), delimiter=separator, strict=True)
    number = 1
    while True:
        try:
            yield number, next(reader)
        except StopIteration:
            return
        except csv.Error as error:
            yield number, f"The row cannot be read: {error}."
        number += 1


def _named(head: str) -> str:
    return head.strip().casefold().replace(" ", "_")


def _check_heads(names: list[str]) -> None:
    missing = [name for name in NEEDED if name not in names]
    if missing:
        raise TableError(
            f"The first row names no column “{missing[0]}”. The columns are {', '.join(COLUMNS)}; "
            f"{' and '.join(NEEDED)} are needed.",
            "file",
        )
    twice = [name for name in COLUMNS if names.count(name) > 1]
    if twice:
        raise TableError(f"The column “{twice[0]}” stands twice in the table.", "file")


def _read_row(
    number: int,
    names: list[str],
    cells: Sequence[str],
    kinds: Collection[str],
    currency: str,
    rows: list[Row],
    wrong: list[WrongRow],
) -> None:
    if len(cells) != len(names):
        sentence = f"The row has {len(cells)} cells where the first row has {len(names)}."
        wrong.append(WrongRow(number, names[min(len(cells), len(names)) - 1], sentence))
        return
    said = {name: _unmarked(cell) for name, cell in zip(names, cells, strict=True) if name in COLUMNS}
    try:
        values = _values(said, kinds, currency)
        rows.append(Row(number, Bead(**values), frozenset(values) - {"key"}))
    except EngineError as error:
        field = error.field or ""
        wrong.append(WrongRow(number, OF_FIELD.get(field, field), error.message))


def _unmarked(cell: str) -> str:
    """The text of a cell; the apostrophe that keeps it from being run is no part of it."""
    text = cell.strip()
    return text[1:] if _is_marked(text) else text


def _is_marked(text: str) -> bool:
    return text.startswith("'") and text.lstrip("'").startswith(RUN)


def _values(said: Mapping[str, str], kinds: Collection[str], currency: str) -> dict[str, Any]:
    """The fields of a bead that the row says; raises an EngineError that names the column."""
    values: dict[str, Any] = {
        name: said[name] for name in ("name", "maker_code", "supplier", "note", "key") if name in said
    }
    values["colour"] = said["colour"].lower()
    if said.get("finish"):
        values["finish"] = said["finish"].lower()
    if said.get("kind"):
        if said["kind"] not in kinds:
            raise ChoiceError("Bead kind", said["kind"], kinds, "kind")
        values["kind"] = said["kind"]
    for name, what in (("pack", "a pack"), ("stock", "a stock")):
        if f"{name}_grams" in said:
            values[f"{name}_mg"] = _amount(f"{name}_grams", said, lambda text, what=what: typed_milligrams(text, what))  # type: ignore[misc]
    if "price" in said:
        values |= _price(said, currency)
    return values


def _price(said: Mapping[str, str], currency: str) -> dict[str, Any]:
    named = said.get("currency") or (currency if said["price"] else "")
    code = _amount("currency", {"currency": named}, read_currency) if named else ""
    return {
        "currency": code,
        "price": _amount("price", said, lambda text: read_amount(text, str(code), "a price")),
    }


def _amount(name: str, said: Mapping[str, str], read: Callable[[str], int | str]) -> int | str:
    """What the cell says; nought where it is empty. Raises an EngineError that names the column."""
    try:
        return read(said[name]) if said[name] else 0
    except EngineError as error:
        raise error.at(name) from None
