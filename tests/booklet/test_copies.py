"""A copy has its owner's name on every page, and is otherwise the kept booklet."""

from __future__ import annotations

import page as validation
import pytest

from tests.booklets import clasp, print_of, scattered, texts_of
from webapp.printing.orders import CopyOrder

SMALL = scattered(6, 60)
LINE = "Personal copy for Marta <Lind> & Søn, 25 November 2026. Edition 1."


@pytest.mark.parametrize("choices", [clasp(200.0, paper="A5"), clasp(200.0, format="large-print", paper="Letter")])
def test_every_page_carries_the_name_and_keeps_its_words(choices) -> None:
    kept = print_of(SMALL, choices)
    made = CopyOrder(kept.pdf, LINE).carry_out()
    before, after = texts_of(kept.pdf), texts_of(made.pdf)
    assert made.pages == len(before) == len(after)
    for old, new in zip(before, after, strict=True):
        assert LINE in " ".join(new.split())
        assert old.split() == new.replace(LINE, "").split()


def test_a_copy_is_as_accessible_as_the_booklet_and_the_same_bytes_every_time() -> None:
    order = CopyOrder(print_of(SMALL, clasp(200.0)).pdf, LINE)
    made = order.carry_out().pdf
    report = validation.validate_pdf_bytes(made, profile="ua1")
    assert report.is_compliant, sorted({f"{failure.rule_id}: {failure.message}" for failure in report.failures})
    assert order.carry_out().pdf == made
