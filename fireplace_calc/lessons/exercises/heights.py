"""Exercises on height: over the roof, and what a warm column pulls."""

from __future__ import annotations

from math import atan, sin
from random import Random

from fireplace_calc.base.units import INCH
from fireplace_calc.explore import sketch
from fireplace_calc.geometry.roofline import REACH
from fireplace_calc.lessons.exercises.sizes import asked, inches, work
from fireplace_calc.lessons.reply import Exercise, Given, step
from fireplace_calc.lessons.valid_designs import ABOVE_ROOF, tall_enough
from fireplace_calc.rules import Pack


def roof(seed: int | str, pack: Pack, rng: Random) -> Exercise:
    """Three feet over where it comes out, two over anything within ten, and how many sections that
    takes.
    """
    design, _ = work(
        {
            "roof.pitch": f"{rng.choice((4, 5, 6, 7, 8, 9, 10, 12))}:12",
            "roof.ridge_distance": (
                inches(rng, 12, 36, 3) if rng.random() < 0.3 else inches(rng, 48, 216, 6)
            ),
            "roof.ridge_level": inches(rng, 216, 288, 6),
            "flue.section_height": rng.choice(("12 in", "18 in", "24 in")),
        }
    )
    design = tall_enough(design, pack) or design
    told = work({}, design)[1]
    f, pitch, ridge = told.frame, design.roof.pitch, design.roof.ridge_distance
    over, above = asked(pack, told, ABOVE_ROOF[:1]), asked(pack, told, ABOVE_ROOF[1:])
    climbs = f.highest_within_reach - f.uphill_contact
    least = max(over, climbs + above)
    section = design.flue.section_height + design.flue.joint
    base = f.crown_top - design.flue.sections * section
    slope_wise = REACH * sin(atan(pitch))
    along = "That is measured along the slope; the ten feet are level."
    past = "The ridge is farther than ten feet: only ten feet count."
    short = "The ridge is nearer than ten feet: the roof climbs no farther than that."
    both = "Both hold: take whichever asks for more."
    return Exercise(
        "roof",
        "roof",
        "Chimney over a roof",
        seed,
        pack.name,
        "The chimney comes out on the slope. Everything within ten feet, level, of its uphill face"
        " counts; nothing but this roof is near. Heights over the roof are taken at the uphill"
        " face.",
        (
            Given("Roof pitch", f"{pitch * 12:g} in 12", "word"),
            Given("Uphill face to the ridge, level", ridge),
            Given("Roof at the uphill face, above the floor", f.uphill_contact),
            Given("Top without any flue section, above the floor", base),
            Given("One flue section with its joint", section),
        ),
        (
            step(
                "Rise of the roof within ten feet, measured level",
                climbs,
                "length",
                "Pitch times the level distance: ten feet, or to the ridge where that is nearer.",
                [
                    (slope_wise, along),
                    (ridge * pitch, past),
                    (REACH * pitch, short),
                    (
                        min(REACH, ridge),
                        "That is the level distance; the roof climbs pitch times that.",
                    ),
                ],
                "ROF-02",
            ),
            step(
                "Least height of the chimney over the roof at its uphill face",
                least,
                "length",
                "The larger of two: over the roof where it comes out, and over the highest within"
                " ten feet.",
                [
                    (over, both),
                    (climbs + above, both),
                    (climbs + over, "Over what stands near, the smaller figure is required."),
                    (above, both),
                    (climbs, "It has to stand over that, not level with it."),
                    (slope_wise + above, along),
                    (ridge * pitch + above, past),
                    (REACH * pitch + above, short),
                ],
                "ROF-02" if climbs + above > over else "ROF-01",
            ),
            step(
                "Least level of the chimney top above the floor",
                f.uphill_contact + least,
                "length",
                "The roof at the uphill face, and that height on top.",
                [
                    (f.uphill_contact + over, both),
                    (
                        f.downhill_contact + least,
                        "Taken from the downhill side; the uphill one is higher.",
                    ),
                    (least, "That is over the roof, not over the floor."),
                    (f.uphill_contact + slope_wise + above, along),
                    (f.uphill_contact + ridge * pitch + above, past),
                ],
            ),
            step(
                "Flue sections needed",
                design.flue.sections,
                "count",
                "What is missing over the height of one section; round up to a whole section.",
                [
                    (design.flue.sections - 1, "Rounded down: then the top is too low."),
                    (design.flue.sections + 1, "One more than is needed."),
                ],
            ),
        ),
        design,
    )


def draft(seed: int | str, pack: Pack, rng: Random) -> Exercise:
    """What a column of warm gas pulls before anything is lost, and what one section more adds."""
    from fireplace_calc.draft import trace_flow_path
    from fireplace_calc.draft.sizing import (
        theoretical_draft,  # here, so that the other exercises need not wait for numpy
    )

    outdoor, flue = 273.15 + rng.randrange(-10, 16, 5), 273.15 + rng.randrange(110, 231, 10)
    design, _ = work(
        {"flue.sections": rng.randrange(7, 16), "opening.extension": inches(rng, 0, 8, 2)}
    )
    f = sketch(design).frame
    height = float(trace_flow_path(sketch(design)).height)
    room, zero = design.house.indoor, 273.15
    longer, _ = work({"flue.sections": design.flue.sections + 1}, design)
    taller = float(trace_flow_path(sketch(longer)).height)

    def pull(high: float, warm: float = flue, cold: float = outdoor) -> float:
        return float(theoretical_draft(high, warm, cold))

    wrong = [
        (
            pull(f.liner_top - f.hearth),
            "The column counts from the top of the opening, not from the hearth.",
        ),
        (pull(height, cold=room), "The cold column stands outdoors, not in the room."),
    ]
    if outdoor > zero:
        wrong.append(
            (
                pull(height, flue - zero, outdoor - zero),
                "Degrees were not counted from absolute zero: add 273.15 to degrees Celsius.",
            )
        )
    return Exercise(
        "draft",
        "draft",
        "Pull of a warm column",
        seed,
        pack.name,
        "Gas of the given mean temperature fills the flue; outdoors it is colder. The pull is"
        " 9.80665 m/s² times the height times the difference of the two densities. A density is 101"
        " 325 Pa over 287.05 J/(kg K) and over the absolute temperature. Losses come off later. The"
        " height counts from the top of the opening.",
        (
            Given("Hearth, above the floor", f.hearth),
            Given("Clear height of the opening, raise included", design.opening.height),
            Given("Top of the flue, above the floor", f.liner_top),
            Given("Mean temperature in the flue", flue, "temperature"),
            Given("Temperature outdoors", outdoor, "temperature"),
            Given("Temperature of the room", room, "temperature"),
            Given("One flue section with its joint", taller - height),
        ),
        (
            step(
                "Height of the warm column",
                height,
                "length",
                "From the top of the opening to the top of the flue.",
                [
                    (
                        f.liner_top - f.hearth,
                        "That starts at the hearth; it starts at the top of the opening.",
                    ),
                    (f.liner_top, "That starts at the floor; it starts at the top of the opening."),
                ],
            ),
            step(
                "Pull of the column, nothing lost yet",
                pull(height),
                "pressure",
                "Height times the difference of the densities times gravity.",
                wrong,
            ),
            step(
                "What one more flue section adds",
                pull(taller) - pull(height),
                "pressure",
                "The same for the height of one section: the pull grows with height alone.",
                [
                    (pull(taller), "That is the whole pull of the taller chimney."),
                    (pull(INCH * 12), "That is what one foot adds."),
                ],
            ),
        ),
        design,
    )
