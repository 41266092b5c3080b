"""Makes the environment that Ropewright runs in, from a Python 3.11 or newer and nothing else.

Pythons too old for Ropewright must be able to read this file, so that they can say so: no syntax newer than 3.6.
"""

import contextlib
import os
import sys
import time
from typing import Iterator, Tuple

from webapp.machine import CHROMIUM, DRIVER, PANGO, Machine, Outcome, SetupError, library_folders, provide, provide_pip

ROOT = os.path.dirname(os.path.dirname(os.path.abspath(__file__)))
OLDEST, NEWEST = (3, 11), (3, 15)
LOCKS = {"webapp": "webapp/lock.txt", "tests": "tests/lock.txt"}
NEEDED = {"webapp": ("webapp",), "tests": ("webapp", "tests")}  # the tests run the app

# In the environment of the command that is started again inside.
SET_UP = "ROPEWRIGHT_IS_SET_UP"

# What pip prints when something outside of it went wrong, and how a person would say it.
SIGNS = (
    ("No space left on device", "the disk is full"),
    ("Read-only file system", "the disk cannot be written to"),
    ("Permission denied", "the disk cannot be written to"),
    ("certificate verify failed", "the package index is reached over a connection that cannot be trusted"),
    ("connection broken", "there is no network, or the package index cannot be reached"),
    ("timed out", "there is no network, or the package index cannot be reached"),
)


def ensure(program: str) -> None:
    """Come back inside an environment with all that `program` ("webapp" or "tests") needs, or end with a sentence.

    Outside of that environment, or when it was exchanged just now, the call does not come back: the same command starts
    again inside.
    """
    if os.environ.pop(SET_UP, ""):
        return
    machine = Machine()
    try:
        check_version(sys.version_info[:3], program)
        environment = Environment(ROOT, interpreter())
        exchanged = prepare(environment, program, machine)
        if exchanged or os.path.realpath(sys.prefix) != os.path.realpath(environment.folder):
            go_on(environment)
    except SetupError as problem:
        machine.say("Ropewright: {}".format(problem))
        sys.exit(2)
    except OSError as problem:
        machine.say("Ropewright: set-up failed: {}.".format(problem))
        sys.exit(2)
    except KeyboardInterrupt:
        machine.say("Ropewright: stopped; the next start begins set-up again.")
        sys.exit(130)


def check_version(version: Tuple[int, ...], program: str) -> None:
    """Raise SetupError, naming what to do, for a Python that Ropewright cannot run on."""
    if OLDEST <= version[:2] <= NEWEST:
        return
    raise SetupError(
        "this is Python {}, and it needs one from {}.{} to {}.{}; install one of these and start with it, "
        "for instance: python3.13 -m {}".format(".".join(map(str, version)), *OLDEST + NEWEST, program)
    )


def interpreter() -> str:
    """What compiled packages depend on: implementation, minor version and ABI, which an update of the system keeps."""
    import sysconfig

    abi = sysconfig.get_config_var("EXT_SUFFIX")
    return "{} {}.{} {}".format(sys.implementation.name, sys.version_info[0], sys.version_info[1], abi)


class Environment:
    """A folder made by venv, with a stamp for each lock file it was filled from.

    A stamp names the lock and the interpreter. It is written when everything is in, so without it nothing is trusted.
    """

    def __init__(self, root: str, interpreter: str, name: str = ".venv") -> None:
        self.root = root
        self.interpreter = interpreter
        self.folder = os.path.join(root, name)
        self.python = os.path.join(self.folder, *(("Scripts", "python.exe") if os.name == "nt" else ("bin", "python")))

    def successor(self) -> "Environment":
        return Environment(self.root, self.interpreter, ".venv-next")

    def predecessor(self) -> "Environment":
        return Environment(self.root, self.interpreter, ".venv-before")

    def lock(self, program: str) -> str:
        return os.path.join(self.root, *LOCKS[program].split("/"))

    def is_right(self, program: str) -> bool:
        """Whether all that `program` needs was put in, from today's lock files, and its Python is where it was."""
        return all(self.is_filled(needed) for needed in NEEDED[program]) and os.path.exists(self.python)

    def is_filled(self, program: str) -> bool:
        try:
            with open(self._stamp(program), encoding="utf-8") as stamp:
                return stamp.read() == self._wanted(program)
        except OSError:
            return False

    def is_usable(self, program: str, machine: Machine) -> bool:
        """Whether some set-up for `program` was finished, maybe from an older lock file, and its Python still runs."""
        if not (os.path.exists(self._stamp(program)) and os.path.exists(self.python)):
            return False
        return machine.run((self.python, "-c", "")).code == 0

    def stamp(self, program: str) -> None:
        with open(self._stamp(program), "w", encoding="utf-8") as stamp:
            stamp.write(self._wanted(program))

    def _stamp(self, program: str) -> str:
        return os.path.join(self.folder, program + ".stamp")

    def _wanted(self, program: str) -> str:
        import hashlib

        with open(self.lock(program), "rb") as lock:
            return "{}\n{}\n".format(hashlib.sha256(lock.read()).hexdigest(), self.interpreter)


