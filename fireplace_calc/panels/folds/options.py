"""Up to six designs put aside and seen side by side, with what each costs, weighs, draws and
breaks.
"""

from __future__ import annotations

from base64 import b64encode
from collections.abc import Callable
from functools import partial
from html import escape
from typing import Any

import ipywidgets as w

from fireplace_calc.assessment import Assessment, assess
from fireplace_calc.drawing import HEIGHT, WIDTH, Picture
from fireplace_calc.drawing.composed.compose import views
from fireplace_calc.editing.jobs.options import MOST_OPTIONS, Option, removed, shown
from fireplace_calc.panels import html
from fireplace_calc.panels.controls.choices import button, row
from fireplace_calc.panels.folds.folds import LONG_REST, Fold
from fireplace_calc.panels.host import Host
from fireplace_calc.report.alternatives import side_by_side
from fireplace_calc.report.for_client.under_a_picture import option_words

NAME = {"style": {"description_width": "4em"}, "continuous_update": False}
"""How a box for a name is laid out."""


class Options(Fold):
    """The fold of options: a row of small pictures with their names and buttons, those that were
    removed, and a table under them.
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
                f"Up to {MOST_OPTIONS} designs, each compared with the first. The design you are"
                " working on comes last. Undo takes back what you do here, too."
            )
        )
        self.widget = w.VBox(
            [hint, row([self.name, self.keep]), self.shelf, self.removed, self.table]
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

    def update(self) -> None:
        """Small pictures, and everything side by side."""
        panel, session = self.panel, self.panel.session
        options = shown(session.shelf)
        results = [assess(design, panel.pack) for design in session.options]
        self.keep.disabled = len(results) >= MOST_OPTIONS
        while len(self.cards) < len(results):
            self.cards.append(OptionCard(self))
        for card, option, result in zip(self.cards, options, results, strict=False):
            card.show(option, result, panel.units)
        self.shelf.children = [card.widget for card in self.cards[: len(results)]]
        self._show_removed()
        names = [option.name for option in options]
        self.table.value = html.options(
            side_by_side([*results, panel.result], panel.units), [*names, "This design"]
        )

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


class OptionCard:
    """One option: its name, to be changed, a small picture in its room, a button to bring it back
    and one to take it away.

    A card is shown again with another option, and its picture is drawn only for a new design.
    """

    def __init__(self, fold: Options) -> None:
        self.fold, self.number, self.quiet = fold, 0, False
        self.picture = Picture(WIDTH, HEIGHT, dots=2.0)
        self.shown: tuple[Any, str] | None = None
        self.image, self.png, self.words = w.HTML(), "", w.HTML()
        self.name = w.Text(description="Name", layout=w.Layout(width="auto"), **NAME)
        self.name.observe(lambda event: self._named(event["new"]), "value")
        self.back = button("", lambda: fold.bring_back(self.number))
        self.away = button("", self._away)
        self.widget = w.VBox([self.name, self.image, self.words, row([self.back, self.away])])

    def _named(self, name: str) -> None:
        if not self.quiet:
            session = self.fold.panel.session
            self.fold.changed(lambda: session.rename_option(self.number, name))

    def _away(self) -> None:
        session = self.fold.panel.session
        self.fold.changed(lambda: session.remove_option(self.number))

    def show(self, option: Option, result: Assessment, units: str) -> None:
        """Draw an option, unless it is the one that is shown."""
        self.number, self.quiet = option.number, True
        self.name.value = option.name
        self.quiet = False
        self.back.description = f"Bring back {option.name}"
        self.away.description = f"Remove {option.name}"
        if self.shown != (result.design, units):
            self.shown = (result.design, units)
            drawn = self.picture.png(list(views("room", result.geometry, units)))
            self.png = b64encode(drawn).decode()
        self.words.value = html.option(option_words(result, units))
        self.image.value = (
            f'<img alt="{escape(option.name)}, in its room" src="data:image/png;base64,{self.png}">'
        )
