"""A card in words, short, as one says them on site. Lengths by the tape."""

from __future__ import annotations

from fireplace_calc.base.printing import grouped, show
from fireplace_calc.base.units import FEET_INCHES, FOOT, MILLIMETRES
from fireplace_calc.build.lifting.equation import HOIST, TWO
from fireplace_calc.build.setting.cards import SettingCard
from fireplace_calc.build.setting.handling import strained
from fireplace_calc.geometry.assembled.assembly import Placed
from fireplace_calc.pieces.joints.tape import tape_text
from fireplace_calc.pieces.records import Round
from fireplace_calc.pieces.roles import FIREBOX

LITER, QUART = 0.001, 0.000946352946
"""[m3]"""
FALL = 6 * FOOT
"""From this height one can fall: 29 CFR 1926.501(b), from memory. [m]"""

Rows = tuple[tuple[str, str], ...]


def card_title(card: SettingCard) -> str:
    """What is set: mark and name."""
    if card.placed is None:
        return "Firebrick lining"
    piece = card.placed.piece
    return f"{card.name}  {piece.name}"


def card_words(card: SettingCard, units: str = FEET_INCHES) -> Rows:
    """A card as headings and what stands beside them, from the lift to the check.

    Parameters
    ----------
    card : SettingCard
    units : str
        ``feet-inches`` or ``millimetres``.

    Returns
    -------
    tuple of (str, str)
    """
    if card.placed is None:
        return _lining_words(card, units)
    rows = [
        ("Weight", _weight(card, units)),
        ("Lift", _lift(card)),
        ("Rests on", ", ".join(card.carried_by) or "the footing or base under it"),
        ("Place", _place(card, units)),
        ("Bed", _bed(card.placed, units)),
        ("Joints", _joints(card, units)),
        ("Mortar", _mortar(card, units)),
        ("Top at", f"{tape_text(card.top, units)} on the story pole"),
        ("Check", _check(card, units)),
    ]
    return tuple((head, words) for head, words in rows if words)


def card_cautions(card: SettingCard) -> tuple[str, ...]:
    """What can hurt in a step; the local rules come first.

    Parameters
    ----------
    card : SettingCard

    Returns
    -------
    tuple of str
        One sentence a danger.
    """
    if card.placed is None or card.handling is None:
        return (
            "Dust: cut firebrick wet, with a guard on the blade.",
            "Skin and eyes: wet mortar burns; gloves and goggles.",
        )
    said = []
    if card.handling.verdict == HOIST:
        said.append("Lifting: hoist only. Nobody under the load; guide it by a rope.")
    elif strained(card.handling):
        said.append("Lifting: a strain at this height. Bring pile and stand nearer to the bed.")
    said.append("Hands: keep fingers off the bed while it comes down; boards or wedges first.")
    role = card.placed.piece.role
    if role == "lintel":
        said.append("Collapse: props stay under it until the mortar is hard. Nobody under it.")
    if role in ("reducer", "throat front", "throat back") and card.hold is None:
        said.append("Collapse: brace it until its lift is closed.")
    if card.top - card.placed.piece.height > FALL:
        said.append("Heights: rails or arrest on the staging, nothing dropped.")
    if role == "flue" and card.number == card.of:
        said.append("CO and fire: look through the flue from end to end; nothing is left in it.")
    if card.opens_mix:
        said.append("Dust, skin and eyes: mask while mixing, gloves and goggles.")
    return tuple(said)


def volume_text(volume: float, units: str) -> str:
    """A small volume as it is measured out.

    Parameters
    ----------
    volume : float
        [m3]
    units : str
        ``feet-inches`` or ``millimetres``.

    Returns
    -------
    str
        Quarts or liters.

    Examples
    --------
    >>> volume_text(0.0005, "feet-inches"), volume_text(0.0005, "millimetres")
    ('0.5 qt', '0.5 L')
    """
    if units == MILLIMETRES:
        return f"{grouped(volume / LITER, 1, units)} L"
    return f"{grouped(volume / QUART, 1, units)} qt"


def weight_text(weight: float, units: str) -> str:
    """A weight in both systems, the reader's first.

    Parameters
    ----------
    weight : float
        [kg]
    units : str
        ``feet-inches`` or ``millimetres``.

    Examples
    --------
    >>> weight_text(20.0, "feet-inches"), weight_text(20.0, "millimetres")
    ('44 lb (20 kg)', '20 kg (44 lb)')
    """
    both = show(weight, "mass"), show(weight, "mass", MILLIMETRES)
    first, second = reversed(both) if units == MILLIMETRES else both
    return f"{first} ({second})"


