"""Starts Ropewright: python3 -m webapp."""

import sys

if sys.version_info < (3, 6):  # These cannot read bootstrap.py, which says it better.
    sys.stderr.write("Ropewright needs Python 3.11 or newer: try python3 -m webapp\n")
    sys.exit(2)

from webapp import bootstrap

bootstrap.ensure("webapp")

from webapp.commands import main  # noqa: E402 - its packages are only there now

sys.exit(main(sys.argv[1:]))
