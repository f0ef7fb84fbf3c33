"""What several levers would do together, from what each does by itself and from what was seen."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from functools import lru_cache
from math import ceil

import numpy as np

from fireplace_calc.base.arrays import Array, IntArray
from fireplace_calc.explore.together.looking import SURE


def filled(known: Mapping[int, Array], length: int) -> Array:
    """Scores at every place, straight between those that are known.

    Parameters
    ----------
    known : mapping of int to array
        Scores, by place. [-]
    length : int
        How many places. [-]

    Returns
    -------
    array, shape (places, keys)
        [-]
    """
    places = sorted(known)
    table = np.array([known[k] for k in places])
    return np.stack([np.interp(range(length), places, column) for column in table.T], axis=-1)


def largest(said: Array) -> Array:
    """The largest number among scores of each key; one where none of them is a number.

    Parameters
    ----------
    said : array, shape (any, keys)
        [-]

    Returns
    -------
    array, shape (keys)
        [-]

    Examples
    --------
    >>> largest(np.array([[-3.0, SURE], [2.0, -SURE]])).tolist()
    [3.0, 1.0]
    """
    size = np.abs(said)
    most = np.where(size < SURE, size, 0.0).max(axis=0)
    return np.where(most > 0, most, 1.0)


def telling(scores: Array, always: Iterable[int]) -> IntArray:
    """Places where a score changes its sign, on both sides, and some others.

    Parameters
    ----------
    scores : array, shape (places, keys)
        [-]
    always : iterable of int
        Places that are wanted in any case. [-]

    Returns
    -------
    array
        [-]
    """
    turns = np.flatnonzero(((scores[1:] > 0) != (scores[:-1] > 0)).any(axis=1))
    return np.array(sorted({*always, *map(int, turns), *(int(k) + 1 for k in turns)}))


def some_places(length: int) -> list[int]:
    """A few places among so many, 1 for the first: near ones rather than far ones.

    Parameters
    ----------
    length : int
        How many. [-]

    Returns
    -------
    list of int
        [-]
    """
    return sorted({max(1, ceil(length / 4)), max(1, ceil(length / 2)), length})


def sums(tables: Sequence[Array], start: Array) -> Array:
    """Scores of all settings together, as if none knew of the others.

    Parameters
    ----------
    tables : sequence of array, shape (settings, keys)
        Of each lever, the first row for the lever left alone. [-]
    start : array, shape (keys)
        Before any change. [-]

    Returns
    -------
    array, shape (settings of the first, of the second, ..., keys)
        Scores. [-]

    Examples
    --------
    >>> one, other = np.array([[1.0], [3.0]]), np.array([[1.0], [0.0]])
    >>> sums([one, other], np.array([1.0]))[..., 0].tolist()
    [[1.0, 0.0], [3.0, 2.0]]
    """
    whole = start.copy()
    for axis, table in enumerate(tables):
        shape = [1] * len(tables) + [len(start)]
        shape[axis] = len(table)
        whole = whole + (table - start).reshape(shape)
    return whole


@lru_cache(maxsize=256)
def _shares(knots: tuple[int, ...], length: int) -> Array:
    """How much of each knot stands at each place, straight between two and level past the last.

    >>> _shares((0, 2), 4).tolist()
    [[1.0, 0.0], [0.5, 0.5], [0.0, 1.0], [0.0, 1.0]]
    """
    return np.stack([np.interp(range(length), knots, one) for one in np.eye(len(knots))], axis=-1)


def between(shape: tuple[int, int], seen: Mapping[tuple[int, int], Array]) -> Array:
    """What was found off the forecast at some settings of two levers, for all of them: straight
    between those seen, and nothing where one of the two is left alone.

    Parameters
    ----------
    shape : tuple of int
        How many settings each lever has, the lever left alone among them. [-]
    seen : mapping of tuple of int to array
        By place of each lever: what it was off, a key each. [-]

    Returns
    -------
    array, shape (settings of the first, of the second, keys)
        Scores. [-]

    Examples
    --------
    >>> between((2, 4), {(1, 2): np.array([5.0])})[1, :, 0].tolist()
    [0.0, 2.5, 5.0, 5.0]
    """
    first, second = (tuple(sorted({0, *(at[n] for at in seen)})) for n in (0, 1))
    nothing = np.zeros_like(next(iter(seen.values())))

    def at(i: int, k: int) -> Array:
        if not i or not k:
            return nothing
        if (i, k) in seen:
            return seen[i, k]
        return seen[min(seen, key=lambda one: abs(one[0] - i) + abs(one[1] - k))]

    off = np.array([[at(i, k) for k in second] for i in first])
    rows = np.tensordot(_shares(first, shape[0]), off, 1)
    return np.asarray(_shares(second, shape[1]) @ rows)
