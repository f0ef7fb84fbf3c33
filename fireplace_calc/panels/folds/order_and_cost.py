"""The order with its costs, by the reader's own price list or the example's."""

from __future__ import annotations

import base64
from collections.abc import Iterable, Mapping
from functools import partial
from html import escape
from typing import Any

import ipywidgets as w

from fireplace_calc.drawing.yard.order_sheets import order_words
from fireplace_calc.panels import html
from fireplace_calc.panels.controls.choices import button, row
from fireplace_calc.panels.folds.folds import LONG_REST, Fold
from fireplace_calc.panels.host import Host
from fireplace_calc.report.yard.by_supplier import yard_order
from fireplace_calc.report.yard.kept_list import (
    LIST,
    NAMED,
    kept_prices,
    list_to_fill_in,
    list_words,
)

FILL_IN = "price-list.csv"


class OrderAndCost(Fold):
    """Prices, and what is ordered by them; a list of one's own is kept with the job."""

    rest = LONG_REST

    def __init__(self, panel: Host) -> None:
        super().__init__(panel)
        self.upload = w.FileUpload(
            accept=".csv,.txt", description="Open a price list", layout=w.Layout(width="auto")
        )
        self.upload.observe(lambda event: self._opened(event["new"]), "value")
        self.fill_in = button("Price list to fill in", self._to_fill_in)
        self.example = button("Back to example prices", self._back)
        self.said, self.link, self.words = w.HTML(), w.HTML(), w.HTML()
        self.widget = w.VBox(
            [row([self.upload, self.fill_in, self.example]), self.said, self.link, self.words]
        )

    def update(self) -> None:
        """What the list is, and the order by it."""
        panel, words = self.panel, self.panel.session.words
        known = kept_prices(words)
        own = LIST in words
        self.example.disabled = not own
        currency = next((one.currency for one in known.values() if one.currency), "")
        self.said.value = html.remark(
            f"Prices by {words.get(NAMED, 'a list of your own')}, {len(known)} items,"
            f" {currency or 'no currency named'}. Kept with the job."
            if own
            else "Every price is an invented example. Open a list of your own: items, units and"
            " prices, in your currency, with a rate for labor where you want it counted."
        )
        self.words.value = html.flow(order_words(panel.result, panel.units, known))

    def _opened(self, files: Iterable[Mapping[str, Any]]) -> None:
        for file in files:
            self.panel.attempt(partial(self._open, file))

    def _open(self, file: Mapping[str, Any]) -> None:
        self._keep(list_words(bytes(file["content"]), str(file["name"])))

    def _back(self) -> None:
        self.panel.attempt(lambda: self._keep({}))

    def _keep(self, told: Mapping[str, str]) -> None:
        """Keep a list with the job, and show everything by it."""
        words = self.panel.session.words
        for name in (LIST, NAMED):
            words.pop(name, None)
        words.update(told)
        self.panel.keep()
        self.panel.catch_up()
        self.update()

    def _to_fill_in(self) -> None:
        """A list of everything this job takes, as a file."""
        panel = self.panel
        known = kept_prices(panel.session.words)
        text = list_to_fill_in(panel.result, yard_order(panel.result, known), known)
        data = base64.b64encode(text.encode("utf-8-sig")).decode()
        self.link.value = (
            f'<a download="{escape(FILL_IN)}" href="data:text/csv;base64,{data}">'
            f"Download {escape(FILL_IN)}</a>"
        )
