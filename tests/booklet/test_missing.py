"""A computer that lacks what sets the pages: it is said in one sentence, with what to type."""

from __future__ import annotations

import pytest

from tests.booklets import Choices, scattered
from webapp.printing import missing, orders
from webapp.printing.missing import missing_libraries
from webapp.printing.orders import Order, PrintError, Workshop, printed


def test_nothing_is_missing_where_booklets_print() -> None:
    assert missing_libraries() is None


def test_what_is_missing_is_named_with_what_to_type(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(missing, "is_there", lambda need, machine: False)
    monkeypatch.setattr(missing, "advice", lambda need, machine: "To install it, run: brew install pango")
    told = missing_libraries()
    assert told is not None
    assert (told.names, told.remedies) == (("Pango",), (("This computer", "To install it, run: brew install pango"),))


def test_printing_without_it_is_refused_in_one_sentence(monkeypatch: pytest.MonkeyPatch) -> None:
    def lacking(name: str) -> None:
        raise OSError("cannot load library 'libpango-1.0-0'")

    monkeypatch.setattr(orders, "import_module", lacking)
    with pytest.raises(PrintError, match="cannot print booklets yet: Pango is missing"):
        printed(Order(scattered(6, 30), Choices(), Workshop()))
