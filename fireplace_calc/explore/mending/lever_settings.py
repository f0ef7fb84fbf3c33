"""Every setting of a lever in one design, by steps."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import asdict, dataclass
from functools import lru_cache
from math import inf
from typing import Protocol, TypeAlias

from fireplace_calc.base.reading import to_si
from fireplace_calc.base.tables.liners import rectangular_liners, round_liners
from fireplace_calc.base.tolerances import ROUNDING
from fireplace_calc.base.units import SI_UNIT, SQIN
from fireplace_calc.design.mantel import BURNS, NONE, TOLD
from fireplace_calc.design.records import Design
from fireplace_calc.design.surround import Trim
from fireplace_calc.editing.changes import all_inputs
from fireplace_calc.explore.mending.levers import Lever
from fireplace_calc.explore.sketches import sketch
from fireplace_calc.geometry.bore import flue_bore
from fireplace_calc.geometry.mantel.sizes import mantel_place, mantel_sizes

Value: TypeAlias = "float | str"
"""Where a lever stands: a number in SI, a count, a yes or no, or a word."""
Changes: TypeAlias = "dict[str, object]"
"""For ``change``: new values by the dotted name of the input."""


class Liner(Protocol):
    """A standard liner of either shape."""

    @property
    def size(self) -> str:
        """As its table names it."""

    @property
    def net_area(self) -> float:
        """Inside. [m2]"""


@dataclass(frozen=True, slots=True)
class Setting:
    """One setting of a lever.

    Attributes
    ----------
    lever : Lever
    steps : int
        How many of its steps. [-]
    change : dict
        For ``change``.
    before, after : object
        Where the lever is and where it goes, in SI or in words.
    relative : float
        The change over what was there before. [-]
    piece : str
        Of the trim, where it is one piece.
    """

    lever: Lever
    steps: int
    change: Changes
    before: Value
    after: Value
    relative: float
    piece: str = ""


def settings_of(design: Design, lever: Lever) -> list[list[Setting]]:
    """Every setting of a lever in one design, by steps; a list for each thing it takes hold of.

    Parameters
    ----------
    design : Design
    lever : Lever

    Returns
    -------
    list of list of Setting
        Empty where the design has nothing to take hold of, or does not know it.
    """
    if lever.key == "surround.trim":
        return _trim(design, lever)
    if lever.key == "flue.size":
        return [list(_liners(design, lever))]
    if lever.key == "flue.shape":
        return [list(_other_shape(design, lever))]
    if lever.key == "flue.own_width":
        return [list(_own_size(design, lever))] if design.flue.size.strip().lower() == "own" else []
    group, name = lever.key.split(".")
    if group == "mantel":
        return _mantel(design, lever, name)
    now = getattr(getattr(design, group), name)
    if now is None or lever.key == "opening.rise" and design.opening.head == "straight":
        return []
    return [list(_stepped(lever, now))]


def _mantel(design: Design, lever: Lever, name: str) -> list[list[Setting]]:
    """A mantel of a family that burns: a size as it is built, told or not, or another material."""
    mantel = design.mantel
    if mantel.family in (TOLD, NONE) or mantel.material not in BURNS:
        return []
    if name == "material":
        return [list(_stepped(lever, mantel.material))]
    built: float = getattr(mantel_sizes(mantel, mantel_place(sketch(design))), name)
    return [list(_stepped(lever, built))] if built > 0 else []


def _number(value: Value) -> float:
    if isinstance(value, str):
        raise TypeError(f"A number is moved by steps, but the lever stands at {value!r}.")
    return value


def _si(value: float, kind: str) -> str:
    """A value as text with its SI unit."""
    return f"{value!r} {SI_UNIT[kind].replace('**', '')}".strip()


def _stepped(lever: Lever, now: Value) -> Iterator[Setting]:
    """A choice taken, or a number moved by steps as far as its range goes."""
    spec = all_inputs()[lever.key]
    if spec.kind in ("choice", "yes-no"):
        word = spec.read(lever.step)
        if word != now:
            yield Setting(lever, 1, {lever.key: word}, now, word, 1.0)
        return
    step = int(lever.step) if spec.kind == "count" else to_si(lever.step, spec.kind)
    (low, high), start = spec.bounds, _number(now)
    for k in range(1, lever.max_steps + 1):
        value = start + k * step
        if not low <= value <= high:
            return
        yield Setting(
            lever,
            k,
            {lever.key: value if spec.kind == "count" else _si(value, spec.kind)},
            now,
            value,
            abs(k * step / start) if start else inf,
        )


@lru_cache(maxsize=2)
def _by_area(shape: str) -> tuple[Liner, ...]:
    """Standard liners, smallest net area first."""
    rows: Mapping[str, Liner] = round_liners() if shape == "round" else rectangular_liners()
    return tuple(sorted(rows.values(), key=lambda row: row.net_area))


def _liners(design: Design, lever: Lever) -> Iterator[Setting]:
    """The next larger or smaller liners of the table."""
    area = flue_bore(design.flue).table_area
    if area is None:
        return
    larger = [row for row in _by_area(design.flue.shape) if row.net_area > area + SQIN / 2]
    smaller = [row for row in _by_area(design.flue.shape) if row.net_area < area - SQIN / 2][::-1]
    for k, row in enumerate((larger if lever.step[0] == "+" else smaller)[: lever.max_steps], 1):
        yield Setting(
            lever,
            k,
            {lever.key: row.size},
            design.flue.size,
            row.size,
            abs(row.net_area / area - 1),
        )


def _other_shape(design: Design, lever: Lever) -> Iterator[Setting]:
    """The next larger liners of the shape that is not the design's, shape and size together."""
    area, shape = flue_bore(design.flue).table_area, design.flue.shape
    if area is None:
        return
    other = "rectangular" if shape == "round" else "round"
    larger = [row for row in _by_area(other) if row.net_area > area + SQIN / 2]
    for k, row in enumerate(larger[: lever.max_steps], 1):
        yield Setting(
            lever,
            k,
            {lever.key: other, "flue.size": row.size},
            f"{shape} {design.flue.size}",
            f"{other} {row.size}",
            abs(row.net_area / area - 1),
        )


