"""Plants small faults, one at a time, in a copy of the tree, and asks whether the tests of that
room find them. Run by hand:

``.venv/bin/python tests/bench/mutants.py rules=40 drawing=40 --seed one --workers 2``

A fault is a changed constant, a comparison turned round, plus for minus, two arguments swapped,
nothing returned, ``not`` dropped, an index off by one, least for most, another unit. None stands in
a docstring, an annotation or a message. The same room, count and seed plant the same faults. Those
that nobody can find stand in ``mutating/equivalent.csv`` with the reason. Exit status 1 when one
is not killed. Tests that found a fault run once more at the end without one; where one fails even so,
it found nothing, and its faults are counted apart. Tests that are stopped after ten minutes decide nothing, and the fault is
counted apart too. Tests that only hold a figure to what it was run last, and what they alone find is
told; ``--sooner`` has them run right after those that import the module by name, which takes half the
time and tells nothing of that.
``--wide`` lets survivors meet every other unit test; ``--unit`` leaves out
what is marked ``whole``, which is quicker and the harder bar.
"""

from __future__ import annotations

import argparse
import itertools
import multiprocessing
import os
import re
import shutil
import signal
import subprocess
import sys
import tempfile
import time
from collections import Counter
from collections.abc import Iterator
from contextlib import suppress
from dataclasses import dataclass
from importlib import import_module
from pathlib import Path
from random import Random

sys.path.insert(0, str(Path(__file__).resolve().parent))

from mutating.rooms import AS_IT_WAS, PACKAGE, ROOT, TESTS, equivalent, everywhere, likeliest, room
from mutating.sites import Site, sites

COPIED = (
    *("fireplace_calc", "tests", "data", "notebooks", "docs", ".ci"),
    *(
        "pyproject.toml",
        "requirements.txt",
        "CITATION.cff",
        "LICENSE",
        ".gitignore",
        "*.md",
        "conftest.py",
    ),
)
LIBRARIES = ("numpy", "pytest", "hypothesis", "shapely.ops", "matplotlib.figure", "ipywidgets")
"""Loaded once, before a fault is planted; the package itself is loaded anew for each."""
LONGEST = 600
"""Tests that run longer with a fault in are stopped, and nothing is decided: the fault may make
them endless, or the machine may be busy. [s]
"""
AT_ONCE = 12
"""So many tests that found something are asked again in one process, so that none runs so long. [-]"""
ENDS = KILLED, SURVIVED, UNDECIDED = "killed", "SURVIVED", "NOT DECIDED"
OPTIONS = (
    *("-x", "-q", "--no-header", "--tb=line", "-o", "addopts=", "-p", "no:cacheprovider"),
    *("-p", "no:nbval"),
    *("--doctest-modules", "--hypothesis-seed=0"),
)
UNIT_ONLY = ("-m", "unit or made")
"""What runs with every change, beside notebooks and browsers: nothing marked ``whole``."""
_stamp = itertools.count(1)


@dataclass(frozen=True, slots=True)
class Fault:
    """One fault that can be planted: where, what, and the line as it stands."""

    path: Path
    site: Site
    before: str

    @property
    def after(self) -> str:
        """The line with the fault in it."""
        return self.site.planted(self.before)

    @property
    def key(self) -> tuple[str, str, str]:
        """As in the table of faults that nobody can find."""
        return str(self.path.relative_to(PACKAGE)), self.before.strip(), self.after.strip()

    @property
    def where(self) -> str:
        """File, line, column and what is put there, by which it can be asked for again."""
        place = f"{self.path.relative_to(PACKAGE)}:{self.site.line}:{self.site.start}"
        return f"{place}:{self.site.new}"


def faults_of(path: Path) -> Iterator[Fault]:
    """Every fault that can be planted in a module, in order of lines."""
    text = path.read_text()
    lines = text.splitlines()
    return (Fault(path, site, lines[site.line - 1]) for site in sites(text))


def chosen(name: str, count: int, seed: str, first: int = 0) -> list[Fault]:
    """Faults for one room: a line by lot, then one of its faults by lot, so that no table of
    figures has all of them.
    """
    dice = Random(f"{seed}/{name}")
    by_line: dict[tuple[Path, int], list[Fault]] = {}
    for path in sorted(PACKAGE.rglob("*.py")):
        if room(path) == name:
            for fault in faults_of(path):
                by_line.setdefault((path, fault.site.line), []).append(fault)
    drawn = [dice.choice(faults) for faults in by_line.values()]
    dice.shuffle(drawn)
    return [fault for fault in drawn if fault.key not in equivalent()][first : first + count]


