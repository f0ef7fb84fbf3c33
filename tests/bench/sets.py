"""How long a set of 120 pieces takes to be fitted again, and a slider on a set against one on a laid
design, in turns, processor time.

Run: ``.venv/bin/python tests/bench/sets.py``.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from itertools import pairwise, product
from statistics import median
from time import process_time

from speed import row

from fireplace_calc import assess, change, load
from fireplace_calc.base.resources import DATA, SETS
from fireplace_calc.base.units import INCH
from fireplace_calc.design.records import Design
from fireplace_calc.drawing.composed.live import live_views
from fireplace_calc.drawing.page.message import page_message
from fireplace_calc.geometry.assembled.assembly import as_wanted, assemble
from fireplace_calc.geometry.assembled.fitting import fit
from fireplace_calc.pieces.choice import Choice, choose
from fireplace_calc.pieces.joints.joint_plan import plan_joints
from fireplace_calc.pieces.joints.rise import rise_of
from fireplace_calc.pieces.joints.wanted_levels import WantedLevel
from fireplace_calc.pieces.records import PieceSet, SetPiece, Tapered
from fireplace_calc.pieces.set_text import read_set

COURSES, FLUES, ROUNDS = 15, 60, 60
STEPS = {
    "flue.sections": [13 + n % 23 for n in range(69)],
    "opening.extension": [("0 in", "6 in", "12 in")[n % 3] for n in range(60)],
    "chimney.wall": [f"{4 + n / 16} in" for n in range(60)],
}


def tall() -> str:
    """The middling set with more courses and flue pieces than anybody sets: 120 pieces and more."""
    text = (SETS / "middling.toml").read_text()
    course = '[[lift]]\nname = "third course"\npieces = ["WL", "WR", "WB"]\n'
    more = [course.replace("third", f"course {n}") for n in range(COURSES)]
    assert course in text
    return text.replace(course, course + "\n".join(more)).replace("[12, 36]", f"[12, {FLUES}]")


def wider(made: PieceSet, by: float) -> PieceSet:
    """The set with its right wall so much thicker."""

    def grown(piece: SetPiece) -> SetPiece:
        far = max(x for s in piece.adds if isinstance(s, Tapered) for x, _ in s.lower)

        def out(ring: tuple[tuple[float, float], ...]) -> tuple[tuple[float, float], ...]:
            return tuple((x + by if x > far - 1e-9 else x, y) for x, y in ring)

        adds = tuple(
            replace(s, lower=out(s.lower), upper=out(s.upper)) if isinstance(s, Tapered) else s
            for s in piece.adds
        )
        return replace(piece, adds=adds)

    return replace(made, pieces=tuple(grown(p) if p.mark == "WR" else p for p in made.pieces))


def times(act: Callable[[int], None], count: int) -> list[float]:
    """Sorted processor times. [ms]"""
    found = []
    for k in range(count):
        start = process_time()
        act(k)
        found.append((process_time() - start) * 1000)
    return sorted(found)


def slider(design: Design, key: str, drawn: bool) -> float:
    """Median of a step: change, geometry, assessment; and, drawn, the four views as lines for the page. [ms]"""
    spent = []
    for value in STEPS[key]:
        start = process_time()
        design = change(design, {key: value})
        found = assess(design)
        if drawn:
            for cell, sheet in live_views("all", found.geometry, "feet-inches", found.findings):
                page_message(sheet, "light", cell)
        spent.append((process_time() - start) * 1000)
    return median(spent)


def main() -> None:
    text = tall()
    made, choice = read_set(text), Choice(extensions=2, flues=FLUES)
    lifts = choose(made, choice)
    wanted = as_wanted(lifts)
    rises = [b - a for a, b in pairwise((0.0, *wanted.tops))]
    chain = [rise_of(lift.name, lift.pieces) for lift in lifts]

    def joint(k: int) -> None:
        changed = list(rises)
        changed[1 + k % (len(rises) - 1)] += (k + 1) * INCH / 1000
        assert fit(assemble(lifts, changed)) == ()

    def level(k: int) -> None:
        aim = WantedLevel(lifts[-1].name, wanted.tops[-1] + (k - ROUNDS / 2) * INCH / 64, rank=1)
        planned = plan_joints(chain, (aim,), start_name="the base")
        assert fit(assemble(lifts, planned.rounded_rises)) == ()

    def piece(k: int) -> None:
        assert fit(as_wanted(choose(wider(made, (k + 1) * INCH / 5000), choice))) == ()

    def read(k: int) -> None:
        edited = text.replace("[9, 0], [9, 3]", f"[{9 - (k + 1) / 3000}, 0], [9, 3]")
        assert fit(as_wanted(choose(read_set(edited), choice))) == ()

    assert fit(wanted) == () and len(wanted.placed) >= 120
    print(f"{len(wanted.placed)} pieces\n\n| | median [ms] | 95 % [ms] |\n|---|---|---|")
    print(row("fit again after a joint changed", times(joint, ROUNDS)))
    print(row("planned and fitted again after a level changed", times(level, ROUNDS)))
    print(row("fit again after a piece changed", times(piece, ROUNDS)))
    print(row("read and fitted again after a line of its file changed", times(read, ROUNDS)))
    laid, of_set = (
        load(DATA / "designs" / f"{name}.toml") for name in ("boathouse-laid", "boathouse")
    )
    print("\n| slider | laid [ms] | set [ms] | set, of laid |\n|---|---|---|---|")
    for drawn, key in product((False, True), STEPS):
        slider(laid, key, drawn), slider(of_set, key, drawn)
        rounds = [(slider(laid, key, drawn), slider(of_set, key, drawn)) for _ in range(5)]
        a, b = (median(r[k] for r in rounds) for k in (0, 1))
        print(f"| `{key}`{', drawn' if drawn else ''} | {a:.2f} | {b:.2f} | {b / a:.2f} |")


if __name__ == "__main__":
    main()
