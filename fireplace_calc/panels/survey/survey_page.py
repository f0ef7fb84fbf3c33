"""The page on which a survey is entered, drawn by ``survey.js`` beside this file."""

from __future__ import annotations

import traitlets

from fireplace_calc.base.resources import page_source
from fireplace_calc.panels.picture.sheet_page import SHEETS_STYLE, SheetTraits, sheets_source

STYLE = """
.survey { font-size: 13px; line-height: 1.35; max-width: 1100px; }
.survey-head { display: flex; flex-wrap: wrap; gap: .5em; align-items: end; }
.survey label { display: block; line-height: 1.25; }
.survey :is(input[type=text], select, button) { font: inherit; color: inherit; min-height: 44px;
  box-sizing: border-box; background: var(--jp-layout-color1, transparent); padding: .2em .6em;
  border: 1px solid var(--jp-border-color1, #8a8a8a); max-width: 100%; }
.survey select option { color: #111; background: #fff; }
.survey button { cursor: pointer; } .survey button:disabled { cursor: default; opacity: .6; }
.survey :is(input, select, button):focus-visible {
  outline: 3px solid #0b5c8a; outline-offset: 1px; }
[data-jp-theme-light="false"] .survey :is(input, select, button):focus-visible {
  outline-color: #7cc1ea; }
.survey [aria-invalid="true"] { border: 2px solid #a63603; }
.survey-said { margin: .4em 0; min-height: 1.3em; font-weight: 600; }
.survey-list { list-style: none; margin: 0; padding: 2px; display: grid; gap: 0 1.4em;
  grid-template-columns: repeat(auto-fill, minmax(min(25em, 100%), 1fr)); }
.survey .fireplace-canvases { margin-bottom: .5em; }
.survey-list[hidden] { display: none; }
.survey-list li { display: flex; flex-wrap: wrap; gap: .3em .7em; align-items: end;
  padding: .5em 0; border-bottom: 1px solid var(--jp-border-color2, #ccc); align-content: start; }
.survey-title { flex: 1 1 100%; } .survey-title b { display: block; }
.survey-box { flex: 0 1 8.5em; min-width: 0; }
.survey-box :is(input, select) { width: 100%; }
.survey-box input::placeholder { color: inherit; opacity: .68; }
.survey-wrong { margin: .15em 0 0; font-weight: 600; line-height: 1.25; }
.survey-box:has([aria-invalid="true"]) { flex-basis: 100%; }
.survey-wrong:empty, .survey-found:empty { display: none; }
.survey-out { display: flex; align-items: center; min-height: 44px; }
.survey-out input { width: 22px; height: 22px; margin: 11px 6px 11px 0; }
.survey-out label { padding: 14px 0; }
.survey-found { flex: 1 1 100%; margin: 0; }
"""


class SurveyPage(SheetTraits):
    """Stations, the entries of one of them, and what is said of each.

    Attributes
    ----------
    shown : dict
        Everything that stands on it.
    """

    _esm = sheets_source() + page_source("panels/survey", "survey.js")
    _css = STYLE + SHEETS_STYLE
    shown = traitlets.Dict().tag(sync=True)
