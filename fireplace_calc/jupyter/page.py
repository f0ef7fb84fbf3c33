"""A notebook as a page without code, served by Voila: on this machine, or for a client's tablet.

Voila alone asks nobody for a token, gives all visitors one folder and has its page fetch style
sheets from elsewhere. Here every request needs the token, a browser may load nothing from another
machine, only the page's own files are served, and each visitor has a folder of his own.
"""

from __future__ import annotations

import hashlib
import os
import re
import secrets
import socket
import threading
import webbrowser
from pathlib import Path
from typing import Any

from jupyter_core.paths import jupyter_config_path
from tornado import web
from traitlets import Bool, Unicode, default
from voila.app import Voila
from voila.tornado.handler import TornadoVoilaHandler

from fireplace_calc.base.units import InputError
from fireplace_calc.editing.visitor import FOLDER
from fireplace_calc.jupyter.connection import PromptConnection
from fireplace_calc.jupyter.qr import as_text

COOKIE = "fireplace-visitor"
HEADER = "X-Fireplace-Visitor"
YEAR = 365
"""How long a tablet is known again. [d]"""
IDLE = 2 * 3600
"""A page that nobody looks at any more gives its kernel back. [s]"""
EVERYWHERE = ("", "0.0.0.0", "::", "*")
OURS_ALONE = "'self' 'unsafe-inline' 'unsafe-eval' data: blob:"
"""What a browser may load; it refuses the rest by itself and waits for nothing, so the page needs
no internet.
"""


class VisitorHandler(TornadoVoilaHandler):
    """The page, with the visitor's name told to the kernel."""

    @web.authenticated
    async def get(self, path: str | None = None) -> None:
        """Know the browser again by a cookie; a header of its own is not believed."""
        self.request.headers[HEADER] = (
            self._visitor() if self.settings["fireplace_visitors"] else ""
        )
        await super().get(path)

    @property
    def content_security_policy(self) -> str:
        """Nothing from elsewhere. Older tablets do not count a websocket as the page's own, so it
        is named.
        """
        host = self.request.host
        sockets = f"connect-src {OURS_ALONE} ws://{host} wss://{host}"
        return f"default-src {OURS_ALONE}; {sockets}; frame-ancestors 'self'"

    def _visitor(self) -> str:
        known = self.get_cookie(COOKIE, "")
        if not re.fullmatch("[0-9a-f]{32}", known):
            known = secrets.token_hex(16)
            self.set_cookie(
                COOKIE,
                known,
                expires_days=YEAR,
                httponly=True,
                samesite="Strict",
                path=self.base_url,
            )
        # the folder's name must not give the cookie away
        return "visitor-" + hashlib.sha256(known.encode()).hexdigest()[:16]


class Page(Voila):
    """Voila with the settings of this package, for this process alone."""

    visitors = Bool(False, help="Whether each visitor has a folder of his own.")
    link = Unicode(help="Address of the page with its token.")
    said = Unicode(help="What to print as soon as the page is served.")
    opens = Bool(False, help="Whether to open a browser on this machine.")

    @default("kernel_websocket_connection_class")
    def _prompt(self) -> type[PromptConnection]:
        return PromptConnection

    @default("config_file_paths")
    def _no_settings_from_the_folder(self) -> list[str]:
        return list(jupyter_config_path())

    def init_settings(self) -> dict[str, Any]:
        """Add what only our page needs."""
        headers = {"Referrer-Policy": "no-referrer"}
        return {**super().init_settings(), "headers": headers, "fireplace_visitors": self.visitors}

    def init_handlers(self) -> list[Any]:
        """Put our handler where Voila has its own for the page."""
        swap = {TornadoVoilaHandler: VisitorHandler}
        return [
            (where, swap.get(handler, handler), *more)
            for where, handler, *more in super().init_handlers()
        ]

    def launch_browser(self) -> None:
        """Say that the door is open, and open the page with its token; Voila would without."""
        print(self.said, flush=True)
        if self.opens:
            threading.Thread(target=webbrowser.open, args=(self.link,), daemon=True).start()


def free_port(address: str, port: int, tries: int = 50) -> int:
    """The first port from this one on that nobody listens on.

    Parameters
    ----------
    address : str
        Of this machine, as the tablet reaches it.
    port : int
        Where to begin. [-]
    tries : int
        How many to try. [-]

    Returns
    -------
    int
        The port. [-]

    Raises
    ------
    InputError
        When the address is not one of this machine, or every port is taken.
    """
    if address in EVERYWHERE:
        raise InputError(
            f"{address} is every address of this machine; name the one that the tablet reaches.",
            "--address",
            "an address of this machine",
            address,
        )
    family = socket.AF_INET6 if ":" in address else socket.AF_INET
    for candidate in range(port, port + tries):
        with socket.socket(family) as probe:
            try:
                probe.bind((address, candidate))
            except OSError as trouble:
                last = trouble
                continue
            return candidate
    raise InputError(
        f"Nothing can be served at {address}, ports {port} to {port + tries - 1}: {last.strerror}.",
        "--address",
        "an address of this machine",
        address,
    )


def serve(
    notebook: Path, address: str, port: int, kept: Path, *, visitors: bool, opens: bool
) -> None:
    """Serve one notebook until it is stopped with Ctrl-C.

    Parameters
    ----------
    notebook : path
        It is run for every visitor.
    address : str
        Of this machine; where to listen.
    port : int
        The first to try. [-]
    kept : path
        Folder under which everything is kept.
    visitors : bool
        Whether each visitor has a folder of his own there, and a camera reads the address.
    opens : bool
        Whether to open a browser here.

    Raises
    ------
    InputError
        When nothing can be served there.
    """
    port, token = free_port(address, port), secrets.token_hex(16)
    link = f"http://{f'[{address}]' if ':' in address else address}:{port}/?token={token}"
    square = f"{as_text(link)}\n" if visitors else ""
    settings = {
        "Voila.ip": address,
        "Voila.port": port,
        "Voila.port_retries": 0,
        "Voila.token": token,
        "Voila.open_browser": True,
        "Voila.log_level": "WARN",
        "PasswordIdentityProvider.allow_password_change": False,
        "VoilaConfiguration.file_denylist": ".*",
        "VoilaConfiguration.http_header_envs": HEADER,
        "MappingKernelManager.cull_idle_timeout": IDLE,
    }
    said = f"{square}{notebook.stem} is served at:\n{link}\nCtrl-C ends it."
    os.environ[FOLDER] = str(kept.resolve())  # for the kernels, which inherit it
    app = Page(visitors=visitors, link=link, said=said, opens=opens)
    app.initialize([*(f"--{name}={value}" for name, value in settings.items()), str(notebook)])
    app.start()