def again(where: str) -> Fault:
    """A fault by its name."""
    return next(f for f in faults_of(PACKAGE / where.partition(":")[0]) if f.where == where)


def copy() -> Path:
    """A tree of its own to plant faults in; whoever edits the real one disturbs nothing."""
    tree = Path(tempfile.mkdtemp(prefix="planted-"))
    for source in (path for name in COPIED for path in ROOT.glob(name)):
        if source.is_dir():
            ignored = shutil.ignore_patterns("__pycache__", ".ipynb_checkpoints")
            shutil.copytree(source, tree / source.name, ignore=ignored)
        else:
            shutil.copy(source, tree / source.name)
    subprocess.run(
        [sys.executable, "-m", "compileall", "-q", "fireplace_calc", "tests"], cwd=tree, check=False
    )
    return tree


def found_is_enough() -> None:
    """No property test looks for a smaller example: that takes minutes, and nobody reads it."""
    hypothesis = import_module("hypothesis")
    phases = [phase for phase in hypothesis.Phase if phase.name not in ("shrink", "explain")]
    hypothesis.settings.register_profile("found is enough", phases=phases)
    hypothesis.settings.load_profile("found is enough")


def run(told: list[str], said: Path) -> str:
    """What tests say of a fault, in a process of their own that has the libraries already. What is
    told is files, and options of pytest's.
    """
    child = os.fork()
    if child == 0:
        with said.open("w") as out:
            os.dup2(out.fileno(), 1)
            os.dup2(out.fileno(), 2)
            signal.alarm(LONGEST)
            status = 1
            with suppress(BaseException):
                found_is_enough()
                options = [*OPTIONS, *(UNIT_ONLY if "UNIT_ONLY" in os.environ else ())]
                sys.argv[1:] = [*options, *told]  # what the tests' own settings look at
                status = int(import_module("pytest").main(sys.argv[1:]))
            sys.stdout.flush()
            os._exit(min(status, 1))
    ended = os.waitpid(child, 0)[1]
    if os.WIFSIGNALED(ended) and os.WTERMSIG(ended) == signal.SIGALRM:
        return UNDECIDED
    return KILLED if ended else SURVIVED


def first_failure(said: Path) -> str:
    """The test that found the fault."""
    text = said.read_text(errors="replace")
    found = re.search(r"^(?:FAILED|ERROR) (\S+)", text, re.MULTILINE)
    return found[1] if found else " ".join(text.split())[-100:]


def planted(fault: Fault, tree: Path, wide: bool) -> tuple[str, str, float]:
    """Plant, test, and put right again."""
    target, start = tree / fault.path.relative_to(ROOT), time.monotonic()
    whole = target.read_text()
    lines = whole.splitlines()
    lines[fault.site.line - 1] = fault.after
    try:
        target.write_text("\n".join(lines) + "\n")
        os.utime(target, (next(_stamp), next(_stamp)))  # no compiled file is that old
        files = [str(target.relative_to(tree)), *likeliest(fault.path, "SOONER" in os.environ)]
        found = run(files, tree / "said")
        if wide and found == SURVIVED:
            found = run(sorted(everywhere() - set(files)), tree / "said")
    finally:
        target.write_text(whole)
    by = first_failure(tree / "said") if found == KILLED else ""
    return found, by, time.monotonic() - start


def function(test: str) -> str:
    """Of the test that found a fault, without the case; of one that nobody could load, nothing."""
    named = re.match(r"(?:tests|fireplace_calc)/[^\[\s]+", test)
    return named[0] if named else ""


def red_anyway(tests: list[str], tree: Path) -> list[str]:
    """Of the tests that found something those that fail without a fault too: they found nothing."""
    functions = sorted({function(test) for test in tests} - {""})
    if not functions or run([*functions, "--maxfail=1000"], tree / "said") == SURVIVED:
        return []
    text = (tree / "said").read_text(errors="replace")
    names = re.findall(r"^(?:FAILED|ERROR) ([^\s\[]+)", text, re.MULTILINE)
    return names or functions  # where none is named, they do not run at all


