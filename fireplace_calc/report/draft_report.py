"""The draft in words and rows, in the reader's units, each with the mode it was found in. Nothing
is computed here.
"""

from __future__ import annotations

import numpy as np

from fireplace_calc.assessment import Assessment
from fireplace_calc.base.printing import grouped, show
from fireplace_calc.base.units import FEET_INCHES, FOOT, MILLIMETRES
from fireplace_calc.draft import MODES
from fireplace_calc.draft.cases import CASES
from fireplace_calc.draft.conditions import RUNAWAY
from fireplace_calc.draft.findings import ALONE
from fireplace_calc.draft.findings.opinions import flue_opinions
from fireplace_calc.draft.findings.smoke import SHUT
from fireplace_calc.draft.lighting_up import WAYS

COLUMNS = (
    "Evening",
    "Face velocity",
    "Just carries the smoke",
    "Draft",
    "Room pulled down",
    "Margin before smoke",
    "Gas at foot and top",
    "Flue velocity",
    "Fans that tip it",
)
DYING = "dying down, mild"
LABEL = "Engineering judgement, not code."
BAND = (
    "The band draws air tightness, weather, wood, burn rate, walls and friction from their"
    " published ranges; it shows how far they spread the answer, not how good the model is."
)


def case_rows(result: Assessment, units: str = FEET_INCHES) -> list[tuple[str, ...]]:
    """One row an evening, operating mode.

    Parameters
    ----------
    result : Assessment
    units : str
        ``feet-inches`` or ``millimetres``.

    Returns
    -------
    list of tuple of str
        In the order of ``COLUMNS``.
    """
    flows, spills = result.draft.flows, result.draft.spills
    said: list[tuple[str, ...]] = []
    for k, case in enumerate(CASES):
        if flows.stalled[k]:
            said.append(
                (
                    case,
                    "none",
                    show(float(spills.capture[k]), "air speed", units),
                    *("",) * 2,
                    pascals(float(spills.margin[k])),
                    "",
                    "",
                    "smokes with no fan on",
                )
            )
            continue
        said.append(
            (
                case,
                show(float(flows.face[k]), "air speed", units),
                show(float(spills.capture[k]), "air speed", units),
                f"{flows.draft[k]:.1f} Pa",
                pascals(float(flows.pull[k])),
                f"{pascals(float(spills.margin[k]))}, {100 * spills.share[k]:z.0f} %",
                (
                    f"{show(float(flows.foot[k]), 'temperature', units)},"
                    f" {show(float(flows.top[k]), 'temperature', units)}"
                ),
                show(float(flows.speed[k]), "air speed", units),
                (
                    show(float(spills.tipping_fan[k]), "flow", units)
                    if spills.tipping_fan[k] > 0
                    else "smokes already"
                ),
            )
        )
    return said


def pascals(pressure: float) -> str:
    """A pressure on the house, or that there is no such pressure.

    Parameters
    ----------
    pressure : float
        [Pa]

    Returns
    -------
    str

    Examples
    --------
    >>> pascals(4.96), pascals(147_879.0), pascals(-300.0)
    ('5.0 Pa', 'over 100 Pa', 'under -100 Pa')
    """
    if abs(pressure) > RUNAWAY:
        return f"{'over ' if pressure > 0 else 'under -'}{RUNAWAY:.0f} Pa"
    return f"{pressure:z.1f} Pa"


def loss_rows(result: Assessment) -> list[tuple[str, ...]]:
    """Where the draft goes, one row a loss, one column an evening. [Pa]"""
    flows, own = result.draft.flows, result.draft.spills.stack
    rows = [
        ("draft of the chimney", *(f"{v:z.1f}" for v in flows.draft)),
        ("wind at top and walls", *(f"{v:z.1f}" for v in flows.wind)),
        ("pull of the warm house by itself", *(f"{v:z.1f}" for v in own)),
        (
            "pull of fire and fans",
            *(pascals(float(v)).removesuffix(" Pa") for v in flows.pull - own),
        ),
    ]
    return rows + [
        (name, *(f"{v:z.1f}" for v in np.broadcast_to(loss, len(CASES))))
        for name, loss in flows.losses.items()
        if np.any(loss)
    ]


def sized(result: Assessment, units: str = FEET_INCHES) -> str:
    """The face velocity of sizing mode, with what sizing mode is."""
    return (
        f"Face velocity {show(result.draft.sizing_velocity, 'air speed', units)}"
        f" ({MODES['sizing']})."
    )


SIZED = {FEET_INCHES: "0.8 ft/s", MILLIMETRES: show(0.8 * FOOT, "air speed", MILLIMETRES)}
"""Face velocity that flues are sized for, as sizing charts print it."""


def likely(result: Assessment, units: str = FEET_INCHES) -> str:
    """The odds in one sentence."""
    low, middle, high = (show(float(v), "air speed", units) for v in result.odds.face)
    below = float(result.odds.below) * 100
    said = f"{ALONE} " if result.draft.shared else ""
    said += f"{SHUT} " if result.draft.tended else ""
    return (
        f"{said}Over {grouped(result.odds.draws, units=units)} evenings it {result.odds.words};"
        f" {result.odds.dying_words}. While it burns: face velocity {low} to"
        f" {high}, half of them over {middle}; {below:.0f} of 100 stay under"
        f" {SIZED[units]}, which is a"
        " sizing figure."
    )


