"""What is wrong with the fields of JSON is told in a sentence of our own, whatever they are the fields of."""

import json

import pytest

from engine.errors import EngineError
from webapp.exchange.bead_json import read_bead_json
from webapp.exchange.colourway_json import read_colourway_json

BEAD = {"name": "Sea glass", "colour": "#2f7f76"}


@pytest.mark.parametrize(
    ("read", "sent", "sentence"),
    [
        (read_colourway_json, {"name": "Dusk"}, "“palette” is missing."),
        (read_colourway_json, {"name": 3, "palette": []}, "“name”: expected text, found “3”."),
        (read_colourway_json, {"name": "Dusk", "palette": [7]}, "“palette.0”: expected an object in braces"),
        (read_colourway_json, {"name": "Dusk", "palette": [], "more": 1}, "“more” is not a field of a colourway."),
        (read_bead_json, {"name": "Sea glass"}, "“colour” is missing."),
        (read_bead_json, {**BEAD, "shelf": 3}, "“shelf” is not a field of a bead."),
        (read_bead_json, {**BEAD, "price": 3.5}, "“price”: expected a whole number, found “3.5”."),
        (read_bead_json, {**BEAD, "pack_grams": "10"}, "“pack_grams”: expected a number, found “10”."),
        (read_bead_json, {**BEAD, "stock_grams": True}, "“stock_grams”: expected a number, found true."),
    ],
)
def test_a_wrong_field_is_named_with_what_was_expected(read, sent, sentence):
    with pytest.raises(EngineError) as refused:
        read(json.dumps(sent).encode(), *([["11/0 round"]] if read is read_bead_json else []))
    assert refused.value.message.startswith(sentence)
