"""Both commands of README.md in a Debian with nothing but Python 3.11, made by debootstrap: python3 -m tests bare."""

from __future__ import annotations

import os
import re
import shutil
import signal
import subprocess
import sys
import tempfile
import time
from collections.abc import Iterator, Mapping
from contextlib import contextmanager
from pathlib import Path
from typing import NamedTuple

import httpx

from webapp.bootstrap import ROOT

SUITE = "bookworm"  # the Debian whose Python is 3.11
BROUGHT = "python3,ca-certificates"
TOOLS = ("debootstrap", "unshare", "chroot", "mount", "git", "apt-get", "apt-config")
HOME = "root"
CLONE = f"{HOME}/ropewright"
SETTINGS = ("etc/pip.conf", "etc/xdg/pip", "etc/ssl/certs/ca-certificates.crt", "etc/hosts", "etc/resolv.conf")
OWN_SETTINGS = (".config/pip", ".pip")
VARIABLES = re.compile(r"PIP_\w+|SSL_CERT_(FILE|DIR)|REQUESTS_CA_BUNDLE|(HTTPS?|ALL|NO)_PROXY", re.I)
APT_SETTINGS = re.compile(r"Acquire::(https?|Check-\w+|Retries)\b(?!.*Auto-Detect)")
MOUNTED = 'mount --rbind /dev "$0/dev" && mount -t proc proc "$0/proc" && exec chroot "$0" "$@"'
PATIENCE = 1800


class Source(NamedTuple):
    """A place that apt reads packages from."""

    address: str
    release: str


class Ended(NamedTuple):
    """How a command ended, all that it printed, and how long it took."""

    status: int
    lines: list[str]
    seconds: float

    @property
    def set_up(self) -> int:
        """How often it set Ropewright up."""
        return sum(line.startswith("Set up in ") for line in self.lines)


class Failed(Exception):
    """What went otherwise than README.md says, as a sentence."""


def main() -> int:
    """Exit status: 0 when both commands did what README.md says, 1 when not, 2 when this computer cannot try it."""
    if lacking := cannot_be_tried():
        print(f"Not run, so nothing is proved: {lacking}", flush=True)
        return 2
    root = Path(tempfile.mkdtemp(prefix="ropewright-bare-"))
    try:
        make(root)
        try_commands(root)
    except (Failed, subprocess.CalledProcessError) as problem:
        print(f"Failed: {problem}", flush=True)
        return 1
    finally:
        end_what_runs_in(root)
        shutil.rmtree(root, ignore_errors=True)
    print("Both commands work on a bare Debian.", flush=True)
    return 0


def cannot_be_tried() -> str:
    """Why this computer cannot make a Debian root, as a sentence; empty where it can."""
    if not sys.platform.startswith("linux"):
        return "a Debian root can be made on Linux alone."
    if missing := [tool for tool in TOOLS if shutil.which(tool) is None]:
        return f"{', '.join(missing)} missing; on Debian: apt-get install debootstrap git util-linux."
    if os.geteuid() != 0:
        return "only root can make a Debian root; start it as root."
    if not debian_sources():
        return "apt of this computer names no Debian to take packages from."
    return ""


def debian_sources() -> list[Source]:
    """Where apt of this computer takes Debian's packages from, with the release changed to the one that is tried."""
    given = output("apt-get", "indextargets", "--format", "$(CREATED_BY) $(REPO_URI) $(RELEASE) $(COMPONENT)")
    return read_sources(given, Path("/etc/os-release").read_text(encoding="utf-8"))


def read_sources(targets: str, system: str) -> list[Source]:
    settings = dict(line.split("=", 1) for line in system.splitlines() if "=" in line)
    codename = settings.get("VERSION_CODENAME", "")
    if settings.get("ID") != "debian" or not codename:
        return []
    rows = [line.split() for line in targets.splitlines()]
    found = [Source(row[1], row[2]) for row in rows if len(row) == 4 and row[0] == "Packages" and row[3] == "main"]
    ours = [source for source in found if re.fullmatch(rf"{codename}(-\w+)?", source.release)]
    renamed = [Source(source.address, source.release.replace(codename, SUITE, 1)) for source in ours]
    return sorted(renamed, key=lambda source: source.release)


def make(root: Path) -> None:
    """The Debian root, with what this computer needs to reach packages, and a clean clone of Ropewright."""
    sources = debian_sources()
    say(f"making a {SUITE} with {BROUGHT} …")
    quietly("debootstrap", "--variant=minbase", f"--include={BROUGHT}", SUITE, str(root), sources[0].address)
    lines = [f"deb {source.address} {source.release} main\n" for source in sources]
    (root / "etc/apt/sources.list").write_text("".join(lines), encoding="utf-8")
    (root / "etc/apt/apt.conf.d/90copied").write_text(apt_settings(), encoding="utf-8")
    for name in SETTINGS:
        copy(Path("/", name), root / name)
    for name in OWN_SETTINGS:
        copy(Path.home() / name, root / HOME / name)
    quietly("git", "clone", "--quiet", "--no-hardlinks", ROOT, str(root / CLONE))


