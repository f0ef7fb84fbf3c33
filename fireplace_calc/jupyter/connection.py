"""For the notebook server alone: send every message of a kernel at once.

The stock kernel websocket leaves Nagle's algorithm on. A slider's round trip is two small
messages, so the second one waits about 40 ms for an acknowledgement and the picture cannot follow
a moving hand.
"""

from __future__ import annotations

from typing import Any

from jupyter_server.serverapp import ServerApp
from jupyter_server.services.kernels.connection.channels import ZMQChannelsWebsocketConnection

TRAIT = "kernel_websocket_connection_class"


class PromptConnection(ZMQChannelsWebsocketConnection):
    """A kernel websocket that does not wait to fill its packets."""

    def connect(self) -> Any:
        """Connect as usual, with Nagle's algorithm off."""
        self.websocket_handler.set_nodelay(True)
        return super().connect()


def be_prompt(app: ServerApp) -> bool:
    """Put the prompt connection in place, where the stock one is in force and nobody has asked for
    it by name.

    A gateway, or an administrator with a class of his own, is left alone.

    Parameters
    ----------
    app : ServerApp
        A server whose web application is made.

    Returns
    -------
    bool
        Whether it was put in place.
    """
    stock = app.web_app.settings.get(TRAIT) is ZMQChannelsWebsocketConnection
    if not stock or any(TRAIT in app.config.get(name, {}) for name in type(app).section_names()):
        return False
    setattr(app, TRAIT, PromptConnection)
    app.web_app.settings[TRAIT] = PromptConnection
    return True
