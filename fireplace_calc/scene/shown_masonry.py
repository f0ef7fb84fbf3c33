"""What is built, as things to be seen and picked: in its room, whole, cut open, drawn apart, or set
step by step.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from fireplace_calc.assessment import Assessment
from fireplace_calc.base.arrays import Array, BoolArray, IntArray
from fireplace_calc.build.steps import MANTEL_STEP
from fireplace_calc.geometry.arches import ArchRing, ArchVoid
from fireplace_calc.geometry.mantel.on_face import mantel_parts
from fireplace_calc.geometry.mesh import CUT_NORMALS, Mesh, skin
from fireplace_calc.geometry.parts import Geometry, Part
from fireplace_calc.geometry.solids import Cylinder
from fireplace_calc.proportion.wall_guides import wall_top
from fireplace_calc.scene.built.finish import FACED, PLASTERED, faced, stuff_of
from fireplace_calc.scene.built.hand_set import is_something, sections_of
from fireplace_calc.scene.built.mantel import mantel_solids
from fireplace_calc.scene.built.of_set import pieces_of_set, setting_steps, steps_beside_the_set
from fireplace_calc.scene.built.spread import before_walls, spread_apart
from fireplace_calc.scene.built.standing import ShownSolid, between_levels
from fireplace_calc.scene.records import Thing
from fireplace_calc.takeoff.shares_of_set import is_of_set

STATES = ("room", "whole", "cut", "apart", "built")
"""How what is built can be shown."""
HIDDEN = (
    "footing",
    "base core",
    "transition",
    "smoke chamber lining",
    "flue liner",
    "flue casing",
    "second flue liner",
    "second flue casing",
    "crown",
)
"""Parts that nobody sees from the room."""
IN_SIGHT = ("base plates", "firebox walls", "lintel", "throat back", "smoke shelf", "throat front")
"""Parts whose pieces are seen from the room."""
BEHIND_LINING = ("base plates", "firebox walls")
"""Of these, what a lining hides."""
FLUSH = 0.02
"""What ends this little under the floor is seen from above. [m]"""
CUT = CUT_NORMALS["left half"]
"""The way from the knife into what is kept; it goes through the middle of the fire. [-]"""


def masonry(result: Assessment, state: str = "whole") -> tuple[Thing, ...]:
    """What is built, in one of five states.

    Parameters
    ----------
    result : Assessment
    state : str
        ``room``: what the room sees; ``whole``; ``cut``: its right half, with what the knife laid
        bare as things of their own; ``apart``: sections and pieces by themselves, with how far each
        is moved; ``built``: with the step in which each is set.

    Returns
    -------
    tuple of Thing
        From the footing up.

    Raises
    ------
    ValueError
        When there is no such state.
    """
    if state not in STATES:
        raise ValueError(f"State is {state!r}, but there are only {', '.join(STATES)}.")
    geometry = result.geometry
    standing = tuple(filter(is_something, _standing(result, state)))
    if state == "cut":
        return tuple(_cut_open(geometry, standing))
    away = spread_apart(geometry, standing) if state == "apart" else {}
    bare = state in ("apart", "built")
    made = (_thing(geometry, one, bare) for one in standing)
    return tuple(replace(thing, away=away[thing.key]) if away else thing for thing in made)


def mantel_things(result: Assessment, state: str = "whole") -> tuple[Thing, ...]:
    """Mantel and trim, in one of the states of what is built.

    Parameters
    ----------
    result : Assessment
    state : str

    Returns
    -------
    tuple of Thing
        Nothing where there is none.
    """
    geometry = result.geometry
    hung = mantel_solids(geometry, _hung_at(result) if state == "built" else 0)
    hung = tuple(filter(is_something, hung))
    if state == "cut":
        return tuple(_cut_open(geometry, hung))
    away = (0.0, 0.0, 0.0)
    if hung and state == "apart":
        walls = tuple(filter(is_something, _standing(result, state)))
        away = before_walls(spread_apart(geometry, walls), walls)
    return tuple(replace(_thing(geometry, one, state == "apart"), away=away) for one in hung)


def _hung_at(result: Assessment) -> int:
    """In which step mantel and trim are put up, after all that is built; nought without any."""
    if not mantel_parts(result.geometry):
        return 0
    if steps := setting_steps(result.geometry):
        return max(steps.values()) + 2
    return max((s.number for s in result.work.steps if s.name == MANTEL_STEP), default=0)


def last_step(result: Assessment) -> int:
    """Steps from the bare footing to the last thing that is set.

    Parameters
    ----------
    result : Assessment

    Returns
    -------
    int
        Pieces and lining of a set, and one for all that is laid round it; steps of work of a laid
        design; and the mantel. [-]
    """
    if steps := setting_steps(result.geometry):
        return max(max(steps.values()) + 1, _hung_at(result))
    last = max(s.number for s in result.work.steps if s.parts)
    return max(last, _hung_at(result))


def _standing(result: Assessment, state: str) -> Iterator[ShownSolid]:
    geometry = result.geometry
    if geometry.design.piece_set is None:
        if state == "built":
            yield from _step_by_step(result)
        else:
            for part in geometry.parts:
                yield from _laid(geometry, part, state)
        return
    beside, last = steps_beside_the_set(geometry), max(setting_steps(geometry).values()) + 1
    for part in geometry.parts:
        if is_of_set(geometry, part) and part.material == "refractory":
            continue
        step = beside.get(part.name, last) if state == "built" else 0
        yield from (replace(one, step=step) for one in _laid(geometry, part, state))
    pieces = pieces_of_set(geometry)
    if state == "room":
        lined = "firebox lining" in geometry.parts_by_name
        seen = set(IN_SIGHT) - set(BEHIND_LINING if lined else ())
        pieces = tuple(one for one in pieces if one.part in seen)
    elif state == "apart":
        pieces = tuple(one for one in pieces if one.kind == "piece")
    yield from pieces


def _laid(geometry: Geometry, part: Part, state: str) -> Iterator[ShownSolid]:
    """A part that is no piece, in one state."""
    smooth = _round(part)
    if state == "apart" and (sections := sections_of(geometry, part)):
        yield from sections
        return
    if state == "room":
        if part.name in HIDDEN or part.top <= -FLUSH or part.bottom >= wall_top(geometry):
            return
        if part.name not in FACED:
            body = between_levels(part, high=max(wall_top(geometry), part.bottom))
            yield ShownSolid(part.name, part.name, part.name, part.material, body, smooth=smooth)
            return
    for one in faced(geometry, part):
        if state != "room" or one.key in (part.name, f"{part.name} {PLASTERED}"):
            yield replace(one, smooth=smooth)


def _step_by_step(result: Assessment) -> Iterator[ShownSolid]:
    """A laid design in the order of its work: what of a part is built from one floor is a thing."""
    geometry = result.geometry
    cut = {p.name: sections_of(geometry, p) for p in geometry.parts if "flue" in p.name}
    for step in result.work.steps:
        for lift in step.parts:
            part = geometry.parts_by_name[lift.part]
            if cut.get(lift.part):
                for one in cut[lift.part]:
                    middle = sum(one.body.bounding_box()[2::3]) / 2
                    if lift.low <= middle < lift.high:
                        yield replace(one, step=step.number)
                continue
            body = between_levels(part, lift.low, lift.high)
            key = lift.part if lift.of == 1 else lift.name
            yield ShownSolid(
                key,
                lift.name,
                lift.part,
                part.material,
                body,
                step=step.number,
                smooth=_round(part),
            )


def _round(part: Part) -> bool:
    return any(isinstance(s, (Cylinder, ArchRing, ArchVoid)) for s in (*part.adds, *part.cuts))


def _thing(geometry: Geometry, one: ShownSolid, apart: bool) -> Thing:
    made = skin(one.name, one.material, one.body)
    if made is None:
        raise ValueError(f"Nothing is left of {one.name}.")
    return _from_mesh(one, made, stuff_of(geometry, one, apart))


def _from_mesh(one: ShownSolid, made: Mesh, stuff: str) -> Thing:
    import numpy as np

    # A copy: the points of a skin are the library's own, and would keep all of it.
    points = np.array(made.points)
    return Thing(
        one.key,
        one.name,
        stuff,
        one.kind,
        points,
        made.faces,
        one.part,
        one.smooth,
        step=one.step,
        item=one.item,
    )


def _cut_open(geometry: Geometry, standing: tuple[ShownSolid, ...]) -> Iterator[Thing]:
    """What the knife leaves, and the faces it laid bare."""
    for one in standing:
        made = skin(one.name, one.material, one.body, (CUT, 0.0))
        if made is None:
            continue
        bare = (made.normals[:, 0] < -1 + 1e-9) & (
            abs(made.points[made.faces, 0]).max(axis=1) < 1e-7
        )
        if not bare.all():
            rest = Mesh(made.name, made.material, *_only(made, ~bare))
            yield _from_mesh(one, rest, stuff_of(geometry, one))
        if bare.any():
            cap = Mesh(made.name, made.material, *_only(made, bare))
            thing = _from_mesh(one, cap, one.material)
            yield replace(thing, key=f"{one.key}, cut", cut=True, smooth=False)


def _only(made: Mesh, chosen: BoolArray) -> tuple[Array, IntArray]:
    """Points and faces of some faces."""
    import numpy as np

    faces = made.faces[chosen]
    kept, back = np.unique(faces, return_inverse=True)
    return made.points[kept], back.reshape(-1, 3).astype("int32")
