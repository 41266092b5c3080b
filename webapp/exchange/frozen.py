"""Everything that a published booklet was printed with, as JSON to be kept beside it, and back; own words as JSON."""

from __future__ import annotations

import json
from dataclasses import asdict, replace
from typing import NamedTuple

from pydantic import TypeAdapter, ValidationError

from engine.booklet.choices import KEPT, Choices
from engine.booklet.own import OwnWords
from engine.counting.options import in_hand
from engine.counting.workshop import Workshop
from engine.errors import EngineError
from engine.pattern.pattern import Pattern
from webapp.exchange.pattern_file import FileError, palette_document, to_palette

_CHOICES, _WORKSHOP = TypeAdapter(Choices), TypeAdapter(Workshop)
NOT_KEPT = "Size and threads of this booklet were not kept with its edition, so nothing can be counted for it again."


class PrintedFrom(NamedTuple):
    """What a booklet was printed from: the pattern in its hand and colours, the choices, the maker's own numbers."""

    pattern: Pattern
    choices: Choices
    workshop: Workshop


def frozen(choices: Choices, pattern: Pattern, workshop: Workshop) -> str:
    """The choices, hand and palette of the pattern as printed, and the maker's own numbers that stood behind every sum.

    The palette is said where it is not the pattern's own but that of a colourway.
    """
    palette = {"palette": palette_document(pattern.palette)} if choices.colourway else {}
    said = {"hand": pattern.hand, **palette, "choices": asdict(choices), "workshop": asdict(workshop)}
    return json.dumps(said, ensure_ascii=False)


def thawed(text: str, pattern: Pattern) -> PrintedFrom:
    """What a booklet was printed from, of the text that `frozen` gave and the revision that was published.

    Raises FileError where the text does not say it.
    """
    try:
        kept = json.loads(text)
        palette = to_palette(kept["palette"]) if "palette" in kept else pattern.palette
        choices = _CHOICES.validate_python(kept["choices"])
        worked = in_hand(replace(pattern, palette=palette), kept["hand"], choices.picture == KEPT)
        return PrintedFrom(worked, choices, _WORKSHOP.validate_python(kept["workshop"]))
    except (EngineError, ValidationError, KeyError, TypeError, ValueError):
        raise FileError(NOT_KEPT, "edition") from None


def words_text(words: OwnWords) -> str:
    """Own words by place."""
    return json.dumps(dict(words.texts), ensure_ascii=False)


def words_of(text: str) -> OwnWords:
    """Own words as they were kept."""
    return OwnWords(tuple(json.loads(text or "{}").items()))
