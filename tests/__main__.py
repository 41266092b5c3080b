"""Runs every check: python3 -m tests. "bench" measures, "soak" attacks, "laws" holds them by new examples, "bare" tries a bare Debian, "pictures" draws those that are shipped and those of the README, other arguments go to pytest."""

import os
import subprocess
import sys

from webapp import bootstrap

AT_ONCE = str(min(4, (os.cpu_count() or 1) + 1))  # one more than cores: browsers and servers are often waited for
CHECKS = (
    ("ruff", "check", "."),
    ("ruff", "format", "--check", "."),
    ("mypy",),
    # files in the order in which they stand: by numbers of tests, the longest of the browser would come last, alone
    ("pytest", "-n", AT_ONCE, "--dist", "loadfile", "--no-loadscope-reorder"),
)


def main(arguments: "list[str]") -> int:
    """Exit status: 0 when all that was asked for passed."""
    os.chdir(bootstrap.ROOT)
    os.environ.pop("PYTHONDONTWRITEBYTECODE", None)  # or every server and worker of a test compiles the program anew
    if arguments[:1] == ["bench"]:
        from tests.bench import run

        return run.main(arguments[1:])
    if arguments[:1] == ["soak"]:
        from tests.soak import run as soak

        return soak.main(arguments[1:])
    if arguments == ["laws"]:
        return call(
            "pytest", "-n", AT_ONCE, "--dist", "loadfile", "-m", "hypothesis", "--hypothesis-profile", "searching"
        )
    if arguments == ["licences"]:
        from tests import licences

        return licences.main()
    if arguments == ["pictures"]:
        from tests import readme_pictures, shipped

        return shipped.main() or readme_pictures.main()
    if arguments == ["bare"]:
        from tests import bare

        return bare.main()
    if arguments:
        print("Only pytest, with these arguments; python3 -m tests alone runs ruff and mypy too.", flush=True)
        return call("pytest", *arguments)
    failed = [" ".join(check[:2]) if check[0] == "ruff" else check[0] for check in CHECKS if call(*check)]
    if failed:
        print("Failed: {}.".format(", ".join(failed)), flush=True)
    return 1 if failed else 0


def call(*command: str) -> int:
    print("==", *command, flush=True)
    return subprocess.call((sys.executable, "-m") + command)


if __name__ == "__main__":
    bootstrap.ensure("tests")
    sys.exit(main(sys.argv[1:]))
