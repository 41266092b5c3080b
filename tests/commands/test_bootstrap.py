"""Set-up on computers of every kind, with stand-ins for the commands it runs and the libraries it finds."""

import itertools
import os
import re
import shutil
import subprocess
import sys
import sysconfig
import threading
from dataclasses import dataclass, field
from pathlib import Path

import pytest

from webapp import bootstrap
from webapp.bootstrap import Environment, build, check_version, heal, interpreter, only_one, prepare, reason
from webapp.machine import (
    CHROMIUM,
    DRIVER,
    PANGO,
    Machine,
    Outcome,
    SetupError,
    advice,
    library_folders,
    provide,
    provide_pip,
)

VENV = f"python3.{sys.version_info.minor}-venv"
FINE = Outcome(0, "")


@dataclass
class Computer(Machine):
    """A computer that keeps what was said and run; apt brings what is missing, and pip fails when told to."""

    platform: str = "linux"
    tools: tuple[str, ...] = ("apt-get", "sudo", "chromium")
    missing: set[str] = field(default_factory=set)
    root: bool = True
    answer: bool = False
    pip: Outcome | BaseException = FINE
    apt: Outcome = FINE
    said: list[str] = field(default_factory=list)
    asked: list[str] = field(default_factory=list)
    ran: list[str] = field(default_factory=list)

    def say(self, line: str) -> None:
        self.said.append(line)

    def agrees(self, question: str) -> bool:
        self.asked.append(question)
        return self.answer

    def run(self, command: tuple[str, ...], settings: dict[str, str] | None = None, hold: int | None = None) -> Outcome:
        self.ran.append(" ".join((*(f"{name}={value}" for name, value in (settings or {}).items()), *command)))
        if "apt-get" in command:
            if "install" in command and self.apt == FINE:
                self.missing.clear()
            return self.apt
        if "venv" in command:
            folder = Path(command[-1])
            if "--clear" in command:
                shutil.rmtree(folder, ignore_errors=True)
            python = Path(Environment(str(folder.parent), "", folder.name).python)
            python.parent.mkdir(parents=True, exist_ok=True)
            python.touch()
            (python.parent / "pip").write_text(f"#!{python}\n")
        if "pip" in command and isinstance(self.pip, BaseException):
            raise self.pip
        return self.pip if "pip" in command else FINE

    def which(self, tool: str) -> bool:
        return tool in self.tools and tool not in self.missing

    def loads(self, library: str) -> bool:
        return library not in self.missing

    def imports(self, module: str) -> bool:
        return module not in self.missing

    def is_root(self) -> bool:
        return self.root


def without_pango(**kept: object) -> Computer:
    return Computer(missing={"libpango-1.0.so.0"}, **kept)


def clone(root: Path, packages: str = "package==1.0 \\\n    --hash=sha256:00\n" * 12) -> Environment:
    """A clone of Ropewright with nothing but its lock files."""
    for lock in bootstrap.LOCKS.values():
        (root / lock).parent.mkdir(parents=True)
        (root / lock).write_text(packages)
    return Environment(str(root), "cpython 3.11 .cpython-311-x86_64-linux-gnu.so")


@pytest.fixture
def environment(tmp_path: Path) -> Environment:
    return clone(tmp_path)


def commands(environment: Environment, *locks: str) -> list[str]:
    """What set-up has to run to fill the successor of .venv from these lock files."""
    successor = environment.successor()
    pip = (
        f"PIP_USER=0 {successor.python} -m pip install --quiet --no-input --disable-pip-version-check "
        "--require-hashes --only-binary :all: -r "
    )
    return [
        f"{bootstrap.base_python()} -m venv --clear --without-pip {successor.folder}",
        f"{successor.python} -m ensurepip --default-pip",
        *(pip + environment.lock(lock) for lock in locks),
    ]


def start(environment: Environment, program: str = "webapp", **computer: object) -> Computer:
    machine = Computer(**computer)
    prepare(environment, program, machine)
    return machine


def stamps(environment: Environment) -> list[str]:
    return sorted(path.stem for path in Path(environment.folder).glob("*.stamp"))


def folders(environment: Environment) -> list[str]:
    return sorted(path.name for path in Path(environment.root).glob(".venv*") if path.is_dir())


# The environment and its stamps


def test_the_first_start_makes_the_environment_and_says_so(environment: Environment) -> None:
    machine = start(environment)
    assert machine.ran == commands(environment, "webapp")
    assert machine.said[:-1] == [
        "Setting up Ropewright (once, about half a minute): making .venv …",
        "Setting up Ropewright: installing about 10 packages of webapp/lock.txt …",
    ]
    assert re.fullmatch(r"Set up in \d+ seconds\.", machine.said[-1])
    assert stamps(environment) == ["webapp"]


