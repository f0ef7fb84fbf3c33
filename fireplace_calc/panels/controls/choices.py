"""Lists and buttons that several panels have."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping
from typing import Any

import ipywidgets as w

from fireplace_calc.base.units import FEET_INCHES, MILLIMETRES

PAPERS = {"Light": "light", "Dark": "dark", "Print": "print"}
UNITS = {"Feet and inches": FEET_INCHES, "Millimeters": MILLIMETRES}


def dropdown(
    label: str,
    options: Mapping[str, Any] | Iterable[str],
    value: Any,
    act: Callable[[Any], object],
    wide: str = "22em",
    name: str = "6em",
) -> w.Dropdown:
    """A list to choose from, with its label.

    Parameters
    ----------
    label : str
        What it is called.
    options : mapping or iterable of str
        Words to choose from, with what each stands for.
    value : object
        What is chosen at first.
    act : callable
        Called with what has been chosen.
    wide, name : str
        Width of the whole and of its label, as CSS.
    """
    made = w.Dropdown(
        options=options,
        value=value,
        description=label,
        layout=w.Layout(width=wide),
        style={"description_width": name},
    )
    made.observe(lambda event: act(event["new"]), "value")
    return made


def button(label: str, act: Callable[[], object]) -> w.Button:
    """A button as wide as its words."""
    made = w.Button(description=label, layout=w.Layout(width="auto"))
    made.on_click(lambda _: act())
    return made


def row(children: Iterable[w.Widget]) -> w.HBox:
    """Widgets side by side, in as many lines as they need."""
    return w.HBox(list(children), layout=w.Layout(flex_flow="row wrap"))
