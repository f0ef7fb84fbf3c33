"""The page on which a pallet is entered, drawn by ``measuring.js`` beside this file."""

from __future__ import annotations

import traitlets

from fireplace_calc.base.resources import page_source
from fireplace_calc.panels.picture.sheet_page import SHEETS_STYLE, SheetTraits, sheets_source

STYLE = """
.measuring { max-width: 1100px; padding: 4px; font-size: 13px; line-height: 1.4; }
.measuring h3 { margin: .2em 0; } .measuring h4 { margin: .6em 0 .2em; }
.measuring-keys { margin: .1em 0 .6em; opacity: .82; }
.measuring-fields { display: grid; gap: .5em 1em;
  grid-template-columns: repeat(auto-fill, minmax(min(13.5em, 45%), 1fr)); align-items: start; }
.measuring-field label { display: block; line-height: 1.25; margin-bottom: 4px; }
.measuring-field :is(input, select) { font: inherit; width: 100%; height: 2.3em;
  box-sizing: border-box; color: inherit; background: var(--jp-layout-color1, transparent);
  border: 1px solid var(--jp-border-color1, #8a8a8a); padding: .2em .5em; }
.measuring-field select option { color: #111; background: #fff; }
.measuring-field input::placeholder { color: inherit; opacity: .68; }
.measuring-field [aria-invalid="true"] { border: 2px solid #a63603; }
.measuring-wrong { margin: .15em 0 0; font-weight: 600; line-height: 1.3; }
.measuring-wrong:empty { display: none; }
.measuring-buttons { display: flex; flex-wrap: wrap; gap: .5em; margin: .7em 0 .4em; }
.measuring button { font: inherit; color: inherit; background: transparent; cursor: pointer;
  border: 1px solid var(--jp-border-color1, #8a8a8a); padding: .3em .8em; min-height: 2.1em; }
.measuring button[hidden] { display: none; }
.measuring :is(input, select, button):focus { outline: 3px solid #0b5c8a; outline-offset: 1px; }
[data-jp-theme-light="false"] .measuring :is(input, select, button):focus {
  outline-color: #7cc1ea; }
.measuring-said { min-height: 1.5em; }
.measuring-said p { margin: .1em 0; border-left: 4px solid #a63603; padding: .15em .6em; }
.measuring-misfits ul { margin: 0; padding-left: 1.4em; }
.measuring-table { overflow-x: auto; margin-top: .6em; }
.measuring table { border-collapse: collapse; width: 100%; table-layout: auto; }
.measuring caption { text-align: left; font-weight: 600; padding: .2em 0; }
.measuring :is(th, td) { text-align: left; vertical-align: top; padding: .2em .8em .2em 0;
  border-bottom: 1px solid var(--jp-border-color2, #ccc); }
.measuring tr.open td { font-weight: 600; }
.measuring-table button { min-width: 4em; text-align: left; padding: .1em .5em; }
@media print { .measuring-fields, .measuring-buttons, .measuring-keys { display: none; } }
"""


class MeasuringPage(SheetTraits):
    """Fields, what is said of them, the drawing and the table of pieces.

    Attributes
    ----------
    shown : dict
        Fields of what is open, rows of the table, and sentences; ``ask``, the field to go to, with
        a serial number that tells one request from the next.
    seen : str
        The drawing in words.
    """

    _esm = sheets_source() + page_source("panels/measuring", "measuring.js")
    _css = STYLE + SHEETS_STYLE
    shown = traitlets.Dict().tag(sync=True)
    seen = traitlets.Unicode().tag(sync=True)