def test_the_second_start_runs_nothing_and_says_nothing(environment: Environment) -> None:
    start(environment)
    again = start(environment)
    assert (again.ran, again.said) == ([], [])


def test_the_second_start_needs_no_folder_it_can_write_to(environment: Environment) -> None:
    start(environment)
    os.remove(os.path.join(environment.root, ".venv.lock"))
    start(environment)
    assert not os.path.exists(os.path.join(environment.root, ".venv.lock"))


def test_the_stamp_names_the_lock_and_what_packages_depend_on(environment: Environment) -> None:
    start(environment)
    digest, python = Path(environment.folder, "webapp.stamp").read_text().splitlines()
    assert (len(digest), python) == (64, "cpython 3.11 .cpython-311-x86_64-linux-gnu.so")


def test_an_update_within_a_minor_version_is_the_same_interpreter(monkeypatch: pytest.MonkeyPatch) -> None:
    before = interpreter()
    monkeypatch.setattr(sys, "version", "3.11.99 (main, patched) [GCC 14]")
    monkeypatch.setattr(sys, "version_info", (*sys.version_info[:2], 99, "final", 0))
    assert interpreter() == before
    minor = ".".join(map(str, sys.version_info[:2]))
    assert before == f"{sys.implementation.name} {minor} {sysconfig.get_config_var('EXT_SUFFIX')}"


def test_the_tests_bring_what_the_app_needs_too(environment: Environment) -> None:
    assert start(environment, "tests").ran == commands(environment, "webapp", "tests")
    assert stamps(environment) == ["tests", "webapp"]
    assert start(environment).ran == []


def test_the_tests_follow_a_new_lock_of_the_app_though_their_own_is_the_same(environment: Environment) -> None:
    start(environment, "tests")
    with Path(environment.lock("webapp")).open("a", encoding="utf-8") as lock:
        lock.write("one-more==1.0\n")
    assert start(environment, "tests").ran == commands(environment, "webapp", "tests")
    assert start(environment, "tests").ran == []


def test_the_tests_after_the_app_are_set_up_beside_it(environment: Environment) -> None:
    start(environment)
    assert start(environment, "tests").ran == commands(environment, "webapp", "tests")
    assert stamps(environment) == ["tests", "webapp"]


def test_another_minor_version_of_python_makes_everything_anew(environment: Environment) -> None:
    start(environment, "tests")
    newer = Environment(environment.root, "cpython 3.13 .cpython-313-x86_64-linux-gnu.so")
    assert start(newer).ran == commands(environment, "webapp")
    assert stamps(newer) == ["webapp"]


def test_a_new_lock_makes_everything_anew(environment: Environment) -> None:
    start(environment, "tests")
    Path(environment.lock("webapp")).write_text("webapp-package==2.0 --hash=sha256:00\n")
    assert start(environment).ran == commands(environment, "webapp")
    assert stamps(environment) == ["webapp"]


def test_scripts_name_the_folder_in_which_they_stand(environment: Environment) -> None:
    start(environment)
    assert Path(environment.python).with_name("pip").read_text() == f"#!{environment.python}\n"


# Where set-up fails or is cut short


OFFLINE = Outcome(1, "WARNING: Retrying (Retry(total=0)) after connection broken by 'NewConnectionError(...)'")
NO_NETWORK = "there is no network, or the package index cannot be reached; mend that and start again."


def test_a_failed_install_leaves_nothing_and_gives_the_reason(environment: Environment) -> None:
    with pytest.raises(SetupError, match=r"could not install its packages: the disk is full; mend that"):
        start(environment, pip=Outcome(1, "ERROR: [Errno 28] No space left on device"))
    assert folders(environment) == []


@pytest.mark.parametrize("change", ["another lock", "another Python"])
def test_without_a_network_the_last_set_up_goes_on_although_it_is_out_of_date(
    environment: Environment, change: str
) -> None:
    start(environment)
    if change == "another lock":
        Path(environment.lock("webapp")).write_text("webapp-package==2.0 --hash=sha256:00\n")
    else:
        environment = Environment(environment.root, "cpython 3.13 .cpython-313-x86_64-linux-gnu.so")
    machine = Computer(pip=OFFLINE)
    assert prepare(environment, "webapp", machine) is False
    assert machine.said[-2:] == [
        f"Ropewright: could not install its packages: {NO_NETWORK}",
        "Starting with what the last set-up made.",
    ]
    assert (folders(environment), stamps(environment)) == ([".venv"], ["webapp"])


