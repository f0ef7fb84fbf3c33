"""Exercises on the way of the smoke: throat between splayed sides, smoke chamber by its slope."""

from __future__ import annotations

from math import sin, tan
from random import Random

from fireplace_calc.design.records import Design
from fireplace_calc.lessons.exercises.sizes import asked, inches, work
from fireplace_calc.lessons.reply import Exercise, Given, step
from fireplace_calc.rules import Pack


def throat(seed: int | str, pack: Pack, rng: Random) -> Exercise:
    """Free area of a throat that narrows to the back, against its flue."""
    width = rng.randrange(32, 47, 2)
    design, told = work(
        {
            "opening.width": f"{width} in",
            "opening.standard_height": inches(rng, 24, 30),
            "firebox.depth": inches(rng, 20, 24),
            "firebox.back_width": f"{width - rng.randrange(10, 17, 2)} in",
            "throat.depth": inches(rng, 4, 7),
            "firebox.breast": "8 in",
            "firebox.rake": inches(rng, 4, 7),
            "flue.shape": "round",
            "flue.size": rng.choice(("10", "12")),
        }
    )
    f = told.frame
    front, back, deep = (
        2 * f.half_at(f.throat_front),
        2 * f.half_at(f.throat_back),
        f.throat_back - f.throat_front,
    )
    flue = asked(pack, told, ("THR-03",))
    spare = told.throat_area - flue
    no_splay = "The sides close in: at the throat it is narrower than the opening."
    return Exercise(
        "throat",
        "flue",
        "Throat and flue",
        seed,
        pack.name,
        "The sides run straight from the opening to the back. The throat lies level between them,"
        " its front and back as far in as given.",
        (
            Given("Opening width", design.opening.width),
            Given("Back width", f.back_width),
            Given("Firebox depth", f.depth),
            Given("Front of the throat, behind the opening", f.throat_front),
            Given("Throat, front to back", deep),
            Given("Net area of the flue", flue, "area"),
        ),
        (
            step(
                "Width between the sides at the front of the throat",
                front,
                "length",
                "The opening's width, less its share of what the sides close in over the whole"
                " depth.",
                [
                    (2 * f.half_width, no_splay),
                    (back, "That is at the back of the throat."),
                    (f.back_width, "That is the back of the firebox."),
                    (f.half_width + f.half_at(f.throat_front), "Both sides close in, not one."),
                ],
            ),
            step(
                "Width between the sides at the back of the throat",
                back,
                "length",
                "The same, farther in by the depth of the throat.",
                [
                    (front, "That is at the front of the throat."),
                    (f.back_width, "That is the back of the firebox."),
                    (2 * f.half_width, no_splay),
                ],
            ),
            step(
                "Free area of the throat",
                told.throat_area,
                "area",
                "Its depth times the middle of the two widths.",
                [
                    (2 * f.half_width * deep, no_splay),
                    (front * deep, "It narrows to the back: take the middle of the two widths."),
                    (back * deep, "It is wider at the front: take the middle of the two widths."),
                    (2 * told.throat_area, "Add the two widths, then take half."),
                    (f.back_width * deep, "That is the width of the back of the firebox."),
                ],
                "THR-03",
            ),
            step(
                "Throat area less flue area; negative if the throat is too small",
                spare,
                "area",
                "The free area of the throat less the net area of the flue.",
                [
                    (2 * f.half_width * deep - flue, no_splay),
                    (
                        front * deep - flue,
                        "It narrows to the back: take the middle of the two widths.",
                    ),
                ],
                "THR-03",
            ),
        ),
        design,
    )


def chamber(seed: int | str, pack: Pack, rng: Random) -> Exercise:
    """How low a smoke chamber may be by its slope, and how tall by the opening."""
    built = rng.choice(("corbelled", "sloped units"))
    width = rng.randrange(36, 49)
    design, told = work(
        {
            "opening.width": f"{width} in",
            "firebox.back_width": f"{width - rng.randrange(6, 11)} in",
            "firebox.depth": "20 in",
            "flue.shape": "round",
            "flue.size": rng.choice(("8", "10", "12")),
            "smoke_chamber.construction": built,
            "smoke_chamber.height": f"{width} in",
            "smoke_chamber.transition": inches(rng, 3, 6),
        }
    )
    f = told.frame
    key = "SMK-06" if built == "corbelled" else "SMK-05"
    limit, tallest = asked(pack, told, (key,)), asked(pack, told, ("SMK-04",))
    run = (f.throat_width - f.bore.width) / 2
    rise, transition = run / tan(limit), design.smoke_chamber.transition
    from_level = "The slope counts from the vertical, not from the level."
    return Exercise(
        "chamber",
        "smoke chamber",
        "Smoke chamber by its slope",
        seed,
        pack.name,
        f"The sides of a smoke chamber of {built if built != 'corbelled' else 'corbelled brick'}"
        " draw in evenly from the throat to the flue; on top of them the transition stands"
        " upright.",
        (
            Given("Width at the throat", f.throat_width),
            Given("Flue, inside width", f.bore.width),
            Given("Transition", transition),
            Given("Opening width", design.opening.width),
        ),
        (
            step(
                "How far each side draws in",
                run,
                "length",
                "Half of the difference between the width at the throat and the flue.",
                [
                    (2 * run, "That is both sides together."),
                    (f.throat_width / 2, "The flue stays open: it is taken off first."),
                    (
                        (f.throat_width - 2 * f.unit_half) / 2,
                        "Inside width of the flue, without the liner's wall.",
                    ),
                ],
            ),
            step(
                "Least height over which it may draw in",
                rise,
                "length",
                "What it draws in over the tangent of the steepest lean that is allowed for this"
                " way of building.",
                [
                    (run * tan(limit), from_level),
                    (run / sin(limit), "That is along the slope; the height is upright."),
                    (2 * rise, "Each side draws in only half."),
                    (
                        run / tan(_other_slope(design, pack)),
                        "That is the lean for the other way of building.",
                    ),
                ],
                key,
            ),
            step(
                "Least height of the whole smoke chamber",
                rise + transition,
                "length",
                "The transition comes on top.",
                [
                    (rise, "The transition is part of the smoke chamber."),
                    (rise - transition, "The transition comes on top of the slope, not out of it."),
                    (run * tan(limit) + transition, from_level),
                ],
                key,
            ),
            step(
                "Greatest height of the smoke chamber",
                tallest,
                "length",
                "As tall as the opening is wide.",
                [
                    (design.opening.height, "The opening's width decides, not its height."),
                    (f.throat_width, "That is the width at the throat."),
                    (tallest + transition, "The transition counts in."),
                ],
                "SMK-04",
            ),
        ),
        design,
    )


def _other_slope(design: Design, pack: Pack) -> float:
    """Steepest lean of the way of building that this one is not. [rad]"""
    corbelled = design.smoke_chamber.construction == "corbelled"
    _, told = work(
        {"smoke_chamber.construction": "sloped units" if corbelled else "corbelled"}, design
    )
    return asked(pack, told, ("SMK-05" if corbelled else "SMK-06",))