def apt_settings() -> str:
    lines = output("apt-config", "dump", "Acquire").splitlines(keepends=True)
    return "".join(line for line in lines if APT_SETTINGS.match(line))


def copy(source: Path, target: Path) -> None:
    if source.is_dir():
        shutil.copytree(source, target, dirs_exist_ok=True)
    elif source.exists():
        target.parent.mkdir(parents=True, exist_ok=True)
        target.unlink(missing_ok=True)
        shutil.copyfile(source, target)


def try_commands(root: Path) -> None:
    expect(run(root, "python3", "-c", "import ensurepip").status == 1, "this Debian has more than Python itself")
    started, page = serve(root)
    expect(page == 200, f"the first page answered {page}")
    expect(started.set_up == 1, f"the first start set up {started.set_up} times")
    again, page = serve(root)
    expect((page, again.set_up) == (200, 0), "the second start set up again, or gave no page")
    example = next((root / CLONE / "tests/examples").glob("*.json")).relative_to(root / CLONE)
    offline = run(root, "python3", "-m", "webapp", "stringing", str(example), network=False)
    expect((offline.status, offline.set_up) == (0, 0), "without a network it does not start")
    tested = run(root, "python3", "-m", "tests")
    expect(tested.set_up == 1, f"the tests set up {tested.set_up} times")
    expect(tested.status == 0, f"the tests ended with status {tested.status}")
    listed = run(root, "python3", "-m", "tests", "--co", "-q", "tests/test_setup.py", network=False)
    expect((listed.status, listed.set_up) == (0, 0), "the tests do not start a second time without a network")
    last = run(root, "python3", "-m", "webapp", "stringing", str(example), network=False)
    expect((last.status, last.set_up) == (0, 0), "after the tests were set up the app does not start")


def expect(holds: bool, sentence: str) -> None:
    if not holds:
        raise Failed(f"{sentence}.")


def serve(root: Path) -> tuple[Ended, int]:
    """Start the app as README.md says, ask for its first page, and stop it with Ctrl-C."""
    status = 0
    with started(root, "python3", "-m", "webapp") as (process, began):
        lines = []
        for line in echoed(process):
            lines.append(line)
            if address := re.match(r"Ropewright is at (http://\S+)", line):
                status = httpx.get(address[1], timeout=PATIENCE).status_code
                print(f"   {time.monotonic() - began:.1f} s to the first page, status {status}", flush=True)
                process.send_signal(signal.SIGINT)
        return Ended(process.wait(PATIENCE), lines, time.monotonic() - began), status


def run(root: Path, *command: str, network: bool = True) -> Ended:
    with started(root, *command, network=network) as (process, began):
        lines = list(echoed(process))
        ended = Ended(process.wait(PATIENCE), lines, time.monotonic() - began)
    print(f"   {ended.seconds:.1f} s, status {ended.status}", flush=True)
    return ended


@contextmanager
def started(root: Path, *command: str, network: bool = True) -> Iterator[tuple[subprocess.Popen[str], float]]:
    """A command in the clone inside of the root; what it mounts is gone with it."""
    say(" ".join(command) + ("" if network else " (without a network)"))
    outside = ("unshare", "--mount", "--propagation", "private", *(() if network else ("--net",)))
    inside = ("/usr/bin/env", "-i", f"--chdir=/{CLONE}", *variables(os.environ), *command)
    began = time.monotonic()
    process = subprocess.Popen(
        [*outside, "sh", "-c", MOUNTED, str(root), *inside],
        stdin=subprocess.DEVNULL,
        stdout=subprocess.PIPE,
        stderr=subprocess.STDOUT,
        encoding="utf-8",
        errors="replace",
    )
    try:
        yield process, began
    finally:
        process.kill()
        process.communicate()


def variables(environment: Mapping[str, str]) -> list[str]:
    """What a command inside finds in its environment: a plain one, and how this computer reaches packages."""
    kept = [f"{name}={value}" for name, value in sorted(environment.items()) if VARIABLES.fullmatch(name)]
    return [f"HOME=/{HOME}", "PATH=/usr/sbin:/usr/bin:/sbin:/bin", "LANG=C.UTF-8", *kept]


def echoed(process: subprocess.Popen[str]) -> Iterator[str]:
    for line in process.stdout or ():
        print("  |", line.rstrip(), flush=True)
        yield line


def end_what_runs_in(root: Path) -> None:
    """End what a failed command left running inside."""
    for process in Path("/proc").glob("[0-9]*"):
        try:
            if (process / "root").readlink() == root:
                os.kill(int(process.name), signal.SIGKILL)
        except OSError:
            continue  # It ended by itself.


def say(line: str) -> None:
    print("==", line, flush=True)


def output(*command: str) -> str:
    return subprocess.run(command, check=True, capture_output=True, encoding="utf-8").stdout


def quietly(*command: str) -> None:
    """Run a command, and show what it printed only when it failed."""
    done = subprocess.run(command, check=False, stdout=subprocess.PIPE, stderr=subprocess.STDOUT, encoding="utf-8")
    if done.returncode:
        raise Failed(f"{done.stdout}\n{command[0]} ended with status {done.returncode}.")
