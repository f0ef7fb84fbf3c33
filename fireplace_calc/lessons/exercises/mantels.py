"""Exercises on the hearth and the mantel."""

from __future__ import annotations

from random import Random

from fireplace_calc.base.units import INCH
from fireplace_calc.lessons.exercises.sizes import (
    BESIDE,
    FRONT,
    _area_step,
    _opening_given,
    asked,
    binding,
    opening,
    work,
)
from fireplace_calc.lessons.reply import Exercise, Given, step
from fireplace_calc.rules import Pack


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
    piece = {"name": "molding", "distance": f"{eighths / 8} in", "projection": "1/2 in"}
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
        "A wooden molding is to go on the face, within 12 in of the opening; another one is"
        " deeper.",
        (
            Given("Molding, from the edge of the opening", away),
            Given("Projection of the deeper one", out),
        ),
        (
            step(
                "Least distance from wood to the opening",
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
                "Greatest projection of the molding",
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
                    (out * share, "The other way around: the distance is the larger."),
                    (near, "Nearest for a flat piece; this one stands out."),
                ],
                "CLR-08",
            ),
        ),
        design,
    )
