"""One option on its shelf: its name, a large picture, what there is to say, and its buttons."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import asdict
from html import escape
from typing import Any

import ipywidgets as w

from fireplace_calc.editing.jobs.options import Option
from fireplace_calc.panels import html
from fireplace_calc.panels.controls.choices import button, row
from fireplace_calc.panels.options.picture_desk import address
from fireplace_calc.report.for_client.under_a_picture import OptionWords
from fireplace_calc.scene.still.option_pictures import Mark, OptionPicture

NAME = {"style": {"description_width": "4em"}, "continuous_update": False}
"""How a box for a name is laid out."""
Act = Callable[[int], None]


class OptionCard:
    """One option: its name, to be changed, its picture with what changed marked, the words under
    it, a button to bring it back and one to take it away.

    Parameters
    ----------
    rename : callable
        Called with the option's number and its new name.
    bring_back, remove : callable
        Called with the option's number.
    """

    def __init__(self, rename: Callable[[int, str], None], bring_back: Act, remove: Act) -> None:
        self.number, self.quiet = 0, False
        self.image, self.words = w.HTML(), w.HTML()
        self.name = w.Text(description="Name", layout=w.Layout(width="auto"), **NAME)
        self.rename = rename
        self.name.observe(lambda event: self._named(event["new"]), "value")
        self.back = button("", lambda: bring_back(self.number))
        self.away = button("", lambda: remove(self.number))
        self.widget = w.VBox([self.name, self.image, self.words, row([self.back, self.away])])
        self._pictured: tuple[Any, str] = (None, "")

    def _named(self, name: str) -> None:
        if not self.quiet:
            self.rename(self.number, name)

    def show(
        self,
        option: Option,
        words: OptionWords,
        picture: OptionPicture | None,
        changed: Sequence[Mark],
    ) -> None:
        """Show an option; a picture that is still to come is said to be made."""
        self.number, self.quiet = option.number, True
        self.name.value = option.name
        self.quiet = False
        self.back.description = f"Bring back {option.name}"
        self.away.description = f"Remove {option.name}"
        self.words.value = html.option(words)
        if picture is None:
            self.image.value = html.remark("The picture is being made.")
            return
        if self._pictured[0] is not picture:
            self._pictured = (picture, address(picture))
        self.image.value = pictured(f"{option.name}, in its room", self._pictured[1], changed)


def pictured(alt: str, source: str, changed: Sequence[Mark]) -> str:
    """A picture as HTML, with a frame round every place that is marked."""
    frames = "".join(
        '<span class="wipe-mark" title="{}" style="left:{:.2%};top:{:.2%};width:{:.2%};'
        'height:{:.2%}"></span>'.format(
            escape(", ".join(told["names"])),
            told["left"],
            told["top"],
            told["right"] - told["left"],
            told["bottom"] - told["top"],
        )
        for told in map(asdict, changed)
    )
    image = f'<img alt="{escape(alt)}" src="{source}">'
    return f'<div class="fireplace-option">{image}{frames}</div>'