def test_the_tests_cannot_start_with_what_was_set_up_for_the_app(environment: Environment) -> None:
    start(environment)
    with pytest.raises(SetupError):
        start(environment, "tests", pip=OFFLINE)
    assert start(environment).ran == []


class Killed(BaseException):
    """From here on nothing that set-up tries is done."""


class Cut:
    """Counts what set-up changes on the disk, and from one of these changes on lets none of them happen."""

    def __init__(self, monkeypatch: pytest.MonkeyPatch, last: int) -> None:
        self.left = last
        for place, name in (
            (os, "rename"),
            (os, "remove"),
            (shutil, "rmtree"),
            (Computer, "run"),
            (Environment, "stamp"),
            (bootstrap, "relocate"),
        ):
            monkeypatch.setattr(place, name, self.counted(getattr(place, name)))

    def counted(self, change):
        def step(*given, **named):
            self.left -= 1
            if self.left < 0:
                raise Killed
            return change(*given, **named)

        return step


def killed_at(environment: Environment, step: int) -> bool:
    """Whether setting the tests up was cut short at that step; it is over before the last ones."""
    with pytest.MonkeyPatch.context() as patches:
        Cut(patches, step)
        try:
            start(environment, "tests")
        except Killed:
            return True
    return False


@pytest.mark.parametrize("before", [(), ("webapp",), ("tests",)], ids=["first start", "tests after the app", "update"])
def test_a_set_up_killed_at_any_step_is_healed_by_the_next_start(tmp_path: Path, before: tuple[str, ...]) -> None:
    for step in itertools.count():
        environment = clone(tmp_path / str(step))
        for program in before:
            start(environment, program)
        if before == ("tests",):
            Path(environment.lock("tests")).write_text("tests-package==2.0 --hash=sha256:00\n")
        if not killed_at(environment, step):
            break
        if before:
            prepare(environment, before[0], Computer(pip=OFFLINE))  # Without a network it starts all the same.
        start(environment, "tests")
        assert (folders(environment), stamps(environment)) == ([".venv"], ["tests", "webapp"])
        assert Path(environment.python).with_name("pip").read_text() == f"#!{environment.python}\n"
    assert step > 8


def test_where_the_folder_is_in_use_it_stays_and_that_is_said(
    environment: Environment, monkeypatch: pytest.MonkeyPatch
) -> None:
    start(environment)
    Path(environment.lock("webapp")).write_text("webapp-package==2.0 --hash=sha256:00\n")

    def refused(*_: str) -> None:
        raise PermissionError(13, "Access is denied")

    monkeypatch.setattr(os, "rename", refused)
    machine = start(environment)
    assert machine.said[-2:] == [
        "Ropewright: could not put the new .venv in place (Access is denied); "
        "stop what runs from .venv and start again.",
        "Starting with what the last set-up made.",
    ]


# A Python that went or moved


def test_a_python_that_was_uninstalled_is_noticed(environment: Environment) -> None:
    start(environment)
    shutil.rmtree(Path(environment.python).parent)
    machine = start(environment)
    assert machine.ran[0] == f"{bootstrap.base_python()} -m venv --upgrade --without-pip {environment.folder}"
    assert os.path.exists(environment.python)


def test_real_folders_can_be_moved_and_follow_their_python(tmp_path: Path) -> None:
    environment, machine = clone(tmp_path), Machine()
    successor = environment.successor()
    assert machine.run((bootstrap.base_python(), "-m", "venv", "--without-pip", successor.folder)).code == 0
    script = Path(successor.python).with_name("where")
    script.write_text(f"#!{successor.python}\nimport sys; print(sys.prefix)\n")
    script.chmod(0o755)
    bootstrap.relocate(successor, environment.folder)
    successor.stamp("webapp")
    heal(environment, machine)
    where = str(Path(environment.python).with_name("where"))
    assert machine.run((where,)).output.strip() == environment.folder
    python = Path(environment.python)
    python.unlink()
    python.symlink_to("/nowhere/python3")
    heal(environment, machine)
    assert machine.run((where,)).output.strip() == environment.folder


def test_a_second_start_at_the_same_time_waits_and_then_builds_nothing(environment: Environment) -> None:
    first, second = Computer(), Computer()
    waits = threading.Event()
    second.say = lambda line: (second.said.append(line), waits.set())
    other = threading.Thread(target=prepare, args=(environment, "webapp", second))
    with only_one(environment.root, first) as lock:
        other.start()
        assert waits.wait(20)
        build(environment, "webapp", first, lock)
    other.join(20)
    assert second.said == ["Another start is setting Ropewright up; waiting for it …"]
    assert second.ran == []


