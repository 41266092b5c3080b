"""The settings: what the maker says once, the swatches, the bead kinds, the backup."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from typing import Annotated

from engine.counting.closures import CLOSURES, Closure
from engine.counting.kinds import Kind
from engine.counting.questions import NamedSize
from engine.counting.rope import Swatch
from webapp.money import countries, currencies
from webapp.pages.forms.own import KindForm, OwnSizeForm, TypedKind, TypedOwnSize
from webapp.pages.forms.settings import SettingsForm, SwatchForm, blank_swatch
from webapp.pages.forms.taken_back import TakenBack
from webapp.pages.views.frame import Frame, stitched
from webapp.records import KeptSwatch

PARTS = (
    ("maker-part", "Maker"),
    ("look-part", "Words, paper and look"),
    ("sums", "Ends, spare and strings"),
    ("money", "Money"),
    ("replies", "Replies"),
    ("swatches", "Swatches"),
    ("kinds", "Bead kinds"),
    ("own-sizes", "Finished sizes"),
    ("backup", "Backup"),
)


@dataclass(frozen=True)
class SwatchLine:
    """A kept swatch."""

    id: Annotated[int, "The number it is kept under."]
    swatch: Annotated[Swatch, "The swatch."]
    stitch: Annotated[str, "Its stitch in the maker's terms."]


@dataclass(frozen=True)
class SettingsPage:
    """The settings at `/settings`."""

    frame: Frame
    parts: Annotated[tuple[tuple[str, str], ...], "The parts of the page: place and title."]
    form: Annotated[SettingsForm, "The settings as typed, and what is wrong."]
    swatches: Annotated[tuple[SwatchLine, ...], "The kept swatches, the newest first."]
    swatch_form: Annotated[SwatchForm, "A new swatch as typed, and what is wrong."]
    kinds: Annotated[tuple[Kind, ...], "The bead kinds."]
    own_kinds: Annotated[Mapping[str, int], "Those of the maker's own by name, and how many patterns use each."]
    missed: Annotated[int, "How many patterns use the bead kind that was just removed."]
    kind_form: Annotated[KindForm, "A new bead kind as typed, and what is wrong."]
    own_sizes: Annotated[tuple[NamedSize, ...], "The finished sizes of the maker's own."]
    size_form: Annotated[OwnSizeForm, "A new finished size as typed, and what is wrong."]
    closures: Annotated[tuple[Closure, ...], "The closures that add a length to the rope."]
    folder: Annotated[str, "Where the library lies on this computer."]
    removed: Annotated[TakenBack | None, "What was just removed and can be taken back."]
    countries: Annotated[tuple[tuple[str, str], ...], "The countries by whose rules money is shown: value and words."]
    currencies: Annotated[tuple[tuple[str, str], ...], "The currencies: value and words."]


@dataclass(frozen=True)
class Own:
    """What is the maker's own, and what was typed to add to it; `missed` patterns use the kind that was removed."""

    kinds: Mapping[str, int] = field(default_factory=dict)
    sizes: tuple[NamedSize, ...] = ()
    kind_form: KindForm | None = None
    size_form: OwnSizeForm | None = None
    missed: int = 0


def settings_page(
    frame: Frame,
    form: SettingsForm,
    swatches: Iterable[KeptSwatch],
    kinds: Iterable[Kind],
    folder: str,
    swatch_form: SwatchForm | None = None,
    own: Own | None = None,
    removed: TakenBack | None = None,
) -> SettingsPage:
    """The settings page; `swatch_form` when a swatch was typed and something in it is wrong."""
    own = own or Own()
    lines = sorted(swatches, key=lambda kept: (kept.swatch.date, kept.id), reverse=True)
    return SettingsPage(
        frame=frame,
        parts=PARTS,
        form=form,
        swatches=tuple(SwatchLine(kept.id, kept.swatch, stitched(kept.swatch.stitch, frame.terms)) for kept in lines),
        swatch_form=swatch_form or blank_swatch(),
        kinds=tuple(kinds),
        own_kinds=own.kinds,
        missed=own.missed,
        kind_form=own.kind_form or KindForm(TypedKind(), {}, None),
        own_sizes=own.sizes,
        size_form=own.size_form or OwnSizeForm(TypedOwnSize(), {}, None),
        closures=tuple(closure for closure in CLOSURES.values() if closure.allowance_mm is not None),
        folder=folder,
        removed=removed,
        countries=(("", "Not set"), *countries()),
        currencies=currencies(),
    )
