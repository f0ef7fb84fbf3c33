"""Where every piece is put down before it is set, and how far its weight is carried. [m, kg]"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from fireplace_calc.build.lifting.equation import HOIST
from fireplace_calc.build.setting.dealing import deal_as_delivered, deal_by_weight, that_fit
from fireplace_calc.build.setting.handling import handling_of
from fireplace_calc.build.setting.piles import LEFT, RIGHT, Pile, piles_of
from fireplace_calc.build.setting.setting_order import SettingStep
from fireplace_calc.build.setting.site_plan import (
    Area,
    Place,
    StagingFloor,
    pallet_areas,
    site_of,
    spots_for,
)
from fireplace_calc.design.surroundings import House
from fireplace_calc.design.work import Work
from fireplace_calc.geometry.assembled.assembly import Assembly
from fireplace_calc.geometry.in_room.cut_corner import CutCorner


@dataclass(frozen=True, slots=True)
class StagedPile:
    """One pile and where it is put down.

    Attributes
    ----------
    pile : Pile
    place : tuple of float or None
        Its middle; nothing where it stays on the pallet until its turn. [m]
    way : float
        From there to the work. [m]
    """

    pile: Pile
    place: Place | None
    way: float


@dataclass(frozen=True, slots=True)
class StagingPlan:
    """The site, and what is carried on it.

    Attributes
    ----------
    site : StagingFloor
    spot : tuple of float
        Size of a spot, along the wall and away from it. [m]
    pile_height : float
        No pile is higher. [m]
    piles : tuple of StagedPile
        In the order of the delivery.
    pallets : tuple of Pile
        Loads that stay on their own pallets.
    areas : tuple of (float, float, float, float)
        Floor under the pallet of all else, the other pallets, and the mixer. [m]
    carried : float
        Weight times way from the piles to the work, heaviest nearest. [kg m]
    as_delivered : float
        The same where every pile takes the nearest free spot as it comes. [kg m]
    unloading : float
        Weight times way from the pallet to the piles. [kg m]
    straight : float
        Weight times way of the same pieces straight from the pallet to the work. [kg m]
    kept : float
        Weight times way of what stays on pallets until its turn. [kg m]
    lifted : float
        Weight lifted: what is put down in between counts twice. [kg]
    trips : int
        One a piece, and one more for a piece that is put down in between. [-]
    hoisted : int
        Pieces that are too heavy for hands. [-]
    """

    site: StagingFloor
    spot: tuple[float, float]
    pile_height: float
    piles: tuple[StagedPile, ...]
    pallets: tuple[Pile, ...]
    areas: tuple[Area, ...]
    carried: float
    as_delivered: float
    unloading: float
    straight: float
    kept: float
    lifted: float
    trips: int
    hoisted: int

    @property
    def saved(self) -> float:
        """Share of the carrying from the piles that the better order saves. [-]"""
        return 1 - self.carried / self.as_delivered if self.as_delivered else 0.0

    @property
    def left_over(self) -> tuple[StagedPile, ...]:
        """Piles that no spot was left for."""
        return tuple(one for one in self.piles if one.place is None)

    @property
    def beyond(self) -> bool:
        """Whether the room has no floor for all pallets and the mixer."""
        return not all(self.site.holds(area) for area in self.areas)


def plan_staging(
    made: Assembly,
    steps: Sequence[SettingStep],
    work: Work,
    house: House,
    off_center: float = 0.0,
    corner: CutCorner | None = None,
) -> StagingPlan:
    """Put the delivery down: left pieces left, right ones right, the heaviest nearest.

    Parameters
    ----------
    made : Assembly
    steps : sequence of SettingStep
        Of this assembly, in order.
    work : Work
        Where the pallet stands, what is kept free, how high a pile may be.
    house : House
        How large the room is.
    off_center : float
        How far the fireplace stands off the middle of its wall. [m]
    corner : CutCorner, optional
        The wall across a corner, where it stands in one.

    Returns
    -------
    StagingPlan

    Notes
    -----
    Ways are square to the walls, to the middle of the front of the pieces: how far a piece is
    carried on from there is the same wherever it was put down.
    """
    piles, pallets = piles_of(steps, work.stack_height)
    site = site_of(work, house, off_center, corner)
    areas = pallet_areas(site, len(pallets) + 1)
    spots = spots_for(piles, site, (*areas, *site.walkways))
    left, right = spots.ways(LEFT), spots.ways(RIGHT)
    down = that_fit(piles, len(left), len(right))
    best = deal_by_weight(down, left, right)
    placed = {
        pile.names: (spots.on(side)[number], spots.ways(side)[number])
        for pile, (side, number) in zip(down, best, strict=True)
    }
    staged = tuple(StagedPile(pile, *placed.get(pile.names, (None, site.way))) for pile in piles)
    come = deal_as_delivered(down, len(left), len(right))
    as_they_come = sum(
        pile.weight * (left if side == LEFT else right)[number]
        for pile, (side, number) in zip(down, come, strict=True)
    )
    weight = sum(pile.weight for pile in (*piles, *pallets))
    hands = [handling_of(s.placed, work, made.start) for s in steps if s.placed is not None]
    return StagingPlan(
        site,
        spots.size,
        work.stack_height,
        staged,
        pallets,
        areas,
        sum(pile.weight * placed[pile.names][1] for pile in down),
        as_they_come,
        sum(pile.weight * _between(placed[pile.names][0], site) for pile in down),
        sum(pile.weight for pile in down) * site.way,
        (weight - sum(pile.weight for pile in down)) * site.way,
        weight + sum(pile.weight for pile in down),
        len(hands) + sum(len(pile.names) for pile in down),
        sum(one.verdict == HOIST for one in hands),
    )


def _between(place: Place, site: StagingFloor) -> float:
    """From the pallet to a spot, square to the walls. [m]"""
    return abs(place[0] - site.aside) + abs(place[1] + site.away)
