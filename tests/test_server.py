"""What pip puts beside JupyterLab: the websocket that does not wait, and the script that looks
after a workbook.
"""

import sys
from pathlib import Path

import pytest
from jupyter_server.serverapp import ServerApp
from voila.app import Voila

import fireplace_calc
from fireplace_calc.server import PromptConnection, ZMQChannelsWebsocketConnection

SOURCE = Path(fireplace_calc.__file__).parent / "jupyter"
SHARE = Path(sys.prefix) / "share" / "jupyter"
OURS = SHARE / "labextensions" / "fireplace-workbook"


def test_pip_switches_the_prompt_connection_on():
    """Read as JupyterLab's server reads it when it starts."""
    app = ServerApp()
    app.load_config_file(suppress_errors=False)
    assert app.kernel_websocket_connection_class is PromptConnection
    loosened = {"ip", "token", "password", "allow_remote_access", "allow_origin"} & set(
        app.config.ServerApp
    )
    assert not loosened, "loopback and token stay"
    assert app.ip in ("localhost", "127.0.0.1")


def test_pip_switches_it_on_in_voila_too():
    """Voila is a program of its own with a setting of its own."""
    app = Voila()
    app.load_config_file("voila", path=app.config_file_paths)
    assert app.kernel_websocket_connection_class is PromptConnection
    assert app.ip in ("localhost", "127.0.0.1")


def test_a_connection_sends_at_once_before_it_connects(monkeypatch):
    """Order matters: the first message is already small."""
    told = []

    class Handler:
        def set_nodelay(self, on):
            told.append(("nodelay", on))

    connection = PromptConnection.__new__(PromptConnection)
    monkeypatch.setattr(PromptConnection, "websocket_handler", Handler())
    monkeypatch.setattr(
        ZMQChannelsWebsocketConnection, "connect", lambda self: told.append("connect")
    )
    connection.connect()
    assert told == [("nodelay", True), "connect"]


@pytest.mark.parametrize(
    ("ours", "installed"),
    [
        ("labextension/static/remoteEntry.js", OURS / "static" / "remoteEntry.js"),
        ("labextension/package.json", OURS / "package.json"),
        ("settings/overrides.json", SHARE / "lab" / "settings" / "overrides.json"),
        (
            "etc/jupyter_server_config.json",
            Path(sys.prefix) / "etc" / "jupyter" / "jupyter_server_config.json",
        ),
        ("etc/voila.json", Path(sys.prefix) / "etc" / "jupyter" / "voila.json"),
    ],
)
def test_what_is_installed_is_what_is_written(ours, installed):
    """Pip copies these even for an editable install, so an edit needs another install to be seen."""
    assert installed.read_text() == (SOURCE / ours).read_text(), (
        "install once more: pip install -r requirements.txt"
    )