def _weight(card: SettingCard, units: str) -> str:
    if card.handling is None:
        return ""
    known = "weighed" if card.handling.weighed else "from its density; weigh one"
    return f"{weight_text(card.handling.weight, units)}, {known}"


def _lift(card: SettingCard) -> str:
    if card.handling is None:
        return ""
    more = {TWO: ", one at each end", HOIST: ", two to guide it"}
    return f"{card.handling.verdict}{more.get(card.handling.verdict, '')}"


def _place(card: SettingCard, units: str) -> str:
    front = (
        "front edge on the front line"
        if abs(card.front) < 1e-6
        else f"front edge {tape_text(card.front, units)} back of the front line"
    )
    left, right = card.left, card.right
    if left < 0 < right:
        if abs(left + right) < 1e-6:
            return f"{front}; centered, {tape_text(right, units)} each way"
        return (
            f"{front}; {tape_text(-left, units)} left and {tape_text(right, units)} right of the"
            " center line"
        )
    side = "right" if left >= 0 else "left"
    near, far = sorted((abs(left), abs(right)))
    return (
        f"{front}; edges {tape_text(near, units)} and {tape_text(far, units)} {side} of the center"
        " line"
    )


def _bed(one: Placed, units: str) -> str:
    nested = any(isinstance(s, Round) and s.bottom == 0.0 for s in one.piece.cuts)
    bed = tape_text(one.bed, units)
    most = "no more spread than you cover in 10 to 15 minutes"
    fill = "; fill the socket, wipe the bore" if nested and one.piece.role == "flue" else ""
    return f"{bed}, full; wet the dry faces; {most}{fill}"


def _joints(card: SettingCard, units: str) -> str:
    if not card.beside:
        return ""
    joints = ", ".join(f"{tape_text(wide, units)} to {name}" for name, wide in card.beside)
    return f"{joints}; butter the edge, wipe inside and out"


def _mortar(card: SettingCard, units: str) -> str:
    if card.mortar is None or card.mix is None:
        return ""
    here = volume_text(card.mortar.volume, units)
    if not card.opens_mix:
        return f"{here}, from mix {card.mix.number}"
    names = ", ".join(card.mix.names)
    late = "" if card.mix.in_time else "; spread it in two goes, it sets slower than it is good"
    return (
        f"{here}; make mix {card.mix.number}, {volume_text(card.mix.volume, units)} for {names}"
        f"{late}"
    )


def _check(card: SettingCard, units: str) -> str:
    one = card.placed
    if one is None:
        return ""
    each = "level both ways, plumb, front edge on its line"
    if card.hold is None:
        return each
    hold = card.hold
    inside = " Diagonals equal." if one.piece.role in FIREBOX and one.piece.role != "lintel" else ""
    return (
        f"{each}. STOP, lift complete: {card.lift}. Tops level within"
        f" {tape_text(hold.level, units)}, faces plumb within {tape_text(hold.plumb, units)} from"
        f" the start, beds within"
        f" {tape_text(hold.joint, units)} of what is told, top on its mark.{inside}"
    )


def _lining_words(card: SettingCard, units: str) -> Rows:
    lining, laid = card.lining, card.laid
    if lining is None:
        return ()
    counted: Rows = ()
    if laid is not None:
        counted = (
            ("Brick", f"{laid.whole} firebrick whole, {laid.cut} to cut, waste not counted"),
            (
                "Mortar",
                f"{volume_text(laid.mortar, units)} refractory, mixed as you lay: no more than you"
                " cover in 10 to 15 minutes",
            ),
            ("Time", f"{grouped(laid.seconds / 3600, 1)} h of one mason, at the pace under Work"),
        )
    return (
        ("Floor", f"{tape_text(lining.floor, units)}, set out from the center line"),
        (
            "Sides, back",
            f"{tape_text(lining.thickness, units)} firebrick, {tape_text(lining.joint, units)}"
            " joints behind and between, second course bonded by half bricks",
        ),
        ("Top", "up to the joint under the smoke shelf, closed with a slope of mortar"),
        *counted,
        ("Check", "sides alike, plumb; no joint wider than half a brick is thick"),
    )
