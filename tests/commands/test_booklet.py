"""The booklet as a file, from the command line."""

from contextlib import closing
from io import BytesIO

import pytest
from pypdf import PdfReader

from engine.units import length
from tests.booklets import text_of
from webapp.records import MakerSettings
from webapp.storage import workshop
from webapp.storage.library import open_library


def pages(path) -> PdfReader:
    return PdfReader(BytesIO(path.read_bytes()))


@pytest.mark.parametrize(
    ("paper", "size", "terms", "stitch", "units"),
    [("A4", (595, 842), "us", "single crochet", "cm"), ("Letter", (612, 792), "uk", "double crochet", "both")],
)
def test_the_booklet_is_printed_on_the_paper_in_the_terms_and_units_asked_for(
    run, harbour_file, data, tmp_path, paper, size, terms, stitch, units
):
    with closing(open_library(data)) as database:
        workshop.save_settings(database, MakerSettings(units=units))
    target = tmp_path / "booklet.pdf"
    asked = ("--paper", paper, "--terms", terms, "--length", "45 cm", "--closure", "clasp", "--data", data)
    printed = run("booklet", harbour_file, "-o", target, *asked)
    assert (printed.status, printed.out) == (0, "")
    assert "Traceback" not in printed.error
    assert target.read_bytes().startswith(b"%PDF-")
    assert {tuple(round(float(side)) for side in page.mediabox[2:]) for page in pages(target).pages} == {size}
    text = text_of(target.read_bytes()).replace("\xa0", " ")
    assert "3,119" in text and length(450, units) in text
    assert stitch in text and (terms == "us" or "single crochet" not in text)
