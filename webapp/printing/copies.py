"""A copy for one person: the kept booklet with a line of small print at the foot of every page."""

from __future__ import annotations

from html import escape
from io import BytesIO
from typing import cast

from pypdf import PageObject, PdfReader, PdfWriter
from pypdf.generic import ArrayObject, DecodedStreamObject, DictionaryObject, IndirectObject, NameObject, NumberObject

NAME = NameObject("/RopewrightCopy")
PT = 25.4 / 72  # mm in a point
PAGE = """<!DOCTYPE html><html lang="en"><head><meta charset="utf-8"/><title>Copy</title>
<link rel="stylesheet" href="copy.css"/><style>@page {{ size: {wide:.3f}mm {high:.3f}mm }}</style></head>
<body><p>{line}</p></body></html>"""


def line_page(pdf: bytes, line: str) -> str:
    """The HTML of one page as large as those of the booklet, with nothing on it but that line."""
    box = PdfReader(BytesIO(pdf)).pages[0].mediabox
    return PAGE.format(wide=float(box.width) * PT, high=float(box.height) * PT, line=escape(line))


def stamped(pdf: bytes, line: bytes) -> tuple[bytes, int]:
    """The booklet with the page `line` laid over every page of its own, and how many those are."""
    writer = PdfWriter(clone_from=PdfReader(BytesIO(pdf)))
    over = writer._add_object(_form(writer, PdfReader(BytesIO(line)).pages[0]))
    for page in writer.pages:
        _lay_over(writer, page, over)
    out = BytesIO()
    writer.write(out)
    return out.getvalue(), len(writer.pages)


def _form(writer: PdfWriter, page: PageObject) -> DecodedStreamObject:
    """The page as a form, which all pages share."""
    form = DecodedStreamObject()
    content = page.get_contents()
    form.set_data(content.get_data() if content is not None else b"")
    form.update(
        {
            NameObject("/Type"): NameObject("/XObject"),
            NameObject("/Subtype"): NameObject("/Form"),
            NameObject("/BBox"): ArrayObject(NumberObject(round(float(side))) for side in page.mediabox),
            NameObject("/Resources"): page["/Resources"].clone(writer),
        }
    )
    return form


def _lay_over(writer: PdfWriter, page: PageObject, over: IndirectObject) -> None:
    """Marked as no content, so that a screen reader does not say it on every page."""
    resources = cast(DictionaryObject, page["/Resources"].get_object())
    forms = cast(DictionaryObject, resources.setdefault(NameObject("/XObject"), DictionaryObject()).get_object())
    forms[NAME] = over
    before, after = DecodedStreamObject(), DecodedStreamObject()
    before.set_data(b"q\n")
    after.set_data(b"\nQ\n/Artifact BMC\nq " + NAME.encode() + b" Do Q\nEMC\n")
    contents = page["/Contents"].get_object()
    parts = list(contents) if isinstance(contents, ArrayObject) else [page.raw_get("/Contents")]
    page[NameObject("/Contents")] = ArrayObject([writer._add_object(before), *parts, writer._add_object(after)])
