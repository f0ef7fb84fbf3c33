"""Exercises on sizes the opening decides: flue, hearth, and how far a mantel may stand out."""

from __future__ import annotations

from math import pi
from random import Random
from typing import Any

from fireplace_calc.base.tables.liners import RoundLiner, rectangular_liner, round_liner
from fireplace_calc.base.units import from_unit
from fireplace_calc.design.records import Design
from fireplace_calc.editing.changes import change
from fireplace_calc.explore import sketch
from fireplace_calc.lessons.reply import Exercise, ExerciseStep, Given, step
from fireplace_calc.rules import Finding, Pack
from fireplace_calc.rules.comparing import DOES_NOT_APPLY
from fireplace_calc.rules.facts import Facts
from fireplace_calc.rules.gathering import gather_facts

FLUES = ("FLU-10", "FLU-11", "FLU-12", "FLU-13")
FRONT, BESIDE = ("HTH-05", "HTH-07"), ("HTH-06", "HTH-08")
LINERS = {
    "round": ("8", "10", "12", "15", "18"),
    "rectangular": ("8.5x13", "12x16", "13x18", "18x18", "20x24"),
}
"""Rectangular ones are shorter than two to one, so that one ratio holds for the whole list."""
FORGOT_RAISE = "That is the opening before it was raised: the raise counts in."


def work(changes: dict[str, Any], design: Design | None = None) -> tuple[Design, Facts]:
    """A design with the figures of an exercise, and what the rules are told of it."""
    made = change(design or Design(), changes)
    return made, gather_facts(sketch(made))


def binding(pack: Pack, told: Facts, keys: tuple[str, ...]) -> Finding:
    """The one of several rules that applies."""
    return next(f for f in pack.check(told, keys) if f.verdict != DOES_NOT_APPLY)


def asked(pack: Pack, told: Facts, keys: tuple[str, ...]) -> float:
    """What the rule that applies asks for. [SI]"""
    found = binding(pack, told, keys)
    if not isinstance(found.required, float):
        raise ValueError(f"{found.key} compares no numbers here.")
    return from_unit(found.required, found.unit)


def inches(rng: Random, low: int, high: int, step_in: int = 1) -> str:
    """A round length between two, both counted in. [in]"""
    return f"{rng.randrange(low, high + 1, step_in)} in"


def opening(rng: Random) -> dict[str, str]:
    """An opening, often raised, on either side of six square feet."""
    return {
        "opening.width": inches(rng, 28, 46),
        "opening.standard_height": inches(rng, 22, 30),
        "opening.extension": inches(rng, 2, 8),
    }


def _opening_given(design: Design) -> tuple[Given, ...]:
    o = design.opening
    return (
        Given("Opening width", o.width),
        Given("Standard height", o.standard_height),
        Given("Raised by", o.extension),
    )


def _area_step(design: Design, told: Facts) -> ExerciseStep:
    o = design.opening
    return step(
        "Clear area of the opening",
        told.opening_area,
        "area",
        "Width times the height, and the raise is part of the height.",
        [
            (o.width * o.standard_height, FORGOT_RAISE),
            (o.width * (o.standard_height - o.extension), "The raise was taken off: it is added."),
        ],
    )


def flue(seed: int | str, pack: Pack, rng: Random) -> Exercise:
    """Opening, least flue, the liner that will do."""
    shape = rng.choice(("round", "rectangular"))
    sizes = LINERS[shape]
    design, told = work({**opening(rng), "flue.shape": shape, "flue.size": sizes[0]})
    table = {
        size: round_liner(size) if shape == "round" else rectangular_liner(size) for size in sizes
    }
    enough = next(size for size in sizes if _does(design, pack, size))
    row = table[enough]
    least, shapes = _least_flue(design, pack, enough)
    smaller = [
        (table[size].net_area, "That one is too small: its net area does not reach the least.")
        for size in sizes[: sizes.index(enough)]
    ]
    larger = [
        (table[size].net_area, "It would do, but a smaller one of the list does too.")
        for size in sizes[sizes.index(enough) + 1 :]
    ]
    design, _ = work({"flue.size": enough}, design)
    outside = (
        pi / 4 * (row.inside + 2 * row.wall) ** 2
        if isinstance(row, RoundLiner)
        else row.outside_a * row.outside_b
    )
    rule = binding(pack, gather_facts(sketch(design)), FLUES).key
    straight, _ = work({"opening.extension": "0 in"}, design)
    return Exercise(
        "flue",
        "flue",
        "Flue for an opening",
        seed,
        pack.name,
        f"A {shape} clay flue is wanted for this opening. Use the ratio of the code, and the net"
        " areas listed.",
        (
            *_opening_given(design),
            *(Given(f"Liner {size}, net area", table[size].net_area, "area") for size in sizes),
        ),
        (
            _area_step(design, told),
            step(
                "Least net area of the flue",
                least,
                "area",
                "Divide the opening's area by the number for the flue's shape.",
                [(asked(pack, gather_facts(sketch(straight)), FLUES), FORGOT_RAISE), *shapes],
                rule,
            ),
            step(
                "Net area of the smallest liner of the list that is enough",
                row.net_area,
                "area",
                "The first of the list whose net area reaches the least.",
                [
                    (
                        outside,
                        "That is the outside: smoke has only the inside, and the table gives it.",
                    ),
                    *smaller,
                    *larger,
                ],
                rule,
            ),
        ),
        design,
    )


def _least_flue(design: Design, pack: Pack, size: str) -> tuple[float, list[tuple[float, str]]]:
    """What the ratio requires with a liner that will do, and with liners of other shapes."""
    right = asked(pack, work({"flue.size": size}, design)[1], FLUES)
    others = []
    for shape, one, said in (
        ("round", "12", "a round one"),
        ("rectangular", "18x18", "a square one"),
        ("rectangular", "8.5x18", "one of two to one or more"),
    ):
        other = asked(pack, work({"flue.shape": shape, "flue.size": one}, design)[1], FLUES)
        others.append((other, f"That is the ratio for another shape of flue, {said}."))
    return right, others


def _does(design: Design, pack: Pack, size: str) -> bool:
    return binding(pack, work({"flue.size": size}, design)[1], FLUES).verdict == "meets"
