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
CLOSING_ROUNDS = 80
"""How often at most a root is put closer; secants need four to six, halving some forty."""
BLOCK = 2048
"""How many numbers of the scan are worked out together."""
CONVERGED = 1e-10
"""Relative move of a root after which the next one would change only the last digits. [-]"""


def largest_root(
    function: Callable[[Array], Array], low: Array, high: Array
) -> tuple[Array, BoolArray]:
    """Largest place between two bounds where a function stops being positive.

    Parameters
    ----------
    function : callable
        Negative at ``high``; takes places of the shape of the bounds, or many such in a row, in
        their unit, and gives as many values, in any other. [unit]
    low, high : array
        Bounds, above zero, of any shape. [unit]

    Returns
    -------
    tuple of array
        Where it is [unit], and whether there is none: then ``low`` comes back.

    Notes
    -----
    A scan finds the step, secants close it: one evaluation a round, the digits more than half as
    many again, and the middle of what is left where a secant leads out of it or is no shorter than
    half the move before. Each place stops by itself, so that none depends on what else is looked
    for in the same call. Two roots within one step of the scan (a 28th of the logarithm of
    ``high / low``) are not seen.

    References
    ----------
    Secants kept within a bracket: Brent, R. P., 1973, Algorithms for Minimization without
    Derivatives, chapter 4; from memory.

    Examples
    --------
    >>> two_roots = lambda x: (x - 1.0) * (3.0 - x)
    >>> root, none = largest_root(two_roots, np.array([0.1]), np.array([50.0]))
    >>> round(float(root[0]), 9), bool(none[0])
    (3.0, False)
    """
    low, high = np.broadcast_arrays(low, high)
    with np.errstate(divide="ignore", invalid="ignore", over="ignore"):
        lower, at_lower, upper, at_upper, found = _bracket(function, low, high)
        root = _close(function, lower, at_lower, upper, at_upper, found)
    return np.where(found, root, low), ~found


def _bracket(
    function: Callable[[Array], Array], low: Array, high: Array
) -> tuple[Array, Array, Array, Array, BoolArray]:
    """The topmost step of the scan over whose lower end the function is not negative.

    Lower end and value there, upper end and value there, and where there is such a step.
    """
    step = np.log(high / low) / SCAN_STEPS
    found = np.zeros(high.shape, bool)
    lower = upper = above = high
    at_lower = at_upper = at_above = np.full(high.shape, np.nan)
    # Few places: many steps in one call, as a call costs more than its numbers. Many places: step
    # by step, as the scan may end early.
    block = max(1, BLOCK // max(high.size, 1))
    for first in range(1, SCAN_STEPS + 1, block):
        # The steps are a new first axis; the places keep their own axes behind it.
        powers = np.arange(first, min(first + block, SCAN_STEPS + 1)).reshape(-1, *[1] * high.ndim)
        # Not a power: numpy squares where all exponents are two, which differs in the last bit.
        places = high * np.exp(-powers * step)
        values = function(places)
        good = values >= 0
        hit = ~found & good.any(axis=0)  # the first on the way down is the largest root's
        if hit.any():
            (here, over), (at_here, at_over) = (
                _step(line, before, good) for line, before in ((places, above), (values, at_above))
            )
            lower, at_lower = np.where(hit, here, lower), np.where(hit, at_here, at_lower)
            upper, at_upper = np.where(hit, over, upper), np.where(hit, at_over, at_upper)
            found = found | hit
            if found.all():
                break
        above, at_above = places[-1], values[-1]
    first_step = found & np.isnan(at_upper)
    if first_step.any():  # seldom, so that the upper bound is tried only here
        at_upper = np.where(first_step, function(high), at_upper)
    return lower, at_lower, upper, at_upper, found


def _step(line: Array, before: Array, good: BoolArray) -> tuple[Array, Array]:
    """Entries of a block at the first good one of each place, and at the one before it."""
    if len(line) == 1:
        return line[0], before
    which = np.argmax(good, axis=0)[None]
    over = np.concatenate([before[None], line[:-1]])
    return tuple(np.take_along_axis(each, which, axis=0)[0] for each in (line, over))


def _close(
    function: Callable[[Array], Array],
    lower: Array,
    at_lower: Array,
    upper: Array,
    at_upper: Array,
    found: BoolArray,
) -> Array:
    """Close the brackets that were found; the others stay as they are."""
    low_end = np.abs(at_lower) < np.abs(at_upper)  # where the lower end is nearer to the root
    last, at_last = np.where(low_end, upper, lower), np.where(low_end, at_upper, at_lower)
    root, at_root = np.where(low_end, lower, upper), np.where(low_end, at_lower, at_upper)
    moving, move = found, upper - lower
    for _ in range(CLOSING_ROUNDS):
        near = root - at_root * (root - last) / (at_root - at_last)
        good = (near >= lower) & (near <= upper) & (np.abs(near - root) <= 0.5 * move)
        near = np.where(moving, np.where(good, near, 0.5 * (lower + upper)), root)
        move = np.abs(near - root)
        moving = moving & (move > CONVERGED * near)
        last, at_last, root = root, at_root, near
        if not moving.any():
            break
        at_root = function(root)
        rises = at_root >= 0
        lower, upper = np.where(rises, root, lower), np.where(rises, upper, root)
    return root
