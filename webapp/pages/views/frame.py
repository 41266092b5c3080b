"""What stands round every page: the maker, the look, what was just done, the last backup."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import datetime
from types import MappingProxyType
from typing import Annotated

from engine.booklet.terms import TERMS
from engine.counting.rope import STITCH_NAMES
from engine.pattern.pattern import STITCHES
from webapp.records import MakerSettings, StoredPattern

SAID: Mapping[str, str] = MappingProxyType(
    {
        "saved": "Saved as a new revision.",
        "unchanged": "Nothing was changed, so no new revision was made.",
        "made": "The pattern is in the library.",
        "copied": "This is the copy.",
        "kept": "Your version is saved as this copy; the other pattern is as it was.",
        "binned": "What you chose is in the bin and can be taken back.",
        "back": "The pattern is back in the library.",
        "emptied": "The bin is emptied; published patterns stay in it.",
        "examples": "The examples are in the bin.",
        "settings": "The settings are saved.",
        "swatch": "The swatch is saved; every sum uses it from now on.",
        "swatch-gone": "The swatch is removed.",
        "kind": "The bead kind is saved.",
        "kind-gone": "The bead kind is removed.",
        "size": "The finished size is saved.",
        "size-gone": "The finished size is removed.",
        "backed-up": "The library is backed up, and the backup is checked.",
        "backup-folder": "Backups are kept in this folder from now on.",
        "clock": "The date is taken to be right; old things are thinned again as usual.",
        "sound": "The library was read from end to end and is sound.",
        "unsound": "The library was read from end to end and is not sound; see below.",
        "restored": "The library is restored from the backup.",
        "restore-undone": "The library is as it was before the restore.",
        "taken-in": "What you chose is imported; the newest stand first.",
        "stopped": "Stopped; nothing was imported.",
        "none-taken": "Nothing was imported, as you chose.",
        "none-chosen": "No pattern was chosen, so nothing was done.",
        "tag": "The tag is added to the chosen patterns.",
        "untag": "The tag is removed from the chosen patterns.",
        "taken-back": "The patterns are back in the library.",
        "shelved": "Series and skill level are saved.",
        "marked": "The name is saved; this revision stays for good.",
        "unmarked": "The name is removed.",
        "brought": "The old state is brought back as a new revision; the state before is kept below it.",
        "undone": "The state before is back.",
        "stands": "That is the state now, so no new revision was made.",
        "words": "Your words are saved; the next print has them.",
        "photographs": "The photographs are saved; the next print has them.",
        "photograph-moved": "The photograph has its new place.",
        "photograph-gone": "The photograph is removed from the booklets to come.",
        "photograph-back": "The photograph is back in its place.",
        "photographs-forgotten": "What was removed is gone for good.",
        "published": "The edition is published. It stays as it is, byte for byte.",
        "withdrawn": "The edition is withdrawn; it stays here and is given to nobody any more.",
        "given-again": "The edition is given out again, as it was.",
        "copy": "The copy is noted below, and ready to be given.",
        "told": "Noted who was sent the errata.",
        "bead": "The bead is saved.",
        "bead-followed": "The bead is saved, and unpublished patterns that are linked to it follow.",
        "bead-new": "The bead is in the cabinet.",
        "bead-archived": "The bead is archived; patterns that use it keep it.",
        "bead-back": "The bead is back in the cabinet.",
        "bead-removed": "The bead is removed for good.",
        "bought": "The packs are in the stock.",
        "bought-undone": "The packs are out of the stock again.",
        "bead-picture": "The photograph is saved; click in it to take the colour.",
        "bead-picture-gone": "The photograph is removed.",
        "bead-colour": "The colour is taken from the photograph. It counts once you save the bead.",
        "beads-demo": "The invented beads are in the cabinet; archive those that you do not want.",
        "beads-taken": "The table is imported.",
        "beads-same": "Everything in this table is in the cabinet already; nothing was changed.",
        "colourway": "The colourway is saved.",
        "colourway-gone": "The colourway is removed.",
        "colourway-back": "The colourway is back.",
        "colourway-same": "No bead of the cabinet looks the same; nothing was changed.",
        "picked": "The bead is exchanged.",
        "linked": "The beads that look the same are linked to the cabinet now.",
        "refreshed": "The beads are now as in the cabinet.",
        "codes": "Codes and symbols are given out anew; the state before is in the history.",
        "made-pieces": "Noted, and the beads are taken off the stock.",
        "made-undone": "The beads are back in the stock.",
        "piece-begun": "The piece is begun. The library keeps its place and the list as it is now.",
        "piece-named": "The piece has its new name.",
        "piece-open": "The piece is in work again.",
        "piece-finished": "The piece is finished.",
        "piece-away": "The piece is put away; it can be taken up again.",
        "piece-removed": "The piece is removed for good.",
        "answer-kept": "The answer is kept with the name of who asked. Names stay on this computer.",
        "answer-removed": "The kept answer is removed for good.",
        "earned": "Noted.",
        "earned-gone": "The note is removed. The form still holds it, in case you did not mean that.",
        "sizes": "The tables of this pattern show these sizes from now on.",
    }
)
HANDED = {"right": "right-handed", "left": "left-handed"}


@dataclass(frozen=True)
class Frame:
    """What the base template shows."""

    maker: Annotated[str, "The maker's name, in the top bar; may be empty."]
    look: Annotated[str, "system, light or dark."]
    units: Annotated[str, "cm, in or both: how lengths are shown."]
    terms: Annotated[str, "us or uk: how stitches are called."]
    stitches: Annotated[tuple[tuple[str, str], ...], "The stitches to choose from: value, and words in those terms."]
    backup: Annotated[datetime | None, "When the last backup was made."]
    troubles: Annotated[tuple[str, ...], "What is wrong with the library or its backups, in sentences."]
    said: Annotated[str, "A sentence about what was just done; may be empty."]
    own: Annotated[str, "Address of this page with all that was asked, to come back to; empty after a form."] = ""


@dataclass(frozen=True)
class Head:
    """The heading of every page about one pattern."""

    id: Annotated[int, "The pattern's number, for its addresses."]
    title: Annotated[str, "Its title."]
    words: Annotated[str, "Around, kinds and hand in one line."]
    tags: Annotated[tuple[str, ...], "Its tags."]
    example: Annotated[bool, "Whether it came with the app."]
    binned: Annotated[bool, "Whether it is in the bin."]
    version: Annotated[str, "Changes with every save; part of picture addresses."]
    motif: Annotated[str, "The part that hangs between two that fill; empty where there is none."] = ""


def frame(
    settings: MakerSettings | None = None,
    backup: datetime | None = None,
    said: str = "",
    troubles: tuple[str, ...] = (),
    own: str = "",
) -> Frame:
    """The frame of a page. `said` is a key of SAID, as it stands in an address; any other says nothing."""
    kept = settings or MakerSettings()
    stitches = tuple((stitch, stitched(stitch, kept.terms).capitalize()) for stitch in STITCHES)
    return Frame(
        maker=kept.maker,
        look=kept.look,
        units=kept.units,
        terms=kept.terms,
        stitches=stitches,
        backup=backup,
        troubles=troubles,
        said=SAID.get(said, ""),
        own=own,
    )


def head(stored: StoredPattern) -> Head:
    """The heading of a stored pattern."""
    pattern = stored.pattern
    kinds = dict.fromkeys(entry.kind for entry in pattern.palette)
    words = " · ".join((f"{pattern.around} around", *kinds, HANDED[pattern.hand]))
    return Head(
        id=stored.id,
        title=pattern.title,
        words=words,
        tags=pattern.tags,
        example=stored.example,
        binned=stored.binned,
        version=f"{stored.revision}-{stored.sequence}",
        motif=pattern.motif.name if pattern.motif else "",
    )


def stitched(stitch: str, terms: str) -> str:
    """The name of a stitch in US or UK terms: US single crochet is UK double crochet."""
    return TERMS[terms].stitch(stitch)


def in_terms(text: str, terms: str) -> str:
    """What the engine says in US terms, in those terms."""
    return text.replace(STITCH_NAMES["single"], stitched("single", terms))