def prepare(environment: Environment, program: str, machine: Machine) -> bool:
    """Make what is missing, and whether .venv was exchanged; when all is there, only the stamps are looked at."""
    exchanged = not is_ready(environment, program) and set_up(environment, program, machine)
    if program == "tests":
        provide(CHROMIUM, machine)
        provide(DRIVER, machine)
    return exchanged


def is_ready(environment: Environment, program: str) -> bool:
    """Whether nothing is to be done; sweeps away what an exchange left that was cut short at its very end."""
    # In this order: while another start exchanges, the predecessor stands there before .venv is right again.
    swept = os.path.lexists(environment.predecessor().folder)
    if not environment.is_right(program):
        return False
    if swept:
        remove(environment.predecessor().folder)
    return True


def set_up(environment: Environment, program: str, machine: Machine) -> bool:
    """Mend or renew .venv, and whether it was; where neither can be done, the last set-up is used while it runs."""
    try:
        with only_one(environment.root, machine) as lock:
            heal(environment, machine)
            if not environment.is_right(program):  # Another start may have done it while this one waited.
                build(environment, program, machine, lock)
        return True
    except (SetupError, OSError) as problem:
        if not environment.is_usable(program, machine):
            raise
        machine.say("Ropewright: {}".format(problem))
        machine.say("Starting with what the last set-up made.")
        return False


def heal(environment: Environment, machine: Machine) -> None:
    """Finish an exchange that was cut short, and follow a Python that an update has moved."""
    if environment.successor().is_right("webapp"):
        exchange(environment)
    elif os.path.lexists(environment.predecessor().folder) and not os.path.lexists(environment.folder):
        os.rename(environment.predecessor().folder, environment.folder)
    if any(environment.is_filled(program) for program in LOCKS) and not os.path.exists(environment.python):
        relink(environment, machine)


def relink(environment: Environment, machine: Machine) -> None:
    """Point .venv at today's Python; a failure is no harm, for then everything is made anew."""
    programs = os.path.dirname(environment.python)
    paths = [os.path.join(programs, name) for name in os.listdir(programs)] if os.path.isdir(programs) else []
    for path in paths:
        if os.path.islink(path) and not os.path.exists(path):
            os.remove(path)
    machine.run((base_python(), "-m", "venv", "--upgrade", "--without-pip", environment.folder))


def build(environment: Environment, program: str, machine: Machine, lock: int) -> None:
    """Make the successor of .venv beside it, with all that `program` needs, and exchange the two when it is done."""
    started = time.monotonic()
    provide_pip(machine)
    provide(PANGO, machine)
    machine.say("Setting up Ropewright (once, about half a minute): making .venv …")
    try:
        fill(environment.successor(), NEEDED[program], machine, lock)
    except BaseException:
        remove(environment.successor().folder)
        raise
    exchange(environment)
    machine.say("Set up in {:.0f} seconds.".format(time.monotonic() - started))


def fill(successor: Environment, programs: Tuple[str, ...], machine: Machine, lock: int) -> None:
    make(successor, machine, lock)
    for program in programs:
        install(successor, program, machine, lock)
    relocate(successor, os.path.join(successor.root, ".venv"))
    for program in reversed(programs):  # The app's stamp is the last: with it, the successor is complete.
        successor.stamp(program)


def relocate(environment: Environment, folder: str) -> None:
    """Write `folder` into all scripts that name where the environment was made, for that is where it will stand."""
    programs = os.path.dirname(environment.python)
    paths = [os.path.join(programs, name) for name in os.listdir(programs)]
    paths.append(os.path.join(environment.folder, "pyvenv.cfg"))
    for path in paths:
        if os.path.islink(path) or not os.path.isfile(path):
            continue
        with open(path, "rb") as script:
            old = script.read()
        new = old.replace(os.fsencode(environment.folder), os.fsencode(folder))
        if new != old:
            with open(path, "wb") as script:
                script.write(new)


