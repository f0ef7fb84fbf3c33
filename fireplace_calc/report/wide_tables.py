"""Tables for notebooks that show every word of every cell: what is cut off is just what falls
short.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from functools import lru_cache
from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    import pandas


@lru_cache(maxsize=1)
def _kind() -> type:
    import pandas

    class Whole(pandas.DataFrame):  # type: ignore[misc]  # pandas brings no types
        """A frame printed with whole cells, and so are its parts."""

        @property
        def _constructor(self) -> type:
            return Whole

        def _repr_html_(self) -> str:
            with pandas.option_context("display.max_colwidth", None):
                return str(super()._repr_html_())

        def __repr__(self) -> str:
            with pandas.option_context("display.max_colwidth", None):
                return str(super().__repr__())

    return Whole


def whole(
    rows: Iterable[Sequence[Any]], columns: Sequence[str], index: Sequence[str] | None = None
) -> pandas.DataFrame:
    """A frame that shows every word.

    Parameters
    ----------
    rows : iterable of sequence
    columns : sequence of str
    index : sequence of str, optional
        Names of the rows.

    Returns
    -------
    pandas.DataFrame

    Examples
    --------
    >>> "last word" in whole([("long " * 40 + "last word",)], ["Said"])._repr_html_()
    True
    """
    return _kind()(list(rows), columns=list(columns), index=index)
