"""Reads a finished PDF back: its text, its drawn beads and symbols, its fonts; the only place that knows pdfium."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from ctypes import POINTER, byref, c_float, c_int, c_uint, c_ushort, cast, create_string_buffer
from itertools import groupby, zip_longest
from typing import Any, NamedTuple

import pypdfium2
import pypdfium2.raw as pdfium

from engine.booklet.proof.readback import ReadBead, ReadBooklet, ReadPage, Signature, signature
from webapp.printing.letters import lacking

MM = 25.4 / 72  # in a point
BODY, SYMBOL = "body", "symbol"
ROUNDED = 10  # points of a box with round corners; an arrow has fewer
FOOT_MM = 21.0  # at the foot of a page, where its number stands
OURS = "Ropewright"  # how our fonts are called
LARGEST_SYMBOL_MM = 9.0
TOLD = 5  # points by which an outline that was read before is told


class _Mark(NamedTuple):
    """A filled path: a bead's body, which has a line round it, or a symbol, filled by the even-odd rule."""

    sort: str
    x: float
    y: float
    width: float
    height: float
    colour: str
    signature: Signature | None


class _Outline(NamedTuple):
    """An outline as it is written, at no place and in the units of its path."""

    width: float
    height: float
    signature: Signature


_Path = tuple[tuple[float, float], ...]
_Fonts = dict[tuple[str, bool], str]  # name, whether it is in the file; letters that are set in another than ours
_Known = dict[tuple[int, _Path], _Outline]  # by the number of points, and some of them


def read_back(pdf: bytes, lost: str = "") -> ReadBooklet:
    """What the bytes of a PDF say; `lost` letters were printed as question marks. Raises ValueError for no PDF."""
    try:
        document = pypdfium2.PdfDocument(pdf)
    except pypdfium2.PdfiumError as error:
        raise ValueError(f"not a PDF: {error}") from None
    try:
        fonts: _Fonts = {}
        known: _Known = {}
        pages = tuple(_page(document, index, fonts, known) for index in range(len(document)))
        return ReadBooklet(
            pages=pages,
            fonts=frozenset(fonts),
            title=document.get_metadata_value("Title"),
            tagged=bool(pdfium.FPDFCatalog_IsTagged(document.raw)),
            borrowed=tuple((name, lacked) for (name, _), text in sorted(fonts.items()) if (lacked := lacking(text))),
            lost=lost,
        )
    finally:
        document.close()


def _page(document: pypdfium2.PdfDocument, index: int, fonts: _Fonts, known: _Known) -> ReadPage:
    page = document[index]
    try:
        reading = page.get_textpage()
        text = reading.get_text_range().replace("\r\n", "\n")
        height, pictures, marks, boxes, deepest = page.get_height(), 0, [], 0, 0.0
        for place in range(pdfium.FPDFPage_CountObjects(page.raw)):
            thing = pdfium.FPDFPage_GetObject(page.raw, place)
            sort = pdfium.FPDFPageObj_GetType(thing)
            if sort == pdfium.FPDF_PAGEOBJ_TEXT:
                font = _font(thing)
                fonts[font] = fonts.get(font, "") + ("" if OURS in font[0] else _text(thing, reading))
                deepest = max(deepest, _above_foot(thing, height))
            elif sort == pdfium.FPDF_PAGEOBJ_IMAGE:
                pictures += 1
                deepest = max(deepest, _above_foot(thing, height))
            elif sort == pdfium.FPDF_PAGEOBJ_FORM:
                boxes += _boxes(thing)
            elif sort == pdfium.FPDF_PAGEOBJ_PATH and (mark := _mark(thing, height, known)):
                marks.append(mark)
        reading.close()
        beads, paired = _beads(marks)
        deepest = max((deepest, *(bead.y / MM for bead in beads)))
        return ReadPage(
            number=index + 1,
            text=text,
            beads=beads,
            pictures=pictures,
            unpaired=not paired,
            boxes=boxes,
            filled=deepest / height,
        )
    finally:
        page.close()


def _above_foot(thing: Any, page_height: float) -> float:
    """How far down the thing reaches, in points; nothing for one that stands in the foot of the page and not beyond."""
    left, low, right, top = c_float(), c_float(), c_float(), c_float()
    pdfium.FPDFPageObj_GetBounds(thing, byref(left), byref(low), byref(right), byref(top))
    return page_height - low.value if top.value > FOOT_MM / MM or low.value < 0 else 0.0


def _boxes(form: Any) -> int:
    """How many boxes to tick are drawn behind the columns of a list: squares that are lined and not filled."""
    many = pdfium.FPDFFormObj_CountObjects(form)
    return sum(_is_box(pdfium.FPDFFormObj_GetObject(form, place)) for place in range(many))


def _is_box(thing: Any) -> bool:
    if pdfium.FPDFPageObj_GetType(thing) != pdfium.FPDF_PAGEOBJ_PATH or pdfium.FPDFPath_CountSegments(thing) < ROUNDED:
        return False
    fill, stroke = c_int(), c_int()
    pdfium.FPDFPath_GetDrawMode(thing, byref(fill), byref(stroke))
    return (fill.value, stroke.value) == (pdfium.FPDF_FILLMODE_NONE, 1)


