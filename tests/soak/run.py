"""Attacks for as long as one says, and one table of what came of them: python3 -m tests soak [MINUTES] [NAME…]."""

from __future__ import annotations

import logging
import sys
import tempfile
import time
from collections.abc import Callable
from pathlib import Path
from random import Random

from tests.soak import attacks
from tests.soak.attacks import Outcome

ATTACKS: dict[str, Callable[[Path, Random], Outcome]] = {
    "kills": attacks.kill_once,
    "hostile requests": attacks.ask_hostile,
    "storage faults": attacks.fail_on_disk,
    "clocks": attacks.turn_the_clock,
    "zips": attacks.break_a_zip,
    "photographs": attacks.break_a_photograph,
}
USAGE = f"python3 -m tests soak [MINUTES] [NAME…]; names: {', '.join(ATTACKS)}"


def main(arguments: list[str]) -> int:
    """Exit status: 0 where nothing was lost, unsound or answered with an error of ours."""
    minutes, names = 2.0, [*ATTACKS]
    if arguments and arguments[0].replace(".", "", 1).isdigit():
        minutes, arguments = float(arguments[0]), arguments[1:]
    if arguments:
        names = [name for name in ATTACKS if any(name.startswith(asked) for asked in arguments)]
    if not names:
        print(USAGE)
        return 2
    logging.disable(logging.CRITICAL)  # what is refused on purpose is no news
    print(f"{'attack':20}{'tried':>9}{'of':>5}  wrong", flush=True)
    wrong = 0
    for name in names:
        outcome = _for_a_while(ATTACKS[name], minutes * 60 / len(names))
        wrong += len(outcome.wrong)
        print(f"{name:20}{outcome.tried:9,}{outcome.rounds:5}  {len(outcome.wrong)}", flush=True)
        for sentence in outcome.wrong[:10]:
            print(f"    {sentence[:300]}", flush=True)
    return 1 if wrong else 0


def _for_a_while(attack: Callable[[Path, Random], Outcome], seconds: float) -> Outcome:
    chance, total, end = Random(), Outcome(), time.monotonic() + seconds
    while total.rounds == 0 or time.monotonic() < end:
        with tempfile.TemporaryDirectory(prefix="ropewright-soak-") as folder:
            total = total.with_another(attack(Path(folder), chance))
    return total


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
