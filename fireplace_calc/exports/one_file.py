"""One file that turns: the lit scene and all it needs, for a mail; it asks nothing of a network."""

from __future__ import annotations

import json
import re
from base64 import b64encode
from collections.abc import Mapping, Sequence
from dataclasses import asdict
from datetime import date
from html import escape
from typing import Any

from fireplace_calc.base.resources import made_by, page_source
from fireplace_calc.base.units import FEET_INCHES
from fireplace_calc.drawing.client_pages.page_plan import NamedDesign
from fireplace_calc.report.for_client.fallen_short import shortfall
from fireplace_calc.report.for_client.handed_over import Names
from fireplace_calc.report.for_client.three_sentences import client_cautions, client_sentences
from fireplace_calc.report.for_client.under_a_picture import option_words
from fireplace_calc.report.sentences import require_units
from fireplace_calc.scene.picked import about
from fireplace_calc.scene.sky import sun_table
from fireplace_calc.scene.still.option_pictures import one_standpoint, option_picture
from fireplace_calc.scene.stuffs import stuffs
from fireplace_calc.scene.whole_scene import gather_scene
from fireplace_calc.scene.wire import bytes_of, pack_fireplace, pack_layouts, pack_setting
from fireplace_calc.takeoff.cost import Price

LARGEST = 3_000_000
"""So that any mail takes it. [bytes]"""
POLICY = (
    "default-src 'none'; script-src 'unsafe-inline' blob:; worker-src blob:; style-src"
    " 'unsafe-inline'; img-src data: blob:"
)
"""The page may ask nobody for anything."""
_OUT = re.compile(r"export\s*\{\s*([\w$]+) as default\s*\};?\s*$")
POSTER = (900, 600)
"""Picture that stands there until the scene has come, and where it cannot. [dots]"""


def room_to_turn(
    options: Sequence[NamedDesign],
    names: Names | None = None,
    units: str = FEET_INCHES,
    poster: tuple[int, int] = POSTER,
    priced: Mapping[str, Price] | None = None,
) -> str:
    """A page in one file, with options to switch, names, prices and cautions.

    Parameters
    ----------
    options : sequence of NamedDesign
        The first is shown when it is opened; each name once.
    names : Names, optional
        Client, designer and mark.
    units : str
        ``feet-inches`` or ``millimetres``.
    poster : tuple of int
        Size of the picture that stands there until the scene has come. [-]
    priced : mapping, optional
        Price list by item; else the example list, which is invented.

    Returns
    -------
    str
        HTML.

    Raises
    ------
    InputError
        When there is no such unit system.
    ValueError
        When there is no option, or a name stands twice.
    """
    require_units(units)
    called = [one.name for one in options]
    if not called or len(set(called)) < len(called):
        raise ValueError(f"Options are called {called}, but one at least and each otherwise.")
    names = names or Names()
    eye = one_standpoint([one.result for one in options])
    patterns: dict[str, Any] = {}
    forms: dict[str, Any] = {}
    told = []
    for one in options:
        picture = option_picture(one.result, eye, *poster).jpeg
        told.append(_told(one, units, picture, priced, patterns, forms))
    shared = {
        "looks": {name: _plain(asdict(stuff)) for name, stuff in stuffs().items()},
        "sun": sun_table(options[0].result.design),
        "mode": "room",
        "units": units,
        "step": -1,
        "steps": 0,
        "bare": True,
        "hour": "Day",
        "hatches": {},
    }
    content = {"options": told, "patterns": patterns, "forms": forms, "shared": shared}
    return _page(options, names, units, json.dumps(content, default=_bytes))


def _told(
    one: NamedDesign,
    units: str,
    picture: bytes,
    priced: Mapping[str, Price] | None,
    patterns: dict[str, Any],
    forms: dict[str, Any],
) -> dict[str, Any]:
    """What the page is told of an option; its patterns and forms are laid beside the others', each
    once.
    """
    scene = gather_scene(one.result)
    layouts = pack_layouts(scene.layouts, patterns)
    patterns.update(layouts["patterns"])
    setting = pack_setting(scene.setting, forms)
    forms.update(_apart(setting))
    fireplace = pack_fireplace(scene.fireplace, scene.measures, scene.standpoints, one.name, forms)
    forms.update(_apart(fireplace))
    return {
        "name": one.name,
        "traits": {
            "setting": setting,
            "fireplace": fireplace,
            "words": {
                "title": one.name,
                "opening": client_sentences(one.result, units)[0],
                "short": shortfall(one.result).headline,
            },
        },
        "layouts": {name: value for name, value in layouts.items() if name != "patterns"},
        "about": {thing.key: about(one.result, thing, units) for thing in scene.fireplace},
        "words": _words(one, units, priced),
        "poster": f"data:image/jpeg;base64,{b64encode(picture).decode()}",
    }


