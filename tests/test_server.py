"""What stands beside JupyterLab: the websocket that does not wait, and who may run when opened.
Nobody's settings are touched.
"""

import json
import sys
from pathlib import Path

import pytest
from jupyter_server.gateway.connections import GatewayWebSocketConnection
from jupyter_server.gateway.gateway_client import GatewayClient
from jupyter_server.serverapp import ServerApp
from traitlets.config import Config

import fireplace_calc
from fireplace_calc.base.resources import NOTEBOOKS
from fireplace_calc.jupyter import _jupyter_server_extension_points, extension, shipped
from fireplace_calc.jupyter.connection import (
    TRAIT,
    PromptConnection,
    ZMQChannelsWebsocketConnection,
)

SOURCE = Path(fireplace_calc.__file__).parent / "jupyter"
SHARE = Path(sys.prefix) / "share" / "jupyter"
OURS = SHARE / "labextensions" / "fireplace-workbook"
OF_SERVER = Path(sys.prefix) / "etc" / "jupyter" / "jupyter_server_config.d" / "fireplace_calc.json"
FIRST = shipped.code_cells((NOTEBOOKS / "first-look.ipynb").read_text())


class Slow(ZMQChannelsWebsocketConnection):
    """An administrator's own class."""


@pytest.fixture
def started(tmp_path, monkeypatch):
    """A server as it stands when it has read its settings, ours among its extensions."""
    for name in ("JUPYTER_CONFIG_DIR", "JUPYTER_DATA_DIR", "JUPYTER_RUNTIME_DIR"):
        monkeypatch.setenv(name, str(tmp_path / name))
    apps = []

    def start(settings=None, **environment):
        GatewayClient.clear_instance()
        for name, value in environment.items():
            monkeypatch.setenv(name, value)
        app = ServerApp(
            config=Config({"ServerApp": settings or {}}),
            jpserver_extensions={"fireplace_calc.jupyter": True},
        )
        apps.append(app)
        app.initialize(argv=[], find_extensions=False, new_httpserver=False)
        return app

    yield start
    GatewayClient.clear_instance()
    for app in apps:
        app.io_loop.close()


def in_force(app):
    return app.web_app.settings[TRAIT]


def test_a_plain_server_sends_at_once(started):
    app = started()
    assert in_force(app) is app.kernel_websocket_connection_class is PromptConnection
    assert (
        app.ip in ("localhost", "127.0.0.1") and not app.allow_root and app.identity_provider.token
    ), "nothing else is changed"


def test_a_gateway_keeps_its_own_connection(started):
    """Kernels elsewhere are reached by another websocket, which ours would cut off."""
    assert in_force(started(JUPYTER_GATEWAY_URL="http://127.0.0.1:9")) is GatewayWebSocketConnection


@pytest.mark.parametrize("chosen", [Slow, ZMQChannelsWebsocketConnection])
def test_an_administrators_choice_stands(started, chosen):
    """Also when it is the stock class, asked for by name."""
    assert in_force(started({TRAIT: chosen})) is chosen


def test_a_broken_extension_does_not_keep_the_server_from_starting(started, monkeypatch):
    def broken(app):
        raise RuntimeError("broken")

    monkeypatch.setattr(extension, "be_prompt", broken)
    assert in_force(started()) is ZMQChannelsWebsocketConnection


def test_the_extension_names_a_module_that_loads():
    (point,) = _jupyter_server_extension_points()
    assert point["module"] == extension.__name__ and callable(
        extension._load_jupyter_server_extension
    )


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
        ("etc/fireplace_calc.json", OF_SERVER),
    ],
)
def test_what_is_installed_is_what_is_written(ours, installed):
    """Pip copies these even for an editable install: an edit needs another to be seen."""
    assert installed.read_text() == (SOURCE / ours).read_text(), (
        "install once more: pip install -r requirements.txt"
    )


def test_no_setting_of_anybody_elses_is_installed():
    """The file names our extension and says nothing else."""
    assert json.loads(OF_SERVER.read_text()) == {
        "ServerApp": {"jpserver_extensions": {"fireplace_calc.jupyter": True}}
    }


# ---- who may run when opened


def test_the_list_of_shipped_notebooks_is_the_one_of_their_files():
    assert json.loads(shipped.LIST.read_text()) == shipped.supplied(), (
        "run python -m fireplace_calc.jupyter.shipped"
    )
    assert len(shipped.supplied()) == 12


@pytest.mark.parametrize("name", sorted(shipped.supplied()))
def test_a_shipped_notebook_may_run(name, tmp_path):
    cells = shipped.code_cells((NOTEBOOKS / name).read_text())
    assert extension.verdict(cells, tmp_path) == ""


@pytest.mark.parametrize(
    "change",
    [
        lambda cells: [*cells, "print('one more')"],
        lambda cells: [*cells, ""],
        lambda cells: cells[:-1],
        lambda cells: cells[::-1],
        lambda cells: [cells[0] + " ", *cells[1:]],
        lambda cells: [cells[0].replace("a", "\u0430", 1), *cells[1:]],
        lambda cells: ["".join(cells)],
        lambda cells: [cells[0] + "\n" + cells[1], *cells[2:]],
        lambda cells: [],
    ],
    ids=[
        "a cell more",
        "an empty cell more",
        "a cell less",
        "turned round",
        "a space more",
        "a letter that looks alike",
        "all in one",
        "two in one",
        "none",
    ],
)
def test_code_that_differs_in_anything_waits(change, tmp_path):
    changed = change(FIRST)
    assert changed != FIRST and extension.verdict(changed, tmp_path) == extension.CHANGED


@pytest.mark.parametrize(
    "name",
    [
        "fireplace_calc.py",
        "numpy/__init__.py",
        "matplotlib.pyc",
        "json.cpython-311-x86_64-linux-gnu.so",
    ],
)
def test_python_beside_a_shipped_notebook_makes_it_wait(name, tmp_path):
    """A kernel imports from its own folder first. Python's documentation of sys.path; the endings
    are those of this Python.
    """
    from importlib.machinery import all_suffixes

    path = tmp_path / (
        name
        if not name.endswith(".so")
        else "json" + next(s for s in all_suffixes() if s.endswith((".so", ".pyd")))
    )
    path.parent.mkdir(exist_ok=True)
    path.touch()
    why = extension.verdict(FIRST, tmp_path)
    assert path.relative_to(tmp_path).parts[0] in why and why != extension.CHANGED


def test_what_a_reader_keeps_beside_it_does_not(tmp_path):
    (tmp_path / "kept" / "first-look").mkdir(parents=True)
    (tmp_path / "kept" / "first-look" / "design.toml").touch()
    (tmp_path / "boathouse.png").touch()
    assert extension.verdict(FIRST, tmp_path) == ""


def test_a_kernel_on_another_machine_waits(tmp_path):
    assert (
        extension.verdict(FIRST, None)
        == extension.verdict(FIRST, tmp_path / "not there")
        == extension.ELSEWHERE
    )