def exchange(environment: Environment) -> None:
    """Put the successor where .venv is; cut short anywhere, the next start finds one of the two complete."""
    successor, before = environment.successor().folder, environment.predecessor().folder
    try:
        remove(before)
        if os.path.lexists(environment.folder):
            os.rename(environment.folder, before)
        os.rename(successor, environment.folder)
    except OSError as problem:
        if not os.path.lexists(environment.folder) and os.path.lexists(before):
            os.rename(before, environment.folder)
        sentence = "could not put the new .venv in place ({}); stop what runs from .venv and start again."
        raise SetupError(sentence.format(problem.strerror)) from problem
    remove(before)


def remove(folder: str) -> None:
    """Remove a folder as far as that can be done; what stays is in nobody's way and tried again by the next set-up."""
    import shutil

    if os.path.islink(folder):
        os.remove(folder)
    else:
        shutil.rmtree(folder, ignore_errors=True)


def base_python() -> str:
    # Not sys.executable: inside .venv that would be a file of the very folder that is exchanged.
    return getattr(sys, "_base_executable", None) or sys.executable


def make(environment: Environment, machine: Machine, lock: int) -> None:
    # In two steps, because venv keeps to itself why it could not bring pip.
    for command in (
        (base_python(), "-m", "venv", "--clear", "--without-pip", environment.folder),
        (environment.python, "-m", "ensurepip", "--default-pip"),
    ):
        outcome = machine.run(command, hold=lock)
        if outcome.code:
            raise SetupError("could not make {}: {}".format(environment.folder, reason(outcome)))


def install(environment: Environment, program: str, machine: Machine, lock: int) -> None:
    with open(environment.lock(program), encoding="utf-8") as text:
        count = round(sum("==" in line for line in text), -1)
    machine.say("Setting up Ropewright: installing about {} packages of {} …".format(count, LOCKS[program]))
    command = (environment.python, "-m", "pip", "install", "--quiet", "--no-input", "--disable-pip-version-check")
    exact = ("--require-hashes", "--only-binary", ":all:", "-r", environment.lock(program))
    outcome = machine.run(command + exact, {"PIP_USER": "0"}, hold=lock)
    if outcome.code:
        raise SetupError("could not install its packages: {}".format(reason(outcome)))


def reason(outcome: Outcome) -> str:
    """Why a command failed, in one sentence: what a person can mend, else the most telling line it printed."""
    for sign, meaning in SIGNS:
        if sign.lower() in outcome.output.lower():
            return meaning + "; mend that and start again."
    lines = [line.strip() for line in outcome.output.splitlines() if line.strip()]
    errors = [line for line in lines if line.lower().startswith("error")]
    return (errors or lines or ["it ended with status {}".format(outcome.code)])[-1]


@contextlib.contextmanager
def only_one(root: str, machine: Machine) -> "Iterator[int]":
    """Hold the set-up lock, waiting for whoever has it; the system lets go of it when its holder dies."""
    try:
        lock = os.open(os.path.join(root, ".venv.lock"), os.O_RDWR | os.O_CREAT, 0o666)
    except OSError as problem:
        sentence = "set-up cannot write to {} ({}); put the folder where you may write and start again."
        raise SetupError(sentence.format(root, problem.strerror)) from problem
    try:
        if not try_lock(lock):
            machine.say("Another start is setting Ropewright up; waiting for it …")
            while not try_lock(lock):
                time.sleep(0.2)
        yield lock
    finally:
        os.close(lock)


def try_lock(lock: int) -> bool:
    """Whether the open file could be locked for this process; the system lets go of it when the process dies."""
    try:
        if sys.platform == "win32":
            import msvcrt

            msvcrt.locking(lock, msvcrt.LK_NBLCK, 1)
        else:
            import fcntl

            fcntl.flock(lock, fcntl.LOCK_EX | fcntl.LOCK_NB)
    except (BlockingIOError, PermissionError):
        return False
    return True


def go_on(environment: Environment) -> None:
    """Start the same command inside the environment, in place of this process where the system can do that."""
    command = [environment.python] + sys.orig_argv[1:]
    os.environ[SET_UP] = "yes"
    os.environ.update(library_folders(sys.platform, dict(os.environ)))
    if sys.platform == "win32":
        import signal
        import subprocess

        signal.signal(signal.SIGINT, signal.SIG_IGN)  # Ctrl-C reaches both; the one inside answers it.
        sys.exit(subprocess.call(command))
    os.execv(environment.python, command)
