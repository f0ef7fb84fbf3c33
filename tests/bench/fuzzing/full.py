"""A disk that fills up at a random moment of writing: every file is then whole, the old one or the
new one, and nothing is left beside them.

The disk is a small one of its own, which ``SMALL_DISK`` names: a file on it takes all but a random
rest of its room. As an ordinary user of Linux, in a name space of one's own::

    unshare -rm sh -c 'mount -t tmpfs -o size=32m tmpfs /mnt && SMALL_DISK=/mnt
    .venv/bin/python tests/bench/fuzz.py full=500'
"""

from __future__ import annotations

import os
import shutil
import tempfile
from contextlib import redirect_stderr
from io import StringIO
from itertools import cycle
from pathlib import Path

from fireplace_calc.base.units import InputError
from fuzzing.chance import chance
from fuzzing.designs import sure
from fuzzing.writers import JOBS, all_held, job_of, old_files, two

DISK = "SMALL_DISK"
LARGEST = 256_000_000
"""Free bytes of a disk that is taken for a small one. [-]"""


def _free(disk: Path) -> int:
    room = os.statvfs(disk)
    return room.f_bavail * room.f_frsize


def try_one(seed: str, number: int) -> str:
    """One kind of file, there already; then the disk fills up while it is written again."""
    disk = Path(os.environ.get(DISK, ""))
    sure(bool(os.environ.get(DISK)), f"{DISK} names no disk", "see the text of this module")
    sure(_free(disk) < LARGEST, f"{disk} is no small disk", _free(disk))
    dice = chance(seed, number)
    job = job_of(dice, number)
    ballast = disk / "ballast"
    with tempfile.TemporaryDirectory(dir=disk) as place:
        folder, before = Path(place) / "job", _free(disk)
        shutil.copytree(old_files(job), folder)
        writing = JOBS[job][0](folder, cycle((two()[1], two()[0])))
        taken = before - _free(disk)
        sure(taken > 0, f"{job} wrote nothing", taken)
        left = int(dice.random() ** 2 * taken)
        said = StringIO()
        try:
            with ballast.open("wb") as heavy, redirect_stderr(said):
                os.posix_fallocate(heavy.fileno(), 0, max(_free(disk) - left, 1))
                try:
                    next(writing)
                except (InputError, OSError) as refused:
                    said.write(str(refused))
        finally:
            ballast.unlink()
        sure(not all_held(folder, job), f"a hidden file left by {job}")
    return f"{job}, {'refused' if 'cannot' in said.getvalue() else 'written'}, whole"
