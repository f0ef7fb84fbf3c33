"""What an open fire gives the room, less what the air it draws out takes away."""

from __future__ import annotations

from dataclasses import dataclass

AIR_HEAT = 1006.0
"""Heat capacity of air. [J/(kg K)]"""


@dataclass(frozen=True, slots=True)
class RoomHeat:
    """Gain and loss of a fire that burns.

    Attributes
    ----------
    given : float
        By radiation and by the masonry. [W]
    drawn_out : float
        To warm the air that comes in for what goes up. [W]
    burnt : float
        In the wood. [W]
    """

    given: float
    drawn_out: float
    burnt: float

    @property
    def net(self) -> float:
        """What the house is the warmer for; under nought it is the colder. [W]"""
        return self.given - self.drawn_out

    @property
    def gross_share(self) -> float:
        """Of the wood's heat, what the room is given. [-]"""
        return self.given / self.burnt if self.burnt else 0.0

    @property
    def net_share(self) -> float:
        """Of the wood's heat, what is left to the house. [-]"""
        return self.net / self.burnt if self.burnt else 0.0


def room_heat(
    burning: float,
    kept: float,
    air: float,
    indoors: float,
    outdoors: float,
    from_outdoors: float = 0.0,
) -> RoomHeat:
    """Weigh a fire.

    Parameters
    ----------
    burning : float
        Heat of the wood that burns. [W]
    kept : float
        Share of it that the room gets. [-]
    air : float
        That goes up the flue beyond what a duct brings. [kg/s]
    indoors, outdoors : float
        [C]
    from_outdoors : float
        What a duct brings to the fire itself, which the house does not warm. [kg/s]

    Examples
    --------
    >>> heat = room_heat(10e3, 0.3, 0.1, 20.0, 0.0)
    >>> round(heat.net), round(heat.net_share, 2)
    (988, 0.1)
    """
    warmed = max(air - from_outdoors, 0.0) * AIR_HEAT * (indoors - outdoors)
    return RoomHeat(burning * kept, warmed, burning)
