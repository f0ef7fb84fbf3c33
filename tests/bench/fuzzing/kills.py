"""A child that writes without end is killed at a random moment: every file is then whole, the old
one or the new one.
"""

from __future__ import annotations

import os
import signal
import subprocess
import sys
import tempfile
import time
from itertools import cycle
from pathlib import Path

from fuzzing.chance import ROOT, chance
from fuzzing.designs import sure
from fuzzing.writers import JOBS, all_held, two

TESTS = ROOT / "tests"


def child(job: str, folder: str) -> None:
    """Write until killed; a line goes out after the first two rounds, when every file is there in
    both lengths.
    """
    out = sys.stdout
    for number, _ in enumerate(JOBS[job][0](Path(folder), cycle(two()))):
        if number == 1:
            print("begun", file=out, flush=True)


def try_one(seed: str, number: int) -> str:
    """One child, one kill."""
    dice, job = chance(seed, number), sorted(JOBS)[number % len(JOBS)]
    with tempfile.TemporaryDirectory() as folder:
        code = f"from fuzzing.kills import child; child({job!r}, {folder!r})"
        paths = os.pathsep.join(map(str, (TESTS / "bench", TESTS, ROOT)))
        started = subprocess.Popen(
            [sys.executable, "-c", code],
            stdout=subprocess.PIPE,
            stderr=subprocess.PIPE,
            env={**os.environ, "PYTHONPATH": paths},
        )
        try:
            begun = started.stdout.readline()
            sure(
                begun == b"begun\n",
                f"the child did not begin: {job}",
                begun or started.stderr.read()[-500:],
            )
            time.sleep(dice.uniform(0, JOBS[job][1]))
        finally:
            started.send_signal(signal.SIGKILL)
            started.communicate()
        beside = all_held(Path(folder), job)
    return f"{job}, whole" + (", a file beside it" if beside else "")
