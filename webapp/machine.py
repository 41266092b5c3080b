"""What set-up asks of the computer: commands run, libraries found, and the system's own packages installed.

Pythons too old for Ropewright must be able to read this file: no syntax newer than 3.6.
"""

import os
import sys
from typing import Dict, NamedTuple, Optional, Tuple


class SetupError(Exception):
    """What keeps Ropewright from starting, as one sentence for the person at the keyboard."""


class Outcome(NamedTuple):
    """How a command ended: its exit status and all that it printed."""

    code: int
    output: str


class Need(NamedTuple):
    """Something only the system can bring, and the package that brings it for each package manager."""

    name: str
    without: str
    packages: Dict[str, str]


PANGO = Need(
    "Pango",
    "everything works but printing booklets as PDF",
    {
        "apt-get": "libpango-1.0-0 libpangoft2-1.0-0 libharfbuzz-subset0",
        "dnf": "pango",
        "pacman": "pango",
        "brew": "pango",
        "msys2": "mingw-w64-ucrt-x86_64-pango",
    },
)
CHROMIUM = Need(
    "Chromium",
    "the tests that look at pages will fail",
    {"apt-get": "chromium", "dnf": "chromium", "pacman": "chromium", "brew": "--cask chromium"},
)
DRIVER = Need(
    "libatomic",
    "the tests that look at pages will fail, for the driver of the browser wants it",
    {"apt-get": "libatomic1", "dnf": "libatomic", "pacman": "gcc-libs"},
)
COMMANDS = {
    "apt-get": "sudo apt-get install --no-install-recommends {}",
    "dnf": "sudo dnf install {}",
    "pacman": "sudo pacman -S {}",
    "brew": "brew install {}",
    "msys2": "pacman -S {} (in the UCRT64 window of MSYS2)",
}
# What WeasyPrint opens when it is imported, by the names each system gives them.
LIBRARIES = {
    "linux": (
        "libgobject-2.0.so.0",
        "libpango-1.0.so.0",
        "libharfbuzz.so.0",
        "libharfbuzz-subset.so.0",
        "libfontconfig.so.1",
        "libpangoft2-1.0.so.0",
    ),
    "darwin": (
        "libgobject-2.0.0.dylib",
        "libpango-1.0.dylib",
        "libharfbuzz.0.dylib",
        "libharfbuzz-subset.0.dylib",
        "libfontconfig.1.dylib",
        "libpangoft2-1.0.dylib",
    ),
    "win32": (
        "libgobject-2.0-0.dll",
        "libpango-1.0-0.dll",
        "libharfbuzz-0.dll",
        "libharfbuzz-subset-0.dll",
        "libfontconfig-1.dll",
        "libpangoft2-1.0-0.dll",
    ),
}
# Where Homebrew keeps libraries on Apple's and on Intel's processors. Only its own Python looks in the first; any other
# does where DYLD_FALLBACK_LIBRARY_PATH names it as the program starts.
DYLD_FOLDERS = ("/opt/homebrew/lib", "/usr/local/lib")
DLL_FOLDERS = "C:\\msys64\\ucrt64\\bin;C:\\msys64\\mingw64\\bin"


class Machine:
    """The computer as set-up sees it."""

    platform = sys.platform

    def say(self, line: str) -> None:
        sys.stderr.write(line + "\n")
        sys.stderr.flush()

    def agrees(self, question: str) -> bool:
        """Whether the person at the terminal says yes; without a terminal there is nobody to ask."""
        if not (sys.stdin and sys.stdin.isatty() and sys.stderr.isatty()):
            return False
        sys.stderr.write(question + " [y/N] ")
        sys.stderr.flush()
        return sys.stdin.readline().strip().lower() in ("y", "yes")

    def run(
        self, command: Tuple[str, ...], settings: Optional[Dict[str, str]] = None, hold: Optional[int] = None
    ) -> Outcome:
        """Run a command silently. `settings` are added to the environment.

        `hold` is an open file the command keeps open too: when this process is killed, a lock on it stays until the
        command has ended as well.
        """
        import subprocess

        done = subprocess.run(
            command,
            stdin=subprocess.DEVNULL,
            stdout=subprocess.PIPE,
            stderr=subprocess.STDOUT,
            env=dict(os.environ, **(settings or {})),
            pass_fds=() if hold is None or os.name == "nt" else (hold,),
        )
        return Outcome(done.returncode, done.stdout.decode("utf-8", "replace"))

    def which(self, tool: str) -> bool:
        import shutil

        return shutil.which(tool) is not None

    def loads(self, library: str) -> bool:
        # Opening it is the only sure test: find_library may answer from a list that is out of date.
        import ctypes

        try:
            ctypes.CDLL(library)
        except OSError:
            return False
        return True

    def imports(self, module: str) -> bool:
        import importlib.util

        importlib.invalidate_caches()
        return importlib.util.find_spec(module) is not None

    def is_root(self) -> bool:
        return sys.platform != "win32" and os.geteuid() == 0


