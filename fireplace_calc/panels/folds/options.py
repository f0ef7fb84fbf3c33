"""Up to six designs put aside and seen side by side from one standpoint, with what each costs,
weighs, draws and breaks; any two of them one over the other.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import asdict
from functools import partial
from typing import Any

import ipywidgets as w

from fireplace_calc.assessment import Assessment, assess
from fireplace_calc.editing.jobs.options import MOST_OPTIONS, removed, shown
from fireplace_calc.panels import html
from fireplace_calc.panels.controls.choices import button, row
from fireplace_calc.panels.folds.folds import LONG_REST, Fold
from fireplace_calc.panels.host import Host
from fireplace_calc.panels.options.option_card import NAME, OptionCard
from fireplace_calc.panels.options.picture_desk import PictureDesk, address
from fireplace_calc.panels.options.wipe import Wipe
from fireplace_calc.report.alternatives import changed_inputs, side_by_side
from fireplace_calc.report.for_client.under_a_picture import option_words
from fireplace_calc.report.yard.kept_list import kept_prices
from fireplace_calc.scene.still.option_pictures import OptionPicture, marks

THIS = ("this", "This design")
"""Key and name of the design on the table among the options."""


class Options(Fold):
    """The fold of options: a row of large pictures with their names, words and buttons, those that
    were removed, two of them wiped one over the other, and a table under them.
    """

    rest = LONG_REST

    def __init__(self, panel: Host) -> None:
        super().__init__(panel)
        self.table, self.shelf = w.HTML(), w.Box()
        self.cards: list[OptionCard] = []
        self.gone: list[w.Button] = []
        self.removed = row([])
        self.shelf.add_class("fireplace-shelf")
        self.name = w.Text(
            description="Call it", placeholder="Option, or a name of your own", **NAME
        )
        self.keep = button("Keep this design as an option", self._put_aside)
        hint = w.HTML(
            html.remark(
                f"Up to {MOST_OPTIONS} designs from one standpoint, each compared with the first:"
                " what is not as on it has a yellow frame. Undo takes back what you do here, too."
            )
        )
        self.desk = PictureDesk(self.show)
        self.results: list[Assessment] = []
        self.wipe = Wipe()
        self.chosen: dict[str, str] = {}
        self.showing = False
        self.wipe.observe(self._choose, ["left_key", "right_key"])
        self.widget = w.VBox(
            [
                hint,
                row([self.name, self.keep]),
                self.shelf,
                self.removed,
                self.wipe,
                self.table,
            ]
        )

    def changed(self, act: Callable[[], Any]) -> None:
        """Do something with the options, and keep and show what comes of it."""
        if self.panel.attempt(act):
            self.panel.keep()
        self.update()

    def _put_aside(self) -> None:
        self.changed(lambda: self.panel.session.put_aside(self.name.value))
        self.name.value = ""

    def bring_back(self, number: int) -> None:
        """Work on an option's design."""
        self.panel.session.bring_back_option(number)
        self.panel.catch_up()

    def _rename(self, number: int, name: str) -> None:
        self.changed(lambda: self.panel.session.rename_option(number, name))

    def _remove(self, number: int) -> None:
        self.changed(lambda: self.panel.session.remove_option(number))

    def update(self) -> None:
        """Pictures and words, and everything side by side."""
        panel, session = self.panel, self.panel.session
        self.results = [assess(design, panel.pack) for design in session.options]
        self.keep.disabled = len(self.results) >= MOST_OPTIONS
        while len(self.cards) < len(self.results):
            self.cards.append(OptionCard(self._rename, self.bring_back, self._remove))
        self._show_removed()
        names = [option.name for option in shown(session.shelf)]
        known = kept_prices(session.words)
        self.table.value = html.options(
            side_by_side([*self.results, panel.result], panel.units, known), [*names, THIS[1]]
        )
        self.show()
        self.shelf.children = [card.widget for card in self.cards[: len(self.results)]]

    def show(self) -> None:
        """What has a picture by now, and the two that are wiped."""
        options = shown(self.panel.session.shelf)
        if len(options) != len(self.results):
            return
        named = [(str(option.number), option.name) for option in options]
        known = dict(zip((key for key, _ in named), self.results, strict=True))
        known |= {THIS[0]: self.panel.result} if known else {}
        left, right = self._two([*known])
        wanted = [*self.results, *([known[THIS[0]]] if THIS[0] in (left, right) else [])]
        found = self.desk.want(wanted)
        pictures = dict(zip(known, found, strict=False))
        first, prices = found[0] if found else None, kept_prices(self.panel.session.words)
        for card, option, result, picture in zip(
            self.cards, options, self.results, found, strict=False
        ):
            words = option_words(result, self.panel.units, prices)
            card.show(option, words, picture, _marked(first, picture))
        self.showing = True
        with self.wipe.hold_sync():
            self.wipe.names = [list(one) for one in (*named, THIS)] if known else []
            self.wipe.left_key, self.wipe.right_key = left, right
            self.wipe.left, self.wipe.right = _at(pictures.get(left)), _at(pictures.get(right))
            told = _marked(pictures.get(left), pictures.get(right))
            self.wipe.marks = [asdict(mark) | {"names": list(mark.names)} for mark in told]
            self.wipe.said = [] if left == right else self._said(known[left], known[right])
        self.showing = False

    def _choose(self, event: Mapping[str, Any]) -> None:
        """The reader's own choice of a side stays while that option is there."""
        if not self.showing:
            self.chosen[event["name"]] = event["new"]
            self.show()

    def _two(self, keys: list[str]) -> tuple[str, str]:
        """The two that are wiped: those chosen, while they are there; else the first two."""
        if not keys:
            return "", ""
        left = self._own("left_key", keys) or keys[0]
        others = [key for key in keys if key != left]
        return left, self._own("right_key", keys) or (others[0] if others else left)

    def _own(self, side: str, keys: list[str]) -> str:
        key = self.chosen.get(side, "")
        return key if key in keys else ""

    def _said(self, one: Assessment, other: Assessment) -> list[str]:
        told = changed_inputs(one.design, other.design, self.panel.units)
        return [f"{label}: {new} where the left one has {old}." for label, old, new in told]

    def _show_removed(self) -> None:
        gone = removed(self.panel.session.shelf)
        while len(self.gone) < len(gone):
            self.gone.append(button("", partial(self._put_back, len(self.gone))))
        for made, option in zip(self.gone, gone, strict=False):
            made.description = f"Put back {option.name}"
        self.removed.children = self.gone[: len(gone)]

    def _put_back(self, place: int) -> None:
        session = self.panel.session
        option = removed(session.shelf)[place]
        self.changed(lambda: session.put_back_option(option.number))


def _marked(first: OptionPicture | None, picture: OptionPicture | None) -> tuple[Any, ...]:
    return marks(first, picture) if first is not None and picture is not None else ()


def _at(picture: OptionPicture | None) -> str:
    return "" if picture is None else address(picture)
