"""A design in three sentences for whoever pays for it, and what everybody who lives with a fire
should know.
"""

from __future__ import annotations

from fireplace_calc.assessment import Assessment
from fireplace_calc.base.printing import show
from fireplace_calc.base.units import FEET_INCHES, from_unit
from fireplace_calc.build.notes import cautions
from fireplace_calc.proportion import corner_fit, corner_of_room, shelf_top
from fireplace_calc.proportion.figures import proportion_figures
from fireplace_calc.report.for_client.fallen_short import shortfall
from fireplace_calc.report.sentences import require_units
from fireplace_calc.rules.comparing import NOT_CHECKED

IN_ENGLAND = (
    "Enjoy it with a fireguard in place, and with nothing that can burn within 1 m.",
    "Before the first fire: a carbon monoxide alarm in the room with the fire and a smoke alarm on"
    " every storey.",
    "Open the damper before you light it and leave it open until the ashes are cold; then they go"
    " into a lidded metal bin, at least 3.1 m from the house.",
    "This is a plan to talk over, not to build from: building control and the qualified people who"
    " build it have the last word, and what is not checked is not safe until somebody has looked.",
)
"""Cautions with the figures of the safety table as it stands for England."""


def client_sentences(result: Assessment, units: str = FEET_INCHES) -> tuple[str, str, str]:
    """Three plain sentences, every figure of them the design's.

    Parameters
    ----------
    result : Assessment
        Draft and structure are worked out for it.
    units : str
        ``feet-inches`` or ``millimetres``.

    Returns
    -------
    tuple of str
        Its size, what it does to the room, what to know before it is built.
    """
    require_units(units)
    return _size(result, units), _in_its_room(result, units), _to_know(result)


def _size(result: Assessment, units: str) -> str:
    f, design = result.geometry.frame, result.design
    wide, high = design.opening.width, f.clear_top - f.hearth
    arched = " at the crown of its arch" if f.spring < f.opening_top else ""
    over = "level with the floor"
    if abs(f.hearth) > 1e-6:
        side = "over" if f.hearth > 0 else "under"
        over = f"{show(abs(f.hearth), 'length', units)} {side} the floor"
    return (
        f"The opening is {show(wide, 'length', units)} wide and {show(high, 'length', units)}"
        f" high{arched}, its hearth {over}, its face of {design.surround.face}."
    )


def _in_its_room(result: Assessment, units: str) -> str:
    """How much of the wall and the floor it takes, and where its shelf stands to the eye."""
    f, design = result.geometry.frame, result.design
    wide, told = show(2 * f.block_half, "length", units), design.house.room_length
    wall = f" of the {show(told, 'length', units)} wall" if told is not None else " of the wall"
    reach = (
        f", the hearth comes {show(design.hearth.front, 'length', units)} into the room"
        if design.hearth.front > 0
        else ""
    )
    if (corner := corner_of_room(result.geometry)) is not None:
        wall = f" of a {show(corner.width, 'length', units)} wall across a corner of the room"
    name, level = shelf_top(result.geometry)
    eye = proportion_figures()["eye level"][0]
    height = "over" if level > eye else "below"
    fit = corner_fit(result.geometry, units)
    return (
        f"Its masonry takes {wide}{wall}{reach}, and the top of the {name} stands {height} the eye"
        f" of somebody standing{'; ' if fit else ''}{fit}."
    )


def _to_know(result: Assessment) -> str:
    """What is to be put right, what is open, and how it draws."""
    short = shortfall(result)
    parts = [
        f"{len(found)} {'point' if len(found) == 1 else 'points'} of {words}"
        for found, words in ((short.code, "the code"), (short.judged, "draft and structure"))
        if found
    ]
    has = "has" if len(short.all) == 1 else "have"
    right = (
        f"Before it is built, {' and '.join(parts)} {has} to be put right"
        if parts
        else "Nothing that was checked falls short"
    )
    are = "is" if short.open == 1 else "are"
    left = f", and {short.open} of the code {are} {NOT_CHECKED} yet" if short.open else ""
    return f"{right}{left}; as drawn it {result.odds.words}."


def client_cautions(units: str = FEET_INCHES, pack: str = "") -> tuple[str, ...]:
    """What everybody who lives with a fire should know, said kindly; distances are those of the
    safety table.

    Parameters
    ----------
    units : str
        ``feet-inches`` or ``millimetres``.
    pack : str
        Name of the book; who lives in England is told it in English words.

    Returns
    -------
    tuple of str
        Sentences, the one about who decides last.
    """
    if pack.startswith("UK"):
        return IN_ENGLAND
    screen, can = (
        show(from_unit(one.number, one.unit), "length", units)
        for one in cautions()
        if one.topic == "fire" and one.number is not None
    )
    return (
        f"Enjoy it with a screen in place, and with nothing that can burn within {screen}.",
        "Before the first fire: a carbon monoxide alarm outside every sleeping area and a smoke"
        " alarm on every story.",
        "Open the damper before you light it and leave it open until the ashes are cold; then they"
        f" go into a lidded metal can, {can} from the house.",
        "This is a plan to talk over, not to build from: your building department and the licensed"
        " people who build it have the last word, and what is not checked is not safe until"
        " somebody has looked.",
    )
