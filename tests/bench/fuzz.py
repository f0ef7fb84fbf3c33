"""What random designs, broken files, papers, kills and full disks find. Run by hand, for as long as you like:

``.venv/bin/python tests/bench/fuzz.py designs=100000 files=4000 papers=200 kills=200 --seed one
--workers 2``

Each try is named by its kind, the seed and a number, so that ``--only designs:1234`` does one of
them again. Faults are gathered in families (kind of error and the line it came from), with the
first try of each. Exit status 1 when there are any.
"""

from __future__ import annotations

import argparse
import sys
import time
import traceback
from collections import Counter
from concurrent.futures import ProcessPoolExecutor, as_completed
from dataclasses import dataclass, field
from pathlib import Path

sys.path.insert(0, str(Path(__file__).resolve().parents[1]))
sys.path.insert(0, str(Path(__file__).resolve().parent))

from fuzzing import agreement, designs, files, full, kills, papers, sheets

KINDS = {
    "designs": designs.try_one,
    "files": files.try_one,
    "papers": papers.try_one,
    "kills": kills.try_one,
    "full": full.try_one,
    "sheets": sheets.try_one,
    "agreement": agreement.try_papers,
    "dxf": agreement.try_file,
    "sums": agreement.try_sums,
}
USUAL = {"designs": 1000, "files": 400, "papers": 10, "kills": 20}
CHUNK = {
    "designs": 200,
    "files": 50,
    "papers": 2,
    "kills": 2,
    "full": 20,
    "sheets": 4,
    "agreement": 20,
    "dxf": 4,
    "sums": 4,
}
EVERY = 10.0
"""Between two progress lines. [s]"""


@dataclass
class Tally:
    """How tries ended, and the families of faults with their first try."""

    ended: Counter = field(default_factory=Counter)
    faults: Counter = field(default_factory=Counter)
    first: dict[str, str] = field(default_factory=dict)

    def add(self, other: Tally) -> None:
        self.ended += other.ended
        self.faults += other.faults
        for family, told in other.first.items():
            self.first.setdefault(family, told)


def family(wrong: BaseException) -> str:
    """Kind of error, and the last line of the package it went through."""
    if isinstance(wrong, designs.Unsound):
        return str(wrong).partition(":")[0]
    ours = [
        frame
        for frame in traceback.extract_tb(wrong.__traceback__)
        if "fireplace_calc" in frame.filename
    ]
    where = f"{Path(ours[-1].filename).name}:{ours[-1].lineno}" if ours else "outside"
    return f"{type(wrong).__name__} at {where}"


def run(kind: str, seed: str, numbers: range) -> Tally:
    """Some tries, one after the other."""
    tally = Tally()
    for number in numbers:
        try:
            tally.ended[KINDS[kind](seed, number)] += 1
        except Exception as wrong:  # whatever comes is what this is for
            tally.faults[family(wrong)] += 1
            tally.first.setdefault(
                family(wrong), f"{kind}:{number} {type(wrong).__name__}: {str(wrong)[:300]}"
            )
    return tally


def told(kind: str, done: int, total: int, tally: Tally, start: float) -> None:
    ended = ", ".join(f"{n} {how}" for how, n in sorted(tally.ended.items()))
    print(
        f"{kind}: {done} of {total} in {time.monotonic() - start:.0f} s: {ended}; faults {sum(tally.faults.values())} "
        f"in {len(tally.faults)} families",
        flush=True,
    )


def all_of(kind: str, seed: str, first: int, total: int, workers: int) -> Tally:
    """All tries of one kind, from the first on."""
    tally, start, last, done = Tally(), time.monotonic(), time.monotonic(), 0
    end = first + total
    starts = range(first, end, CHUNK[kind])
    chunks = [range(low, min(low + CHUNK[kind], end)) for low in starts]

    def gather(found: Tally, count: int) -> None:
        nonlocal done, last
        for name in found.first.keys() - tally.first.keys():
            print(f"  new: {name}\n    {found.first[name]}", flush=True)
        tally.add(found)
        done += count
        if time.monotonic() - last > EVERY:
            last = time.monotonic()
            told(kind, done, total, tally, start)

    if workers == 1:
        for chunk in chunks:
            gather(run(kind, seed, chunk), len(chunk))
    else:
        with ProcessPoolExecutor(workers) as pool:
            for job in as_completed(
                {pool.submit(run, kind, seed, chunk): chunk for chunk in chunks}
            ):
                gather(job.result(), CHUNK[kind])
    told(kind, total, total, tally, start)
    for name, count in tally.faults.most_common():
        print(f"  {count} x {name}\n    {tally.first[name]}", flush=True)
    return tally


def main() -> int:
    parser = argparse.ArgumentParser(
        description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter
    )
    parser.add_argument(
        "counts", nargs="*", metavar="KIND=N", help=f"of {', '.join(KINDS)}; without any: {USUAL}"
    )
    parser.add_argument("--seed", default="one")
    parser.add_argument("--workers", type=int, default=1)
    parser.add_argument("--first", type=int, default=0, metavar="N", help="number of the first try")
    parser.add_argument("--only", metavar="KIND:N", help="one try again, its error shown whole")
    asked = parser.parse_args()
    if asked.only:
        kind, _, number = asked.only.partition(":")
        print(KINDS[kind](asked.seed, int(number)))
        return 0
    counts = {kind: int(n) for kind, _, n in (one.partition("=") for one in asked.counts)} or USUAL
    found = [all_of(kind, asked.seed, asked.first, n, asked.workers) for kind, n in counts.items()]
    return 1 if any(tally.faults for tally in found) else 0


if __name__ == "__main__":
    sys.exit(main())
