"""What changes from one text to the next, line by line."""

from __future__ import annotations

Lines = list[str]
Delta = tuple[tuple[int, int, tuple[str, ...]], ...]
"""At which line how many are taken out, and what stands there instead; counted in the text before,
the last one first.
"""


def between(before: Lines, after: Lines) -> Delta:
    """What makes one text of the other.

    >>> between(["a", "b", "c"], ["a", "x", "c"])
    ((1, 1, ('x',)),)
    >>> between(["a", "c"], ["a", "b", "c"])
    ((1, 0, ('b',)),)
    """
    if len(before) == len(after):
        return tuple(
            (number, 1, (new,))
            for number, (old, new) in reversed(list(enumerate(zip(before, after, strict=True))))
            if old != new
        )
    start = 0
    while start < min(len(before), len(after)) and before[start] == after[start]:
        start += 1
    end = 0
    while end < min(len(before), len(after)) - start and before[-1 - end] == after[-1 - end]:
        end += 1
    return ((start, len(before) - end - start, tuple(after[start : len(after) - end])),)


def apply_to(text: Lines, delta: Delta) -> None:
    """Make the text that follows of the one before, in place.

    >>> text = ["a", "c"]
    >>> apply_to(text, between(text, ["a", "b", "c"]))
    >>> text
    ['a', 'b', 'c']
    """
    for start, count, instead in delta:
        text[start : start + count] = instead
