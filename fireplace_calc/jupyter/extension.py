"""The server extension: a prompt kernel websocket, and the answer to whether a notebook may run
when it is opened.
"""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

from jupyter_server.base.handlers import APIHandler
from jupyter_server.serverapp import ServerApp
from jupyter_server.utils import url_path_join
from tornado import web

from fireplace_calc.jupyter.connection import be_prompt
from fireplace_calc.jupyter.shipped import is_shipped, loadable

ADDRESS = "fireplace-workbook/shipped"
CHANGED = (
    "This notebook has not been run: its code is not the code that came with the workbook. "
    "Look at its code, and run it if you know who wrote it."
)
BESIDE = (
    "This notebook has not been run: Python files lie beside it ({names}) "
    "that could be loaded in place of the workbook's own."
)
ELSEWHERE = "This notebook has not been run: its kernel runs on another machine."


def verdict(cells: list[str], folder: Path | None) -> str:
    """Why a notebook is not to run by itself.

    Parameters
    ----------
    cells : list of str
        Source of every code cell, as the page would run them.
    folder : path or None
        Where its kernel starts; None when that is not on this machine.

    Returns
    -------
    str
        A sentence for the reader; empty when it may run.
    """
    if not is_shipped(cells):
        return CHANGED
    if folder is None or not folder.is_dir():
        return ELSEWHERE
    names = loadable(folder)
    return BESIDE.format(names=", ".join(names[:3])) if names else ""


class ShippedHandler(APIHandler):
    """Answers the page: may this notebook run now that it is opened?"""

    @web.authenticated
    async def post(self) -> None:
        """Compare the cells that the page holds; what the file says of itself is not asked."""
        asked: Any = self.get_json_body()
        cells, path = (asked or {}).get("cells"), (asked or {}).get("path")
        if (
            not isinstance(path, str)
            or not isinstance(cells, list)
            or not all(isinstance(cell, str) for cell in cells)
        ):
            raise web.HTTPError(400, "cells and path are wanted")
        self.finish(json.dumps({"why": verdict(cells, self._folder(path))}))

    def _folder(self, path: str) -> Path | None:
        app, find = self.serverapp, getattr(self.kernel_manager, "cwd_for_path", None)
        if app is None or app.gateway_config.gateway_enabled or find is None:
            return None
        return Path(find(path))


def _load_jupyter_server_extension(app: ServerApp) -> None:
    """Called once by the server, when its web application is made."""
    be_prompt(app)
    app.web_app.add_handlers(".*$", [(url_path_join(app.base_url, ADDRESS), ShippedHandler)])
