"""The package as a stranger gets it: built, installed into an empty environment, used from another
folder, and taken out again.

Left out of a plain run of the tests, since an environment of its own takes a minute: ``pytest -m
install``.
"""

import contextlib
import json
import os
import shutil
import subprocess
import sys
import time
import urllib.error
import urllib.request
import zipfile
from email import message_from_bytes
from pathlib import Path

import pytest
from bench.browser import free_port

ROOT = Path(__file__).resolve().parent.parent
pytestmark = pytest.mark.install
IN_FORCE = """
from jupyter_server.serverapp import ServerApp
app = ServerApp()
app.initialize(argv=%r, new_httpserver=False)
print(app.web_app.settings["kernel_websocket_connection_class"].__name__)
"""
OWN_CLASS = """
from jupyter_server.services.kernels.connection.channels import ZMQChannelsWebsocketConnection
class Own(ZMQChannelsWebsocketConnection): pass
"""


def alone(folder, **more):
    """An environment with a home of its own and nothing of the repository."""
    home = folder / "home"
    home.mkdir(exist_ok=True)
    inherited = {
        name: value
        for name, value in os.environ.items()
        if not name.startswith(("PYTHON", "JUPYTER", "FIREPLACE"))
    }
    return {**inherited, "HOME": str(home), **more}


def run(command, folder, **more):
    """Run something outside of the repository, with nothing of the repository on its path."""
    done = subprocess.run(
        [str(word) for word in command],
        cwd=folder,
        env=alone(folder, **more),
        text=True,
        capture_output=True,
    )
    return done.returncode, done.stdout, done.stderr


def listing(prefix):
    """Every file below a folder with its size; compiled Python comes and goes."""
    return {
        str(path.relative_to(prefix)): path.stat().st_size
        for path in prefix.rglob("*")
        if path.is_file() and "__pycache__" not in path.parts
    }


@pytest.fixture(scope="session")
def built(tmp_path_factory):
    """An sdist of this folder, and a wheel built from the sdist alone."""
    out = tmp_path_factory.mktemp("built")
    hatch = [sys.executable, "-m", "hatchling", "build", "-d", str(out)]
    subprocess.run([*hatch, "-t", "sdist"], cwd=ROOT, check=True, capture_output=True)
    (sdist,) = out.glob("*.tar.gz")
    shutil.unpack_archive(sdist, out)
    subprocess.run(
        [*hatch, "-t", "wheel"],
        cwd=out / sdist.name.removesuffix(".tar.gz"),
        check=True,
        capture_output=True,
    )
    (wheel,) = out.glob("*.whl")
    return wheel


class Place:
    """An environment with the wheel in it, and what it held before."""

    def __init__(self, folder, wheel):
        self.prefix, self.folder, self.wheel = folder / "env", folder / "elsewhere", wheel
        self.folder.mkdir()
        subprocess.run([sys.executable, "-m", "venv", self.prefix], check=True)
        pins = [
            line
            for line in (ROOT / "requirements.txt").read_text().splitlines()
            if line[:1].isalpha()
        ]
        (folder / "pins.txt").write_text(
            "\n".join(line.replace("[distributed]", "") for line in pins)
        )
        self.pip(
            "install",
            "--no-compile",
            "-c",
            str(folder / "pins.txt"),
            *self.metadata.get_all("Requires-Dist"),
        )
        # what an administrator has set himself, and a stranger's page settings
        own = self.prefix / "etc" / "jupyter"
        (own / "jupyter_server_config.json").write_text('{"ServerApp": {"open_browser": false}}')
        (own / "voila.json").write_text('{"VoilaConfiguration": {"theme": "dark"}}')
        self.before = listing(self.prefix)
        self.pip("install", "--no-compile", "--no-deps", str(wheel))

    @property
    def metadata(self):
        with zipfile.ZipFile(self.wheel) as archive:
            (name,) = [name for name in archive.namelist() if name.endswith(".dist-info/METADATA")]
            return message_from_bytes(archive.read(name))

    def pip(self, *words):
        requires = [word for word in words if "extra ==" not in word]
        subprocess.run(
            [self.prefix / "bin" / "pip", *requires, "-q"], check=True, capture_output=True
        )

    def python(self, *words, **more):
        return run([self.prefix / "bin" / "python", *words], self.folder, **more)


@pytest.fixture(scope="session")
def place(tmp_path_factory, built):
    return Place(tmp_path_factory.mktemp("place"), built)


def test_everything_a_reader_needs_is_in_the_wheel(built):
    """And nothing that lay about in the folder."""
    with zipfile.ZipFile(built) as archive:
        names = [name.removeprefix("fireplace_calc/_supplied/") for name in archive.namelist()]
    tracked = subprocess.run(
        ["git", "ls-files", "data", "notebooks"],
        cwd=ROOT,
        text=True,
        capture_output=True,
        check=True,
    )
    wanted = set(tracked.stdout.split())
    assert wanted <= set(names)
    assert {name for name in names if name.startswith(("data/", "notebooks/"))} == wanted
    assert "fireplace_calc/py.typed" in names


def test_the_wheel_says_what_it_is(place):
    told = place.metadata
    assert (
        told["License-Expression"] == "MIT"
        and told["License-File"] == "LICENSE"
        and told["Version"]
    )
    assert place.python("-m", "pip", "check")[0] == 0, "a library is missing from the list"


