"""A real JupyterLab or Voila, and a headless Chromium looking at it."""

from __future__ import annotations

import contextlib
import os
import re
import shutil
import socket
import subprocess
import sys
import tempfile
import threading
import time
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
FLAGS = [
    "--no-sandbox",
    "--disable-gpu",
    "--disable-quic",
    "--no-first-run",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
]


def chromium() -> str | None:
    """Where the system's Chromium is."""
    return next(
        (
            found
            for name in ("chromium", "chromium-browser", "google-chrome")
            if (found := shutil.which(name))
        ),
        None,
    )


def free_port() -> int:
    """A port on loopback that nobody listens on now."""
    with socket.socket() as probe:
        probe.bind(("127.0.0.1", 0))
        return probe.getsockname()[1]


@contextlib.contextmanager
def server(kind: str, notebook: Path, root: Path):
    """Start JupyterLab or Voila on loopback, give the address of the notebook, and stop it
    afterwards.
    """
    port, settings = free_port(), Path(tempfile.mkdtemp())
    if kind == "lab":
        command = [
            sys.executable,
            "-m",
            "jupyterlab",
            "--allow-root",
            "--no-browser",
            f"--port={port}",
            f"--ServerApp.root_dir={root}",
        ]
    else:
        command = [
            sys.executable,
            "-m",
            "fireplace_calc.jupyter.command",
            "page",
            "--no-browser",
            f"--port={port}",
            str(notebook),
        ]
    # no question about news over the page: that is JupyterLab's, and the reader's to answer
    news = settings / "@jupyterlab" / "apputils-extension" / "notification.jupyterlab-settings"
    news.parent.mkdir(parents=True)
    news.write_text('{"fetchNews": "false", "checkForUpdates": false}')
    here = {**os.environ, "JUPYTERLAB_SETTINGS_DIR": str(settings)}
    process = subprocess.Popen(
        command, stderr=subprocess.STDOUT, stdout=subprocess.PIPE, text=True, cwd=root, env=here
    )
    try:
        pattern = r"(http://(?:127\.0\.0\.1|localhost):\d+)/(?:lab)?\S*?(?:token=(\w+))?\s"
        for line in process.stdout:
            if found := re.search(pattern, line.rstrip() + " "):
                break
        else:
            raise RuntimeError(f"{kind} did not start")
        threading.Thread(target=lambda: [None for _ in process.stdout], daemon=True).start()
        if kind == "lab":
            yield f"{found[1]}/lab/tree/{notebook.relative_to(root)}?token={found[2]}&reset"
        else:
            yield f"{found[1]}/?token={found[2]}"
    finally:
        process.terminate()
        process.wait(20)
        shutil.rmtree(settings)


@contextlib.contextmanager
def page(width: int = 1280, height: int = 1000, **how):
    """One page of a headless Chromium."""
    from playwright.sync_api import sync_playwright

    with sync_playwright() as play:
        browser = play.chromium.launch(executable_path=chromium(), args=FLAGS)
        try:
            yield browser.new_page(viewport={"width": width, "height": height}, **how)
        finally:
            browser.close()


class Alone:
    """A headless Chromium that can be left alone: while nobody looks in, no debugger takes time
    off the page.
    """

    def __init__(self, width: int = 1280, height: int = 1000, dense: int = 1):
        from playwright.sync_api import sync_playwright

        self.port, self.folder, self.play = (
            free_port(),
            tempfile.TemporaryDirectory(),
            sync_playwright().start(),
        )
        size = f"--window-size={width},{height}"
        command = [
            chromium(),
            "--headless=new",
            f"--remote-debugging-port={self.port}",
            f"--user-data-dir={self.folder.name}",
            size,
            f"--force-device-scale-factor={dense}",
        ]
        self.process = subprocess.Popen(
            [*command, *FLAGS, "about:blank"], stderr=subprocess.DEVNULL, stdout=subprocess.DEVNULL
        )
        self.browser = None

    def look_in(self):
        """The page, for whoever wants to touch or read it."""
        for _ in range(100):
            with contextlib.suppress(Exception):
                self.browser = self.play.chromium.connect_over_cdp(f"http://127.0.0.1:{self.port}")
                return self.browser.contexts[0].pages[0]
            time.sleep(0.1)
        raise RuntimeError("Chromium does not answer")

    def leave(self, seconds: float) -> None:
        """Go away for a while."""
        self.browser.close()
        time.sleep(seconds)

    def __enter__(self) -> Alone:
        return self

    def __exit__(self, *_) -> None:
        self.process.terminate()
        self.process.wait(20)
        self.play.stop()
        self.folder.cleanup()
