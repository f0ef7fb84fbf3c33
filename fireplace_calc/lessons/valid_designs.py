"""Random designs that break nothing: every question of the code is answered, and every answer is
good enough.
"""

from __future__ import annotations

from bisect import bisect_left
from functools import lru_cache
from math import ceil
from random import Random
from typing import Any

from fireplace_calc.assessment import DEFAULT_PACK
from fireplace_calc.base.inputs import inputs_of
from fireplace_calc.base.units import INCH, SQIN, InputError
from fireplace_calc.design.records import Design
from fireplace_calc.editing.changes import change
from fireplace_calc.explore import moved, sketch
from fireplace_calc.geometry.builder import build_geometry
from fireplace_calc.lessons.seeds import require_seed
from fireplace_calc.rules import PACKS, Finding, Pack
from fireplace_calc.rules.comparing import FALLS_SHORT, NOT_CHECKED
from fireplace_calc.rules.facts import Facts
from fireplace_calc.rules.gathering import gather_facts

TAUGHT = tuple(name for name in PACKS if name.startswith("US"))
"""Packs that exercises are drawn for: the American code, its editions and its states."""
TRIES = 400
"""Designs drawn before one that breaks nothing has to be among them; about one in three is. [-]"""
ROUND, RECTANGULAR = (
    ("8", "10", "12", "15", "18"),
    ("8.5x8.5", "8.5x13", "8.5x18", "13x18", "18x18"),
)
ABOVE_ROOF = ("ROF-01", "ROF-02")
FLUE_AREA = ("FLU-10", "FLU-11", "FLU-12", "FLU-13")
CHAMBER = ("SMK-01", "SMK-02", "SMK-05", "SMK-06", "SMK-07")
FOLLOWING = {
    "HTH-05": "hearth.front",
    "HTH-07": "hearth.front",
    "HTH-06": "hearth.side",
    "HTH-08": "hearth.side",
    "SMK-04": "smoke_chamber.height",
}
OPEN = (FALLS_SHORT, NOT_CHECKED)

ANSWERS = {
    "firebox.brick_standard": "ASTM C27",
    "firebox.mortar_standard": "ASTM C199 medium-duty",
    "hearth.support": "noncombustible",
    "hearth.forms_removed": "yes",
    "throat.damper_material": "ferrous",
    "throat.worked_from_room": "yes",
    "flue.gap_vents": "no",
    "chimney.drip": "yes",
    "chimney.bond_break": "yes",
    "clearance.fill": "none",
    "clearance.fireblock": "noncombustible",
    "ground.bearing_stratum": "undisturbed soil",
    "ground.frost_protection_method": "below frost line",
    "ground.soil_bearing_assumed": "3000 psf",
    "ground.footing_bottom_slope": "0",
    "ground.reinforced": "yes",
    "ground.rebar_cover_earth": "3 in",
    "ground.concrete_fc": "3000 psi",
    "ground.ash_dump": "no",
    "stack.changes": "no",
    "stack.imposed_load_on_chimney": "0 lbf",
    "stack.offset_carried": "yes",
    "air.exterior_air_supply": "yes",
    "air.listed_duct": "no",
    "air.intake_location": "outdoors",
    "air.intake_elevation": "-6 in",
    "air.intake_screen_mesh": "1/4 in",
    "air.duct_clearance": "2 in",
    "air.outlet_place": "firebox",
    "air.outlet_closable": "yes",
    "air.ember_guard": "yes",
    "air.tight_damper_or_doors": "yes",
    "air.other_intake": "no",
}
"""What no drawing shows, answered as a careful mason would on site."""


def require_taught(pack: str) -> Pack:
    """The pack of a name, or a sentence that says for which ones exercises are drawn.

    Raises
    ------
    InputError
        For any other.
    """
    if pack not in TAUGHT:
        raise InputError(
            f"Code pack is {pack!r}, but exercises are drawn for {', '.join(TAUGHT)} only.",
            "Code pack",
            ", ".join(TAUGHT),
            pack,
        )
    return PACKS[pack]


def _inches(rng: Random, low: float, high: float, step: float = 1.0) -> str:
    return f"{low + step * rng.randrange(round((high - low) / step) + 1):g} in"


@lru_cache(maxsize=1)
def _answered() -> Design:
    return change(Design(), {**ANSWERS, "note": "Invented for an exercise."})