def work(waiting: multiprocessing.Queue, done: multiprocessing.Queue, wide: bool) -> None:
    """Take faults until there is none left; then tell which tests of a list fail anyway."""
    tree = copy()
    os.chdir(tree)
    os.environ |= {"PYTHONPATH": str(tree), "OMP_NUM_THREADS": "1", "CI": "1"}
    sys.path[:0] = [str(tree), str(tree / "tests")]
    sys.dont_write_bytecode = True
    for name in LIBRARIES:
        import_module(name)
    try:
        for task in iter(waiting.get, None):
            if isinstance(task, Fault):
                done.put((task, *planted(task, tree, wide)))
            else:
                done.put(red_anyway(task, tree))
    finally:
        shutil.rmtree(tree, ignore_errors=True)


def tried(faults: list[Fault], workers: int, wide: bool) -> Iterator[tuple[Fault, str, str, float]]:
    """Every fault with what became of it, as it comes; at the end once more those that were found by
    nothing but tests that fail anyway, as not decided.
    """
    waiting, done = multiprocessing.Queue(), multiprocessing.Queue()
    for fault in faults:
        waiting.put(fault)
    at_work = [
        multiprocessing.Process(target=work, args=(waiting, done, wide)) for _ in range(workers)
    ]
    for one in at_work:
        one.start()
    found = []
    for _ in faults:
        found.append(done.get())
        yield found[-1]
    by = sorted({by for _, end, by, _ in found if end == KILLED})
    few = [by[n : n + AT_ONCE] for n in range(0, len(by), AT_ONCE)]
    for tests in few:
        waiting.put(tests)
    red = {name for _ in few for name in done.get()}
    for _ in at_work:
        waiting.put(None)
    for fault, end, test, took in found:
        if end == KILLED and function(test) in red:
            yield fault, UNDECIDED, f"{test} fails without a fault too", took
    for one in at_work:
        one.join()


def counted(ends: dict[str, int]) -> str:
    """How many faults ended how, in words."""
    words = f"{ends[KILLED]} of {sum(ends.values())} killed, {ends[SURVIVED]} survived"
    return words + (f", {ends[UNDECIDED]} not decided" if ends[UNDECIDED] else "")


def main() -> int:
    parser = argparse.ArgumentParser(
        description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter
    )
    parser.add_argument("rooms", nargs="*", metavar="ROOM=N", help=f"of {', '.join(TESTS)}")
    parser.add_argument("--seed", default="one")
    parser.add_argument("--first", type=int, default=0, metavar="N", help="leave out so many")
    parser.add_argument("--workers", type=int, default=1)
    parser.add_argument("--only", nargs="*", default=[], metavar="FAULT", help="these, as printed")
    parser.add_argument("--wide", action="store_true", help="survivors meet all unit tests")
    parser.add_argument("--unit", action="store_true", help="nothing marked whole")
    parser.add_argument("--list", action="store_true", help="plant nothing, say what would be")
    parser.add_argument("--sooner", action="store_true", help="what holds figures runs first")
    asked = parser.parse_args()
    os.environ |= {
        name: "1" for name, on in (("UNIT_ONLY", asked.unit), ("SOONER", asked.sooner)) if on
    }
    faults = [again(where) for where in asked.only]
    for name, _, count in (one.partition("=") for one in asked.rooms):
        faults += chosen(name, int(count or 20), asked.seed, asked.first)
    if asked.list:
        for fault in faults:
            print(fault.where, "  -" + fault.before, "  +" + fault.after, sep="\n")
        return 0
    ended: dict[Fault, tuple[str, str]] = {}
    for fault, found, by, took in tried(faults, asked.workers, asked.wide):
        print(f"{found} {fault.where}  [{fault.site.kind}, {took:.1f} s] {by}", flush=True)
        if found != KILLED:
            print(f"  -{fault.before.strip()}\n  +{fault.after.strip()}", flush=True)
        ended[fault] = found, by
    tally = Counter((room(fault.path), found) for fault, (found, _) in ended.items())
    by_itself = sum(found == KILLED and AS_IT_WAS in by for found, by in ended.values())
    for name in sorted({name for name, _ in tally}):
        print(f"{name}: {counted({found: tally[name, found] for found in ENDS})}")
    ends = {found: sum(n for (_, end), n in tally.items() if end == found) for found in ENDS}
    alone = f"; {by_itself} of the killed by nothing but what was there before"
    print(f"all: {counted(ends)}{'' if asked.sooner else alone}")
    return 0 if ends[KILLED] == len(faults) else 1


if __name__ == "__main__":
    sys.exit(main())