# Sentences


@pytest.mark.parametrize("version", [(3, 11, 0), (3, 13, 5), (3, 15, 9)])
def test_pythons_between_the_bounds_are_let_in(version: tuple[int, int, int]) -> None:
    check_version(version, "webapp")


@pytest.mark.parametrize("version", [(3, 6, 15), (3, 10, 13), (3, 16, 0), (4, 0, 0)])
def test_other_pythons_are_told_which_ones_work(version: tuple[int, int, int]) -> None:
    with pytest.raises(SetupError) as refusal:
        check_version(version, "tests")
    assert str(refusal.value) == (
        f"this is Python {version[0]}.{version[1]}.{version[2]}, and it needs one from 3.11 to 3.15; "
        "install one of these and start with it, for instance: python3.13 -m tests"
    )


@pytest.mark.parametrize(
    ("printed", "sentence"),
    [
        (
            "WARNING: Retrying (Retry(total=0)) after connection broken by 'NewConnectionError(...)': /alembic/\n"
            "ERROR: No matching distribution found for alembic==1.20.1",
            "there is no network, or the package index cannot be reached; mend that and start again.",
        ),
        (
            "ERROR: Could not install packages due to an OSError: [Errno 30] Read-only file system: '.venv'",
            "the disk cannot be written to; mend that and start again.",
        ),
        (
            "connection broken by 'SSLError(SSLCertVerificationError(1, '[SSL] certificate verify failed'))'",
            "the package index is reached over a connection that cannot be trusted; mend that and start again.",
        ),
        (
            "ERROR: THESE PACKAGES DO NOT MATCH THE HASHES FROM THE REQUIREMENTS FILE.\n    Expected sha256 00\n",
            "ERROR: THESE PACKAGES DO NOT MATCH THE HASHES FROM THE REQUIREMENTS FILE.",
        ),
        ("first line\n\n  last line\n\n", "last line"),
        ("", "it ended with status 1"),
    ],
)
def test_the_reason_of_a_failure_is_one_line_of_what_was_printed(printed: str, sentence: str) -> None:
    assert reason(Outcome(1, printed)) == sentence


def test_a_folder_that_cannot_be_written_to_is_named(tmp_path: Path) -> None:
    with pytest.raises(SetupError) as refusal, only_one(str(tmp_path / "gone"), Computer()):
        pass
    assert str(refusal.value) == (
        f"set-up cannot write to {tmp_path / 'gone'} (No such file or directory); "
        "put the folder where you may write and start again."
    )


def test_a_refusal_is_one_line_on_stderr_and_status_2() -> None:
    code = "import sys; sys.version_info = (3, 8, 18); from webapp import bootstrap; bootstrap.ensure('webapp')"
    done = subprocess.run([sys.executable, "-c", code], cwd=bootstrap.ROOT, capture_output=True, text=True)
    assert (done.returncode, done.stdout, done.stderr.count("\n")) == (2, "", 1)
    assert done.stderr.startswith("Ropewright: this is Python 3.8.18, ")


# What the system has to bring


APT = "env DEBIAN_FRONTEND=noninteractive apt-get -q -y -o DPkg::Lock::Timeout=60"
PANGO_PACKAGES = "libpango-1.0-0 libpangoft2-1.0-0 libharfbuzz-subset0"


def test_root_on_debian_gets_pango_without_a_question() -> None:
    machine = without_pango()
    assert provide(PANGO, machine)
    assert machine.ran == [f"{APT} update", f"{APT} install --no-install-recommends {PANGO_PACKAGES}"]
    assert (machine.asked, machine.said) == ([], ["Installing Pango with apt …"])


def test_others_on_debian_are_shown_the_command_and_asked() -> None:
    machine = without_pango(root=False, answer=True)
    assert provide(PANGO, machine)
    assert machine.asked == [
        f"Pango is missing. Run this now? sudo apt-get install --no-install-recommends {PANGO_PACKAGES}"
    ]
    assert machine.ran == [f"sudo {APT} update", f"sudo {APT} install --no-install-recommends {PANGO_PACKAGES}"]


@pytest.mark.parametrize("tools", [("apt-get", "sudo"), ("apt-get",)], ids=["who says no", "without sudo"])
def test_others_on_debian_are_told_what_to_run(tools: tuple[str, ...]) -> None:
    machine = without_pango(root=False, tools=tools)
    assert not provide(PANGO, machine)
    assert machine.ran == []
    assert machine.said == [
        "Pango is missing: everything works but printing booklets as PDF. "
        f"To install it, run: sudo apt-get install --no-install-recommends {PANGO_PACKAGES}"
    ]


