"""What follows from several readings together: raise, areas, trim, the height of the flue. [m]"""

from __future__ import annotations

from collections.abc import Mapping
from math import pi
from typing import Any

from fireplace_calc.base.printing import length_text, named
from fireplace_calc.base.units import INCH, InputError
from fireplace_calc.design.mantel import TOLD
from fireplace_calc.design.records import Design
from fireplace_calc.design.surround import Trim
from fireplace_calc.geometry.frame_builder import build_frame
from fireplace_calc.survey.reading import MEASURED, UNREACHED, SurveyReading

Readings = Mapping[str, SurveyReading]
TALLEST = 60 * INCH
"""What the standard height of an opening may be; what is over it counts as raised. [m]"""
LOWEST_THROAT = INCH / 4
"""Over the opening: the thinnest lintel that can be drawn stays below the throat. [m]"""
USUAL_SECTION = 24 * INCH
"""Of clay flue liners, as most are made: joints of a flue that stands are not seen. [m]"""
FEWEST, MOST = 4, 40
"""Sections that can be drawn. [-]"""


def length_of(readings: Readings, key: str) -> float | None:
    """What was taken for a length; unknown where it was not measured. [m]

    Parameters
    ----------
    readings : mapping
    key : str
    """
    one = readings[key]
    return float(one.taken) if one.state == MEASURED else None


def opening_inputs(readings: Readings) -> dict[str, Any]:
    """Standard height and raise, from the height now and the height before.

    Raises
    ------
    InputError
        When it was higher before than it is now.
    """
    now, before = (length_of(readings, key) for key in ("opening height", "height before raising"))
    if now is None:
        return {}
    if before is None:
        standard = min(now, TALLEST)
        raised = {"opening.extension": _of_a_sum(now - standard)} if now > standard else {}
        return {"opening.standard_height": length_text(standard), **raised}
    if before > now:
        raise InputError(
            f"Height before raising is {readings['height before raising'].text}, but the opening is"
            f" {readings['opening height'].text} high now; measure both from the firebox floor.",
            "height before raising",
            f"at most {readings['opening height'].text}",
            before,
        )
    return {
        "opening.standard_height": readings["height before raising"].text,
        "opening.extension": _of_a_sum(now - before),
    }


def _of_a_sum(value: float) -> str:
    """A length worked out of others as a tape has it, without what floats leave over. [m]"""
    return length_text(round(value, 9))


def low_throat(readings: Readings) -> tuple[dict[str, Any], tuple[str, ...]]:
    """A throat that lies behind the lintel, as a raised opening leaves it: drawn as near to that
    as can be, and said.

    Returns
    -------
    dict, tuple of str
        A throat level with the opening is drawn a quarter of an inch over it; a lintel that reaches
        past the throat is drawn, and figured, only as high as that.
    """
    throat, lintel = (length_of(readings, key) for key in ("throat height", "lintel height"))
    if throat is None:
        return {}, ()
    made: dict[str, Any] = {}
    said: list[str] = []
    drawn = max(throat, LOWEST_THROAT)
    if drawn > throat:
        made["throat.height"] = length_text(drawn)
        said.append(
            f"Throat height is {readings['throat height'].text} and drawn {named(drawn, 'length')}:"
            " nothing lower can be drawn."
        )
    if lintel is not None and lintel > drawn:
        made["lintel.height"] = length_text(drawn)
        said.append(
            f"Lintel height is {readings['lintel height'].text} and drawn {named(drawn, 'length')}:"
            " the throat lies behind it. It is figured with the smaller one."
        )
    return made, tuple(said)


def throat_inputs(readings: Readings) -> dict[str, Any]:
    """Free area of the throat: the least depth times the least length."""
    deep, long = (length_of(readings, key) for key in ("throat depth", "throat length"))
    return {} if deep is None or long is None else {"measured.throat_area": _area(deep * long)}


def trim_inputs(readings: Readings) -> dict[str, Any]:
    """Trim that burns, above and beside the opening; what was not reached of it stays unknown."""
    pieces = []
    for name, place in (("mantel", "above"), ("side trim", "beside")):
        both = [readings[f"{name} {what}"] for what in ("distance", "projection")]
        if any(one.state in (MEASURED, UNREACHED) for one in both):
            distance, projection = (one.taken for one in both)
            pieces.append(Trim(name, place, distance, projection))
    burns = readings["trim that burns"].taken
    if burns is False and pieces:
        raise InputError(
            f"Trim that burns is no, but the {pieces[0].name} is measured; say yes, or take its"
            " readings out.",
            "trim that burns",
            "yes, where trim is measured",
            "no",
        )
    if burns and not pieces:
        pieces.append(Trim("trim that burns"))
    if not pieces and burns is not False:
        return {}
    return {"mantel.family": TOLD, "surround.trim": pieces}


