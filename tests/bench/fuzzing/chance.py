"""Random designs: tame ones, wild ones, and changes that no door may let through. Each is named by
a seed and a number.
"""

from __future__ import annotations

from functools import cache
from pathlib import Path
from random import Random
from typing import Any

from fireplace_calc import change, load
from fireplace_calc.base.inputs import Input
from fireplace_calc.base.units import SI_UNIT, InputError
from fireplace_calc.design.records import Design
from fireplace_calc.editing.changes import all_inputs

ROOT = Path(__file__).resolve().parents[3]
SIZES = (
    "8.5x8.5",
    "8.5x13",
    "8.5x18",
    "12x12",
    "13x13",
    "13x18",
    "16x16",
    "18x18",
    "20x20",
    "8",
    "10",
    "12",
    "15",
    "18",
    "own",
)
TRIM = ("mantel shelf", "bed mould", "leg", "plinth")
BAD: tuple[Any, ...] = (
    float("nan"),
    float("inf"),
    -1e308,
    10**400,
    True,
    None,
    b"36 in",
    [],
    {},
    object(),
    (),
    "",
    " ",
    "36",
    "36 in in",
    "nan in",
    "inf m",
    "1e999 in",
    "1e400",
    "-5 in",
    "0x10 in",
    "36 in; 3",
    "9" * 5000 + " in",
    "36 i\x00n",
    "\ud800",
    "١٢ in",
    "36 kg",
    "1/0 in",
    "2**9**9 in",
    "__import__('os')",
    "36 in\n37 in",
    "\ufeff36 in",
    "3' 4' 5\"",
    "½",
    "1:0",
    "٣:12",
    {"a": {}},
    [[[]]],
    "degC",
    "-400 degC",
    "1e308 degF",
    "unknown",
    "Unknown ",
    "yes",
    3 + 4j,
    range(3),
    "36in" * 40,
)
"""Values that somebody, or some program, may hand in."""


@cache
def examples() -> tuple[Design, ...]:
    """Where a random design begins: the default and the example files."""
    return (Design(), *(load(path) for path in sorted((ROOT / "data" / "designs").glob("*.toml"))))


def chance(seed: str, number: int) -> Random:
    """The dice of one try: the same for the same seed and number, whoever throws them."""
    return Random(f"{seed}/{number}")


def value(dice: Random, spec: Input, edge: float = 0.3) -> Any:
    """A value inside the workable range: an end of it, ``edge`` of the time; unknown now and then,
    where that is allowed.
    """
    if spec.optional and dice.random() < 0.25:
        return None
    if spec.kind == "choice":
        return dice.choice(spec.choices)
    if spec.kind == "yes-no":
        return dice.random() < 0.5
    if spec.kind == "text":
        return (
            dice.choice(SIZES)
            if spec.label == "Flue size"
            else "".join(dice.choices("abc é\"'\\#=<&;-0", k=dice.randrange(40)))
        )
    at_edge = dice.random() < edge
    if spec.kind == "count":
        return dice.choice((spec.low, spec.high)) if at_edge else dice.randint(spec.low, spec.high)
    number = dice.choice((spec.low, spec.high)) if at_edge else dice.uniform(spec.low, spec.high)
    return f"{number!r} {SI_UNIT[spec.kind].replace('**', '')}".strip()


def near(dice: Random, spec: Input, held: Any) -> Any:
    """A value not far from what is held: the tame sort."""
    if not isinstance(held, float) or spec.kind in ("temperature", "ratio"):
        return value(dice, spec, 0.05)
    number = min(max(held * dice.uniform(0.7, 1.4), spec.low), spec.high)
    return f"{number!r} {SI_UNIT[spec.kind].replace('**', '')}"


def lists(dice: Random) -> dict[str, Any]:
    """Trim and nearby parts, a few of each."""
    trim = [
        {
            "name": dice.choice(TRIM),
            "place": dice.choice(("above", "beside")),
            "distance": f"{dice.randint(0, 480) / 8} in",
            "projection": f"{dice.randint(0, 96) / 8} in",
            "height": f"{dice.randint(2, 96) / 8} in",
            "combustible": dice.random() < 0.7,
        }
        for _ in range(dice.randrange(5))
    ]
    nearby = [
        {
            "name": dice.choice(("dormer", "parapet")),
            "distance": f"{dice.randint(0, 60)} ft",
            "level": f"{dice.randint(0, 120)} ft",
        }
        for _ in range(dice.randrange(4))
    ]
    return {"surround.trim": trim, "roof.nearby": nearby}


def held(design: Design, key: str) -> Any:
    """What a design holds under a dotted key."""
    group, _, name = key.partition(".")
    record = getattr(design, group)
    return getattr(record, name) if name else record


def tame(dice: Random) -> Design:
    """An example with up to a dozen inputs moved a little; a move that does not fit is left out."""
    design = dice.choice(examples())
    for key in dice.sample(sorted(all_inputs()), dice.randint(1, 12)):
        design = stepped(design, {key: near(dice, all_inputs()[key], held(design, key))})
    return design


def wild(dice: Random) -> Design:
    """Any input anywhere in its range, many of them at its very ends; a move that does not fit is
    left out.
    """
    design, share = dice.choice(examples()), dice.random()
    keys = [key for key in sorted(all_inputs()) if dice.random() < share]
    dice.shuffle(keys)
    for key in keys:
        design = stepped(design, {key: value(dice, all_inputs()[key], 0.5)})
    return stepped(design, lists(dice))


def stepped(design: Design, changes: dict[str, Any]) -> Design:
    """The design with a change, or as it was when the change is refused."""
    try:
        return change(design, changes)
    except InputError:
        return design


def random_design(seed: str, number: int) -> Design:
    """Every other one tame, every other one wild."""
    dice = chance(seed, number)
    return wild(dice) if number % 2 else tame(dice)