def _apart(packed: dict[str, Any]) -> dict[str, Any]:
    """Take the forms out of what is packed: each by its name, with its corners and faces."""
    points, faces = packed.pop("points"), packed.pop("faces")
    made, point, face = {}, 0, 0
    for name, size in zip(packed.pop("forms"), packed.pop("sizes"), strict=True):
        of_points, of_faces = bytes_of(size)
        made[name] = {
            "size": size,
            "points": points[point : point + of_points],
            "faces": faces[face : face + of_faces],
        }
        point, face = point + of_points, face + of_faces
    return made


def _plain(stuff: dict[str, Any]) -> dict[str, Any]:
    return {name: value for name, value in stuff.items() if name != "source"}


def _bytes(value: Any) -> Any:
    """Bytes as letters, and numpy's numbers as numbers."""
    if isinstance(value, bytes):
        return {"$bytes": b64encode(value).decode()}
    return value.item()


def _words(one: NamedDesign, units: str, priced: Mapping[str, Price] | None) -> str:
    """Three sentences and the price, and what falls short."""
    said = option_words(one.result, units, priced)
    sentences = "".join(f"<p>{escape(s)}</p>" for s in client_sentences(one.result, units))
    short = "".join(f"<li>{escape(line)}</li>" for line in said.short)
    listed = f"<ul class=small>{short}</ul>" if short else ""
    return (
        f"<div><h2>{escape(one.name)}</h2>{sentences}</div>"
        f'<div><p class="price">{escape(said.price)}</p>'
        f'<p class="small">{escape(said.without)} Low to high: {escape(said.stands_on)}</p>'
        f'<p class="small">{escape(said.draft)} {escape(said.weight)} as it stands.</p>'
        f'<p class="small"><b>{escape(said.headline)}</b></p>{listed}</div>'
    )


def _page(options: Sequence[NamedDesign], names: Names, units: str, content: str) -> str:
    scene = _OUT.sub(r"globalThis.litScene = \1;", page_source("panels/scene", "scene.js"))
    if "globalThis.litScene" not in scene:
        raise ValueError("The scene's page gives no default export; build it anew.")
    title = options[0].result.design.name
    buttons = "".join(
        f'<button type="button" value="{escape(one.name)}">{escape(one.name)}</button>'
        for one in options
    )
    mark = (
        f'<img alt="" src="data:image/png;base64,{b64encode(names.mark).decode()}">'
        if names.mark
        else ""
    )
    client = f'<p class="for">for {escape(names.client)}</p>' if names.client else ""
    cautions = "".join(
        f"<p>{escape(text)}</p>" for text in client_cautions(units, options[0].result.pack)
    )
    chosen = f'<div class="options" role="group" aria-label="Options">{buttons}</div>'
    invented = " Invented example." if "invented" in options[0].result.design.note.lower() else ""
    return (
        '<!doctype html>\n<html lang="en"><head><meta charset="utf-8">'
        f'<meta http-equiv="Content-Security-Policy" content="{POLICY}">'
        '<meta name="viewport" content="width=device-width, initial-scale=1">'
        f"<title>{escape(title)}</title>"
        f"<style>{page_source('exports', 'one_file.css')}</style></head><body>"
        f"<header><div><h1>{escape(title)}</h1>{client}</div>"
        f'<div class="by">{mark}<p>{escape(names.designer)}</p></div></header>'
        f'<main>{chosen if len(options) > 1 else ""}<div id="scene"></div>'
        '<div id="still"><img id="poster" alt=""><p>A still picture: the room that turns needs a'
        ' browser with WebGL.</p></div><section id="words" aria-live="polite"></section>'
        f'<section class="know"><h2>Good to know</h2>{cautions}</section></main>'
        f"<footer>{date.today().isoformat()}. A plan, to be checked on site.{invented}"
        f" {escape(made_by())}</footer>"
        f'<script type="application/json" id="told">{_in_script(content)}</script>'
        f'<script type="module">{_in_script(scene)}\n'
        f"{_in_script(page_source('panels/scene', 'standalone.js'))}</script></body></html>\n"
    )


def _in_script(text: str) -> str:
    """Nothing in it ends the script that holds it."""
    return text.replace("</", "<\\/").replace("<!--", "<\\!--")
