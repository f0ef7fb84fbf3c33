"""Plants small faults, one at a time, in a copy of the tree, and asks whether the tests of that
room find them. Run by hand:

``.venv/bin/python tests/bench/mutants.py rules=40 drawing=40 --seed one --workers 2``

A fault is a changed constant, a comparison turned round, plus for minus, two arguments swapped,
nothing returned, ``not`` dropped, an index off by one, least for most, another unit. None stands in
a docstring, an annotation or a message. The same room, count and seed plant the same faults. Those
that nobody can find stand in ``mutating/equivalent.csv`` with the reason. Exit status 1 when one
survives.
"""

from __future__ import annotations

import argparse
import itertools
import os
import re
import shutil
import signal
import subprocess
import sys
import tempfile
import time
from collections import Counter
from concurrent.futures import ThreadPoolExecutor
from dataclasses import dataclass
from pathlib import Path
from queue import Queue
from random import Random

sys.path.insert(0, str(Path(__file__).resolve().parent))

from mutating.rooms import PACKAGE, ROOT, TESTS, equivalent, likeliest, room
from mutating.sites import Site, sites

COPIED = (
    "fireplace_calc",
    "tests",
    "data",
    "notebooks",
    "pyproject.toml",
    "DEVELOPERS.md",
    "NOMENCLATURE.md",
    "README.md",
)
LONGEST = 300.0
"""A fault that makes the tests run longer is found. [s]"""
OPTIONS = (
    "-x",
    "-q",
    "--no-header",
    "--tb=line",
    "-o",
    "addopts=",
    "-p",
    "no:cacheprovider",
    "--doctest-modules",
    "--hypothesis-seed=0",
)
_stamp = itertools.count(1)


@dataclass(frozen=True, slots=True)
class Fault:
    """One planted fault and what became of it."""

    path: Path
    site: Site

    @property
    def lines(self) -> tuple[str, str]:
        """The line before and after."""
        before = self.path.read_text().splitlines()[self.site.line - 1]
        return before, self.site.planted(before)

    @property
    def key(self) -> tuple[str, str, str]:
        """As in the table of equivalents."""
        before, after = self.lines
        return str(self.path.relative_to(PACKAGE)), before.strip(), after.strip()

    @property
    def where(self) -> str:
        """File, line and column, by which it can be asked for again."""
        return (
            f"{self.path.relative_to(PACKAGE)}:{self.site.line}:{self.site.start}:{self.site.new}"
        )


def modules(name: str) -> list[Path]:
    """Python files of a room."""
    return [path for path in sorted(PACKAGE.rglob("*.py")) if room(path) == name]


def chosen(name: str, count: int, seed: str) -> list[Fault]:
    """Faults for one room: a line by lot, then one of its faults by lot, so that no table of
    figures has all of them.
    """
    dice = Random(f"{seed}/{name}")
    by_line: dict[tuple[Path, int], list[Site]] = {}
    for path in modules(name):
        for site in sites(path.read_text()):
            by_line.setdefault((path, site.line), []).append(site)
    faults = [Fault(path, dice.choice(found)) for (path, _), found in by_line.items()]
    dice.shuffle(faults)
    return [fault for fault in faults if fault.key not in equivalent()][:count]


def again(where: str) -> Fault:
    """A fault by its name."""
    path, line, start, new = where.split(":", 3)
    module = PACKAGE / path
    return Fault(
        module,
        next(
            s
            for s in sites(module.read_text())
            if (s.line, s.start, s.new) == (int(line), int(start), new)
        ),
    )


def copy() -> Path:
    """A tree of its own to plant faults in."""
    tree = Path(tempfile.mkdtemp(prefix="mutants-"))
    for name in COPIED:
        source = ROOT / name
        if source.is_dir():
            shutil.copytree(
                source,
                tree / name,
                ignore=shutil.ignore_patterns("__pycache__", ".ipynb_checkpoints"),
            )
        elif source.exists():
            shutil.copy(source, tree / name)
    subprocess.run(
        [sys.executable, "-m", "compileall", "-q", "fireplace_calc", "tests"], cwd=tree, check=False
    )
    return tree


