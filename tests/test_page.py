"""A notebook as a page for a client's tablet: nobody without the token, each visitor in a folder
of his own, nothing from elsewhere.
"""

import http.client
import http.cookiejar
import os
import re
import signal
import subprocess
import sys
import urllib.error
import urllib.request
from urllib.parse import urlsplit

import nbformat
import pytest
from bench.browser import FLAGS, chromium
from test_browser import REQUIRED
from traitlets.config import Config

from fireplace_calc.base.resources import NOTEBOOKS
from fireplace_calc.editing.visitor import FOLDER, own_folder
from fireplace_calc.jupyter.command import main
from fireplace_calc.jupyter.connection import (
    TRAIT,
    PromptConnection,
    ZMQChannelsWebsocketConnection,
)
from fireplace_calc.jupyter.page import Page

COMMAND = [sys.executable, "-m", "fireplace_calc.jupyter.command"]
ADDRESS = "127.0.0.1"
NOBODY = "aaaaaaaa-aaaa-aaaa-aaaa-aaaaaaaaaaaa"
SIGNS_THE_BOOK = """from fireplace_calc.editing.visitor import own_folder
folder = own_folder("kept/client")
folder.mkdir(parents=True, exist_ok=True)
book = folder / "book.txt"
book.write_text((book.read_text() if book.exists() else "") + "was here\\n")"""


@pytest.fixture(scope="module")
def tablet(tmp_path_factory):
    """Served from a folder of its own: a notebook that signs a book in the visitor's folder."""
    folder = tmp_path_factory.mktemp("desk")
    kernel = {"name": "python3", "display_name": "Python 3", "language": "python"}
    made = nbformat.v4.new_notebook(
        cells=[nbformat.v4.new_code_cell(SIGNS_THE_BOOK)], metadata={"kernelspec": kernel}
    )
    nbformat.write(made, folder / "book.ipynb")
    (folder / "plan.png").write_bytes(b"somebody else's")
    with served("tablet", "book.ipynb", "--address", ADDRESS, folder=folder) as link:
        yield link, folder


class served:
    """The command running; the address it prints."""

    def __init__(self, *arguments, folder):
        self.process = subprocess.Popen(
            [*COMMAND, *arguments],
            cwd=folder,
            stdout=subprocess.PIPE,
            stderr=subprocess.STDOUT,
            text=True,
        )

    def __enter__(self):
        said = []
        for line in self.process.stdout:
            said.append(line)
            if line.startswith("http://"):
                return line.strip()
        raise RuntimeError("".join(said))

    def __exit__(self, *_):
        self.process.send_signal(signal.SIGTERM)
        self.process.communicate(timeout=20)


def status(link, path, method="GET", **headers):
    """Status of one request, redirections not followed."""
    where = urlsplit(link)
    connection = http.client.HTTPConnection(where.hostname, where.port, timeout=30)
    connection.request(
        method, path, headers={name.replace("_", "-"): value for name, value in headers.items()}
    )
    response = connection.getresponse()
    response.read()
    return response.status


class Browser:
    """Something that keeps its cookies."""

    def __init__(self):
        self.jar = http.cookiejar.CookieJar()
        self.opener = urllib.request.build_opener(urllib.request.HTTPCookieProcessor(self.jar))

    def get(self, link, **headers):
        named = {name.replace("_", "-"): value for name, value in headers.items()}
        with self.opener.open(urllib.request.Request(link, headers=named), timeout=60) as response:
            response.read()
            return response


def books(folder):
    """What was written, by visitor."""
    return {
        path.relative_to(folder / "visitors").parts[0]: path.read_text().count("\n")
        for path in (folder / "visitors").rglob("book.txt")
    }