def test_it_works_from_another_folder(place):
    """The command line, the panel, and a notebook that was copied out."""
    command = place.prefix / "bin" / "fireplace-workbook"
    assert run([command, "--version"], place.folder)[1].split() == [
        "fireplace_calc",
        place.metadata["Version"],
    ]
    assert run([command, "notebooks", "mine"], place.folder)[0] == 0
    status, told, trouble = place.python(
        "-m", "fireplace_calc", "mine/designs/boathouse-laid.toml", "--out", "out"
    )
    assert status == 1 and "Boathouse club room" in told and trouble == "", trouble
    assert len(os.listdir(place.folder / "out")) == 6
    panel = (
        "from fireplace_calc import example, load; from fireplace_calc.panels import panel; "
        "print(panel(load(example('plain'))))"
    )
    status, told, trouble = place.python("-c", panel)
    assert status == 0 and told.startswith("Live panel"), trouble
    status, _, trouble = place.python("-m", "jupyter", "execute", "mine/first-look.ipynb")
    assert status == 0, trouble
    assert not (place.folder / "mine" / "kept").exists(), "who looks at the example keeps nothing"
    change = (
        "from fireplace_calc import example, load; from fireplace_calc.panels import panel; "
        "panel(load(example('plain')), jobs='mine/kept').set_input('opening.width', '44 in')"
    )
    status, _, trouble = place.python("-c", change)
    assert status == 0, trouble
    assert len(list((place.folder / "mine" / "kept").glob("*/design.toml"))) == 1


def test_a_page_by_name_keeps_in_the_folder_it_was_started_in(place):
    """The supplied notebook stands among the libraries, where nothing may be written; the job it
    opens is the one in the folder, seen by what it does to a file that cannot be read.
    """
    job = place.folder / "kept" / "client"
    job.mkdir(parents=True)
    (job / "design.toml").write_text("[opening", "utf-8")
    (place.folder / "kept" / "open.toml").write_text('job = "client"\n', "utf-8")
    before = listing(place.prefix)
    command = [place.prefix / "bin" / "fireplace-workbook", "page", "with-a-client", "--no-browser"]
    port = ["--port", str(free_port())]
    with subprocess.Popen(
        [*command, *port],
        cwd=place.folder,
        stdout=subprocess.PIPE,
        text=True,
        env=alone(place.folder),
    ) as served:
        try:
            link = next(line.strip() for line in served.stdout if line.startswith("http://"))
            with urllib.request.urlopen(link) as response:
                assert response.status == 200 and response.read()
        finally:
            served.terminate()
    assert (job / "design-unreadable-1.toml").read_text("utf-8") == "[opening"
    assert listing(place.prefix) == before


def in_force(place, *words, **more):
    status, told, trouble = place.python("-c", IN_FORCE % list(words), **more)
    assert status == 0, trouble
    return told.split()[-1]


def test_a_server_is_prompt_and_steps_aside(place, tmp_path):
    """For a gateway, and for an administrator's own class in his own file."""
    assert in_force(place) == "PromptConnection"
    assert in_force(place, "--gateway-url=http://127.0.0.1:9") == "GatewayWebSocketConnection"
    (tmp_path / "own.py").write_text(OWN_CLASS)
    own = {"ServerApp": {"kernel_websocket_connection_class": "own.Own"}}
    (tmp_path / "jupyter_server_config.json").write_text(json.dumps(own))
    assert in_force(place, JUPYTER_CONFIG_DIR=str(tmp_path), PYTHONPATH=str(tmp_path)) == "Own"


@contextlib.contextmanager
def broken(place, how):
    """The package out of order for a while."""
    package = next(place.prefix.glob("lib/python*/site-packages/fireplace_calc"))
    start, aside = package / "__init__.py", package.with_name("moved-away")
    words = start.read_text()
    if how == "does not import":
        start.write_text("raise RuntimeError('broken')\n")
    else:
        package.rename(aside)
    try:
        yield
    finally:
        if how == "does not import":
            start.write_text(words)
        else:
            aside.rename(package)


@pytest.mark.parametrize("how", ["does not import", "has moved away"])
def test_a_broken_package_keeps_no_server_from_starting(place, how):
    port = free_port()
    with broken(place, how):
        command = [
            place.prefix / "bin" / "jupyter",
            "lab",
            "--allow-root",
            "--no-browser",
            f"--port={port}",
            "--IdentityProvider.token=t",
        ]
        with (place.folder / "log.txt").open("w") as log:
            server = subprocess.Popen(
                command, cwd=place.folder, stdout=log, stderr=log, env=alone(place.folder)
            )
            try:
                assert answers(f"http://127.0.0.1:{port}/api/status?token=t", server) == 200, (
                    place.folder / "log.txt"
                ).read_text()
            finally:
                server.terminate()
                server.wait(20)


def answers(address, server):
    for _ in range(300):
        with (
            contextlib.suppress(urllib.error.URLError),
            urllib.request.urlopen(address) as response,
        ):
            return response.status
        if server.poll() is not None:
            break
        time.sleep(0.1)
    return None


def test_taken_out_it_leaves_no_trace(place):
    """Last of all: the same files of the same size as before it came, the administrator's own
    among them.
    """
    assert listing(place.prefix) != place.before
    place.pip("uninstall", "-y", "fireplace_calc")
    assert listing(place.prefix) == place.before
    assert not [*place.prefix.rglob("*fireplace*"), *(place.folder / "home").rglob("*fireplace*")]
    assert shutil.which("fireplace-workbook", path=str(place.prefix / "bin")) is None