def run(tree: Path, files: list[str]) -> tuple[bool, str]:
    """Whether tests fail, and the first that does."""
    environment = {
        **os.environ,
        "PYTHONPATH": str(tree),
        "PYTHONDONTWRITEBYTECODE": "1",
        "OMP_NUM_THREADS": "1",
        "CI": "1",
    }
    started = subprocess.Popen(
        [sys.executable, "-m", "pytest", *OPTIONS, *files],
        cwd=tree,
        env=environment,
        text=True,
        start_new_session=True,
        stdout=subprocess.PIPE,
        stderr=subprocess.STDOUT,
    )
    try:
        said, _ = started.communicate(timeout=LONGEST)
    except subprocess.TimeoutExpired:
        os.killpg(started.pid, signal.SIGKILL)
        started.communicate()
        return True, "took too long"
    first = re.search(r"^(?:FAILED|ERROR) (\S+)", said, re.MULTILINE)
    return started.returncode != 0, first[1] if first else said[
        -200:
    ].strip() if started.returncode else ""


def tried(fault: Fault, trees: Queue) -> tuple[Fault, bool, str, float]:
    """Plant, test, and put right again."""
    tree, start = trees.get(), time.monotonic()
    target = tree / fault.path.relative_to(ROOT)
    whole = target.read_text()
    try:
        lines = whole.splitlines()
        lines[fault.site.line - 1] = fault.lines[1]
        target.write_text("\n".join(lines) + "\n")
        os.utime(target, (next(_stamp), next(_stamp)))  # no compiled file is that old
        found, by = run(tree, [str(target.relative_to(tree)), *likeliest(fault.path)])
    finally:
        target.write_text(whole)
        trees.put(tree)
    return fault, found, by, time.monotonic() - start


def main() -> int:
    parser = argparse.ArgumentParser(
        description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter
    )
    parser.add_argument(
        "rooms", nargs="*", metavar="ROOM=N", help=f"of {', '.join(TESTS)}; or faults as printed"
    )
    parser.add_argument("--seed", default="one")
    parser.add_argument("--workers", type=int, default=1)
    parser.add_argument(
        "--only", nargs="*", default=[], metavar="FAULT", help="these again, as printed"
    )
    parser.add_argument("--list", action="store_true", help="plant nothing, only say what would be")
    asked = parser.parse_args()
    faults = [again(where) for where in asked.only]
    for name, _, count in (one.partition("=") for one in asked.rooms):
        faults += chosen(name, int(count or 20), asked.seed)
    if asked.list:
        for fault in faults:
            print(fault.where, *fault.lines, sep="\n")
        return 0
    trees: Queue = Queue()
    made = [copy() for _ in range(asked.workers)]
    for tree in made:
        trees.put(tree)
    survived, tally = 0, Counter()
    try:
        with ThreadPoolExecutor(asked.workers) as pool:
            for fault, found, by, took in pool.map(lambda fault: tried(fault, trees), faults):
                print(
                    f"{'killed' if found else 'SURVIVED'} {fault.where}  [{fault.site.kind}, {took:.1f} s] {by}",
                    flush=True,
                )
                if not found:
                    print(
                        "  -" + fault.lines[0].strip() + "\n  +" + fault.lines[1].strip(),
                        flush=True,
                    )
                survived += not found
                tally[room(fault.path), found] += 1
    finally:
        for tree in made:
            shutil.rmtree(tree, ignore_errors=True)
    for name in sorted({name for name, _ in tally}):
        print(f"{name}: {tally[name, True]} of {tally[name, True] + tally[name, False]} killed")
    print(f"all: {len(faults) - survived} of {len(faults)} killed, {survived} survived")
    return 1 if survived else 0


if __name__ == "__main__":
    sys.exit(main())
