"""Whoever writes is killed at a random moment, mostly while a file is open: every file is then
whole, the old one or the new one.
"""

from __future__ import annotations

import os
import select
import shutil
import signal
import sys
import tempfile
import time
from itertools import cycle
from pathlib import Path

from fuzzing.chance import chance
from fuzzing.designs import sure
from fuzzing.writers import JOBS, all_held, job_of, old_files, two

LONGEST = 600.0
"""Until a child that is killed while it writes has opened its file. [s]"""
MOMENT = 0.02
"""From then on it lives so much longer at most: about as long as a file is written. [s]"""
FILES = 4
"""The file that it is killed at is one of the first so many. [-]"""


def child(job: str, folder: Path, opened: int) -> None:
    """Write until killed; a letter goes out whenever a new file is opened."""

    def told(event: str, what: tuple) -> None:
        if event == "open" and str(what[0]).endswith(".tmp"):
            os.write(opened, b"w")

    sys.addaudithook(told)
    designs = two()
    for _ in JOBS[job][0](folder, cycle((designs[1], designs[0]))):
        pass


def try_one(seed: str, number: int) -> str:
    """One child, one kill; every fourth at any moment, the others while it writes."""
    dice = chance(seed, number)
    job = job_of(dice, number)
    old = old_files(job)
    with tempfile.TemporaryDirectory() as place:
        folder = Path(place) / "job"
        shutil.copytree(old, folder)
        heard, opened = os.pipe()
        started = os.fork()
        if not started:
            os.close(heard)
            try:
                child(job, folder, opened)
            finally:
                os._exit(1)
        os.close(opened)
        ended = 0
        try:
            if dice.random() < 0.25:
                time.sleep(dice.uniform(0, JOBS[job][1]))
            else:
                for _ in range(dice.randint(1, FILES)):
                    there = select.select([heard], [], [], LONGEST)[0]
                    sure(bool(there and os.read(heard, 1)), f"the child wrote nothing: {job}")
                time.sleep(dice.uniform(0, MOMENT))
        finally:
            ended = os.waitpid(started, os.WNOHANG)[0]
            if not ended:
                os.kill(started, signal.SIGKILL)
                os.waitpid(started, 0)
            os.close(heard)
        sure(not ended, f"the child ended by itself: {job}")
        beside = all_held(folder, job)
    return f"{job}, whole" + (", a file beside it" if beside else "")