def test_without_network_apt_gets_one_sentence_and_set_up_goes_on(environment: Environment) -> None:
    machine = without_pango(apt=Outcome(100, "E: Unable to fetch some archives"))
    prepare(environment, "webapp", machine)
    assert machine.said[:3] == [
        "Installing Pango with apt …",
        "apt could not install Pango; is there a network?",
        "Pango is missing: everything works but printing booklets as PDF. "
        f"To install it, run: apt-get install --no-install-recommends {PANGO_PACKAGES}",
    ]
    assert stamps(environment) == ["webapp"]


@pytest.mark.parametrize(
    ("platform", "tools", "sentence"),
    [
        ("linux", ("dnf",), "To install it, run: sudo dnf install pango"),
        ("linux", ("pacman",), "To install it, run: sudo pacman -S pango"),
        ("linux", (), "Install it with your system's package manager."),
        ("darwin", (), "To install it, run: brew install pango"),
        (
            "win32",
            (),
            "To install it, run: pacman -S mingw-w64-ucrt-x86_64-pango (in the UCRT64 window of MSYS2)",
        ),
    ],
)
def test_every_system_has_its_command(platform: str, tools: tuple[str, ...], sentence: str) -> None:
    assert advice(PANGO, Computer(platform=platform, tools=tools, root=False)) == sentence


def test_windows_finds_pango_in_the_folder_of_msys2() -> None:
    machine = Computer(platform="win32", missing={"C:\\msys64\\mingw64\\bin\\libpango-1.0-0.dll"})
    assert provide(PANGO, machine)


def test_a_mac_finds_pango_where_homebrew_keeps_it_with_any_python() -> None:
    assert provide(PANGO, Computer(platform="darwin", missing={"libpango-1.0.dylib"}))
    homebrew = {f"{folder}libpango-1.0.dylib" for folder in ("", "/opt/homebrew/lib/", "/usr/local/lib/")}
    assert not provide(PANGO, Computer(platform="darwin", missing=homebrew))
    assert library_folders("darwin", {}) == {"DYLD_FALLBACK_LIBRARY_PATH": "/opt/homebrew/lib:/usr/local/lib"}
    assert library_folders("darwin", {"DYLD_FALLBACK_LIBRARY_PATH": "/opt/local/lib"}) == {
        "DYLD_FALLBACK_LIBRARY_PATH": "/opt/homebrew/lib:/usr/local/lib:/opt/local/lib"
    }
    assert library_folders("linux", {}) == library_folders("win32", {}) == {}


def test_a_python_without_venv_gets_debians_package() -> None:
    machine = Computer(missing={"ensurepip"})
    provide_pip(machine)
    assert machine.ran[-1] == f"{APT} install --no-install-recommends {VENV}"


@pytest.mark.parametrize(
    ("tools", "sentence"),
    [
        (
            ("apt-get",),
            "this Python comes without venv; run this, then start again: "
            f"sudo apt-get install --no-install-recommends {VENV}",
        ),
        (("dnf",), "this Python comes without ensurepip, so it cannot set Ropewright up; use another Python."),
    ],
)
def test_a_python_without_venv_cannot_go_on(environment: Environment, tools: tuple[str, ...], sentence: str) -> None:
    machine = Computer(missing={"ensurepip"}, root=False, tools=tools)
    with pytest.raises(SetupError) as refusal:
        prepare(environment, "webapp", machine)
    assert str(refusal.value) == sentence
    assert not os.path.exists(environment.folder)


def test_the_tests_bring_debians_chromium_and_the_app_does_not(environment: Environment) -> None:
    assert start(environment, missing={"chromium"}).ran == commands(environment, "webapp")
    assert start(environment, "tests", missing={"chromium"}).ran == [
        *commands(environment, "webapp", "tests"),
        f"{APT} update",
        f"{APT} install --no-install-recommends chromium",
    ]


def test_the_tests_bring_debians_libatomic_for_the_driver_of_the_browser(environment: Environment) -> None:
    assert start(environment, "tests", missing={"libatomic.so.1"}).ran[-2:] == [
        f"{APT} update",
        f"{APT} install --no-install-recommends libatomic1",
    ]
    assert provide(DRIVER, Computer(platform="darwin", missing={"libatomic.so.1"}))


def test_without_chromium_the_tests_say_what_will_fail() -> None:
    machine = Computer(tools=("pacman",), root=False)
    assert not provide(CHROMIUM, machine)
    assert machine.said == [
        "Chromium is missing: the tests that look at pages will fail. To install it, run: sudo pacman -S chromium"
    ]
