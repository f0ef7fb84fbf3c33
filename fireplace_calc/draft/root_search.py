"""The largest root of a function between two bounds, for every place of an array at once.

Why it is our own: the function may cross zero at more than one place, and the fire finds the
largest, so brackets must be found before anything can close them. scipy's bracketing solvers
(``brentq``, ``ridder``) take one number at a time; its ``elementwise.find_root`` takes arrays but
wants the brackets ready, takes several times as long for one design, and half a second to import.
``tests/test_draft_roots.py`` holds the result against scipy.
"""

from __future__ import annotations

from collections.abc import Callable

import numpy as np

from fireplace_calc.base.arrays import Array, BoolArray

SCAN_STEPS = 28
"""Steps from the upper bound to the lower one, each a like share of the one before."""
CLOSING_ROUNDS = 40
"""How often at most the step with the root in it is closed further."""
BLOCK = 2048
"""How many numbers of the scan are worked out together."""
CONVERGED = 1e-10
"""Relative move of a closing after which the next one would change only the last digits. [-]"""


def largest_root(
    function: Callable[[Array], Array], low: Array, high: Array
) -> tuple[Array, BoolArray]:
    """Largest place between two bounds where a function stops being positive.

    Parameters
    ----------
    function : callable
        Negative at ``high``; takes places of any shape that broadcasts with the bounds, in their
        unit, and may give any other. [unit]
    low, high : array
        Bounds, above zero, of any shape. [unit]

    Returns
    -------
    tuple of array
        Where it is [unit], and whether there is none: then ``low`` comes back.

    Notes
    -----
    A scan finds the step, Ridders' method closes it: two evaluations a round, never outside the
    bracket, digits doubling. Each place stops by itself, so that none depends on what else is
    looked for in the same call. Two roots within one step of the scan (a 28th of the logarithm of
    ``high / low``) are not seen.

    References
    ----------
    Ridders, C. J. F., 1979, IEEE Trans. Circuits Syst. 26, 979.

    Examples
    --------
    >>> two_roots = lambda x: (x - 1.0) * (3.0 - x)
    >>> root, none = largest_root(two_roots, np.array([0.1]), np.array([50.0]))
    >>> round(float(root[0]), 9), bool(none[0])
    (3.0, False)
    """
    at_high = function(high)
    low, high = (np.broadcast_to(bound, at_high.shape) for bound in (low, high))
    lower, at_lower, upper, at_upper, found = _bracket(function, low, high, at_high)
    lower, at_lower, upper, at_upper = _close(function, lower, at_lower, upper, at_upper, found)
    nearest = np.where(np.abs(at_lower) <= np.abs(at_upper), lower, upper)
    return np.where(found, nearest, low), ~found


def _bracket(
    function: Callable[[Array], Array], low: Array, high: Array, at_high: Array
) -> tuple[Array, Array, Array, Array, BoolArray]:
    """The topmost step of the scan over whose lower end the function is not negative.

    Lower end and value there, upper end and value there, and where there is such a step.
    """
    ratio = (high / low) ** (1.0 / SCAN_STEPS)
    upper, lower, found = high, low, np.zeros(low.shape, bool)
    at_upper = at_lower = at_above = at_high
    above = high
    # Few places: many steps in one call, as a call costs more than its numbers. Many places: step
    # by step, as the scan may end early.
    block = max(1, BLOCK // max(high.size, 1))
    for first in range(1, SCAN_STEPS + 1, block):
        # The steps are a new first axis; the places keep their own axes behind it.
        powers = np.arange(first, min(first + block, SCAN_STEPS + 1)).reshape(-1, *[1] * high.ndim)
        places = high / ratio**powers
        for here, at_here in zip(places, function(places), strict=True):
            hit = ~found & (at_here >= 0)  # the first hit on the way down is the largest root's
            lower, at_lower = np.where(hit, here, lower), np.where(hit, at_here, at_lower)
            upper, at_upper = np.where(hit, above, upper), np.where(hit, at_above, at_upper)
            found = found | hit
            above, at_above = here, at_here
        if found.all():
            break
    return lower, at_lower, upper, at_upper, found


def _close(
    function: Callable[[Array], Array],
    lower: Array,
    at_lower: Array,
    upper: Array,
    at_upper: Array,
    found: BoolArray,
) -> tuple[Array, Array, Array, Array]:
    """Close the brackets that were found, by Ridders' method; the others stay as they are."""
    last, moving = upper, found
    for _ in range(CLOSING_ROUNDS):
        middle = 0.5 * (lower + upper)
        at_middle = function(middle)
        # An exponential factor makes the function straight over the bracket; where the straight
        # line crosses zero is the next place. The floor keeps the root real where nothing moves.
        bent = np.sqrt(np.maximum(at_middle**2 - at_lower * at_upper, 1e-300))
        near = np.clip(middle + (middle - lower) * at_middle / bent, lower, upper)
        for place, value in ((middle, at_middle), (near, function(near))):
            # After the middle has moved one end, the other place may lie outside: leave it then.
            inside, good = moving & (place >= lower) & (place <= upper), value >= 0
            up, down = inside & good, inside & ~good
            lower, at_lower = np.where(up, place, lower), np.where(up, value, at_lower)
            upper, at_upper = np.where(down, place, upper), np.where(down, value, at_upper)
        moving, last = moving & (np.abs(near - last) > CONVERGED * near), near
        if not moving.any():
            break
    return lower, at_lower, upper, at_upper