def _font(text: Any) -> tuple[str, bool]:
    font = pdfium.FPDFTextObj_GetFont(text)
    name = create_string_buffer(200)
    pdfium.FPDFFont_GetBaseFontName(font, name, len(name))
    return name.value.decode("utf-8", "replace"), bool(pdfium.FPDFFont_GetIsEmbedded(font))


def _text(text: Any, reading: Any) -> str:
    """The letters of one piece of text."""
    wide = pdfium.FPDFTextObj_GetText(text, reading.raw, None, 0)
    letters = create_string_buffer(wide)
    pdfium.FPDFTextObj_GetText(text, reading.raw, cast(letters, POINTER(c_ushort)), wide)
    return letters.raw[: max(0, wide - 2)].decode("utf-16-le", "replace")


def _mark(path: Any, page_height: float, known: _Known) -> _Mark | None:
    fill, stroke = c_int(), c_int()
    pdfium.FPDFPath_GetDrawMode(path, byref(fill), byref(stroke))
    sort = (
        BODY
        if (fill.value, stroke.value) == (pdfium.FPDF_FILLMODE_WINDING, 1)
        else (SYMBOL if (fill.value, stroke.value) == (pdfium.FPDF_FILLMODE_ALTERNATE, 0) else "")
    )
    if not sort:
        return None
    outline, scale = _outline(path, known), _scale(path) * MM
    width, height = outline.width * scale, outline.height * scale
    if sort == SYMBOL and max(width, height) > LARGEST_SYMBOL_MM:
        return None
    left, low, right, top = c_float(), c_float(), c_float(), c_float()
    pdfium.FPDFPageObj_GetBounds(path, byref(left), byref(low), byref(right), byref(top))
    x, y = (left.value + right.value) / 2, page_height - (low.value + top.value) / 2
    return _Mark(
        sort=sort,
        x=x * MM,
        y=y * MM,
        width=width,
        height=height,
        colour=_colour(path),
        signature=outline.signature if sort == SYMBOL else None,
    )


def _outline(path: Any, known: _Known) -> _Outline:
    """Read point by point once; of one that has as many points, and the same in TOLD places, the rest is taken as read.

    A booklet draws a few outlines, each thousands of times, and reading a point is slow.
    """
    many = pdfium.FPDFPath_CountSegments(path)
    told = many, _points(path, (many * place // TOLD for place in range(TOLD)))
    if told not in known:
        points = _points(path, range(many))
        xs, ys = [x for x, _ in points], [y for _, y in points]
        known[told] = _Outline(max(xs) - min(xs), max(ys) - min(ys), signature(points))
    return known[told]


def _points(path: Any, places: Iterable[int]) -> _Path:
    """Points as they are written."""
    corners, x, y = [], c_float(), c_float()
    to_x, to_y = byref(x), byref(y)
    for place in places:
        pdfium.FPDFPathSegment_GetPoint(pdfium.FPDFPath_GetPathSegment(path, place), to_x, to_y)
        corners.append((x.value, y.value))
    return tuple(corners)


def _scale(path: Any) -> float:
    """How much larger a path stands on the page than it is written, in points."""
    matrix = pdfium.FS_MATRIX()
    pdfium.FPDFPageObj_GetMatrix(path, matrix)
    return abs(matrix.a)


def _colour(path: Any) -> str:
    red, green, blue, clear = (c_uint() for _ in range(4))
    pdfium.FPDFPageObj_GetFillColor(path, byref(red), byref(green), byref(blue), byref(clear))
    return f"#{red.value:02x}{green.value:02x}{blue.value:02x}"


def _beads(marks: list[_Mark]) -> tuple[tuple[ReadBead, ...], bool]:
    """Bodies with their symbols, and whether every body has one: each bead's bodies stand before its symbols."""
    beads: list[ReadBead] = []
    paired = True
    groups = [(sort, tuple(group)) for sort, group in groupby(marks, key=lambda mark: mark.sort)]
    for (sort, bodies), (after, symbols) in zip_longest(groups, groups[1:], fillvalue=("", ())):
        if sort != BODY:
            continue
        # a frame or a rule of the page may stand between them, never among them
        own = symbols[: len(bodies)] if after == SYMBOL else ()
        paired &= len(own) == len(bodies)
        beads += _joined(bodies, own)
    return tuple(beads), paired


def _joined(bodies: tuple[_Mark, ...], symbols: tuple[_Mark, ...]) -> Iterator[ReadBead]:
    for place, body in enumerate(bodies):
        symbol = symbols[place] if place < len(symbols) else None
        yield ReadBead(
            x=body.x,
            y=body.y,
            width=body.width,
            height=body.height,
            colour=body.colour,
            symbol=symbol.signature if symbol else None,
            symbol_width=symbol.width if symbol else 0.0,
            symbol_height=symbol.height if symbol else 0.0,
        )