def corners(radius: float) -> float:
    """What rounded corners take from a rectangle. [m2]

    Parameters
    ----------
    radius : float
        Of each of four. [m]
    """
    return (4 - pi) * radius**2


def flue_inputs(readings: Readings) -> tuple[dict[str, Any], str]:
    """The flue as it was measured at its top, and a sentence where its area cannot be told.

    Returns
    -------
    dict, str
        Without its shape, both sides and the rounding of its corners the area stays unknown: a
        rectangle with sharp corners would promise more than is open.
    """
    shape = readings["flue shape"]
    wide, deep, radius = (
        length_of(readings, key) for key in ("flue width", "flue depth", "rounding of the corners")
    )
    keys = ("flue shape", "flue width", "flue depth", "rounding of the corners")
    if all(readings[key].state not in (MEASURED, UNREACHED) for key in keys):
        return {}, ""
    unknown: dict[str, Any] = {"flue.area_from": None}
    if shape.state != MEASURED or wide is None:
        return unknown, "Flue area: not checked. Its shape and its sides were not all measured."
    drawn: dict[str, Any] = {
        "flue.shape": shape.text,
        "flue.size": "own",
        "flue.own_width": readings["flue width"].text,
    }
    told = {"flue.area_from": "field measured"}
    if shape.taken == "round":
        return drawn | told | {"measured.flue_area": _area(pi * wide**2 / 4)}, ""
    if deep is None:
        return unknown, "Flue area: not checked. Its shape and its sides were not all measured."
    drawn["flue.own_depth"] = readings["flue depth"].text
    if radius is None:
        return drawn | unknown, _between(readings, wide, deep)
    if 2 * radius > min(wide, deep):
        raise InputError(
            f"Rounding of the corners is {readings['rounding of the corners'].text}, but the flue"
            f" is {readings['flue width'].text} by {readings['flue depth'].text}: at most half the"
            " shorter side can be round.",
            "rounding of the corners",
            "at most half the shorter side",
            radius,
        )
    return drawn | told | {"measured.flue_area": _area(wide * deep - corners(radius))}, ""


def _between(readings: Readings, wide: float, deep: float) -> str:
    """How much and how little the flue may have, and what of the opening that is."""
    most, least = wide * deep, wide * deep - corners(min(wide, deep) / 2)
    said = "Flue area: not checked. The rounding of its corners was not measured."
    across, high = (length_of(readings, key) for key in ("opening width", "opening height"))
    if across is None or high is None:
        return said
    area = across * high
    return (
        f"{said} It lies between {named(least, 'area')} and {named(most, 'area')}: 1/"
        f"{area / least:.1f} to 1/{area / most:.1f} of the opening."
    )


def _area(value: float) -> str:
    return f"{value!r} m2"


def chimney_inputs(readings: Readings, design: Design) -> dict[str, Any]:
    """Flue sections and ridge, so that the drawing is as high as what was measured.

    Parameters
    ----------
    readings : mapping
    design : Design
        With everything below the flue as it was measured; it is not asked whether it fits.

    Raises
    ------
    InputError
        When the height measured leaves no room for a flue.
    """
    height = length_of(readings, "chimney height")
    if height is None:
        return {}
    frame = build_frame(design)
    rise, joint = height - (frame.flue_start - frame.hearth), design.flue.joint
    number = min(max(round(rise / (USUAL_SECTION + joint)), FEWEST), MOST)
    if rise / number < 4 * INCH + joint:
        told = readings["chimney height"].text
        raise InputError(
            f"Chimney height is {told}, but firebox, throat and smoke chamber alone take"
            f" {named(frame.flue_start - frame.hearth, 'length')}: measure from the firebox floor"
            " to the top of the flue.",
            "chimney height",
            "more than firebox, throat and smoke chamber",
            height,
        )
    made: dict[str, Any] = {
        "flue.sections": number,
        "flue.section_height": length_text(rise / number - joint),
    }
    return made | _ridge(readings, frame.hearth + height - design.chimney.liner_above)


def _ridge(readings: Readings, crown_top: float) -> dict[str, Any]:
    """Level of the ridge from what was measured at the top of the chimney. [m]"""
    over, pitch = (readings[key].taken for key in ("top over the roof", "roof pitch"))
    if over is None:
        return {}
    contact = crown_top - over
    if readings["where it comes out"].taken == "through the ridge":
        return {"roof.ridge_level": _of_a_sum(contact)}
    away = length_of(readings, "ridge distance")
    if pitch is None or away is None:
        return {}
    return {"roof.ridge_level": _of_a_sum(contact + pitch * away)}
