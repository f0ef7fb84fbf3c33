"""For the notebook server alone: send every message of a kernel at once.

The stock kernel websocket leaves Nagle's algorithm on. A slider's round trip is two small messages,
so the second one waits about 40 ms for an acknowledgement and the picture cannot follow a moving
hand. ``jupyter/etc`` holds the setting that puts this class in place, for JupyterLab and for Voila.
"""

from jupyter_server.services.kernels.connection.channels import ZMQChannelsWebsocketConnection


class PromptConnection(ZMQChannelsWebsocketConnection):
    """A kernel websocket that does not wait to fill its packets."""

    def connect(self):
        """Connect as usual, with Nagle's algorithm off."""
        self.websocket_handler.set_nodelay(True)
        return super().connect()
