"""Lift parts that go up together as one step, what the step is called, and why it comes where it
does.
"""

from __future__ import annotations

from fireplace_calc.build.lift_parts import STACK, LiftPart
from fireplace_calc.build.order import Dependency, Order


def grouped(order: Order) -> list[list[int]]:
    """Which lift parts make a step: flue and chimney of one working floor rise together.

    Parameters
    ----------
    order : Order

    Returns
    -------
    list of list of int
        Their places in the order, step by step. [-]
    """
    found: list[list[int]] = []
    for n, lift_part in enumerate(order.lift_parts):
        before = order.lift_parts[found[-1][-1]] if found else None
        together = (
            before
            and before.part in STACK
            and lift_part.part in STACK
            and before.floor == lift_part.floor
        )
        if together:
            found[-1].append(n)
        else:
            found.append([n])
    return found


def step_name(built: list[LiftPart]) -> str:
    """What a step is called.

    Parameters
    ----------
    built : list of LiftPart
        What goes up in it.

    Returns
    -------
    str
    """
    first = built[0]
    if first.part not in STACK:
        return first.name.capitalize()
    parts = {s.part for s in built}
    words = [
        word
        for word, has in (
            ("flue", parts & {"flue liner", "flue casing"}),
            ("second flue", parts & {"second flue liner", "second flue casing"}),
            ("breast", "breast walls" in parts),
            ("shoulder", "shoulder" in parts),
            ("chimney", "chimney walls" in parts),
        )
        if has
    ]
    lift = "" if first.of == 1 else f", lift {first.number} of {first.of}"
    return (", ".join(words[:-1]) + " and " * (len(words) > 1) + words[-1]).capitalize() + lift


def carried(dependencies: list[Dependency]) -> bool:
    """Whether something drawn carries a lift part.

    Parameters
    ----------
    dependencies : list of Dependency
        Why it waits.

    Returns
    -------
    bool
        False for the footing, and for what stands on the room's floor.
    """
    return any(
        t.how in ("rests on", "goes on", "stands in", "leans on", "is cast against")
        for t in dependencies
    )


def reasons(order: Order, group: list[int], into: list[list[Dependency]]) -> tuple[str, ...]:
    """What a step rests on, stands in, goes round or leans on.

    Parameters
    ----------
    order : Order
    group : list of int
        Places of its lift parts in the order. [-]
    into : list of list of Dependency
        Why each lift part of the order waits.

    Returns
    -------
    tuple of str
        Each once.
    """
    first = order.lift_parts[group[0]]
    found = [
        "goes on what is below it"
        if t.how == "goes on"
        else f"{t.how} {order.lift_parts[t.first].part}"
        for n in group
        for t in into[n]
        if t.first not in group
    ]
    if first.part == "footing":
        found.append("bears on undisturbed ground or engineered fill")
    elif not carried(into[group[0]]):
        found.append(
            "bears on the floor of the room or the ground, which the drawing does not hold"
            if first.part.startswith(("hearth ext", "hearth seat"))
            else "bears on nothing that is drawn: give its ends a bearing before it is set"
        )
    return tuple(dict.fromkeys(found))
