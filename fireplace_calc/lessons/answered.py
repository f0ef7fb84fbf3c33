"""Every question of the code answered, for designs that leave nothing open."""

from __future__ import annotations

from functools import lru_cache
from random import Random
from typing import Any

from fireplace_calc.design.records import Design
from fireplace_calc.editing.assumptions import tell_everything
from fireplace_calc.editing.changes import change
from fireplace_calc.lessons.fault_hunt.fault_books import RECTANGULAR, ROUND

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


def _inches(rng: Random, low: float, high: float, step: float = 1.0) -> str:
    return f"{low + step * rng.randrange(round((high - low) / step) + 1):g} in"


@lru_cache(maxsize=1)
def _answered() -> Design:
    return tell_everything(change(Design(), {**ANSWERS, "note": "Invented for an exercise."}))


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
        "flue.long_side": rng.choice(("front to back", "along the opening")),
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
