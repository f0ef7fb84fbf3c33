"""What several levers would do together, from what each does by itself and from what was seen."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence

import numpy as np

from fireplace_calc.base.arrays import Array, IntArray


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
    return sorted({max(1, -(-length // 4)), max(1, -(-length // 2)), length})


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


def by_the_nearest(shape: tuple[int, ...], seen: Mapping[tuple[int, ...], Array]) -> Array:
    """What was found off the forecast at some settings, for all of them by the nearest; nothing is
    off where all levers but one are left alone.

    Parameters
    ----------
    shape : tuple of int
        How many settings each lever has, the lever left alone among them. [-]
    seen : mapping of tuple of int to array
        By place of each lever: what it was off, a key each. [-]

    Returns
    -------
    array, shape (settings of the first, of the second, ..., keys)
        Scores. [-]

    Examples
    --------
    >>> by_the_nearest((2, 4), {(1, 2): np.array([5.0])})[1, :, 0].tolist()
    [0.0, 5.0, 5.0, 5.0]
    """
    where = np.indices(shape)
    away = [np.abs(where - np.array(at).reshape(-1, *[1] * len(at))).sum(axis=0) for at in seen]
    alone = where.sum(axis=0) - where.max(axis=0)
    off = list(seen.values())
    nearest = np.argmin(np.stack([*away, alone]), axis=0)
    return np.asarray(np.stack([*off, np.zeros_like(off[0])])[nearest])
