"""What is wrong with the fields of a JSON object, in a sentence that names the field and what was expected."""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType

from pydantic import ValidationError

from engine.errors import shortened

NOTHING: Mapping[str, str] = MappingProxyType({})
EXPECTED = {
    "string_type": "expected text",
    "int_type": "expected a whole number",
    "float_type": "expected a number",
    "list_type": "expected a list",
    "model_type": "expected an object in braces",
    "model_attributes_type": "expected an object in braces",
}


def objection(wrong: ValidationError, whole: str, several: Mapping[str, str] = NOTHING) -> tuple[str, str]:
    """The sentence for the first thing that is wrong, and its field; `whole` is what has fields: "a pattern file".

    `several` says what is expected in fields that take one of several things, by their names.
    """
    error = wrong.errors(include_url=False)[0]
    places = error["loc"]
    one_of = next((place for place, part in enumerate(places, 1) if part in several), len(places))
    field = ".".join(str(part) for part in places[:one_of])
    if error["type"] == "missing":
        return f"“{shortened(field)}” is missing.", field
    if error["type"] == "extra_forbidden":
        return f"“{shortened(field)}” is not a field of {whole}.", field
    usual = EXPECTED.get(error["type"], error["msg"].lower())
    expected = several.get(str(places[one_of - 1]), usual) if places else usual
    return f"“{shortened(field)}”: {expected}, found {quoted(error['input'])}.", field


def quoted(value: object) -> str:
    """What was found, as a word or quoted."""
    words = {dict: "an object", list: "a list", bool: str(value).lower(), type(None): "nothing"}
    return words.get(type(value)) or f"“{shortened(value)}”"