@pytest.mark.parametrize(
    ("path", "method"),
    [
        ("/", "GET"),
        ("/?token=wrong", "GET"),
        (f"/api/kernels/{NOBODY}", "GET"),
        (f"/api/kernels/{NOBODY}", "DELETE"),
        (f"/voila/api/shutdown/{NOBODY}", "POST"),
    ],
)
def test_without_the_token_nothing_is_shown_and_nothing_runs(tablet, path, method):
    """Either refused, or sent to where the token is asked for. RFC 9110: 302 and 403."""
    link, folder = tablet
    before = books(folder)
    assert status(link, path, method) == (302 if path.startswith("/?") or path == "/" else 403)
    assert books(folder) == before


def test_without_the_token_no_websocket_opens(tablet):
    """RFC 6455, 4.2.2: an open one would answer 101."""
    hand = {
        "Connection": "Upgrade",
        "Upgrade": "websocket",
        "Sec_WebSocket_Version": "13",
        "Sec_WebSocket_Key": "AAAAAAAAAAAAAAAAAAAAAA==",
    }
    assert status(tablet[0], f"/api/kernels/{NOBODY}/channels", **hand) == 403


def test_the_folder_behind_the_notebook_is_not_served(tablet):
    link, _ = tablet
    token = urlsplit(link).query
    for name in ("plan.png", "book.ipynb"):
        assert (
            status(link, f"/voila/files/{name}")
            == status(link, f"/voila/files/{name}?{token}")
            == 403
        )


def test_each_visitor_keeps_a_folder_and_finds_it_again(tablet):
    link, folder = tablet
    before = books(folder)
    first, second = Browser(), Browser()
    first.get(link)
    second.get(link)
    first.get(link.partition("?")[0])  # known by cookie, no token any more
    new = {visitor: times for visitor, times in books(folder).items() if visitor not in before}
    assert sorted(new.values()) == [1, 2]
    cookie = next(cookie.value for cookie in first.jar if cookie.name == "fireplace-visitor")
    assert not any(cookie in name for name in new), "the folder's name gives the key to it away"


@pytest.mark.parametrize(
    "headers",
    [
        {"X_Fireplace_Visitor": "../../elsewhere"},
        {"Cookie": "fireplace-visitor=../../elsewhere"},
        {"Cookie": "fireplace-visitor=" + "a" * 31},
    ],
)
def test_nobody_chooses_his_folder_himself(tablet, headers):
    link, folder = tablet
    before = books(folder)
    Browser().get(link, **headers)
    (new,) = set(books(folder)) - set(before)
    assert re.fullmatch("visitor-[0-9a-f]{16}", new)
    assert not list(folder.parent.rglob("elsewhere"))


def test_the_page_lets_a_browser_load_nothing_from_elsewhere(tablet):
    """Content Security Policy, level 3: default-src holds for whatever has no rule of its own."""
    policy = Browser().get(tablet[0]).headers["Content-Security-Policy"]
    host = urlsplit(tablet[0]).netloc
    rules = dict(rule.strip().split(" ", 1) for rule in policy.split(";"))
    allowed = {
        "'self'",
        "'unsafe-inline'",
        "'unsafe-eval'",
        "data:",
        "blob:",
        f"ws://{host}",
        f"wss://{host}",
    }
    assert (
        set(rules) == {"default-src", "connect-src", "frame-ancestors"}
        and set(" ".join(rules.values()).split()) <= allowed
    )


def refused(capsys, *arguments):
    """What the command says when it ends with status 2."""
    try:
        status = main(arguments)
    except SystemExit as end:
        status = end.code
    assert status == 2 and FOLDER not in os.environ, "others in this process would keep there"
    return capsys.readouterr().err


def test_an_address_that_is_not_of_this_machine_is_refused(capsys):
    """192.0.2.0/24 is kept for examples: RFC 5737."""
    assert "192.0.2.10" in refused(capsys, "tablet", "with-a-client", "--address", "192.0.2.10")


