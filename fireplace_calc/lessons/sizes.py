"""Exercises on sizes the opening decides: flue, hearth, and how far a mantel may stand out."""

from __future__ import annotations

from math import pi
from random import Random

from fireplace_calc.base.tables.liners import rectangular_liner, round_liner
from fireplace_calc.base.units import INCH, from_unit
from fireplace_calc.design.records import Design
from fireplace_calc.editing.changes import change
from fireplace_calc.explore import sketch
from fireplace_calc.lessons.reply import Exercise, Given, step
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


def work(changes: dict, design: Design | None = None) -> tuple[Design, Facts]:
    """A design with the figures of an exercise, and what the rules are told of it."""
    made = change(design or Design(), changes)
    return made, gather_facts(sketch(made))


def binding(pack: Pack, told: Facts, keys: tuple[str, ...]) -> Finding:
    """The one of several rules that applies."""
    return next(f for f in pack.check(told, keys) if f.verdict != DOES_NOT_APPLY)


def asked(pack: Pack, told: Facts, keys: tuple[str, ...]) -> float:
    """What the rule that applies asks for. [SI]"""
    found = binding(pack, told, keys)
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


def _area_step(design: Design, told: Facts):
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
        if shape == "round"
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
                "The opening's area over the number that goes with the shape of the flue.",
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
    """What the ratio asks for a liner that will do, and what the ratios of other shapes would ask."""
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


def hearth(seed: int | str, pack: Pack, rng: Random) -> Exercise:
    """Which side of six square feet, and the hearth that follows."""
    design, told = work({**opening(rng), "hearth.front": "24 in", "hearth.side": "16 in"})
    small, large = (
        work(
            {"opening.width": wide, "opening.standard_height": high, "opening.extension": "0 in"},
            design,
        )[1]
        for wide, high in (("24 in", "20 in"), ("60 in", "40 in"))
    )
    front, beside = asked(pack, told, FRONT), asked(pack, told, BESIDE)
    wrong_side = (
        "That belongs to the other side of six square feet: work the opening's area out, raise and"
        " all, and compare."
    )
    other = {
        keys: [(asked(pack, one, keys), wrong_side) for one in (small, large)]
        for keys in (FRONT, BESIDE)
    }
    width = design.opening.width
    both = "The hearth goes past the opening on both sides."
    return Exercise(
        "hearth",
        "hearths",
        "Hearth in front of an opening",
        seed,
        pack.name,
        "The hearth extension is to be as small as the code allows. Six square feet is where it"
        " changes.",
        _opening_given(design),
        (
            _area_step(design, told),
            step(
                "Least hearth in front of the opening",
                front,
                "length",
                "One figure below six square feet, a larger one from there up.",
                [*other[FRONT], (beside, "That is the figure for the sides.")],
                binding(pack, told, FRONT).key,
            ),
            step(
                "Least hearth beside the opening, each side",
                beside,
                "length",
                "It changes at the same area as the front.",
                [
                    *other[BESIDE],
                    (front, "That is the figure for the front."),
                    (2 * beside, "That is both sides together."),
                ],
                binding(pack, told, BESIDE).key,
            ),
            step(
                "Least width of the whole hearth extension",
                width + 2 * beside,
                "length",
                "The opening's width and the side twice.",
                [
                    (width + beside, both),
                    (width, "That is the opening alone: sparks fly sideways too."),
                    (width + 2 * front, "The front was taken for the side."),
                    *((width + 2 * value, wrong_side) for value, _ in other[BESIDE]),
                ],
                binding(pack, told, BESIDE).key,
            ),
        ),
        design,
    )


def mantel(seed: int | str, pack: Pack, rng: Random) -> Exercise:
    """How far trim may stand out, and how far away a deep piece has to be."""
    eighths = rng.randrange(49, 94)
    away, out = eighths / 8 * INCH, rng.randrange(13, 24) / 16 * INCH
    piece = {"name": "moulding", "distance": f"{eighths / 8} in", "projection": "1/2 in"}
    design, told = work({"surround.trim": [piece]})
    most = asked(pack, told, ("CLR-08",))
    share = most / away
    near = asked(pack, told, ("CLR-07",))
    return Exercise(
        "mantel",
        "clearances",
        "Wood on the face of a fireplace",
        seed,
        pack.name,
        "A wooden moulding is to go on the face, within 12 in of the opening; another one is"
        " deeper.",
        (
            Given("Moulding, from the edge of the opening", away),
            Given("The deeper one stands out", out),
        ),
        (
            step(
                "Nearest that any wood may come to the opening",
                near,
                "length",
                "One figure for every piece, however flat.",
                [
                    (
                        2 * near,
                        "From there on a piece may stand out as it likes; the nearest is less.",
                    ),
                    (most, "That is how far it may stand out."),
                ],
                "CLR-07",
            ),
            step(
                "Most that the moulding may stand out from the face",
                most,
                "length",
                "An eighth of its distance from the opening.",
                [
                    (
                        (away - near) * share,
                        "The eighth is taken of the whole distance, from the edge of the opening.",
                    ),
                    (away, "That is its distance; it may stand out an eighth of that."),
                    (away * share * 2, "That is a quarter of its distance."),
                    (
                        2 * near * share,
                        "That would do at the far end of the band; this one is nearer.",
                    ),
                ],
                "CLR-08",
            ),
            step(
                "Least distance of the deeper one from the opening",
                out / share,
                "length",
                "Eight times as far away as it stands out.",
                [
                    (out, "It has to be eight times as far away as it stands out."),
                    (
                        near + out / share,
                        "The distance counts from the opening, not from where wood may begin.",
                    ),
                    (out * share, "The other way round: the distance is the larger."),
                    (near, "Nearest for a flat piece; this one stands out."),
                ],
                "CLR-08",
            ),
        ),
        design,
    )
