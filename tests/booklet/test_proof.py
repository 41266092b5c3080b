"""The proof reads the PDF's bytes: every fault put into them is found, and a sound booklet has none that blocks."""

from __future__ import annotations

import re
from dataclasses import replace
from io import BytesIO

import pytest
from pypdf import PdfReader, PdfWriter
from pypdf.generic import NameObject

from engine.booklet.chapters.opening import edition
from engine.booklet.compose import compose
from engine.booklet.proof.edition_lines import edition_remarks, other_print
from engine.booklet.proof.pages import page_remarks
from engine.booklet.proof.proof import Proof, proof
from engine.booklet.proof.readback import ReadPage
from engine.counting.questions import Question
from engine.counting.workshop import Workshop
from tests.booklets import IMPRINT, Choices, clasp, doctored, print_of, scattered
from webapp.printing.figures import SheetFigure
from webapp.printing.html import SCHEME
from webapp.printing.proofread import read_back

WALL = scattered(12, 240)
CHOICES = clasp(380.0, imprint=IMPRINT, date="2026-11-23", revision=3)


def proof_of(pdf: bytes, pattern=WALL, choices=CHOICES) -> Proof:
    return proof(pattern, choices, Workshop(), read_back(pdf))


def blocking(pdf: bytes, pattern=WALL, choices=CHOICES) -> list[tuple[str, str]]:
    return [(remark.where, remark.what) for remark in proof_of(pdf, pattern, choices).remarks if remark.blocks]


def test_a_sound_booklet_of_many_columns_has_nothing_that_blocks_and_all_its_beads_are_read() -> None:
    pattern, choices = scattered(20, 1500), Choices(plan="whole")
    found = proof_of(print_of(pattern, choices).pdf, pattern, choices)
    assert [remark for remark in found.remarks if remark.blocks] == []
    assert found.beads >= len(pattern.start + pattern.chart + pattern.end) and found.entries


def first_entry(html: str) -> str:
    block = re.search(r'<p class="runs"[^>]*>([^<]*)</p>', html)
    assert block is not None
    return block[1].split("\n")[0]


def test_a_run_that_was_changed_is_found_with_its_entry_and_the_sums_that_no_longer_hold() -> None:
    def change(html: str) -> str:
        entry = first_entry(html)
        beads, code = entry.split()
        return html.replace(entry, f"{int(beads) + 1} {code}", 1)

    found = blocking(doctored(WALL, CHOICES, change))
    assert found[0][0] == "List 1, entry 1, page 7"
    assert re.fullmatch(r"The page says \d+ [A-D]; the chart gives \d+ [A-D]\.", found[0][1])
    assert any("the entries come to" in what for _, what in found)


def test_a_colour_that_was_changed_in_one_run_is_found() -> None:
    def change(html: str) -> str:
        entry = first_entry(html)
        beads, code = entry.split()
        return html.replace(entry, f"{entry[: entry.index(beads)]}{beads} {'A' if code != 'A' else 'B'}", 1)

    many = replace(CHOICES, plan="chart")
    assert blocking(doctored(WALL, many, change), choices=many)[0][0] == "List 1, entry 1, page 7"


def test_a_run_that_is_missing_is_found() -> None:
    def change(html: str) -> str:
        entry = re.search(r'<p class="runs"[^>]*>([^\n<]*\n?)', html)
        assert entry is not None
        return html[: entry.start(1)] + html[entry.end(1) :]

    assert blocking(doctored(WALL, CHOICES, change))[0][0] == "List 1, entry 1, page 7"


def test_every_total_that_was_changed_is_found_where_it_stands() -> None:
    changes = (
        (r"<b>Beads in all</b> <span>([\d,]+)", "<b>Beads in all</b> <span>9", "Page 1"),
        (r'All beads</th>\s*<td class="n">([\d,]+)', 'All beads</th><td class="n">9', "Page 3"),
        (r"<b>Entries</b> <span>(\d+)", "<b>Entries</b> <span>9", "List 1, its head, page 7"),
        (r"so far (\d+)", "so far 7", "List 1, page 7"),
        (r"Column 1: (\d+)", "Column 1: 9", "List 1, page 7"),
        (r"End of list 1: ([\d,]+) beads", "End of list 1: 9 beads", "List 1, its end"),
    )

    def change(html: str) -> str:
        for before, after, _ in changes:
            html = re.sub(before, after, html, count=1)
        return html

    found = blocking(doctored(WALL, CHOICES, change))
    assert sorted(place for place, _ in found) == sorted(place for _, _, place in changes)


