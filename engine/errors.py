"""Everything the engine can object to, each with the sentence that a person reads.

EngineError
├── NotationError      the text of the beads cannot be read; names line, column and what was expected
├── PatternError       a pattern that no rope can have: around, palette, titles, too many beads
├── LengthError        a length without or with an unknown unit
├── SizeError          a finished size that cannot be worked
├── PlanError          threads that cannot be cut so
└── ChoiceError        a word that is not one of a list
    └── UnknownKind    a bead of the palette is of a kind that is not known here
"""

from __future__ import annotations

from collections.abc import Iterable


class EngineError(Exception):
    """A sentence for the person, the slug of its kind, and the name of the field at fault, if one is."""

    code = "wrong"

    def __init__(self, message: str, field: str | None = None) -> None:
        super().__init__(message)
        self.message = message
        self.field = field

    def at(self, field: str) -> EngineError:
        """The same objection, made to that field."""
        self.field = field
        return self


class NotationError(EngineError):
    """The text of the beads cannot be read. `line` and `column` count from one."""

    code = "notation"

    def __init__(self, line: int, column: int, problem: str, field: str | None = None) -> None:
        super().__init__(f"Line {line}, column {column}: {problem}", field)
        self.line = line
        self.column = column

    def within(self, where: str) -> NotationError:
        """The same objection, its place told within something larger."""
        self.message = f"{where}, {self.message[0].lower()}{self.message[1:]}"
        return self


class PatternError(EngineError):
    """A pattern that no rope can have."""

    code = "pattern"


class LengthError(EngineError):
    """A length that cannot be read."""

    code = "length"


class SizeError(EngineError):
    """A finished size that cannot be worked."""

    code = "size"


class PlanError(EngineError):
    """Threads that cannot be cut so."""

    code = "threads"


class ChoiceError(EngineError):
    """A word that is not one of those that may stand here."""

    code = "choice"

    def __init__(self, what: str, given: object, choices: Iterable[str], field: str | None = None) -> None:
        said = ", ".join(choices)
        super().__init__(f"{what}: “{shortened(given)}” is not known here; expected one of {said}.", field)


class UnknownKind(ChoiceError):
    """A bead of the palette is of a kind that these numbers do not know."""

    def __init__(self, code: str, kind: str) -> None:
        EngineError.__init__(
            self,
            f"Bead {code} is of the kind “{shortened(kind)}”, which is not in this library; "
            "enter that kind in the settings, or choose another bead kind.",
            "kind",
        )


def shortened(text: object, most: int = 40) -> str:
    """The text as it may be quoted in a sentence: one line, not too long."""
    line = "".join(letter if letter.isprintable() else " " for letter in str(text))
    return line if len(line) <= most else line[: most - 1] + "…"
