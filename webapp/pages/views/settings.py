"""The settings: what the maker says once, the swatches, the bead kinds, the backup."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from typing import Annotated

from engine.counting.kinds import Kind
from engine.counting.rope import Swatch
from webapp.pages.forms.settings import SettingsForm, SwatchForm, blank_swatch
from webapp.pages.views.frame import Frame, stitched
from webapp.records import KeptSwatch


@dataclass(frozen=True)
class SwatchLine:
    """A kept swatch."""

    id: Annotated[int, "The number it is kept under."]
    swatch: Annotated[Swatch, "The swatch."]
    stitch: Annotated[str, "Its stitch in the maker's terms."]


@dataclass(frozen=True)
class SettingsPage:
    """The settings at `/settings`."""

    frame: Annotated[Frame, "What stands round the page."]
    form: Annotated[SettingsForm, "The settings as typed, and what is wrong."]
    swatches: Annotated[tuple[SwatchLine, ...], "The kept swatches, the newest first."]
    swatch_form: Annotated[SwatchForm, "A new swatch as typed, and what is wrong."]
    kinds: Annotated[tuple[Kind, ...], "The bead kinds."]
    folder: Annotated[str, "Where the library lies on this computer."]


def settings_page(frame: Frame, form: SettingsForm, swatches: Iterable[KeptSwatch], kinds: Iterable[Kind], folder: str,
                  swatch_form: SwatchForm | None = None) -> SettingsPage:
    """The settings page; `swatch_form` when a swatch was typed and something in it is wrong."""
    lines = sorted(swatches, key=lambda kept: (kept.swatch.date, kept.id), reverse=True)
    return SettingsPage(
        frame, form,
        tuple(SwatchLine(kept.id, kept.swatch, stitched(kept.swatch.stitch, frame.terms)) for kept in lines),
        swatch_form or blank_swatch(), tuple(kinds), folder)