MEASURED_AIR = (11.0, 21.0)
"""Air over the air just needed, as open fires were measured: 10 to 20 times more than needed;
second hand. [-]
"""


def air_drawn(result: Assessment) -> str:
    """How much air the fire draws by this reckoning, and what was measured elsewhere."""
    low, high = MEASURED_AIR
    flows = result.draft.flows
    going = flows.air_ratio[~flows.stalled & (np.arange(len(CASES)) != CASES.index(DYING))]
    if not going.size:
        return "No fire draws here."
    least, most = f"{going.min():.0f}", f"{going.max():.0f}"
    said = least if least == most else f"{least} to {most}"
    return f"Air: {said} times what the wood needs; {low:.0f} to {high:.0f} published."


def air_doubted(result: Assessment) -> str:
    """The same, and what to make of it where the fire draws more than was measured."""
    said = air_drawn(result)
    if np.all(result.draft.flows.air_ratio[0] <= MEASURED_AIR[1]):
        return said
    return (
        f"{said} Either this fire is small for its opening, or the reckoning draws too much air at"
        " low fire; no measurement was found that settles it."
    )


def beside(result: Assessment, units: str = FEET_INCHES) -> tuple[str, ...]:
    """A few short sentences for beside the pictures."""
    flows, spills, mild = result.draft.flows, result.draft.spills, CASES.index("mild")
    speed = show(float(flows.face[mild]), "air speed", units)
    carries = show(float(spills.capture[mild]), "air speed", units)
    return (
        *([ALONE] if result.draft.shared else []),
        *([SHUT] if result.draft.tended else []),
        f"Sizing mode: {show(result.draft.sizing_velocity, 'air speed', units)} through the face.",
        f"Operating mode, mild evening: {speed}; {carries} just carries the smoke.",
        f"{result.odds.words.capitalize()} evenings; {result.odds.dying_words}.",
        LABEL,
        air_drawn(result),
    )


OPINIONS = ("By", "Flue it asks for", "Against the air", "Face velocity it gives", "Source")
OPINION = (
    "None of these rules knows the throat, the cap or the house; where they and the air differ by"
    " more than a fifth, ask why before you build."
)


def opinion_rows(result: Assessment, units: str = FEET_INCHES) -> list[tuple[str, ...]]:
    """The flue that each published rule asks for, beside what the air asks, sizing mode.

    Parameters
    ----------
    result : Assessment
    units : str
        ``feet-inches`` or ``millimetres``.

    Returns
    -------
    list of tuple of str
        In the order of ``OPINIONS``; this flue first.
    """
    said: list[tuple[str, ...]] = []
    for one in flue_opinions(result.draft):
        if one.area is None or one.off is None or one.velocity is None:
            figures = ("no such flue", "", "")
        else:
            figures = (
                show(one.area, "area", units),
                f"{100 * one.off:+z.0f} %",
                show(one.velocity, "air speed", units),
            )
        said.append((one.rule, *figures, f"{one.source.text}; {one.source.confidence}"))
    return said


LIGHTINGS = (
    "Evening, and how it is lit",
    "Smoke carried off",
    "Face, 1 min",
    "Face, 10 min",
    "Face, 60 min",
    "Liner, 10 min",
    "Liner, 60 min",
)
FIRST_FIRE = (
    "From a flue and a wall as cold as what stands around them. Kindling at 1 kg/h grows to the"
    " burn rate in a quarter hour; warming is three minutes of paper at the throat; the window is"
    " half a square foot open. Where the flue does not pull, open a window and warm the flue"
    " before you light it. The first fire is a small one: new masonry has to dry."
    " Smoke in the room: put the fire out and open up; nobody smells carbon monoxide."
)


def first_hour_rows(result: Assessment, units: str = FEET_INCHES) -> list[tuple[str, ...]]:
    """The first hour of the first fire, one row a way of lighting it, operating mode.

    Parameters
    ----------
    result : Assessment
    units : str
        ``feet-inches`` or ``millimetres``.

    Returns
    -------
    list of tuple of str
        In the order of ``LIGHTINGS``.
    """
    hour = result.first_hour
    at = [int(np.searchsorted(hour.times, minutes * 60.0)) for minutes in (1, 10, 60)]
    said: list[tuple[str, ...]] = []
    for k, after in enumerate(hour.established):
        evening = CASES[k // len(WAYS)]
        if np.isinf(after):
            when = "not in the first hour" if hour.up[-1, k] else "not at all: air comes down"
        else:
            when = "at once" if after <= hour.times[0] else f"after {after / 60:.1f} min"
        speeds = (show(float(hour.face[m, k]), "air speed", units) for m in at)
        liner = (show(float(hour.liner[m, k]), "temperature", units) for m in at[1:])
        said.append((f"{evening}, {WAYS[k % len(WAYS)]}", when, *speeds, *liner))
    return said
