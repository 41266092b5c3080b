"""Makes the environment that Ropewright runs in, from a Python 3.11 or newer and nothing else.

Pythons too old for Ropewright must be able to read this file, so that they can say so: no syntax newer than 3.6.
"""

import contextlib
import os
import sys
import time
from typing import Iterator, Tuple

from webapp.machine import CHROMIUM, PANGO, Machine, Outcome, SetupError, provide, provide_pip

ROOT = os.path.dirname(os.path.dirname(os.path.abspath(__file__)))
OLDEST, NEWEST = (3, 11), (3, 15)
LOCKS = {"webapp": "webapp/lock.txt", "tests": "tests/lock.txt"}

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

    Outside of that environment the call does not come back: the same command starts again inside.
    """
    machine = Machine()
    try:
        check_version(sys.version_info[:3], program)
        environment = Environment(ROOT, sys.version)
        prepare(environment, program, machine)
        if os.path.realpath(sys.prefix) != os.path.realpath(environment.folder):
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


class Environment:
    """The folder .venv, with a stamp for each lock file it was filled from.

    A stamp names the lock and the Python. It is written when everything is in, so without it nothing is trusted.
    """

    def __init__(self, root: str, base: str) -> None:
        self.root = root
        self.base = " ".join(base.split())
        self.folder = os.path.join(root, ".venv")
        self.python = os.path.join(self.folder, *(("Scripts", "python.exe") if os.name == "nt" else ("bin", "python")))

    def lock(self, program: str) -> str:
        return os.path.join(self.root, *LOCKS[program].split("/"))

    def is_right(self, program: str) -> bool:
        """Whether the last set-up for `program` was finished, from today's lock file and with this Python."""
        try:
            with open(self._stamp(program), encoding="utf-8") as stamp:
                return stamp.read() == self._wanted(program) and os.path.exists(self.python)
        except OSError:
            return False

    def stamp(self, program: str) -> None:
        with open(self._stamp(program), "w", encoding="utf-8") as stamp:
            stamp.write(self._wanted(program))

    def forget(self) -> None:
        """Take all stamps away: whatever is cut short from here on is made again from the start."""
        for program in LOCKS:
            with contextlib.suppress(FileNotFoundError, NotADirectoryError):
                os.remove(self._stamp(program))

    def _stamp(self, program: str) -> str:
        return os.path.join(self.folder, program + ".stamp")

    def _wanted(self, program: str) -> str:
        import hashlib

        with open(self.lock(program), "rb") as lock:
            return "{}\n{}\n".format(hashlib.sha256(lock.read()).hexdigest(), self.base)


def prepare(environment: Environment, program: str, machine: Machine) -> None:
    """Build what is missing; when everything is there, only the stamps (and for tests the browser) are looked at."""
    if not environment.is_right(program):
        with only_one(environment.root, machine) as lock:
            if not environment.is_right(program):  # Another start may have done it while this one waited.
                build(environment, program, machine, lock)
    if program == "tests":
        provide(CHROMIUM, machine)


def build(environment: Environment, program: str, machine: Machine, lock: int) -> None:
    """Fill .venv for `program`: made anew, unless what the app needs is in it and only the tests' share is missing."""
    started = time.monotonic()
    provide_pip(machine)
    provide(PANGO, machine)
    kept = [name for name in LOCKS if environment.is_right("webapp") and environment.is_right(name)]
    wanted = [name for name in LOCKS if name in ("webapp", program) and name not in kept]
    environment.forget()
    if not kept:
        machine.say("Setting up Ropewright (once, about half a minute): making .venv …")
        make(environment, machine, lock)
    for name in wanted:
        install(environment, name, machine, lock)
    for name in kept + wanted:
        environment.stamp(name)
    machine.say("Set up in {:.0f} seconds.".format(time.monotonic() - started))


def make(environment: Environment, machine: Machine, lock: int) -> None:
    # Not sys.executable: inside .venv that would be the very file about to be cleared away.
    base = getattr(sys, "_base_executable", None) or sys.executable
    # In two steps, because venv keeps to itself why it could not bring pip.
    for command in (
        (base, "-m", "venv", "--clear", "--without-pip", environment.folder),
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
    if sys.platform == "win32":
        import signal
        import subprocess

        signal.signal(signal.SIGINT, signal.SIG_IGN)  # Ctrl-C reaches both; the one inside answers it.
        sys.exit(subprocess.call(command))
    os.execv(environment.python, command)
