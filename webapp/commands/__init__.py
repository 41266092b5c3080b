"""The command line: finds the command, runs it, and says what went wrong in one line."""

from __future__ import annotations

import argparse
import sys
from importlib import import_module
from typing import NoReturn

COMMANDS = {
    "serve": "start the server and open the browser (the default)",
    "stringing": "the stringing list of a pattern file",
    "materials": "the bill of materials of a pattern file",
    "booklet": "print the booklet of a pattern file",
    "card": "the stringing card of a pattern file, for a phone",
    "picture": "a shaded picture of a pattern file",
    "start": "a pattern file from a starting point: stripes, zigzags, fades and the like",
    "beads": "write the cabinet as a table, or import one",
    "import": "import pattern files into the library",
    "export": "write patterns of the library as pattern files",
    "backup": "write a checked copy of the library",
    "restore": "restore the library from a backup",
}
MODULES = {"import": "import_"}
PROGRAM = "python3 -m webapp"


class Refused(Exception):
    """A command cannot be done; the message is one sentence."""


class Parser(argparse.ArgumentParser):
    """Says what is wrong in one line, without the usage."""

    def error(self, message: str) -> NoReturn:
        raise Refused(f"{message[:1].upper()}{message[1:]}; see {self.prog} --help.")


def main(arguments: list[str]) -> int:
    """Exit status of the command: 0, or 2 with one line on stderr."""
    try:
        return _run(arguments)
    except KeyboardInterrupt:
        return 130
    except BrokenPipeError:
        sys.stderr.close()
        return 0
    except Exception as error:
        print("Ropewright:", *_sentence(error).split(), file=sys.stderr)
        return 2


def _run(arguments: list[str]) -> int:
    name = arguments[0] if arguments else "serve"
    if name in ("-h", "--help"):
        print(_overview())
        return 0
    if name.startswith("-"):
        name, arguments = "serve", ["serve", *arguments]
    if name not in COMMANDS:
        raise Refused(f"“{name}” is not a command; expected one of {', '.join(COMMANDS)}.")
    command = import_module(f"webapp.commands.{MODULES.get(name, name)}")
    parser = Parser(prog=f"{PROGRAM} {name}", description=f"Ropewright: {COMMANDS[name]}.", allow_abbrev=False)
    command.add_options(parser)
    status: int = command.run(parser.parse_args(arguments[1:]))
    return status


def _overview() -> str:
    lines = "\n".join(f"  {name:10} {about}" for name, about in COMMANDS.items())
    return (
        f"usage: {PROGRAM} [COMMAND] …\n\nRopewright, for people who design bead crochet ropes.\n\n{lines}\n\n"
        f"{PROGRAM} COMMAND --help shows the options of a command."
    )


def _sentence(error: Exception) -> str:
    """What a person reads of an error; one that nobody foresaw is named by its kind."""
    from engine.errors import EngineError
    from webapp.printing.errors import PrintError
    from webapp.storage.errors import StorageError

    if isinstance(error, (Refused, EngineError, StorageError, PrintError)):
        return str(error)
    if isinstance(error, OSError):
        where = f"{error.filename}: " if error.filename else ""
        return f"{where}{error.strerror or error}."
    return f"This should not have happened ({type(error).__name__}: {error}). Nothing was written."
