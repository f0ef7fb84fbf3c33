"""Firewood and its smoke: heat, air, what the gas is made of, and when it drips."""

from __future__ import annotations

from dataclasses import dataclass

from fireplace_calc.base.arrays import Number
from fireplace_calc.base.tables.draft import WoodAnalysis
from fireplace_calc.draft.physics.air import MOLAR_MASS, SEA_LEVEL, dew_point, heat_capacity

EVAPORATION = 2.447e6
"""Heat that a kilogram of water takes when it turns to vapour at 25 C. [J/kg]"""
OXYGEN_IN_AIR = 0.2314
"""By mass. [-]"""
WATER_FROM_HYDROGEN = 9.01
"""Water that a kilogram of hydrogen burns to. [-]"""
_AIR_MOLES_O2, _AIR_MOLAR_MASS = 0.20946, 0.0289647


def higher_heating_value(wood: WoodAnalysis) -> float:
    r"""Heat of a kilogram of bone-dry wood, its water condensed.

    Parameters
    ----------
    wood : WoodAnalysis
        Mass shares of the dry wood. [-]

    Returns
    -------
    float
        Higher heating value, dry. [J/kg]

    Notes
    -----
    .. math:: H_s = 0.3491\,C + 1.1783\,H - 0.1034\,O - 0.0151\,N - 0.0211\,A

    in MJ/kg, with the shares in percent by mass. Sulphur, of which wood has next to none, is left
    out.

    References
    ----------
    Channiwala, S. A., and Parikh, P. P., 2002, Fuel 81, 1051.

    Examples
    --------
    >>> from fireplace_calc.base.tables.draft import wood_analysis
    >>> round(higher_heating_value(wood_analysis("hardwood")) / 1e6, 2)
    20.11
    """
    return 1e8 * (
        0.3491 * wood.carbon
        + 1.1783 * wood.hydrogen
        - 0.1034 * wood.oxygen
        - 0.0151 * wood.nitrogen
        - 0.0211 * wood.ash
    )


def lower_heating_value(wood: WoodAnalysis, moisture: Number) -> Number:
    r"""Heat of a kilogram of wood as it is laid on the fire, its water gone up as vapour.

    Parameters
    ----------
    wood : WoodAnalysis
        Mass shares of the dry wood. [-]
    moisture : float or array
        Water over wet wood, 0 to 0.85. [-]

    Returns
    -------
    float or array
        Lower heating value as fired. [J/kg]

    Notes
    -----
    .. math:: H_i = H_s (1 - w) - 2.447\,w - 2.447 \cdot 9.01\,h (1 - w)

    in MJ/kg: what evaporates the water of the wood and of its hydrogen is lost.

    Examples
    --------
    >>> from fireplace_calc.base.tables.draft import wood_analysis
    >>> round(lower_heating_value(wood_analysis("hardwood"), 0.20) / 1e6, 2)
    14.54
    """
    dry = 1.0 - moisture
    return higher_heating_value(wood) * dry - EVAPORATION * (
        moisture + WATER_FROM_HYDROGEN * wood.hydrogen * dry
    )


def stoichiometric_air(wood: WoodAnalysis) -> float:
    r"""Air that a kilogram of dry wood just needs.

    Parameters
    ----------
    wood : WoodAnalysis
        Mass shares of the dry wood. [-]

    Returns
    -------
    float
        Air over dry wood, by mass. [-]

    Notes
    -----
    .. math::

        \frac{31.998}{0.2314}
        \left(\frac{C}{12.011} + \frac{H}{4.032} - \frac{O}{31.998}\right)

    The oxygen of the wood burns along.

    Examples
    --------
    >>> from fireplace_calc.base.tables.draft import wood_analysis
    >>> round(stoichiometric_air(wood_analysis("hardwood")), 2)
    5.97
    """
    return (
        31.998
        / OXYGEN_IN_AIR
        * (wood.carbon / 12.011 + wood.hydrogen / 4.032 - wood.oxygen / 31.998)
    )


@dataclass(frozen=True, slots=True)
class Smoke:
    """Mole fractions of the gas that goes up, each a number or an array of one shape. [-]"""

    CO2: Number
    H2O: Number
    O2: Number
    N2: Number

    def parts(self) -> dict[str, Number]:
        """Mole fraction of each gas by name. [-]"""
        return {"CO2": self.CO2, "H2O": self.H2O, "O2": self.O2, "N2": self.N2}


def smoke(wood: WoodAnalysis, moisture: Number, air_ratio: Number, humidity: Number = 0.0) -> Smoke:
    """What the gas is made of when all of the wood burns.

    Parameters
    ----------
    wood : WoodAnalysis
        Mass shares of the dry wood. [-]
    moisture : float or array
        Water over wet wood, below 1. [-]
    air_ratio : float or array
        Air over the air just needed, at least 1. [-]
    humidity : float or array
        Water in the room air, over dry air by mass. [-]

    Returns
    -------
    Smoke
        Mole fractions. [-]

    Notes
    -----
    Nothing is left unburnt: no carbon monoxide, no soot.
    """
    air = air_ratio * stoichiometric_air(wood)
    moles_air = air / _AIR_MOLAR_MASS
    carbon, hydrogen = wood.carbon / 0.012011, wood.hydrogen / 0.001008
    needed = carbon + hydrogen / 4 - wood.oxygen / 0.015999 / 2
    o2 = moles_air * _AIR_MOLES_O2 - needed
    n2 = moles_air * (1.0 - _AIR_MOLES_O2) + wood.nitrogen / 0.028014
    h2o = hydrogen / 2 + (moisture / (1.0 - moisture) + air * humidity) / MOLAR_MASS["H2O"]
    total = carbon + h2o + o2 + n2
    return Smoke(carbon / total, h2o / total, o2 / total, n2 / total)


def smoke_molar_mass(gas: Smoke) -> Number:
    """Molar mass of the gas.

    Parameters
    ----------
    gas : Smoke
        Mole fractions. [-]

    Returns
    -------
    float or array
        Molar mass. [kg/mol]
    """
    return sum(share * MOLAR_MASS[name] for name, share in gas.parts().items())


def smoke_heat_capacity(gas: Smoke, temperature: Number) -> Number:
    """Heat capacity of the gas at constant pressure.

    Parameters
    ----------
    gas : Smoke
        Mole fractions. [-]
    temperature : float or array
        Of the gas, 250 to 1000. [K]

    Returns
    -------
    float or array
        Per mass. [J/(kg K)]
    """
    molar = sum(share * heat_capacity(temperature, name) for name, share in gas.parts().items())
    return molar / smoke_molar_mass(gas)


def smoke_dew_point(gas: Smoke, pressure: Number = SEA_LEVEL) -> Number:
    """Where water begins to fall out of the gas.

    Parameters
    ----------
    gas : Smoke
        Mole fractions. [-]
    pressure : float or array
        Barometric. [Pa]

    Returns
    -------
    float or array
        Dew point of the water alone; acids condense earlier. [K]
    """
    return dew_point(gas.H2O * pressure)
