"""What of the room the page holds already: only what a slider moves is sent again."""

from __future__ import annotations

from collections.abc import Sequence

from fireplace_calc.scene.records import Thing

FOLLOWS = (
    *("floor", "wall at the fireplace", "skirting"),
    *("logs", "charred logs", "log ends", "grate", "ashes"),
    *("fire irons", "handles", "brush"),
)
"""Things of the room that follow the fireplace whatever is changed."""


class StandingRoom:
    """What stands in the room as the page was last sent it.

    A thing that has changed once is sent with the fireplace from then on: a wall whose opening
    follows the breast, logs, a chair that makes way for the hearth. All others are sent once.

    Attributes
    ----------
    follows : set of str
        Keys of those that are sent with the fireplace.
    """

    def __init__(self) -> None:
        self.follows: set[str] = set(FOLLOWS)
        self._sent: dict[str, int] | None = None

    def parted(self, things: Sequence[Thing]) -> tuple[tuple[Thing, ...] | None, tuple[Thing, ...]]:
        """What is to be sent of a room.

        Parameters
        ----------
        things : sequence of Thing
            All that stands there now.

        Returns
        -------
        tuple
            What stays, where the page does not hold just that; and what goes with the fireplace.
        """
        now = {t.key: _content(t) for t in things}
        if self._sent is not None:
            self.follows |= {key for key, was in self._sent.items() if now.get(key, was) != was}
        stays = tuple(t for t in things if t.key not in self.follows)
        kept = {t.key: now[t.key] for t in stays}
        follows = tuple(t for t in things if t.key in self.follows)
        if kept == self._sent:
            return None, follows
        self._sent = kept
        return stays, follows


def _content(thing: Thing) -> int:
    return hash((thing.stuff, thing.points.tobytes(), thing.faces.tobytes()))
