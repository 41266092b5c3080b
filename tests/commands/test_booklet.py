"""The booklet as a file: undated from a pattern file, the same bytes every time."""

from contextlib import closing
from io import BytesIO

import pytest
from pypdf import PdfReader

from engine.units import length
from webapp.records import MakerSettings
from webapp.storage import workshop
from webapp.storage.library import open_library


def pages(path) -> PdfReader:
    return PdfReader(BytesIO(path.read_bytes()))


def words(path) -> str:
    return "\n".join(page.extract_text() for page in pages(path).pages)


@pytest.mark.parametrize(("paper", "size"), [("A4", (595, 842)), ("Letter", (612, 792))])
def test_the_booklet_is_printed_on_the_paper_asked_for(run, harbour_file, tmp_path, paper, size):
    target = tmp_path / "booklet.pdf"
    printed = run("booklet", harbour_file, "-o", target, "--paper", paper, "--length", "45 cm", "--closure", "clasp")
    assert (printed.status, printed.out) == (0, "")
    assert "Traceback" not in printed.error
    assert target.read_bytes().startswith(b"%PDF-")
    assert {tuple(round(float(side)) for side in page.mediabox[2:]) for page in pages(target).pages} == {size}
    assert "3,119" in words(target)


def test_the_same_pattern_gives_the_same_booklet(run, harbour_file, tmp_path):
    for name in ("one", "two"):
        run("booklet", harbour_file, "-o", tmp_path / f"{name}.pdf")
    assert (tmp_path / "one.pdf").read_bytes() == (tmp_path / "two.pdf").read_bytes()


def test_crochet_terms_are_those_asked_for(run, harbour_file, tmp_path):
    for terms in ("us", "uk"):
        run("booklet", harbour_file, "-o", tmp_path / f"{terms}.pdf", "--terms", terms)
    assert "single crochet" in words(tmp_path / "us.pdf")
    assert "single crochet" not in words(tmp_path / "uk.pdf")
    assert "double crochet" in words(tmp_path / "uk.pdf")


@pytest.mark.parametrize("units", ["cm", "in", "both"])
def test_lengths_are_said_in_the_units_of_the_maker(run, harbour_file, data, tmp_path, units):
    with closing(open_library(data)) as database:
        workshop.save_settings(database, MakerSettings(units=units))
    run("booklet", harbour_file, "-o", tmp_path / "own.pdf", "--length", "45 cm", "--data", data)
    assert length(450, units) in words(tmp_path / "own.pdf").replace("\xa0", " ")