@pytest.mark.parametrize("address", ["0.0.0.0", "::", ""])
def test_an_address_is_chosen_and_not_every_one_taken(capsys, address):
    assert "every address" in refused(capsys, "tablet", "with-a-client", "--address", address)


def test_a_notebook_that_is_not_there_is_refused_with_the_names(capsys):
    said = refused(capsys, "page", "no-such")
    assert "no-such" in said and "with-a-client" in said


def test_the_tablet_wants_an_address(capsys):
    assert "--address" in refused(capsys, "tablet", "with-a-client")


def test_the_page_is_prompt_and_an_administrators_class_stands():
    """Voila reads no folder of settings, so our page brings its own; a file's setting still wins."""
    assert Page().kernel_websocket_connection_class is PromptConnection
    own = Config({"Page": {TRAIT: ZMQChannelsWebsocketConnection}})
    assert Page(config=own).kernel_websocket_connection_class is ZMQChannelsWebsocketConnection


def test_the_page_runs_no_settings_from_the_folder_it_is_started_in(tmp_path, monkeypatch):
    monkeypatch.chdir(tmp_path)
    assert str(tmp_path) not in Page().config_file_paths


def test_without_our_server_a_folder_is_the_one_asked_for(monkeypatch):
    monkeypatch.delenv("FIREPLACE_KEPT", raising=False)
    monkeypatch.delenv("HTTP_X_FIREPLACE_VISITOR", raising=False)
    assert str(own_folder("kept/client")) == os.path.join("kept", "client")


@pytest.mark.parametrize("keep", ["kept/client", "/kept/client", "../../kept/client"])
def test_no_notebook_leads_a_visitor_out_of_his_folder(monkeypatch, tmp_path, keep):
    monkeypatch.setenv("FIREPLACE_KEPT", str(tmp_path))
    monkeypatch.setenv("HTTP_X_FIREPLACE_VISITOR", "visitor-1")
    assert own_folder(keep) == tmp_path / "visitor-1" / "kept" / "client"


def test_two_clients_see_two_designs_and_nothing_comes_from_elsewhere(tmp_path):
    """The supplied notebook in two browsers: each moves a slider of its own, and each finds its
    own again.
    """
    if chromium() is None:
        assert os.environ.get(REQUIRED) != "required", (
            "no Chromium, but this run must not do without the browser test"
        )
        pytest.skip(
            "no Chromium on this machine: the browser test is left out "
            "(Debian: apt-get install chromium)"
        )
    from playwright.sync_api import sync_playwright

    with (
        served(
            "tablet",
            str(NOTEBOOKS / "with-a-client.ipynb"),
            "--address",
            ADDRESS,
            "--kept",
            str(tmp_path / "kept"),
            folder=tmp_path,
        ) as link,
        sync_playwright() as play,
    ):
        browser = play.chromium.launch(executable_path=chromium(), args=FLAGS)
        asked, read = [], []
        clients = [browser.new_context() for _ in range(2)]
        for number, client in enumerate(clients):
            view = client.new_page()
            view.on("requestfinished", lambda request: asked.append(request.url))
            view.goto(link, timeout=120_000)
            handle = view.get_by_role("slider", name="Opening width", exact=True)
            handle.wait_for(timeout=120_000)
            for _ in range(number + 1):
                handle.press("ArrowRight")
            box = view.get_by_role("textbox", name="Opening width", exact=True)
            view.wait_for_timeout(1500)
            read.append(box.input_value())
        assert read[0] != read[1]
        again = clients[0].new_page()
        again.goto(link.partition("?")[0], timeout=120_000)
        box = again.get_by_role("textbox", name="Opening width", exact=True)
        box.wait_for(timeout=120_000)
        assert box.input_value() == read[0]
        browser.close()
    assert {urlsplit(url).netloc for url in asked if not url.startswith(("data:", "blob:"))} == {
        urlsplit(link).netloc
    }
    assert len(list((tmp_path / "kept").glob("visitor-*/kept/*/design.toml"))) == 2
