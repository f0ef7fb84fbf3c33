"""The largest root of a function between two bounds, for every place of an array at once.

Why it is our own: the function may cross zero at more than one place, and the fire finds the
largest, so brackets must be found before anything can close them. scipy's bracketing solvers
(``brentq``, ``ridder``) take one number at a time; its ``elementwise.find_root`` takes arrays but
wants the brackets ready, takes several times as long for one design, and half a second to import.
``tests/test_draft_roots.py`` holds the result against scipy.
"""

from __future__ import annotations

from collections.abc import Callable
from typing import Protocol, TypeAlias, runtime_checkable

import numpy as np

from fireplace_calc.base.arrays import Array, BoolArray, IntArray

Which: TypeAlias = tuple[IntArray, ...]
"""Where some entries of an array stand, an index for each of its axes."""

SCAN_STEPS = 28
"""Steps from the upper bound to the lower one, each a like share of the one before."""
CLOSING_ROUNDS = 80
"""How often at most a root is put closer; secants need four to six, halving some forty."""
BLOCK = 2048
"""How many numbers of the scan are worked out together."""
FEW = 0.25
"""Share of the places that go on alone when the others are done. [-]"""
CONVERGED = 1e-12
"""Relative move of a root that is not worth another evaluation. [-]"""


@runtime_checkable
class Narrowing(Protocol):
    """A function of all places that can be had for some of them alone."""

    def __call__(self, places: Array, /) -> Array:
        """Values at the places, many in a row too. [unit]"""

    def among(self, which: Which, /) -> Narrowing:
        """The same function for the places of such indices [-], in one row."""


def largest_root(
    function: Callable[[Array], Array] | Narrowing, low: Array, high: Array
) -> tuple[Array, BoolArray]:
    """Largest place between two bounds where a function stops being positive.

    Parameters
    ----------
    function : callable
        Negative at ``high``; takes places of the shape of the bounds, or many such in a row, in
        their unit, and gives as many values, in any other. Where it is ``Narrowing``, the last of
        many places are looked for alone. [unit]
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
        step, none = np.log(high / low) / SCAN_STEPS, np.full(high.shape, np.nan)
        bracket = _scan(function, high, step, high, none, 1)
        lower, at_lower, upper, at_upper, found = bracket
        if (first := found & np.isnan(at_upper)).any():  # seldom: so the bound is tried only here
            at_upper = np.where(first, function(high), at_upper)
        below = np.abs(at_lower) < np.abs(at_upper)  # where the lower end is nearer to the root
        ends = np.where(below, upper, lower), np.where(below, lower, upper)
        at_ends = np.where(below, at_upper, at_lower), np.where(below, at_lower, at_upper)
        root = _close(function, lower, upper, *ends, *at_ends, found, upper - lower)
    return np.where(found, root, low), ~found


def _few(some: BoolArray) -> bool:
    """Whether it saves time to go on with them alone."""
    return bool(some.size > BLOCK and np.count_nonzero(some) < FEW * some.size)


def _scan(
    function: Callable[[Array], Array] | Narrowing,
    high: Array,
    step: Array,
    above: Array,
    at_above: Array,
    first: int,
) -> tuple[Array, Array, Array, Array, BoolArray]:
    """The topmost step of the scan over whose lower end the function is not negative, from step
    ``first`` on down.

    Lower end and value there, upper end and value there, and where there is such a step.
    """
    found, lower, upper, at_lower, at_upper = np.zeros(high.shape, bool), high, high, above, above
    # Few places: many steps in one call, as a call costs more than its numbers. Many places: step
    # by step, as the scan may end early.
    block = max(1, BLOCK // max(high.size, 1))
    for begin in range(first, SCAN_STEPS + 1, block):
        # The steps are a new first axis; the places keep their own axes behind it.
        steps = np.arange(begin, min(begin + block, SCAN_STEPS + 1)).reshape(-1, *[1] * high.ndim)
        # Not a power: numpy squares where all exponents are two, which differs in the last bit.
        places = high * np.exp(-steps * step)
        values = function(places)
        good = values >= 0
        hit = ~found & good.any(axis=0)  # the first on the way down is the largest root's
        if hit.any():
            (here, over), (at_here, at_over) = (
                _turn(line, before, good) for line, before in ((places, above), (values, at_above))
            )
            lower, at_lower = np.where(hit, here, lower), np.where(hit, at_here, at_lower)
            upper, at_upper = np.where(hit, over, upper), np.where(hit, at_over, at_upper)
            found = found | hit
            if found.all():
                break
            if isinstance(function, Narrowing) and _few(~found):
                which = np.nonzero(~found)
                top, by, above, at_above = (
                    each[which] for each in (high, step, places[-1], values[-1])
                )
                alone = function.among(which)
                lasts = _scan(alone, top, by, above, at_above, begin + block)
                lines = (lower, at_lower, upper, at_upper, found)
                for line, last in zip(lines, lasts, strict=True):
                    line[which] = last
                break
        above, at_above = places[-1], values[-1]
    return lower, at_lower, upper, at_upper, found


def _turn(line: Array, before: Array, good: BoolArray) -> tuple[Array, Array]:
    """Entries of a block at the first good one of each place, and at the one before it."""
    if len(line) == 1:
        return line[0], before
    which = np.argmax(good, axis=0)[None]
    over = np.concatenate([before[None], line[:-1]])
    here, there = (np.take_along_axis(each, which, axis=0)[0] for each in (line, over))
    return here, there


def _close(
    function: Callable[[Array], Array] | Narrowing,
    lower: Array,
    upper: Array,
    last: Array,
    root: Array,
    at_last: Array,
    at_root: Array,
    moving: BoolArray,
    move: Array,
) -> Array:
    """Close the brackets that move; the others stay as they are."""
    for _ in range(CLOSING_ROUNDS):
        step = at_root * (root - last) / (at_root - at_last)
        near, before, move = root - step, move, np.abs(step)
        bad = moving & ~((near >= lower) & (near <= upper) & (move <= 0.5 * before))
        if bad.any():
            near = np.where(bad, 0.5 * (lower + upper), near)
            move = np.where(bad, np.abs(near - root), move)
        near = np.where(moving, near, root)
        # The next move: shorter again as this one was, and of a bent line what the product of the
        # last two distances leaves.
        shorter = np.maximum(move / before, np.abs(root - last) / near)
        moving = moving & (move * np.minimum(shorter, 1.0) > CONVERGED * near)
        last, at_last, root = root, at_root, near
        if not moving.any():
            break
        if isinstance(function, Narrowing) and _few(moving):
            which = np.nonzero(moving)
            alone = function.among(which)
            lower, upper, last, at_last, near, move = (
                each[which] for each in (lower, upper, last, at_last, root, move)
            )
            at_near = alone(near)
            rises = at_near >= 0
            lower, upper = np.where(rises, near, lower), np.where(rises, upper, near)
            root[which] = _close(
                alone, lower, upper, last, near, at_last, at_near, moving[which], move
            )
            break
        at_root = function(root)
        rises = at_root >= 0
        lower, upper = np.where(rises, root, lower), np.where(rises, upper, root)
    return root