def _indoors(rng: Random) -> dict[str, Any]:
    """Opening, firebox, throat, smoke chamber, hearth."""
    raised = rng.choice((0, 0, 10, 12, 14, 16))
    built = rng.choice(("sloped units", "sloped units", "prefabricated lining", "corbelled"))
    lining = rng.choice(("parged", "parged", "vitrified clay", "firebrick"))
    thick = {"parged": 0.5, "vitrified clay": 0.75, "firebrick": 2.0}[lining]
    shallow = rng.random() < 0.12
    return {
        "method": rng.choice(("laid", "laid", "modular")),
        "opening.width": _inches(rng, 28, 48, 2),
        "opening.standard_height": _inches(rng, 22, 32),
        "opening.extension": rng.choice(("0 in", "0 in", "2 in", "4 in", "6 in")),
        "opening.head": rng.choice(("straight", "straight", "straight", "segmental")),
        "opening.rise": _inches(rng, 3, 6),
        "opening.type": "shallow" if shallow else "ordinary",
        "lintel.material": rng.choice(("steel", "reinforced concrete", "stone")),
        "lintel.height": _inches(rng, 3, 6),
        "lintel.bearing": _inches(rng, 4, 8),
        "surround.face": rng.choice(("brick", "stone", "plaster", "tile")),
        "firebox.depth": _inches(rng, 15, 18) if shallow else _inches(rng, 20, 26),
        "firebox.breast": _inches(rng, 8, 9),
        "firebox.rake": _inches(rng, 0, 6) if shallow else _inches(rng, 4, 9),
        "firebox.vertical_back": _inches(rng, 10, 14),
        "firebox.wall": _inches(rng, 8, 11),
        "firebox.jamb": _inches(rng, 12, 16, 2),
        "firebox.lining_thickness": _inches(rng, 2.5, 4.5, 0.5),
        "firebox.joint": rng.choice(("1/8 in", "3/16 in", "1/4 in")),
        "throat.height": _inches(rng, 12, 14) if shallow else _inches(rng, 8, 11),
        "throat.depth": _inches(rng, 4, 8, 0.5),
        "smoke_chamber.construction": built,
        "smoke_chamber.lining": lining,
        "smoke_chamber.lining_thickness": f"{thick} in",
        "smoke_chamber.wall": _inches(rng, 8, 9),
        "base.hearth_level": f"{raised} in",
        "hearth.drop": f"{raised} in",
        "hearth.thickness": _inches(rng, 2, 4, 0.5),
        "hearth.material": rng.choice(("brick", "stone", "concrete", "tile")),
        "base.slab": _inches(rng, 4, 6),
        "surround.trim": _mantel(rng),
    }


def _mantel(rng: Random) -> list[dict[str, str]]:
    """A shelf beyond twelve inches, and often a step below it that keeps to an eighth of its
    distance.
    """
    shelf = {
        "name": "mantel shelf",
        "distance": _inches(rng, 13, 18),
        "projection": _inches(rng, 5, 9),
        "height": "2 in",
    }
    away = rng.choice((8, 9, 10, 11))
    step = {
        "name": "lower step of the mantel",
        "distance": f"{away} in",
        "projection": f"{away // 4 * 0.5 - 0.25} in",
        "height": "2 in",
    }
    return [shelf, step] if rng.random() < 0.7 else [shelf]


def _outdoors(rng: Random) -> dict[str, Any]:
    """Flue, chimney, air spaces, roof, ground."""
    shape = rng.choice(("round", "rectangular"))
    place = rng.choice(("interior", "interior", "exterior"))
    arrester = rng.random() < 0.4
    return {
        "flue.shape": shape,
        "flue.size": (ROUND if shape == "round" else RECTANGULAR)[0],
        "flue.turned": rng.choice(("yes", "no")),
        "flue.section_height": rng.choice(("12 in", "24 in")),
        "flue.sections": 12,
        "flue.offset": rng.choice(("0 in", "0 in", "0 in", "8 in", "12 in")),
        "flue.offset_rise": _inches(rng, 30, 48, 2),
        "chimney.location": place,
        "chimney.gap": rng.choice(("1/4 in", "1/2 in")),
        "chimney.liner_above": _inches(rng, 1, 4),
        "chimney.wash": _inches(rng, 1, 3),
        "chimney.cap_material": rng.choice(("concrete", "stone")),
        "chimney.arrester": "yes" if arrester else "no",
        "chimney.mesh": "1/2 in" if arrester else None,
        "chimney.arrester_metal": "24 gauge stainless" if arrester else None,
        "clearance.front": _inches(rng, 2, 4, 0.5),
        "clearance.side": _inches(rng, 2, 4, 0.5),
        "clearance.back": _inches(rng, 4, 6, 0.5),
        "clearance.chimney": _inches(rng, 2, 3, 0.5),
        "roof.pitch": f"{rng.randrange(3, 13)}:12",
        "roof.ridge_distance": _inches(rng, 24, 192, 12),
        "roof.ridge_level": _inches(rng, 192, 264, 6),
        "roof.position": rng.choice(
            ("on the slope", "on the slope", "on the slope", "through the ridge")
        ),
        "roof.ridge_runs": rng.choice(("along the opening", "front to back")),
        "roof.cricket": "yes",
        "site.frost_depth": _inches(rng, 12, 42, 6),
        "base.footing_depth": _inches(rng, 42, 54, 6),
        "base.footing_thickness": _inches(rng, 12, 14),
        "base.footing_projection": rng.choice(("6 in", "7 in", "8 in", "12 in")),
        "ground.footing_depth_below_undisturbed_ground": _inches(rng, 30, 40, 2),
        "house.ceiling": _inches(rng, 96, 120, 12),
        "site.seismic": rng.choice(("A", "B")),
        "site.soil": rng.choice(("sandy gravel or gravel", "sedimentary or foliated rock")),
        "house.air_inlet": f"{rng.randrange(8, 50, 2)} in2",
    }


