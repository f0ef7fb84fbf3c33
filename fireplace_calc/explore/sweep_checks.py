"""What must hold of a sweep's labels and values, or a sentence that says what does not."""

from __future__ import annotations

from collections import Counter
from collections.abc import Hashable, Sequence
from typing import TypeVar

from fireplace_calc.base.arrays import Array
from fireplace_calc.base.inputs import Input
from fireplace_calc.base.units import InputError

Label = TypeVar("Label", bound=Hashable)


def few(labels: Sequence[object]) -> str:
    """The first three, and how many more.

    Parameters
    ----------
    labels : sequence

    Returns
    -------
    str
    """
    return ", ".join(str(label) for label in labels[:3]) + (
        f" and {len(labels) - 3} more" if len(labels) > 3 else ""
    )


def require_labels(what: str, labels: list[Label]) -> list[Label]:
    """The labels, if there are any and none comes twice.

    Parameters
    ----------
    what : str
        They are, for the message.
    labels : list

    Returns
    -------
    list
        The same.

    Raises
    ------
    InputError
        When there is none, or one comes twice.
    """
    if not labels:
        raise InputError(
            f"{what} are an empty list, but a sweep wants at least one.",
            what,
            "one or more",
            labels,
        )
    twice = [label for label, count in Counter(labels).items() if count > 1]
    if twice:
        raise InputError(
            f"{what} hold {few(twice)} more than once, but each needs a label of its own to be"
            " found by.",
            what,
            "labels that differ",
            twice[0],
        )
    return labels


def require_range(spec: Input, values: Array) -> Array:
    """The values, if all of them lie in the workable range of an input.

    Parameters
    ----------
    spec : Input
    values : array
        Of any shape, in the unit of the input. [SI]

    Returns
    -------
    array
        The same. [SI]

    Raises
    ------
    InputError
        When one lies outside.
    """
    (least, most), (low, high) = spec.ends, spec.bounds
    wrong = values[~((values >= least) & (values <= most))]
    if wrong.size:
        raise InputError(
            f"{spec.label} of a sweep is {wrong.flat[0]} in SI, but {low:.6g} to"
            f" {high:.6g} ({spec.allowed()}) is the workable range; check the unit.",
            spec.label,
            spec.allowed(),
            wrong.flat[0],
        )
    return values