def test_a_count_in_the_bill_that_was_changed_is_found() -> None:
    def change(html: str) -> str:
        line = re.search(r'symbol: dot</small></th>\s*<td class="n">([\d,]+)', html)
        assert line is not None
        return html[: line.start(1)] + "9" + html[line.end(1) :]

    ((where, what),) = blocking(doctored(WALL, CHOICES, change))
    assert where == "What you need, A Night water" and what.startswith("The bill says 9 beads; the lists have ")


def test_a_list_that_is_missing_is_found() -> None:
    def change(html: str) -> str:
        return re.sub(r"End of list 1: [^<]*", "The end.", html)

    many = replace(CHOICES, plan="chart")
    assert blocking(doctored(WALL, many, change), choices=many)[0][0] == "Stringing lists"


def test_a_bead_of_the_chart_that_was_changed_is_found() -> None:
    def change(images):
        (sheet,) = (key for key, one in images.items() if isinstance(one, SheetFigure))
        wrong = bytearray(WALL.chart)
        wrong[30] = (wrong[30] + 1) % 4
        return {
            **images,
            sheet: SheetFigure(
                scattered(12, 240).__class__(WALL.title, 12, WALL.palette, bytes(wrong)), images[sheet].sheet
            ),
        }

    ((where, what),) = blocking(doctored(WALL, CHOICES, images=change))
    assert where == "Chart, sheet 1, page 6"
    assert what.startswith("The 31. bead from the lower left shows ")


def test_start_chart_and_end_on_one_page_are_each_held_to_their_own_beads() -> None:
    pattern = replace(scattered(12, 60), start=scattered(12, 120).chart[60:], end=scattered(12, 180).chart[120:])
    made = print_of(pattern, Choices())
    assert blocking(made.pdf, pattern, Choices()) == []

    def change(images):
        end = images[f"{SCHEME}sheet-3"]
        wrong = bytes([(pattern.end[0] + 1) % 4]) + pattern.end[1:]
        return {**images, f"{SCHEME}sheet-3": SheetFigure(replace(pattern, chart=wrong, start=b"", end=b""), end.sheet)}

    ((where, what),) = blocking(doctored(pattern, Choices(), images=change), pattern, Choices())
    assert where == "End, sheet 3, page 6" and what.startswith("The 1. bead from the lower left shows ")


def test_symbols_too_small_to_read_are_remarked_but_do_not_mislead() -> None:
    def change(html: str) -> str:
        return re.sub(
            r'(<div class="chart" style="width:)[\d.]+mm;height:[\d.]+mm">\s*<img ',
            r'\g<1>40mm;height:60mm"><img style="width:40mm" ',
            html,
        )

    found = proof_of(doctored(WALL, CHOICES, change))
    assert not found.blocks
    assert [remark.what for remark in found.remarks if "Symbols" in remark.what] == [
        "Symbols stand in squares of 1.7 mm; under 2.0 mm they are hard to tell apart."
    ]


def test_a_font_that_is_not_in_the_file_is_found() -> None:
    writer = PdfWriter(clone_from=PdfReader(BytesIO(print_of(WALL, CHOICES).pdf)))
    taken = [thing for thing in writer._objects if isinstance(thing, dict) and "/FontFile2" in thing]
    for descriptor in taken:
        del descriptor[NameObject("/FontFile2")]
    found = blocking(written(writer))
    assert len(found) == len(taken) and {where for where, _ in found} == {"Fonts"}


def test_a_font_that_stands_in_for_ours_is_found() -> None:
    found = blocking(
        doctored(WALL, CHOICES, lambda html: html.replace("</head>", "<style>h3{font-family:serif}</style></head>"))
    )
    assert [where for where, _ in found] == ["Fonts"] and "stands in for a font" in found[0][1]