def told(design: Design) -> Facts:
    """Everything the rules may ask, weights too: what ``assess`` holds against the code."""
    return gather_facts(build_geometry(design))


def broken(found: tuple[Finding, ...]) -> tuple[Finding, ...]:
    """Findings that fall short or could not be checked, worst first."""
    return tuple(f for f in found if f.verdict in OPEN)


def nudged(design: Design, key: str, by: float) -> Design | None:
    """The design with one length longer by so much [m], or one count by so many; nothing where it
    cannot be drawn.
    """
    group, _, name = key.partition(".")
    record = getattr(design, group)
    if (value := getattr(record, name)) is None:
        return None
    count = inputs_of(record)[name].kind == "count"
    return moved(
        design, {key: int(value + by) if count else f"{round((value + by) / INCH, 6)!r} in"}
    )


def tall_enough(design: Design, pack: Pack) -> Design | None:
    """The design with the fewest flue sections that reach as far over the roof as the code asks;
    nothing if forty do not.
    """

    def reaches(count: int) -> bool:
        tried = moved(design, {"flue.sections": count})
        return tried is not None and not broken(pack.check(gather_facts(sketch(tried)), ABOVE_ROOF))

    count = bisect_left(range(4, 41), True, key=reaches) + 4
    return moved(design, {"flue.sections": count}) if count <= 40 else None


def _flue_for(design: Design, pack: Pack, rng: Random) -> Design | None:
    """The design with the smallest liner of its shape that is large enough for the opening, or the
    next one.
    """
    sizes = ROUND if design.flue.shape == "round" else RECTANGULAR
    for place, size in enumerate(sizes):
        tried = moved(design, {"flue.size": size})
        if tried and not broken(pack.check(gather_facts(sketch(tried)), FLUE_AREA)):
            larger = sizes[min(place + (rng.random() < 0.2), len(sizes) - 1)]
            return moved(tried, {"flue.size": larger})
    return None


def _follows(design: Design, pack: Pack, rng: Random) -> Design | None:
    """Hearth and smoke chamber as the opening asks, with something to spare."""
    changes = {}
    for finding in pack.check(gather_facts(sketch(design)), FOLLOWING):
        if finding.required is not None:
            spare = rng.randrange(5)
            key = FOLLOWING[finding.key]
            changes[key] = (
                f"{finding.required - 2 * spare if finding.key == 'SMK-04' else finding.required + spare:g} in"
            )
    return moved(design, changes)


def _fitted(design: Design, pack: Pack, rng: Random) -> Design | None:
    """Sizes that follow from others: hearth, smoke chamber, flue, damper, arrester, cricket,
    sections.
    """
    design = _follows(design, pack, rng)
    design = design and _flue_for(design, pack, rng)
    if design is None:
        return None
    work = gather_facts(sketch(design))
    flue, throat = work.flue_net_area, work.throat_area
    if throat < flue or broken(pack.check(work, CHAMBER)):
        return None
    changes: dict[str, Any] = {
        "throat.damper_area": f"{ceil((flue + (throat - flue) * rng.random()) / SQIN)} in2"
    }
    if work.arrester:
        changes["chimney.arrester_area"] = f"{round(4.5 * flue / SQIN)} in2"
    asked = next(f for f in pack.check(work, ("ROF-09",)))
    if asked.required is not None:
        changes["roof.cricket_height"] = f"{int(asked.required) + rng.choice((1, 2))} in"
    fitted = moved(design, changes)
    return fitted and tall_enough(fitted, pack)


def valid_design(seed: int | str, pack: str = DEFAULT_PACK) -> Design:
    """A design that breaks nothing and leaves nothing unchecked; the same for the same seed.

    Parameters
    ----------
    seed : int or str
        Whatever tells one student from the next.
    pack : str
        One of ``TAUGHT``.

    Returns
    -------
    Design
        Invented, and it says so.

    Raises
    ------
    InputError
        When there is no such pack, the seed is too long, or there is no such design among the first ``TRIES``.

    Examples
    --------
    >>> valid_design(7) == valid_design(7), valid_design(7) == valid_design(8)
    (True, False)
    """
    book, rng = require_taught(pack), Random(f"sound {require_seed(seed)} {pack}")
    for _ in range(TRIES):
        drawn = moved(_answered(), _indoors(rng) | _outdoors(rng))
        if drawn is None or drawn.site.frost_depth > drawn.base.footing_depth:
            continue
        fitted = _fitted(drawn, book, rng)
        if fitted is not None and not broken(book.check(told(fitted))):
            return change(fitted, {"name": f"Exercise {seed}"})
    raise InputError(
        f"Seed {seed!r} gave no design that breaks nothing in {TRIES} draws; take another seed.",
        "Seed",
        "another",
        seed,
    )