def provide_pip(machine: Machine) -> None:
    """Make sure that this Python can make environments; Debian keeps that in a package of its own."""
    need = Need("venv", "", {"apt-get": "python{}.{}-venv".format(*sys.version_info[:2])})
    if machine.imports("ensurepip") or (install(need, machine) and machine.imports("ensurepip")):
        return
    command = command_for(need, machine)
    if command is None:
        raise SetupError("this Python comes without ensurepip, so it cannot set Ropewright up; use another Python.")
    raise SetupError("this Python comes without venv; run this, then start again: {}".format(command))


def provide(need: Need, machine: Machine) -> bool:
    """Whether this need is there, at the latest now; if not, say what does not work and what to run."""
    if is_there(need, machine) or (install(need, machine) and is_there(need, machine)):
        return True
    machine.say("{} is missing: {}. {}".format(need.name, need.without, advice(need, machine)))
    return False


def is_there(need: Need, machine: Machine) -> bool:
    if need is CHROMIUM:
        return machine.which("chromium")
    if need is DRIVER:
        return machine.platform != "linux" or machine.loads("libatomic.so.1")
    libraries = LIBRARIES.get(machine.platform, LIBRARIES["linux"])
    if machine.platform == "win32":
        folders = [folder + "\\" for folder in os.environ.get("WEASYPRINT_DLL_DIRECTORIES", DLL_FOLDERS).split(";")]
    else:
        folders = [""] + [folder + "/" for folder in DYLD_FOLDERS if machine.platform == "darwin"]
    return any(all(machine.loads(folder + library) for library in libraries) for folder in folders)


def library_folders(platform: str, environ: Dict[str, str]) -> Dict[str, str]:
    """What the program inside needs in its environment to find those libraries."""
    if platform != "darwin":
        return {}
    known = environ.get("DYLD_FALLBACK_LIBRARY_PATH", "")
    return {"DYLD_FALLBACK_LIBRARY_PATH": ":".join(DYLD_FOLDERS + ((known,) if known else ()))}


def advice(need: Need, machine: Machine) -> str:
    """The one command that brings what is missing on this system, as a sentence."""
    command = command_for(need, machine)
    return "To install it, run: {}".format(command) if command else "Install it with your system's package manager."


def command_for(need: Need, machine: Machine) -> Optional[str]:
    manager = manager_of(machine)
    if manager is None or manager not in need.packages:
        return None
    command = COMMANDS[manager].format(need.packages[manager])
    return command[len("sudo ") :] if machine.is_root() and command.startswith("sudo ") else command


def manager_of(machine: Machine) -> Optional[str]:
    if machine.platform == "win32":
        return "msys2"
    if machine.platform == "darwin":
        return "brew"
    return next((manager for manager in ("apt-get", "dnf", "pacman") if machine.which(manager)), None)


def install(need: Need, machine: Machine) -> bool:
    """Install a Debian package: at once as root, after a yes where sudo can be asked for; whether it went in."""
    if manager_of(machine) != "apt-get":
        return False
    if not machine.is_root():
        question = "{} is missing. Run this now? {}".format(need.name, command_for(need, machine))
        if not (machine.which("sudo") and machine.agrees(question)):
            return False
    machine.say("Installing {} with apt …".format(need.name))
    sudo: Tuple[str, ...] = () if machine.is_root() else ("sudo",)
    apt = sudo + ("env", "DEBIAN_FRONTEND=noninteractive", "apt-get", "-q", "-y", "-o", "DPkg::Lock::Timeout=60")
    machine.run(apt + ("update",))  # Half a list is often enough, so only the next one's answer counts.
    outcome = machine.run(apt + ("install", "--no-install-recommends") + tuple(need.packages["apt-get"].split()))
    if outcome.code:
        machine.say("apt could not install {}; is there a network?".format(need.name))
    return outcome.code == 0