def test_a_page_with_nothing_on_it_is_found() -> None:
    writer = PdfWriter(clone_from=PdfReader(BytesIO(print_of(WALL, CHOICES).pdf)))
    writer.insert_blank_page(index=4)
    assert blocking(written(writer)) == [("Page 5", "There is nothing on this page.")]


def test_boxes_that_lack_are_found() -> None:
    def change(html: str) -> str:
        return re.sub(r";background-image:url\(booklet:list-1-1\)", "", html)

    found = blocking(doctored(WALL, CHOICES, change))
    assert [where for where, _ in found] == ["Stringing lists"] and "boxes to tick are drawn where" in found[0][1]


def test_a_drawing_of_another_number_around_is_found() -> None:
    booklet = compose(scattered(6, 120), CHOICES)
    read = read_back(print_of(scattered(6, 120), CHOICES).pdf)
    assert [remark for remark in page_remarks(booklet, read, 6) if remark.blocks] == []
    wrong = [remark.what for remark in page_remarks(booklet, read, 7) if remark.blocks]
    assert wrong and set(wrong) == {"Its drawing shows 6 around; the rope has 7."}


def test_a_page_almost_empty_is_remarked() -> None:
    page = ReadPage(2, "Chart", filled=0.2)
    read = replace(read_back(print_of(WALL, CHOICES).pdf), pages=(page, page, page))
    booklet = compose(WALL, CHOICES)
    thin = [remark for remark in page_remarks(booklet, read, 12) if remark.where == "Page 2"]
    assert [remark.blocks for remark in thin] == [False] and "third of this page" in thin[0].what


def test_a_file_without_tags_or_title_is_found() -> None:
    writer = PdfWriter(clone_from=PdfReader(BytesIO(print_of(WALL, CHOICES).pdf)))
    del writer.root_object["/StructTreeRoot"], writer.root_object["/MarkInfo"]
    writer.metadata = None
    assert [where for where, _ in blocking(written(writer))] == ["The file", "The file"]


def test_a_page_on_which_something_reaches_beyond_the_foot_is_found() -> None:
    def lower(html: str) -> str:
        return html.replace('<div class="foot">', '<div class="foot" style="bottom:-12mm">', 1)

    assert ("Page 1", "Something on this page reaches beyond its foot.") in blocking(doctored(WALL, CHOICES, lower))


def test_every_remark_says_where_it_is_and_how_to_mend_it() -> None:
    pattern = scattered(8, 320)
    found = proof_of(print_of(pattern, Choices(Question(203, "ring"))).pdf, pattern, Choices(Question(203, "ring")))
    assert found.remarks and all(remark.where and remark.what and remark.mend for remark in found.remarks)


def test_what_is_no_pdf_cannot_be_read_back() -> None:
    with pytest.raises(ValueError, match="not a PDF"):
        read_back(b"no pages")


def written(writer: PdfWriter) -> bytes:
    out = BytesIO()
    writer.write(out)
    return out.getvalue()


def test_a_cover_or_back_without_its_edition_line_is_found() -> None:
    def change(html: str) -> str:
        return html.replace("right-handed, US terms", "US terms", 1)

    assert blocking(doctored(WALL, CHOICES, change)) == [
        ("Cover", f"It does not say which edition it is: “{edition(CHOICES, WALL)}”")
    ]


def test_an_edition_line_that_two_prints_share_is_found() -> None:
    read, own = read_back(print_of(WALL, CHOICES).pdf), other_print(WALL, CHOICES)
    assert list(edition_remarks(WALL, CHOICES, read, (own, own._replace(name="Large print, A4", line="Other.")))) == []
    (shared,) = edition_remarks(WALL, CHOICES, read, (own._replace(name="Large print, A4"),))
    assert shared.blocks and "“Large print, A4” says the same line" in shared.what
    (size,) = edition_remarks(WALL, CHOICES, read, (own._replace(question=Question(600.0, "clasp")),))
    assert not size.blocks and "for another size" in size.what
