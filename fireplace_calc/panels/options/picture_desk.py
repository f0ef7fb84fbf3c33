"""Pictures of options, made one after the other while the page goes on answering."""

from __future__ import annotations

import asyncio
from base64 import b64encode
from collections import OrderedDict
from collections.abc import Callable, Sequence

from fireplace_calc.assessment import Assessment
from fireplace_calc.design.records import Design
from fireplace_calc.scene.records import Standpoint
from fireplace_calc.scene.still.option_pictures import (
    OptionPicture,
    in_room,
    one_standpoint,
    option_picture,
)

SIZE = (720, 480)
"""Of a picture. [dots]"""
MOST_HELD = 16
"""Pictures that are kept. [-]"""

Key = tuple[Design, Standpoint]


class PictureDesk:
    """Makes the pictures that are wanted, and says when one has come.

    Parameters
    ----------
    arrived : callable
        Called after each picture.
    size : tuple of int
        Of each. [dots]
    """

    def __init__(self, arrived: Callable[[], None], size: tuple[int, int] = SIZE) -> None:
        self.arrived, self.size = arrived, size
        self.standpoint: Standpoint | None = None
        self._made: OrderedDict[Key, OptionPicture] = OrderedDict()
        self._wanted: dict[Key, Assessment] = {}
        self._task: asyncio.Task[None] | None = None

    def want(self, results: Sequence[Assessment]) -> list[OptionPicture | None]:
        """Pictures of some options, all from one standpoint; those that are not there yet come.

        Parameters
        ----------
        results : sequence of Assessment

        Returns
        -------
        list
            A picture each, or None where it has still to be made.
        """
        if not results:
            self._wanted = {}
            return []
        self.standpoint = standpoint = one_standpoint(results)
        keys = [(result.design, standpoint) for result in results]
        self._wanted = {
            key: result for key, result in zip(keys, results, strict=True) if key not in self._made
        }
        for key in keys:
            if key in self._made:
                self._made.move_to_end(key)
        if self._wanted and (self._task is None or self._task.done()):
            try:
                self._task = asyncio.get_running_loop().create_task(self._later())
            except RuntimeError:  # no loop: a script or a test
                while self._wanted:
                    key, result = self._next()
                    self._put(key, option_picture(result, key[1], *self.size))
        return [self._made.get(key) for key in keys]

    async def _later(self) -> None:
        while self._wanted:
            key, result = self._next()
            room = in_room(result)  # solids are no thread's but this one's
            self._put(key, await asyncio.to_thread(room.drawn, key[1], *self.size))
            self.arrived()

    def _next(self) -> tuple[Key, Assessment]:
        key = next(iter(self._wanted))
        return key, self._wanted.pop(key)

    def _put(self, key: Key, made: OptionPicture) -> None:
        self._made[key] = made
        while len(self._made) > MOST_HELD:
            self._made.popitem(last=False)


def address(picture: OptionPicture) -> str:
    """A picture inside its own address, as a page shows it."""
    return f"data:image/jpeg;base64,{b64encode(picture.jpeg).decode()}"