def _own_size(design: Design, lever: Lever) -> Iterator[Setting]:
    """A flue of its own size, both sides by the same step."""
    flue, step = design.flue, to_si(lever.step, "length")
    for one in _stepped(lever, flue.own_width):
        deep: Changes = (
            {}
            if flue.shape == "round"
            else {"flue.own_depth": _si(flue.own_depth + one.steps * step, "length")}
        )
        yield Setting(lever, one.steps, one.change | deep, one.before, one.after, one.relative)


def _trim(design: Design, lever: Lever) -> list[list[Setting]]:
    """All that burns set further off together, as a mantel is moved whole; or one piece pulled
    back.
    """
    pieces, step = design.surround.trim, to_si(lever.step, "length")
    burning = [n for n, piece in enumerate(pieces) if piece.combustible]
    away = {n: pieces[n].drawn_distance for n in burning}
    out = {n: pieces[n].drawn_projection for n in burning}
    if not burning or design.mantel.family != TOLD:
        return []
    if step > 0:
        near = min(away.values())
        return [
            [
                Setting(
                    lever,
                    k,
                    {
                        lever.key: _pieces(
                            pieces, "distance", {n: away[n] + k * step for n in burning}
                        )
                    },
                    near,
                    near + k * step,
                    k * step / near if near else inf,
                )
                for k in range(1, lever.max_steps + 1)
            ]
        ]
    return [
        [
            Setting(
                lever,
                k,
                {lever.key: _pieces(pieces, "projection", {n: out[n] + k * step})},
                out[n],
                out[n] + k * step,
                -k * step / out[n],
                pieces[n].name,
            )
            for k in range(1, lever.max_steps + 1)
            if out[n] + k * step > ROUNDING
        ]
        for n in burning
    ]


def _pieces(
    pieces: tuple[Trim, ...], field: str, to: dict[int, float]
) -> tuple[dict[str, object], ...]:
    """The list of pieces as ``change`` reads it, some with one field set otherwise."""
    changed: list[dict[str, object]] = []
    for n, piece in enumerate(pieces):
        fields = asdict(piece) | ({field: to[n]} if n in to else {})
        changed.append(
            {
                name: _si(value, "length") if isinstance(value, float) else value
                for name, value in fields.items()
            }
        )
    return tuple(changed)
