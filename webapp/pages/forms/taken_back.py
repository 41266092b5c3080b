"""What was removed from the settings, typed once more, so that one press takes it back."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import asdict, dataclass, fields

from engine.counting.kinds import Kind
from engine.counting.questions import NamedSize
from engine.counting.rope import Swatch
from webapp.pages.forms.own import TypedKind, TypedOwnSize
from webapp.pages.forms.sent import Sent
from webapp.pages.forms.settings import TypedSwatch

BACK = "back"
TYPED = {"swatch": TypedSwatch, "kind": TypedKind, "size": TypedOwnSize}


@dataclass(frozen=True)
class TakenBack:
    """What can be taken back (one of TYPED), and its fields by name as they are sent again."""

    what: str
    typed: tuple[tuple[str, str], ...]

    @property
    def named(self) -> str:
        """Its name, where it has one."""
        return dict(self.typed).get("name", "")


def typed_again(removed: Swatch | Kind | NamedSize) -> TakenBack:
    """The form that would make it again."""
    if isinstance(removed, Swatch):
        return _values_of(
            "swatch",
            TypedSwatch(
                kind=removed.kind,
                around=str(removed.around),
                stitch=removed.stitch,
                number=str(removed.beads),
                counted="beads",
                length=_mm(removed.length_mm),
                date=removed.date,
                note=removed.note,
                unravelled=_mm(removed.unravelled_mm or None),
            ),
        )
    if isinstance(removed, Kind):
        return _values_of(
            "kind",
            TypedKind(
                name=removed.name,
                diameter=_number(removed.diameter_mm),
                length=_number(removed.length_mm),
                hole=_number(removed.hole_mm),
                per_gram=_number(removed.per_gram),
                working=_number(removed.working_mm),
                fewest=_number(removed.fewest_per_gram) if removed.fewest_per_gram else "",
                sure="yes",
            ),
        )
    asked = removed.question
    if asked.over_hand:
        return _values_of("size", TypedOwnSize(removed.name, asked.closure, hand_girth=_mm(asked.length_mm)))
    return _values_of(
        "size",
        TypedOwnSize(
            name=removed.name,
            closure=asked.closure,
            length=_mm(asked.length_mm),
            wrist=_mm(asked.wrist_mm),
            ease=_mm(asked.ease_mm),
        ),
    )


def read_taken_back(pairs: Iterable[tuple[str, object]]) -> TakenBack | None:
    """What an address says can be taken back, if anything."""
    sent = Sent(pairs)
    made = TYPED.get(sent.one(BACK))
    if made is None:
        return None
    return TakenBack(sent.one(BACK), tuple((field.name, sent.one(field.name)) for field in fields(made)))


def _values_of(what: str, typed: TypedSwatch | TypedKind | TypedOwnSize) -> TakenBack:
    return TakenBack(what, tuple(asdict(typed).items()))


def _mm(value: float | None) -> str:
    return f"{_number(value)} mm" if value is not None else ""


def _number(value: float) -> str:
    return f"{value:.12g}"
